package cut

import (
	"context"
	"errors"
	"math"
	"math/rand"
	"testing"

	"plashet/engine/unit"
)

// brute finds the best worth by laying each piece in turn into every bar open
// and every bar that can be opened. It shares nothing with the solver.
type brute struct {
	pieces              []int
	sticks, stickLimits []int
	costs               []int64
	offcuts, offcutLeft []int
	kerf, keep          int

	left []int // in each open bar, after its last piece
	best value
	any  bool
}

func (b *brute) better(v value) bool {
	switch {
	case !b.any || v.cost != b.best.cost:
		return !b.any || v.cost < b.best.cost
	case v.opened != b.best.opened:
		return v.opened < b.best.opened
	}
	return v.remnant > b.best.remnant
}

func (b *brute) lay(i int, cost int64, opened int) {
	if b.any && (cost > b.best.cost || (cost == b.best.cost && opened > b.best.opened)) {
		return
	}
	if i == len(b.pieces) {
		v := value{cost: cost, opened: opened}
		for _, l := range b.left {
			if r := l - b.kerf; r > 0 && r >= b.keep {
				v.remnant = max(v.remnant, r)
			}
		}
		if b.better(v) {
			b.best, b.any = v, true
		}
		return
	}
	l := b.pieces[i]
	for k, left := range b.left {
		if left >= b.kerf+l {
			b.left[k] -= b.kerf + l
			b.lay(i+1, cost, opened)
			b.left[k] = left
		}
	}
	n := len(b.left)
	for s, whole := range b.sticks {
		if whole >= l && b.stickLimits[s] > 0 {
			b.stickLimits[s]--
			b.left = append(b.left, whole-l)
			b.lay(i+1, cost+b.costs[s], opened)
			b.left = b.left[:n]
			b.stickLimits[s]++
		}
	}
	for o, whole := range b.offcuts {
		if whole >= l && b.offcutLeft[o] > 0 {
			b.offcutLeft[o]--
			b.left = append(b.left, whole-l)
			b.lay(i+1, cost, opened+1)
			b.left = b.left[:n]
			b.offcutLeft[o]++
		}
	}
}

const sixteenth = unit.Inch / 16

func bruteForce(p Problem) (value, bool) {
	step := func(l unit.Length) int { return int(math.Round(float64(l / p.Grid))) }
	b := brute{kerf: step(p.Kerf), keep: step(p.Keep)}
	for _, x := range p.Pieces {
		for range x.Count {
			b.pieces = append(b.pieces, step(x.Length))
		}
	}
	for _, s := range p.Sticks {
		b.sticks = append(b.sticks, step(s.Length))
		limit := s.Limit
		if limit == 0 {
			limit = len(b.pieces)
		}
		b.stickLimits = append(b.stickLimits, limit)
		cost := s.Cost
		switch p.Basis {
		case ByLength:
			cost = int64(step(s.Length))
		case ByCount:
			cost = 1
		}
		b.costs = append(b.costs, cost)
	}
	for _, o := range p.Offcuts {
		b.offcuts = append(b.offcuts, step(o.Length))
		b.offcutLeft = append(b.offcutLeft, o.Count)
	}
	b.left = make([]int, 0, len(b.pieces)) // never moves while it is walked
	b.lay(0, 0, 0)
	return b.best, b.any
}

// smallProblem draws a problem of at most eight pieces, of many shapes: short
// bars and long ones, kerf none to a third of a piece, limits, few lengths so
// that ties and flush ends are common.
func smallProblem(r *rand.Rand) Problem {
	bar := 8 + r.Intn(60)
	p := Problem{
		Grid: sixteenth, Kerf: unit.Length(r.Intn(4)) * sixteenth,
		Keep: unit.Length(r.Intn(bar)) * sixteenth, Basis: CostBasis(r.Intn(3)),
	}
	for n := 1 + r.Intn(8); n > 0; {
		k := min(n, 1+r.Intn(3))
		n -= k
		p.Pieces = append(p.Pieces, Piece{Length: unit.Length(1+r.Intn(bar)) * sixteenth, Count: k})
	}
	for range 1 + r.Intn(3) {
		s := Stick{Length: unit.Length(bar/2+r.Intn(bar)) * sixteenth, Cost: int64(1 + r.Intn(9))}
		if r.Intn(3) == 0 {
			s.Limit = 1 + r.Intn(3)
		}
		p.Sticks = append(p.Sticks, s)
	}
	for range r.Intn(4) {
		p.Offcuts = append(p.Offcuts, Offcut{Length: unit.Length(1+r.Intn(bar)) * sixteenth, Count: 1 + r.Intn(2)})
	}
	return p
}

// TestBruteForce: on small problems the plan is proven and its cost, offcuts
// and remnant are those of an exhaustive enumeration.
func TestBruteForce(t *testing.T) {
	const problems = 5000
	solved, short := 0, 0
	for seed := range int64(problems) {
		p := smallProblem(rand.New(rand.NewSource(seed)))
		want, possible := bruteForce(p)
		plan, err := Solve(context.Background(), p)
		var e *Error
		if errors.As(err, &e) {
			if code := e.Faults[0].Code; possible || (code != CodeShort && code != CodeTooLong) {
				t.Fatalf("seed %d: %v; possible: %v", seed, err, possible)
			}
			short++
			continue
		}
		if err != nil || !possible {
			t.Fatalf("seed %d: error %v; possible: %v", seed, err, possible)
		}
		if got := verify(t, p, plan); got != want {
			t.Errorf("seed %d: got %+v, brute force %+v", seed, got, want)
		}
		if !plan.Proof.Proven() {
			t.Errorf("seed %d: not proven: %+v", seed, plan.Proof)
		}
		if t.Failed() {
			t.Fatalf("seed %d: %+v", seed, p)
		}
		solved++
	}
	t.Logf("%d solved, %d short of stock", solved, short)
	if solved < problems/2 || short < problems/50 {
		t.Errorf("the generator makes too few of one sort: %d solved, %d short", solved, short)
	}
}
