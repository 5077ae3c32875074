package answer

import (
	"slices"
	"strconv"
	"strings"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// sideBySide prints what each layout costs in every respect, and the claim.
func (p *arranging) sideBySide() {
	o := p.a.Outcome
	p.head("found.head.layouts")
	var head []string
	hoses := slices.ContainsFunc(o.Layouts[:p.shown()], func(l arrange.Layout) bool { return l.Worth.Hoses > 0 })
	for _, c := range []string{"layout", "head", "elbows", "hoses", "joints", "cost", "slide", "deep", "released", "stands"} {
		if c != "hoses" || hoses {
			head = append(head, p.say.Word("found.column."+c))
		}
	}
	rows := [][]string{head}
	for i := range o.Layouts[:p.shown()] {
		l := &o.Layouts[i]
		w := &l.Worth
		row := []string{
			strconv.Itoa(i + 1), show(&p.printer, w.Head, unit.KindHead), strconv.Itoa(w.Elbows), strconv.Itoa(w.Joints), p.cost(w),
			p.out(w), p.deep(l), p.down(l), p.a.Attitudes[l.Standing],
		}
		if hoses {
			row = slices.Insert(row, 3, strconv.Itoa(w.Hoses))
		}
		rows = append(rows, row)
	}
	p.table(strings.Repeat("r", len(head)-1)+"l", rows)
	p.tell("", "found.columns")
	if n := len(o.Layouts); n == 1 {
		p.tell("", "found.one")
	} else {
		p.tell("", "found.many", count("count", n))
	}
	if more := len(o.Layouts) - p.shown(); more > 0 {
		p.tell("", "found.more", count("count", more))
	}
	if o.Leaned {
		p.tell("", "found.leaned")
	}
	p.claim("found.claim.")
	p.tell("", "found.keep")
}

// out tells what the pump must be slid, and leaned over where it must.
func (p *arranging) out(w *arrange.Worth) string {
	slide := show(&p.printer, w.Slide, unit.KindTape)
	if w.Lean == 0 {
		return slide
	}
	return p.text("found.lean", str("slide", slide), num("lean", w.Lean, unit.KindAngle))
}

// shown tells how many of the layouts are printed.
func (p *arranging) shown() int { return min(p.a.Shown, len(p.a.Outcome.Layouts)) }

func (p *arranging) cost(w *arrange.Worth) string {
	if !w.Priced || p.a.Currency == "" {
		return p.say.Word("found.unpriced")
	}
	return p.a.Money(w.Cost).Format(p.a.Style)
}

// deep tells how far the union's nut lies under the rim.
func (p *arranging) deep(l *arrange.Layout) string {
	if !opens(l) {
		return p.say.Word("found.nounion")
	}
	return show(&p.printer, l.Worth.Deep, unit.KindTape)
}

// opens tells that a layout has a union.
func opens(l *arrange.Layout) bool {
	return slices.ContainsFunc(l.Chain.Parts, func(x layout.Laid) bool { return len(x.Splits) > 0 })
}

// down tells what comes down into the vault when the union is opened. Without a
// valve it comes down at every stop; where the runs are not known there is more.
func (p *arranging) down(l *arrange.Layout) string {
	w := &l.Laid.Water
	switch {
	case w.Order == layout.NoValve:
		return p.say.Word("found.down.stop")
	case !opens(l):
		return p.say.Word("found.nounion")
	case w.Order == layout.ValveFirst && !w.RunKnown:
		return p.say.Word("found.down.all")
	}
	return show(&p.printer, l.Worth.Released, unit.KindWater)
}
