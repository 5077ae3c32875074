package drawing

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/layout"
)

// part makes what is drawn of a fitting, with the ends of the pipes in it.
func (a *iso) part(i int) *thing {
	p := &a.laid.Places[i]
	t := &thing{kind: a.kindOf(i), name: "part " + a.mark(i), mark: a.mark(i), title: a.mark(i) + ": " + a.partName(i)}
	var tubes []tube
	if h := a.hose(i); h != nil {
		for k := range h.Line[1:] {
			tubes = append(tubes, tube{h.Line[k], h.Line[k+1], float64(h.OD) / 2})
		}
		t.draw = func() { a.straight(tubes, t.mark) }
	} else if p.InDir != p.OutDir {
		r := a.hub(p)
		tubes = []tube{{p.InFace, p.Centre, r}, {p.OutFace, p.Centre, r}}
		t.corner = &Ball{p.Centre, r}
		t.draw = func() { a.elbow(p, tubes, t.mark); a.inside(i) }
	} else {
		for _, s := range p.Solids {
			tubes = append(tubes, tubeOf(s.Cylinder))
		}
		if len(tubes) == 0 { // its hubs are not known: as wide as its pipe
			tubes = []tube{{p.InFace, p.OutFace, a.hub(p)}}
		}
		t.draw = func() { a.straight(tubes, t.mark); a.inside(i); a.arrow(i) }
	}
	for _, u := range tubes {
		t.shapes = append(t.shapes, u)
	}
	return t
}

// hose gives the hose that a part is; nil for what is none.
func (a *iso) hose(part int) *layout.HoseCut {
	for i := range a.laid.Hoses {
		if a.laid.Hoses[i].Part == part {
			return &a.laid.Hoses[i]
		}
	}
	return nil
}

// hub gives the radius a fitting is drawn with where it has one only, m.
func (a *iso) hub(p *layout.Place) float64 {
	r := 0.0
	for _, s := range p.Solids {
		r = math.Max(r, float64(s.Radius))
	}
	if r == 0 {
		r = a.outside() * 0.6
	}
	return r
}

// drawTube draws a tube and the end that is seen.
func (a *iso) drawTube(t tube, pen Pen, fill Ink) {
	end := t.seenEnd(a.view)
	end.Pen, end.Fill = Pen{Ink: pen.Ink, Wide: pen.Wide * 0.6, Dash: pen.Dash}, fill
	a.add(Polygon{t.outline(a.view), pen, fill}, end)
}

func (a *iso) drawBlock(b block, pen Pen) {
	for _, f := range b.faces(a.view) {
		a.add(Polygon{f, pen, Paper})
	}
}

// straight draws the tubes of a part along one axis, the far ones first.
func (a *iso) straight(tubes []tube, mark string) {
	pen, fill := a.inked(mark, line, Paper)
	order := make([]*thing, 0, len(tubes))
	for _, t := range tubes {
		order = append(order, &thing{shapes: []shape{t}, draw: func() { a.drawTube(t, pen, fill) }})
	}
	for _, t := range painted(order, a.view.toward) {
		t.draw()
	}
}

// elbow draws two legs with a ball where they meet, so that the corner is round.
func (a *iso) elbow(p *layout.Place, legs []tube, mark string) {
	pen, _ := a.inked(mark, line, Paper)
	r := legs[0].radius * a.view.scale
	a.add(Arc{Centre: a.view.at(p.Centre), RX: r, RY: r, Sweep: 360, Pen: pen, Fill: Paper})
	if depth(legs[0], a.view) > depth(legs[1], a.view) {
		legs = []tube{legs[1], legs[0]}
	}
	for _, t := range legs {
		o := t.outline(a.view)
		a.add(Polygon{Points: o, Fill: Paper})
		// Round the face and along both sides, but not round the corner.
		a.add(Polyline{append([]Point{o[halfRing]}, append(o[halfRing+1:], o[0])...), pen})
		if t.dir().Dot(a.view.toward) < 0 {
			end := t.ring(a.view, t.from)
			end.Pen, end.Fill = Pen{Ink: pen.Ink, Wide: pen.Wide * 0.6}, Paper
			a.add(end)
		}
	}
}

