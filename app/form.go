package app

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// input is a field of the job ready for a form.
type input struct {
	job.Field
	ID, Title, Value, Error string
	Keyboard                string // inputmode
	Suffix                  string // the unit a bare number takes
	Stepper                 bool
	Options                 string // ID of the list of what may be meant
	Hint                    string
	Ways                    []way  // where what was typed can be read in two ways: either, to be tapped
	Unsaid                  string // what a list of words shows while none is chosen
}

// group is an object of the job: its fields, the objects in it, and its lists.
type group struct {
	Path, ID, Title string
	Inputs          []input // shown at once
	More            []input // empty and seldom needed
	Groups          []group
	Lists           []list
	Element         bool // it stands in a list: it can be moved and removed
	First, Last     bool
	Filled          bool
	Open            bool    // an input of More has a fault
	Draw            *ground // the grid an outline is drawn on
	Starts          []start // the ways to begin with it
}

// mostShort is how many fields stand in one line.
const mostShort = 4

// list is a list of objects, with what a new one needs.
type list struct {
	Path, ID, Title, Doc string
	Elements             []group
	Kinds                []string // where an element is one of several kinds
	Short                bool     // its elements are a few fields each
	New                  []input
}

// former makes groups out of a job.
type former struct {
	a      *app
	j      *job.Job
	typed  map[string]string // what stands in the form and was not taken
	faults map[string]string
	first  []string

	ways     map[string][]string
	standing []trace.Assumption // in force, of the job as it stands
}

