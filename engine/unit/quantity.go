// Package unit holds the quantities of the job as typed values in SI, reads
// what people write ("4' 7-1/2\"", "55 gpm") and prints it back in the job's
// units. It knows no pond, pump or pipe. Inside every type the number is SI:
// metre, square metre, cubic metre, m³/s, pascal, m/s, watt, joule, radian,
// degree Celsius, second, kilogram. The type is the quantity, a constant is the
// unit: 3*unit.Inch is a Length of 0.0762 m.
//
// Sources of the conversion factors, from memory: the definitions in NIST
// Special Publication 811 (2008), appendix B.8; the US gallon is 231 cubic
// inches, the imperial gallon 4.546 09 litres (UK Units of Measurement
// Regulations 1995). Package checks holds them against two libraries.
package unit

type (
	// Length is in m; also heights, levels and heads of water.
	Length float64
	// Area is in m².
	Area float64
	// Volume is in m³.
	Volume float64
	// Flow is in m³/s.
	Flow float64
	// Pressure is in Pa.
	Pressure float64
	// Speed is in m/s.
	Speed float64
	// Power is in W.
	Power float64
	// Energy is in J.
	Energy float64
	// Angle is in rad.
	Angle float64
	// Temperature is in °C.
	Temperature float64
	// Duration is in s.
	Duration float64
	// Mass is in kg.
	Mass float64
	// Ratio has no unit.
	Ratio float64
	// Voltage is in V.
	Voltage float64
	// Current is in A.
	Current float64
	// FlowPerWidth is in m²/s: flow for each metre of width.
	FlowPerWidth float64
)

// Head is a height of water column; the same thing as a Length.
type Head = Length

// Quantity is any of the types above.
type Quantity interface {
	~float64
	// Dim names the dimension of the quantity.
	Dim() Dim
}

// Dim names a dimension.
type Dim uint8

// String says the dimension in plain words: "length", "flow".
func (d Dim) String() string {
	if int(d) >= len(dimNames) {
		return "unknown dimension"
	}
	return dimNames[d]
}

var dimNames = [...]string{
	DimNone: "number", DimLength: "length", DimArea: "area", DimVolume: "volume", DimFlow: "flow",
	DimPressure: "pressure", DimSpeed: "speed", DimPower: "power", DimEnergy: "energy", DimAngle: "angle",
	DimTemperature: "temperature", DimDuration: "time", DimMass: "weight", DimVoltage: "voltage",
	DimCurrent: "current", DimFlowPerWidth: "flow per width", DimMoney: "amount of money",
}

// The dimensions, one for each type.
const (
	DimNone Dim = iota
	DimLength
	DimArea
	DimVolume
	DimFlow
	DimPressure
	DimSpeed
	DimPower
	DimEnergy
	DimAngle
	DimTemperature
	DimDuration
	DimMass
	DimVoltage
	DimCurrent
	DimFlowPerWidth
	DimMoney
)

// Dim says length.
func (Length) Dim() Dim { return DimLength }

// Dim says area.
func (Area) Dim() Dim { return DimArea }

// Dim says volume.
func (Volume) Dim() Dim { return DimVolume }

// Dim says flow.
func (Flow) Dim() Dim { return DimFlow }

// Dim says pressure.
func (Pressure) Dim() Dim { return DimPressure }

// Dim says speed.
func (Speed) Dim() Dim { return DimSpeed }

// Dim says power.
func (Power) Dim() Dim { return DimPower }

// Dim says energy.
func (Energy) Dim() Dim { return DimEnergy }

// Dim says angle.
func (Angle) Dim() Dim { return DimAngle }

// Dim says temperature.
func (Temperature) Dim() Dim { return DimTemperature }

// Dim says time.
func (Duration) Dim() Dim { return DimDuration }

// Dim says mass.
func (Mass) Dim() Dim { return DimMass }

// Dim says no dimension.
func (Ratio) Dim() Dim { return DimNone }

// Dim says voltage.
func (Voltage) Dim() Dim { return DimVoltage }

// Dim says current.
func (Current) Dim() Dim { return DimCurrent }

// Dim says flow per width.
func (FlowPerWidth) Dim() Dim { return DimFlowPerWidth }

// Units of length, area and volume.
const (
	Metre      Length = 1
	Centimetre Length = 0.01
	Millimetre Length = 0.001
	Inch       Length = 0.0254
	Foot       Length = 0.3048
	Yard       Length = 0.9144

	SquareMetre Area = 1
	SquareFoot  Area = 0.3048 * 0.3048
	SquareInch  Area = 0.0254 * 0.0254

	CubicMetre     Volume = 1
	Litre          Volume = 0.001
	CubicFoot      Volume = 0.3048 * 0.3048 * 0.3048
	CubicYard      Volume = 0.9144 * 0.9144 * 0.9144
	USGallon       Volume = 231 * 0.0254 * 0.0254 * 0.0254
	USQuart        Volume = USGallon / 4
	USPint         Volume = USGallon / 8
	USFluidOunce   Volume = USGallon / 128
	ImperialGallon Volume = 0.00454609
)

// Units of time, flow, pressure and speed.
const (
	Second Duration = 1
	Minute Duration = 60
	Hour   Duration = 3600
	Day    Duration = 86400

	CubicMetrePerSecond     Flow = 1
	CubicMetrePerHour       Flow = 1.0 / 3600
	LitrePerSecond          Flow = 0.001
	LitrePerMinute          Flow = 0.001 / 60
	LitrePerHour            Flow = 0.001 / 3600
	USGallonPerMinute       Flow = Flow(USGallon) / 60
	USGallonPerHour         Flow = Flow(USGallon) / 3600
	ImperialGallonPerMinute Flow = Flow(ImperialGallon) / 60
	ImperialGallonPerHour   Flow = Flow(ImperialGallon) / 3600
	CubicFootPerSecond      Flow = Flow(CubicFoot)

	Pascal     Pressure = 1
	Kilopascal Pressure = 1000
	Bar        Pressure = 100000
	PSI        Pressure = 0.45359237 * StandardGravity / (0.0254 * 0.0254) // pound-force per square inch

	MetrePerSecond Speed = 1
	FootPerSecond  Speed = 0.3048
)

// Units of power, energy, angle and mass.
const (
	Watt         Power  = 1
	Kilowatt     Power  = 1000
	Horsepower   Power  = 550 * 0.3048 * 0.45359237 * StandardGravity // 550 ft·lbf/s
	Joule        Energy = 1
	KilowattHour Energy = 3.6e6

	Radian Angle = 1
	Degree Angle = 3.14159265358979323846 / 180

	Kilogram  Mass    = 1
	Pound     Mass    = 0.45359237
	ShortTon  Mass    = 2000 * 0.45359237
	MetricTon Mass    = 1000
	Volt      Voltage = 1
	Ampere    Current = 1
)

// StandardGravity in m/s², exact by definition (CGPM 1901).
const StandardGravity = 9.80665

// ConventionalWaterDensity in kg/m³ is the density behind the conventional
// foot and metre of water (NIST SP 811, appendix B.8), and the one assumed when
// a head is written as a pressure.
const ConventionalWaterDensity = 1000
