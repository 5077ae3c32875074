package checks

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// geometry holds rolling offsets, areas and volumes.
func geometry() ([]Check, error) {
	in, ft2, ft3, ft := unit.Inch, unit.SquareFoot, unit.CubicFoot, unit.Foot
	acre := 43560 * ft2
	acreFoot := 43560 * ft3
	radius, err := geom.RadiusFromChord(1, 0.2)
	if err != nil {
		return nil, err
	}
	// E52's pond by its outline: 2:1 sides move in 12 ft halfway and 24 ft at the
	// bottom.
	pond, err := geom.Rectangle(100*ft, 70*ft)
	if err != nil {
		return nil, err
	}
	middle, err := pond.InsetAt(12 * ft)
	if err != nil {
		return nil, err
	}
	bottom, err := pond.InsetAt(24 * ft)
	if err != nil {
		return nil, err
	}
	out, err := fromExamples("geometry", []worked{
		given("E17", in)(geom.TrueOffset((47.5-16.875)*in, (50-32.375)*in)),
		given("E20", in)(geom.TrueOffset(8*in, 12*in)),
		given("E21", in)(travel(12*in, 16*in)),
		given("E52", ft3)(geom.Prismoid(pond.Area(), middle.Area, bottom.Area, 12*ft)),
		given("E53", ft3)(geom.Frustum(10000*ft2, 3600*ft2, 10*ft)),
		given("E55", ft3)(geom.Frustum(10000*ft2, 3976*ft2, 2*ft)),
		given("E56", ft3)(geom.AverageEndArea(10000*ft2, 3976*ft2, 2*ft)),
		given("E58", acreFoot)(geom.BowlVolume(3.2*acre, 12.5*ft)),
		given("E59", acreFoot)(geom.MeanDepthVolume(1.25*acre, 6*ft)),
		given("E61", unit.CubicMetre)(geom.CylinderVolume(radius, 10, 2*radius-0.2)),
	})
	if err != nil {
		return nil, err
	}
	extra, err := geometryNotes()
	return append(out, extra...), err
}

func travel(rise, roll unit.Length) (unit.Length, error) {
	r, err := geom.RollingOffset(rise, roll, 45*unit.Degree)
	return r.Travel, err
}

// geometryNotes holds what the notes of the examples say beside their answer,
// and what no row holds.
func geometryNotes() ([]Check, error) {
	in, ft2, ft3, ft := unit.Inch, unit.SquareFoot, unit.CubicFoot, unit.Foot
	rows, err := Table("examples")
	if err != nil {
		return nil, err
	}
	// E18 prints the product with the rounded constant 1.414; its note has the
	// exact one, which is ours.
	e18, err := Find(rows, "E18")
	if err != nil {
		return nil, err
	}
	slant, err := geom.Travel(35.33456*in, 45*unit.Degree)
	if err != nil {
		return nil, err
	}
	e55, err := Find(rows, "E55")
	if err != nil {
		return nil, err
	}
	long, err := geom.Prismoid(10000*ft2, 997*7*ft2, 3976*ft2, 2*ft)
	if err != nil {
		return nil, err
	}
	ends, err := geom.AverageEndArea(10000*ft2, 3600*ft2, 10*ft)
	if err != nil {
		return nil, err
	}
	half, err := geom.Ellipse(2, 2*unit.Length(math.Sqrt(0.5)))
	if err != nil {
		return nil, err
	}
	return []Check{
		{
			ID: "E18", Group: "geometry", What: "travel of a true offset of 35.33456 in at 45 degrees", Unit: "in",
			Want: 49.9706, Got: float64(slant / in), Abs: 1e-4, Source: e18["source"], Basis: trace.Basis(e18["basis"]), Note: "the row's answer 50.02025 uses 1.414 and 35-3/8; its note has this exact value",
		},
		{
			ID: "E55 prismoid", Group: "geometry", What: "long pond by the prismoid, where the conic method falls short", Unit: "ft3",
			Want: 13964, Got: float64(long / ft3), Abs: 0.05, Source: e55["source"], Basis: trace.BasisLibrary, Note: e55["note"],
		},
		{
			ID: "E53 average ends", Group: "geometry", What: "square pond by average end area", Unit: "ft3",
			Want: 68000, Got: float64(ends / ft3), Abs: 1e-6, Source: "page on average end area against conic volume", Basis: trace.BasisPublished,
		},
		{
			ID: "ellipse E(0.5)", Group: "geometry", What: "perimeter of an ellipse of half axes 1 and sqrt(0.5), over 4", Unit: "",
			Want: 1.350643881, Got: float64(half.Perimeter()) / 4, Abs: 5e-10, Source: "Abramowitz and Stegun, Handbook of Mathematical Functions, table 17.1",
			Basis: trace.BasisMemory, Note: "checked by the Gauss-Kummer series in the package's test",
		},
	}, nil
}
