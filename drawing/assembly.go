package drawing

import (
	"strings"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// Assembly draws the plumbing in the vault as it is seen over a corner, with
// marks and cut lengths. Without a laid assembly there is no sheet.
func Assembly(in Input, c Corner) (Sheet, bool) {
	a := assemblyOf(in, c)
	if a == nil {
		return Sheet{}, false
	}
	a.lists()
	a.paragraph(a.say("assembly.unplug"), true)
	return a.done(a.desc()), true
}

// AssemblyPicture is Assembly without its lists, for where they stand beside it.
func AssemblyPicture(in Input, c Corner) (Sheet, bool) {
	a := assemblyOf(in, c)
	if a == nil {
		return Sheet{}, false
	}
	return a.done(a.desc()), true
}

// assemblyOf draws the picture; nil without a laid assembly.
func assemblyOf(in Input, c Corner) *iso {
	if in.Result == nil || in.Result.Assembly == nil || !in.Result.Assembly.Laid {
		return nil
	}
	a := &iso{page: newPage(in, "assembly-"+c.String(), in.say("assembly.title", "corner", in.say("corner."+c.String()))), laid: in.Result.Assembly, view: newView(c), made: madeOf(in)}
	if in.Result.NotToCut {
		a.paragraph(in.say("assembly.held"), true)
		a.y += 3
	}
	a.gather()
	a.fit()
	a.group("vault", a.vault)
	for _, t := range painted(a.things, a.view.toward) {
		a.touch(Group{Name: t.name, Mark: t.mark, Title: t.title}, t.draw)
	}
	a.stands()
	a.group("sizes", a.sizes)
	a.group("marks", a.marks)
	if len(a.unsized) > 0 {
		a.paragraph(in.say("assembly.vault", "sizes", strings.Join(a.unsized, ", ")), false)
	}
	return a
}

// iso is the sheet of an assembly while it is drawn.
type iso struct {
	*page
	laid   *layout.Assembly
	made   []made // by part
	view   view
	things []*thing
	field  field
	foot   float64 // of the picture, mm

	hand  []string // marks of what is in hand; with quiet all else is drawn faintly
	quiet bool
	only  *stretch // of a long chain, with quiet, what is drawn; nil: all

	unsized []string // sizes of the vault that found no room in the picture
}

// Room for the picture, mm.
const (
	isoTall  = 128.0
	isoSpare = 12.0 // round it, for the vault's sizes
)

// gather collects what stands in the vault.
func (a *iso) gather() {
	a.standing()
	for i := range a.laid.Places {
		if a.only.has(i) {
			a.things = append(a.things, a.part(i))
		}
	}
	for i := range a.laid.Pieces {
		c := &a.laid.Pieces[i]
		if !a.only.has(c.After) && !a.only.has(c.After+1) {
			continue
		}
		if t, ok := a.seen(c); ok {
			a.things = append(a.things, t)
		}
	}
	if t := a.laid.Tail; t != nil && a.only.has(len(a.laid.Places)-1) {
		p := tube{t.Start, t.End, float64(t.Pipe.OD) / 2}
		a.things = append(a.things, &thing{kind: KindPipe, name: "piece " + t.Mark, mark: t.Mark, title: a.say("piece.tail", "mark", t.Mark), shapes: []shape{p}, draw: func() { a.drawTube(p, line, Wash) }})
	}
}

// standing collects pump and obstacles: where only a stretch is drawn, the pump
// where it begins there.
func (a *iso) standing() {
	if a.only != nil && !a.only.has(0) {
		return
	}
	for i := range a.laid.Body {
		b := block(a.laid.Body[i])
		a.things = append(a.things, &thing{kind: KindPump, name: "pump", title: a.pumpTitle(), shapes: []shape{b}, draw: func() { a.drawBlock(b, a.pumpPen()) }})
	}
	for i := range a.laid.Rounds {
		t := tubeOf(a.laid.Rounds[i])
		a.things = append(a.things, &thing{kind: KindPump, name: "pump", title: a.pumpTitle(), shapes: []shape{t}, draw: func() { a.drawTube(t, a.pumpPen(), Paper) }})
	}
	if a.only != nil {
		return
	}
	for i := range a.in.Job.Vault.Obstacles {
		o := &a.in.Job.Vault.Obstacles[i]
		b := blockOf(geom.BoxOf(vecOf(o.From), vecOf(o.To)))
		a.things = append(a.things, &thing{kind: KindObstacle, name: o.Name, title: o.Name, shapes: []shape{b}, draw: func() { a.drawBlock(b, help) }})
	}
}

// fit sets the view so that vault and plumbing fill the room for the picture.
func (a *iso) fit() {
	var all []geom.Vec3
	if !a.quiet {
		for _, ring := range a.box().rings() {
			all = append(all, ring...)
		}
	}
	for _, t := range a.things {
		for _, s := range t.shapes {
			all = append(all, s.corners()...)
		}
	}
	if from, to, ok := a.wayOut(); ok && a.only == nil {
		all = append(all, from, to)
	}
	y := a.y + 1
	side, spare, tall := margin, isoSpare, isoTall
	if a.quiet { // a small picture without sizes
		side, spare, tall = 2, 7, stepTall
	}
	across := a.sheet.Width
	a.foot = a.view.fitTo(all, side+spare, y, across-side-spare, y+tall) + spare
	a.sheet.Scale = a.view.measure()
	a.y = a.foot + 3
	a.field.area = rectangle(side, max(0.8, y-2), across-side, a.foot)
}

// wayOut gives the arrow along which the water leaves the vault.
func (a *iso) wayOut() (from, to geom.Vec3, ok bool) {
	h := a.laid.Hole
	if h.Axis.Norm() == 0 {
		return from, to, false
	}
	od := a.outside()
	return h.At.Add(h.Axis.Scale(0.6 * od)), h.At.Add(h.Axis.Scale(2.4 * od)), true
}

// outside is the outside diameter of the pipe at the hole, m.
func (a *iso) outside() float64 {
	if a.laid.Tail != nil {
		return float64(a.laid.Tail.Pipe.OD)
	}
	if n := len(a.laid.Pieces); n > 0 {
		return float64(a.laid.Pieces[n-1].Pipe.OD)
	}
	return float64(50 * unit.Millimetre)
}

func (a *iso) mark(part int) string { return a.laid.Places[part].Mark }
