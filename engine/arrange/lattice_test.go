package arrange_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// This file goes through every chain of up to two elbows on a lattice: every
// elbow at every roll of 45 degrees, union and valve in every leg, the pump on
// a lattice of places, one piece for each way a chain can run closed by
// engine/layout and the rest on a lattice of gaps. What engine/layout lays
// without a fault and engine/verify proves is held against the search's front.

// lattice goes through the chains of a small case.
type lattice struct {
	i     *arrange.Input
	of    map[layout.Kind]layout.Part
	hole  layout.Hole
	found func(layout.Input, layout.Assembly)
	laid  int
	chain layout.Input
	legs  []int // joints at a hose whose length the chain's end gives

	// Where the size changes: all after one of the reducers is of the second.
	second   map[layout.Kind]layout.Part
	reducers []layout.Part

	couplings []layout.Part // each in every place once, beside the chain without
}

func overLattice(t testing.TB, i *arrange.Input, found func(layout.Input, layout.Assembly)) (laid int) {
	t.Helper()
	l := &lattice{i: i, of: map[layout.Kind]layout.Part{}, second: map[layout.Kind]layout.Part{}, found: found}
	var ok bool
	if l.hole, ok = i.Vault.Hole(); !ok {
		t.Fatal("no hole")
	}
	var pipes []layout.Pipe
	for _, p := range i.Pipes {
		pipes = append(pipes, p.Pipe)
	}
	for _, f := range i.Fittings {
		switch {
		case f.Part.Kind == layout.Reducer:
			l.reducers = append(l.reducers, f.Part)
		case f.Part.Kind == layout.Coupling:
			l.couplings = append(l.couplings, f.Part)
		case f.Part.Size != pipes[0].Size:
			l.second[f.Part.Kind] = f.Part
		default:
			l.of[f.Part.Kind] = f.Part
		}
	}
	for q := range 4 {
		turn := unit.Angle(q*90) * unit.Degree
		port := i.Standings[0].Pump.Points.RotateAbout(geom.Vec3{Z: 1}, turn)
		l.chain = layout.Input{
			Straight: true, Vault: i.Vault, Pump: i.Standings[0].Pump, Pose: layout.Pose{Turn: turn},
			Pipes: pipes, Settings: i.Settings, Beyond: i.Beyond, Path: i.Path,
		}
		l.elbows(nil, []geom.Vec3{port})
	}
	return l.laid
}

// elbows adds one elbow more at every roll.
func (l *lattice) elbows(so []layout.Laid, ways []geom.Vec3) {
	way := ways[len(ways)-1]
	if way.Dot(l.hole.Axis) > 1-1e-9 {
		l.inline(so, ways)
	}
	if len(so) == l.i.Rules.Elbows {
		return
	}
	l.hoses(so, ways)
	for _, k := range []layout.Kind{layout.Elbow90, layout.Elbow45, layout.Street90} {
		p, have := l.of[k]
		if !have {
			continue
		}
		either := []layout.Part{p}
		if k == layout.Street90 {
			either = append(either, turnedRound(p))
		}
		for eighth := range 8 {
			roll, side := aside(way, eighth)
			out := side
			if k == layout.Elbow45 {
				out = way.Add(side).Unit()
			}
			for _, p := range either {
				l.elbows(append(so[:len(so):len(so)], layout.Laid{Part: p, Roll: roll}), append(ways[:len(ways):len(ways)], out))
			}
		}
	}
}

// turnedRound gives a fitting with its other end towards the pump.
func turnedRound(p layout.Part) layout.Part {
	p.In, p.Out = p.Out, p.In
	return p
}

// aside gives a roll in eighths of a turn, and the direction across a leg that an
// elbow rolled so looks to: at no roll up, or to the back wall where the leg stands
// upright.
func aside(way geom.Vec3, eighth int) (unit.Angle, geom.Vec3) {
	roll, zero := unit.Angle(eighth*45)*unit.Degree, geom.Vec3{Z: 1}
	if math.Abs(way.Z) > 0.999 {
		zero = geom.Vec3{Y: 1}
	}
	return roll, zero.Sub(way.Scale(zero.Dot(way))).Unit().RotateAbout(way, roll)
}

