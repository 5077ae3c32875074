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

// only finds the member of that name, nil when it stands twice.
func (n *node) only(name string) *node {
	var found *node
	for i := range n.members {
		if n.members[i].name != name {
			continue
		}
		if found != nil {
			return nil
		}
		found = &n.members[i].value
	}
	return found
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
	root, err := p.value()
	if err != nil {
		return nil, p.place(err), err
	}
	end := int(p.dec.InputOffset())
	if _, err := p.dec.ReadToken(); !errors.Is(err, io.EOF) {
		return nil, len(data) - len(bytes.TrimLeft(data[end:], blanks)), errExtra
	}
	return &root, 0, nil
}

var errExtra = errors.New("text behind the document")

// grower builds the tree and counts its values. The members and items of the
// objects and lists that are open wait on two stacks, so that each gets a slice
// of just its size.
type grower struct {
	dec     *jsontext.Decoder
	values  int
	members []member
	items   []node
}

// place finds where an error struck.
func (p *grower) place(err error) int {
	if s, ok := errors.AsType[*jsontext.SyntacticError](err); ok {
		return int(s.ByteOffset)
	}
	return int(p.dec.InputOffset())
}

func (p *grower) value() (n node, err error) {
	if p.values++; p.values > MaxValues {
		return n, errValues
	}
	n.kind = p.dec.PeekKind()
	if n.kind == '{' || n.kind == '[' {
		return p.nest(n)
	}
	v, err := p.dec.ReadValue()
	if err != nil {
		return n, err
	}
	n.end = int(p.dec.InputOffset())
	n.at = n.end - len(v)
	switch n.kind {
	case '"':
		n.text = unquote(v)
	case '0':
		n.text = string(v)
	}
	return n, nil
}

// nest reads an object or a list.
func (p *grower) nest(n node) (node, error) {
	if p.dec.StackDepth() >= MaxDepth {
		return n, errDepth
	}
	if _, err := p.dec.ReadToken(); err != nil {
		return n, err
	}
	n.at = int(p.dec.InputOffset()) - 1
	var err error
	if n.kind == '{' {
		n.members, err = p.object()
	} else {
		n.items, n.count, err = p.list()
	}
	if err != nil {
		return n, err
	}
	_, err = p.dec.ReadToken()
	n.end = int(p.dec.InputOffset())
	return n, err
}

func (p *grower) object() ([]member, error) {
	base := len(p.members)
	for p.dec.PeekKind() != '}' {
		raw, err := p.dec.ReadValue()
		if err != nil {
			return nil, err
		}
		at := int(p.dec.InputOffset()) - len(raw)
		name, known := knownNames[string(raw)]
		if !known {
			name = unquote(raw)
		}
		v, err := p.value()
		if err != nil {
			return nil, err
		}
		p.members = append(p.members, member{name, at, v})
	}
	members := slices.Clone(p.members[base:])
	p.members = p.members[:base]
	return members, nil
}

func (p *grower) list() (items []node, count int, err error) {
	base := len(p.items)
	for p.dec.PeekKind() != ']' {
		if count++; count > MaxList {
			if err := p.dec.SkipValue(); err != nil {
				return nil, 0, err
			}
			continue
		}
		item, err := p.value()
		if err != nil {
			return nil, 0, err
		}
		p.items = append(p.items, item)
	}
	items = slices.Clone(p.items[base:])
	p.items = p.items[:base]
	return items, count, nil
}

// knownNames holds the document's names by how they stand in a file, so that
// reading one of them makes no new text.
var knownNames = func() map[string]string {
	names := map[string]string{}
	for _, f := range append([]*form{plan, entryForm}, parts(plan, nil)...) {
		for _, name := range f.words() {
			names[`"`+name+`"`] = name
		}
	}
	return names
}()

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