func depth(t tube, v view) float64 { return t.from.Add(t.to).Dot(v.toward) }

// arrow draws the arrow that is cast on a check valve, beside its axis so that
// the marks leave it free.
func (a *iso) arrow(i int) {
	p := &a.laid.Places[i]
	if !a.made[i].arrow {
		return
	}
	from, to := p.InFace, p.OutFace
	if a.made[i].reverse {
		from, to = to, from
	}
	d := to.Sub(from)
	flat := a.view.along(d)
	if flat.Norm() == 0 {
		return
	}
	// Square to the axis and to the line of sight, to the upper or right side.
	side := a.view.right.Scale(-flat.Y / flat.Norm()).Add(a.view.up.Scale(-flat.X / flat.Norm()))
	if side.Dot(a.view.up.Add(a.view.right.Scale(0.1))) < 0 {
		side = side.Scale(-1)
	}
	lift := side.Scale(a.hub(p) * 0.62)
	a.drawArrow(from.Add(d.Scale(0.22)).Add(lift), to.Sub(d.Scale(0.22)).Add(lift), Pen{Ink: Black, Wide: 0.6})
}

// drawArrow draws a line with a head at to.
func (a *iso) drawArrow(from, to geom.Vec3, pen Pen) {
	p, q := a.view.at(from), a.view.at(to)
	d := q.Sub(p)
	if d.Norm() < 0.5 {
		return
	}
	d = d.Scale(1 / d.Norm())
	side := Point{-d.Y, d.X}
	a.add(Line{p, q.Sub(d.Scale(1.5)), pen},
		Polygon{[]Point{q, q.Sub(d.Scale(2.8)).Add(side.Scale(1.2)), q.Sub(d.Scale(2.8)).Sub(side.Scale(1.2))}, Pen{}, pen.Ink})
}

// inside draws the ends of the pipes that stand in a fitting's sockets, seen
// through it.
func (a *iso) inside(i int) {
	p := &a.laid.Places[i]
	for k := range a.laid.Pieces {
		c := &a.laid.Pieces[k]
		var from, to geom.Vec3
		switch i {
		case c.After:
			from, to = c.Start, clampTo(c, p.OutFace)
		case c.After + 1:
			from, to = clampTo(c, p.InFace), c.End
		default:
			continue
		}
		if to.Sub(from).Dot(c.Dir) > 1e-6 {
			a.drawTube(tube{from, to, float64(c.Pipe.OD) / 2}, Pen{Ink: Water, Wide: 0.3, Dash: Dashed}, Wash)
		}
	}
}

// clampTo gives the point of a piece's axis at the height of a face.
func clampTo(c *layout.Piece, face geom.Vec3) geom.Vec3 {
	long := c.End.Sub(c.Start).Dot(c.Dir)
	d := face.Sub(c.Start).Dot(c.Dir)
	return c.Start.Add(c.Dir.Scale(math.Max(0, math.Min(long, d))))
}

// seen makes what shows of a piece of pipe between the faces of its fittings.
func (a *iso) seen(c *layout.Piece) (*thing, bool) {
	from, to := c.Start, c.End
	if c.After >= 0 {
		from = clampTo(c, a.laid.Places[c.After].OutFace)
	}
	if next := c.After + 1; next < len(a.laid.Places) {
		to = clampTo(c, a.laid.Places[next].InFace)
	}
	if to.Sub(from).Dot(c.Dir) < 5e-4 {
		return nil, false
	}
	t := tube{from, to, float64(c.Pipe.OD) / 2}
	return &thing{
		kind: KindPipe, name: "piece " + c.Mark, mark: c.Mark, shapes: []shape{t},
		title: a.say("assembly.piece", "mark", c.Mark, "from", c.From, "to", c.To, "cut", a.cut(c)),
		draw: func() {
			pen, fill := a.inked(c.Mark, line, Wash)
			a.drawTube(t, pen, fill)
		},
	}, true
}
