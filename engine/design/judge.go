package design

import (
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Limits of the checks. Common practice unless a source stands beside them.
const (
	shortBy  unit.Ratio = 0.05
	shortBad unit.Ratio = 0.15
	overBy   unit.Ratio = 0.25
	fastNote            = 5 * unit.FootPerSecond
	fastBad             = 8 * unit.FootPerSecond
	// boxMisses is the part of the box's flow below which it is told that the box misleads.
	boxMisses unit.Flow = 0.9
	// dutyLong is how long a day a pump may run that is not said to run continuously.
	dutyLong = 8 * unit.Hour
)

var (
	speedSource = trace.Source{Title: "USDA NRCS conservation practice standard 430: 5 ft/s in plastic pressure pipe", Basis: trace.BasisPublished}
	fastSource  = trace.Source{Title: "common practice, no source", Basis: trace.BasisPractice, Note: "pump trade pages give 5 to 10 ft/s for discharge lines"}
	boxSource   = trace.Source{Title: "the box's flow is read at no head", Basis: trace.BasisPractice}
	jobSource   = trace.Source{Title: "wanted on this job", Basis: trace.BasisJob}
	sheetSource = trace.Source{Title: "the maker's sheet, as typed in the job", Basis: trace.BasisSheet}
)

// judge holds the delivery against what is wanted and what is wise.
func (m *model) judge(pump int, vault unit.Length) {
	d := m.out.Delivery
	m.out.Vault = vault
	m.out.Options = m.options(pump, vault)
	for i := range d.Feeds {
		m.judgeFeed(i)
	}
	m.judgeRuns()
	m.judgeTees(pump, vault)
	m.judgePump(pump)
	m.judgeFurther(pump, vault)
	m.judgeRises(vault)
	if rated := m.job.Vault.Rated.SI; rated > 0 && d.Drawn > rated && d.Bound() != unit.LessThan {
		m.found(FindSkimmer, "/vault/rated", trace.Caution, unit.Bounded(d.Drawn, unit.KindFlow, d.Bound()), unit.Of(rated, unit.KindFlow), sheetSource)
	}
}

func (m *model) judgeRuns() {
	d := m.out.Delivery
	if d.Bound() != unit.Exact {
		return // how fast it runs is not known
	}
	for _, r := range d.Runs {
		speed := max(r.Speed, -r.Speed)
		name := trace.Str("name", r.Name)
		switch {
		case speed > fastBad:
			m.found(FindFast, r.Path, trace.Caution, unit.Of(speed, unit.KindSpeed), unit.Of(fastBad, unit.KindSpeed), fastSource, name)
		case speed > fastNote:
			m.found(FindFast, r.Path, trace.Info, unit.Of(speed, unit.KindSpeed), unit.Of(fastNote, unit.KindSpeed), speedSource, name)
		}
		for _, l := range r.Losses {
			if l.Opens > 0 && speed > 0 && speed < l.Opens {
				m.found(FindNotOpen, l.Path, trace.Info, unit.Of(speed, unit.KindSpeed), unit.Of(l.Opens, unit.KindSpeed), l.Source, trace.Str("name", l.Name),
					trace.Num("counted", l.at(speed, &r), unit.KindHead), trace.Num("most", l.at(l.Opens, &r), unit.KindHead))
			}
		}
	}
	// Along every way that runs, the pump's head is height and losses.
	series := slices.ContainsFunc(m.job.FurtherPumps, func(f job.FurtherPump) bool { return f.From != "" })
	if lost := d.Head - d.Static; !series && d.Rises && lost > d.Static && d.Static > 0 {
		m.found(FindFriction, "/runs", trace.Caution, unit.Of(lost, unit.KindHead), unit.Of(d.Static, unit.KindHead), practice)
	}
}

func (m *model) judgePump(pump int) {
	d, p, path := m.out.Delivery, &m.job.Pumps[pump], at("/pumps", pump)
	if box := p.BoxFlow.SI; box > 0 && d.Flow < box*boxMisses && d.Beyond == unit.Exact {
		m.found(FindBox, path+"/boxFlow", trace.Info, unit.Of(d.Flow, unit.KindFlow), unit.Of(box, unit.KindFlow), boxSource,
			trace.Num("box", box, unit.KindFlow), trace.Num("percent", unit.Ratio(1-d.Flow/box), unit.KindPercent))
	}
	for _, o := range m.out.Options {
		other, ok := m.byName(o.Pump)
		if !ok || !o.Drawn || o.AsIs || other.BoxFlow.SI <= 0 || other.BoxFlow.SI >= p.BoxFlow.SI || o.Flow <= d.Flow || o.Beyond != unit.Exact || d.Beyond != unit.Exact {
			continue
		}
		m.find(trace.Finding{
			Path: path + "/boxFlow", Severity: trace.Caution, Found: unit.Of(d.Flow, unit.KindFlow), Limit: unit.Of(o.Flow, unit.KindFlow), LimitSource: boxSource,
			Message: trace.Message{Code: FindSmallerBox, Args: []trace.Arg{
				trace.Str("name", p.Name), trace.Num("box", p.BoxFlow.SI, unit.KindFlow), trace.Num("flow", d.Flow, unit.KindFlow),
				trace.Str("other", o.Pump), trace.Num("otherBox", other.BoxFlow.SI, unit.KindFlow), trace.Num("otherFlow", o.Flow, unit.KindFlow),
			}},
		})
	}
	m.judgeSheet(pump, d.Power)
	if curve, ok := m.trial().ownCurve(pump); ok {
		m.judgeDuty("pump", pump, curve, d.Flow, d.Power, &m.out.Vault)
	}
	m.judgeBand(pump)
}

// judgeSheet holds a pump against its sheet at the power it draws.
func (m *model) judgeSheet(pump int, power unit.Power) {
	p, path := &m.job.Pumps[pump], at("/pumps", pump)
	if !p.Cord.IsZero() && p.CordPath.SI > p.Cord.SI {
		m.found(FindCord, path+"/cord", trace.Danger, unit.Of(p.Cord.SI, unit.KindDistance), unit.Of(p.CordPath.SI, unit.KindDistance), sheetSource)
	}
	if power == 0 {
		m.find(trace.Finding{Message: trace.Message{Code: FindNoWatts}, Path: path + "/watts", Severity: trace.Info})
	}
	if most := unit.Power(p.Volts.SI) * unit.Power(p.Amps.SI); most > 0 && power > most {
		m.found(FindWatts, path+"/watts", trace.Caution, unit.Of(power, unit.KindPower), unit.Of(most, unit.KindPower), trace.Source{Title: "P = U I cos phi, cos phi at most 1", Basis: trace.BasisLibrary})
	}
	if hours := m.job.Site.HoursPerDay.Or(defaultHours); hours > dutyLong && !p.Continuous {
		m.found(FindDuty, path+"/continuous", trace.Info, unit.Of(hours, unit.KindHours), unit.Value{}, trace.Source{})
	}
}

// judgeBand tells between which flows a pump lies that is known by its box only.
func (m *model) judgeBand(pump int) {
	curve, ok := m.trial().curve(pump)
	if !ok || curve.Basis() != hydro.CurveNameplate {
		return
	}
	low, high := curve.Band()
	var flows []unit.Flow
	for _, c := range []*hydro.Curve{low, high} {
		t := m.trial()
		t.instead = c
		d, ok := t.deliver(pump, m.out.Vault)
		if !ok {
			return
		}
		flows = append(flows, d.Flow)
	}
	m.find(trace.Finding{
		Path: at("/pumps", pump) + "/curve", Severity: trace.Caution, LimitSource: hydro.SourceNameplate,
		Message: trace.Message{Code: FindBand, Args: []trace.Arg{
			trace.Str("name", m.job.Pumps[pump].Name), trace.Num("low", flows[0], unit.KindFlow), trace.Num("high", flows[1], unit.KindFlow),
		}},
	})
}

// riseOff is how far taped rises and levelled heights may differ.
const riseOff unit.Length = 0.05

// judgeRises holds the rises taped along the runs against the height of the
// feed they lead to, where every run on the way has one.
func (m *model) judgeRises(vault unit.Length) {
	for i, f := range m.out.Delivery.Feeds {
		rise, ok := unit.Length(0), false
		for to, steps := f.Name, 0; to != "pump" && steps <= len(m.job.Runs); steps++ {
			k := slices.IndexFunc(m.job.Runs, func(r job.Run) bool { return r.To == to })
			if ok = k >= 0 && !m.job.Runs[k].Rise.IsZero(); !ok {
				break
			}
			rise, to = rise+m.job.Runs[k].Rise.SI, m.job.Runs[k].From
		}
		lips, sound := m.trial().lips(i)
		if !ok || !sound {
			continue
		}
		if height := lips[0].crest - vault; rise-height > riseOff || height-rise > riseOff {
			m.found(FindRise, f.Path, trace.Caution, unit.Of(rise, unit.KindHead), unit.Of(height, unit.KindHead), practice, trace.Str("name", f.Name))
		}
	}
}

// trial is the same model for a run that tells nothing.
func (m *model) trial() *model {
	t := *m
	t.quiet = true
	return &t
}

// pumpNamed gives a pump's place among the job's, -1 when there is none of that
// name.
func (m *model) pumpNamed(name string) int {
	return slices.IndexFunc(m.job.Pumps, func(p job.Pump) bool { return p.Name == name })
}

func (m *model) byName(pump string) (*job.Pump, bool) {
	if i := m.pumpNamed(pump); i >= 0 {
		return &m.job.Pumps[i], true
	}
	return nil, false
}

func (m *model) found(code, path string, sev trace.Severity, found, limit unit.Value, src trace.Source, args ...trace.Arg) {
	args = append(args, trace.Arg{Name: "found", Value: found}, trace.Arg{Name: "limit", Value: limit}, trace.At("where", m.job.PlaceOf(path)))
	m.find(trace.Finding{Message: trace.Message{Code: code, Args: args}, Path: path, Severity: sev, Found: found, Limit: limit, LimitSource: src})
}

func (m *model) judgeFeed(i int) {
	f, bound := &m.out.Delivery.Feeds[i], m.out.Delivery.Bound()
	name := trace.Str("name", f.Name)
	flow, want := unit.Bounded(f.Flow, unit.KindFlow, bound), unit.Of(f.Wanted, unit.KindFlow)
	short := unit.Ratio(f.Flow/f.Wanted) < 1-shortBy
	switch {
	case f.Dry:
		m.found(FindDry, f.Path, trace.Danger, flow, want, jobSource, name, m.lifts())
		m.remedy(i)
	case f.Wanted <= 0:
	case short && bound == unit.MoreThan, !short && bound == unit.LessThan:
		m.found(FindUnsure, f.Path, trace.Caution, flow, want, jobSource, name)
		m.remedy(i)
	case short:
		sev := trace.Caution
		if unit.Ratio(f.Flow/f.Wanted) < 1-shortBad {
			sev = trace.Danger
		}
		m.found(FindShort, f.Path, sev, flow, want, jobSource, name, trace.Num("percent", unit.Ratio(1-f.Flow/f.Wanted), unit.KindPercent))
		m.remedy(i)
	case unit.Ratio(f.Flow/f.Wanted) > 1+overBy:
		m.found(FindOver, f.Path, trace.Info, flow, want, jobSource, name)
	}
}

// lifts tells what stands against a feed that gets nothing: where water runs to
// others, larger pipe may leave more head for it; where none runs, none is lost
// in pipe, and only the pump's head at no flow counts.
func (m *model) lifts() trace.Arg {
	d := m.out.Delivery
	switch {
	case d.Drawn > 0:
		return trace.Num("others", d.Drawn, unit.KindFlow)
	case len(d.Others) > 0:
		return trace.Num("pumps", unit.Ratio(1+len(d.Others)), unit.KindCount)
	}
	return trace.Num("head", d.Head, unit.KindHead)
}

// safety tells what can hurt someone on this job.
func (m *model) safety() {
	if len(m.job.Pumps) > 0 {
		m.find(trace.Finding{Message: trace.Message{Code: FindElectric}, Path: "/pumps", Severity: trace.Caution})
		m.find(trace.Finding{Message: trace.Message{Code: FindIntake}, Path: "/pumps", Severity: trace.Caution})
	}
	code := FindWater
	if m.job.Site.Children {
		code = FindChildren
	}
	m.find(trace.Finding{Message: trace.Message{Code: code}, Path: "/pond", Severity: trace.Caution})
}
