package unit

import (
	"math"
	"strings"
)

// unitDef is one unit that can be written. SI = (x - offset) × mul / div.
type unitDef struct {
	name     string // as printed, and as Reading.Unit names it
	dim      Dim
	mul, div float64
	offset   float64
	coarse   bool    // a point before three digits may group thousands
	grouped  bool    // a comma before three digits groups thousands in every system
	imperial string  // the imperial unit of the same name, when there is one
	lower    string  // names of the units that may follow in one quantity (feet, inches), between spaces
	density  float64 // kg/m³ of water that the unit assumes, for columns of water
}

// si converts a number in this unit.
func (u *unitDef) si(x float64) float64 { return (x - u.offset) * u.mul / u.div }

// number converts from SI to this unit.
func (u *unitDef) number(si float64) float64 { return si*u.div/u.mul + u.offset }

// mayPrecede tells whether the other unit may follow in one quantity, as
// inches follow feet.
func (u *unitDef) mayPrecede(v *unitDef) bool {
	for name := range strings.FieldsSeq(u.lower) {
		if name == v.name {
			return true
		}
	}
	return false
}

// newUnit makes a unit of a factor to SI. The factor is kept as a fraction of
// whole numbers where it is one (254/10000 for the inch), so that 58 mm is
// 0.058 and not 0.058000000000000003.
func newUnit(name string, dim Dim, si float64) unitDef {
	u := unitDef{name: name, dim: dim, mul: si, div: 1}
	for _, part := range [...]float64{1, 60, 3600, 86400} {
		for div := part; div <= 1e15; div *= 10 {
			mul := math.Round(si * div)
			if mul >= 1 && mul < 1<<53 && math.Abs(mul/div-si) <= si*0x1p-52 {
				u.mul, u.div = mul, div
				return u
			}
		}
	}
	return u
}

// unitRow is one unit with its other spellings: lower case, without spaces and
// dots, "per" as a slash.
type unitRow struct {
	unitDef
	spellings string
}

func row(name string, dim Dim, si float64, spellings string) unitRow {
	return unitRow{newUnit(name, dim, si), spellings}
}

// usual marks a unit of countries that write a decimal point, or one that
// nobody divides by a thousand (mm, L/h): "1,410" of it is 1410.
func (r unitRow) usual() unitRow { r.grouped = true; return r }

// inThousands marks a unit so small that values in thousands are everyday and
// thousandths of it are not.
func (r unitRow) inThousands() unitRow { r.coarse = true; return r }

func (r unitRow) then(lower string) unitRow { r.lower = lower; return r }

func (r unitRow) orImperial(name string) unitRow { r.imperial = name; return r }

func (r unitRow) from(offset float64) unitRow { r.offset = offset; return r }

// ofWater makes a pressure unit of a column of conventional water.
func ofWater(name string, height Length, spellings string) unitRow {
	r := row(name, DimPressure, float64(height)*ConventionalWaterDensity*StandardGravity, spellings)
	r.density = ConventionalWaterDensity
	return r
}

