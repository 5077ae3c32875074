package design

import (
	"math"
	"testing"

	"plashet/engine/unit"
	"plashet/job"
)

// The ring of the demo: two pumps, one loop.
func TestFurtherPumps(t *testing.T) {
	book, j := read(t, "orchard-ring")
	r := Solve(book, j)
	d := r.Delivery
	if d == nil || len(d.Others) != 1 {
		t.Fatal("no delivery of two pumps")
	}
	o := d.Others[0]
	var fed unit.Flow
	for _, f := range d.Feeds {
		fed += f.Flow
	}
	// What the pumps take from the vault comes out at the feeds.
	if math.Abs(float64(d.Drawn-d.Flow-o.Flow)) > 1e-9 || math.Abs(float64(fed-d.Drawn)) > 1e-8 {
		t.Errorf("drawn %v of %v and %v, fed %v", d.Drawn, d.Flow, o.Flow, fed)
	}
	// Both run at the same place of the same curve but for their legs.
	if ratio := float64(o.Flow / d.Flow); ratio < 0.9 || ratio > 1.1 {
		t.Errorf("two equal pumps give %v and %v", d.Flow, o.Flow)
	}
	// Round the loop the losses add up to nothing.
	round := func(names ...string) (h unit.Head) {
		for _, n := range names {
			for _, x := range d.Runs {
				if x.Name == n {
					h += x.Friction + x.Fittings
				}
			}
		}
		return h
	}
	if miss := round("ring west") - round("ring east", "ring back"); math.Abs(float64(miss)) > 1e-6 {
		t.Errorf("the two ways round the ring differ by %v m", float64(miss))
	}
	if d.Share == nil || d.Share.Reach <= 0.9 || d.Share.Reach >= 1.2 {
		t.Errorf("share %+v", d.Share)
	}
	codes := map[string]int{}
	for _, f := range r.Findings {
		codes[f.Code]++
	}
	if codes[FindNoCheck] != 1 || codes[FindTogether] != 1 {
		t.Errorf("findings %v", codes)
	}
	if r.Levels == nil {
		t.Error("no levels")
	}
}

// After a stop a run is held where no way leads from it down to a pump without
// a valve.
func TestHolding(t *testing.T) {
	check := []job.Fitted{{Fitting: "check valve swing"}}
	run := func(from, to string, f []job.Fitted) job.Run { return job.Run{From: from, To: to, Fittings: f} }
	for name, c := range map[string]struct {
		runs   []job.Run
		others []job.FurtherPump
		held   []bool
	}{
		"no valve":               {runs: []job.Run{run("pump", "a", nil), run("a", "fall", nil)}, held: []bool{false, false}},
		"valve in the main":      {runs: []job.Run{run("pump", "a", check), run("a", "fall", nil)}, held: []bool{true, true}},
		"valve in one branch":    {runs: []job.Run{run("pump", "a", nil), run("a", "fall", check), run("a", "bed", nil)}, held: []bool{false, true, false}},
		"two pumps, both valves": {runs: []job.Run{run("pump", "a", check), run("two", "a", check), run("a", "fall", nil)}, others: []job.FurtherPump{{Name: "two"}}, held: []bool{true, true, true}},
		"two pumps, one valve":   {runs: []job.Run{run("pump", "a", check), run("two", "a", nil), run("a", "fall", nil)}, others: []job.FurtherPump{{Name: "two"}}, held: []bool{true, false, false}},
		"ring, valve in one way": {runs: []job.Run{run("pump", "a", nil), run("a", "b", check), run("a", "b", nil), run("b", "fall", nil)}, held: []bool{false, false, false, false}},
		"pump after pump":        {runs: []job.Run{run("pump", "a", nil), run("two", "fall", nil)}, others: []job.FurtherPump{{Name: "two", From: "a"}}, held: []bool{false, false}},
		"pump after a valve":     {runs: []job.Run{run("pump", "a", check), run("two", "fall", nil)}, others: []job.FurtherPump{{Name: "two", From: "a"}}, held: []bool{true, true}},
	} {
		m := model{job: &job.Job{Runs: c.runs, FurtherPumps: c.others}}
		for i, held := range m.closed().runs {
			if held != c.held[i] {
				t.Errorf("%s: run %d held %v, want %v", name, i, held, c.held[i])
			}
		}
	}
}
