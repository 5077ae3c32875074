package job

import (
	"io"
	"math/bits"
	"reflect"
	"strconv"
	"strings"
	"unicode/utf8"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Decode reads a job document, strictly: every field must be known, of the
// right sort and in its range. It gives all faults at once, in the order of the
// file, each with its path and line. A field with a fault is left empty and the
// rest is kept, so that what does not depend on it can still be worked out.
//
// The job is nil only where nothing can be read: broken JSON, bytes that are
// not UTF-8, more than MaxBytes, MaxValues or MaxDepth, something else than a
// job, or a version newer than this program knows. An older version is upgraded
// while it is read.
func Decode(data []byte) (*Job, []trace.Fault) {
	j, _, d := decode(data)
	return j, d.finish(j)
}

// DecodeReader is Decode for a stream. It reads no more than MaxBytes and one,
// so that a file of any size is refused at once.
func DecodeReader(r io.Reader) (*Job, []trace.Fault) {
	data, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return nil, []trace.Fault{{Message: trace.Message{
			Code: CodeUnreadable,
			Args: []trace.Arg{trace.Str("found", snippet(err.Error())), trace.Str("where", "")},
		}}}
	}
	return Decode(data)
}

// decode reads the document; the job is nil where nothing can be read.
func decode(data []byte) (*Job, *node, *decoder) {
	d := &decoder{data: data}
	root, stop := open(data)
	if stop != nil {
		d.faults = []located{*stop}
		return nil, nil, d
	}
	if !d.version(root) {
		return nil, nil, d
	}
	d.units(root)
	j := &Job{}
	d.object(root, plan, reflect.ValueOf(j).Elem())
	j.Format, j.Version = FormatName, Version
	c := checker{j: j}
	c.twins()
	for _, f := range c.faults {
		d.found(root, f)
	}
	d.dropped += c.dropped
	return j, root, d
}

// decoder walks the raw tree along the plan and fills the job.
type decoder struct {
	data    []byte
	system  unit.System
	spoken  bool       // the units are known
	style   unit.Style // of amounts; without a currency when it is not said
	from    int        // version the document was written in
	path    []string
	lines   lines
	faults  []located
	dropped int
}

// located is a fault with its byte in the file.
type located struct {
	trace.Fault
	at int
}

// add notes a fault at the present path. Beyond MaxFaults they are only
// counted: nobody reads that many, and a hostile file could hold millions.
func (d *decoder) add(at int, code string, args ...trace.Arg) {
	if len(d.faults) >= MaxFaults {
		d.dropped++
		return
	}
	var b strings.Builder
	for _, t := range d.path {
		b.WriteByte('/')
		b.WriteString(escape(snippet(t)))
	}
	d.faults = append(d.faults, located{trace.Fault{Message: trace.Message{Code: code, Args: args}, Path: b.String()}, at})
}

// found notes a fault that was found on the job, at its place in the tree.
func (d *decoder) found(root *node, f trace.Fault) {
	if len(d.faults) >= MaxFaults {
		d.dropped++
		return
	}
	d.faults = append(d.faults, located{f, root.find(f.Path)})
}

func (d *decoder) push(token string) { d.path = append(d.path, token) }
func (d *decoder) pop()              { d.path = d.path[:len(d.path)-1] }

// typed shows what stands in the file, quotation marks and all, cut to a
// readable length.
func (d *decoder) typed(n *node) string {
	return snippet(string(d.data[n.at:min(n.end, n.at+4*snippetRunes)]))
}

// snippetRunes is how much of a typed text a message shows.
const snippetRunes = 60

// snippet makes a text fit for a message: one line, cut to a readable length.
func snippet(s string) string {
	s = strings.ToValidUTF8(s[:min(len(s), 8*snippetRunes)], "\uFFFD")
	s = strings.Join(strings.Fields(s), " ")
	if utf8.RuneCountInString(s) > snippetRunes {
		s = string([]rune(s)[:snippetRunes]) + "…"
	}
	return s
}

// object fills a struct from an object.
func (d *decoder) object(n *node, f *form, v reflect.Value) {
	if n.kind != '{' {
		d.add(n.at, wrong(n, CodeWantPart), trace.Str("found", d.typed(n)), trace.Str("known", f.known()))
		return
	}
	var seen uint64
	var first [64]int
	for i := range n.members {
		m := &n.members[i]
		k, ok := f.byName[m.name]
		if !ok {
			d.unknown(m, f)
			continue
		}
		fd := &f.fields[k]
		d.push(m.name)
		switch {
		case seen&(1<<k) == 0:
			seen |= 1 << k
			first[k] = m.at
			d.value(&m.value, fd, v.Field(fd.index))
		case fd.leaf():
			v.Field(fd.index).SetZero()
			d.twice(m.at, CodeTwice, fd, first[k])
		default:
			d.twice(m.at, CodeTwicePart, fd, first[k])
		}
		d.pop()
	}
	d.missing(n, f, seen)
	if given := bits.OnesCount64(seen); f.union && given == 0 {
		d.add(n.at, CodePartNone, trace.Str("known", f.known()))
	} else if f.union && given > 1 {
		d.add(n.at, CodePartSeveral, trace.Str("found", f.names(seen)), trace.Str("known", f.known()))
	}
}

