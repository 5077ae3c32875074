package design

import (
	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// feedLip is a lip made ready.
type feedLip struct {
	index  int // among the watercourse's parts
	law    *hydro.Lip
	part   *job.Lip
	crest  unit.Length
	source trace.Source // of its weir coefficient
}

// lips makes the weirs of a watercourse, in order. Only the first sets how high
// the water must go, so only its fault makes ok false; another one is left out.
func (m *model) lips(i int) (out []feedLip, ok bool) {
	w := &m.job.Watercourses[i]
	first := true
	for k := range w.Parts {
		l := w.Parts[k].Lip
		if l == nil {
			continue
		}
		lip, sound := m.lip(at(at("/watercourses", i)+"/parts", k)+"/lip", l, first)
		lip.index = k
		if sound {
			out = append(out, lip)
		} else if first {
			return nil, false
		}
		first = false
	}
	if first {
		m.fault(at("/watercourses", i), CodeNoLip, trace.Str("name", w.Name))
	}
	return out, !first
}

// lip makes one weir. Its crest is needed only where it sets the height.
func (m *model) lip(path string, l *job.Lip, needed bool) (feedLip, bool) {
	crest, known := m.survey.Level(l.Crest)
	if needed && !known {
		m.fault(path+"/crest", CodeNoLevel, trace.Str("name", l.Name))
		return feedLip{}, false
	}
	if l.Width.IsZero() {
		return feedLip{}, false // the reading of the job tells it
	}
	kind := hydro.CrestKind(l.Kind)
	if l.Kind == "" {
		kind = hydro.CrestBroad
		m.assume(path+"/kind", AssumeCrest, unit.Value{}, practice, trace.Str("name", l.Name), trace.Str("kind", string(kind)))
	}
	c, err := kind.Coefficient()
	if err != nil {
		m.refuse(path, err)
		return feedLip{}, false
	}
	law, err := hydro.LipLaw{Width: l.Width.SI, C: float64(l.C.Or(unit.Ratio(c.C))), Tilt: l.Tilt.SI}.Prepare()
	if err != nil {
		m.refuse(path, err)
		return feedLip{}, false
	}
	source := c.Source
	if !l.C.IsZero() {
		source = typed(l.C.Source)
	}
	return feedLip{law: law, part: l, crest: crest, source: source}, true
}

// typed is the source of a value of the job, as far as the job tells it.
func typed(o job.Origin) trace.Source {
	s := trace.Source{Title: "typed in the job", Basis: trace.BasisJob}
	switch o {
	case job.OriginMeasured:
		s.Basis = trace.BasisMeasured
	case job.OriginSheet:
		s.Basis = trace.BasisSheet
	case job.OriginRule:
		s.Basis = trace.BasisPractice
	case job.OriginGuess:
		s.Basis = trace.BasisGuess
	}
	return s
}

// wanted gives the flow wanted in a feed: the most that one of its lips wants.
func (m *model) wanted(i int, lips []feedLip) unit.Flow {
	most := m.job.Watercourses[i].Wanted.SI
	for _, l := range lips {
		most = max(most, l.part.Wanted.SI)
		if l.part.Sheet.IsZero() {
			continue
		}
		where := hydro.SheetAt(l.part.SheetAt)
		if where == "" {
			where = hydro.AtUpstream
			m.assume(at(at("/watercourses", i)+"/parts", l.index)+"/lip/sheetAt", AssumeSheetAt, unit.Of(l.part.Sheet.SI, unit.KindDepth), practice, trace.Str("name", l.part.Name))
		}
		if q, err := l.law.FlowForSheet(l.part.Sheet.SI, where); err == nil {
			most = max(most, q)
		}
	}
	return most
}
