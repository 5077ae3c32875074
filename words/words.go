// Package words turns messages (a code and its arguments) into sentences. All
// text that a person reads in an answer stands in its catalogues, one map for
// each part of the house and each language: en_glue.go and es_glue.go. The words
// that the engine hands over as data are in English; another language has them
// in maps by the English word (es_field.go, es_doc_*.go, es_term.go). Who adds an
// English text adds the Spanish one beside it; docs/spanish.md has the terms.
// It computes nothing.
//
// A template names its arguments in braces: "{found}" is printed in the job's
// units, "{found:both}" in both systems, "{count:line|lines}" is the first word
// where the count is 1 and else the second. What stands in square brackets is left
// out when one of its arguments is missing. The rule for a fault: where (in the
// reader's words), what was found as typed, what is possible and by whose
// rule, what to do.
package words

import (
	"maps"
	"slices"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Language is a catalogue of templates by message code, and the tool's own words
// that reach a reader as data: names of fields, kinds of fittings, sizes. It is
// never changed once made.
type Language struct {
	Tag       string // BCP 47
	Name      string // in its own words
	templates map[string]string
	fields    map[string]string // words of the job document, by English
	docs      map[string]string // what its fields are for, by English
	terms     map[string]string // other words that the engine says, by English
	book      map[string]string // kinds of pipe and fittings, by English
	items     map[string]string // those and the other items of lists, by English
	measures  map[string]string // what formulas call their figures, by English
	sources   map[string]string // beginnings of sources that are no titles, by English
	behind    *Language         // says what this one lacks, marked
}

// lacks stands before a text that a language lacks and another says for it.
const lacks = "(en) "

// template finds the text of a code.
func (l *Language) template(code string) (string, bool) {
	if t, ok := l.templates[code]; ok {
		return t, true
	}
	if l.behind != nil {
		if t, ok := l.behind.template(code); ok {
			return lacks + t, true
		}
	}
	return "", false
}

// Has tells whether the catalogue holds a template for the code.
func (l *Language) Has(code string) bool {
	_, ok := l.template(code)
	return ok
}

// Codes lists the codes of the catalogue in order, without what another language
// says for it.
func (l *Language) Codes() []string { return slices.Sorted(maps.Keys(l.templates)) }

// Say fills the template of a message. A code without a template is shown with
// its arguments, so that nothing is hidden.
func (l *Language) Say(m trace.Message, s unit.System) string {
	t, ok := l.template(m.Code)
	if !ok {
		return l.bare(m, s)
	}
	args := l.named(m)
	return l.fill(optional(t, args), args, s)
}

// Finding says a finding; the values found and the limit can be named in its
// template like arguments.
func (l *Language) Finding(f trace.Finding, s unit.System) string {
	f.Args = append(slices.Clone(f.Args), trace.Arg{Name: "found", Value: f.Found}, trace.Arg{Name: "limit", Value: f.Limit})
	return l.Say(f.Message, s)
}

// Assumption says an assumption; its value can be named in its template.
func (l *Language) Assumption(a trace.Assumption, s unit.System) string {
	a.Args = append(slices.Clone(a.Args), trace.Arg{Name: "value", Value: a.Value})
	return l.Say(a.Message, s)
}

// Value shows a value in the units of a system, one that is only a bound with
// the words for it.
func (l *Language) Value(v unit.Value, s unit.System) string {
	return l.Bound(v.Bound, l.units(figure(v).Format(s)))
}

// Unit tells what a price is for: the unit alone where it is for one of it, so
// "ft²", else the value: "43.0 ft".
func (l *Language) Unit(v unit.Value, s unit.System) string {
	const near = 1e-6 // of one, for units that are kept in SI
	if n := v.In(s); v.Kind.UnitName(s) != "" && n > 1-near && n < 1+near {
		return v.Kind.UnitName(s)
	}
	return l.Value(v, s)
}

// units puts the word in a compound unit into the language: "L/h per cm".
func (l *Language) units(figure string) string {
	return strings.Replace(figure, " per ", " "+other(l.terms, "per")+" ", 1)
}

// figure is the number of what may be a bound.
func figure(v unit.Value) unit.Value {
	v.Bound = unit.Exact
	return v
}

// Bound puts the words for a bound in front of a number as shown.
func (l *Language) Bound(b unit.Bound, number string) string {
	code := ""
	switch b {
	case unit.MoreThan:
		code = "bound.more"
	case unit.LessThan:
		code = "bound.less"
	}
	if t, ok := l.template(code); ok {
		return strings.ReplaceAll(t, "{number}", number)
	}
	return number
}

// optional resolves the bracketed parts of a template.
func optional(t string, args []trace.Arg) string {
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(t, "[")
		b.WriteString(before)
		if !found {
			return b.String()
		}
		part, after, closed := strings.Cut(rest, "]")
		if !closed {
			b.WriteString("[" + rest)
			return b.String()
		}
		if given(part, args) {
			b.WriteString(part)
		}
		t = after
	}
}

