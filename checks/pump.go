package checks

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// pumpCurve is a curve from flows in gpm and heads in ft.
func pumpCurve(gpm, ft []float64) (*hydro.Curve, error) {
	d := hydro.PumpData{}
	for i := range gpm {
		d.Points = append(d.Points, hydro.CurvePoint{
			Flow: unit.Flow(gpm[i]) * unit.USGallonPerMinute, Head: unit.Length(ft[i]) * unit.Foot,
		})
	}
	return hydro.NewCurve(d)
}

// The three curves of the reference.
func curveE02() (*hydro.Curve, error) {
	return pumpCurve([]float64{0, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000, 1100, 1200},
		[]float64{200, 199, 196, 192, 190, 186, 180, 175, 165, 155, 140, 125, 100})
}

func curveFive() (*hydro.Curve, error) {
	return pumpCurve([]float64{0, 10, 20, 30, 40}, []float64{25, 24, 20, 13, 0})
}

func curvePond() (*hydro.Curve, error) {
	return pumpCurve([]float64{0, 20, 40, 60, 80, 100}, []float64{30, 29, 26.5, 22, 15, 4})
}

// pumpChecks holds the pump's curve, the operating point, power, suction and
// the affinity laws against scipy, the library and published examples.
func pumpChecks() ([]Check, error) {
	var out []Check
	for _, group := range []string{"interp", "system"} {
		rows, err := groupRows(group)
		if err != nil {
			return nil, err
		}
		for _, r := range rows {
			got, err := pumpRow(r)
			if err != nil {
				return nil, fmt.Errorf("reference row %s: %w", r["id"], err)
			}
			c, err := fromRow(r, "pump", got)
			if err != nil {
				return nil, err
			}
			if group == "interp" {
				// the rows are printed to eight digits, which is coarser than
				// their tolerance: ours is held against them as printed
				if c.Got, err = strconv.ParseFloat(strconv.FormatFloat(got, 'g', 8, 64), 64); err != nil {
					return nil, err
				}
				c.Note = strings.TrimPrefix(c.Note+"; ours rounded to the eight digits of the print", "; ")
			}
			out = append(out, c)
		}
	}
	more, err := fromExamples("pump", slices.Concat(operatingExamples(), powerExamples(), suctionExamples(), affinityExamples()))
	return append(out, more...), err
}

// pumpRow computes a row of the groups interp and system in the row's unit.
func pumpRow(r Row) (float64, error) {
	text := r["inputs"]
	var curve *hydro.Curve
	var err error
	switch {
	case strings.Contains(text, "E02"):
		curve, err = curveE02()
	case strings.Contains(text, "Q=[0, 10, 20, 30, 40]"):
		curve, err = curveFive()
	case strings.Contains(text, "pump Q=[0, 20, 40, 60, 80, 100] gpm H=[30, 29, 26.5, 22, 15, 4] ft"):
		curve, err = curvePond()
	default:
		return 0, fmt.Errorf("no curve for %q", text)
	}
	if err != nil {
		return 0, err
	}
	if r["group"] == "interp" {
		q, err := input(r, "Q")
		if err != nil {
			return 0, err
		}
		h, _, inside := curve.Head(unit.Flow(q) * unit.USGallonPerMinute)
		if !inside {
			return 0, fmt.Errorf("flow %g lies off the curve", q)
		}
		return float64(h / unit.Foot), nil
	}
	static, law, err := systemOf(text)
	if err != nil {
		return 0, err
	}
	return operate(curve, static, law, r["unit"])
}

// operate gives the operating flow in gpm or the head in ft.
func operate(curve *hydro.Curve, static unit.Head, law hydro.Law, name string) (float64, error) {
	p := hydro.Operate(curve, static, law)
	if p.Stop != hydro.StopConverged {
		return 0, fmt.Errorf("operating point: %v", p.Stop)
	}
	if strings.HasPrefix(name, "ft") {
		return float64(p.Head / unit.Foot), nil
	}
	return float64(p.Flow / unit.USGallonPerMinute), nil
}

// laws adds losses on one line.
type laws []hydro.Law

func (ls laws) Loss(q unit.Flow) (h unit.Head, dhdq float64) {
	for _, l := range ls {
		a, b := l.Loss(q)
		h, dhdq = h+a, dhdq+b
	}
	return h, dhdq
}

// square is h = r Q|Q| as a law: a system curve given by its coefficient.
type square hydro.Resistance

func (s square) Loss(q unit.Flow) (unit.Head, float64) {
	h := hydro.Resistance(s).Head(q)
	return h, 2 * float64(s) * max(float64(q), -float64(q))
}

