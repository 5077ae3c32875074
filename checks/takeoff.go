package checks

import (
	"fmt"

	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/takeoff"
)

// takeoffChecks holds liner, soil and stone: the worked examples by the list
// that a contractor gets, and the rows of trade practice as what the list makes
// of them.
func takeoffChecks() ([]Check, error) {
	book, err := catalog.New()
	if err != nil {
		return nil, err
	}
	out, err := takeoffExamples(book)
	if err != nil {
		return nil, err
	}
	rows, err := takeoffPractice(book)
	return append(out, rows...), err
}

// takeoffExamples are E77 to E80. E79 and E80 print both sides of the sheet; the
// row holds the shorter one or the first, its title and note the other.
func takeoffExamples(book *catalog.Book) ([]Check, error) {
	ft, yd3 := unit.Foot, unit.CubicYard
	small, err := linerSheet(book, 8*ft, 12*ft, 2*ft, 1*ft)
	if err != nil {
		return nil, err
	}
	large, err := linerSheet(book, 10*ft, 8*ft, 2.5*ft, 1.5*ft)
	if err != nil {
		return nil, err
	}
	// The book's clay swells by 30 percent at least, as the example's does.
	clay := takeoff.Input{Book: book, Soil: "clay", Truck: 7 * yd3, Holes: []takeoff.Hole{{Name: "cut", Volume: 1000 * yd3}}}
	soil, err := listed(takeoff.CodeSoil, clay)
	if err != nil {
		return nil, err
	}
	loads, err := listed(takeoff.CodeLoads, clay)
	if err != nil {
		return nil, err
	}
	out, err := fromExamples("takeoff", []worked{
		{"E77", loads.Buy.Low, nil},
		{"E78", float64(takeoff.BankForFill(500*yd3, 0.95) / yd3), nil},
		{"E79", float64(small.Length / ft), nil},
		{"E80", float64(large.Length / ft), nil},
	})
	if err != nil {
		return nil, err
	}
	for _, more := range []struct {
		id, what, unit string
		want, got      float64
		row            int
	}{
		{"E77 loose", "loose volume of 1000 bank yd3 of clay, swell 30 percent", "yd3", 1300, soil.Buy.Low / float64(yd3), 0},
		{"E79 width", "8 x 12 x 2 ft pond, 2 ft overlap in all: the other side of the sheet", "ft", 18, float64(small.Width / ft), 2},
		{"E80 width", "10 x 8 x 2.5 ft pond, 3 ft overlap in all: the other side of the sheet", "ft", 16, float64(large.Width / ft), 3},
	} {
		out = append(out, Check{
			ID: more.id, Group: "takeoff", What: more.what, Unit: more.unit, Want: more.want, Got: more.got, Rel: exactly,
			Source: out[more.row].Source, Basis: out[more.row].Basis,
		})
	}
	return out, nil
}

// linerSheet lists a pond and gives its sheet.
func linerSheet(book *catalog.Book, length, width, depth, overlap unit.Length) (takeoff.Item, error) {
	return listed(takeoff.CodeLiner, takeoff.Input{
		Book: book, Overlap: overlap, Layers: 1, Pond: &takeoff.Pond{Length: length, Width: width, Depth: depth},
	})
}

// listed gives the first item of a code.
func listed(code string, in takeoff.Input) (takeoff.Item, error) {
	items, _, faults := takeoff.List(in)
	for _, i := range items {
		if i.Code == code {
			return i, nil
		}
	}
	return takeoff.Item{}, fmt.Errorf("no %s in the list: %v", code, faults)
}

// takeoffPractice holds the list against the rows of trade practice, for a pond
// of 16 x 10 ft, 20 ft of stream and one cubic yard of each soil. The rows are
// read from the reference; the shape of each formula is the row's own.
func takeoffPractice(book *catalog.Book) ([]Check, error) {
	rows, err := Table("practice")
	if err != nil {
		return nil, err
	}
	ft := unit.Foot
	pond := takeoff.Input{Book: book, Pond: &takeoff.Pond{Length: 16 * ft, Width: 10 * ft, Depth: 2 * ft, Stone: true}}
	brook := takeoff.Input{Book: book, Streams: []takeoff.Stream{{Name: "brook", Length: 20 * ft, Width: 2 * ft, Stone: true}}}
	ton, yd3 := float64(unit.ShortTon), float64(unit.CubicYard)
	cases := []practiceCase{
		{"boulders", "boulders in pond: tons = L x W / divisor (ft)", takeoff.CodeBoulders, pond, "ton", ton, func(low, high float64) (float64, float64) { return 160 / high, 160 / low }},
		{"stream boulders", "boulders along stream", takeoff.CodeBoulders, brook, "ton", ton, func(low, high float64) (float64, float64) { return 2 * low, 2 * high }},
		{"stream gravel", "gravel in stream", takeoff.CodeGravel, brook, "ton", ton, func(low, high float64) (float64, float64) { return 2 * low, 2 * high }},
	}
	for _, s := range []struct{ soil, rule string }{
		{"sand or gravel", "swell of clean sand or gravel"},
		{"top soil", "swell of top soil"},
		{"loam", "swell of loamy soil"},
		{"common earth", "swell of common earth"},
		{"clay", "swell of clay"},
		{"rock", "swell of solid rock"},
	} {
		dug := takeoff.Input{Book: book, Soil: s.soil, Holes: []takeoff.Hole{{Name: "hole", Volume: unit.CubicYard}}}
		cases = append(cases, practiceCase{
			"soil " + s.soil, s.rule, takeoff.CodeSoil, dug, "yd3", yd3,
			func(low, high float64) (float64, float64) { return 1 + low/100, 1 + high/100 },
		})
	}
	var out []Check
	for _, c := range cases {
		both, err := c.checks(rows)
		if err != nil {
			return nil, err
		}
		out = append(out, both...)
	}
	return out, nil
}

// practiceCase is one rule of thumb and the list that it goes into.
type practiceCase struct {
	name, rule, code string
	in               takeoff.Input
	unit             string
	per              float64
	want             func(low, high float64) (float64, float64)
}

// checks gives both ends of the rule.
func (c practiceCase) checks(rows []Row) ([]Check, error) {
	for _, r := range rows {
		if r["rule"] != c.rule {
			continue
		}
		low, err := r.Num("low")
		if err != nil {
			return nil, err
		}
		high, err := r.Num("high")
		if err != nil {
			return nil, err
		}
		item, err := listed(c.code, c.in)
		if err != nil {
			return nil, err
		}
		least, most := c.want(low, high)
		made := Check{Group: "takeoff", Unit: c.unit, Rel: exactly, Source: r["source"], Basis: trace.Basis(r["basis"]), Note: r["note"]}
		a, b := made, made
		a.ID, a.What, a.Want, a.Got = c.name+" least", "trade rule, least: "+c.rule, least, item.Buy.Low/c.per
		b.ID, b.What, b.Want, b.Got = c.name+" most", "trade rule, most: "+c.rule, most, item.Buy.High/c.per
		return []Check{a, b}, nil
	}
	return nil, fmt.Errorf("practice has no row %q", c.rule)
}
