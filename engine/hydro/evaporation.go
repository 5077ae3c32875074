package hydro

import (
	"cmp"
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Where the evaporation formulas come from.
var (
	SourcePenman = trace.Source{
		Title: "Penman's method for free water, San Diego State University, CIVE 445 fall 2006, midterm 1 problem 3",
		Basis: trace.BasisPublished,
		Note:  "a lake's formula: a small pond with falls loses more",
	}
	SourceReferenceET = trace.Source{
		Title: "Allen and others, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56 (1998), equation 6",
		Basis: trace.BasisMemory,
		Note:  "grass, not open water",
	}
)

// OpenWater is a day's mean weather over a pond.
type OpenWater struct {
	Temperature     unit.Temperature // of the air, -20 to 50 °C
	NetRadiationWM2 float64          // W/m² that stay in the water, day's mean, -200 to 500
	Wind            unit.Speed       // 2 m above the water, 0 to 50 m/s
	Humidity        unit.Ratio       // relative, 0 to 1
	Atmosphere      unit.Pressure    // 50 to 110 kPa
}

// PenmanDepth is the depth that evaporates from open water in a day:
//
//	E  = (alpha En + Ea)/(alpha + 1), alpha = Delta/gamma
//	En = Qn/(density L), L = 2.501 - 2.361e-3 T MJ/kg
//	Ea = (0.013 + 0.00016 v) e° (1 - RH)   in cm/day, v in km/day, e° in mbar
//
// e°, Delta and gamma as in FAO-56, equations 11, 13 and 8. Outside the ranges
// of OpenWater it gives CodeRange. It is negative when the water takes up dew.
func PenmanDepth(o OpenWater) (unit.Length, error) {
	err := cmp.Or(
		within("temperature", o.Temperature, -20, 50, unit.KindTemperature),
		within("netRadiation", unit.Ratio(o.NetRadiationWM2), -200, 500, unit.KindRatio),
		within("wind", o.Wind, 0, 50, unit.KindSpeed),
		within("humidity", o.Humidity, 0, 1, unit.KindPercent),
		within("atmosphere", o.Atmosphere, 50*unit.Kilopascal, 110*unit.Kilopascal, unit.KindPressure),
	)
	if err != nil {
		return 0, err
	}
	const densityKgM3, secondsPerDay = 1000.0, 86400.0
	t := float64(o.Temperature)
	latentJKg := (2.501 - 2.361e-3*t) * 1e6
	netM := o.NetRadiationWM2 * secondsPerDay / (densityKgM3 * latentJKg)
	kmPerDay := float64(o.Wind) * secondsPerDay / 1000
	const mbarPerKPa, mPerCm = 10.0, 0.01
	aeroM := (0.013 + 0.00016*kmPerDay) * mbarPerKPa * vapourKPa(t) * (1 - float64(o.Humidity)) * mPerCm
	alpha := vapourSlopeKPa(t) / psychrometricKPa(float64(o.Atmosphere)/1000)
	return unit.Length((alpha*netM + aeroM) / (alpha + 1)), nil
}

// vapourKPa is the saturation vapour pressure over t °C, FAO-56 equation 11.
func vapourKPa(t float64) float64 { return 0.6108 * math.Exp(17.27*t/(t+237.3)) }

// vapourSlopeKPa is its slope for each kelvin, FAO-56 equation 13.
func vapourSlopeKPa(t float64) float64 { return 4098 * vapourKPa(t) / ((t + 237.3) * (t + 237.3)) }

// psychrometricKPa is the psychrometric constant for a pressure, FAO-56
// equation 8.
func psychrometricKPa(kPa float64) float64 { return 0.665e-3 * kPa }

// Day is a day's weather at a station, for the grass reference.
type Day struct {
	Highest, Lowest  unit.Temperature // of the air, -20 to 55 °C
	Humidest, Driest unit.Ratio       // greatest and least relative humidity, 0 to 1
	Wind             unit.Speed       // 0 to 50 m/s
	WindAt           unit.Length      // height of the wind's measurement, 0.5 to 50 m
	Sun              unit.Duration    // bright sunshine, 0 to 24 h
	Latitude         unit.Angle       // north positive, -65 to 65 degrees
	Elevation        unit.Length      // -500 to 5000 m
	DayOfYear        int              // 1 to 366
}

func (d Day) check() error {
	const widest = 65 * unit.Degree
	return cmp.Or(
		within("highest", d.Highest, -20, 55, unit.KindTemperature),
		within("lowest", d.Lowest, -20, d.Highest, unit.KindTemperature),
		within("humidest", d.Humidest, 0, 1, unit.KindPercent),
		within("driest", d.Driest, 0, d.Humidest, unit.KindPercent),
		within("wind", d.Wind, 0, 50, unit.KindSpeed),
		within("windAt", d.WindAt, 0.5, 50, unit.KindDistance),
		within("sun", d.Sun, 0, unit.Day, unit.KindHours),
		within("latitude", d.Latitude, -widest, widest, unit.KindAngle),
		within("elevation", d.Elevation, -500, 5000, unit.KindElevation),
		within("dayOfYear", unit.Ratio(d.DayOfYear), 1, 366, unit.KindCount),
	)
}

// ReferenceDepth is the evapotranspiration of the grass reference in a day by
// FAO Penman-Monteith (FAO-56 equation 6, with equations 7, 8, 11 to 13, 17,
// 21 to 25, 34, 35, 37 to 40, 47, no soil heat flux), as a depth:
//
//	ET0 = (0.408 Delta Rn + gamma 900/(T+273) u2 (es - ea))
//	      / (Delta + gamma (1 + 0.34 u2))   in mm/day
//
// It counts for grass; open shallow water is often taken as 1.05 of it. Outside
// the ranges of Day it gives CodeRange.
func ReferenceDepth(d Day) (unit.Length, error) {
	if err := d.check(); err != nil {
		return 0, err
	}
	high, low := float64(d.Highest), float64(d.Lowest)
	mean, z := (high+low)/2, float64(d.Elevation)
	gamma := psychrometricKPa(101.3 * math.Pow((293-0.0065*z)/293, 5.26))
	u2 := float64(d.Wind) * 4.87 / math.Log(67.8*float64(d.WindAt)-5.42)
	es := (vapourKPa(high) + vapourKPa(low)) / 2
	ea := (vapourKPa(low)*float64(d.Humidest) + vapourKPa(high)*float64(d.Driest)) / 2
	rn := d.netRadiationMJ(ea)
	delta := vapourSlopeKPa(mean)
	mm := (0.408*delta*rn + gamma*900/(mean+273)*u2*(es-ea)) / (delta + gamma*(1+0.34*u2))
	return unit.Length(mm) * unit.Millimetre, nil
}

// netRadiationMJ is the day's net radiation in MJ/m², ea the actual vapour
// pressure in kPa.
func (d Day) netRadiationMJ(ea float64) float64 {
	const solarMJ, albedo, stefanMJ = 0.0820, 0.23, 4.903e-9
	year := 2 * math.Pi * float64(d.DayOfYear) / 365
	phi := float64(d.Latitude)
	distance := 1 + 0.033*math.Cos(year)
	declination := 0.409 * math.Sin(year-1.39)
	sunset := math.Acos(-math.Tan(phi) * math.Tan(declination))
	ra := 24 * 60 / math.Pi * solarMJ * distance *
		(sunset*math.Sin(phi)*math.Sin(declination) + math.Cos(phi)*math.Cos(declination)*math.Sin(sunset))
	daylight := 24 / math.Pi * sunset
	rs := (0.25 + 0.5*min(float64(d.Sun/unit.Hour)/daylight, 1)) * ra
	clear := (0.75 + 2e-5*float64(d.Elevation)) * ra
	fourth := func(t float64) float64 { return math.Pow(t+zeroCelsiusK+0.01, 4) } // FAO-56 rounds 273.15 to 273.16
	long := stefanMJ * (fourth(float64(d.Highest)) + fourth(float64(d.Lowest))) / 2 *
		(0.34 - 0.14*math.Sqrt(ea)) * (1.35*rs/clear - 0.35)
	return (1-albedo)*rs - long
}
