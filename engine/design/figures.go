package design

import (
	"strconv"

	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// mm2PerM2 shows viscosities in figures of handy size.
const mm2PerM2 = 1e6

var (
	sourceBooks    = trace.Source{Title: "continuity and energy along the pipes; E. Todini and S. Pilati, A gradient algorithm for the analysis of pipe networks, 1988", Basis: trace.BasisLibrary, Note: "solved until flows balance to 1e-9 m³/s and heads to 1e-6 m"}
	sourceGeometry = trace.Source{Title: "plane geometry", Basis: trace.BasisLibrary}
	sourceEnergy   = trace.Source{Title: "energy = power x time; cost = energy x tariff", Basis: trace.BasisLibrary}
)

func term[Q unit.Quantity](symbol string, q Q, k unit.Kind, from string) trace.Term {
	return trace.Term{Symbol: symbol, Value: unit.Of(q, k), From: from}
}

func (m *model) figure(id string, v unit.Value, formula string, src trace.Source, terms ...trace.Term) {
	m.out.Figures = append(m.out.Figures, trace.Figure{ID: id, Value: v, Formula: formula, Terms: terms, Source: src})
}

// figures opens the delivery: each number with its formula, values and source.
// The IDs are stable; N counts from 0 in the job's order.
func (m *model) figures(pump int) {
	d := m.out.Delivery
	path := at("/pumps", pump)
	m.figure("water.density", unit.Of(unit.Ratio(m.water.DensityKgM3), unit.KindRatio), "density of water at its temperature, kg/m³", hydro.SourceDensity,
		term("T", m.water.Temperature, unit.KindTemperature, "/site/waterTemperature"))
	m.figure("water.viscosity", unit.Of(unit.Ratio(m.water.KinematicM2S*mm2PerM2), unit.KindRatio), "dynamic viscosity / density, mm²/s", hydro.SourceViscosity,
		term("T", m.water.Temperature, unit.KindTemperature, "/site/waterTemperature"))
	m.figure("pump.flow", unit.Bounded(d.Flow, unit.KindFlow, d.Beyond), "the flow at which the pump's head equals height + losses", sourceBooks,
		term("H", d.Head, unit.KindHead, "pump.head"))
	m.figure("pump.head", unit.Bounded(d.Head, unit.KindHead, -d.Beyond), "H(Q) on the pump's curve, PCHIP through its points", hydro.SourcePCHIP,
		term("Q", d.Flow, unit.KindFlow, "pump.flow"), trace.Term{Symbol: "points", From: path + "/curve"})
	m.figure("pump.static", unit.Of(d.Static, unit.KindHead), "highest free water surface - running water level the pump draws from", sourceGeometry)
	if d.Power > 0 && d.Flow > 0 {
		m.figure("pump.power", unit.Of(d.Power, unit.KindPower), "electrical power at Q, from the watts given", sheetSource, term("Q", d.Flow, unit.KindFlow, "pump.flow"))
		m.figure("pump.water", unit.Of(hydro.WaterPower(d.Flow, d.Head, m.water), unit.KindPower), "density g Q H", hydro.SourceWaterPower,
			term("Q", d.Flow, unit.KindFlow, "pump.flow"), term("H", d.Head, unit.KindHead, "pump.head"))
	}
	for i := range d.Others {
		m.otherFigures(i, &d.Others[i])
	}
	if d.Energy > 0 {
		powers := []trace.Term{term("P", d.Power, unit.KindPower, "pump.power")}
		for i, o := range d.Others {
			powers = append(powers, term("P "+o.Name, o.Power, unit.KindPower, OtherID(i)+".power"))
		}
		m.figure("pump.energy", unit.Of(d.Energy, unit.KindEnergy), "sum of P x hours a day x days a year", sourceEnergy,
			append(powers, trace.Term{Symbol: "hours", From: "/site/hoursPerDay"}, trace.Term{Symbol: "days", From: "/site/daysPerYear"})...)
	}
	for i := range d.Runs {
		m.runFigures(runID(i), &d.Runs[i])
	}
	for i := range d.Feeds {
		m.feedFigures(i, &d.Feeds[i])
	}
}

func (m *model) runFigures(id string, r *Run) {
	q := term("Q", r.Flow, unit.KindFlow, id+".flow")
	d := term("D", r.Bore, unit.KindBore, r.Path+"/pipe")
	v := term("v", r.Speed, unit.KindSpeed, id+".speed")
	l := term("L", r.Length, unit.KindDistance, r.Path+"/length")
	m.figure(id+".flow", unit.Bounded(r.Flow, unit.KindFlow, m.out.Delivery.Bound()), "what the network's balance gives this run", sourceBooks)
	m.figure(id+".speed", unit.Of(r.Speed, unit.KindSpeed), "v = Q / (pi D² / 4)", sourceGeometry, q, d)
	m.figure(id+".reynolds", unit.Of(r.Reynolds, unit.KindRatio), "Re = v D / viscosity", hydro.SourceColebrook, v, d,
		trace.Term{Symbol: "viscosity", Value: unit.Of(unit.Ratio(m.water.KinematicM2S*mm2PerM2), unit.KindRatio), From: "water.viscosity"})
	if r.C > 0 {
		m.figure(id+".friction", unit.Of(r.Friction, unit.KindHead), "h = 10.67 L Q^1.852 / (C^1.852 D^4.8704) (m, m³/s)", hydro.SourceHazenWilliams,
			q, d, l, term("C", r.C, unit.KindRatio, r.Path+"/c"))
	} else {
		rough := term("e", r.Rough, unit.KindRoughness, r.Path+"/pipe")
		rough.Source = r.RoughBy
		m.figure(id+".factor", unit.Of(r.Factor, unit.KindRatio), "Colebrook-White 1/sqrt f = -2 log10(e/3.7D + 2.51/(Re sqrt f)); 64/Re below Re 2000; a Hermite bridge to 4000",
			hydro.SourceColebrook, term("Re", r.Reynolds, unit.KindRatio, id+".reynolds"), d, rough)
		m.figure(id+".friction", unit.Of(r.Friction, unit.KindHead), "h = f L/D v²/2g", hydro.SourceDarcyWeisbach,
			term("f", r.Factor, unit.KindRatio, id+".factor"), l, d, v)
	}
	parts := make([]trace.Term, 0, len(r.Losses))
	for k, x := range r.Losses {
		lid := id + ".loss." + strconv.Itoa(k)
		each := x.Rest
		if r.Reynolds > 0 {
			each += x.PerRe / r.Reynolds
		}
		method := x.Method
		if method == "" {
			method = "as given"
		}
		m.figure(lid, unit.Of(each, unit.KindRatio), "K of one "+x.Name+" on the speed in the run's bore ("+method+")", x.Source,
			term("Re", r.Reynolds, unit.KindRatio, id+".reynolds"), trace.Term{Symbol: "n", Value: unit.Of(unit.Ratio(x.Count), unit.KindCount), From: x.Path})
		parts = append(parts, term(strconv.Itoa(x.Count)+" x K", each, unit.KindRatio, lid))
	}
	m.figure(id+".k", unit.Of(r.K, unit.KindRatio), "sum of n K", sourceBooks, parts...)
	m.figure(id+".fittings", unit.Of(r.Fittings, unit.KindHead), "h = K v²/2g", hydro.SourceMinor, term("K", r.K, unit.KindRatio, id+".k"), v)
	m.figure(id+".volume", unit.Of(r.Volume, unit.KindWater), "V = pi D² / 4 x L", sourceGeometry, d, l)
}

// OtherID is the stable name of a further pump among the figures.
func OtherID(i int) string { return "further." + strconv.Itoa(i) }

// runID is the stable name of a run among the figures.
func runID(i int) string { return "run." + strconv.Itoa(i) }

// FeedID is the stable name of a feed among the figures.
func FeedID(i int) string { return "feed." + strconv.Itoa(i) }

// holeID is the stable name of the volume of a hole among the figures.
func holeID(i int) string { return "hole." + strconv.Itoa(i) }

// LipID is the stable name of a lip of a feed among the figures.
func LipID(feed, lip int) string { return FeedID(feed) + ".lip." + strconv.Itoa(lip) }

func (m *model) feedFigures(i int, f *Feed) {
	id := FeedID(i)
	m.figure(id+".flow", unit.Bounded(f.Flow, unit.KindFlow, m.out.Delivery.Bound()), "what the network's balance gives this feed", sourceBooks)
	if f.Wanted > 0 && m.out.Delivery.Share != nil {
		m.figure(id+".wanted", unit.Of(f.Wanted, unit.KindFlow), "the most that one of its lips wants", jobSource)
		m.figure(id+".burn", unit.Of(f.Burn, unit.KindHead), "head of the feed that needs most - head this feed needs, at the part x of the wanted flows", sourceBooks,
			trace.Term{Symbol: "x", Value: unit.Of(m.out.Delivery.Share.At, unit.KindPercent)}, trace.Term{Symbol: "K", Value: unit.Of(f.K, unit.KindRatio)})
	}
	for k := range f.Lips {
		l, lid := &f.Lips[k], LipID(i, k)
		q := term("Q", f.Flow, unit.KindFlow, id+".flow")
		head := term("H", l.Sheet.Head, unit.KindDepth, lid+".head")
		m.figure(lid+".head", unit.Of(l.Sheet.Head, unit.KindDepth), "Q = C L H^1.5 solved for H; on a tilted crest H at its low end, integrated along it", l.Source, q,
			term("L", l.Width, unit.KindTape, l.Path+"/width"), trace.Term{Symbol: "C", Value: unit.Of(l.C, unit.KindRatio), Source: l.Source})
		if l.Tilt > 0 {
			tilt := term("t", l.Tilt, unit.KindDepth, l.Path+"/tilt")
			m.figure(lid+".mid", unit.Of(l.Sheet.Middle, unit.KindDepth), "H at the low end - t/2, not below 0", sourceGeometry, head, tilt)
			m.figure(lid+".high", unit.Of(l.Sheet.High, unit.KindDepth), "H at the low end - t, not below 0", sourceGeometry, head, tilt)
			head = term("H", l.Sheet.Middle, unit.KindDepth, lid+".mid")
		}
		m.figure(lid+".critical", unit.Of(l.Sheet.Critical, unit.KindDepth), "2/3 H in the middle of the crest", l.Source, head)
		m.figure(lid+".edge", unit.Of(l.Sheet.Edge, unit.KindDepth), "0.715 x critical depth, 2/3 H in the middle of the crest", hydro.SourceEdge, head)
		m.figure(lid+".perwidth", unit.Of(l.Sheet.PerWidth, unit.KindFlowPerWidth), "Q / L", sourceGeometry, q, term("L", l.Width, unit.KindTape, l.Path+"/width"))
	}
}
