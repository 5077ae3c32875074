package arrange

import (
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// outlet is the end that the search goes on from, of a pump in a standing.
func (in *Input) outlet(standing int) layout.End {
	if n := len(in.Glued.FromPort); n > 0 {
		l := in.Glued.FromPort[n-1]
		e := l.Out
		e.Size = size(l.Out, l.Part)
		return e
	}
	return in.Standings[standing].Pump.Outlet
}

// hold puts what is glued into the kits of a standing.
func (s *search) hold(standing int, kits []kit) []kit {
	g := &s.glued
	if len(g.pre) > 0 && standing != s.in.Glued.Standing {
		return nil // how the elbows stand with the pump in another attitude is not known
	}
	for i := range kits {
		k := &kits[i]
		for j := range k.starts {
			k.starts[j] = append(g.port[:len(g.port):len(g.port)], k.starts[j]...)
		}
		if len(g.wall) > 0 {
			k.ends, k.tail = nil, g.wall
		}
	}
	st := &s.in.Standings[standing]
	changed := append(s.changing(st, kits), s.coupled(st, kits)...)
	for i := range kits {
		if !s.leaves(&kits[i], kits) {
			kits[i].starts = nil
		}
		if !g.any() {
			kits[i].spaces = s.spaced(st, &kits[i], nil, nil)
		}
	}
	return append(kits, changed...)
}

// needs tells that a check valve, or a union, is still to be put in.
func (s *search) needs() (check, union bool) {
	return s.in.Rules.Check && s.glued.check == nil, s.in.Rules.Union && s.glued.union == nil
}

// headOf gives what a piece takes of head: of a glued one what its like among
// the fittings takes, nothing where there is none.
func (s *search) headOf(p *piece) float64 {
	if p.hose != nil {
		return p.hose.head
	}
	if p.fitting >= 0 {
		return float64(s.in.Fittings[p.fitting].Head)
	}
	for _, f := range s.in.Fittings {
		if f.Part.Kind == p.part.Kind && f.Part.Size == p.part.Size {
			return float64(f.Head)
		}
	}
	return 0
}

// roll gives how a glued part without a turn is rolled once the pump is turned.
func (s *search) roll(p *piece, in geom.Vec3, turned unit.Angle) unit.Angle {
	side := p.held.side
	if p.held.port {
		side = side.RotateAbout(geom.Vec3{Z: 1}, turned-s.in.Glued.Turn)
	}
	if side = side.Sub(in.Scale(in.Dot(side))); side.Norm() < 0.5 {
		return p.held.laid.Roll
	}
	return layout.RollOf(in, side.Unit())
}

// turnedPre gives the flow into each glued turn on the pump's side once it is
// turned, and the flow that the search goes on from.
func (s *search) turnedPre(port geom.Vec3, turned unit.Angle) (pre []geom.Vec3, from geom.Vec3) {
	g := &s.glued
	if len(g.pre) == 0 {
		return nil, port
	}
	up, by := geom.Vec3{Z: 1}, turned-s.in.Glued.Turn
	for _, d := range g.pre {
		pre = append(pre, square(d.RotateAbout(up, by)))
	}
	return pre, g.from.RotateAbout(up, by)
}

// drainsWith tells that the check valve comes before the union, whichever of
// them is glued.
func drainsWith(parts []*piece) bool {
	check, union := -1, -1
	for i, p := range parts {
		if p.part.Kind.IsCheck() && check < 0 {
			check = i
		}
		if p.opens && union < 0 {
			union = i
		}
	}
	return check >= 0 && union >= 0 && check < union
}
