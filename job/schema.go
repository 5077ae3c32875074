package job

import (
	"bytes"
	"fmt"
	"math"
	"slices"

	"github.com/go-json-experiment/json/jsontext"

	"plashet/engine/unit"
)

// SchemaID names the schema of this version of the document.
var SchemaID = fmt.Sprintf("urn:plashet:job:%d", Version)

// Schema gives the JSON Schema (draft 2020-12) of the document, made from the
// tags of its structs. What a schema cannot say stands in the descriptions: the
// limits of a quantity written as a text, and what Validate looks at. Two
// annotations are our own: x-unit, the unit a bare number takes in each system,
// and x-limits-si, a quantity's limits.
func Schema() ([]byte, error) {
	s := schema{}
	s.enc = jsontext.NewEncoder(&s.out, jsontext.WithIndent("  "))
	s.object(func() {
		s.put("$schema", "https://json-schema.org/draft/2020-12/schema")
		s.put("$id", SchemaID)
		s.put("title", "Plashet job")
		s.put("description", "One job: all that was measured, chosen and assumed on a site. Bare numbers are read in the job's units.")
		s.form(plan)
		s.name("$defs")
		s.object(func() {
			for _, f := range parts(plan, nil) {
				s.name(f.name)
				s.object(func() { s.form(f) })
			}
			for _, d := range kinds() {
				s.name(d.name())
				s.object(func() { s.quantity(d) })
			}
			s.name("money")
			s.object(func() {
				s.put("description", "an amount of money as a text or a bare number, in the site's currency; kept decimal, as typed")
				s.put("type", "string", "number")
				s.examples("18.40")
			})
		})
	})
	return s.out.Bytes(), s.err
}

// schema writes JSON and keeps the first error.
type schema struct {
	out bytes.Buffer
	enc *jsontext.Encoder
	err error
}

func (s *schema) token(t jsontext.Token) {
	if s.err == nil {
		s.err = s.enc.WriteToken(t)
	}
}

func (s *schema) name(n string) { s.token(jsontext.String(n)) }

func (s *schema) object(fill func()) {
	s.token(jsontext.BeginObject)
	fill()
	s.token(jsontext.EndObject)
}

// put writes a member with one text, or a list of several.
func (s *schema) put(name string, texts ...string) {
	s.name(name)
	if len(texts) == 1 {
		s.name(texts[0])
		return
	}
	s.list(texts)
}

func (s *schema) list(texts []string) {
	s.token(jsontext.BeginArray)
	for _, t := range texts {
		s.name(t)
	}
	s.token(jsontext.EndArray)
}

func (s *schema) number(name string, v float64) {
	s.name(name)
	if v == math.Trunc(v) {
		s.token(jsontext.Int(int64(v)))
		return
	}
	s.token(jsontext.Float(v))
}

func (s *schema) examples(texts ...string) {
	s.name("examples")
	s.list(texts)
}

// form writes a struct: its fields, which of them must be there, and that no
// others may.
func (s *schema) form(f *form) {
	s.put("type", "object")
	s.name("additionalProperties")
	s.token(jsontext.False)
	if f.union {
		s.number("minProperties", 1)
		s.number("maxProperties", 1)
	}
	var must []string
	for i := range f.fields {
		if f.fields[i].must {
			must = append(must, f.fields[i].name)
		}
	}
	if len(must) > 0 {
		s.name("required")
		s.list(must)
	}
	s.name("properties")
	s.object(func() {
		for i := range f.fields {
			s.name(f.fields[i].name)
			s.object(func() { s.field(&f.fields[i]) })
		}
	})
}

func (s *schema) field(f *field) {
	s.put("description", f.describe())
	switch f.shape {
	case shapePart, shapeOne:
		s.put("$ref", "#/$defs/"+f.form.name)
	case shapeList:
		s.put("type", "array")
		s.number("maxItems", MaxList)
		s.name("items")
		s.object(func() { s.put("$ref", "#/$defs/"+f.form.name) })
	case shapeBool:
		s.put("type", "boolean")
	case shapeMoney:
		s.put("$ref", "#/$defs/money")
		s.examples(f.eg)
	case shapeEntry, shapeLevel:
		s.put("$ref", "#/$defs/"+def{f.kind, f.shape == shapeLevel}.name())
		s.name("x-limits-si")
		s.token(jsontext.BeginArray)
		s.token(jsontext.Float(f.lo))
		s.token(jsontext.Float(f.hi))
		s.token(jsontext.EndArray)
		s.examples(f.example(unit.US), f.example(unit.Metric))
	case shapeWhole:
		s.put("type", "integer")
		if f.name == "version" {
			s.number("const", Version)
			return
		}
		s.number("minimum", f.lo)
		s.number("maximum", f.hi)
	case shapeText:
		s.text(f)
	}
}

