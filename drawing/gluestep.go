package drawing

import (
	"slices"
	"strconv"
	"strings"

	"plashet/engine/geom"
	"plashet/engine/glue"
)

// narrow is the width of a step's picture, mm: small enough for a card, and on
// a screen its letters are large.
const (
	narrow   = 74.0
	stepTall = 52.0
)

// GlueSteps draws each step of gluing up that has parts or joints in hand: the
// assembly with those parts drawn strongly, the joint ringed and numbered, and
// where a valve is held over its joint, how. The sheets are named glue-1,
// glue-2 ... by the steps' numbers.
func GlueSteps(in Input) []Sheet {
	r := in.Result
	if r == nil || r.Glue == nil || r.Assembly == nil || !r.Assembly.Laid {
		return nil
	}
	var out []Sheet
	for i := range r.Glue.Steps {
		s := &r.Glue.Steps[i]
		if len(s.Parts) == 0 && len(s.Joints) == 0 {
			continue
		}
		out = append(out, glueStep(in, s))
	}
	return out
}

func glueStep(in Input, s *glue.Step) Sheet {
	number := strconv.Itoa(s.Number)
	a := &iso{
		page: &page{in: in, sheet: Sheet{Name: "glue-" + number, Title: in.say("glue.title", "number", number) + ": " + in.Result.Name, Width: narrow}, y: 2},
		laid: in.Result.Assembly, made: madeOf(in), hand: s.Parts, quiet: true,
	}
	joints := a.joints(s)
	a.only = a.stretchOf(s.Parts)
	a.view = newView(a.cornerFor(joints))
	a.gather()
	a.fit()
	for _, t := range painted(a.things, a.view.toward) {
		a.touch(Group{Name: t.name, Mark: t.mark, Title: t.title}, t.draw)
	}
	a.stands()
	for _, j := range joints {
		a.touch(Group{Name: "joint " + j.number, Mark: "joint " + j.number, Title: in.say("glue.joint", "number", j.number)}, func() { a.lit(j) })
	}
	a.group("marks", func() { a.inHand(s) })
	if s.Tilt == glue.TiltBelow {
		a.group("tilt", a.tilt)
	}
	desc := []string{in.say("glue.desc", "number", number, "parts", strings.Join(s.Parts, ", "))}
	for _, j := range joints {
		desc = append(desc, in.say("glue.desc.joint", "number", j.number, "at", j.name))
	}
	if s.Tilt == glue.TiltBelow {
		desc = append(desc, in.say("glue.tilt"))
	}
	a.data("", []string{in.say("part"), ""}, a.handRows(s, joints))
	return a.done(desc)
}

// lit is a joint where it stands in the vault.
type lit struct {
	number string
	name   string
	at     geom.Vec3
	dir    geom.Vec3
	radius float64 // m
}

// handRows lists what is in hand and the joints that are made.
func (a *iso) handRows(s *glue.Step, joints []lit) [][]string {
	var rows [][]string
	for i := range a.laid.Places {
		if slices.Contains(s.Parts, a.mark(i)) {
			rows = append(rows, []string{a.mark(i), a.partName(i)})
		}
	}
	for i := range a.laid.Pieces {
		if c := &a.laid.Pieces[i]; slices.Contains(s.Parts, c.Mark) {
			rows = append(rows, []string{c.Mark, a.cut(c)})
		}
	}
	for _, j := range joints {
		rows = append(rows, []string{a.say("glue.joint", "number", j.number), j.name})
	}
	if len(rows) == 0 {
		rows = append(rows, []string{strings.Join(s.Parts, ", "), ""})
	}
	return rows
}

// joints finds the joints of a step in the vault.
func (a *iso) joints(s *glue.Step) []lit {
	var out []lit
	for _, n := range s.Joints {
		if n < 1 || n > len(a.in.Result.Glue.Joints) {
			continue
		}
		j := &a.in.Result.Glue.Joints[n-1]
		l := lit{number: strconv.Itoa(n), radius: a.outside() * 0.78}
		var names []string
		for _, e := range j.Ends {
			names = append(names, e.Mark)
		}
		if j.Piece != "" {
			names = append(names, j.Piece)
		}
		l.name = strings.Join(names, " – ")
		l.at, l.dir = a.place(j)
		out = append(out, l)
	}
	return out
}

// place gives where a joint is: the face of the hub towards the other side.
func (a *iso) place(j *glue.Joint) (at, dir geom.Vec3) {
	e := j.Ends[len(j.Ends)-1]
	switch {
	case e.Part == glue.Pump:
		return a.laid.Port, a.laid.Points
	case e.Part == glue.Wall || e.Part >= len(a.laid.Places):
		return a.laid.Hole.At, a.laid.Hole.Axis
	}
	p := &a.laid.Places[e.Part]
	switch {
	case j.Kind == glue.Face:
		return p.InFace.Add(p.OutFace).Scale(0.5), p.InDir
	case e.Out:
		return p.OutFace, p.OutDir
	}
	return p.InFace, p.InDir
}

