package words

import (
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// codeDoc is a code and what its comment says.
type codeDoc struct{ name, code, doc, pkg string }

// isCode tells a message code from other text: words joined by dots.
var isCode = regexp.MustCompile(`^[a-z]+(\.[A-Za-z-]+)+$`)

// isName tells how a constant with a code is called.
var isName = regexp.MustCompile(`^(Step|Code|Fault|Find|Finding|Caution|Assume|Reason|Remedy|Doubt|Check|Change)[A-Z]`)

// codes reads the constants of the engine and of the packages job and takeoff.
func codes(t *testing.T) []codeDoc {
	t.Helper()
	files, err := filepath.Glob("../engine/*/*.go")
	if err != nil {
		t.Fatal(err)
	}
	var out []codeDoc
	for _, path := range append(files, "../job/codes.go", "../takeoff/codes.go", "../quote/codes.go", "../offer/codes.go", "../shelf/codes.go", "../shelf/chart/codes.go") {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range f.Decls {
			if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.CONST {
				out = append(out, constants(t, g, f.Name.Name)...)
			}
		}
	}
	return out
}

func constants(t *testing.T, g *ast.GenDecl, pkg string) (out []codeDoc) {
	for _, spec := range g.Specs {
		v := spec.(*ast.ValueSpec)
		for i, name := range v.Names {
			if i >= len(v.Values) {
				continue
			}
			lit, ok := v.Values[i].(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				continue
			}
			s, err := strconv.Unquote(lit.Value)
			if err != nil {
				t.Fatal(err)
			}
			if isName.MatchString(name.Name) && isCode.MatchString(s) {
				doc := v.Doc.Text() + v.Comment.Text()
				if !g.Lparen.IsValid() {
					doc += g.Doc.Text()
				}
				out = append(out, codeDoc{name.Name, s, doc, pkg})
			}
		}
	}
	return out
}

func TestEveryCodeHasASentence(t *testing.T) {
	l := English()
	known := map[string]string{}
	pkgs := map[string]bool{}
	for _, c := range codes(t) {
		if other, twice := known[c.code]; twice {
			t.Errorf("%s stands in %s and in %s", c.code, other, c.pkg)
		}
		known[c.code], pkgs[c.pkg] = c.pkg, true
		if !l.Has(c.code) {
			t.Errorf("%s of %s has no sentence", c.code, c.pkg)
		}
	}
	for _, p := range []string{"unit", "geom", "catalog", "hydro", "network", "level", "layout", "verify", "glue", "cut", "design", "job", "takeoff", "size", "quote", "offer", "shelf", "chart"} {
		if !pkgs[p] {
			t.Errorf("no code found in package %s: this test does not see it", p)
		}
	}
	for code := range l.templates {
		if _, label := labels()[code]; known[code] == "" && !label {
			t.Errorf("the sentence of %s has no code", code)
		}
	}
}

// labels are what the packages answer, app, paper, table and drawing say themselves.
func labels() map[string]string {
	all := map[string]string{}
	for _, part := range []map[string]string{enAnswer, enPrint, enPaper, enTable, enSure, enLaid, enChoose, enFound, enOffered, enShelves, enApp, enSheet, enGuide, enLabel, enDraw} {
		maps.Copy(all, part)
	}
	return all
}

// The labels of an answer stand in its source, in full or as the part before
// the last dot with something put behind.
func TestLabelsAreUsed(t *testing.T) {
	var files []string
	for _, where := range []string{"../answer/*.go", "../paper/*.go", "../table/*.go", "../app/*.go", "../app/page/*.html", "../drawing/*.go", "../cli/*.go"} {
		found, err := filepath.Glob(where)
		if err != nil || len(found) == 0 {
			t.Fatal("no source in", where, err)
		}
		files = append(files, found...)
	}
	var source strings.Builder
	for _, path := range files {
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		source.Write(b)
	}
	for code := range labels() {
		if strings.HasPrefix(code, "bound.") {
			continue // package words itself says them
		}
		code = strings.TrimPrefix(code, "draw.")
		stem := code[:strings.LastIndexByte(code, '.')+1]
		if !strings.Contains(source.String(), `"`+code+`"`) && (stem == "" || !strings.Contains(source.String(), `"`+stem+`"`)) {
			t.Errorf("nothing uses the label %s", code)
		}
	}
}

func TestNoCodeTwice(t *testing.T) {
	seen := map[string]bool{}
	for _, part := range english {
		for code := range part {
			if seen[code] {
				t.Errorf("%s has two sentences", code)
			}
			seen[code] = true
		}
	}
}

var (
	placeholder = regexp.MustCompile(`\{([^{}:]*)(:[^{}]*)?\}`)
	bracketed   = regexp.MustCompile(`(?s)\([^()]*\)`)
	argList     = regexp.MustCompile(`(?s)\bArgs: (.*?)(\. |\.\n|\.$|$)`)
	argName     = regexp.MustCompile(`^[a-zA-Z]+$`)
)

// documented reads the arguments of a code's comment; false where it does not
// list them plainly ("Args as above").
func documented(doc string) (map[string]bool, bool) {
	if strings.Contains(doc, "No args") || strings.Contains(doc, "No\nargs") {
		return map[string]bool{}, true
	}
	m := argList.FindStringSubmatch(bracketed.ReplaceAllString(strings.TrimSpace(doc), ""))
	if m == nil {
		return nil, false
	}
	out := map[string]bool{}
	for _, a := range strings.Split(m[1], ",") {
		if a = strings.TrimSpace(a); !argName.MatchString(a) {
			return nil, false
		}
		out[a] = true
	}
	return out, true
}

func TestPlaceholdersAreArguments(t *testing.T) {
	l := English()
	read := 0
	for _, c := range codes(t) {
		args, ok := documented(c.doc)
		if !ok {
			continue
		}
		read++
		args["where"] = true // design adds it to what the parts say
		if c.pkg == "design" && strings.HasPrefix(c.name, "Find") {
			args["found"], args["limit"] = true, true // by (*model).found, for findings held against a limit
		}
		if c.pkg == "verify" {
			args["found"], args["limit"] = true, true // every check has them
		}
		if strings.HasPrefix(c.code, "assume.") {
			args["value"] = true // an assumption carries its value
		}
		for _, p := range placeholder.FindAllStringSubmatch(l.templates[c.code], -1) {
			if !args[p[1]] {
				t.Errorf("%s: {%s} is no documented argument", c.code, p[1])
			}
			if p[2] != "" && p[2] != ":both" && p[2] != ":flag" && !strings.Contains(p[2], "|") {
				t.Errorf("%s: {%s%s} has no such style", c.code, p[1], p[2])
			}
		}
	}
	if read < 80 {
		t.Errorf("the arguments of only %d codes were read", read)
	}
}

func TestDocumented(t *testing.T) {
	for _, c := range []struct {
		doc, want string
		ok        bool
	}{
		{"CodeX: x. Args: name,\nfound, limit (the bound it breaks).\n", "name found limit", true},
		{"CodeX: x. No args.", "", true},
		{"CodeX: x. Args as above.", "", false},
		{"a weir. Args: value", "value", true},
	} {
		got, ok := documented(c.doc)
		if ok != c.ok || len(got) != len(strings.Fields(c.want)) {
			t.Errorf("%q gave %v, %v", c.doc, got, ok)
		}
		for _, w := range strings.Fields(c.want) {
			if !got[w] {
				t.Errorf("%q: %s is missing in %v", c.doc, w, got)
			}
		}
	}
}

func TestSay(t *testing.T) {
	l := &Language{templates: map[string]string{
		"a.b":    "{name} is {found}; {limit} is wanted.",
		"a.both": "{found:both}.",
		"a.open": "an open {brace",
	}}
	// 3/4 in is 0.01905 m by the definition of the inch (NIST SP 811).
	depth := trace.Num("found", unit.Length(0.01905), unit.KindDepth)
	nought := trace.Num("limit", unit.Length(0), unit.KindDepth)
	for _, c := range []struct {
		name string
		m    trace.Message
		s    unit.System
		want string
	}{
		{"US", trace.Message{Code: "a.b", Args: []trace.Arg{trace.Str("name", "Lip"), depth, nought}}, unit.US, "Lip is 0.75 in; 0.00 in is wanted."},
		{"metric", trace.Message{Code: "a.b", Args: []trace.Arg{trace.Str("name", "Lip"), depth, nought}}, unit.Metric, "Lip is 19.1 mm; 0.0 mm is wanted."},
		{"missing", trace.Message{Code: "a.b", Args: []trace.Arg{depth}}, unit.Metric, "{name} is 19.1 mm; {limit} is wanted."},
		{"both", trace.Message{Code: "a.both", Args: []trace.Arg{depth}}, unit.US, "0.75 in (19.1 mm)."},
		{"braces in a name", trace.Message{Code: "a.b", Args: []trace.Arg{trace.Str("name", "{found}"), depth, nought}}, unit.US, "{found} is 0.75 in; 0.00 in is wanted."},
		{"open brace", trace.Message{Code: "a.open"}, unit.US, "an open {brace"},
		{"unknown", trace.Message{Code: "a.new", Args: []trace.Arg{trace.Str("name", "Lip"), depth}}, unit.US, "a.new; name Lip; found 0.75 in"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := l.Say(c.m, c.s); got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}

func TestSayOptional(t *testing.T) {
	l := &Language{templates: map[string]string{"a.b": "Blocked.[ {by} leaves {found}.] Move it.", "a.open": "a [bracket {found}"}}
	by := trace.Str("by", "Floor")
	found := trace.Num("found", unit.Length(0.0254), unit.KindDepth) // 1 in, NIST SP 811
	for _, c := range []struct {
		m    trace.Message
		want string
	}{
		{trace.Message{Code: "a.b", Args: []trace.Arg{by, found}}, "Blocked. Floor leaves 1.00 in. Move it."},
		{trace.Message{Code: "a.b", Args: []trace.Arg{by}}, "Blocked. Move it."},
		{trace.Message{Code: "a.b"}, "Blocked. Move it."},
		{trace.Message{Code: "a.open", Args: []trace.Arg{found}}, "a [bracket 1.00 in"},
	} {
		if got := l.Say(c.m, unit.US); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
}

// A finding and an assumption name their own values, and saying them leaves
// their arguments as they were.
func TestFindingAndAssumption(t *testing.T) {
	l := &Language{templates: map[string]string{"a.find": "{name}: {found} of {limit}.", "a.assume": "{value} was assumed."}}
	args := append(make([]trace.Arg, 0, 8), trace.Str("name", "Lip"))
	inch, two := unit.Of(unit.Length(0.0254), unit.KindDepth), unit.Of(unit.Length(0.0508), unit.KindDepth)
	f := trace.Finding{Message: trace.Message{Code: "a.find", Args: args}, Found: inch, Limit: two}
	if got, want := l.Finding(f, unit.US), "Lip: 1.00 in of 2.00 in."; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if spare := args[:2]; spare[1].Name != "" {
		t.Errorf("the arguments of the finding were written to: %v", spare)
	}
	a := trace.Assumption{Message: trace.Message{Code: "a.assume"}, Value: inch}
	if got, want := l.Assumption(a, unit.Metric), "25.4 mm was assumed."; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestWord(t *testing.T) {
	l := &Language{templates: map[string]string{"word.pump": "pump"}}
	if got := l.Word("word.pump"); got != "pump" {
		t.Error(got)
	}
	if got := l.Word("word.none"); got != "word.none" {
		t.Error(got)
	}
}

// A flag shows the part of a template that it stands in, and nothing else of itself.
func TestFlag(t *testing.T) {
	for _, l := range Languages() {
		m := trace.Message{Code: "design.glue.withheld"}
		without := l.Say(m, unit.US)
		for _, name := range []string{"pump", "union", "captive", "second"} {
			m.Args = []trace.Arg{trace.Flag(name)}
			if with := l.Say(m, unit.US); len(with) <= len(without) || strings.ContainsAny(with, "{}[]") || strings.Contains(with, "yes") {
				t.Errorf("%s, %s: %q", l.Tag, name, with)
			}
		}
	}
}

// TestMark: a finding stands under one word of each language in all that a person
// reads: no catalogue has another for a severity.
func TestMark(t *testing.T) {
	for tag, want := range map[string][3]string{"en": {"stop", "watch", "note"}, "es": {"alto", "ojo", "nota"}} {
		l, ok := In(tag)
		if !ok {
			t.Fatal(tag)
		}
		got := [3]string{l.Mark(trace.Danger), l.Mark(trace.Caution), l.Mark(trace.Info)}
		if got != want {
			t.Errorf("%s: %q, want %q", tag, got, want)
		}
		for _, code := range l.Codes() {
			if strings.Contains(code, ".severity.") {
				t.Errorf("%s: %s is another word for a severity", tag, code)
			}
		}
	}
}