// unitRows is the table of units. Squares, cubes and quotients of these are
// found by composition (lookup.go) and stand here only where the trade has an
// abbreviation or prints them.
//
//nolint:misspell // American spellings are read too.
var unitRows = []unitRow{
	row("in", DimLength, float64(Inch), "inch inches ins").usual(),
	row("ft", DimLength, float64(Foot), "foot feet").usual().then("in"),
	row("yd", DimLength, float64(Yard), "yard yards yds").usual().then("ft"),
	row("mm", DimLength, float64(Millimetre), "millimetre millimetres millimeter millimeters").usual().inThousands(),
	row("cm", DimLength, float64(Centimetre), "centimetre centimetres centimeter centimeters").then("mm"),
	row("m", DimLength, float64(Metre), "metre metres meter meters mtr").then("cm mm"),
	row("km", DimLength, 1000, "kilometre kilometres kilometer kilometers"),
	row("µm", DimLength, 1e-6, "um micron microns micrometre micrometer"),
	row("mil", DimLength, float64(Inch)/1000, "mils thou"),
	row("mile", DimLength, 5280*float64(Foot), "miles mi").usual(),

	row("ft²", DimArea, float64(SquareFoot), "sf sqft").usual(),
	row("m²", DimArea, float64(SquareMetre), "sqm"),
	row("acre", DimArea, 43560*float64(SquareFoot), "acres").usual(),
	row("ha", DimArea, 10000, "hectare hectares"),

	row("gal", DimVolume, float64(USGallon), "gals gallon gallons").usual().inThousands().orImperial("imp gal"),
	row("quart", DimVolume, float64(USQuart), "quarts qt qts").usual().orImperial("imp quart"),
	row("pint", DimVolume, float64(USPint), "pints pt pts").usual().orImperial("imp pint"),
	row("fl oz", DimVolume, float64(USFluidOunce), "fluidounce fluidounces").usual().orImperial("imp fl oz"),
	row("imp gal", DimVolume, float64(ImperialGallon), "").usual().inThousands(),
	row("imp quart", DimVolume, float64(ImperialGallon)/4, "").usual(),
	row("imp pint", DimVolume, float64(ImperialGallon)/8, "").usual(),
	row("imp fl oz", DimVolume, float64(ImperialGallon)/160, "").usual(),
	row("ft³", DimVolume, float64(CubicFoot), "cf cuft").usual(),
	row("yd³", DimVolume, float64(CubicYard), "cy cuyd").usual(),
	row("m³", DimVolume, float64(CubicMetre), "cum"),
	row("L", DimVolume, float64(Litre), "litre litres liter liters ltr ltrs lt").inThousands(),
	row("mL", DimVolume, 1e-6, "millilitre millilitres milliliter milliliters cc").usual().inThousands(),

	row("gpm", DimFlow, float64(USGallonPerMinute), "gal/min gallons/minute gallon/minute").usual().orImperial("imp gpm"),
	row("gph", DimFlow, float64(USGallonPerHour), "gal/h gal/hr gallons/hour gallon/hour").usual().inThousands().orImperial("imp gph"),
	row("gpd", DimFlow, float64(USGallon)/86400, "gal/d gal/day gallons/day").usual().inThousands().orImperial("imp gpd"),
	row("imp gpm", DimFlow, float64(ImperialGallonPerMinute), "igpm").usual(),
	row("imp gph", DimFlow, float64(ImperialGallonPerHour), "igph").usual().inThousands(),
	row("imp gpd", DimFlow, float64(ImperialGallon)/86400, "igpd").usual().inThousands(),
	row("L/h", DimFlow, float64(LitrePerHour), "lph l/hr litres/hour liters/hour").usual().inThousands(),
	row("L/min", DimFlow, float64(LitrePerMinute), "lpm litres/minute liters/minute"),
	row("L/s", DimFlow, float64(LitrePerSecond), "lps l/sec litres/second liters/second"),
	row("m³/h", DimFlow, float64(CubicMetrePerHour), "m3/hr cmh"),
	row("m³/s", DimFlow, float64(CubicMetrePerSecond), "m3/sec"),
	row("ft³/s", DimFlow, float64(CubicFootPerSecond), "cfs ft3/sec").usual(),

	row("Pa", DimPressure, float64(Pascal), "pascal pascals n/m2").usual().inThousands(),
	row("hPa", DimPressure, 100, "mbar millibar"),
	row("kPa", DimPressure, float64(Kilopascal), "kilopascal"),
	row("MPa", DimPressure, 1e6, "megapascal"),
	row("bar", DimPressure, float64(Bar), "bars"),
	row("psi", DimPressure, float64(PSI), "psig lb/in2 lbf/in2 lbs/in2").usual(),
	ofWater("ftH2O", Foot, "ftofwater ftofhead fthead ftwater feetofwater feetofhead feethead footofwater footofhead").usual(),
	ofWater("inH2O", Inch, "inofwater inofhead inwater inchesofwater inchesofhead inwc inwg").usual(),
	ofWater("mH2O", Metre, "mofwater mofhead mhead mwater metresofwater metersofwater metresofhead metersofhead mwc mwg"),
	ofWater("mmH2O", Millimetre, "mmofwater mmwater mmwc mmwg").usual(),

	row("ft/s", DimSpeed, float64(FootPerSecond), "fps ft/sec feet/second").usual(),
	row("m/s", DimSpeed, float64(MetrePerSecond), "m/sec metres/second meters/second"),

	row("W", DimPower, float64(Watt), "watt watts").usual().inThousands(),
	row("kW", DimPower, float64(Kilowatt), "kilowatt kilowatts"),
	row("hp", DimPower, float64(Horsepower), "horsepower bhp"),

	row("kWh", DimEnergy, float64(KilowattHour), "kilowatthour kilowatthours"),
	row("Wh", DimEnergy, 3600, "watthour watthours").usual().inThousands(),
	row("J", DimEnergy, float64(Joule), "joule joules").usual().inThousands(),
	row("kJ", DimEnergy, 1000, "kilojoule kilojoules"),

	row("°", DimAngle, float64(Degree), "degree degrees degs"),
	row("rad", DimAngle, float64(Radian), "radian radians"),

	row("°C", DimTemperature, 1, "c celsius degreec degreesc degreescelsius centigrade"),
	row("°F", DimTemperature, 5.0/9, "f fahrenheit degreef degreesf degreesfahrenheit").from(32),
	row("K", DimTemperature, 1, "kelvin").from(273.15),

	row("s", DimDuration, float64(Second), "sec secs second seconds"),
	row("min", DimDuration, float64(Minute), "mins minute minutes").then("s"),
	row("h", DimDuration, float64(Hour), "hr hrs hour hours").then("min s"),
	row("d", DimDuration, float64(Day), "day days").then("h min"),
	row("wk", DimDuration, 7*float64(Day), "week weeks").then("d"),

	row("g", DimMass, 0.001, "gram grams").usual().inThousands(),
	row("kg", DimMass, float64(Kilogram), "kilo kilos kilogram kilograms kgs"),
	row("lb", DimMass, float64(Pound), "lbs pound pounds").usual().then("oz"),
	row("oz", DimMass, float64(Pound)/16, "ounce ounces").usual(),
	row("ton", DimMass, float64(ShortTon), "tons shortton shorttons").usual().orImperial("long ton"),
	row("long ton", DimMass, 2240*float64(Pound), "longtons").usual(),
	row("t", DimMass, float64(MetricTon), "tonne tonnes metricton metrictons"),

	row("V", DimVoltage, float64(Volt), "volt volts vac vdc"),
	row("kV", DimVoltage, 1000, ""),
	row("A", DimCurrent, float64(Ampere), "amp amps ampere amperes"),
	row("mA", DimCurrent, 0.001, "milliamp milliamps").usual(),

	row("%", DimNone, 0.01, "percent pct /cent"),
	row("gph/in", DimFlowPerWidth, float64(USGallonPerHour)/float64(Inch), "").usual(),
	row("L/h per cm", DimFlowPerWidth, float64(LitrePerHour)/float64(Centimetre), "").usual(),
	row("m²/s", DimFlowPerWidth, 1, ""),
}