// cornerFor chooses the corner over which the joints are hidden least; the first
// of equals, so that the steps are mostly seen from one side.
func (a *iso) cornerFor(joints []lit) Corner {
	best, least := FrontLeft, -1
	for _, c := range Corners() {
		v := newView(c)
		hidden := 0
		for _, j := range joints {
			for i := range a.laid.Body {
				hidden += covers(block(a.laid.Body[i]), j.at, v)
			}
			for i := range a.laid.Places {
				if !a.only.has(i) {
					continue
				}
				for _, s := range a.laid.Places[i].Solids {
					hidden += covers(tubeOf(s.Cylinder), j.at, v)
				}
			}
		}
		if least < 0 || hidden < least {
			best, least = c, hidden
		}
	}
	return best
}

// covers gives 1 where a solid stands between a point and the viewer.
func covers(s shape, at geom.Vec3, v view) int {
	var flat []Point
	for _, p := range s.corners() {
		flat = append(flat, v.at(p))
	}
	low, high := s.reach(v.toward)
	q := v.at(at)
	if (low+high)/2 > v.toward.Dot(at)+1e-6 && meets(hull(flat), q, q.Add(Point{1e-9, 0})) {
		return 1
	}
	return 0
}

// lit rings a joint, thick enough to be told without colour.
func (a *iso) lit(j lit) {
	ring := tube{j.at, j.at.Add(j.dir), j.radius}.ring(a.view, j.at)
	ring.Pen = Pen{Ink: Paper, Wide: 2.2}
	a.add(ring)
	ring.Pen = Pen{Ink: Black, Wide: 1.1}
	a.add(ring)
	box := rectangle(ring.Centre.X-2, ring.Centre.Y-2, ring.Centre.X+2, ring.Centre.Y+2)
	a.field.solid = append(a.field.solid, patchOf(box[:]...))
	t := Text{Size: figure, Bold: true, Halo: true, Text: j.number}
	if p, ok := a.field.callout(ring.Centre, 2.5, t, Point{0.5, -0.5}); ok {
		if p.lead != nil {
			a.add(Line{p.lead[0], p.lead[1], fine})
		}
		a.text(p.text)
	}
}

// inHand names the parts and pieces in hand, where they are not too many to be
// told apart.
func (a *iso) inHand(s *glue.Step) {
	if len(s.Parts) > manyMarks {
		return
	}
	for i := range a.laid.Pieces {
		c := &a.laid.Pieces[i]
		if slices.Contains(s.Parts, c.Mark) {
			a.call(c.Start.Add(c.End).Scale(0.5), Text{Bold: true, Text: c.Mark})
		}
	}
	for i := range a.laid.Places {
		p := &a.laid.Places[i]
		if slices.Contains(s.Parts, a.mark(i)) {
			a.call(p.Centre, Text{Bold: true, Text: a.mark(i)})
		}
	}
}

// tilt draws how a valve is held over its joint: its socket looks down, the pipe
// comes from below.
func (a *iso) tilt() {
	a.y += 1
	x, y := 10.0, a.y
	a.add(
		polygonOf(rectangle(x-4.5, y, x+4.5, y+8), thick, Paper),     // the valve
		polygonOf(rectangle(x-3.4, y+8, x+3.4, y+11), line, Paper),   // its socket
		polygonOf(rectangle(x-2.2, y+14.5, x+2.2, y+22), line, Wash), // the pipe
		Line{Point{x + 8, y + 21}, Point{x + 8, y + 12}, thick},
		Polygon{Points: []Point{{x + 8, y + 9}, {x + 6.2, y + 12.5}, {x + 9.8, y + 12.5}}, Fill: Black},
		Line{Point{x - 3.4, y + 11}, Point{x + 3.4, y + 11}, Pen{Ink: Black, Wide: 1.1}},
	)
	at := y + small + 1
	for _, l := range wrap(a.say("glue.tilt"), true, narrow-x-14-3) {
		a.text(Text{At: Point{x + 14, at}, Size: small, Bold: true, Text: l})
		at += small * 1.25
	}
	a.y = max(y+23, at)
}

// pumpPen is strong where the pump is in hand or all is drawn alike.
func (a *iso) pumpPen() Pen {
	if a.quiet && !slices.Contains(a.hand, "pump") {
		return help
	}
	return line
}

// inked tells the pen of a thing: strong where it is in hand or where all are.
func (a *iso) inked(mark string, pen Pen, fill Ink) (Pen, Ink) {
	if !a.quiet || slices.Contains(a.hand, mark) {
		return pen, fill
	}
	if fill == Wash {
		fill = Paper
	}
	return help, fill
}
