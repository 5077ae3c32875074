package hydro

import (
	"cmp"
	"math"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Sources of what a pump outside the water needs at its inlet.
var (
	// SourceAtmosphere names the pressure of the air at a height.
	SourceAtmosphere = trace.Source{
		Title: "ISO 2533 standard atmosphere: p = 101325 Pa (1 - 2.25577e-5 h)^5.25588, h in m",
		Basis: trace.BasisMemory,
		Note:  "its table gives 898.75 hPa at 1000 m and 540.20 hPa at 5000 m; weather moves it by some 3 percent",
	}
	// SourceNPSH names the formula of the suction head.
	SourceNPSH = trace.Source{
		Title: "NPSHa = (pa + pg - pv)/(density g) + hs - hf + v^2/2g",
		Basis: trace.BasisPublished,
		Note:  "centrifugal pump handbook page: NPSHa = Ha + Hs - Hvp - Hf - Hi, with Hi = 2 ft kept back",
	}
)

// SuctionReserve is the suction head that is kept back beyond what the pump
// asks for: 2 ft, as the worked example of SourceNPSH keeps it.
const SuctionReserve = 2 * unit.Foot

// AtmosphereAt is the pressure of the air at a height above the sea, from -500
// to 5000 m, by the standard atmosphere (SourceAtmosphere); outside that
// CodeRange.
func AtmosphereAt(height unit.Length) (unit.Pressure, error) {
	if err := within("altitude", height, -500, 5000, unit.KindElevation); err != nil {
		return 0, err
	}
	return unit.Pressure(101325 * math.Pow(1-2.25577e-5*float64(height), 5.25588)), nil
}

// NPSHPoint is one point of the suction head that a pump requires.
type NPSHPoint struct {
	Flow unit.Flow
	Head unit.Head
}

// NPSHCurve is the suction head that a pump requires over its flow.
type NPSHCurve struct {
	points hermite
	one    *NPSHPoint
}

// NewNPSH makes the curve from the points of a sheet, in any order, joined by
// PCHIP; a single one stands for flows up to its own. No point gives
// CodeNPSHNone, two at one flow CodeCurveDuplicate, negative values CodeRange.
func NewNPSH(points []NPSHPoint) (*NPSHCurve, error) {
	if len(points) == 0 {
		return nil, fail(CodeNPSHNone)
	}
	points = slices.Clone(points)
	slices.SortFunc(points, func(a, b NPSHPoint) int { return cmp.Compare(a.Flow, b.Flow) })
	var q, h []float64
	for i, p := range points {
		if err := cmp.Or(notNegative("flow", p.Flow, unit.KindFlow), notNegative("head", p.Head, unit.KindHead)); err != nil {
			return nil, err
		}
		if i > 0 && p.Flow == points[i-1].Flow {
			return nil, fail(CodeCurveDuplicate, trace.Num("flow", p.Flow, unit.KindFlow))
		}
		q, h = append(q, float64(p.Flow)), append(h, float64(p.Head))
	}
	if len(points) == 1 {
		return &NPSHCurve{one: &points[0]}, nil
	}
	return &NPSHCurve{points: newPCHIP(q, h)}, nil
}

// Required is the suction head required at a flow, for a pump that runs at a
// ratio of the speed of its sheet: r² NPSHr(Q/r), as heads go. Below the first
// point that point's stands; beyond the last one inside is false and the last
// one's is a bound that it is more than.
func (c *NPSHCurve) Required(q unit.Flow, ratio unit.Ratio) (h unit.Head, inside bool) {
	x, scale := float64(q)/float64(ratio), float64(ratio*ratio)
	if c.one != nil {
		return c.one.Head * unit.Head(scale), x <= float64(c.one.Flow)
	}
	first, last := c.points.first(), c.points.last()
	y, _ := c.points.at(min(max(x, first.x0), last.x1))
	return unit.Head(y * scale), x <= last.x1
}
