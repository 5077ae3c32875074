package arrange

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"plashet/engine/layout"
)

// need is how long the legs of some fills are, with valve and union in one of their
// places: at least, or where no piece of pipe is in a leg, exactly. At a roll
// between those of the compass an assembly often closes with nothing to spare, so
// that each need has angles of its own.
type need struct {
	least []float64
	fixed []bool
	fills []*fill
}

// spans are the distances of pieces that meet, kept because the same few come again.
type spans map[[2]*piece]span

type span struct {
	least float64
	fixed bool
}

func (m spans) of(a, b *piece) span {
	key := [2]*piece{a, b}
	d, known := m[key]
	if !known {
		d = span{math.Inf(1), a.part.Out.Kind != layout.Socket || b.part.In.Kind != layout.Socket}
		if least, ok := layout.Spacing(a.part, b.part); ok {
			d.least = float64(least)
		}
		m[key] = d
	}
	return d
}

// needsOf lists the needs of a pattern's fills, those of the first fills first.
func (s *search) needsOf(l *limber) (out []*need) {
	known, between := map[string]*need{}, spans{}
	st := &s.in.Standings[l.standing]
	starts := map[[2]any]float64{}
	fills := slices.Clone(l.fills)
	slices.SortStableFunc(fills, func(a, b *fill) int {
		return cmp.Or(cmp.Compare(a.joints, b.joints), cmp.Compare(a.head, b.head), cmp.Compare(a.cost, b.cost))
	})
	for _, f := range fills {
		for _, pl := range places(f) {
			parts := f.parts(pl.check, pl.union, pl.unionFirst)
			from := len(f.start)
			if from >= len(parts) {
				continue
			}
			first, outlet := parts[from], st.Pump.Outlet
			key := [2]any{first, (*piece)(nil)}
			if from > 0 {
				key[1], outlet = f.start[0], f.start[from-1].part.Out
			}
			at, had := starts[key]
			if !had {
				at = s.fromPort(st, l.kit, f.start, first)
				starts[key] = at
			}
			n := need{least: []float64{at}, fixed: []bool{outlet.Kind != layout.Socket || first.part.In.Kind != layout.Socket}}
			for i := from; i+1 < len(parts); i++ {
				if parts[i].turns {
					n.least, n.fixed = append(n.least, 0), append(n.fixed, true)
				}
				d, leg := between.of(parts[i], parts[i+1]), len(n.least)-1
				n.least[leg] += d.least
				n.fixed[leg] = n.fixed[leg] && d.fixed
			}
			if end := parts[len(parts)-1]; f.end == nil && end.turns {
				n.least, n.fixed = append(n.least, float64(end.part.Out.TakeOff.Length)), append(n.fixed, false)
			}
			if len(n.least) != len(l.turns)+1 || slices.ContainsFunc(n.least, func(l float64) bool { return math.IsInf(l, 1) }) {
				continue // two spigots face each other
			}
			name := n.name()
			if at, ok := known[name]; !ok {
				n.fills = []*fill{f}
				known[name] = &n
				out = append(out, &n)
			} else if at.fills[len(at.fills)-1] != f {
				at.fills = append(at.fills, f)
			}
		}
	}
	return out
}

// name tells needs apart, to a hundredth of a millimetre.
func (n *need) name() string {
	var b strings.Builder
	for i, l := range n.least {
		fmt.Fprintf(&b, "%.5f%t ", l, n.fixed[i])
	}
	return b.String()
}

// places gives all places of a fill's valve and union among its legs.
func places(f *fill) (out []placement) {
	of := func(p *piece) (legs []int) {
		if p == nil {
			return []int{-1}
		}
		for leg := range len(f.elbows) + 1 {
			if f.may(p, leg) {
				legs = append(legs, leg)
			}
		}
		return legs
	}
	for _, c := range of(f.check) {
		for _, u := range of(f.union) {
			out = append(out, placement{check: c, union: u})
			if c == u && c >= 0 {
				out = append(out, placement{check: c, union: u, unionFirst: true})
			}
		}
	}
	return out
}

// hasNoLessThan tells that a need asks for all that another one asks for.
func (n *need) hasNoLessThan(o *need) bool {
	for i, l := range o.least {
		if n.least[i] < l-1e-9 || o.fixed[i] && !(n.fixed[i] && n.least[i] < l+1e-9) {
			return false
		}
	}
	return true
}
