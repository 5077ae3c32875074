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

// TestJob60: random jobs are cut rightly and nearly all of them proven best; the
// rest say that they are not.
func TestJob60(t *testing.T) {
	steps := map[string][]int{}
	worst, open := 0, 0
	for seed := range int64(jobs60) {
		p, name := job60(seed)
		t0 := time.Now()
		plan, err := Solve(context.Background(), p)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		verify(t, p, plan)
		if !plan.Proof.Proven() {
			open++
			t.Logf("seed %d (%s): stopped at the step limit: cost %d opened %d remnant %v proof %+v", seed, name, plan.Cost, plan.OffcutsOpened, plan.LongestRemnant/p.Grid, plan.Proof)
		}
		if d := time.Since(t0); d > 300*time.Millisecond {
			t.Logf("seed %d (%s): %v, %d steps, %d sticks", seed, name, d, plan.Steps, plan.NewSticks)
		}
		steps[name] = append(steps[name], plan.Steps)
		worst = max(worst, plan.Steps)
	}
	// The step limit still stops a few of them; each is logged above and says so
	// itself. Fewer is better, more is a fault.
	const limit = 25 // measured: 25 of 240; to come down to none
	if open > limit {
		t.Errorf("%d jobs stopped at the step limit, want at most %d", open, limit)
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
