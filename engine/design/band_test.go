package design

import (
	"math"
	"slices"
	"testing"

	"plashet/demo"
	"plashet/engine/band"
	"plashet/engine/catalog"
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// TestBands: every band belongs to a figure of the answer and tells its value,
// its ends are in order, its shares and the remainder make the whole, and every
// doubt comes from the job or stands with the assumptions.
func TestBands(t *testing.T) {
	for _, name := range demo.Names() {
		book, j := read(t, name)
		r := SolveBands(book, j, band.Usual, 1)
		if r.Bands == nil || r.Bands.Failed > 0 || len(r.Bands.Outputs) == 0 {
			t.Fatalf("%s: no bands, or draws without an answer: %+v", name, r.Bands)
		}
		figures := map[string]float64{}
		for _, f := range r.Figures {
			figures[f.ID] = f.Value.SI
		}
		for _, o := range r.Bands.Outputs {
			if v, ok := figures[o.Figure]; !ok || v != o.Value.SI {
				t.Errorf("%s: %s is %v, the figure %v", name, o.Figure, o.Value.SI, v)
			}
			if !(o.Low.SI <= o.Middle.SI && o.Middle.SI <= o.High.SI) {
				t.Errorf("%s: %s: %v, %v, %v", name, o.Figure, o.Low.SI, o.Middle.SI, o.High.SI)
			}
			sum := o.Together
			for k, s := range o.Shares {
				sum += s.Part
				if k > 0 && s.Part > o.Shares[k-1].Part {
					t.Errorf("%s: %s: the shares are out of order", name, o.Figure)
				}
			}
			if len(o.Shares) > 0 && math.Abs(float64(sum)-1) > 1e-9 {
				t.Errorf("%s: %s: the shares make %v", name, o.Figure, sum)
			}
		}
		defaults := 0
		for _, a := range r.Assumptions {
			if isDoubt(a.Code) {
				defaults++
				if a.Source.Title == "" || a.Source.Basis == "" {
					t.Errorf("%s: %s has no source", name, a.Code)
				}
			}
		}
		if defaults < 8 {
			t.Errorf("%s: only %d default tolerances are listed", name, defaults)
		}
		if plain := Solve(book, j); plain.Bands != nil || len(plain.Findings) > len(r.Findings) || len(plain.Faults) != len(r.Faults) {
			t.Errorf("%s: the design without bands differs", name)
		}
	}
}

// shaken makes a job's shaker, and the model that it is of.
func shaken(tb testing.TB, book *catalog.Book, j *job.Job) (*model, *shaker) {
	tb.Helper()
	m := modelOf(book, j)
	if !answer(m, 0) {
		tb.Fatal(m.out.Faults)
	}
	s, ok := m.shake(0)
	if !ok {
		tb.Fatal("nothing to shake")
	}
	return m, s
}

// TestNothingOff: a draw in which nothing is off, ranges and wear put where the
// design has them, is the design.
func TestNothingOff(t *testing.T) {
	for _, name := range demo.Names() {
		book, j := read(t, name)
		m := modelOf(book, j)
		pump, _ := m.pump()
		if !answerWith(m, pump, 0) {
			t.Fatal(name)
		}
		s, ok := m.shake(pump)
		if !ok {
			t.Fatal(name)
		}
		for i := range s.pumps {
			s.pumps[i].head.base = 1
		}
		for i := range s.feeds {
			for k := range s.feeds[i].lips {
				s.feeds[i].lips[k].c.base = s.feeds[i].lips[k].law.C
			}
		}
		for i := range s.runs {
			for k := range s.runs[i].losses {
				s.runs[i].losses[k].base = 1
			}
		}
		for i := range s.stores {
			if c := s.stores[i].channel; c != nil {
				s.stores[i].n.base = float64(c.N)
			}
		}
		if s.levels != nil && s.levels.Vault != nil && s.levels.Vault.Sill != nil {
			s.sillBy[1].base = s.levels.Vault.Sill.C
		}
		outputs, zero := s.outputs(), make([]float64, len(s.shapes))
		if !s.solve(zero) {
			t.Fatal(name)
		}
		for _, o := range outputs {
			// 0.1 mm of the vault's level is what a draw is settled to; heights are
			// told to a millimetre of some metres.
			if got := o.read(); math.Abs(got-o.now.SI) > 3e-4*math.Abs(o.now.SI)+1e-5 && o.now.Kind != unit.KindElevation {
				t.Errorf("%s: %s is %v, the design has %v", name, o.id, got, o.now.SI)
			}
		}
		if n := testing.AllocsPerRun(10, func() { s.solve(zero) }); n > 0 {
			t.Errorf("%s: a draw makes %v allocations", name, n)
		}
	}
}

// TestOwnTolerance: a tolerance of the job's own beats the default and takes the
// share it deserves; one of nothing takes the doubt away; a default set in the
// job's list of assumptions is the one listed.
func TestOwnTolerance(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	edge := &j.Survey.Points[2]
	if edge.Name != "edge" {
		t.Fatal("the example has changed")
	}
	share := func(r *Result) (part unit.Ratio, own bool) {
		for _, o := range r.Bands.Outputs {
			if o.Figure != "level.kept.stop.freeboard" {
				continue
			}
			for _, s := range o.Shares {
				if d := r.Bands.Doubts[s.Doubt]; d.Path == "/survey/points/2/reading" {
					part, own = s.Part, d.Own
				}
			}
		}
		return part, own
	}
	if p, own := share(SolveBands(book, j, 256, 1)); math.Abs(float64(p)-0.5) > 0.02 || own {
		t.Errorf("edge and water line alike: %v, own %v", p, own)
	}
	edge.Reading.Tolerance, edge.Reading.Plus = "9 mm", 0.009 // three times the other: 9 of 10 of the variance
	if p, own := share(SolveBands(book, j, 256, 1)); math.Abs(float64(p)-0.9) > 0.02 || !own {
		t.Errorf("three times the tolerance: %v, own %v", p, own)
	}
	edge.Reading.Tolerance, edge.Reading.Plus = "0", 0
	if p, _ := share(SolveBands(book, j, 256, 1)); p != 0 {
		t.Errorf("no tolerance: %v", p)
	}
	j.Assumptions = append(j.Assumptions, job.Assumed{Code: AssumeDoubtLevel, Value: "6 mm"})
	r := SolveBands(book, j, 64, 1)
	i := slices.IndexFunc(r.Assumptions, func(a trace.Assumption) bool { return a.Code == AssumeDoubtLevel })
	if i < 0 || math.Abs(r.Assumptions[i].Value.SI-0.006) > 1e-12 || len(r.Faults) > 0 {
		t.Errorf("the job's default is not in force: %v", r.Faults)
	}
	if r := Solve(book, j); len(r.Faults) > 0 {
		t.Errorf("without bands the default is refused: %v", r.Faults)
	}
}

// TestSeeds: the same seed gives the same bands; another one, and four times the
// draws, move them by little.
func TestSeeds(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	bands := func(draws int, seed uint64) []Banded { return SolveBands(book, j, draws, seed).Bands.Outputs }
	a, b, c, d := bands(band.Usual, 1), bands(band.Usual, 1), bands(band.Usual, 2), bands(4*band.Usual, 3)
	for k := range a {
		if a[k].Low != b[k].Low || a[k].High != b[k].High {
			t.Errorf("%s: the same seed gives other bands", a[k].Figure)
		}
		if a[k].Figure != "feed.0.flow" && a[k].Figure != "feed.1.flow" && a[k].Figure != "level.kept.stop.freeboard" {
			continue
		}
		// The 5 percent point of n draws by chance is out by sqrt(0.05 0.95 / n) over
		// the density there as a rule: of a normal distribution and 1,024 draws 2.0
		// percent of the band's width, and two such points differ by 2.8. Twice that.
		const chance = 0.056
		width := a[k].High.SI - a[k].Low.SI
		for _, o := range []Banded{c[k], d[k]} {
			if math.Abs(o.Low.SI-a[k].Low.SI) > chance*width || math.Abs(o.High.SI-a[k].High.SI) > chance*width {
				t.Errorf("%s: %v to %v, with other draws %v to %v", a[k].Figure, a[k].Low.SI, a[k].High.SI, o.Low.SI, o.High.SI)
			}
		}
	}
}

// TestMayTurn: a pond that just does not run over at a stop is told as one that
// may, with a part of the draws under a half; one that does run over is told as
// before; and the finding can be accepted.
func TestMayTurn(t *testing.T) {
	book, j := read(t, "old-pond")
	r := Solve(book, j)
	worst := math.Inf(1)
	for _, s := range r.Levels.States {
		if s.Moment == level.MomentHeld && s.Edge.Known {
			worst = min(worst, float64(s.Edge.Freeboard))
		}
	}
	rim, _ := modelOf(book, j).survey.Level(j.Pond.Rim)
	set := func(spare float64) *Result {
		z := rim - unit.Length(worst-spare)
		j.Pond.Rim = job.Level{Entry: is[unit.Length](float64(z))}
		return SolveBands(book, j, 256, 1)
	}
	told := func(r *Result) (unit.Ratio, bool) {
		for _, f := range r.Findings {
			if f.Code == FindMaySpill {
				for _, a := range f.Args {
					if a.Name == "percent" {
						return unit.Ratio(a.Value.SI), true
					}
				}
			}
		}
		return 0, false
	}
	// 2 mm against two heights of 3 mm at 95 of 100: 0.92 of the deviation, 0.18
	// of a normal distribution beyond it.
	if p, ok := told(set(0.002)); !ok || math.Abs(float64(p)-0.18) > 0.05 {
		t.Errorf("2 mm to spare: told %v, %v", ok, p)
	}
	for _, spare := range []float64{0.05, -0.002} {
		if _, ok := told(set(spare)); ok {
			t.Errorf("%v m to spare: told as what may be", spare)
		}
	}
	j.Accepted = append(j.Accepted, job.Acceptance{Code: FindMaySpill, Reason: "a drain takes it"})
	for _, f := range Solve(book, j).Findings {
		if f.Code == FindGone && len(f.Args) > 0 && f.Args[0].Text == FindMaySpill {
			t.Error("a design without bands tells the accepted finding as gone")
		}
	}
	for _, f := range set(0.002).Findings {
		if f.Code == FindMaySpill && f.Accepted == "" {
			t.Error("the finding is not accepted")
		}
	}
}

// TestNoBands: jobs without an answer have no bands, and nothing panics.
func TestNoBands(t *testing.T) {
	book, j := read(t, "old-pond")
	j.Pumps = nil
	if r := SolveBands(book, j, 64, 1); r.Bands != nil {
		t.Error("bands without a pump")
	}
	_, j = read(t, "old-pond")
	j.Pond.Outline = job.Outline{} // no levels
	if r := SolveBands(book, j, 64, 1); r.Levels != nil || r.Bands == nil || len(r.Bands.Outputs) == 0 {
		t.Error("a job without levels has a flow, and a band for it")
	}
	_, j = read(t, "old-pond")
	for i := range j.Survey.Points { // out of the pump's reach
		if j.Survey.Points[i].Name == "lip" {
			j.Survey.Points[i].Elevation.SI = 30 * unit.Foot
		}
	}
	if r := SolveBands(book, j, 64, 1); r.Bands == nil {
		t.Error("a job whose pump stands has bands: of nothing")
	}
}

// BenchmarkBands draws each example job 1,024 times, flows and levels, and reads
// the bands; "draw" is what it does 1,024 times.
func BenchmarkBands(b *testing.B) {
	for _, name := range demo.Names() {
		book, j := read(b, name)
		m, s := shaken(b, book, j)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				m.bands(0, band.Usual, 1)
			}
			b.ReportMetric(float64(len(s.shapes)), "inputs")
		})
		b.Run(name+"/draw", func(b *testing.B) {
			sample := band.Draw(s.shapes, band.Usual, 1)
			row, i := make([]float64, len(s.shapes)), 0
			b.ReportAllocs()
			for b.Loop() {
				sample.Row(i%sample.Len(), row)
				i++
				if !s.solve(row) {
					b.Fatal("no answer")
				}
			}
		})
	}
}
