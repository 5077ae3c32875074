package job

import (
	"fmt"
	"reflect"
	"strconv"

	"github.com/go-json-experiment/json/jsontext"
)

// Encode writes the document in its canonical form: members in the order of
// the structs, empty fields left out, quantities exactly as typed, two blanks
// of indent, one newline at the end. Format and version are those of this
// program, whatever the fields say. Encoding what Decode kept and decoding it
// again gives the same job, and the same bytes again. The error names a text
// that is not UTF-8 or a bare number that is none; Decode keeps neither.
func Encode(j *Job) ([]byte, error) {
	now := *j
	now.Format, now.Version = FormatName, Version
	e := encoder{}
	if err := e.object(plan, reflect.ValueOf(&now).Elem()); err != nil {
		return nil, fmt.Errorf("encode job: %w", err)
	}
	return append(e.out, '\n'), nil
}

type encoder struct {
	out   []byte
	depth int
}

func (e *encoder) line() {
	e.out = append(e.out, '\n')
	for range e.depth {
		e.out = append(e.out, "  "...)
	}
}

// open and shut write the brackets of an object or list; next goes before each
// of its values.
func (e *encoder) open(bracket byte) {
	e.out = append(e.out, bracket)
	e.depth++
}

func (e *encoder) shut(bracket byte, any bool) {
	e.depth--
	if any {
		e.line()
	}
	e.out = append(e.out, bracket)
}

func (e *encoder) next(first bool) {
	if !first {
		e.out = append(e.out, ',')
	}
	e.line()
}

func (e *encoder) name(s string) {
	e.out = append(e.out, '"')
	e.out = append(e.out, s...)
	e.out = append(e.out, `": `...)
}

func (e *encoder) text(s string) (err error) {
	e.out, err = jsontext.AppendQuote(e.out, s)
	return err
}

func (e *encoder) object(f *form, v reflect.Value) error {
	e.open('{')
	first := true
	for i := range f.fields {
		fd := &f.fields[i]
		fv := v.Field(fd.index)
		if fd.empty(fv) {
			continue
		}
		e.next(first)
		first = false
		e.name(fd.name)
		if err := e.value(fd, fv); err != nil {
			return fmt.Errorf("%s: %w", fd.name, err)
		}
	}
	e.shut('}', !first)
	return nil
}

func (e *encoder) value(fd *field, v reflect.Value) error {
	switch fd.shape {
	case shapeText:
		return e.text(v.String())
	case shapeBool:
		e.out = strconv.AppendBool(e.out, v.Bool())
	case shapeWhole:
		e.out = strconv.AppendInt(e.out, v.Int(), 10)
	case shapeMoney:
		m := v.Interface().(Money)
		return e.typed(m.Text, m.Bare)
	case shapeEntry, shapeLevel:
		return e.quantity(v.Addr().Interface().(quantity).load())
	case shapePart:
		return e.object(fd.form, v)
	case shapeOne:
		return e.object(fd.form, v.Elem())
	case shapeList:
		e.open('[')
		for i := range v.Len() {
			e.next(i == 0)
			if err := e.object(fd.form, v.Index(i)); err != nil {
				return fmt.Errorf("%d: %w", i, err)
			}
		}
		e.shut(']', v.Len() > 0)
	}
	return nil
}

// quantity writes an entry as it was typed: as an object only where there is
// more than a value.
func (e *encoder) quantity(r raw) error {
	if r.Source == "" && r.Tolerance == "" && r.Note == "" {
		return e.typed(r.Text, r.Bare)
	}
	e.open('{')
	e.next(true)
	e.name("value")
	if err := e.typed(r.Text, r.Bare); err != nil {
		return err
	}
	for _, more := range []struct {
		name, text string
		bare       bool
	}{{"source", string(r.Source), false}, {"tolerance", r.Tolerance, r.BareTol}, {"note", r.Note, false}} {
		if more.text == "" {
			continue
		}
		e.next(false)
		e.name(more.name)
		if err := e.typed(more.text, more.bare); err != nil {
			return err
		}
	}
	e.shut('}', true)
	return nil
}

// typed writes a text, or a number with the figures typed.
func (e *encoder) typed(s string, bare bool) error {
	if !bare {
		return e.text(s)
	}
	if v := jsontext.Value(s); v.Kind() != '0' || !v.IsValid() {
		return fmt.Errorf("%q is not a number", snippet(s))
	}
	e.out = append(e.out, s...)
	return nil
}

// empty tells that a field is left out of the file. A part that must be there
// is left out when nothing stands in it: the decoder then says what is missing.
func (f *field) empty(v reflect.Value) bool {
	switch f.shape {
	case shapeList:
		return v.Len() == 0
	case shapeEntry, shapeLevel:
		return v.Addr().Interface().(quantity).load().Text == ""
	case shapeMoney:
		return v.Interface().(Money).IsZero()
	case shapePart:
		return f.form.empty(v)
	case shapeWhole:
		return v.IsZero() && !f.must
	}
	return v.IsZero()
}

// empty tells that all fields of a struct are left out.
func (f *form) empty(v reflect.Value) bool {
	for i := range f.fields {
		if fd := &f.fields[i]; !fd.empty(v.Field(fd.index)) {
			return false
		}
	}
	return true
}
