package job

import (
	"bytes"
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// Limits of a document. They are far above any real job and keep a damaged or
// hostile file from taking the machine down.
const (
	MaxBytes  = 16 << 20 // of the file
	MaxDepth  = 64       // of objects and lists in one another
	MaxValues = 250_000  // texts, numbers, objects and lists together
	MaxList   = 10_000   // elements of one list
	MaxRunes  = 2_000    // of one text
	MaxName   = 200      // runes of a name
	MaxFaults = 1_000    // listed at once
)

// node is one JSON value with its place in the file. The tree is the raw
// document: old versions are upgraded on it, and units can be looked up before
// the quantities that need them.
type node struct {
	kind    jsontext.Kind // '{', '[', '"', '0', 't', 'f', 'n'
	text    string        // of a text; the figures of a number as typed
	at, end int           // bytes
	members []member      // of an object
	items   []node        // of a list, at most MaxList
	count   int           // of a list, all of them
}

// member is a name and its value in an object.
type member struct {
	name  string
	at    int
	value node
}

// get finds the first member of that name.
func (n *node) get(name string) *node {
	for i := range n.members {
		if n.members[i].name == name {
			return &n.members[i].value
		}
	}
	return nil
}

// find follows a JSON pointer as far as the tree goes and gives the place of
// the last value reached.
func (n *node) find(path string) int {
	for _, token := range pointer(path) {
		var next *node
		if i, err := strconv.Atoi(token); err == nil && n.kind == '[' && i >= 0 && i < len(n.items) {
			next = &n.items[i]
		} else if n.kind == '{' {
			next = n.get(token)
		}
		if next == nil {
			break
		}
		n = next
	}
	return n.at
}

// errValues tells that the document holds more than MaxValues.
var errValues = errors.New("too many values")

// errDepth tells that the document is nested deeper than MaxDepth.
var errDepth = errors.New("nested too deep")

// parse reads the document into a tree. The tokenizer checks JSON's grammar
// and the encoding; members of one name are kept, for the decoder to report.
func parse(data []byte) (*node, int, error) {
	p := grower{dec: jsontext.NewDecoder(bytes.NewBuffer(data), jsontext.AllowDuplicateNames(true))}
	var root node
	if err := p.value(&root); err != nil {
		return nil, p.place(err), err
	}
	end := int(p.dec.InputOffset())
	if _, err := p.dec.ReadToken(); !errors.Is(err, io.EOF) {
		return nil, len(data) - len(bytes.TrimLeft(data[end:], blanks)), errExtra
	}
	return &root, 0, nil
}

var errExtra = errors.New("text behind the document")

// grower builds the tree and counts its values.
type grower struct {
	dec    *jsontext.Decoder
	values int
}

// place finds where an error struck.
func (p *grower) place(err error) int {
	if s, ok := errors.AsType[*jsontext.SyntacticError](err); ok {
		return int(s.ByteOffset)
	}
	return int(p.dec.InputOffset())
}

func (p *grower) value(n *node) error {
	if p.values++; p.values > MaxValues {
		return errValues
	}
	n.kind = p.dec.PeekKind()
	switch n.kind {
	case '{', '[':
		if p.dec.StackDepth() >= MaxDepth {
			return errDepth
		}
		if _, err := p.dec.ReadToken(); err != nil {
			return err
		}
		n.at = int(p.dec.InputOffset()) - 1
		read := p.object
		if n.kind == '[' {
			read = p.list
		}
		if err := read(n); err != nil {
			return err
		}
		if _, err := p.dec.ReadToken(); err != nil {
			return err
		}
		n.end = int(p.dec.InputOffset())
		return nil
	}
	v, err := p.dec.ReadValue()
	if err != nil {
		return err
	}
	n.end = int(p.dec.InputOffset())
	n.at = n.end - len(v)
	switch n.kind {
	case '"':
		n.text = unquote(v)
	case '0':
		n.text = string(v)
	}
	return nil
}

func (p *grower) object(n *node) error {
	for p.dec.PeekKind() != '}' {
		name, err := p.dec.ReadValue()
		if err != nil {
			return err
		}
		m := member{name: unquote(name), at: int(p.dec.InputOffset()) - len(name)}
		if err := p.value(&m.value); err != nil {
			return err
		}
		n.members = append(n.members, m)
	}
	return nil
}

func (p *grower) list(n *node) error {
	for p.dec.PeekKind() != ']' {
		if n.count++; n.count > MaxList {
			if err := p.dec.SkipValue(); err != nil {
				return err
			}
			continue
		}
		var item node
		if err := p.value(&item); err != nil {
			return err
		}
		n.items = append(n.items, item)
	}
	return nil
}

// unquote gives the content of a JSON text that the tokenizer has checked.
func unquote(v []byte) string {
	if !slices.Contains(v, '\\') {
		return string(v[1 : len(v)-1])
	}
	s, _ := jsontext.AppendUnquote(nil, v) // cannot fail: the tokenizer has checked it
	return string(s)
}

// pointer splits a JSON pointer (RFC 6901) into its tokens.
func pointer(path string) []string {
	if path == "" {
		return nil
	}
	tokens := strings.Split(strings.TrimPrefix(path, "/"), "/")
	for i, t := range tokens {
		tokens[i] = strings.ReplaceAll(strings.ReplaceAll(t, "~1", "/"), "~0", "~")
	}
	return tokens
}

// escape writes one token of a JSON pointer.
func escape(token string) string {
	return strings.ReplaceAll(strings.ReplaceAll(token, "~", "~0"), "/", "~1")
}
