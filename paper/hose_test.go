package paper

import (
	"math"
	"os"
	"strings"
	"testing"

	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/job"
)

// hosed gives a job with a kept layout that has a hose.
func hosed(t *testing.T) *job.Job {
	t.Helper()
	data, err := os.ReadFile("../engine/design/testdata/skew-sump.json")
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(data)
	book, err := catalog.New()
	if err != nil || len(faults) > 0 {
		t.Fatal(err, faults)
	}
	next, faults := design.Arrange(t.Context(), book, j, design.ArrangeWant{Elbows: 1}, nil).Keep(book, j, 0)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return next
}

// A hose has a strip of its own, as long as it is round, and is not called an elbow;
// its row of the cut card has its mark. 1-1/2 pipe is 1.900 in outside (ASTM D 1785,
// table 1), and so is hose that goes into its sockets.
func TestHoseStrip(t *testing.T) {
	in := input(t, hosed(t), Letter)
	if in.Result.Assembly == nil || len(in.Result.Assembly.Hoses) != 1 {
		t.Fatal("no hose is laid")
	}
	mark := in.Result.Assembly.Hoses[0].Mark
	whole := func(s Sheet) (all string) {
		for i := range s.Pages {
			for _, x := range texts(&s.Pages[i]) {
				all += x.Text + "\n"
			}
		}
		return all
	}
	rolls := sheetsOf(t, in, "rolls")[0]
	holds(t, "skew sump", in, rolls)
	text := whole(rolls)
	if !strings.Contains(text, "Hose "+mark) || strings.Contains(text, "Elbow "+mark) || strings.Contains(text, "No elbow") {
		t.Error(text)
	}
	round, line := measureStrip(rolls, mark)
	if want := math.Pi * 1.9 * 25.4; math.Abs(round-want) > 0.01 {
		t.Errorf("the strip is %g mm long, the hose %g round", round, want)
	}
	// It bends to the side: a quarter round.
	if want := math.Pi * 1.9 * 25.4 / 4; math.Abs(line-want) > 25.4/32+0.01 {
		t.Errorf("the line at %g mm, not %g", line, want)
	}
	cut := sheetsOf(t, in, "cut")[0]
	if text := whole(cut); !strings.Contains(text, mark+" 1-1/2\" round") {
		t.Error(text)
	}
}
