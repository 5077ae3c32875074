package design

import (
	"strings"

	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/network"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Codes of pumps outside the water.
const (
	// FindNPSH: too little suction head. Args: name, found (available), limit (required and the reserve), required.
	FindNPSH = "design.suction.npsh"
	// FindBoils: no suction head is left: no pump can run so. Args: name, found (available).
	FindBoils = "design.suction.boils"
	// FindNPSHEnd: the flow lies beyond the points of the suction head required. Args: name, found (flow), limit (the last of them).
	FindNPSHEnd = "design.suction.beyond"
	// FindNoNPSH: the suction head required is not given. Args: name, found (available).
	FindNoNPSH = "design.suction.unknown"
	// FindLift: the pump stands over the water and must prime itself. Args: name, found (height).
	FindLift = "design.suction.lift"
	// FindWhirl: too little water over the open end of the suction pipe. Args: name, found, limit.
	FindWhirl = "design.suction.whirl"
	// FindEntrap: an open suction pipe can hold hair and limbs. Args: name.
	FindEntrap = "design.suction.entrap"

	AssumeEntrance = "assume.suction.entrance" // the loss where water enters the suction pipe. Args: name, value
	AssumeAltitude = "assume.site.altitude"    // height above the sea. Args: value
)

var whirlSource = trace.Source{Title: "ANSI/HI 9.8: S = D + 0.574 Q/D^1.5 (in, gpm)", Basis: trace.BasisPublished, Note: "as secondary pages give it, not read in the standard"}

// suction is the suction pipe of a pump outside the water.
type suction struct {
	law   inLine // empty for a pump in the water
	parts pipeParts
	bad   bool // it cannot be worked out
}

// inLine adds up the losses of elements that one flow passes.
type inLine []network.Law

func (l inLine) Loss(q unit.Flow) (h unit.Head, dhdq float64) {
	for _, law := range l {
		a, b := law.Loss(q)
		h, dhdq = h+a, dhdq+b
	}
	return h, dhdq
}

func (l inLine) head(q unit.Flow) unit.Head {
	h, _ := l.Loss(q)
	return h
}

func outside(p *job.Pump) bool { return p.Outside.Pipe.Kind != "" || !p.Outside.Length.IsZero() }

// suctions makes the suction pipes of all pumps; only the faults of those in
// use are told.
func (m *model) suctions(inUse int) []suction {
	out := make([]suction, len(m.job.Pumps))
	for i := range m.job.Pumps {
		t := m.trial()
		used := i == inUse
		for _, f := range m.job.FurtherPumps {
			used = used || f.Pump == m.job.Pumps[i].Name
		}
		if used {
			t = m
		}
		if outside(&m.job.Pumps[i]) {
			out[i] = t.suction(i)
		}
	}
	return out
}

// suction makes the suction pipe of one pump: pipe, fittings, entrance.
func (m *model) suction(i int) suction {
	p, path := &m.job.Pumps[i], at("/pumps", i)+"/outside"
	r := &job.Run{Name: p.Name, Pipe: p.Outside.Pipe, Length: p.Outside.Length, Fittings: p.Outside.Fittings}
	pipe, err := m.pipe(r.Pipe)
	if err != nil {
		m.refuse(path+"/pipe", err)
		return suction{bad: true}
	}
	s := suction{parts: pipeParts{bore: pipe.Bore, length: r.Length.SI}}
	parts, ok := m.barrel(path, r, pipe, &s.parts)
	entrance := false
	for n, f := range r.Fittings {
		l, sound := m.fitting(at(path+"/fittings", n), r, f, &s.parts)
		ok = ok && sound
		entrance = entrance || strings.HasPrefix(f.Fitting, "entrance") || strings.HasPrefix(f.Fitting, "foot valve")
		s.parts.losses = append(s.parts.losses, l)
	}
	if !ok {
		return suction{bad: true}
	}
	if !entrance {
		l, sound := m.entrance(path, p)
		if !sound {
			return suction{bad: true}
		}
		s.parts.losses = append(s.parts.losses, l)
	}
	for _, p := range parts {
		s.law = append(s.law, p.Law)
	}
	if k, k1 := s.parts.k(); k > 0 || k1 > 0 {
		law, err := hydro.MinorLaw{Bore: s.parts.bore, K: k, K1: k1}.Prepare(m.water)
		if err != nil {
			m.refuse(path, err)
			return suction{bad: true}
		}
		s.law = append(s.law, law)
	}
	return s
}

// entrance is the loss at the open end where the job names none.
func (m *model) entrance(path string, p *job.Pump) (Loss, bool) {
	l, err := m.loss("entrance", p.Outside.Pipe.Size)
	if err != nil {
		m.refuse(path+"/fittings", err)
		return Loss{}, false
	}
	m.assume(path+"/fittings", AssumeEntrance, unit.Of(unit.Ratio(l.K), unit.KindRatio), l.Source, trace.Str("name", p.Name))
	return Loss{Name: "entrance", Size: p.Outside.Pipe.Size, Path: path, Count: 1, Rest: unit.Ratio(l.K), Method: l.Method, Source: l.Source}, true
}

// judgeSuction holds what a pump outside the water sees at its inlet against
// what it requires.
func (m *model) judgeSuction(id string, i int, q unit.Flow, vault unit.Length) {
	p, path := &m.job.Pumps[i], at("/pumps", i)+"/outside"
	if !outside(p) {
		return
	}
	name := trace.Str("name", p.Name)
	s := m.trial().suction(i)
	centre, known := m.survey.Level(p.Outside.Centre)
	if s.bad || !known {
		if !known {
			m.fault(path+"/centre", CodeNoLevel, trace.Str("name", p.Name))
		}
		return
	}
	if intake, known := m.survey.Level(p.Outside.Intake); known {
		m.find(trace.Finding{Message: trace.Message{Code: FindEntrap, Args: []trace.Arg{name}}, Path: path, Severity: trace.Danger})
		if least, err := level.MinSubmergence(s.parts.bore, q); err == nil && vault-intake < least {
			m.found(FindWhirl, path+"/intake", trace.Caution, unit.Of(vault-intake, unit.KindDepth), unit.Of(least, unit.KindDepth), whirlSource, name)
		}
	}
	if centre > vault {
		m.found(FindLift, path+"/centre", trace.Info, unit.Of(centre-vault, unit.KindHead), unit.Value{}, trace.Source{}, name)
	}
	m.judgeNPSH(id, i, q, vault-centre, s.law.head(q))
}

func (m *model) judgeNPSH(id string, i int, q unit.Flow, static unit.Length, friction unit.Head) {
	p, path := &m.job.Pumps[i], at("/pumps", i)
	name := trace.Str("name", p.Name)
	if m.job.Site.Altitude.IsZero() {
		m.assumeOnce("/site/altitude", AssumeAltitude, unit.Of(unit.Length(0), unit.KindElevation))
	}
	air, err := hydro.AtmosphereAt(m.job.Site.Altitude.SI)
	if err != nil {
		m.refuse("/site/altitude", err)
		return
	}
	has, err := hydro.NPSHAvailable(hydro.Suction{Atmosphere: air, Static: static, Friction: friction}, m.water)
	if err != nil {
		m.refuse(path+"/outside", err)
		return
	}
	m.figure(id+".npsh.available", unit.Of(has, unit.KindHead), "(pa - pv)/(density g) + hs - hf", hydro.SourceNPSH,
		trace.Term{Symbol: "pa", Value: unit.Of(air, unit.KindPressure), Source: hydro.SourceAtmosphere},
		trace.Term{Symbol: "pv", Value: unit.Of(m.water.VapourPressure, unit.KindPressure), Source: hydro.SourceVapourPressure},
		trace.Term{Symbol: "hs", Value: unit.Of(static, unit.KindHead), From: path + "/outside/centre"},
		trace.Term{Symbol: "hf", Value: unit.Of(friction, unit.KindHead), From: path + "/outside/pipe"})
	if has <= 0 {
		m.found(FindBoils, path+"/outside", trace.Danger, unit.Of(has, unit.KindHead), unit.Value{}, trace.Source{}, name)
		return
	}
	if len(p.NPSH) == 0 {
		m.found(FindNoNPSH, path+"/npsh", trace.Caution, unit.Of(has, unit.KindHead), unit.Value{}, trace.Source{}, name)
		return
	}
	points := make([]hydro.NPSHPoint, 0, len(p.NPSH))
	for _, x := range p.NPSH {
		points = append(points, hydro.NPSHPoint{Flow: x.Flow.SI, Head: x.Head.SI})
	}
	curve, err := hydro.NewNPSH(points)
	if err != nil {
		m.refuse(path+"/npsh", err)
		return
	}
	wants, inside := curve.Required(q, m.ratio(i))
	if !inside {
		m.found(FindNPSHEnd, path+"/npsh", trace.Caution, unit.Of(q, unit.KindFlow), unit.Of(wants, unit.KindHead), sheetSource, name)
	} else {
		m.figure(id+".npsh.required", unit.Of(wants, unit.KindHead), "NPSHr(Q) on the sheet, PCHIP through its points; with the square of the speed", sheetSource,
			term("Q", q, unit.KindFlow, id+".flow"))
	}
	if least := wants + hydro.SuctionReserve; has < least {
		sev := trace.Caution
		if has < wants {
			sev = trace.Danger
		}
		m.found(FindNPSH, path+"/npsh", sev, unit.Of(has, unit.KindHead), unit.Of(least, unit.KindHead), hydro.SourceNPSH, name, trace.Num("required", wants, unit.KindHead))
	}
}
