package table

import (
	"plashet/engine/design"
	"plashet/engine/unit"
)

// levels sets out where the water stands, course by course and moment by moment.
func (m *maker) levels() {
	m.head(
		column{word: "course"}, column{word: "moment"}, m.of("pond", unit.KindElevation), m.of("vault", unit.KindElevation), m.of("change", unit.KindDepth),
		m.of("freeboard", unit.KindDepth), m.of("oversill", unit.KindDepth), m.of("needsill", unit.KindDepth),
		m.of("overpump", unit.KindDepth), m.of("needpump", unit.KindDepth), column{word: "starved"},
	)
	if m.Result.Levels == nil {
		return
	}
	for _, s := range m.Result.Levels.States {
		m.row(
			m.word("level.course."+string(s.Course)), m.word("level.moment."+string(s.Moment)),
			of(m, s.Pond, unit.KindElevation), of(m, s.Vault, unit.KindElevation), of(m, s.Change, unit.KindDepth),
			when(m, s.Edge.Known, s.Edge.Freeboard, unit.KindDepth),
			when(m, s.Sill.Applies, s.Sill.Present, unit.KindDepth), when(m, s.Sill.Applies, s.Sill.Needed, unit.KindDepth),
			when(m, s.Pump.Applies, s.Pump.Present, unit.KindDepth), when(m, s.Pump.Applies, s.Pump.Needed, unit.KindDepth),
			m.yes(s.Starved),
		)
	}
}

// times sets out every case of start and stop through time: straight lines
// between the rows of a case tell it. Time is in seconds from its beginning.
func (m *maker) times() {
	m.head(
		column{word: "case"}, column{"time", "s"}, m.of("pond", unit.KindElevation), m.of("vault", unit.KindElevation),
		m.of("drawn", unit.KindFlow), m.of("back", unit.KindFlow), m.of("returns", unit.KindFlow), m.of("stored", unit.KindWater), m.of("over", unit.KindWater),
	)
	if m.Result.Motion == nil {
		return
	}
	for i := range m.Result.Motion.Cases {
		c := &m.Result.Motion.Cases[i]
		name := text(m.caseName(c))
		for _, s := range c.Series {
			m.row(
				name, number(float64(s.At)), of(m, s.Pond, unit.KindElevation), of(m, s.Vault, unit.KindElevation),
				of(m, s.Drawn, unit.KindFlow), of(m, s.Back, unit.KindFlow), of(m, s.Returns, unit.KindFlow), of(m, s.Stored, unit.KindWater), of(m, s.Over, unit.KindWater),
			)
		}
	}
}

func (m *maker) caseName(c *design.Moving) string {
	name := m.Say.Word("motion.case." + string(c.Case))
	if c.Astray != nil && c.Case != design.CaseShut {
		name += ": " + c.Astray.Pump
	}
	return name
}
