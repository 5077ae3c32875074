package drawing

import (
	"slices"
	"strings"

	"plashet/engine/unit"
)

// pieces writes the cut list.
func (a *iso) pieces() {
	if len(a.laid.Pieces) == 0 {
		return
	}
	t := table{
		columns: []column{{bold: true}, {flexible: true}, {anchor: End, bold: true}, {anchor: End}, {anchor: End}},
		head:    []string{a.say("piece"), a.say("piece.between"), a.say("piece.cut"), "", a.say("piece.marks")},
	}
	unsure, closing := false, ""
	for i := range a.laid.Pieces {
		c := &a.laid.Pieces[i]
		if c.Made {
			continue
		}
		mark := c.Mark
		if !c.Ends[0].Sure || !c.Ends[1].Sure {
			mark, unsure = mark+" *", true
		}
		if c.Closing && !c.InPlace {
			closing = c.Mark
		}
		t.add(mark, c.From+" – "+c.To, a.cut(c), a.tape(c.Ends[0].Mark), a.tape(c.Ends[1].Mark))
	}
	a.table(t)
	if off := a.laid.Closure.Off.Norm(); off > missed {
		a.paragraph(a.say("assembly.off", "off", a.tape(unit.Length(off))), true)
	}
	if closing != "" {
		a.paragraph(a.say("piece.closing", "mark", closing), false)
	}
	if unsure {
		a.paragraph(a.say("piece.unsure"), false)
	}
	a.y += 2
}

// parts writes what the marks stand for and how the sockets are known that the
// pieces were worked out by.
func (a *iso) parts() {
	t := table{columns: []column{{}, {flexible: true}, {anchor: End}}, head: []string{a.say("part"), "", a.say("part.socket")}}
	for i := range a.laid.Places {
		t.add(a.mark(i), a.partName(i), a.sockets(i))
	}
	a.table(t)
	a.y += 2
	a.rolls()
}

// partName says what a part is: fitting, size, and that its cover is on top.
func (a *iso) partName(i int) string {
	name := a.made[i].name
	if a.laid.Places[i].CoverUp {
		name += ", " + a.say("part.cover")
	}
	return name
}

// pumpTitle names the pump for who touches it.
func (a *iso) pumpTitle() string {
	if p, ok := usedPump(a.in.Job); ok {
		return a.say("curve.pump", "name", p.Name)
	}
	return ""
}

// sockets says how the sockets of a part are known, once where both are alike.
func (a *iso) sockets(part int) string {
	var known []string
	for i := range a.laid.Pieces {
		c := &a.laid.Pieces[i]
		for k, at := range [2]int{c.After, c.After + 1} {
			if word := a.say("known." + string(c.Ends[k].By)); at == part && !slices.Contains(known, word) {
				known = append(known, word)
			}
		}
	}
	return strings.Join(known, ", ")
}

// rolls writes how the elbows are turned, each with where its roll counts from.
func (a *iso) rolls() {
	if len(a.laid.Rolls) == 0 {
		return
	}
	t := table{
		columns: []column{{}, {flexible: true}, {anchor: End}, {anchor: End}, {anchor: End}},
		head:    []string{a.say("part.elbow"), a.say("part.zero"), a.say("part.roll"), a.say("part.arc"), a.say("part.other")},
	}
	for _, r := range a.laid.Rolls {
		zero := a.say("part.zero.top")
		if r.Upright {
			zero = a.say("part.zero.back")
		}
		arc, other := a.say("part.online"), ""
		if r.Arc > 0 {
			arc, other = a.tape(r.Arc), a.tape(r.Other)
		}
		t.add(r.Mark, zero, a.show(float64(r.Angle), unit.KindAngle), arc, other)
	}
	a.table(t)
	a.paragraph(a.say("part.clockwise"), false)
	a.y += 2
}
