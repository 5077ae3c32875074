package hydro

import (
	"cmp"
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// EffectiveWeir is the formula of a thin-plate rectangular weir with effective
// width and head,
//
//	Q = (2/3) (Alpha + Beta h/P) sqrt(2g) (b + WidthAdd) (h + HeadAdd)^1.5
//
// h the upstream head, P the crest's height over the bed, b the width.
type EffectiveWeir struct {
	Alpha, Beta       float64
	WidthAdd, HeadAdd unit.Length
	Source            trace.Source
}

// KindsvaterCarter is the form for a crest as wide as its channel: alpha
// 0.602, beta 0.075, width less 0.9 mm, head plus 1 mm. From h 30 mm up, P
// 100 mm up, h/P to 2.5.
func KindsvaterCarter() EffectiveWeir {
	return EffectiveWeir{0.602, 0.075, -0.9 * unit.Millimetre, 1 * unit.Millimetre, trace.Source{
		Title: "Kindsvater and Carter 1957; Bos, Discharge Measurement Structures, table 5.1; ISO 1438",
		Basis: trace.BasisMemory,
	}}
}

// Rehbock is the form for a crest as wide as its channel: alpha 0.602, beta
// 0.0832, head plus 1.25 mm. From h 30 mm up, P 60 mm up, h/P to 1.
func Rehbock() EffectiveWeir {
	return EffectiveWeir{0.602, 0.0832, 0, 1.25 * unit.Millimetre, trace.Source{
		Title: "Rehbock 1929, as python3-fluids 1.0.22 states it",
		Basis: trace.BasisLibrary,
	}}
}

// Flow is the flow over the weir. The head must be at least zero, the width
// and the crest's height above zero.
func (w EffectiveWeir) Flow(head unit.Head, width, crestHeight unit.Length) (unit.Flow, error) {
	err := cmp.Or(
		notNegative("head", head, unit.KindDepth),
		positive("width", width, unit.KindTape),
		positive("crestHeight", crestHeight, unit.KindTape),
	)
	if err != nil || head == 0 {
		return 0, err
	}
	h := float64(head + w.HeadAdd)
	c := w.Alpha + w.Beta*float64(head/crestHeight)
	return unit.Flow(2.0 / 3 * c * math.Sqrt(2*unit.StandardGravity) * float64(width+w.WidthAdd) * h * math.Sqrt(h)), nil
}

// RectangularNotch is the plain sharp-crested formula with a coefficient of
// discharge: Q = (2/3) Cd b sqrt(2g) H^1.5. Cd is about 0.62.
func RectangularNotch(cd unit.Ratio, head unit.Head, width unit.Length) (unit.Flow, error) {
	return EffectiveWeir{Alpha: float64(cd)}.Flow(head, width, 1)
}

// FrancisContracted is Francis' formula for a thin plate narrower than its
// channel, n (0, 1 or 2) the sides on which it is:
//
//	Q = 3.33 (L - 0.1 n H) H^1.5  (feet), 1.838 in metres
//
// without the speed of approach. For L above 3 H; a head so great that no
// width is left gives CodeRange.
func FrancisContracted(head unit.Head, width unit.Length, n int) (unit.Flow, error) {
	effective := width - 0.1*unit.Length(n)*head
	err := cmp.Or(
		notNegative("head", head, unit.KindDepth),
		positive("width", effective, unit.KindTape),
		within("contractions", unit.Ratio(n), 0, 2, unit.KindCount),
	)
	if err != nil {
		return 0, err
	}
	h := float64(head)
	return unit.Flow(francisUS * rootFoot * float64(effective) * h * math.Sqrt(h)), nil
}

// Cipolletti is the flow over a thin plate with sides that lean out 1 in 4,
// which make good for the contraction: Q = 3.367 L H^1.5 (feet), from memory of
// the USBR Water Measurement Manual, chapter 7.
func Cipolletti(head unit.Head, width unit.Length) (unit.Flow, error) {
	err := cmp.Or(
		notNegative("head", head, unit.KindDepth),
		positive("width", width, unit.KindTape),
	)
	if err != nil {
		return 0, err
	}
	h := float64(head)
	return unit.Flow(cipollettiUS * rootFoot * float64(width) * h * math.Sqrt(h)), nil
}

// shen is Shen's table (Discharge characteristics of triangular-notch
// thin-plate weirs, USGS Water-Supply Paper, 1981) as python3-fluids 1.0.22
// prints it: notch angle in degrees, Ce, kh in metres. A published page has Ce
// 0.578 and kh 0.88 mm at 90 degrees.
var shen = [...]struct{ degrees, ce, khM float64 }{
	{20, 0.59, 0.0028}, {40, 0.58, 0.0017}, {60, 0.575, 0.0012}, {80, 0.575, 0.001}, {100, 0.58, 0.001},
}

// VNotchCoefficients gives Ce and kh of Kindsvater and Shen's formula for a
// fully contracted V-notch of 20 to 100 degrees, else CodeRange.
func VNotchCoefficients(angle unit.Angle) (ce unit.Ratio, kh unit.Length, err error) {
	low, high := unit.Angle(shen[0].degrees)*unit.Degree, unit.Angle(shen[len(shen)-1].degrees)*unit.Degree
	if err := within("angle", angle, low, high, unit.KindAngle); err != nil {
		return 0, 0, err
	}
	d := float64(angle / unit.Degree)
	i := 1
	for i < len(shen)-1 && d > shen[i].degrees {
		i++
	}
	a, b := shen[i-1], shen[i]
	t := (d - a.degrees) / (b.degrees - a.degrees)
	return unit.Ratio(a.ce + t*(b.ce-a.ce)), unit.Length(a.khM + t*(b.khM-a.khM)), nil
}

// VNotch is the flow over a fully contracted V-notch, by Kindsvater and Shen:
//
//	Q = Ce (8/15) sqrt(2g) tan(angle/2) (h + kh)^2.5
//
// for an angle of 20 to 100 degrees and a head of 50 mm and more (under 0.2 ft
// the sheet may cling to the plate).
func VNotch(head unit.Head, angle unit.Angle) (unit.Flow, error) {
	ce, kh, err := VNotchCoefficients(angle)
	if err = cmp.Or(err, notNegative("head", head, unit.KindDepth)); err != nil || head == 0 {
		return 0, err
	}
	return TriangularNotch(ce, head+kh, angle)
}

// TriangularNotch is the plain formula with a coefficient of discharge:
// Q = Cd (8/15) sqrt(2g) tan(angle/2) H^2.5, for an angle above 0 and below 180
// degrees.
func TriangularNotch(cd unit.Ratio, head unit.Head, angle unit.Angle) (unit.Flow, error) {
	err := cmp.Or(
		positive("cd", cd, unit.KindRatio),
		notNegative("head", head, unit.KindDepth),
		within("angle", angle, 0, 179*unit.Degree, unit.KindAngle),
	)
	if err != nil {
		return 0, err
	}
	h := float64(head)
	return unit.Flow(8.0 / 15 * float64(cd) * math.Sqrt(2*unit.StandardGravity) * math.Tan(float64(angle)/2) * h * h * math.Sqrt(h)), nil
}
