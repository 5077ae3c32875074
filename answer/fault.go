package answer

import (
	"reflect"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/words"
)

// Fault is an error in the input.
type Fault struct {
	Code     string `json:"code" doc:"stable code"`
	Path     string `json:"path" doc:"where in the job"`
	Line     int    `json:"line,omitempty" doc:"in the file"`
	Text     string `json:"text" doc:"the sentence"`
	Expected string `json:"expected,omitempty" doc:"what would be right: the words known, the limits, what the field is for"`
	Example  string `json:"example,omitempty" doc:"of how it is written"`
}

// FaultOf words a fault.
func FaultOf(f trace.Fault, s unit.System, l *words.Language) Fault {
	x := Fault{Code: f.Code, Path: f.Path, Line: f.Line, Text: l.Say(f.Message, s)}
	said := map[string]string{}
	for _, a := range f.Args {
		said[a.Name] = a.Text
		if a.Name == "doc" {
			said[a.Name] = l.Doc(a.Text)
		}
		if a.Text == "" && a.Value != (unit.Value{}) {
			said[a.Name] = l.Value(a.Value, s)
		}
	}
	x.Example = said["example"]
	for _, name := range []string{"near", "expected", "known", "doc", "limit"} {
		if x.Expected == "" {
			x.Expected = said[name]
		}
	}
	if x.Expected == "" && said["low"] != "" && said["high"] != "" {
		x.Expected = l.Say(trace.Message{Code: "print.to", Args: []trace.Arg{trace.Str("low", said["low"]), trace.Str("high", said["high"])}}, s)
	}
	return x
}

// Said is a finding in a word and a sentence.
type Said struct {
	Code     string `json:"code" doc:"stable code"`
	Severity string `json:"severity" one:"info caution danger" doc:"info, caution or danger"`
	Text     string `json:"text" doc:"in words"`
}

// whole gives a document in which no list that is always told is missing: one
// without lines is an empty list and not null.
func whole[T any](d T) T {
	fill(reflect.ValueOf(&d).Elem())
	return d
}

func fill(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			fill(v.Elem())
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			fill(v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			f, field := v.Field(i), v.Type().Field(i)
			if !f.CanSet() {
				continue
			}
			if f.Kind() == reflect.Slice && f.IsNil() && !strings.Contains(field.Tag.Get("json"), ",omit") {
				f.Set(reflect.MakeSlice(f.Type(), 0, 0))
			}
			fill(f)
		}
	}
}
