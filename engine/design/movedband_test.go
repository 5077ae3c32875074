package design

import (
	"math"
	"testing"

	"plashet/engine/catalog"
	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/job"
)

// TestMovedBands: the figures of start and stop lie within reach of their bands,
// the bands are in order, and at a first start that ends at its lowest the band
// of the vault is the one of the levels at rest, of many more draws: its middle
// within a quarter of that band's width.
func TestMovedBands(t *testing.T) {
	compared := 0
	for _, name := range []string{"courtyard-rill", "hillside-cascade", "old-pond"} {
		book, j := read(t, name)
		r := SolveBands(book, j, 256, 1)
		if r.Bands.Moved < movedDraws*9/10 || len(r.Bands.Motion) < 3 {
			t.Fatalf("%s: %d followed, %d bands", name, r.Bands.Moved, len(r.Bands.Motion))
		}
		by := map[string]Banded{}
		for _, b := range r.Bands.Motion {
			by[b.Figure] = b
			wide := b.High.SI - b.Low.SI
			if b.Low.SI > b.Middle.SI || b.Middle.SI > b.High.SI || b.Value.SI < b.Low.SI-wide-1e-3 || b.Value.SI > b.High.SI+wide+1e-3 {
				t.Errorf("%s %s: %g to %g to %g, as designed %g", name, b.Figure, b.Low.SI, b.Middle.SI, b.High.SI, b.Value.SI)
			}
		}
		if x := r.Motion.Find(CaseFirst); x.Dry {
			if b, ok := by["motion.first.dry"]; !ok || b.Value.SI != float64(x.DryAt) || b.Low.SI <= 0 {
				t.Errorf("%s: draws air after %v, band %+v", name, x.DryAt, b)
			}
			continue
		}
		for _, o := range r.Bands.Outputs {
			st, _ := r.Levels.Find(level.CourseFirst, level.MomentRun)
			if o.Figure != "level.first.run.pump" || st.Starved {
				continue
			}
			compared++
			// Over what the pump needs, as over the water line.
			low := float64(r.Levels.Inputs().Lowest() - r.Motion.Line)
			got := by["motion.first.lowest.line"]
			if off := got.Middle.SI - low - o.Middle.SI; math.Abs(off) > (o.High.SI-o.Low.SI)/4+2e-3 {
				t.Errorf("%s: middle of the lowest %g over what the pump needs, at rest %g; %+v %+v", name, got.Middle.SI-low, o.Middle.SI, got, o)
			}
		}
	}
	if compared == 0 {
		t.Error("nothing was compared")
	}
}

// BenchmarkMoved tells how long following one draw takes.
func BenchmarkMoved(b *testing.B) {
	book, j := read(b, "hillside-cascade")
	r := SolveBands(book, j, 16, 1)
	m := &model{book: book, job: j, out: r, pipes: map[job.PipeName]catalog.Pipe{}, losses: map[job.PipeName]catalog.Loss{}, curves: map[int]*hydro.Curve{}, quiet: true}
	if !m.start() {
		b.Fatal("the job does not stand")
	}
	s, ok := m.shake(0)
	if !ok {
		b.Fatal("nothing to shake")
	}
	row := make([]float64, len(s.shapes))
	if !s.solve(row) {
		b.Fatal("no answer")
	}
	for b.Loop() {
		if s.follow() == nil {
			b.Fatal("not followed")
		}
	}
}
