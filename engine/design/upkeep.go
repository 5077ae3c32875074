package design

import (
	"strconv"
	"strings"

	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Limits of a circuit. They are advice; the electrician and the code decide.
const (
	dropAdvised unit.Ratio = 0.03
	loadAdvised unit.Ratio = 0.8
)

var (
	dropSource = trace.Source{Title: "advice in the trade: 3 % on a branch circuit, 5 % with the feeder", Basis: trace.BasisPractice, Note: "advice, not a rule; the licensed electrician and local code decide"}
	loadSource = trace.Source{Title: "common practice, no source: 80 % of the breaker for a load that runs three hours or more", Basis: trace.BasisPractice, Note: "the licensed electrician and local code decide"}
	// sourceTurnover names the formula of the turnover.
	sourceTurnover = trace.Source{Title: "water in the pond / flow of all pumps", Basis: trace.BasisLibrary}
)

// upkeep works out what the running feature asks for: how often its water goes
// round, what a summer day takes, what the circuit carries.
func (m *model) upkeep(pump int) {
	d := m.out.Delivery
	if d == nil || d.Drawn <= 0 {
		return
	}
	u := &Upkeep{}
	m.out.Upkeep = u
	var open unit.Area // surface of the pond
	if line, ok := m.survey.Level(m.job.Pond.Water); ok {
		if pond := m.trial().pond(line); pond != nil { // what its outline assumes is told with the levels
			open = pond.Water(line)
			m.turnover(u, pond.Volume(line))
		}
	}
	m.evaporates(u, open)
	m.circuit(u, pump)
}

func (m *model) turnover(u *Upkeep, v unit.Volume) {
	u.Turnover = unit.Duration(float64(v) / float64(m.out.Delivery.Drawn))
	m.figure("upkeep.turnover", unit.Of(u.Turnover, unit.KindDuration), "V / Q", sourceTurnover,
		term("V", v, unit.KindWater, "/pond"), term("Q", m.out.Delivery.Drawn, unit.KindFlow, "pump.flow"))
}

// wetArea is the surface of reaches and pools.
func (m *model) wetArea() (a unit.Area) {
	for _, w := range m.job.Watercourses {
		for _, p := range w.Parts {
			switch {
			case p.Reach != nil:
				a += reachPlan(p.Reach) * unit.Area(p.Reach.Wetted.Or(1))
			case p.Pool != nil:
				a += poolPlan(p.Pool)
			}
		}
	}
	return a
}

// evaporation is the depth that a summer day takes; false where the job does
// not tell all of its weather.
func (m *model) evaporation() (unit.Length, bool) {
	w := &m.job.Site.Summer
	if w.Air.IsZero() || w.Humidity.IsZero() || w.Wind.IsZero() || w.Radiation.IsZero() {
		return 0, false
	}
	air, err := hydro.AtmosphereAt(m.job.Site.Altitude.SI)
	if err != nil {
		m.refuse("/site/altitude", err)
		return 0, false
	}
	e, err := hydro.PenmanDepth(hydro.OpenWater{Temperature: w.Air.SI, NetRadiationWM2: float64(w.Radiation.SI), Wind: w.Wind.SI, Humidity: w.Humidity.SI, Atmosphere: air})
	if err != nil {
		m.refuse("/site/summer", err)
		return 0, false
	}
	return max(e, 0), true
}

func (m *model) evaporates(u *Upkeep, pond unit.Area) {
	if m.job.Site.Summer == (job.Weather{}) {
		return
	}
	e, ok := m.evaporation()
	if !ok {
		m.fault("/site/summer", CodeWeather)
		return
	}
	if m.job.Site.Altitude.IsZero() {
		m.assumeOnce("/site/altitude", AssumeAltitude, unit.Of(unit.Length(0), unit.KindElevation))
	}
	u.Evaporation, u.WaterArea = e, pond+m.wetArea()
	u.TopUp = unit.Volume(float64(e) * float64(u.WaterArea))
	w := &m.job.Site.Summer
	m.figure("upkeep.evaporation", unit.Of(e, unit.KindDepth), "Penman: (alpha En + Ea)/(alpha + 1), in a day", hydro.SourcePenman,
		term("T", w.Air.SI, unit.KindTemperature, "/site/summer/air"), term("RH", w.Humidity.SI, unit.KindPercent, "/site/summer/humidity"),
		term("v", w.Wind.SI, unit.KindSpeed, "/site/summer/wind"), term("Rn", w.Radiation.SI, unit.KindRatio, "/site/summer/radiation"))
	m.figure("upkeep.topup", unit.Of(u.TopUp, unit.KindWater), "E x water surface of pond, reaches and pools, in a day", sourceGeometry,
		term("E", e, unit.KindDepth, "upkeep.evaporation"), term("A", u.WaterArea, unit.KindArea, "/pond"))
}

// circuit reckons the current of all pumps and what the cable loses of the
// voltage. It is the contractor's reckoning, for the electrician.
func (m *model) circuit(u *Upkeep, pump int) {
	u.LoadKnown = true
	terms := make([]trace.Term, 0, 1+len(m.job.FurtherPumps))
	volts := m.job.Pumps[pump].Volts.SI
	mixed := false
	add := func(p *job.Pump, w unit.Power) {
		amps := p.Amps.SI // of the plate, at full speed
		mixed = mixed || p.Volts.SI != volts
		if (p.Amps.IsZero() || p.Speed != "") && p.Volts.SI > 0 && w > 0 {
			amps = unit.Current(float64(w) / float64(p.Volts.SI))
			m.assumeOnce("/pumps", AssumePowerFactor, unit.Of(unit.Ratio(1), unit.KindRatio))
		}
		u.LoadKnown = u.LoadKnown && amps > 0
		u.Load += amps
		terms = append(terms, term("I", amps, unit.KindCurrent, "/pumps"))
	}
	add(&m.job.Pumps[pump], m.out.Delivery.Power)
	for _, o := range m.out.Delivery.Others {
		if p, ok := m.byName(o.Pump); ok {
			add(p, o.Power)
		}
	}
	u.LoadKnown = u.LoadKnown && !mixed
	c := &m.job.Circuit
	if *c == (job.Circuit{}) {
		return
	}
	if mixed {
		m.fault("/circuit", CodeVolts)
		return
	}
	if !u.LoadKnown || volts <= 0 {
		m.fault("/circuit", CodeNoLoad)
		return
	}
	m.figure("circuit.load", unit.Of(u.Load, unit.KindCurrent), "sum of the pumps' currents", sheetSource, terms...)
	if breaker := c.Breaker.SI; breaker > 0 && unit.Ratio(u.Load/breaker) > loadAdvised {
		m.found(FindLoad, "/circuit/breaker", trace.Caution, unit.Of(u.Load, unit.KindCurrent), unit.Of(breaker*unit.Current(loadAdvised), unit.KindCurrent), loadSource)
	}
	m.drop(u, volts)
}

func (m *model) drop(u *Upkeep, volts unit.Voltage) {
	c := &m.job.Circuit
	if c.Length.IsZero() || c.Conductor == "" {
		return
	}
	area, ok := conductor(c.Conductor)
	if !ok {
		m.fault("/circuit/conductor", CodeConductor, trace.Str("found", c.Conductor))
		return
	}
	drop, err := hydro.VoltageDropByArea(u.Load, c.Length.SI, area, hydro.CopperResistivity)
	if err != nil {
		m.refuse("/circuit", err)
		return
	}
	u.Drop, u.DropShare = drop, unit.Ratio(drop/volts)
	m.figure("circuit.drop", unit.Of(drop, unit.KindVoltage), "2 L I rho / A, copper at 75 °C", hydro.SourceVoltageDrop,
		term("L", c.Length.SI, unit.KindDistance, "/circuit/length"), term("I", u.Load, unit.KindCurrent, "circuit.load"))
	if u.DropShare > dropAdvised {
		m.found(FindDrop, "/circuit", trace.Caution, unit.Of(u.DropShare, unit.KindPercent), unit.Of(dropAdvised, unit.KindPercent), dropSource, trace.Num("drop", drop, unit.KindVoltage))
	}
}

const squareMillimetre = unit.Area(unit.Millimetre * unit.Millimetre)

// conductor reads "12 AWG", "AWG 12", "2/0 AWG", "1.5 mm2", "1,5 mm2" or
// "1.5 mm²".
func conductor(text string) (unit.Area, bool) {
	t := strings.ToLower(strings.Join(strings.Fields(text), ""))
	if rest, ok := strings.CutSuffix(strings.TrimSuffix(strings.ReplaceAll(t, "²", "2"), "2"), "mm"); ok {
		mm2, err := strconv.ParseFloat(strings.Replace(rest, ",", ".", 1), 64) // none has thousands
		return unit.Area(mm2) * squareMillimetre, err == nil && mm2 >= 0.2 && mm2 <= 400
	}
	gauge, ok := strings.CutSuffix(strings.TrimPrefix(t, "awg"), "awg")
	if !ok && !strings.HasPrefix(t, "awg") {
		return 0, false
	}
	n, err := strconv.Atoi(gauge)
	if aught, of := strings.CutSuffix(gauge, "/0"); of {
		n, err = strconv.Atoi(aught)
		n = 1 - n // 1/0 is gauge 0, 2/0 is -1
	}
	if err != nil {
		return 0, false
	}
	area, err := hydro.ConductorArea(n)
	return area, err == nil
}
