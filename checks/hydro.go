package checks

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// friction holds the friction factors against the library's.
func friction() ([]Check, error) {
	rows, err := groupRows("friction")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range rows {
		re, err := input(r, "Re")
		if err != nil {
			return nil, err
		}
		rel := 0.0
		if strings.Contains(r["inputs"], "e/D") {
			if rel, err = input(r, "e/D"); err != nil {
				return nil, err
			}
		}
		a, b := unit.Ratio(re), unit.Ratio(rel)
		var f unit.Ratio
		switch q := r["quantity"]; {
		case strings.Contains(q, "laminar"), strings.Contains(q, "Colebrook-White"):
			f, _ = hydro.Friction(a, b)
		case strings.Contains(q, "Haaland"):
			f = hydro.Haaland(a, b)
		case strings.Contains(q, "Swamee-Jain"):
			f = hydro.SwameeJain(a, b)
		case strings.Contains(q, "Churchill"):
			f = hydro.Churchill(a, b)
		default:
			return nil, fmt.Errorf("reference row %s: no friction formula for %q", r["id"], q)
		}
		c, err := fromRow(r, "friction", float64(f))
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

// water holds the properties of water against the library's.
func water() ([]Check, error) {
	rows, err := groupRows("water")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range rows {
		t, err := input(r, "T")
		if err != nil {
			return nil, err
		}
		w, err := hydro.WaterAt(unit.Temperature(t))
		if err != nil {
			return nil, err
		}
		got := map[string]float64{
			"density":                      w.DensityKgM3,
			"dynamic viscosity":            w.DynamicPaS * 1e3,
			"kinematic viscosity":          w.KinematicM2S * 1e6,
			"saturation (vapour) pressure": float64(w.VapourPressure / unit.Kilopascal),
		}
		v, known := got[r["quantity"]]
		if !known {
			return nil, fmt.Errorf("reference row %s: no property %q", r["id"], r["quantity"])
		}
		c, err := fromRow(r, "water", v)
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

// pipes holds the pipe laws against the library's and against published
// tables and examples: Darcy-Weisbach, Hazen-Williams, pipes in series and
// parallel, fittings.
func pipes() ([]Check, error) {
	rows, err := groupRows("pipe")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range rows {
		v, err := inputs(r, "D", "Q")
		if err != nil {
			return nil, err
		}
		bore, q := unit.Length(v[0])*unit.Inch, unit.Flow(v[1])*unit.USGallonPerMinute
		var h unit.Head
		if strings.Contains(r["quantity"], "Hazen-Williams") {
			h, err = hazenLoss(bore, 100*unit.Foot, q, hydro.HazenWilliamsUS)
		} else {
			h, err = darcyLoss(hydro.PipeLaw{Bore: bore, Length: 100 * unit.Foot, Roughness: 0.0015 * unit.Millimetre}, 20, q)
		}
		if err != nil {
			return nil, err
		}
		c, err := fromRow(r, "pipe", float64(h/unit.Foot))
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	more, err := fromExamples("pipe", slices.Concat(hazenExamples(), darcyExamples(), sharedExamples()))
	return append(out, more...), err
}

func hazenLoss(bore, length unit.Length, q unit.Flow, form hydro.HazenWilliamsForm) (unit.Head, error) {
	w, err := hydro.WaterAt(20)
	if err != nil {
		return 0, err
	}
	p, err := hydro.HazenWilliamsLaw{Bore: bore, Length: length, C: 150, Form: form}.Prepare(w)
	if err != nil {
		return 0, err
	}
	h, _ := p.Loss(q)
	return h, nil
}

func darcyLoss(law hydro.PipeLaw, celsius unit.Temperature, q unit.Flow) (unit.Head, error) {
	w, err := hydro.WaterAt(celsius)
	if err != nil {
		return 0, err
	}
	p, err := law.Prepare(w)
	if err != nil {
		return 0, err
	}
	h, _ := p.Loss(q)
	return h, nil
}

// hazenExamples are the published friction table's cells, by the form in
// metres, which is the design's.
func hazenExamples() []worked {
	cells := []struct {
		id        string
		bore, gpm float64
	}{
		{"E07", 1.049, 10},
		{"E08", 1.380, 15},
		{"E10", 1.610, 30},
		{"E11", 2.067, 40},
		{"E13", 3.068, 60},
		{"E14", 3.068, 100},
		{"E16", 6.065, 300},
	}
	out := make([]worked, 0, len(cells))
	for _, c := range cells {
		out = append(out, given(c.id, unit.Foot)(hazenLoss(unit.Length(c.bore)*unit.Inch, 100*unit.Foot,
			unit.Flow(c.gpm)*unit.USGallonPerMinute, hydro.HazenWilliamsSI)))
	}
	return out
}

// darcyExamples are two textbook examples of Darcy-Weisbach with Colebrook.
func darcyExamples() []worked {
	const poundPerFootSecond = float64(unit.Pound) / float64(unit.Foot)
	poundPerCubicFoot := float64(unit.Pound) / float64(unit.CubicFoot)
	loss := func(law hydro.PipeLaw, k unit.Ratio, densityKgM3, dynamicPaS float64, q unit.Flow) (unit.Head, error) {
		w := hydro.Water{DensityKgM3: densityKgM3, DynamicPaS: dynamicPaS, KinematicM2S: dynamicPaS / densityKgM3}
		pipe, err := law.Prepare(w)
		if err != nil {
			return 0, err
		}
		minor, err := hydro.MinorLaw{Bore: law.Bore, K: k}.Prepare(w)
		if err != nil {
			return 0, err
		}
		a, _ := pipe.Loss(q)
		b, _ := minor.Loss(q)
		return a + b, nil
	}
	steel := hydro.PipeLaw{Bore: 2 * unit.Inch, Length: 200 * unit.Foot, Roughness: 7e-6 * unit.Foot}
	iron := hydro.PipeLaw{Bore: 5 * unit.Centimetre, Length: 89, Roughness: 0.26 * unit.Millimetre}
	h, err := loss(iron, 2.36, 999.7, 1.307e-3, 6*unit.LitrePerSecond)
	return []worked{
		given("E49", unit.Foot)(loss(steel, 0, 62.36*poundPerCubicFoot, 7.536e-4*poundPerFootSecond, 0.2*unit.CubicFootPerSecond)),
		{"E50", float64(4 + h), err},
	}
}

// sharedExamples are pipes in series and parallel with a fixed friction
// factor, and a system curve.
func sharedExamples() []worked {
	var fault error
	pipe := func(f, length, bore float64) hydro.Resistance {
		r, err := hydro.FixedFriction(unit.Ratio(f), unit.Length(length), unit.Length(bore))
		if err != nil {
			fault = err
		}
		return r
	}
	two := hydro.Series(pipe(0.020, 200, 0.200), pipe(0.020, 150, 0.150))
	three := hydro.Series(pipe(0.020, 500, 0.300), pipe(0.022, 400, 0.250), pipe(0.018, 300, 0.200))
	short, long := pipe(0.020, 100, 0.2), pipe(0.020, 400, 0.2)
	pair := hydro.Parallel(short, long)
	trio := hydro.Parallel(pipe(0.018, 200, 0.300), pipe(0.018, 200, 0.250), pipe(0.018, 200, 0.200))

	const gpm = 0.002228 * unit.CubicFootPerSecond // as the example has it
	main := pipe(0.02, float64(1255*unit.Foot), float64(4.026*unit.Inch))
	fittings := pipe(3.79, float64(4.026*unit.Inch), float64(4.026*unit.Inch)) // K is f L/D with L = D
	system := hydro.Series(main, fittings)
	total := func(q unit.Flow) float64 { return float64((265*unit.Foot + system.Head(q)) / unit.Foot) }
	return []worked{
		{"E40", float64(two.Head(0.050)), fault},
		{"E41", float64(three.Flow(25)), fault},
		{"E42", float64(short.Flow(pair.Head(0.120))), fault},
		{"E43", float64(trio.Head(0.5)), fault},
		{"E01", total(100 * gpm), fault},
		{"E02", total(200 * gpm), fault},
	}
}

// tank holds the drain time against a library value and two pages.
func tank() ([]Check, error) {
	rows, err := groupRows("tank")
	if err != nil {
		return nil, err
	}
	hole := func(mm float64) unit.Area { return unit.Area(math.Pi / 4 * mm * mm * 1e-6) }
	// our gravity is the standard one; a drain time goes with 1/sqrt g, so it
	// is turned to the g that the row states
	at := func(g float64, t unit.Duration, err error) (unit.Duration, error) {
		return t * unit.Duration(math.Sqrt(unit.StandardGravity/g)), err
	}
	if len(rows) != 1 || rows[0]["id"] != "C200" {
		return nil, fmt.Errorf("reference: the group tank is no longer the one row C200")
	}
	t, err := hydro.DrainTime(1.5, hole(40), 0.61, 0.6, 0.1)
	if t, err = at(9.81, t, err); err != nil {
		return nil, err
	}
	c, err := fromRow(rows[0], "tank", float64(t))
	if err != nil {
		return nil, err
	}
	round, err22 := hydro.DrainTime(unit.Area(math.Pi/4*16)*unit.SquareFoot, 5*unit.SquareInch, 1, 6*unit.Foot, 2*unit.Foot)
	round, err22 = at(32.2*float64(unit.Foot), round, err22)
	small, err23 := hydro.DrainTime(1, 1e-4, 1, 5, 0)
	small, err23 = at(10, small, err23)
	more, err := fromExamples("tank", []worked{{"E22", float64(round), err22}, {"E23", float64(small), err23}})
	return append([]Check{c}, more...), err
}
