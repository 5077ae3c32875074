package words

import (
	"slices"
	"strings"
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// strict makes a text that lacks Spanish a fault; else it is listed and shown in
// English with a mark.
const strict = true

// alike are texts that are rightly the same in both languages.
var alike = []string{"{number}. {where}", "{name}[, {size}]", "manual {manual} {time}", "{length} {unit}", "{name}", "{new}", "{what} {number} ({unit})", "{name}, {rate}", "material", "Material", "total", "Volts", "Plashet", "1×", "A4"}

// Every code of the English catalogue has its text in the Spanish one, and none
// is there that has no English.
func TestSpanishIsWhole(t *testing.T) {
	en, es := joined(english), joined(spanish)
	var missing []string
	for _, code := range English().Codes() {
		if es[code] == "" {
			missing = append(missing, code)
		}
	}
	if len(missing) > 0 {
		tell := t.Logf
		if strict {
			tell = t.Errorf
		}
		tell("%d of %d texts lack Spanish: %s", len(missing), len(en), strings.Join(missing, " "))
	}
	for code := range es {
		if en[code] == "" {
			t.Errorf("%s is in Spanish and not in English", code)
		}
	}
	for i, part := range spanish { // each stands beside its English one
		for code := range part {
			if english[i][code] == "" {
				t.Errorf("%s stands in another part than in English", code)
			}
		}
	}
}

// arguments lists the names that a text asks for, and whether each comes in both
// systems of units.
func arguments(text string) []string {
	var out []string
	for _, p := range placeholder.FindAllStringSubmatch(text, -1) {
		if !strings.Contains(p[2], "|") { // a plural chooses a word only
			out = append(out, p[1]+p[2])
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// optionals lists what each bracketed part asks for.
func optionals(text string) []string {
	var out []string
	for _, part := range strings.Split(text, "[")[1:] {
		inside, _, _ := strings.Cut(part, "]")
		out = append(out, strings.Join(arguments(inside), " "))
	}
	slices.Sort(out)
	return out
}

// A Spanish text asks for what the English one asks for, leaves out the same
// where it is not given, ends as it ends, and is not the English one.
func TestSpanishSaysTheSame(t *testing.T) {
	en, es := joined(english), joined(spanish)
	for _, code := range Spanish().Codes() {
		a, b := en[code], es[code]
		if x, y := arguments(a), arguments(b); !slices.Equal(x, y) {
			t.Errorf("%s asks for %v, in Spanish for %v", code, x, y)
		}
		if x, y := optionals(a), optionals(b); !slices.Equal(x, y) {
			t.Errorf("%s leaves out parts with %q, in Spanish with %q", code, x, y)
		}
		if a == b && !slices.Contains(alike, a) {
			t.Errorf("%s is English: %q", code, b)
		}
		if strings.HasSuffix(a, ".") != strings.HasSuffix(b, ".") {
			t.Errorf("%s ends otherwise: %q, %q", code, a, b)
		}
		if strings.Count(a, "“") != strings.Count(b, "“") || strings.Count(b, "“") != strings.Count(b, "”") {
			t.Errorf("%s quotes otherwise: %q, %q", code, a, b)
		}
		if strings.HasPrefix(a, "Danger") != strings.HasPrefix(b, "Peligro") {
			t.Errorf("%s: one of the two says danger: %q, %q", code, a, b)
		}
	}
}

// What Spanish lacks is said in English, with a mark that shows it.
func TestLackingIsMarked(t *testing.T) {
	l := &Language{behind: &Language{templates: map[string]string{"a.b": "Pump {name}."}}}
	m := trace.Message{Code: "a.b", Args: []trace.Arg{trace.Str("name", "P1")}}
	if got := l.Say(m, unit.US); got != "(en) Pump P1." {
		t.Error(got)
	}
	if got := l.Word("a.b"); got != "(en) Pump {name}." {
		t.Error(got)
	}
}

// A count picks one word for one and another for many.
func TestPlural(t *testing.T) {
	l := &Language{templates: map[string]string{"a.b": "{count} {count:línea|líneas}"}}
	for n, want := range map[int]string{0: "0 líneas", 1: "1 línea", 2: "2 líneas"} {
		m := trace.Message{Code: "a.b", Args: []trace.Arg{trace.Num("count", unit.Ratio(n), unit.KindCount)}}
		if got := l.Say(m, unit.US); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// A place in the job is told in the words of the language, with the names as
// they are.
func TestPlaces(t *testing.T) {
	l := &Language{templates: map[string]string{"a.b": "{where}: falta."}, fields: map[string]string{"watercourse": "curso de agua", "width": "ancho"}}
	at := trace.At("where", trace.Place{{Word: "watercourse", Name: "width"}, {Word: "width"}}, trace.Place{{Word: "lip", Name: "2"}})
	if got, want := l.Say(trace.Message{Code: "a.b", Args: []trace.Arg{at}}, unit.US), "curso de agua width, ancho; lip 2: falta."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if want := "watercourse width, width; lip 2"; at.Text != want {
		t.Errorf("%q, want %q", at.Text, want)
	}
}
