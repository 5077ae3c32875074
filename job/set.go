package job

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Set sets one field by its JSON pointer as if the text had been typed into
// it: Set("/runs/0/length", "60 ft"). An empty text empties the field. Behind a
// quantity's path "/source", "/tolerance" and "/note" set what goes with its
// value, which "/value" sets alone; the quantity's own path sets the value and
// drops the rest. A list takes one more element at the index behind its last,
// or at "-". Setting "/units" reads every quantity of the job again in the new
// units. With a fault the job stays as it was; nil is well.
func (j *Job) Set(path, text string) *trace.Fault {
	tokens := pointer(path)
	var m *trace.Message
	switch {
	case !utf8.ValidString(text):
		m = &trace.Message{Code: CodeEncoding, Args: []trace.Arg{trace.Str("found", fmt.Sprintf("% X", text[:min(len(text), 8)]))}}
	case path == "/format" || path == "/version":
		m = &trace.Message{Code: CodeSetFixed, Args: []trace.Arg{trace.Str("found", snippet(text))}}
	case path == "/units":
		m = j.setUnits(text)
	case strings.HasPrefix(path, numbersPath):
		m = j.setNumbers(tokens, text)
	default:
		s := setter{system: j.System(), style: j.Style(), text: text}
		m = s.object(plan, reflect.ValueOf(j).Elem(), tokens)
	}
	if m == nil {
		return nil
	}
	m.Args = append(m.Args, trace.At("where", j.PlaceOf(path)))
	return &trace.Fault{Message: *m, Path: path}
}

// setUnits reads the job again as if its units had been others from the start.
func (j *Job) setUnits(text string) *trace.Message {
	c := j.Clone()
	c.Units = text
	data, err := Encode(c)
	if err != nil {
		return &trace.Message{Code: CodeUnreadable, Args: []trace.Arg{trace.Str("found", snippet(err.Error()))}}
	}
	before := map[string]bool{} // a fault the job had already does not stand in the way
	if old, err := Encode(j); err == nil {
		_, faults := Decode(old)
		for _, f := range faults {
			before[f.Code+" "+f.Path] = true
		}
	}
	next, faults := Decode(data)
	for _, f := range faults {
		if !before[f.Code+" "+f.Path] {
			f.Args = slices.DeleteFunc(f.Args, func(a trace.Arg) bool { return a.Name == "where" })
			return &f.Message
		}
	}
	*j = *next
	return nil
}

// setter carries what is set down to its field.
type setter struct {
	system unit.System
	style  unit.Style
	text   string
}

func (s setter) object(f *form, v reflect.Value, tokens []string) *trace.Message {
	if len(tokens) == 0 {
		return &trace.Message{Code: CodeSetPart, Args: []trace.Arg{trace.Str("known", f.known())}}
	}
	k, ok := f.byName[tokens[0]]
	if !ok {
		args := []trace.Arg{trace.Str("field", snippet(tokens[0]))}
		if near := nearest(tokens[0], f.words()); near != "" {
			return &trace.Message{Code: CodeUnknownNear, Args: append(args, trace.Str("near", near))}
		}
		return &trace.Message{Code: CodeUnknown, Args: append(args, trace.Str("known", f.known()))}
	}
	fd, rest := &f.fields[k], tokens[1:]
	fv := v.Field(fd.index)
	switch fd.shape {
	case shapePart:
		return s.object(fd.form, fv, rest)
	case shapeOne:
		if !fv.IsNil() {
			return s.object(fd.form, fv.Elem(), rest)
		}
		fresh := reflect.New(fd.form.typ)
		m := s.object(fd.form, fresh.Elem(), rest)
		if m == nil {
			fv.Set(fresh)
		}
		return m
	case shapeList:
		return s.list(fd, fv, rest)
	}
	return s.leaf(fd, fv, rest)
}