// given tells that the message has every argument that a part of a template
// names, and that none of them is empty.
func given(part string, args []trace.Arg) bool {
	for _, piece := range strings.Split(part, "{")[1:] {
		name, _, _ := strings.Cut(piece, "}")
		name, _, _ = strings.Cut(name, ":")
		if !slices.ContainsFunc(args, func(a trace.Arg) bool { return a.Name == name && (a.Text != "" || a.Value != (unit.Value{})) }) {
			return false
		}
	}
	return true
}

// Word gives a fixed word or label by its code, or the code itself.
func (l *Language) Word(code string) string {
	if t, ok := l.template(code); ok {
		return t
	}
	return code
}

// marks are the words that findings stand under, the same in text, table, sheet and
// page. Danger and caution are kept for the steps where somebody can get hurt.
var marks = [...]string{trace.Danger: "app.mark.stop", trace.Caution: "app.mark.watch", trace.Info: "app.mark.note"}

// Mark gives the word that a finding stands under. In JSON it is the severity's
// own name, whatever the language.
func (l *Language) Mark(s trace.Severity) string {
	if int(s) >= len(marks) {
		return s.String()
	}
	return l.Word(marks[s])
}

// fill replaces each {name} of a template. An argument that the message lacks
// stays visible as its name in braces.
func (l *Language) fill(t string, args []trace.Arg, s unit.System) string {
	var b strings.Builder
	for {
		open := strings.IndexByte(t, '{')
		if open < 0 {
			break
		}
		end := strings.IndexByte(t[open:], '}')
		if end < 0 {
			break
		}
		b.WriteString(t[:open])
		name, style, _ := strings.Cut(t[open+1:open+end], ":")
		b.WriteString(l.show(name, style, args, s))
		t = t[open+end+1:]
	}
	b.WriteString(t)
	return b.String()
}

func (l *Language) show(name, style string, args []trace.Arg, s unit.System) string {
	for _, a := range args {
		if a.Name != name {
			continue
		}
		one, many, plural := strings.Cut(style, "|")
		switch {
		case style == "flag": // it only asks for the part of the template it stands in
			return ""
		case plural && (a.Text == "1" || a.Text == "" && a.Value.SI == 1):
			return one
		case plural:
			return many
		case len(a.Places) > 0:
			return Plain(l.Places(a.Places))
		case a.Text != "" && said[name]:
			return Plain(l.Term(a.Text))
		case a.Text != "" && listed[name]:
			return Plain(l.Item(a.Text))
		case a.Text != "" && name == "doc":
			return Plain(l.Doc(a.Text))
		case a.Text != "" && (name == "source" || name == "note"):
			return Plain(l.Source(a.Text))
		case a.Text != "" && name == "name": // of the job, but for what is in the book
			return Plain(other(l.book, a.Text))
		case a.Text != "" || a.Value == (unit.Value{}):
			return Plain(a.Text)
		case style == "both":
			return l.Bound(a.Value.Bound, l.units(figure(a.Value).Both(s)))
		default:
			return l.Value(a.Value, s)
		}
	}
	return "{" + name + "}"
}

// bare shows a message that has no template.
func (l *Language) bare(m trace.Message, s unit.System) string {
	var b strings.Builder
	b.WriteString(m.Code)
	for _, a := range m.Args {
		b.WriteString("; ")
		b.WriteString(a.Name)
		b.WriteString(" ")
		b.WriteString(l.show(a.Name, "", m.Args, s))
	}
	return b.String()
}
