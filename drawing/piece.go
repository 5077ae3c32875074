package drawing

import (
	"slices"
	"strconv"

	"plashet/engine/design"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/job"
	"plashet/words"
)

// Marked draws the assembly with the part or piece of one mark drawn strongly,
// seen over the corner that hides it least. Without such a mark there is no
// sheet.
func Marked(in Input, mark string) (Sheet, bool) {
	if in.Result == nil || in.Result.Assembly == nil || !in.Result.Assembly.Laid {
		return Sheet{}, false
	}
	a := &iso{
		page: &page{in: in, sheet: Sheet{Name: "piece-" + mark, Title: in.say("piece.title", "mark", mark) + ": " + in.Result.Name, Width: narrow}, y: 2},
		laid: in.Result.Assembly, made: madeOf(in), hand: []string{mark}, quiet: true,
	}
	at, ok := a.whereIs(mark)
	if !ok {
		return Sheet{}, false
	}
	a.only = a.stretchOf(a.hand)
	a.view = newView(a.cornerFor([]lit{{at: at}}))
	a.gather()
	a.fit()
	for _, t := range painted(a.things, a.view.toward) {
		a.touch(Group{Name: t.name, Mark: t.mark, Title: t.title}, t.draw)
	}
	a.stands()
	a.group("marks", func() { a.call(at, Text{Bold: true, Text: mark}) })
	return a.done([]string{in.say("piece.desc", "mark", mark)}), true
}

// whereIs finds the middle of the part or piece of a mark.
func (a *iso) whereIs(mark string) (geom.Vec3, bool) {
	if i := slices.IndexFunc(a.laid.Pieces, func(c layout.Piece) bool { return c.Mark == mark }); i >= 0 {
		return a.laid.Pieces[i].Start.Add(a.laid.Pieces[i].End).Scale(0.5), true
	}
	if i := slices.IndexFunc(a.laid.Places, func(p layout.Place) bool { return p.Mark == mark }); i >= 0 {
		return a.laid.Places[i].Centre, true
	}
	if t := a.laid.Tail; t != nil && t.Mark == mark {
		return t.Start.Add(t.End).Scale(0.5), true
	}
	return geom.Vec3{}, false
}

// LayoutAlone draws one of the layouts that a search found, counted from 0, with
// marks and cut lengths, seen over a corner.
func LayoutAlone(j *job.Job, a *design.Arranging, n int, c Corner, say *words.Language) (Sheet, bool) {
	if a == nil || a.Outcome == nil || n < 0 || n >= len(a.Outcome.Layouts) {
		return Sheet{}, false
	}
	in := Input{Job: j, Result: &design.Result{Name: a.Name, Units: a.Units}, Say: say}
	l := &a.Outcome.Layouts[n]
	d := &iso{page: &page{in: in, sheet: Sheet{Name: "layout-" + strconv.Itoa(n+1), Title: in.say("layouts.alone", "number", strconv.Itoa(n+1)) + ": " + a.Name, Width: layoutWide}, y: 2}, laid: &l.Laid, made: madeFrom(in, a, n), view: newView(c)}
	d.gather()
	d.fit()
	d.group("vault", d.vault)
	for _, t := range painted(d.things, d.view.toward) {
		d.touch(Group{Name: t.name, Mark: t.mark, Title: t.title}, t.draw)
	}
	d.stands()
	d.group("marks", d.marks)
	return d.done(d.desc()), true
}

// CornerFor gives the corner over which the hole in a wall is seen.
func CornerFor(wall string) Corner { return seenFrom[layout.Wall(wall)] }

// layoutWide is the width of a layout's picture by itself, mm: its letters are
// large on a telephone.
const layoutWide = 110.0