// title begins a label with a capital.
func title(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

// fieldID makes an ID for HTML of a path.
func fieldID(path string) string {
	return "f" + strings.Map(func(r rune) rune {
		if r == '/' || r == '~' {
			return '-'
		}
		return r
	}, path)
}

// keyboards by kind: digits alone where no unit, fraction or sign is typed.
func keyboard(f job.Field) string {
	switch {
	case f.Sort == job.SortWhole:
		return "numeric"
	case f.Sort == job.SortMoney:
		return "decimal"
	case f.Sort == job.SortQuantity && (f.Kind == unit.KindPower || f.Kind == unit.KindPercent || f.Kind == unit.KindCount || f.Kind == unit.KindRatio):
		return "decimal"
	}
	return "text"
}

// lists of what may be meant, by the end of a path.
var options = [][2]string{
	{"/pipe/kind", "o-kinds"},
	{"/pipe/size", "o-sizes"},
	{"/fitting", "o-fittings"},
	{"/use", "o-pumps"},
	{"/furtherPumps/*/pump", "o-pumps"},
	{"/runs/*/from", "o-places"},
	{"/runs/*/to", "o-places"},
	{"/assembly/attitude", "o-attitudes"},
}

func (x *former) input(f job.Field) input {
	in := input{Field: f, ID: fieldID(f.Path), Title: x.label(f), Value: f.Text, Keyboard: keyboard(f), Stepper: stepped(f) && f.Filled, Hint: x.hint(f)}
	if f.Sort == job.SortQuantity || f.Sort == job.SortLevel {
		in.Suffix = f.Kind.UnitName(x.j.System())
	}
	if f.Sort == job.SortLevel {
		in.Options = "o-levels"
	}
	for _, o := range options {
		if matches(f.Path, "*"+o[0]) || matches(f.Path, o[0]) {
			in.Options = o[1]
		}
	}
	if text, ok := x.typed[f.Path]; ok {
		in.Value = text
	}
	in.Error, in.Ways = x.faults[f.Path], waysTo(f.Path, x.ways[f.Path])
	if f.Sort == job.SortWord {
		in.Unsaid = x.unsaid(f)
	}
	return in
}

// label is the field's name in the catalogue's words, or in the document's.
func (x *former) label(f job.Field) string {
	if code := "app.label." + plainPath(f.Path); x.a.Language.Has(code) {
		return x.a.Language.Word(code)
	}
	return title(x.a.Language.Field(f.Label))
}

// hint tells what a field is for, in the catalogue's words or the document's.
func (x *former) hint(f job.Field) string {
	if code := "app.hint." + plainPath(f.Path); x.a.Language.Has(code) {
		return x.a.Language.Word(code)
	}
	return x.a.Language.Doc(f.Doc)
}

// plainPath is a path of the job without the numbers of the elements, as keys of
// the catalogue have it: pumps-attitudes-port-x.
func plainPath(path string) string {
	var kept []string
	for _, token := range strings.Split(path, "/") {
		if _, err := strconv.Atoi(token); err != nil && token != "" && token != "-" {
			kept = append(kept, token)
		}
	}
	return strings.Join(kept, "-")
}

// keptByItself are parts of the job that its buttons keep, and nobody types.
var keptByItself = []string{"/pumps/*/taken", "/assembly/kept"}

// matches holds a path against a pattern in which * stands for one token, and
// at the front for any number of them.
func matches(path, pattern string) bool {
	p, q := strings.Split(path, "/"), strings.Split(pattern, "/")
	if strings.HasPrefix(pattern, "*/") {
		q = q[1:]
		if len(p) < len(q) {
			return false
		}
		p = p[len(p)-len(q):]
	}
	return slices.EqualFunc(p, q, func(a, b string) bool { return a == b || b == "*" })
}

// group makes the form of the object at a path.
func (x *former) group(path, name string) group {
	g := group{Path: path, ID: "g" + fieldID(path), Title: name}
	for _, f := range x.j.Fields(path) {
		switch f.Sort {
		case job.SortPart:
			if slices.ContainsFunc(keptByItself, func(p string) bool { return matches(f.Path, p) }) {
				continue
			}
			sub := x.group(f.Path, x.label(f))
			sub.Filled = f.Filled
			g.Groups = append(g.Groups, sub)
		case job.SortKind:
			if f.Filled {
				sub := x.group(f.Path, x.label(f))
				g.Inputs, g.More, g.Lists = append(g.Inputs, sub.Inputs...), append(g.More, sub.More...), append(g.Lists, sub.Lists...)
				g.Groups = append(g.Groups, sub.Groups...)
				g.Title = x.label(f)
				if n := x.j.Fields(f.Path); len(n) > 0 && n[0].Name == "name" {
					g.Title += " " + n[0].Text
				}
			}
		case job.SortList:
			g.Lists = append(g.Lists, x.list(f))
		default:
			in := x.input(f)
			if f.Must || f.Filled || in.Error != "" || in.Value != f.Text || slices.ContainsFunc(x.first, func(p string) bool { return matches(f.Path, p) }) {
				g.Inputs = append(g.Inputs, in)
			} else {
				g.More = append(g.More, in)
			}
		}
	}
	return g
}

func (x *former) list(f job.Field) list {
	l := list{Path: f.Path, ID: "l" + fieldID(f.Path), Title: x.label(f), Doc: x.hint(f)}
	singular := title(x.a.Language.Field(job.One(f.Label)))
	for i := range f.Count {
		path := f.Path + "/" + itoa(i)
		name := singular + " " + itoa(i+1)
		if f.Names[i] != "" {
			name = singular + " " + f.Names[i]
		}
		g := x.group(path, name)
		g.Element, g.First, g.Last = true, i == 0, i == f.Count-1
		l.Elements = append(l.Elements, g)
	}
	l.Short = len(x.j.Fields(f.Path+"/-")) <= mostShort && len(l.Elements) > 0 && len(l.Elements[0].Groups)+len(l.Elements[0].Lists) == 0
	l.New, l.Kinds = x.fresh(f.Path+"/-", "")
	return l
}

// fresh gives the fields that a new element must have, those of its parts
// among them, or the kinds it may be.
func (x *former) fresh(path, before string) (need []input, kinds []string) {
	fields := x.j.Fields(path)
	for _, f := range fields {
		switch {
		case f.Sort == job.SortKind:
			kinds = append(kinds, f.Name)
		case f.Sort == job.SortPart && f.Must:
			sub, _ := x.fresh(f.Path, before+f.Label+" ")
			need = append(need, sub...)
		case f.Must && f.Sort != job.SortList:
			in := x.input(f)
			if in.Stepper = false; before != "" && !x.a.Language.Has("app.label."+plainPath(f.Path)) {
				in.Title = title(strings.ToLower(x.a.Language.Field(strings.TrimSpace(before)) + " " + in.Title))
			}
			need = append(need, in)
		}
	}
	if len(need) == 0 && len(kinds) == 0 && before == "" {
		for _, f := range fields[:min(len(fields), 3)] {
			if f.Sort != job.SortPart && f.Sort != job.SortList {
				need = append(need, x.input(f))
			}
		}
	}
	return need, kinds
}

// former makes fields of a job, with what was typed and not taken.
func (a *app) former(o *opened, first []string, typed []edit, faults []trace.Fault) *former {
	x := &former{a: a, j: o.job, typed: map[string]string{}, faults: map[string]string{}, first: first, standing: standingOf(o.solved), ways: map[string][]string{}}
	for _, e := range typed {
		x.typed[e.path] = e.text
	}
	for _, f := range faults {
		x.faults[f.Path] = a.faultText(o, f)
		x.ways[f.Path] = job.Ways(f.Message)
	}
	return x
}

// groups makes the forms of a part.
func (a *app) groups(o *opened, p *part, typed []edit, faults []trace.Fault) []group {
	x := a.former(o, p.First, typed, faults)
	var out []group
	head := group{ID: "g-head", Title: a.say("app.group.head")}
	for _, f := range o.job.Fields("") {
		if !slices.Contains(p.Roots, f.Path) {
			continue
		}
		switch f.Sort {
		case job.SortPart:
			out = append(out, x.group(f.Path, x.label(f)))
		case job.SortList:
			out = append(out, group{ID: "g" + fieldID(f.Path), Title: x.label(f), Lists: []list{x.list(f)}})
		default:
			head.Inputs = append(head.Inputs, x.input(f))
		}
	}
	if len(head.Inputs) > 0 {
		out = append([]group{head}, out...)
	}
	return out
}
