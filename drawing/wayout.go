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
	by := geom.Vec3{}
	for i, m := range o.Moves {
		from := by
		by = by.Add(m.Along.Scale(float64(m.Distance)))
		moved := shifted(laid, opened, by)
		c := newPicture(p, &moved, parts, corner)
		c.arrow = c.moved(laid, from, by)
		c.caption = []string{strconv.Itoa(i+2) + ". " + p.move(m), p.tape(m.Distance)}
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

// moved gives the arrow of a move, from where the middle of the pump was to where
// it is.
func (c *picture) moved(laid *layout.Assembly, from, to geom.Vec3) *[2]geom.Vec3 {
	low, high := bodyOf(laid)
	middle := low.Add(high).Scale(0.5)
	return &[2]geom.Vec3{middle.Add(from), middle.Add(to)}
}

// move says a move in words.
func (p *page) move(m layout.Move) string {
	if m.Along.Z > 0.9 {
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
		return p.say("way.slide", "one", to[0])
	}
	return p.say("way.any")
}

// shifted gives the assembly with the pump, and all that hangs on it when a part
// is opened, moved.
func shifted(a *layout.Assembly, opened int, by geom.Vec3) layout.Assembly {
	out := *a
	out.Body, out.Rounds = slices.Clone(a.Body), slices.Clone(a.Rounds)
	for i := range out.Body {
		out.Body[i].Centre = out.Body[i].Centre.Add(by)
	}
	tube := func(c *layout.Cylinder) { c.From, c.To = c.From.Add(by), c.To.Add(by) }
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
		p.Inlet, p.InFace = p.Inlet.Add(by), p.InFace.Add(by)
		if i < opened {
			p.Centre, p.Outlet, p.OutFace = p.Centre.Add(by), p.Outlet.Add(by), p.OutFace.Add(by)
		}
	}
	out.Pieces = slices.Clone(a.Pieces)
	for i := range out.Pieces {
		if c := &out.Pieces[i]; c.After < opened {
			c.Start, c.End = c.Start.Add(by), c.End.Add(by)
		}
	}
	return out
}
