package size

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"plashet/engine/hydro"
	"plashet/engine/unit"
)

var water = func() hydro.Water {
	w, err := hydro.WaterAt(15)
	if err != nil {
		panic(err)
	}
	return w
}()

// randomPump is an invented pump with a falling curve from none to end.
func randomPump(t testing.TB, r *rand.Rand, name string, head, end float64) Pump {
	t.Helper()
	n := 4 + r.IntN(6)
	d := hydro.PumpData{}
	h := head
	for i := range n {
		x := float64(i) / float64(n-1)
		d.Points = append(d.Points, hydro.CurvePoint{Flow: unit.Flow(end * x), Head: unit.Head(h), Watts: unit.Power(40 + 9810*end*head*(0.5+0.6*x-0.3*x*x*r.Float64()))})
		if r.IntN(8) > 0 { // now and then level
			h -= h * x * (0.2 + 0.5*r.Float64())
		}
	}
	if r.IntN(4) == 0 {
		for i := range d.Points {
			d.Points[i].Watts = 0
		}
		d.Watts = unit.Power(60 + 12000*end*head)
	}
	c, err := hydro.NewCurve(d)
	if err != nil {
		t.Fatal(err)
	}
	p := Pump{Name: name, Curve: c, Price: Cost(80+r.IntN(60)*10) * Whole}
	if r.IntN(4) == 0 {
		p.Least = unit.Flow(end * 0.4 * r.Float64())
	}
	if r.IntN(3) == 0 {
		p.LeastBore = unit.Length(0.02 + 0.03*r.Float64())
	}
	return p
}

// kinds of invented pipe: what a bore of it costs for a metre, and how rough it is.
var kinds = []struct {
	name             string
	shrink, price, e float64
}{{"smooth", 1, 60, 1.5e-6}, {"thick", 0.93, 75, 1.5e-6}, {"rough", 0.97, 48, 3e-5}}

func randomChoice(t testing.TB, kind int, bore, length, k float64) Choice {
	t.Helper()
	b := unit.Length(bore * kinds[kind].shrink)
	pipe, err := hydro.PipeLaw{Bore: b, Length: unit.Length(length), Roughness: unit.Length(kinds[kind].e)}.Prepare(water)
	if err != nil {
		t.Fatal(err)
	}
	minor, err := hydro.MinorLaw{Bore: b, K: unit.Ratio(k)}.Prepare(water)
	if err != nil {
		t.Fatal(err)
	}
	// whole units of money, so that sums meet now and then
	cost := Cost(length*bore*kinds[kind].price+200*bore) * Whole
	return Choice{Name: kinds[kind].name + " " + strconv.FormatFloat(1000*bore, 'f', 0, 64), Bore: b, Length: unit.Length(length), Pipe: pipe, Fittings: minor, Cost: cost}
}

var bores = []float64{0.0266, 0.0351, 0.0409, 0.0525, 0.0627, 0.0779}

// randomProblem is an invented tree with invented pumps: up to segments
// segments, each with the sizes and kinds given.
func randomProblem(t testing.TB, r *rand.Rand, segments, sizes, nKinds, pumps int) *Problem {
	t.Helper()
	p := &Problem{
		Level: unit.Length(r.Float64() - 0.5), Uniform: r.IntN(3) == 0, Pairs: Pairs(r.IntN(3)), Reserves: []unit.Ratio{1.05, 1.1, 1.25},
		Energy: Energy{PerYear: unit.Duration(1+r.IntN(24)) * 365 * unit.Hour, Tariff: Cost(20+r.IntN(30)) * Whole / 100, Worth: 4.5},
	}
	if r.IntN(3) == 0 {
		p.MostSpeed = unit.Speed(1 + 2*r.Float64())
	}
	if r.IntN(4) == 0 {
		p.Reserves = nil
	}
	from := r.IntN(len(bores) - sizes + 1)
	ends := map[int]bool{}
	for i := range segments {
		s := Segment{Name: "segment " + strconv.Itoa(i), Parent: r.IntN(i+1) - 1}
		length, k := 2+18*r.Float64(), 8*r.Float64()
		for _, b := range bores[from : from+sizes] {
			for kind := range nKinds {
				s.Choices = append(s.Choices, randomChoice(t, kind, b, length, k))
			}
		}
		if r.IntN(6) == 0 {
			s.Choices = s.Choices[len(s.Choices)-1:]
		}
		p.Segments = append(p.Segments, s)
		ends[i] = true
		delete(ends, s.Parent)
	}
	for i := range segments {
		if !ends[i] && r.IntN(5) > 0 {
			continue
		}
		lip, err := hydro.LipLaw{Width: unit.Length(0.3 + r.Float64()), C: 1.7}.Prepare()
		if err != nil {
			t.Fatal(err)
		}
		o := Outlet{Name: "outlet " + strconv.Itoa(i), Segment: i, Wanted: unit.Flow(0.0003 + 0.0012*r.Float64()), Level: unit.Length(0.5 + 3*r.Float64()), Lip: lip}
		if r.IntN(4) == 0 {
			o.Pours, o.Inlet = true, o.Level+0.2*unit.Length(r.Float64())
		}
		p.Outlets = append(p.Outlets, o)
	}
	var total float64
	for _, o := range p.Outlets {
		total += float64(o.Wanted)
	}
	if r.IntN(2) == 0 {
		for _, b := range bores[r.IntN(3):5] {
			p.Legs = append(p.Legs, randomChoice(t, r.IntN(len(kinds)), b, 0.5+2*r.Float64(), 2+4*r.Float64()))
		}
	}
	p.Unpriced = r.IntN(5) == 0
	for i := range pumps {
		p.Pumps = append(p.Pumps, randomPump(t, r, "pump "+strconv.Itoa(i), 2+10*r.Float64(), total*(0.5+1.7*r.Float64())))
	}
	return p
}