// inline puts union and valve into every leg, in both orders.
func (l *lattice) inline(elbows []layout.Laid, ways []geom.Vec3) {
	legs := make([][]layout.Laid, len(ways))
	legs[0] = []layout.Laid{{Part: l.of[layout.MaleAdapter]}}
	for k, e := range elbows {
		legs[k+1] = []layout.Laid{e}
	}
	var extra []layout.Part
	for _, k := range []layout.Kind{layout.Union, layout.CheckSpring, layout.CheckSwing} {
		if p, have := l.of[k]; have {
			extra = append(extra, p)
		}
	}
	put := func(legs [][]layout.Laid, p layout.Part, leg, at int) [][]layout.Laid {
		out := append([][]layout.Laid(nil), legs...)
		own := append([]layout.Laid(nil), legs[leg][:at]...)
		own = append(own, layout.Laid{Part: p})
		out[leg] = append(own, legs[leg][at:]...)
		return out
	}
	var place func(legs [][]layout.Laid, left []layout.Part)
	place = func(legs [][]layout.Laid, left []layout.Part) {
		if len(left) == 0 {
			l.gaps(legs, ways)
			return
		}
		for leg := range legs {
			for at := 1; at <= len(legs[leg]); at++ {
				place(put(legs, left[0], leg, at), left[1:])
			}
		}
	}
	place(legs, extra)
}

// gaps lists the parts in order, with each reducer in each place where the size
// may change.
func (l *lattice) gaps(legs [][]layout.Laid, ways []geom.Vec3) {
	var parts []layout.Laid
	var legOf []int
	for k, leg := range legs {
		for _, p := range leg {
			parts, legOf = append(parts, p), append(legOf, k)
		}
	}
	if len(l.reducers) == 0 {
		end := layout.Laid{Part: l.of[layout.Bulkhead]}
		for at := 1; at <= len(parts); at++ {
			for _, c := range l.couplings { // between two pieces of pipe
				if parts[at-1].Out.Kind != layout.Socket || at < len(parts) && parts[at].In.Kind != layout.Socket {
					continue
				}
				own := slices.Insert(slices.Clone(parts), at, layout.Laid{Part: c})
				l.closed(append(own, end), slices.Insert(slices.Clone(legOf), at, legOf[at-1]), ways)
			}
		}
		l.closed(append(parts, end), legOf, ways)
		return
	}
	for at := 1; at <= len(parts); at++ {
		for _, r := range l.reducers {
			own := append(slices.Clone(parts[:at]), layout.Laid{Part: r})
			for _, p := range parts[at:] {
				round := p.In.Kind == layout.Spigot
				if p.Part = l.second[p.Kind]; round {
					p.Part = turnedRound(p.Part)
				}
				own = append(own, p)
			}
			l.closed(append(own, layout.Laid{Part: l.second[layout.Bulkhead]}), slices.Insert(slices.Clone(legOf), at, legOf[at-1]), ways)
		}
	}
}

// The lattice finds layouts in a good share of the small vaults, and some that
// are laid are refused: it is a judge worth asking.
func TestLattice(t *testing.T) {
	book, r := newBook(t), rand.New(rand.NewPCG(1, 1))
	fit, laid, refusals := 0, 0, 0
	for range 8 {
		i := smallVault(t, book, r.Uint64N(1000))
		good := 0
		laid += overLattice(t, &i, func(c layout.Input, _ layout.Assembly) {
			if _, ok := sound(c, i.Rules); ok {
				good++
			} else {
				refusals++
			}
		})
		if good > 0 {
			fit++
		}
	}
	t.Logf("%d of 8 vaults have layouts on the lattice; %d laid, %d refused", fit, laid, refusals)
	if fit < 2 || refusals == 0 {
		t.Error("the lattice shows too little")
	}
}
