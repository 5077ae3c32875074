package unit

import (
	"math"
	"strconv"
)

// dash stands for a number that is none (not a number, or infinite).
const dash = "—"

// Format prints the value in the units of the system, to the kind's step:
// `4' 7-1/2"`, "1,410 mm", "55.0 gpm", "9.33 ft". Halves are rounded up on the
// magnitude, the marks are the system's; zero has no sign; what is not finite is a dash. Parse reads what
// Format prints, to within Step. A bound stands with its sign, "> 83.0 gpm",
// which is no figure and is not read; package words says it in words.
func (v Value) Format(s System) string {
	var buf [48]byte
	return string(v.appendTo(buf[:0], s))
}

// Number gives the printed number and its unit apart, as a table needs them.
// The unit is "" for feet and inches, which carry their marks in the number.
func (v Value) Number(s System) (num, unit string) {
	var buf [48]byte
	b, unit := v.appendNumber(buf[:0], s)
	return string(b), unit
}

// Both gives the system's form with the other system's in brackets, or the one
// alone when they are the same.
func (v Value) Both(s System) string {
	if bound := v.Bound; bound != Exact {
		v.Bound = Exact
		return bound.sign() + v.Both(s)
	}
	var buf [96]byte
	b := v.appendTo(buf[:0], s)
	n := len(b)
	b = append(b, " ("...)
	start := len(b)
	b = v.appendTo(b, other(s))
	if string(b[start:]) == string(b[:n]) {
		return string(b[:n])
	}
	return string(append(b, ')'))
}

func other(s System) System {
	if s.Is(Metric) {
		return s.In(US)
	}
	return s.In(Metric)
}

// FormatFlow prints a flow with the second unit that the trade talks in:
// "55.0 gpm (3,300 gph)", "12,492 L/h (208.2 L/min)".
func FormatFlow(f Flow, s System) string {
	second, decimals := gph, 0
	if s.Is(Metric) {
		second, decimals = litreMin, 1
	}
	v := Value{SI: float64(f), Kind: KindFlow}
	if math.IsNaN(v.SI) || math.IsInf(v.SI, 0) {
		return dash
	}
	b := append(v.appendTo(nil, s), " ("...)
	var buf [48]byte
	b = s.Marks().append(b, appendDecimal(buf[:0], second.number(v.SI), decimals, fixed))
	b = append(b, ' ')
	b = append(b, second.name...)
	return string(append(b, ')'))
}

// Step is the step to which Format prints this value, in SI.
func (v Value) Step(s System) float64 {
	sh := v.Kind.in(s)
	u := v.Kind.unit(s)
	n := math.Pow10(-sh.decimals)
	switch sh.style {
	case tape:
		u, n = inch, 1/float64(sh.decimals)
	case duration:
		u = durationUnit(v.SI, sh.decimals)
	}
	return n * u.mul / u.div
}

func (v Value) appendTo(dst []byte, s System) []byte {
	dst, unit := v.appendNumber(dst, s)
	if unit == "" {
		return dst
	}
	if unit != "%" && unit != "°" {
		dst = append(dst, ' ')
	}
	return append(dst, unit...)
}

func (v Value) appendNumber(dst []byte, s System) (b []byte, unit string) {
	if math.IsNaN(v.SI) || math.IsInf(v.SI, 0) {
		return append(dst, dash...), ""
	}
	dst = append(dst, v.Bound.sign()...)
	sh := v.Kind.in(s)
	u := v.Kind.unit(s)
	switch sh.style {
	case tape:
		var buf [48]byte
		return s.Marks().append(dst, appendTape(buf[:0], v.SI, sh.decimals)), ""
	case duration:
		u = durationUnit(v.SI, sh.decimals)
	}
	var buf [48]byte
	return s.Marks().append(dst, appendDecimal(buf[:0], u.number(v.SI), sh.decimals, sh.style)), u.name
}

// durationUnit is the unit in which a duration is spoken of: seconds below two
// minutes, minutes below two hours, hours below five days, then days. The
// rounded number decides, so that what is printed reads back to the same unit.
func durationUnit(si float64, decimals int) *unitDef {
	for _, c := range &durationSteps {
		if roundHalfUp(math.Abs(c.unit.number(si))*math.Pow10(decimals)) < c.below*math.Pow10(decimals) {
			return c.unit
		}
	}
	return day
}

var durationSteps = [...]struct {
	unit  *unitDef
	below float64
}{{tableUnit("s"), 120}, {tableUnit("min"), 120}, {tableUnit("h"), 120}}

// roundHalfUp rounds a number that is not negative. Half a step counts as half
// even when the way through SI left it some 1e-12 short: 9.335 ft is 9.34.
func roundHalfUp(x float64) float64 {
	const noise, most = 1e-12, 1e-3
	whole := math.Floor(x)
	if x-whole >= 0.5-min(noise*max(x, 1), most) {
		return whole + 1
	}
	return whole
}

// appendDecimal prints a finite number.
func appendDecimal(dst []byte, x float64, decimals int, st style) []byte {
	scaled := roundHalfUp(math.Abs(x) * math.Pow10(decimals))
	if x < 0 && scaled > 0 {
		dst = append(dst, '-')
	}
	var buf [32]byte
	digits := buf[:0]
	if scaled < 1<<63 {
		digits = strconv.AppendUint(digits, uint64(scaled), 10)
	} else {
		digits = strconv.AppendFloat(digits, scaled, 'f', 0, 64)
	}
	for len(digits) <= decimals {
		digits = append(digits, 0)
		copy(digits[1:], digits)
		digits[0] = '0'
	}
	whole, fraction := digits[:len(digits)-decimals], digits[len(digits)-decimals:]
	if st != fixed {
		for len(fraction) > 0 && fraction[len(fraction)-1] == '0' {
			fraction = fraction[:len(fraction)-1]
		}
		dst = append(dst, whole...)
	} else {
		dst = appendGrouped(dst, whole)
	}
	if len(fraction) > 0 {
		dst = append(append(dst, '.'), fraction...)
	}
	return dst
}

// appendGrouped sets commas between groups of thousands.
func appendGrouped(dst, digits []byte) []byte {
	for i, c := range digits {
		if i > 0 && (len(digits)-i)%3 == 0 {
			dst = append(dst, ',')
		}
		dst = append(dst, c)
	}
	return dst
}

// In gives the value as a bare number in the unit that its kind is shown in
// (UnitName), not rounded: for tables that other programs reckon with. A bound
// and what is not finite are given as they are.
func (v Value) In(s System) float64 { return v.Kind.unit(s).number(v.SI) }