// perGPM turns a coefficient in ft for each gpm² into one in m for each
// (m³/s)².
func perGPM(c float64) square {
	gpm := float64(unit.USGallonPerMinute)
	return square(c * float64(unit.Foot) / (gpm * gpm))
}

// systemOf reads a system curve out of a row's inputs.
func systemOf(text string) (unit.Head, hydro.Law, error) {
	if at := strings.Index(text, "system H="); at >= 0 {
		var static, c float64
		if _, err := fmt.Sscanf(text[at:], "system H=%g+%g Q^2", &static, &c); err != nil {
			return 0, nil, err
		}
		return unit.Length(static) * unit.Foot, perGPM(c), nil
	}
	const want = "static 8 ft; 60 ft"
	at := strings.Index(text, "(D=")
	if at < 0 || !strings.Contains(text, want) || !strings.Contains(text, "sum K=6.5") {
		return 0, nil, fmt.Errorf("no system curve in %q", text)
	}
	var inches float64
	if _, err := fmt.Sscanf(text[at:], "(D=%g in)", &inches); err != nil {
		return 0, nil, err
	}
	bore := unit.Length(inches) * unit.Inch
	w, err := hydro.WaterAt(20)
	if err != nil {
		return 0, nil, err
	}
	pipe, err := hydro.PipeLaw{Bore: bore, Length: 60 * unit.Foot, Roughness: 0.0015 * unit.Millimetre}.Prepare(w)
	if err != nil {
		return 0, nil, err
	}
	minor, err := hydro.MinorLaw{Bore: bore, K: 6.5}.Prepare(w)
	return 8 * unit.Foot, laws{pipe, minor}, err
}

func operatingExamples() []worked {
	curve, err := curveE02()
	if err != nil {
		return []worked{{"E04", 0, err}}
	}
	q, err := operate(curve, 0, perGPM(155.0/(900*900)), "gpm")
	return []worked{{"E04", q, err}}
}

func powerExamples() []worked {
	brake := func(gpm, ft float64, efficiency unit.Ratio) (unit.Power, error) {
		w, err := hydro.WaterAt((60 - 32) / 1.8) // 60 F, where the specific gravity is 1
		if err != nil {
			return 0, err
		}
		return hydro.ShaftPower(hydro.WaterPower(unit.Flow(gpm)*unit.USGallonPerMinute, unit.Length(ft)*unit.Foot, w), efficiency)
	}
	return []worked{
		given("E05", unit.Horsepower)(brake(900, 155, 0.78)),
		given("E06", unit.Horsepower)(brake(500, 186, 0.65)),
	}
}

func suctionExamples() []worked {
	warm, err := hydro.WaterAt(20) // 68 F
	if err != nil {
		return []worked{{"E25", 0, err}}
	}
	warm.VapourPressure = 0.339 * unit.PSI
	gauge := hydro.Suction{Atmosphere: 14.7 * unit.PSI, Gauge: 2.4 * unit.PSI, Static: 1 * unit.Foot, Speed: 10 * unit.FootPerSecond}
	open := warm
	open.VapourPressure = open.PressureOf(0.839 * unit.Foot)
	flooded := hydro.Suction{Atmosphere: open.PressureOf(33.9 * unit.Foot), Static: 6 * unit.Foot, Friction: 2 * unit.Foot, Reserve: 2 * unit.Foot}
	return []worked{
		given("E25", unit.Foot)(hydro.NPSHAvailable(gauge, warm)),
		given("E26", unit.Foot)(hydro.NPSHAvailable(flooded, open)),
	}
}

// affinityExamples turn one point of a curve to another speed.
func affinityExamples() []worked {
	const watts = 1000 * unit.Watt
	curve, err := hydro.NewCurve(hydro.PumpData{Watts: watts, Points: []hydro.CurvePoint{
		{Flow: 0, Head: 12}, {Flow: 80 * unit.LitrePerSecond, Head: 10},
	}})
	if err != nil {
		return []worked{{"E74", 0, err}}
	}
	double, err74 := curve.AtSpeed(2)
	slow, err75 := curve.AtSpeed(0.8)
	if err74 != nil || err75 != nil {
		return []worked{{"E74", 0, err74}, {"E75", 0, err75}}
	}
	q, _ := double.Flow(40) // the page's head at double speed
	w, _, _ := slow.Power(0)
	return []worked{
		{"E74", float64(q / unit.LitrePerSecond), nil},
		{"E75", float64(w / watts), nil},
	}
}