// unitBySpelling finds a row of the table by the normal form of its name or of
// one of its other spellings. A spelling stands for one unit only (tested).
var unitBySpelling = func() map[string]*unitDef {
	m := map[string]*unitDef{}
	for i := range unitRows {
		r := &unitRows[i]
		m[normalName(r.name)] = &r.unitDef
		for s := range strings.FieldsSeq(r.spellings) {
			m[s] = &r.unitDef
		}
	}
	return m
}()

// plainNumber is the unit of numbers without unit.
var plainNumber = unitDef{dim: DimNone, mul: 1, div: 1}

// tableUnit gives the unit that the table of kinds names.
func tableUnit(name string) *unitDef {
	if name == "" {
		return &plainNumber
	}
	return unitBySpelling[normalName(name)]
}

// Units that the code names.
var (
	inch     = tableUnit("in")
	foot     = tableUnit("ft")
	shortTon = tableUnit("ton")
	degree   = tableUnit("°")
	day      = tableUnit("d")
	gph      = tableUnit("gph")
	litreMin = tableUnit("L/min")
)

// kindUnits holds the unit of each kind in both systems.
var kindUnits = func() (units [kindEnd][2]*unitDef) {
	for k := range units {
		units[k][US] = tableUnit(kinds[k].us.unit)
		units[k][Metric] = tableUnit(kinds[k].metric.unit)
	}
	return units
}()

// unit gives the kind's unit in that system.
func (k Kind) unit(s System) *unitDef {
	if k >= kindEnd {
		k = KindNone
	}
	return kindUnits[k][s.Base()]
}
