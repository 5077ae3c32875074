package drawing

import (
	"strconv"

	"plashet/engine/arrange"
	"plashet/engine/design"
	"plashet/engine/layout"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/words"
)

// layoutTall is how tall a picture of a layout may be, mm.
const layoutTall = 80.0

// Layouts draws the layouts that a search found side by side, at one scale.
// Without any there is no sheet.
func Layouts(j *job.Job, a *design.Arranging, say *words.Language) (Sheet, bool) {
	if a == nil || a.Outcome == nil || len(a.Outcome.Layouts) == 0 {
		return Sheet{}, false
	}
	in := Input{Job: j, Result: &design.Result{Name: a.Name, Note: a.Note, Units: a.Units}, Say: say}
	p := newPage(in, "layouts", in.say("layouts.title"))
	var pictures []*picture
	for i := range a.Outcome.Layouts[:min(a.Shown, len(a.Outcome.Layouts))] {
		l := &a.Outcome.Layouts[i]
		c := newPicture(p, &l.Laid, madeFrom(in, a, i), seenFrom[layout.Wall(j.Vault.Outlet.Wall)])
		c.caption = p.worth(i, a, l)
		pictures = append(pictures, c)
	}
	p.row(pictures, layoutTall)
	var rows [][]string
	for i := range pictures {
		rows = append(rows, p.figures(i, a))
	}
	p.data("", []string{in.say("layouts.layout"), in.say("layouts.head"), in.say("layouts.joints"), in.say("layouts.elbows"), in.say("layouts.slide"), in.say("layouts.water"), in.say("layouts.cost")}, rows)
	if n := len(a.Outcome.Layouts) - len(pictures); n > 0 {
		p.paragraph(in.say("layouts.more", "count", strconv.Itoa(n)), false)
	}
	if c := a.Outcome.Proof.Claim; c == arrange.Capped || c == arrange.Stopped {
		p.paragraph(in.say("layouts.unproven"), true)
	}
	return p.done(append([]string{in.say("layouts.desc")}, told(pictures)...)), true
}

// madeFrom tells what the parts of a layout are, counted from 0.
func madeFrom(in Input, a *design.Arranging, n int) (parts []made) {
	for i := range a.Outcome.Layouts[n].Chain.Parts {
		x := &a.Outcome.Layouts[n].Chain.Parts[i]
		parts = append(parts, made{in.language().Item(a.PartName(&x.Part)) + " " + x.Size, x.Kind.IsCheck(), x.Reverse})
	}
	return parts
}

// released says what comes down when the union is opened: what is known of it only
// where it is all.
func (p *page) released(l *arrange.Layout) string {
	switch w := &l.Laid.Water; {
	case w.Order == layout.NoValve:
		return p.say("layouts.drains")
	case w.Order == layout.ValveFirst && !w.RunKnown:
		return p.say("layouts.released.all")
	}
	return p.say("layouts.released", "volume", p.show(float64(l.Worth.Released), unit.KindWater))
}

// worth says what a layout costs in every respect.
func (p *page) worth(i int, a *design.Arranging, l *arrange.Layout) []string {
	w := &l.Worth
	slide := p.say("layouts.lifts")
	switch {
	case w.Lean > 0:
		slide = p.say("layouts.leans", "by", p.show(float64(w.Lean), unit.KindAngle))
	case w.Slide > 0:
		slide = p.say("layouts.slides", "by", p.tape(w.Slide))
	}
	counts := []string{"joints", strconv.Itoa(w.Joints), "elbows", strconv.Itoa(w.Elbows)}
	if w.Hoses > 0 {
		counts = append(counts, "hoses", strconv.Itoa(w.Hoses))
	}
	out := []string{
		p.say("layouts.one", "number", strconv.Itoa(i+1), "head", p.show(float64(w.Head), unit.KindHead)),
		p.say("layouts.counts", counts...),
		slide,
		p.released(l),
	}
	if w.Priced && a.Currency != "" {
		out = append(out, a.Money(w.Cost).Format(a.Style))
	}
	return out
}

// turns counts the elbows, and a hose beside them.
func (p *page) turns(w *arrange.Worth) string {
	if w.Hoses == 0 {
		return strconv.Itoa(w.Elbows)
	}
	return p.say("layouts.turns", "elbows", strconv.Itoa(w.Elbows), "hoses", strconv.Itoa(w.Hoses))
}

// figures gives the same for the table: one cell each.
func (p *page) figures(i int, a *design.Arranging) []string {
	w := &a.Outcome.Layouts[i].Worth
	cost := ""
	if w.Priced && a.Currency != "" {
		cost = a.Money(w.Cost).Format(a.Style)
	}
	return []string{
		strconv.Itoa(i + 1), p.show(float64(w.Head), unit.KindHead), strconv.Itoa(w.Joints), p.turns(w),
		p.tape(w.Slide), p.show(float64(w.Released), unit.KindWater), cost,
	}
}

// madeOf tells it of the job's own assembly.
func madeOf(in Input) []made {
	var out []made
	for _, l := range in.Job.Assembly.Parts {
		size := l.Size
		if size == "" {
			size = in.Job.Assembly.Pipe.Size
		}
		out = append(out, made{in.language().Item(l.Fitting) + " " + size, isCheck(l.Fitting), l.Reverse})
	}
	return out
}
