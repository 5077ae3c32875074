package checks

import (
	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/size"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// suctionAndWorth holds the pressure of the air at a height, the water over an
// open intake and the present value of yearly payments against their tables.
func suctionAndWorth() ([]Check, error) {
	var out []Check
	for _, r := range []struct {
		id     string
		height unit.Length
		hPa    float64
	}{{"air at 0 m", 0, 1013.25}, {"air at 1000 m", 1000, 898.75}, {"air at 2000 m", 2000, 794.95}, {"air at 3000 m", 3000, 701.09}, {"air at 5000 m", 5000, 540.20}} {
		p, err := hydro.AtmosphereAt(r.height)
		if err != nil {
			return nil, err
		}
		out = append(out, Check{
			ID: r.id, Group: "suction", What: "pressure of the standard atmosphere, geopotential height", Unit: "hPa", Want: r.hPa, Got: float64(p) / 100, Abs: 0.05,
			Source: "ISO 2533, table of the standard atmosphere", Basis: trace.BasisMemory, Note: "the formula is that of its lowest layer: 288.15 K at the sea, 6.5 K less each km",
		})
	}
	s, err := level.MinSubmergence(3*unit.Inch, 70*unit.USGallonPerMinute)
	if err != nil {
		return nil, err
	}
	out = append(out, Check{
		ID: "water over an intake", Group: "suction", What: "least submergence, 3 in intake, 70 gpm: S = D + 0.574 Q/D^1.5", Unit: "in", Want: 10.7, Got: float64(s / unit.Inch), Abs: 0.05,
		Source: "ANSI/HI 9.8 as secondary pages give it", Basis: trace.BasisPublished, Note: "the standard itself was not read",
	})
	for _, r := range []struct {
		id          string
		years, rate unit.Ratio
		want        float64
	}{{"worth 10 years at 5 %", 10, 0.05, 7.7217}, {"worth 20 years at 3 %", 20, 0.03, 14.8775}, {"worth 5 years at 4 %", 5, 0.04, 4.4518}} {
		got, _ := size.PresentWorth(r.years, r.rate) // outside its range it gives 0, which no row wants
		out = append(out, Check{
			ID: r.id, Group: "cost", What: "present value of 1 at the end of each year", Unit: "", Want: r.want, Got: float64(got), Abs: 5e-5,
			Source: "compound interest tables", Basis: trace.BasisMemory, Note: "the sum of (1+d)^-k is added up in the tests of package size",
		})
	}
	return out, nil
}
