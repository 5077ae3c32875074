package catalog

import (
	"math"

	"plashet/engine/unit"
)

// D1785DesignStress is the hydrostatic design stress of PVC 1120 for water at
// 73 F, 2000 psi (ASTM D1785, annex on sustained pressure ratings).
const D1785DesignStress = 2000 * unit.PSI

// D2241LeastWall is the least wall of ASTM D2241 pipe, 0.060 in.
const D2241LeastWall = 0.060 * unit.Inch

// nan is the fault value of the formulas below.
func nan[Q ~float64]() Q { return Q(math.NaN()) }

// positive tells whether all values are finite and above zero.
func positive[Q ~float64](vs ...Q) bool {
	for _, v := range vs {
		if ok := v > 0 && !math.IsInf(float64(v), 0); !ok {
			return false
		}
	}
	return true
}

// PressureRating = 2 S t / (D - t) with S = D1785DesignStress: the sustained
// pressure for water at 73 F of plain-end PVC pipe of outside diameter D and
// wall t. Range 0 < t < D/2; NaN outside. Source: ASTM D1785, annex (the ISO
// equation).
func PressureRating(od, wall unit.Length) unit.Pressure {
	if !positive(od, wall) || wall >= od/2 {
		return nan[unit.Pressure]()
	}
	return D1785DesignStress * 2 * unit.Pressure(wall/(od-wall))
}

// SDRWall = OD / SDR, at least D2241LeastWall: the wall of pipe made to a
// standard dimension ratio. Range OD > 0, SDR > 2; NaN outside. Source: ASTM
// D2241, definition of the ratio.
func SDRWall(od unit.Length, sdr float64) unit.Length {
	if !positive(od) || !positive(sdr) || sdr <= 2 {
		return nan[unit.Length]()
	}
	return max(od/unit.Length(sdr), D2241LeastWall)
}

// SeriesS = MRS / (C PN) with MRS = 25 MPa: the pipe series S of PVC-U pressure
// pipe for a nominal pressure PN in bar and an overall design coefficient C
// (2.5 up to d90, 2.0 from d110 in EN ISO 1452-2; 2.5 throughout in DIN 8062).
// When preferred is set, S is taken to the nearest number of the series R10, as
// EN ISO 1452 does. Range PN > 0, C > 0; NaN outside. Source: EN ISO 1452-2 and
// ISO 4065, from memory.
func SeriesS(pn, c float64, preferred bool) float64 {
	if !positive(pn, c) {
		return math.NaN()
	}
	s := 25 / (c * pn * 0.1)
	if preferred {
		s = math.Pow(10, math.Round(10*math.Log10(s))/10)
	}
	return s
}

// MetricWall = d / (2 S + 1), to 0.01 mm and then up to the next 0.1 mm, at
// least 1.5 mm: the nominal wall of metric PVC-U pressure pipe. Range d > 0,
// S > 0; NaN outside. Source: ISO 4065 relation of wall, diameter and series.
func MetricWall(d unit.Length, s float64) unit.Length {
	if !positive(d) || !positive(s) {
		return nan[unit.Length]()
	}
	hundredths := math.Round(float64(d/unit.Millimetre) / (2*s + 1) * 100)
	return max(unit.Length(math.Ceil(hundredths/10)/10), 1.5) * unit.Millimetre
}

// MetricSocketDepth = 0.5 d + 6 mm, at least 12 mm: the least depth of a
// solvent-cement socket for metric pipe. Range d > 0; NaN outside. Source: EN
// ISO 1452-3 and ISO 727-1, from memory.
func MetricSocketDepth(d unit.Length) unit.Length {
	if !positive(d) {
		return nan[unit.Length]()
	}
	return max(d/2+6*unit.Millimetre, 12*unit.Millimetre)
}

// LayingFloor = OD/2 tan(turn/2): the least distance from the centre of a bend
// to its socket stop at which the two pipes pushed home do not meet (OD/2 for
// a 90 elbow or tee). Range OD > 0, 0 <= turn < 180 degrees; NaN outside. By
// geometry.
func LayingFloor(od unit.Length, turn unit.Angle) unit.Length {
	if !positive(od) || !(turn >= 0 && turn < 180*unit.Degree) {
		return nan[unit.Length]()
	}
	return od / 2 * unit.Length(math.Tan(float64(turn)/2))
}

// ContactFraction = (entrance - OD) / (entrance - bottom): the part of the
// socket's depth at which a pipe of outside diameter OD touches the taper, and
// so how far it goes in dry by hand. Range bottom < entrance and all above 0;
// NaN outside; below 0 the pipe does not enter, above 1 it goes home loose. By
// geometry of a straight taper.
func ContactFraction(od, entrance, bottom unit.Length) float64 {
	if !positive(od, entrance, bottom) || bottom >= entrance {
		return math.NaN()
	}
	return float64((entrance - od) / (entrance - bottom))
}

// NPTEffectiveThread L2 = (0.8 D + 6.8) p with D in inches and p = 1/n: the
// length of effective external thread. Range D > 0, n > 0; NaN outside. Source:
// ASME B1.20.1.
func NPTEffectiveThread(d unit.Length, threadsPerInch float64) unit.Length {
	if !positive(d) || !positive(threadsPerInch) {
		return nan[unit.Length]()
	}
	return unit.Length((0.8*float64(d/unit.Inch)+6.8)/threadsPerInch) * unit.Inch
}

// NPTPitchDiameter E0 = D - (0.05 D + 1.1) p with D in inches and p = 1/n: the
// pitch diameter at the small end. Range D > 0, n > 0; NaN outside. Source: ASME
// B1.20.1.
func NPTPitchDiameter(d unit.Length, threadsPerInch float64) unit.Length {
	if !positive(d) || !positive(threadsPerInch) {
		return nan[unit.Length]()
	}
	in := float64(d / unit.Inch)
	return unit.Length(in-(0.05*in+1.1)/threadsPerInch) * unit.Inch
}

// NPTGaugeDiameter E1 = E0 + L1/16: the pitch diameter at the hand-tight plane,
// the taper being 1 in 16 on the diameter. Range both above 0; NaN outside.
// Source: ASME B1.20.1.
func NPTGaugeDiameter(e0, handTight unit.Length) unit.Length {
	if !positive(e0, handTight) {
		return nan[unit.Length]()
	}
	return e0 + handTight/16
}
