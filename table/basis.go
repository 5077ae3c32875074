package table

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// basis sets out what the figures rest on: whose job in which state, faults,
// findings, and what is assumed because the job does not say.
func (m *maker) basis() {
	m.head(column{word: "what"}, column{word: "text"}, column{word: "value"}, column{word: "wherefrom"}, column{word: "code"})
	line := func(word, said string) {
		if said != "" {
			m.row(m.word("table."+word), text(said), Cell{}, Cell{}, Cell{})
		}
	}
	line("job", m.Result.Name)
	line("note", m.Result.Note)
	line("place", m.Job.Place)
	line("date", m.Job.Date)
	line("digest", m.Digest)
	line("standing", m.Say.Word("table.notapproval"))
	if m.Result.NotToCut {
		line("caution", m.Say.Word("table.held"))
	}
	for _, list := range [][]trace.Fault{m.Faults, m.Result.Faults} {
		for _, f := range list {
			m.row(m.word("table.fault"), text(m.Say.Say(f.Message, m.units())), Cell{}, text(m.Say.Place(m.Job.PlaceOf(f.Path))), text(f.Code))
		}
	}
	for sev := trace.Danger; ; sev-- {
		for _, f := range m.Result.Findings {
			if f.Severity == sev {
				m.finding(f)
			}
		}
		if sev == trace.Info {
			break
		}
	}
	for _, a := range m.Result.Assumptions {
		m.row(m.word("table.assumed"), text(m.Say.Assumption(a, m.units())), text(m.shown(a.Value)), text(m.Say.Source(a.Source.Title)), text(a.Code))
	}
}

func (m *maker) finding(f trace.Finding) {
	said := m.Say.Finding(f, m.units())
	if f.Accepted != "" {
		said += " " + m.Say.Say(trace.Message{Code: "table.accepted", Args: []trace.Arg{trace.Str("why", f.Accepted)}}, m.units())
	}
	m.row(text(m.Say.Mark(f.Severity)), text(said), text(m.shown(f.Found)), text(m.Say.Place(m.Job.PlaceOf(f.Path))), text(f.Code))
}

// shown is a value as it is printed, bounds in words.
func (m *maker) shown(v unit.Value) string {
	if v.Kind == unit.KindNone {
		return ""
	}
	return m.Say.Value(v, m.units())
}
