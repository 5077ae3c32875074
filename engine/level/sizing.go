package level

import (
	"cmp"
	"math"

	"plashet/engine/unit"
)

// HiddenBasin gives the size of a basin filled with stone or crates:
// (transit + what must stay over the pump + reserve) / void, all three as
// volumes of water from 0 up, void above 0 to 1 (about 0.3 to 0.4 for clean
// stone, 0.9 and more for crates: trade practice). Source: trade practice; the
// balance of water.
func HiddenBasin(transit, pump, reserve unit.Volume, void unit.Ratio) (unit.Volume, error) {
	if err := cmp.Or(
		notNegative("", "transit", transit, unit.KindWater),
		notNegative("", "pump minimum", pump, unit.KindWater),
		notNegative("", "reserve", reserve, unit.KindWater),
		positive("", "void", void, unit.KindPercent),
		within("", "void", void, 0, 1, unit.KindPercent),
	); err != nil {
		return 0, err
	}
	return (transit + pump + reserve) / unit.Volume(void), nil
}

// MinSubmergence gives the depth of water over a free intake below which a
// whirl may draw air: S = D + 0.574 Q / D^1.5, S and D in inches, Q in US gpm.
// Bore above 0, flow from 0 up. The pump's sheet, where it asks for more, goes
// first. Source: ANSI/HI 9.8 as secondary pages give it (not read in the
// standard).
func MinSubmergence(bore unit.Length, q unit.Flow) (unit.Length, error) {
	if err := cmp.Or(positive("", "bore", bore, unit.KindBore), notNegative("", "flow", q, unit.KindFlow)); err != nil {
		return 0, err
	}
	d := float64(bore / unit.Inch)
	return unit.Length(d+0.574*float64(q/unit.USGallonPerMinute)/(d*math.Sqrt(d))) * unit.Inch, nil
}
