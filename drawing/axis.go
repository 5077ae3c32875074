package drawing

import (
	"math"
	"strconv"
	"strings"

	"plashet/engine/unit"
)

// axis maps a quantity to a side of a plot. The quantity is in SI; ticks stand
// at round numbers of the unit it is shown in.
type axis struct {
	from, to float64 // mm on the sheet at least and at most
	least    float64 // SI, a tick
	most     float64 // SI, a tick
	step     float64 // SI
	one      float64 // SI in one of the unit shown
	name     string  // of that unit
	marks    unit.Marks
}

// at gives where on the sheet a value lies, in mm.
func (a axis) at(v float64) float64 { return a.from + (a.to-a.from)*(v-a.least)/(a.most-a.least) }

// newAxis makes the axis from 0 to a tick at or above most, with at most n
// steps, its numbers in the marks of a system.
func newAxis(s unit.System, from, to, most, one float64, name string, n int) axis {
	a := axis{from: from, to: to, one: one, name: name, marks: s.Marks()}
	a.step = round125(most/one/float64(n)) * one
	a.most = a.step * math.Max(1, math.Ceil(most/a.step-1e-9))
	return a
}

// newSpan makes the axis from a tick at or below least to one at or above most.
func newSpan(s unit.System, from, to, least, most, one float64, name string, n int) axis {
	a := axis{from: from, to: to, one: one, name: name, marks: s.Marks()}
	a.step = round125((most-least)/one/float64(n)) * one
	a.least = a.step * math.Floor(least/a.step+1e-9)
	a.most = a.step * math.Ceil(most/a.step-1e-9)
	if a.most <= a.least {
		a.most = a.least + a.step
	}
	return a
}

// round125 gives the least of 1, 2 or 5 times a power of ten that is not below v.
func round125(v float64) float64 {
	if !(v > 0) || math.IsInf(v, 0) {
		return 1
	}
	p := math.Pow10(int(math.Floor(math.Log10(v))))
	for _, m := range [...]float64{1, 2, 5} {
		if m*p >= v*(1-1e-9) {
			return m * p
		}
	}
	return 10 * p
}

// ticks gives the values of the ticks in SI and as they are written.
func (a axis) ticks() (si []float64, written []string) {
	step := a.step / a.one
	decimals := max(0, -int(math.Floor(math.Log10(step)+1e-9)))
	for i, last := int(math.Round(a.least/a.step)), int(math.Round(a.most/a.step)); i <= last; i++ {
		si = append(si, float64(i)*a.step)
		written = append(written, minus(a.marks.Write(grouped(strconv.FormatFloat(float64(i)*step, 'f', decimals, 64)))))
	}
	return si, written
}

// grouped sets commas between thousands, as package unit prints them.
func grouped(s string) string {
	whole, rest, _ := strings.Cut(s, ".")
	for i := len(whole) - 3; i > 0 && whole[i-1] != '-'; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if rest != "" {
		return whole + "." + rest
	}
	return whole
}

// flowUnit and the others give the unit a quantity is shown in.
func flowUnit(s unit.System) (one float64, name string) {
	if s.Is(unit.Metric) {
		return float64(unit.LitrePerHour), unit.KindFlow.UnitName(s)
	}
	return float64(unit.USGallonPerMinute), unit.KindFlow.UnitName(s)
}

func headUnit(s unit.System) (one float64, name string) {
	if s.Is(unit.Metric) {
		return float64(unit.Metre), unit.KindHead.UnitName(s)
	}
	return float64(unit.Foot), unit.KindHead.UnitName(s)
}

// depthAxisUnit and durationUnit likewise; a span of time is shown in the unit
// that suits the longest.
func depthAxisUnit(s unit.System) (one float64, name string) {
	if s.Is(unit.Metric) {
		return float64(unit.Millimetre), unit.KindDepth.UnitName(s)
	}
	return float64(unit.Inch), unit.KindDepth.UnitName(s)
}

func durationUnit(longest unit.Duration) (one float64, name string) {
	switch {
	case longest <= 3*unit.Minute:
		return float64(unit.Second), "s"
	case longest <= 3*unit.Hour:
		return float64(unit.Minute), "min"
	}
	return float64(unit.Hour), "h"
}

// trimmed writes a round number without what it does not need.
func trimmed(v float64) string { return grouped(strconv.FormatFloat(v, 'f', -1, 64)) }
