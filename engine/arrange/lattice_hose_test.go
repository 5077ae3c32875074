package arrange_test

import (
	"math"
	"testing"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// hoses lets the first turn of a lattice's chain be a hose: bent by 45, 90 or 135
// degrees at every roll of 45.
func (l *lattice) hoses(so []layout.Laid, ways []geom.Vec3) {
	if l.i.Hose == nil || len(so) > 0 {
		return
	}
	way := ways[0]
	zero := geom.Vec3{Z: 1}
	if math.Abs(way.Z) > 0.999 {
		zero = geom.Vec3{Y: 1}
	}
	for _, turn := range []unit.Angle{45 * unit.Degree, 90 * unit.Degree, 135 * unit.Degree} {
		p := l.i.Hose.Part
		p.Curve.Turn = turn
		for eighth := range 8 {
			roll := unit.Angle(eighth*45) * unit.Degree
			side := zero.Sub(way.Scale(zero.Dot(way))).Unit().RotateAbout(way, roll)
			s, c := math.Sincos(float64(turn))
			out := way.Scale(c).Add(side.Scale(s)).Unit()
			l.elbows([]layout.Laid{{Part: p, Roll: roll}}, []geom.Vec3{way, out})
		}
	}
}

// atHose tells that a joint has a hose before or behind it.
func atHose(parts []layout.Laid, k int) bool {
	return parts[k].Kind == layout.Hose || parts[k+1].Kind == layout.Hose
}

// seated lets the ends of a hose go into the sockets on both sides, an end of the
// least length straight beyond them: by plane geometry R tan(turn/2) from where its
// axes meet to where its bend begins.
func seated(parts []layout.Laid) {
	for k := range parts {
		p := &parts[k]
		if p.Kind != layout.Hose {
			continue
		}
		leg := p.Curve.Radius*unit.Length(math.Tan(float64(p.Curve.Turn)/2)) + p.Curve.Straight
		in, out := parts[k-1].Out.Depth.Length, parts[k+1].In.Depth.Length
		p.In, p.Out = layout.HoseEnd(leg+in, in, p.In.Hub), layout.HoseEnd(leg+out, out, p.Out.Hub)
	}
}

// stretched gives the parts with the hose's end at a joint longer.
func stretched(parts []layout.Laid, k int, by float64) []layout.Laid {
	parts = append([]layout.Laid(nil), parts...)
	if parts[k].Kind == layout.Hose {
		parts[k].Out.TakeOff.Length += unit.Length(by)
	} else {
		parts[k+1].In.TakeOff.Length += unit.Length(by)
	}
	return parts
}

// The search with a hose against a lattice of chains whose first turn may be one:
// nothing laid and proved there is better than what the search gives.
func TestHoseAgainstLattice(t *testing.T) {
	book := newBook(t)
	cases := uint64(12)
	if *far {
		cases = 200
	}
	fits, hoses, candidates, open := 0, 0, 0, 0
	for seed := uint64(1); seed <= cases; seed++ {
		i := withHose(smallVault(t, book, 5000+seed), 3.5)
		out := searched(t, i)
		any := false
		overLattice(t, &i, func(c layout.Input, a layout.Assembly) {
			if !within18(&a) {
				return
			}
			v := price(&i, &c, &a)
			if v.hosed {
				candidates++
			}
			if covered(out.Layouts, v) {
				any = true
				return // no need to prove it
			}
			if _, ok := sound(c, i.Rules); !ok {
				return
			}
			any = true
			if undecided(&out) {
				open++
				return
			}
			t.Errorf("seed %d: %+v on the lattice, nothing as good in the search's %d (claim %d)\n%s", seed, v, len(out.Layouts), out.Proof.Claim, described(&c))
		})
		if any {
			fits++
		}
		for k := range out.Layouts {
			if len(out.Layouts[k].Laid.Hoses) > 0 {
				hoses++
				break
			}
		}
	}
	t.Logf("%d vaults, %d with a layout on the lattice, %d where the search has one with a hose, %d chains with a hose, %d where it makes no claim", cases, fits, hoses, candidates, open)
	if fits < int(cases)/5 || hoses == 0 || candidates == 0 {
		t.Error("too little was compared")
	}
}
