package drawing

import (
	"slices"
	"strconv"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// moveTall is how tall a picture of a step may be, mm.
const moveTall = 105.0

// WayOut draws how the pump comes out, move by move. Without a way there is no
// sheet.
func WayOut(in Input) (Sheet, bool) {
	if in.Result == nil || in.Result.Assembly == nil || !in.Result.Assembly.Laid {
		return Sheet{}, false
	}
	laid := in.Result.Assembly
	o := &laid.LiftOut
	opened := slices.IndexFunc(laid.Places, func(p layout.Place) bool { return p.Mark == o.Union })
	if !o.Possible || opened < 0 {
		return Sheet{}, false
	}
	p := newPage(in, "way-out", in.say("way.title"))
	if in.Result.NotToCut {
		p.paragraph(in.say("assembly.held"), true)
		p.y += 3
	}
	p.paragraph(in.say("assembly.unplug"), true)
	corner, parts := seenFrom[layout.Wall(in.Job.Vault.Outlet.Wall)], madeOf(in)
	start := newPicture(p, laid, parts, corner)
	start.caption = []string{"1. " + in.say("way.open", "union", o.Union)}
	pictures := []*picture{start}
	now, lean := laid, geom.Vec3{}
	apart := slices.Clone(parts)
	if opened < len(apart) {
		apart[opened].arrow = false // its ends are no longer one behind the other
	}
	for i, m := range o.Moves {
		before := middleOf(now)
		moved := shifted(now, opened, m) // one for each picture, which keeps it until it is drawn
		now = &moved
		lean = lean.Add(m.Along.Scale(float64(m.Turn)))
		c := newPicture(p, now, apart, corner)
		if after := middleOf(now); m.Turn == 0 {
			c.arrow = &[2]geom.Vec3{before, after}
		}
		c.caption = []string{strconv.Itoa(i+2) + ". " + p.move(m, lean), p.far(m)}
		pictures = append(pictures, c)
	}
	p.row(pictures, moveTall)
	rows := [][]string{{start.caption[0], ""}}
	for _, c := range pictures[1:] {
		rows = append(rows, c.caption)
	}
	p.data("", []string{in.say("way.move"), in.say("way.distance")}, rows)
	if pump, ok := usedPump(in.Job); ok && !pump.Weight.IsZero() {
		p.paragraph(in.say("way.weight", "weight", p.show(float64(pump.Weight.SI), unit.KindWeight)), false)
	}
	p.paragraph(in.say("way.lift"), true)
	return p.done(append([]string{in.say("way.desc")}, told(pictures)...)), true
}

// middleOf gives the middle of the pump.
func middleOf(laid *layout.Assembly) geom.Vec3 {
	low, high := bodyOf(laid)
	return low.Add(high).Scale(0.5)
}

// far tells how far a move goes, or by how much it leans.
func (p *page) far(m layout.Move) string {
	if m.Turn != 0 {
		return p.show(float64(m.Turn), unit.KindAngle)
	}
	return p.tape(m.Distance)
}

// move says a move in words; lean is how the pump leans after it.
func (p *page) move(m layout.Move, lean geom.Vec3) string {
	switch {
	case m.Along.Z > 0.9 && lean.Norm() > 1e-6:
		return p.say("way.up.lean")
	case m.Along.Z > 0.9:
		return p.say("way.up")
	}
	var to []string
	for _, w := range []struct {
		code string
		part float64
	}{{"wall.right", m.Along.X}, {"wall.left", -m.Along.X}, {"wall.back", m.Along.Y}, {"wall.front", -m.Along.Y}} {
		if w.part > 0.1 {
			to = append(to, p.say(w.code))
		}
	}
	switch len(to) {
	case 2:
		return p.say("way.slide.two", "one", to[0], "two", to[1])
	case 1:
		if m.Turn != 0 {
			return p.say("way.tilt", "one", to[0])
		}
		return p.say("way.slide", "one", to[0])
	}
	return p.say("way.any")
}

// shifted gives the assembly with the pump, and all that hangs on it when a part
// is opened, moved or tilted.
func shifted(a *layout.Assembly, opened int, m layout.Move) layout.Assembly {
	turn := func(v geom.Vec3) geom.Vec3 { return v }
	put := func(v geom.Vec3) geom.Vec3 { return v.Add(m.Along.Scale(float64(m.Distance))) }
	if m.Turn != 0 {
		turn = func(v geom.Vec3) geom.Vec3 { return v.RotateAbout(m.Axis(), m.Turn) }
		put = func(v geom.Vec3) geom.Vec3 { return turn(v.Sub(m.About)).Add(m.About) }
	}
	out := *a
	out.Body, out.Rounds = slices.Clone(a.Body), slices.Clone(a.Rounds)
	for i := range out.Body {
		b := &out.Body[i]
		b.Centre, b.U, b.V, b.W = put(b.Centre), turn(b.U), turn(b.V), turn(b.W)
	}
	tube := func(c *layout.Cylinder) { c.From, c.To = put(c.From), put(c.To) }
	for i := range out.Rounds {
		tube(&out.Rounds[i])
	}
	out.Places = slices.Clone(a.Places)
	for i := range out.Places[:opened+1] {
		p := &out.Places[i]
		p.Solids = slices.Clone(p.Solids)
		for k := range p.Solids {
			if i < opened || p.Solids[k].Opening == 0 {
				tube(&p.Solids[k].Cylinder)
			}
		}
		p.Inlet, p.InFace = put(p.Inlet), put(p.InFace)
		if i < opened { // what is opened is drawn by its solids, and is no elbow though its halves do not line up
			p.InDir = turn(p.InDir)
			p.Centre, p.Outlet, p.OutFace = put(p.Centre), put(p.Outlet), put(p.OutFace)
			p.OutDir, p.Side = turn(p.OutDir), turn(p.Side)
		}
	}
	out.Hoses = slices.Clone(a.Hoses)
	for i := range out.Hoses {
		h := &out.Hoses[i]
		if h.Line = slices.Clone(h.Line); h.Part < opened {
			for k := range h.Line {
				h.Line[k] = put(h.Line[k])
			}
		}
	}
	out.Pieces = slices.Clone(a.Pieces)
	for i := range out.Pieces {
		if c := &out.Pieces[i]; c.After < opened {
			c.Start, c.End, c.Dir = put(c.Start), put(c.End), turn(c.Dir)
		}
	}
	return out
}
