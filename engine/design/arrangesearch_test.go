package design

import (
	"context"
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/job"
)

// TestArrange: every layout found can be kept, and the job with it is designed
// without a danger in its assembly, with the cut card as kept.
func TestArrange(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	told := 0
	a := Arrange(context.Background(), book, j, ArrangeWant{Elbows: 2}, func(arrange.Progress) { told++ })
	if a.Outcome == nil || len(a.Outcome.Layouts) == 0 || len(a.Faults) > 0 || told == 0 {
		t.Fatalf("%+v, told %d times", a.Faults, told)
	}
	for i := range a.Outcome.Layouts {
		next, faults := a.Keep(book, j, i)
		if len(faults) > 0 {
			t.Errorf("layout %d: %v", i+1, faults)
			continue
		}
		r := Solve(book, next)
		if codes := keptCodes(r); len(codes) > 0 || r.NotToCut || r.Assembly == nil || len(r.Assembly.LiftOut.Moves) != len(a.Outcome.Layouts[i].Way) {
			t.Errorf("layout %d: %v, not to cut %v", i+1, codes, r.NotToCut)
		}
	}
}

// TestArrangeStopped: a search that is stopped says so.
func TestArrangeStopped(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if a := Arrange(ctx, book, j, ArrangeWant{}, nil); a.Outcome == nil || a.Outcome.Proof.Claim != arrange.Stopped {
		t.Errorf("%+v", a.Outcome)
	}
}

// TestArrangeTells: obstacles that stand in each other are told, and searched; the finding comes with its place in the
// job's words.
func TestArrangeTells(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	j.Vault.Obstacles = []job.Obstacle{{Name: "a", From: xyz(0, 0, 0), To: xyz(0.1, 0.1, 0.1)}, {Name: "b", From: xyz(0.05, 0.05, 0.05), To: xyz(0.2, 0.2, 0.2)}}
	a := Arrange(context.Background(), book, j, ArrangeWant{}, nil)
	k := slices.IndexFunc(a.Findings, func(f trace.Finding) bool { return f.Code == FindOverlap })
	if len(a.Faults) != 0 || k < 0 || a.Outcome == nil {
		t.Fatalf("%+v", a.Faults)
	}
	if w, _ := argument(a.Findings[k].Message, "where"); w.Text == "" {
		t.Errorf("%+v", a.Findings[k])
	}
}

// TestArrangeCosts: a layout costs its fittings and pipe where all have prices,
// and else nothing is told.
func TestArrangeCosts(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	for _, item := range []string{"street elbow 90, 2", "street elbow 45, 2", "check valve spring, 2"} {
		j.Prices = append(j.Prices, job.Price{Item: item, Price: job.Money{Text: "10"}})
	}
	a := Arrange(context.Background(), book, j, ArrangeWant{Elbows: 1}, nil)
	if slices.ContainsFunc(a.Findings, func(f trace.Finding) bool { return f.Code == FindNoPrices }) {
		t.Error("prices are missing")
	}
	for _, l := range a.Outcome.Layouts {
		// By hand from the job's prices: adapter 2.60, union 14.20, bulkhead 23.50,
		// elbow 3.15, street elbow 10, swing valve 38 or spring valve 10; pipe 1.90 a foot.
		want := 2.60 + 14.20 + 23.50
		for _, p := range l.Chain.Parts {
			switch p.Kind {
			case layout.CheckSwing:
				want += 38
			case layout.CheckSpring:
				want += 10
			}
			if turn, _ := p.Turn(); turn != 0 {
				if want += 3.15; p.In.Kind != p.Out.Kind {
					want += 10 - 3.15
				}
			}
		}
		for _, c := range l.Laid.Pieces {
			want += 1.90 / 0.3048 * float64(c.Cut)
		}
		if d := l.Worth.Cost - want; !l.Worth.Priced || d > 1e-9 || d < -1e-9 {
			t.Errorf("%v, by hand %v", l.Worth.Cost, want)
		}
	}
}
