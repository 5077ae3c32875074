package drawing

import (
	"cmp"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
)

// stands notes what texts must keep off: parts and pipes, the pump's edges.
func (a *iso) stands() {
	for _, t := range a.things {
		for _, s := range t.shapes {
			if b, ok := s.(block); ok {
				edges := &a.field.soft
				if t.name == "pump" {
					edges = &a.field.edges
				}
				for _, f := range b.faces(a.view) {
					*edges = append(*edges, patchOf(append(f, f[0])...))
				}
				continue
			}
			a.field.solid = append(a.field.solid, patchOf(hull(a.flat(s.corners()))...))
		}
	}
}

// marks names the pump, the pieces with their cut lengths, the parts and what
// stands in the way.
func (a *iso) marks() {
	a.pumpName()
	for i := range a.laid.Pieces {
		c := &a.laid.Pieces[i]
		if a.crowded() {
			break
		}
		a.call(c.Start.Add(c.End).Scale(0.5), Text{Bold: true, Text: c.Mark + " " + a.cut(c)})
	}
	for i := range a.laid.Places {
		p := &a.laid.Places[i]
		if a.crowded() && !a.landmark(i) {
			continue
		}
		at := p.Centre
		if p.InDir == p.OutDir {
			at = p.InFace.Add(p.OutFace).Scale(0.5)
		}
		a.call(at, Text{Text: a.mark(i)})
	}
	for _, o := range a.in.Job.Vault.Obstacles {
		a.call(vecOf(o.From).Add(vecOf(o.To)).Scale(0.5), Text{Text: fit(o.Name, 30)})
	}
}

// call puts a text near a point of the vault with a lead to it, away from the
// middle of the plumbing.
func (a *iso) call(at geom.Vec3, t Text) {
	middle := geom.Vec3{}
	for _, p := range a.laid.Places {
		middle = middle.Add(p.Centre.Scale(1 / float64(len(a.laid.Places))))
	}
	p := a.view.at(at)
	wish := p.Sub(a.view.at(middle))
	if n := wish.Norm(); n > 0 {
		wish = wish.Scale(1 / n)
	}
	t.Size, t.Halo = small, true
	where, ok := a.field.callout(p, 0.6, t, wish)
	if !ok {
		return // no room: the lists below name it
	}
	if where.lead != nil {
		a.add(Line{where.lead[0], where.lead[1], fine})
	}
	a.add(Arc{Centre: p, RX: 0.6, RY: 0.6, Sweep: 360, Fill: Black})
	a.text(where.text)
}

// pumpName writes the pump's name on a side of it that is seen, or near by.
func (a *iso) pumpName() {
	pump, ok := usedPump(a.in.Job)
	if !ok || len(a.laid.Body) == 0 {
		return
	}
	t := Text{Size: small, Anchor: Middle, Ink: Black, Text: fit(a.say("curve.pump", "name", pump.Name), 40)}
	var places []place
	for _, f := range block(a.laid.Body[0]).faces(a.view) {
		t.At = f[0].Add(f[2]).Scale(0.5).Add(Point{0, small * 0.36})
		places = append(places, place{text: t})
	}
	if p, ok := a.field.ifFree(places); ok {
		a.text(p.text)
		return
	}
	low, high := bodyOf(a.laid)
	a.call(low.Add(high).Scale(0.5), t)
}

// cut shows a piece's cut length.
func (a *iso) cut(c *layout.Piece) string { return a.tape(c.Cut) }

func (a *iso) desc() []string {
	out := []string{a.say("assembly.desc", "corner", a.say("corner."+a.view.corner.String()))}
	if a.in.Result.NotToCut {
		out = append(out, a.say("assembly.held"))
	}
	for i := range a.laid.Pieces {
		c := &a.laid.Pieces[i]
		out = append(out, a.say("assembly.piece", "mark", c.Mark, "from", c.From, "to", c.To, "cut", a.cut(c)))
	}
	return out
}

// hull gives the convex hull of points (A. M. Andrew, "Another efficient
// algorithm for convex hulls in two dimensions", Information Processing
// Letters 9, 1979), in order round it.
func hull(points []Point) []Point {
	sorted := slices.Clone(points)
	slices.SortFunc(sorted, func(a, b Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	half := func(from, to, step int) []Point {
		var out []Point
		for i := from; i != to; i += step {
			for len(out) > 1 && leftOf(out[len(out)-2], out[len(out)-1], sorted[i]) <= 0 {
				out = out[:len(out)-1]
			}
			out = append(out, sorted[i])
		}
		return out[:max(0, len(out)-1)]
	}
	n := len(sorted)
	return append(half(0, n, 1), half(n-1, -1, -1)...)
}
