package geom

import "plashet/engine/unit"

// TrapezoidalArea gives the area under taped widths by the trapezoidal rule:
// the sum of (w_i + w_i+1)/2 times the distance between them. Distances must
// grow; widths from 0 up; an *Error otherwise. It is the area of the polygon
// through the taped points; a rounded pond comes out a little small. Source:
// surveying practice.
func TrapezoidalArea(at, width []unit.Length) (unit.Area, error) {
	v, err := trapezoidal(at, width, unit.KindPlan)
	return unit.Area(v), err
}

// TrapezoidalVolume gives the volume from areas of cross sections, likewise:
// average end areas, section by section.
func TrapezoidalVolume(at []unit.Length, area []unit.Area) (unit.Volume, error) {
	v, err := trapezoidal(at, area, unit.KindArea)
	return unit.Volume(v), err
}

// SimpsonArea gives the area under widths taped at even spacing by Simpson's
// rule: s/3 (w_0 + 4 w_1 + 2 w_2 + ... + 4 w_n-1 + w_n), an even number of
// intervals. Spacing above 0, widths from 0 up; an *Error otherwise. Exact for
// cubics; the rule of choice for a rounded edge. Source: Simpson's one-third
// rule, surveying practice.
func SimpsonArea(spacing unit.Length, width []unit.Length) (unit.Area, error) {
	v, err := simpson(spacing, width, unit.KindPlan)
	return unit.Area(v), err
}

// SimpsonVolume gives the volume from areas of cross sections at even spacing,
// likewise.
func SimpsonVolume(spacing unit.Length, area []unit.Area) (unit.Volume, error) {
	v, err := simpson(spacing, area, unit.KindArea)
	return unit.Volume(v), err
}

func trapezoidal[Q unit.Quantity](at []unit.Length, y []Q, k unit.Kind) (float64, error) {
	if len(at) < 2 || len(at) != len(y) {
		return 0, countError(len(y), max(2, len(at)))
	}
	sum := 0.0
	for i := range y {
		if err := notNegativeAt("ordinate", i, y[i], k); err != nil {
			return 0, err
		}
		if !finite(float64(at[i])) {
			return 0, &Error{Code: CodeNotFinite, Name: "at", At: i, Found: plan(float64(at[i]))}
		}
		if i == 0 {
			continue
		}
		if at[i] <= at[i-1] {
			return 0, &Error{Code: CodeOrder, Name: "at", At: i, Found: plan(float64(at[i])), Limit: plan(float64(at[i-1]))}
		}
		sum += float64(y[i]+y[i-1]) / 2 * float64(at[i]-at[i-1])
	}
	return sum, nil
}

func simpson[Q unit.Quantity](spacing unit.Length, y []Q, k unit.Kind) (float64, error) {
	if err := notNegative("spacing", spacing, unit.KindPlan); err != nil {
		return 0, err
	}
	if spacing == 0 {
		return 0, &Error{Code: CodeRange, Name: "spacing", Found: plan(0)}
	}
	if len(y) < 3 {
		return 0, countError(len(y), 3)
	}
	if len(y)%2 == 0 {
		return 0, &Error{Code: CodeIntervals, Name: "intervals", Found: unit.Of(unit.Ratio(len(y)-1), unit.KindCount)}
	}
	sum := 0.0
	for i, v := range y {
		if err := notNegativeAt("ordinate", i, v, k); err != nil {
			return 0, err
		}
		weight := 2.0
		switch {
		case i == 0 || i == len(y)-1:
			weight = 1
		case i%2 == 1:
			weight = 4
		}
		sum += weight * float64(v)
	}
	return sum * float64(spacing) / 3, nil
}
