package table

import (
	"strings"

	"plashet/engine/cut"
	"plashet/engine/design"
	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// cuts sets out each cut of the cutting plans with what is marked on the piece,
// then the pieces of the assembly that no plan has.
func (m *maker) cuts() {
	m.head(
		column{word: "piece"}, column{word: "pipe"}, m.of("length", unit.KindTape), column{word: "tape"}, column{word: "stick"}, column{word: "source"},
		column{word: "from"}, m.of("markfrom", unit.KindTape), column{word: "to"}, m.of("markto", unit.KindTape),
		column{word: "closing"}, column{word: "measure"}, m.of("stub", unit.KindTape), column{word: "caution"},
	)
	laid := map[string]*layout.Piece{}
	if a := m.Result.Assembly; a != nil && a.Laid {
		all := a.CutList()
		for i := range all {
			laid[all[i].Mark] = &all[i]
		}
	}
	planned := map[string]bool{}
	for i := range m.Result.Cutting {
		c := &m.Result.Cutting[i]
		for k := range c.Plan.Bars {
			b := &c.Plan.Bars[k]
			for _, x := range b.Cuts {
				mark := c.Pieces[x.Piece].Mark
				planned[mark] = true
				m.cut(mark, c.Pipe, x.Length, laid[mark], c.NotToCut, count(k+1), m.source(b.From))
			}
		}
	}
	if a := m.Result.Assembly; a != nil && a.Laid {
		all := a.CutList()
		for i := range all {
			if p := &all[i]; !planned[p.Mark] {
				m.cut(p.Mark, p.Pipe.Size, p.Cut, p, m.Result.NotToCut, Cell{}, Cell{})
			}
		}
	}
}

func (m *maker) source(s cut.Source) Cell {
	if s == cut.FromOffcut {
		return m.word("table.offcut")
	}
	return m.word("table.newstick")
}

// cut writes one cut; p is nil for a piece that is not of the assembly.
func (m *maker) cut(mark, pipe string, length unit.Length, p *layout.Piece, held bool, stick, source Cell) {
	var ends [4]Cell
	var closing, measure, stub Cell
	if p != nil {
		ends = [4]Cell{text(p.From), of(m, p.Ends[0].Mark, unit.KindTape), text(p.To), of(m, p.Ends[1].Mark, unit.KindTape)}
		closing, measure = m.yes(p.Closing), m.yes(!p.Ends[0].Sure || !p.Ends[1].Sure)
		for _, s := range m.Result.Assembly.Stubs {
			if s.Piece == mark {
				stub = of(m, s.Length, unit.KindTape)
			}
		}
	}
	m.row(
		text(mark), text(m.Say.Term(pipe)), of(m, length, unit.KindTape), text(unit.Of(length, unit.KindTape).Format(m.plain())), stick, source,
		ends[0], ends[1], ends[2], ends[3], closing, measure, stub, m.sawing(held),
	)
}

// sawing tells what can hurt at the saw, and where nothing is to be cut.
func (m *maker) sawing(held bool) Cell {
	said := m.Say.Word(glue.CautionSaw)
	if held {
		said = m.Say.Word("table.held") + " " + said
	}
	return text(said)
}

// sticks sets out what is cut up, with what is left.
func (m *maker) sticks() {
	m.head(
		column{word: "pipe"}, column{word: "stick"}, column{word: "source"}, m.of("length", unit.KindTape), column{word: "pieces"},
		m.of("left", unit.KindTape), column{word: "proven"}, column{word: "caution"},
	)
	for i := range m.Result.Cutting {
		c := &m.Result.Cutting[i]
		for k := range c.Plan.Bars {
			b := &c.Plan.Bars[k]
			m.row(
				text(m.Say.Term(c.Pipe)), count(k+1), m.source(b.From), of(m, b.Length, unit.KindTape), text(marks(c, b)),
				of(m, b.Remnant, unit.KindTape), m.yes(c.Plan.Proof.Proven()), m.sawing(c.NotToCut),
			)
		}
	}
}

func marks(c *design.Cutting, b *cut.Bar) string {
	out := make([]string, 0, len(b.Cuts))
	for _, x := range b.Cuts {
		out = append(out, c.Pieces[x.Piece].Mark)
	}
	return strings.Join(out, ", ")
}
