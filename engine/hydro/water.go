package hydro

import (
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Water is what the formulas need to know of the water.
type Water struct {
	Temperature    unit.Temperature
	DensityKgM3    float64       // kg/m³
	DynamicPaS     float64       // dynamic viscosity, Pa s
	KinematicM2S   float64       // kinematic viscosity, m²/s
	VapourPressure unit.Pressure // absolute
}

// Where the properties of water come from.
var (
	SourceDensity = trace.Source{
		Title: "Kell, Density, thermal expansivity, and compressibility of liquid water from 0 to 150 C, J. Chem. Eng. Data 20 (1975) 97, equation 16",
		Basis: trace.BasisLibrary,
		Note:  "formula as stated by libraries; within 0.012 kg/m3 of IAPWS-97 from 0 to 100 C",
	}
	SourceViscosity = trace.Source{
		Title: "IAPWS SR6-08, Supplementary release on properties of liquid water at 0.1 MPa (2008), equation 7",
		Basis: trace.BasisLibrary,
		Note:  "formula as stated by python3-iapws 1.5.3; within 0.01 percent of the IAPWS 2008 viscosity release",
	}
	SourceVapourPressure = trace.Source{
		Title: "IAPWS R7-97, Industrial formulation 1997, saturation pressure, equation 30",
		Basis: trace.BasisLibrary,
		Note:  "formula as stated by python3-iapws 1.5.3",
	}
)

const zeroCelsiusK = 273.15

// WaterAt gives fresh water at atmospheric pressure (101.325 kPa) for 0 to
// 100 °C; outside that it gives an error with CodeRange.
//
//	density (t in °C, kg/m³; Kell 1975, equation 16):
//	  (999.83952 + 16.945176 t - 7.9870401e-3 t² - 46.170461e-6 t³
//	   + 105.56302e-9 t⁴ - 280.54253e-12 t⁵) / (1 + 16.879850e-3 t)
//	dynamic viscosity (T in K, Pa s; IAPWS SR6-08, equation 7):
//	  1e-6 (280.68 x^-1.9 + 511.45 x^-7.7 + 61.131 x^-19.6 + 0.45903 x^-40),
//	  x = T / 300
//	vapour pressure: IAPWS R7-97, equation 30 (saturation line)
func WaterAt(t unit.Temperature) (Water, error) {
	if err := within("temperature", t, 0, 100, unit.KindTemperature); err != nil {
		return Water{}, err
	}
	c := float64(t)
	density := (999.83952 + c*(16.945176+c*(-7.9870401e-3+c*(-46.170461e-6+c*(105.56302e-9-c*280.54253e-12))))) /
		(1 + 16.879850e-3*c)
	x := (c + zeroCelsiusK) / 300
	dynamic := 1e-6 * (280.68*math.Pow(x, -1.9) + 511.45*math.Pow(x, -7.7) +
		61.131*math.Pow(x, -19.6) + 0.45903*math.Pow(x, -40))
	return Water{
		Temperature:    t,
		DensityKgM3:    density,
		DynamicPaS:     dynamic,
		KinematicM2S:   dynamic / density,
		VapourPressure: saturationPressure(c + zeroCelsiusK),
	}, nil
}

// saturationPressure is IAPWS R7-97 equation 30, kelvin to pascal.
func saturationPressure(kelvin float64) unit.Pressure {
	n := [...]float64{
		0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7,
		0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
	}
	theta := kelvin + n[8]/(kelvin-n[9])
	a := theta*theta + n[0]*theta + n[1]
	b := n[2]*theta*theta + n[3]*theta + n[4]
	c := n[5]*theta*theta + n[6]*theta + n[7]
	root := 2 * c / (-b + math.Sqrt(b*b-4*a*c))
	return unit.Pressure(1e6 * root * root * root * root)
}

// check refuses a Water that was not made by WaterAt or by hand with sense.
func (w Water) check() error {
	if !finite(w.DensityKgM3) || !finite(w.KinematicM2S) {
		return fail(CodeNotFinite, trace.Str("name", "water"))
	}
	if w.DensityKgM3 <= 0 || w.KinematicM2S <= 0 {
		return fail(CodeRange, trace.Str("name", "water"), trace.Num("found", unit.Ratio(math.Min(w.DensityKgM3, w.KinematicM2S)), unit.KindRatio), trace.Num("limit", unit.Ratio(0), unit.KindRatio))
	}
	return nil
}

// HeadOf turns a pressure into a head of this water: p / (density g).
func (w Water) HeadOf(p unit.Pressure) unit.Head {
	return unit.Head(float64(p) / (w.DensityKgM3 * unit.StandardGravity))
}

// PressureOf turns a head of this water into a pressure: density g h.
func (w Water) PressureOf(h unit.Head) unit.Pressure {
	return unit.Pressure(float64(h) * w.DensityKgM3 * unit.StandardGravity)
}
