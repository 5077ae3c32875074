package drawing

import (
	"math"

	"plashet/engine/design"
	"plashet/engine/geom"
	"plashet/engine/unit"
)

// Plan draws the pond's outline with its shelves to scale, and beside it, to
// the same scale, how large vault and pools are. Where vault, falls and runs
// lie on the ground no job tells: the sheet says so, and invents no place.
// Without an outline there is no sheet.
func Plan(in Input) (Sheet, bool) {
	p, ok := planOf(in)
	if !ok {
		return Sheet{}, false
	}
	p.lists()
	return p.done(p.desc()), true
}

// planOf draws the picture.
func planOf(in Input) (*plan, bool) {
	if in.Job == nil || in.Result == nil {
		return nil, false
	}
	outline, err := design.OutlineOf(in.Job.Pond.Outline)
	if err != nil {
		return nil, false
	}
	p := &plan{page: newPage(in, "plan", in.say("plan.title")), o: outline}
	p.scales()
	p.touch(Group{Name: "pond", Title: in.say("plan.pond")}, p.pond)
	p.group("beside", p.drawBeside)
	p.y = p.foot + 3
	p.bar()
	return p, true
}

// plan is the sheet while it is drawn.
type plan struct {
	*page
	o      *geom.Outline
	edge   []geom.Vec2
	scale  float64 // mm per m
	origin Point   // of the outline's lower left corner, on the sheet
	low    geom.Vec2
	foot   float64
	beside []footprint
	unsaid []string // shelves that could not be drawn
	field  field
}

// footprint is something whose size is known and its place is not.
type footprint struct {
	name          string
	length, width unit.Length
	round         bool
}

// Room for the outline, mm.
const (
	planTall  = 100.0
	planSpare = 10.0 // for its sizes
	sideWide  = 36.0 // for what stands beside

	// edgeFine is how many times finer than the pond its drawn edge is: within a
	// thousandth of its area at full size, for who builds on from the drawing.
	edgeFine = 4000
)

func (p *plan) scales() {
	l, w := p.outlined()
	p.found()
	room := wide - 2*margin - planSpare
	if len(p.beside) > 0 {
		room -= sideWide + 6
	}
	p.scale = min(room/l, planTall/w)
	top := p.y + 2
	p.origin = Point{margin + planSpare, top + w*p.scale}
	p.foot = p.origin.Y + planSpare
	p.sheet.Scale = Scale{PerM: p.scale, Zero: p.at(geom.Vec2{})} // the outline's own zero
}

// outlined takes the outline's points, and gives how long and wide it is, m.
func (p *plan) outlined() (l, w float64) {
	b := p.o.Bounds()
	p.low = b.Min
	l, w = b.Max.X-b.Min.X, b.Max.Y-b.Min.Y
	p.edge = p.o.Polyline(unit.Length(math.Max(l, w) / edgeFine))
	return l, w
}

// found lists what is drawn beside the pond.
func (p *plan) found() {
	if v := &p.in.Job.Vault; v.Shape == "round" && v.Length.SI > 0 {
		p.beside = append(p.beside, footprint{p.say("plan.vault"), v.Length.SI, v.Length.SI, true})
	} else if v.Length.SI > 0 && v.Width.SI > 0 {
		p.beside = append(p.beside, footprint{p.say("plan.vault"), v.Length.SI, v.Width.SI, false})
	}
	for _, c := range p.in.Job.Watercourses {
		for _, part := range c.Parts {
			if q := part.Pool; q != nil && q.Length.SI > 0 && q.Width.SI > 0 {
				p.beside = append(p.beside, footprint{q.Name, q.Length.SI, q.Width.SI, false})
			}
		}
	}
}

func (p *plan) at(v geom.Vec2) Point {
	return Point{p.origin.X + (v.X-p.low.X)*p.scale, p.origin.Y - (v.Y-p.low.Y)*p.scale}
}

func (p *plan) chain(points []geom.Vec2) []Point {
	out := make([]Point, 0, len(points))
	for _, v := range points {
		out = append(out, p.at(v))
	}
	return out
}

// pond draws the outline, its shelves and its greatest sizes.
func (p *plan) pond() {
	edge := p.chain(p.edge)
	p.add(Polygon{Points: edge, Pen: thick, Fill: Wash})
	b := p.o.Bounds()
	corner := p.at(b.Max)
	p.field.area = rectangle(p.origin.X, corner.Y-1, corner.X+1, p.origin.Y+1)
	p.field.lines = append(p.field.lines, patchOf(append(edge, edge[0])...))
	var inner [][]Point
	var said []string
	for _, s := range p.in.Job.Pond.Section {
		if s.In.SI <= 0 {
			continue
		}
		ring, ok := p.inset(float64(s.In.SI))
		if !ok {
			p.unsaid = append(p.unsaid, p.show(float64(s.In.SI), unit.KindPlan))
			continue
		}
		flat := p.chain(ring)
		p.add(Polygon{Points: flat, Pen: Pen{Ink: Water, Wide: 0.3}})
		p.field.lines = append(p.field.lines, patchOf(append(flat, flat[0])...))
		inner, said = append(inner, flat), append(said, p.say("plan.deep", "depth", p.show(float64(s.Depth.SI), unit.KindDepth)))
	}
	p.depths(inner, said)
	p.size(Point{p.origin.X, p.origin.Y + 4}, Point{corner.X, p.origin.Y + 4}, p.show(b.Max.X-b.Min.X, unit.KindPlan))
	p.size(Point{p.origin.X - 4, p.origin.Y}, Point{p.origin.X - 4, corner.Y}, p.show(b.Max.Y-b.Min.Y, unit.KindPlan))
}