func (d *decoder) unknown(m *member, f *form) {
	d.push(m.name)
	defer d.pop()
	if len(d.faults) >= MaxFaults {
		d.dropped++
		return
	}
	name := trace.Str("field", snippet(m.name))
	if near := nearest(m.name, f.words()); near != "" {
		d.add(m.at, CodeUnknownNear, name, trace.Str("near", near))
		return
	}
	d.add(m.at, CodeUnknown, name, trace.Str("known", f.known()))
}

func (d *decoder) missing(n *node, f *form, seen uint64) {
	for k := range f.fields {
		if fd := &f.fields[k]; fd.must && seen&(1<<k) == 0 {
			d.push(fd.name)
			d.lack(n.at, fd)
			d.pop()
		}
	}
}

// lack notes that a field which must be there is not.
func (d *decoder) lack(at int, fd *field) {
	code, args := fd.lacking(d.system)
	d.add(at, code, args...)
}

func (f *field) lacking(s unit.System) (code string, args []trace.Arg) {
	args = []trace.Arg{trace.Str("field", f.name), trace.Str("doc", f.doc)}
	if f.leaf() {
		return CodeMissing, append(args, trace.Str("example", f.example(s)))
	}
	return CodeMissingPart, args
}

func (d *decoder) twice(at int, code string, fd *field, first int) {
	if len(d.faults) >= MaxFaults {
		d.dropped++ // before the lines of a large file are counted for nothing
		return
	}
	d.add(at, code, trace.Str("field", fd.name), trace.Str("line", strconv.Itoa(d.lines.at(d.data, first))))
}

// list fills a slice. An element with a fault stays in its place, so that the
// paths of the ones behind it stay true.
func (d *decoder) list(n *node, fd *field, v reflect.Value) {
	if n.kind != '[' {
		d.add(n.at, wrong(n, CodeWantList), trace.Str("found", d.typed(n)))
		return
	}
	if n.count > MaxList {
		d.add(n.at, CodeListLong, trace.Str("count", strconv.Itoa(n.count)), trace.Str("limit", strconv.Itoa(MaxList)))
	}
	if len(n.items) == 0 {
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(n.items), len(n.items)))
	for i := range n.items {
		d.push(strconv.Itoa(i))
		d.object(&n.items[i], fd.form, v.Index(i))
		d.pop()
	}
}

func (d *decoder) value(n *node, fd *field, v reflect.Value) {
	switch fd.shape {
	case shapePart:
		d.object(n, fd.form, v)
	case shapeList:
		d.list(n, fd, v)
	case shapeOne:
		v.Set(reflect.New(fd.form.typ))
		d.object(n, fd.form, v.Elem())
	case shapeText:
		d.text(n, fd, v)
	case shapeBool:
		if n.kind != 't' && n.kind != 'f' {
			d.add(n.at, wrong(n, CodeWantTrue), trace.Str("found", d.typed(n)))
			return
		}
		v.SetBool(n.kind == 't')
	case shapeWhole:
		d.whole(n, fd, v)
	case shapeMoney:
		d.amount(n, fd, v)
	case shapeEntry, shapeLevel:
		d.quantity(n, fd, v)
	}
}

// wrong picks the code for a value of the wrong sort: null has its own.
func wrong(n *node, code string) string {
	if n.kind == 'n' {
		return CodeNull
	}
	return code
}

func (d *decoder) whole(n *node, fd *field, v reflect.Value) {
	text := n.text
	if n.kind != '0' {
		text = ""
	}
	i, m := fd.wholeNumber(text, d.system)
	if m != nil {
		if m.Code == CodeWantWhole {
			m.Code, m.Args[0] = wrong(n, m.Code), trace.Str("found", d.typed(n))
		}
		d.add(n.at, m.Code, m.Args...)
		return
	}
	v.SetInt(int64(i))
}

// wholeNumber reads a whole number in the field's range.
func (f *field) wholeNumber(text string, s unit.System) (int, *trace.Message) {
	i, err := strconv.Atoi(text)
	if err != nil {
		return 0, &trace.Message{Code: CodeWantWhole, Args: []trace.Arg{
			trace.Str("found", snippet(text)), trace.Str("example", f.example(s)),
		}}
	}
	if float64(i) < f.lo || float64(i) > f.hi {
		return 0, &trace.Message{Code: CodeRange, Args: f.beyond(text, float64(i))}
	}
	return i, nil
}

// beyond gives the arguments of a range fault.
func (f *field) beyond(found string, si float64) []trace.Arg {
	num := func(name string, v float64) trace.Arg {
		return trace.Arg{Name: name, Value: unit.Value{SI: v, Kind: f.kind}}
	}
	return []trace.Arg{trace.Str("found", snippet(found)), num("value", si), num("low", f.lo), num("high", f.hi)}
}