func (s setter) list(fd *field, v reflect.Value, tokens []string) *trace.Message {
	if len(tokens) == 0 {
		return &trace.Message{Code: CodeSetPart, Args: []trace.Arg{trace.Str("known", "0, 1, 2 ...")}}
	}
	i, err := strconv.Atoi(tokens[0])
	if tokens[0] == "-" {
		i, err = v.Len(), nil
	}
	switch {
	case err != nil || i < 0 || i > v.Len() || i >= MaxList:
		return &trace.Message{Code: CodeSetIndex, Args: []trace.Arg{
			trace.Str("found", snippet(tokens[0])), trace.Str("count", strconv.Itoa(v.Len())),
		}}
	case i < v.Len():
		return s.object(fd.form, v.Index(i), tokens[1:])
	}
	fresh := reflect.New(fd.form.typ).Elem()
	m := s.object(fd.form, fresh, tokens[1:])
	if m == nil {
		v.Set(reflect.Append(v, fresh))
	}
	return m
}

// leaf sets a field without fields of its own.
func (s setter) leaf(fd *field, v reflect.Value, tokens []string) *trace.Message {
	isQuantity := fd.shape == shapeEntry || fd.shape == shapeLevel
	if len(tokens) > 1 || (len(tokens) == 1 && !isQuantity) {
		return &trace.Message{Code: CodeSetNowhere, Args: []trace.Arg{trace.Str("found", snippet(strings.Join(tokens, "/")))}}
	}
	if len(tokens) == 1 {
		return s.entry(fd, v.Addr().Interface().(quantity), tokens[0])
	}
	if s.text == "" {
		if fd.must {
			return &trace.Message{Code: CodeSetMust, Args: []trace.Arg{
				trace.Str("field", fd.name), trace.Str("doc", fd.doc), trace.Str("example", fd.example(s.system)),
			}}
		}
		v.SetZero()
		return nil
	}
	switch fd.shape {
	case shapeText:
		if m := fd.checkText(s.text); m != nil {
			return m
		}
		v.SetString(s.text)
	case shapeBool:
		if s.text != "true" && s.text != "false" {
			return &trace.Message{Code: CodeWantTrue, Args: []trace.Arg{trace.Str("found", snippet(s.text))}}
		}
		v.SetBool(s.text == "true")
	case shapeWhole:
		n, m := fd.wholeNumber(s.text, s.system)
		if m != nil {
			return m
		}
		v.SetInt(int64(n))
	case shapeMoney:
		if m := fd.checkMoney(Money{Text: s.text}, s.style); m != nil {
			return m
		}
		v.Set(reflect.ValueOf(Money{Text: s.text}))
	default:
		var r raw
		if m := fd.read(s.text, false, s.system, &r); m != nil {
			return m
		}
		v.Addr().Interface().(quantity).store(r)
	}
	return nil
}

// entry sets one part of a quantity.
func (s setter) entry(fd *field, q quantity, part string) *trace.Message {
	r := q.load()
	k, ok := entryForm.byName[part]
	if !ok {
		return &trace.Message{Code: CodeUnknown, Args: []trace.Arg{
			trace.Str("field", snippet(part)), trace.Str("known", entryForm.known()),
		}}
	}
	pf := &entryForm.fields[k]
	if r.Text == "" && part != "value" || s.text == "" && part == "value" {
		return &trace.Message{Code: CodeSetMust, Args: []trace.Arg{
			trace.Str("field", "value"), trace.Str("doc", fd.doc), trace.Str("example", fd.example(s.system)),
		}}
	}
	if m := pf.checkText(s.text); s.text != "" && m != nil {
		return m
	}
	switch part {
	case "value":
		var next raw
		if m := fd.read(s.text, false, s.system, &next); m != nil {
			return m
		}
		next.Source, next.Note = r.Source, r.Note
		if r.Tolerance != "" { // a share of the value moves with it
			if m := fd.readTolerance(r.Tolerance, r.BareTol, s.system, &next); m != nil {
				return m
			}
		}
		r = next
	case "source":
		r.Source = Origin(s.text)
	case "note":
		r.Note = s.text
	case "tolerance":
		r.Tolerance, r.BareTol, r.Plus = "", false, 0
		if s.text != "" {
			if m := fd.readTolerance(s.text, false, s.system, &r); m != nil {
				return m
			}
		}
	}
	q.store(r)
	return nil
}
