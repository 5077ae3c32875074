package paper_test

import (
	"testing"

	"plashet/job"
	"plashet/paper"
)

// A job's own size of paper comes before the one that goes with its units.
func TestPaperOfTheJob(t *testing.T) {
	for _, c := range []struct {
		units, asks string
		want        paper.Paper
	}{
		{"us", "", paper.Letter},
		{"metric", "", paper.A4},
		{"us", "a4", paper.A4},
		{"metric", "letter", paper.Letter},
	} {
		if got := paper.For(&job.Job{Units: c.units, Paper: c.asks}); got != c.want {
			t.Errorf("%s, %q: %s, wanted %s", c.units, c.asks, got.Name(), c.want.Name())
		}
	}
	if _, ok := paper.Named("legal"); ok {
		t.Error("a size that there is not")
	}
}
