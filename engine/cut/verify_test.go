package cut

import (
	"math"
	"testing"

	"plashet/engine/unit"
)

// value is what a plan is worth, worst first to compare.
type value struct {
	cost    int64
	opened  int
	remnant int
}

// verify holds a plan against the problem with nothing of the solver: every
// piece is there, every bar holds its cuts, stock limits are kept, and the
// figures of the plan are those of its bars. It gives the plan's worth.
func verify(t testing.TB, p Problem, plan Plan) value {
	t.Helper()
	step := func(l unit.Length) int { return int(math.Round(float64(l / p.Grid))) }
	var v value
	cut := make([]int, len(p.Pieces))
	bought := make([]int, len(p.Sticks))
	opened := make([]int, len(p.Offcuts))
	length := 0
	for b, bar := range plan.Bars {
		whole := 0
		switch bar.From {
		case FromStick:
			s := p.Sticks[bar.Index]
			bought[bar.Index]++
			whole = step(s.Length)
			length += whole
			switch plan.Basis {
			case ByPrice:
				v.cost += s.Cost
			case ByCount:
				v.cost++
			}
		case FromOffcut:
			opened[bar.Index]++
			v.opened++
			whole = step(p.Offcuts[bar.Index].Length)
		}
		if step(bar.Length) != whole {
			t.Errorf("bar %d is %d steps long, its source %d", b, step(bar.Length), whole)
		}
		if len(bar.Cuts) == 0 {
			t.Errorf("bar %d is opened for nothing", b)
		}
		kerf := step(p.Kerf)
		at := 0 // where the saw has got to
		for i, c := range bar.Cuts {
			cut[c.Piece]++
			if step(c.Length) != step(p.Pieces[c.Piece].Length) {
				t.Errorf("bar %d piece %d: cut %d steps, wanted %d", b, c.Piece, step(c.Length), step(p.Pieces[c.Piece].Length))
			}
			if i > 0 {
				at += kerf
			}
			at += step(c.Length)
		}
		left := whole - at
		remnant, kerfs, end := 0, len(bar.Cuts), EndRunsOff
		switch {
		case left < 0:
			t.Errorf("bar %d is too short by %d steps", b, -left)
		case left == 0:
			kerfs, end = kerfs-1, EndFlush
		case left > kerf:
			remnant, end = left-kerf, EndRemnant
		}
		if bar.Kerfs != kerfs || bar.End != end || step(bar.Remnant) != remnant {
			t.Errorf("bar %d: kerfs %d end %d remnant %d, recomputed %d %d %d", b, bar.Kerfs, bar.End, step(bar.Remnant), kerfs, end, remnant)
		}
		kept := remnant > 0 && remnant >= step(p.Keep)
		if bar.Kept != kept {
			t.Errorf("bar %d: kept %v, recomputed %v", b, bar.Kept, kept)
		}
		if kept {
			v.remnant = max(v.remnant, remnant)
		}
	}
	if plan.Basis == ByLength {
		v.cost = plan.Cost // in steps of the plan's own grid; the length is held below
	}
	for i, n := range cut {
		if n != p.Pieces[i].Count {
			t.Errorf("piece %d is cut %d times, wanted %d", i, n, p.Pieces[i].Count)
		}
	}
	sticks := 0
	for i, n := range bought {
		sticks += n
		if l := p.Sticks[i].Limit; l > 0 && n > l {
			t.Errorf("%d of stick %d, there are %d", n, i, l)
		}
	}
	for i, n := range opened {
		if n > p.Offcuts[i].Count {
			t.Errorf("%d of offcut %d, there are %d", n, i, p.Offcuts[i].Count)
		}
	}
	if v.cost != plan.Cost || sticks != plan.NewSticks || length != step(plan.NewLength) ||
		v.opened != plan.OffcutsOpened || v.remnant != step(plan.LongestRemnant) {
		t.Errorf("plan says cost %d, sticks %d, length %d, offcuts %d, remnant %d; recomputed %d %d %d %d %d",
			plan.Cost, plan.NewSticks, step(plan.NewLength), plan.OffcutsOpened, step(plan.LongestRemnant),
			v.cost, sticks, length, v.opened, v.remnant)
	}
	if plan.Basis == ByLength {
		v.cost = int64(length)
	}
	return v
}
