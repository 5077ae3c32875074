package cut

import (
	"plashet/engine/unit"
)

// reading is the problem in steps of the grid, not yet sorted.
type reading struct {
	step         unit.Length
	pieces       []int
	counts       []int
	sticks       []int
	costs        []int64
	limits       []int
	offcuts      []int
	offcutCounts []int
	kerf, keep   int
	basis        CostBasis
	assumed      bool
	rounded      []Rounded
}

// read checks the problem and turns it into whole numbers. All faults are told
// at once.
func read(p Problem) (reading, error) {
	var f faults
	r := reading{step: p.Grid, basis: p.Basis}
	if !(p.Grid > 0) || p.Grid > 1e9 {
		f.add(CodeGrid, "/grid", argLength("found", p.Grid))
		return r, f.err()
	}
	if p.Effort < 0 {
		f.add(CodeEffort, "/effort", argCount("found", p.Effort))
	}
	g := grid{step: p.Grid, round: p.Round, faults: &f}
	r.readPieces(p.Pieces, &g)
	r.readSticks(p.Sticks, &g)
	r.readOffcuts(p.Offcuts, &g)
	r.kerf = g.steps(p.Kerf, "/kerf", 0, up)
	r.keep = max(1, g.steps(p.Keep, "/keep", 0, up))
	r.rounded = g.rounded
	if f == nil {
		r.tooLong(p, &g)
	}
	if f == nil {
		r.coarsen()
	}
	return r, f.err()
}

func (r *reading) readPieces(pieces []Piece, g *grid) {
	all := 0
	for i, p := range pieces {
		r.pieces = append(r.pieces, g.steps(p.Length, at("pieces", i, "length"), 1, up))
		r.counts = append(r.counts, g.count(p.Count, at("pieces", i, "count"), 1, MaxPieces))
		all += r.counts[i]
	}
	if len(pieces) == 0 {
		g.faults.add(CodeNothing, "/pieces")
	}
	if all > MaxPieces {
		g.faults.add(CodeMany, "/pieces", argCount("found", all), argCount("limit", MaxPieces))
	}
}

func (r *reading) readSticks(sticks []Stick, g *grid) {
	if len(sticks) > MaxSticks {
		g.faults.add(CodeMany, "/sticks", argCount("found", len(sticks)), argCount("limit", MaxSticks))
	}
	if r.basis > ByCount {
		g.faults.add(CodeBasis, "/basis")
	}
	priced := 0
	for _, s := range sticks {
		if s.Cost != 0 {
			priced++
		}
	}
	if r.basis == ByPrice && priced == 0 {
		r.basis, r.assumed = ByLength, len(sticks) > 0
	}
	for i, s := range sticks {
		n := g.steps(s.Length, at("sticks", i, "length"), 1, down)
		r.sticks = append(r.sticks, n)
		limit := 0
		if s.Limit != 0 {
			limit = g.count(s.Limit, at("sticks", i, "limit"), 1, 0)
		}
		r.limits = append(r.limits, limit)
		cost := s.Cost
		switch r.basis {
		case ByLength:
			cost = int64(n)
		case ByCount:
			cost = 1
		}
		if r.basis == ByPrice && (cost <= 0 || cost > MaxCost) {
			g.faults.add(CodePrice, at("sticks", i, "cost"), argCount("found", int(cost)))
		}
		r.costs = append(r.costs, cost)
	}
}

func (r *reading) readOffcuts(offcuts []Offcut, g *grid) {
	all := 0
	for i, o := range offcuts {
		r.offcuts = append(r.offcuts, g.steps(o.Length, at("offcuts", i, "length"), 1, down))
		r.offcutCounts = append(r.offcutCounts, g.count(o.Count, at("offcuts", i, "count"), 1, MaxOffcuts))
		all += r.offcutCounts[i]
	}
	if all > MaxOffcuts {
		g.faults.add(CodeMany, "/offcuts", argCount("found", all), argCount("limit", MaxOffcuts))
	}
}

// count gives n where it lies between least and most (0: without bound), else
// zero and a fault.
func (g *grid) count(n int, path string, least, most int) int {
	switch {
	case n < least:
		g.faults.add(CodeCount, path, argCount("found", n))
		return 0
	case most > 0 && n > most:
		g.faults.add(CodeCount, path, argCount("found", n), argCount("limit", most))
		return 0
	}
	return n
}

// tooLong names the pieces that no stick or offcut can hold.
func (r *reading) tooLong(p Problem, g *grid) {
	longest := 0
	for _, l := range r.sticks {
		longest = max(longest, l)
	}
	for _, l := range r.offcuts {
		longest = max(longest, l)
	}
	for i, l := range r.pieces {
		if l > longest {
			g.faults.add(CodeTooLong, at("pieces", i, "length"),
				argLength("found", p.Pieces[i].Length), argLength("limit", g.length(longest)), markOf(p, i))
		}
	}
}

// coarsen takes the coarsest grid on which everything still lies: a shorter
// search for the same answer. Keep is rounded up: remnants lie on that grid.
func (r *reading) coarsen() {
	by := r.kerf
	lists := [...][]int{r.pieces, r.sticks, r.offcuts}
	for _, list := range lists {
		for _, l := range list {
			by = gcd(by, l)
		}
	}
	for _, list := range lists {
		for i := range list {
			list[i] /= by
		}
	}
	r.kerf /= by
	r.keep = (r.keep + by - 1) / by
	r.step *= unit.Length(by)
	if r.basis == ByLength {
		for i, l := range r.sticks {
			r.costs[i] = int64(l)
		}
	}
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
