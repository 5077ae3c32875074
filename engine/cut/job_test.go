package cut

import (
	"context"
	"math/rand"
	"testing"
	"time"

	"plashet/engine/unit"
)

// family is a sort of job: how the lengths of its pieces are drawn, in steps.
type family struct {
	name string
	draw func(r *rand.Rand, whole int) int // whole: the shorter stick
}

func between(r *rand.Rand, lo, hi int) int { return lo + r.Intn(hi-lo+1) }

var families = []family{
	{"vault and run", func(r *rand.Rand, w int) int {
		switch r.Intn(10) {
		case 0:
			return between(r, w/3, w*4/5)
		case 1, 2, 3:
			return between(r, w/10, w*3/10)
		}
		return between(r, w/60, w/10)
	}},
	{"short", func(r *rand.Rand, w int) int { return between(r, w/60, w/6) }},
	{"even", func(r *rand.Rand, w int) int { return between(r, w/40, w*3/5) }},
	{"long", func(r *rand.Rand, w int) int { return between(r, w/4, w/2) }},
	{"thirds", func(r *rand.Rand, w int) int { return between(r, w/5, w*7/15) }},
	{"halves", func(r *rand.Rand, w int) int { return between(r, w*2/5, w*3/5) }},
	{"any", func(r *rand.Rand, w int) int { return between(r, w/40, w) }},
	{"few lengths", func(r *rand.Rand, w int) int {
		n := 1 + r.Intn(8)
		return w * (2*n + 3) / 50
	}},
}

// job60 draws a job of 60 pieces, two stick lengths with prices and 12 offcuts,
// in sixteenths (every fourth job in millimetres).
func job60(seed int64) (Problem, string) {
	r := rand.New(rand.NewSource(seed))
	f := families[int(seed)%len(families)]
	p := Problem{Grid: unit.Inch / 16}
	whole := 10 * 12 * 16
	kerfs := []int{0, 1, 2, 2}
	keep := 6 * 16
	if r.Intn(4) == 0 {
		p.Grid, whole, kerfs, keep = unit.Millimetre, 3000, []int{1, 2, 3}, 150
	}
	steps := func(n int) unit.Length { return unit.Length(n) * p.Grid }
	p.Kerf, p.Keep = steps(kerfs[r.Intn(len(kerfs))]), steps(keep)
	price := int64(between(r, 900, 3000))
	p.Sticks = []Stick{{Length: steps(whole), Cost: price}, {Length: steps(2 * whole), Cost: price * int64(between(r, 160, 210)) / 100}}
	for range 60 {
		p.Pieces = append(p.Pieces, Piece{Length: steps(f.draw(r, whole)), Count: 1})
	}
	for range 12 {
		p.Offcuts = append(p.Offcuts, Offcut{Length: steps(between(r, whole/20, whole/2)), Count: 1})
	}
	return p, f.name
}

const jobs60 = 240

// secondSteps is what a machine of 2020 does in a second: see effort.
const secondSteps = 2_000_000

// TestJob60: random jobs are cut rightly and all of them proven best, each with
// the effort of a second at most.
func TestJob60(t *testing.T) {
	steps := map[string][]int{}
	worst, open := 0, 0
	for seed := range int64(jobs60) {
		p, name := job60(seed)
		plan, err := Solve(context.Background(), p)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		verify(t, p, plan)
		if !plan.Proof.Proven() {
			open++
			t.Errorf("seed %d (%s): stopped at the step limit: cost %d opened %d remnant %v proof %+v", seed, name, plan.Cost, plan.OffcutsOpened, plan.LongestRemnant/p.Grid, plan.Proof)
		}
		steps[name] = append(steps[name], plan.Steps)
		worst = max(worst, plan.Steps)
	}
	if open > 0 {
		t.Errorf("%d of %d jobs stopped at the step limit", open, jobs60)
	}
	if worst > secondSteps {
		t.Errorf("the hardest job took %d steps, want at most %d", worst, secondSteps)
	}
	for _, f := range families {
		s, m := 0, 0
		for _, n := range steps[f.name] {
			s += n
			m = max(m, n)
		}
		t.Logf("%-14s %d jobs, mean %d steps, most %d", f.name, len(steps[f.name]), s/len(steps[f.name]), m)
	}
}

// TestStopped: a plan that the effort cut short is a plan all the same, with
// figures and bounds that hold. The jobs 20070 and 20742 laid a bar with nothing
// but the remnant once.
func TestStopped(t *testing.T) {
	stopped := 0
	for _, seed := range []int64{14, 70, 188, 230, 20070, 20278, 20470, 20742} {
		p, name := job60(seed)
		for _, e := range []int{1, 5_000, 50_000, 150_000, 500_000} {
			p.Effort = e
			plan, err := Solve(context.Background(), p)
			if err != nil {
				t.Fatalf("seed %d (%s): %v", seed, name, err)
			}
			v := verify(t, p, plan)
			proof := plan.Proof
			if !proof.Proven() {
				stopped++
			}
			remnant := unit.Length(v.remnant) * p.Grid
			if proof.CostBound > v.cost || proof.OffcutBound > v.opened || proof.RemnantBound < remnant-p.Grid/2 {
				t.Errorf("seed %d effort %d: bounds %+v, plan %+v", seed, e, proof, v)
			}
			if t.Failed() {
				t.Fatalf("seed %d effort %d", seed, e)
			}
		}
	}
	if stopped == 0 {
		t.Error("none was stopped: the efforts are too large to test this")
	}
}

// BenchmarkJob60 solves the random jobs in turn and reports the slowest beside
// the mean.
func BenchmarkJob60(b *testing.B) {
	var worst time.Duration
	for b.Loop() {
		for seed := range int64(jobs60) {
			p, _ := job60(seed)
			t0 := time.Now()
			if _, err := Solve(context.Background(), p); err != nil {
				b.Fatal(err)
			}
			worst = max(worst, time.Since(t0))
		}
	}
	b.ReportMetric(float64(b.Elapsed().Milliseconds())/float64(b.N*jobs60), "ms/job")
	b.ReportMetric(float64(worst.Milliseconds()), "ms-worst")
}
