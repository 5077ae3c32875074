package design

import (
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Codes of a pump's own range.
const (
	// CodeNoSpeed: the pump is set to a speed that it does not have. Args: name, speed.
	CodeNoSpeed = "design.pump.speed"
	// CodeSpeedEmpty: a speed with neither curve nor part of full speed. Args: name, speed.
	CodeSpeedEmpty = "design.pump.speedempty"
	// FindMinFlow: the pump runs at less than its sheet allows. Args: name, found, limit.
	FindMinFlow = "design.pump.minflow"
	// FindOffBest: the pump runs outside its preferred region. Args: name, found, best, percent.
	FindOffBest = "design.pump.offbest"
	// FindOverload: the motor draws more than its plate allows. Args: name, found, limit, percent.
	FindOverload = "design.pump.overload"

	AssumeAffinity = "assume.pump.affinity" // a speed by the affinity laws. Args: name, value (part of full speed)
)

// setSpeed gives the speed a pump is set to, nil for full speed.
func (m *model) setSpeed(i int) (*job.PumpSpeed, bool) {
	p, path := &m.job.Pumps[i], at("/pumps", i)
	if p.Speed == "" {
		return nil, true
	}
	k := slices.IndexFunc(p.Speeds, func(s job.PumpSpeed) bool { return s.Name == p.Speed })
	if k < 0 {
		m.fault(path+"/speed", CodeNoSpeed, trace.Str("name", p.Name), trace.Str("speed", p.Speed))
		return nil, false
	}
	s := &p.Speeds[k]
	if len(s.Curve) == 0 && s.Part.IsZero() {
		m.fault(at(path+"/speeds", k), CodeSpeedEmpty, trace.Str("name", p.Name), trace.Str("speed", s.Name))
		return nil, false
	}
	return s, true
}

// pumpData is what the job knows of a pump at the speed it is set to.
func pumpData(p *job.Pump, s *job.PumpSpeed) hydro.PumpData {
	d := hydro.PumpData{Reading: curveReading, BoxFlow: p.BoxFlow.SI, MaxHead: p.MaxHead.SI, Watts: p.Watts.SI}
	points := p.Curve
	if s != nil && len(s.Curve) > 0 {
		d, points = hydro.PumpData{Reading: curveReading, Watts: s.Watts.SI}, s.Curve
	}
	for _, c := range points {
		d.Points = append(d.Points, hydro.CurvePoint{Flow: c.Flow.SI, Head: c.Head.SI, Watts: c.Watts.SI})
	}
	return d
}

// SheetCurve fits the curve of a pump by its sheet: at full speed and without
// wear, whatever the pump is set to.
func SheetCurve(p *job.Pump) (*hydro.Curve, error) { return hydro.NewCurve(pumpData(p, nil)) }

// asSet brings a curve to the speed set and takes off what is lost to wear.
func (m *model) asSet(i int, c *hydro.Curve, s *job.PumpSpeed) (*hydro.Curve, error) {
	p := &m.job.Pumps[i]
	if s != nil && len(s.Curve) == 0 {
		slow, err := c.AtSpeed(s.Part.SI)
		if err != nil {
			return nil, err
		}
		m.assume(at("/pumps", i)+"/speed", AssumeAffinity, unit.Of(s.Part.SI, unit.KindPercent), hydro.SourceAffinity, trace.Str("name", p.Name))
		c = slow
	}
	if p.Wear.SI == 0 {
		return c, nil
	}
	return c.Worn(p.Wear.SI)
}

// ratio is the part of full speed that a pump is set to, as far as it is known.
func (m *model) ratio(i int) unit.Ratio {
	if s, ok := m.trial().setSpeed(i); ok && s != nil {
		return s.Part.Or(1)
	}
	return 1
}

// judgeDuty holds where a pump runs against its own range: least flow, region
// of best efficiency, motor, suction.
func (m *model) judgeDuty(id string, i int, curve *hydro.Curve, q unit.Flow, watts unit.Power, drawn *unit.Length) {
	p, path := &m.job.Pumps[i], at("/pumps", i)
	name, flow := trace.Str("name", p.Name), unit.Of(q, unit.KindFlow)
	if q <= 0 {
		return // told with what it does not feed
	}
	if least := p.MinFlow.SI; q < least {
		m.found(FindMinFlow, path+"/minFlow", trace.Caution, flow, unit.Of(least, unit.KindFlow), sheetSource, name)
	}
	m.judgeBest(id, i, curve, q)
	if most := p.MotorWatts.SI; most > 0 && watts > 0 {
		load := unit.Ratio(watts / most)
		m.figure(id+".load", unit.Of(load, unit.KindPercent), "P / what the motor may draw", sheetSource,
			term("P", watts, unit.KindPower, id+".power"), term("most", most, unit.KindPower, path+"/motorWatts"))
		if watts > most {
			m.found(FindOverload, path+"/motorWatts", trace.Caution, unit.Of(watts, unit.KindPower), unit.Of(most, unit.KindPower), sheetSource, name, trace.Num("percent", load, unit.KindPercent))
		}
	}
	if drawn != nil {
		m.judgeSuction(id, i, q, *drawn)
	}
}

// judgeBest holds a flow against the flow of best efficiency: the sheet's, which
// goes with the speed, or the one that head and watts along the curve give.
func (m *model) judgeBest(id string, i int, curve *hydro.Curve, q unit.Flow) {
	p, path := &m.job.Pumps[i], at("/pumps", i)
	best, source := p.BestFlow.SI*unit.Flow(m.ratio(i)), sheetSource
	if best <= 0 {
		var efficiency unit.Ratio
		var ok bool
		if best, efficiency, ok = curve.BestPoint(m.water); !ok {
			return
		}
		source = hydro.SourceWaterPower
		m.figure(id+".efficiency.best", unit.Of(efficiency, unit.KindPercent), "greatest density g Q H / P along the curve", source)
	}
	m.figure(id+".best", unit.Of(best, unit.KindFlow), "flow of best efficiency", source)
	part, limit := unit.Ratio(q/best), hydro.PreferredLow
	if part > hydro.PreferredHigh {
		limit = hydro.PreferredHigh
	}
	if part < hydro.PreferredLow || part > hydro.PreferredHigh {
		m.found(FindOffBest, path+"/bestFlow", trace.Info, unit.Of(q, unit.KindFlow), unit.Of(best*unit.Flow(limit), unit.KindFlow), hydro.SourcePreferred,
			trace.Str("name", p.Name), trace.Num("best", best, unit.KindFlow), trace.Num("percent", part, unit.KindPercent))
	}
}
