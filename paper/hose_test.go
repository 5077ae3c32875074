package paper

import (
	"os"
	"strings"
	"testing"

	"plashet/job"
	"plashet/words"
)

// TestHoseOnCard: who cuts by the card or by the drawing must not take a hose's
// length off rigid pipe, so both say that it is a hose, in each language.
func TestHoseOnCard(t *testing.T) {
	data, err := os.ReadFile("../engine/design/testdata/skew-sump.json")
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(data)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	a := &j.Assembly
	a.Attitude = "lying"
	for path, value := range map[string]string{
		"/assembly/turn": "30", "/assembly/at/x": "12.25916 in", "/assembly/at/y": "5.11517 in", "/assembly/at/z": "0 in",
	} {
		if f := j.Set(path, value); f != nil {
			t.Fatal(f)
		}
	}
	a.Parts = []job.Laid{{Fitting: "male adapter"}, {Fitting: "union"}, {Fitting: "hose", Mark: "H1"}, {Fitting: "bulkhead fitting"}}
	for path, value := range map[string]string{
		"/assembly/parts/0/next": "2-1/4", "/assembly/parts/0/nextBy": "pipe", "/assembly/parts/2/roll": "90",
		"/assembly/parts/2/bend": "30", "/assembly/parts/2/before": "5.25072 in", "/assembly/parts/2/behind": "5.25072 in",
	} {
		if f := j.Set(path, value); f != nil {
			t.Fatal(f)
		}
	}
	in := input(t, j, Letter)
	if in.Result.Assembly == nil || len(in.Result.Assembly.Hoses) != 1 {
		t.Fatalf("no hose is laid: %v", in.Result.Faults)
	}
	for _, l := range []struct {
		say         *words.Language
		card, drawn string
	}{
		{words.English(), "H1 is a hose: cut it from 1-1/2 flexible pipe, not from rigid pipe.", "H1 is a hose, not rigid pipe"},
		{words.Spanish(), "H1 es manguera: córtela de tubo flexible de 1-1/2, no de tubo rígido.", "H1 es manguera, no tubo rígido"},
	} {
		in.Say = l.say
		for name, want := range map[string]string{"cut": l.card, "assembly": l.drawn} {
			var all []string
			for _, s := range sheetsOf(t, in, name) {
				for i := range s.Pages {
					for _, x := range texts(&s.Pages[i]) {
						all = append(all, x.Text)
					}
				}
			}
			if got := strings.Join(all, " "); !strings.Contains(got, want) {
				t.Errorf("sheet %s does not say %q:\n%s", name, want, got)
			}
		}
	}
}
