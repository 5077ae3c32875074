package hydro

import (
	"cmp"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// SourceWaterPower names the formula of the power in the water.
var SourceWaterPower = trace.Source{
	Title: "P = density g Q H; in US units Q H/3960 hp (gpm, ft)",
	Basis: trace.BasisPublished,
	Note:  "Hydraulic Institute, Engineering Data Library, pump curve data table",
}

// WaterPower is the power that a flow takes up with a head: density g Q H. It
// has the sign of the product.
func WaterPower(q unit.Flow, h unit.Head, w Water) unit.Power {
	return unit.Power(w.DensityKgM3 * unit.StandardGravity * float64(q) * float64(h))
}

// ShaftPower is the power that a pump of an efficiency needs for a power in
// the water: water power / efficiency. The efficiency must be above 0 and at
// most 1, the power at least zero.
func ShaftPower(water unit.Power, efficiency unit.Ratio) (unit.Power, error) {
	err := cmp.Or(
		notNegative("power", water, unit.KindPower),
		positive("efficiency", efficiency, unit.KindPercent),
		within("efficiency", efficiency, 0, 1, unit.KindPercent),
	)
	if err != nil {
		return 0, err
	}
	return water / unit.Power(efficiency), nil
}

// Efficiency is the part of the power drawn that ends up in the water: water
// power / power drawn (wire to water, when the power is electrical). The power
// drawn must be above zero. A result above 1 means wrong figures, and is given.
func Efficiency(water, drawn unit.Power) (unit.Ratio, error) {
	err := cmp.Or(
		notNegative("power", water, unit.KindPower),
		positive("drawn", drawn, unit.KindPower),
	)
	if err != nil {
		return 0, err
	}
	return unit.Ratio(water / drawn), nil
}

// YearlyEnergy is the energy drawn in a year: power × hours a day × days a
// year, for 0 to 24 hours and 0 to 366 days.
func YearlyEnergy(p unit.Power, perDay unit.Duration, days unit.Ratio) (unit.Energy, error) {
	err := cmp.Or(
		notNegative("power", p, unit.KindPower),
		within("hoursPerDay", perDay, 0, unit.Day, unit.KindHours),
		within("daysPerYear", days, 0, 366, unit.KindCount),
	)
	if err != nil {
		return 0, err
	}
	return unit.Energy(float64(p) * float64(perDay) * float64(days)), nil
}

// Cost is what an energy costs at a tariff for one kWh: E/3.6 MJ × tariff, not
// rounded. The energy must be at least zero; an energy too great for money
// gives unit.ErrFactor.
func Cost(e unit.Energy, tariff unit.Money) (unit.Money, error) {
	if err := notNegative("energy", e, unit.KindEnergy); err != nil {
		return unit.Money{}, err
	}
	return tariff.Times(float64(e / unit.KilowattHour))
}

// Suction is what a pump's inlet sees.
type Suction struct {
	Atmosphere unit.Pressure // absolute, 101.325 kPa at sea level
	Gauge      unit.Pressure // gauge pressure over the water or at the gauge; 0 for an open surface
	Static     unit.Length   // water surface, or gauge, above the pump's inlet; negative for a lift
	Friction   unit.Head     // loss on the way to the inlet
	Speed      unit.Speed    // of the water at the gauge; 0 for an open surface
	Reserve    unit.Head     // kept back
}

// NPSHAvailable is the net positive suction head available:
//
//	NPSHa = (pa + pg - pv)/(density g) + hs - hf + v²/(2g) - reserve
//
// pv is the water's vapour pressure. The atmosphere must be above zero, the
// loss and the reserve at least zero. It may come out negative: then the water
// boils before it reaches the pump.
func NPSHAvailable(s Suction, w Water) (unit.Head, error) {
	err := cmp.Or(
		positive("atmosphere", s.Atmosphere, unit.KindPressure),
		notNegative("friction", s.Friction, unit.KindHead),
		notNegative("reserve", s.Reserve, unit.KindHead),
		w.check(),
	)
	if err == nil && !finite(s.Gauge+unit.Pressure(s.Static)+unit.Pressure(s.Speed)) {
		err = fail(CodeNotFinite, trace.Str("name", "suction"))
	}
	if err != nil {
		return 0, err
	}
	velocityHead := unit.Head(float64(s.Speed) * float64(s.Speed) / (2 * unit.StandardGravity))
	return w.HeadOf(s.Atmosphere+s.Gauge-w.VapourPressure) + s.Static - s.Friction + velocityHead - s.Reserve, nil
}
