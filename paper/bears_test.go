package paper

import (
	"slices"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/job"
	"plashet/words"
)

// TestAcceptedInFull: a finding that is accepted stands with its reason on the
// sheets that it bears on: a short fall on water, offer, start-up record and care
// sheet; a fitting that is not measured on the sheets of cutting and gluing.
func TestAcceptedInFull(t *testing.T) {
	j := example(t, "hillside-cascade")
	j.Accepted = []job.Acceptance{
		{Code: design.FindShort, Path: "/watercourses/0", Reason: "Reason7 of the fall"},
		{Code: "layout.measure.first", Reason: "Reason8 of the fitting"},
		{Code: "takeoff.rules.differ", Reason: "Reason9 of the stone"},
	}
	in := input(t, j, Letter)
	on := map[string][]string{}
	for _, s := range sheetsOf(t, in) {
		text := strings.Join(strings.Fields(written(s)), " ")
		for _, r := range []string{"Reason7", "Reason8", "Reason9"} {
			if strings.Contains(text, r) {
				on[r] = append(on[r], s.Name)
			}
		}
		holds(t, "accepted", in, s)
	}
	for r, want := range map[string][]string{
		"Reason7": {"water", "quote", "start", "care"},
		"Reason8": {"assembly", "cut", "rolls", "glue", "start"},
		"Reason9": {"material", "quote"},
	} {
		if !slices.Equal(on[r], want) {
			t.Errorf("%s stands on %v, want %v", r, on[r], want)
		}
	}
}

// TestNothingGoesUntold: every assumption and every open finding of every
// example stands in full on one sheet at least.
func TestNothingGoesUntold(t *testing.T) {
	n := 0
	for _, name := range demo.Names() {
		in := input(t, example(t, name), Letter)
		text := ""
		for _, s := range sheetsOf(t, in) {
			text += strings.Join(strings.Fields(written(s)), " ") + "\n"
		}
		told := func(code, s string) {
			n++
			// Page breaks may part a sentence: its beginning is enough.
			s = strings.Join(strings.Fields(words.Plain(s)), " ")
			if s = string([]rune(s)[:min(40, len([]rune(s)))]); !strings.Contains(text, s) {
				t.Errorf("%s: %s, %q, stands on no sheet", name, code, s)
			}
		}
		for _, a := range in.Result.Assumptions {
			told(a.Code, in.Say.Assumption(a, in.Result.Units))
		}
		for _, x := range in.Result.Findings {
			if x.Severity != trace.Info {
				told(x.Code, in.Say.Finding(x, in.Result.Units))
			}
		}
	}
	if n < 100 {
		t.Fatalf("only %d", n)
	}
}

// TestBandsOnPaper: the hydraulic sheet sets the band of every feed's flow and of
// the pond's levels beside the figures.
func TestBandsOnPaper(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []Paper{Letter, A4} {
		in := input(t, example(t, "hillside-cascade"), p)
		in.Result = design.SolveBands(book, in.Job, 64, 1)
		s := one(t, in, "water")
		holds(t, "bands", in, s)
		text := written(s)
		n := 0
		for _, b := range in.Result.Bands.Outputs {
			if strings.HasSuffix(b.Figure, ".freeboard") || strings.HasPrefix(b.Figure, "feed") && strings.HasSuffix(b.Figure, ".flow") {
				n++
				if want := in.Say.Value(b.Low, in.Result.Units) + " to " + in.Say.Value(b.High, in.Result.Units); !strings.Contains(text, want) {
					t.Errorf("%s %q is not on the sheet", b.Figure, want)
				}
			}
		}
		if n < 4 {
			t.Fatalf("only %d bands", n)
		}
	}
}