// size draws a dimension from a to b, level or upright.
func (p *plan) size(a, b Point, text string) {
	p.add(Line{a, b, fine})
	for _, q := range [...]Point{a, b} {
		p.add(Line{Point{q.X - 0.9, q.Y + 0.9}, Point{q.X + 0.9, q.Y - 0.9}, line})
	}
	t := Text{Size: small, Anchor: Middle, Text: text, At: Point{(a.X + b.X) / 2, a.Y + small + 0.6}}
	if a.X == b.X {
		t.At, t.Turn = Point{a.X - 1.2, (a.Y + b.Y) / 2}, -90
	}
	p.text(t)
}

// inset gives the line at a distance inside the outline: of the outline moved
// inward, the points that lie no nearer to any part of it. False where that is
// not one closed line, told by its area (see geom).
func (p *plan) inset(d float64) ([]geom.Vec2, bool) {
	want, err := p.o.InsetAt(unit.Length(d))
	if err != nil || want.Area <= 0 {
		return nil, false
	}
	dense := densified(p.edge, math.Min(d/4, math.Sqrt(float64(p.o.Area()))/60))
	var out []geom.Vec2
	for i, a := range dense {
		b := dense[(i+1)%len(dense)]
		l := math.Hypot(b.X-a.X, b.Y-a.Y)
		if l == 0 {
			continue
		}
		// The inside lies to the left of an outline that runs anticlockwise.
		q := geom.Vec2{X: (a.X+b.X)/2 - (b.Y-a.Y)/l*d, Y: (a.Y+b.Y)/2 + (b.X-a.X)/l*d}
		if nearest(dense, q) > d*(1-1e-3) {
			out = append(out, q)
		}
	}
	if len(out) < 3 {
		return nil, false
	}
	const off = 0.04 // of the area: corners are cut by what lies between two points
	return out, math.Abs(area(out)-float64(want.Area)) < off*float64(p.o.Area())
}

// densified adds points to a closed line until none is farther than step from
// the next.
func densified(points []geom.Vec2, step float64) []geom.Vec2 {
	var out []geom.Vec2
	for i, a := range points {
		b := points[(i+1)%len(points)]
		n := max(1, int(math.Ceil(math.Hypot(b.X-a.X, b.Y-a.Y)/step)))
		for k := range n {
			t := float64(k) / float64(n)
			out = append(out, geom.Vec2{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t})
		}
	}
	return out
}

// nearest gives the distance of a point from a closed line.
func nearest(closed []geom.Vec2, q geom.Vec2) float64 {
	least := math.Inf(1)
	for i, a := range closed {
		b := closed[(i+1)%len(closed)]
		dx, dy := b.X-a.X, b.Y-a.Y
		t := 0.0
		if l := dx*dx + dy*dy; l > 0 {
			t = math.Max(0, math.Min(1, ((q.X-a.X)*dx+(q.Y-a.Y)*dy)/l))
		}
		least = math.Min(least, math.Hypot(q.X-a.X-t*dx, q.Y-a.Y-t*dy))
	}
	return least
}

// area gives the area in a closed line (shoelace formula).
func area(closed []geom.Vec2) float64 {
	sum := 0.0
	for i, a := range closed {
		b := closed[(i+1)%len(closed)]
		sum += a.X*b.Y - b.X*a.Y
	}
	return math.Abs(sum) / 2
}

// drawBeside draws vault and pools to the pond's scale, under a line that says
// that their places are not known.
func (p *plan) drawBeside() {
	if len(p.beside) == 0 {
		return
	}
	left := wide - margin - sideWide
	y := p.y + 1
	for _, l := range wrap(p.say("plan.beside"), false, sideWide) {
		p.text(Text{At: Point{left, y + small}, Size: small, Text: l})
		y += small * 1.2
	}
	y += 3
	for _, f := range p.beside {
		l, w := float64(f.length)*p.scale, float64(f.width)*p.scale
		names := append(wrap(f.name, false, sideWide), wrap(p.tape(f.length)+" x "+p.tape(f.width), false, sideWide)...)
		if l > sideWide || y+w+float64(len(names))*small*1.2 > p.y+planTall+30 {
			continue // the list below has it
		}
		p.touch(Group{Name: f.name, Title: f.name}, func() {
			if f.round {
				p.add(Arc{Centre: Point{left + l/2, y + w/2}, RX: l / 2, RY: w / 2, Sweep: 360, Pen: line, Fill: Wash})
			} else {
				p.add(polygonOf(rectangle(left, y, left+l, y+w), line, Wash))
			}
		})
		y += w + 1
		for _, n := range names {
			p.text(Text{At: Point{left, y + small}, Size: small, Text: n})
			y += small * 1.2
		}
		y += 4
	}
	p.foot = max(p.foot, y)
}

// bar draws a bar of a round length to tell the scale.
func (p *plan) bar() {
	one, name := headUnit(p.in.Result.Units)
	n := round125(20 / p.scale / one)
	x1 := margin + n*one*p.scale
	p.add(polygonOf(rectangle(margin, p.y+1.2, x1, p.y+2.6), line, Black))
	p.text(Text{At: Point{x1 + 2.5, p.y + small*0.8}, Size: small, Text: p.say("plan.bar", "length", p.in.Result.Units.Marks().Write(trimmed(n)), "unit", name)})
	p.y += row + 2
}

func (p *plan) desc() []string {
	b := p.o.Bounds()
	return []string{
		p.say("plan.desc", "length", p.show(b.Max.X-b.Min.X, unit.KindPlan), "width", p.show(b.Max.Y-b.Min.Y, unit.KindPlan), "area", p.show(float64(p.o.Area()), unit.KindArea)),
		p.say("plan.unsurveyed"),
	}
}
