package drawing

import (
	"slices"
	"strings"

	"plashet/engine/layout"
	"plashet/engine/unit"
)

// note is what is said below a list.
type note struct {
	text string
	bold bool
}

// List is a list that stands beside a drawing, with what is said below it.
type List struct {
	Columns []ListColumn
	Rows    [][]string
	Notes   []string
	Bold    []string // notes that must not be missed
}

// ListColumn says how a column of a list stands.
type ListColumn struct {
	Head    string
	Bold    bool
	Figures bool // they stand to the right
	Rest    bool // it takes what the others leave
}

// list gives a table as a list.
func (t *table) list() List {
	l := List{Rows: t.rows}
	for i, c := range t.columns {
		col := ListColumn{Bold: c.bold, Figures: c.anchor == End, Rest: c.flexible && i == 0}
		if i < len(t.head) {
			col.Head = t.head[i]
		}
		if i < len(t.heads) {
			col.Head = t.heads[i]
		}
		l.Columns = append(l.Columns, col)
	}
	return l
}

// AssemblyLists gives the lists of an assembly: the pieces with their cuts, the
// parts, the rolls. Without a laid assembly there are none.
func AssemblyLists(in Input) []List {
	if in.Result == nil || in.Result.Assembly == nil || !in.Result.Assembly.Laid {
		return nil
	}
	a := &iso{page: &page{in: in}, laid: in.Result.Assembly, made: madeOf(in)}
	var out []List
	for _, of := range []func() (table, []note){a.pieces, a.parts, a.rolls} {
		t, notes := of()
		if len(t.rows) == 0 && len(notes) == 0 {
			continue
		}
		l := t.list()
		for _, n := range notes {
			if n.bold {
				l.Bold = append(l.Bold, n.text)
			} else {
				l.Notes = append(l.Notes, n.text)
			}
		}
		out = append(out, l)
	}
	return out
}

// lists writes them below the picture.
func (a *iso) lists() {
	for _, of := range []func() (table, []note){a.pieces, a.parts, a.rolls} {
		t, notes := of()
		if len(t.rows) == 0 {
			continue
		}
		a.table(t)
		for _, n := range notes {
			a.paragraph(n.text, n.bold)
		}
		a.y += 2
	}
}

// pieces is the cut list.
func (a *iso) pieces() (t table, notes []note) {
	t = table{
		columns: []column{{bold: true}, {flexible: true}, {anchor: End, bold: true}, {anchor: End}, {anchor: End}},
		head:    []string{a.say("piece"), a.say("piece.between"), a.say("piece.cut"), "", a.say("piece.marks")},
		heads:   []string{a.say("piece"), a.say("piece.between"), a.say("piece.cut"), a.say("piece.mark.pump"), a.say("piece.mark.wall")},
	}
	unsure, closing := false, ""
	all := a.laid.CutList()
	for i := range all {
		c := &all[i]
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
		between := c.From + " – " + c.To
		if a.laid.TwoPipes() {
			between += ", " + a.say("piece.pipe", "size", c.Pipe.Size)
		}
		if c.After == layout.NoPart {
			notes = append(notes, note{a.say("piece.hose", "mark", c.Mark), true})
		}
		t.add(mark, between, a.cut(c), a.tape(c.Ends[0].Mark), a.tape(c.Ends[1].Mark))
	}
	if off := a.laid.Closure.Off.Norm(); off > missed {
		notes = append(notes, note{a.say("assembly.off", "off", a.tape(unit.Length(off))), true})
	}
	if closing != "" {
		notes = append(notes, note{a.say("piece.closing", "mark", closing), false})
	}
	if unsure {
		notes = append(notes, note{a.say("piece.unsure"), false})
	}
	return t, notes
}

// parts is what the marks stand for and how the sockets are known that the pieces
// were worked out by.
func (a *iso) parts() (t table, notes []note) {
	t = table{columns: []column{{bold: true}, {flexible: true}, {anchor: End}}, head: []string{a.say("part"), "", a.say("part.socket")}}
	for i := range a.laid.Places {
		t.add(a.mark(i), a.partName(i), a.sockets(i))
	}
	return t, nil
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

// rolls tells how the elbows and hoses are turned, each with where its roll counts from.
func (a *iso) rolls() (t table, notes []note) {
	t = table{
		columns: []column{{bold: true}, {flexible: true}, {anchor: End}, {anchor: End}, {anchor: End}},
		head:    []string{a.say("part.elbow"), a.say("part.zero"), a.say("part.roll"), a.say("part.arc"), a.say("part.other")},
	}
	for _, r := range a.laid.Rolls {
		if r.Hose {
			t.head[0] = a.say("part.turning")
		}
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
	if len(t.rows) > 0 {
		notes = append(notes, note{a.say("part.clockwise"), false})
	}
	return t, notes
}