func (s *schema) text(f *field) {
	s.put("type", "string")
	switch {
	case len(f.words) > 0:
		s.name("enum")
		s.list(f.words)
		return
	case f.name == "name":
		s.put("pattern", `^\S(.*\S)?$`)
		s.number("maxLength", MaxName)
	case f.name == "date":
		s.put("format", "date")
	case f.name == "currency":
		s.put("pattern", "^[A-Z]{3}$")
	default:
		s.number("maxLength", MaxRunes)
	}
	if f.must {
		s.number("minLength", 1)
	}
	if f.eg != "" {
		s.examples(f.eg)
	}
}

// describe is the field's sentence with what a schema cannot say.
func (f *field) describe() string {
	if limits := f.limits(unit.US); limits != "" && f.shape != shapeWhole {
		if other := f.limits(unit.Metric); other != limits {
			limits += ", or " + other
		}
		return f.doc + " (" + limits + ")"
	}
	return f.doc
}

// limits shows a field's limits in one system.
func (f *field) limits(s unit.System) string {
	if !f.limited {
		return ""
	}
	show := func(si float64) string { return unit.Value{SI: si, Kind: f.kind}.Format(s) }
	return show(f.lo) + " to " + show(f.hi)
}

// def is one definition of a quantity: of a kind, and whether it may name a
// survey point.
type def struct {
	kind  unit.Kind
	level bool
}

func (d def) name() string {
	if d.level {
		return "level"
	}
	return d.kind.Name()
}

// quantity writes the three ways a quantity is written.
func (s *schema) quantity(d def) {
	us, metric := d.kind.UnitName(unit.US), d.kind.UnitName(unit.Metric)
	what := "a quantity of the kind " + d.kind.Name()
	examples := []string{d.kind.Example(unit.US)}
	if eg := d.kind.Example(unit.Metric); eg != examples[0] {
		examples = append(examples, eg)
	}
	if d.level {
		what = "an elevation above the datum; or a survey point, @name, with an offset or without, where @water and @rim are the pond's own unless the survey has points of these names"
		examples = append(examples, "@upper lip", "@water - 4 in")
	}
	s.put("description", what+": a text with its unit, a bare number"+bareIn(us, metric)+", or an object that tells where it comes from and how far off it may be")
	if us != "" {
		s.name("x-unit")
		s.object(func() {
			s.put("us", us)
			s.put("metric", metric)
		})
	}
	s.name("anyOf")
	s.token(jsontext.BeginArray)
	s.object(func() {
		s.put("type", "string")
		s.number("maxLength", MaxRunes)
		s.examples(examples...)
	})
	s.object(func() { s.put("type", "number") })
	s.object(func() {
		s.put("type", "object")
		s.name("additionalProperties")
		s.token(jsontext.False)
		s.name("required")
		s.list([]string{"value"})
		s.name("properties")
		s.object(func() {
			for i := range entryForm.fields {
				f := &entryForm.fields[i]
				s.name(f.name)
				s.object(func() {
					s.put("description", f.doc)
					if f.name == "value" || f.name == "tolerance" {
						s.put("type", "string", "number")
						return
					}
					s.text(f)
				})
			}
		})
	})
	s.token(jsontext.EndArray)
}

// bareIn says which unit a bare number takes.
func bareIn(us, metric string) string {
	switch us {
	case "%":
		return " of at most 1, which is the ratio itself"
	case "":
		return ""
	case metric:
		return " in " + us
	}
	return " in " + us + " (us) or " + metric + " (metric)"
}

// parts lists the structs below a form, each once, in the order met.
func parts(f *form, seen []*form) []*form {
	for i := range f.fields {
		below := f.fields[i].form
		if below == nil || slices.Contains(seen, below) {
			continue
		}
		seen = parts(below, append(seen, below))
	}
	return seen
}

// quantities lists the kinds that the document uses.
func kinds() []def {
	var defs []def
	seen := map[def]bool{}
	for _, f := range append([]*form{plan}, parts(plan, nil)...) {
		for i := range f.fields {
			if fd := &f.fields[i]; fd.shape == shapeEntry || fd.shape == shapeLevel {
				if d := (def{fd.kind, fd.shape == shapeLevel}); !seen[d] {
					seen[d] = true
					defs = append(defs, d)
				}
			}
		}
	}
	return defs
}
