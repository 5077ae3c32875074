package network

import (
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// The other random networks have laws of their own; here they are those of a
// job: laminar pipes, pipes in the bridge and by Colebrook-White, fittings
// that lean on the Reynolds number, tilted lips, curves through points.

func TestBooksBalanceWithRealLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, _, st := drawSolved(t, options{real: true})
		audit(t, n, st)
	})
}

var testBores = []unit.Length{12.7 * unit.Millimetre, 20.9 * unit.Millimetre, 35 * unit.Millimetre, 52.5 * unit.Millimetre, 77.9 * unit.Millimetre, 102.3 * unit.Millimetre}

// realPipe is a pipe and the fittings in it.
func realPipe(t *rapid.T) []Part {
	w, err := hydro.WaterAt(unit.Temperature(rapid.IntRange(1, 35).Draw(t, "water")))
	if err != nil {
		t.Fatalf("%v", err)
	}
	bore := rapid.SampledFrom(testBores).Draw(t, "bore")
	p, err := hydro.PipeLaw{
		Bore: bore, Length: unit.Length(rapid.Float64Range(0.1, 60).Draw(t, "length")),
		Roughness: bore * unit.Length(rapid.Float64Range(0, 0.04).Draw(t, "roughness")),
	}.Prepare(w)
	if err != nil {
		t.Fatalf("%v", err)
	}
	m, err := hydro.MinorLaw{
		Bore: bore, K: unit.Ratio(rapid.Float64Range(0, 20).Draw(t, "K")), K1: unit.Ratio(rapid.IntRange(0, 800).Draw(t, "K1")),
	}.Prepare(w)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return []Part{{Name: "pipe", Law: p}, {Name: "fittings", Law: m}}
}

func realLip(t *rapid.T) Law {
	l, err := hydro.LipLaw{
		Width: unit.Length(rapid.Float64Range(0.05, 2).Draw(t, "width")), C: 1.7,
		Tilt: unit.Length(rapid.IntRange(0, 20).Draw(t, "tilt")) * unit.Millimetre,
	}.Prepare()
	if err != nil {
		t.Fatalf("%v", err)
	}
	return l
}

// realPump is a curve of three to seven points, some of them level.
func realPump(t *rapid.T) Law {
	var d hydro.PumpData
	q, h := 0.0, rapid.Float64Range(0.5, 12).Draw(t, "shutoff")
	for range rapid.IntRange(3, 7).Draw(t, "points") {
		d.Points = append(d.Points, hydro.CurvePoint{Flow: unit.Flow(q), Head: unit.Head(h)})
		q += rapid.Float64Range(2e-4, 3e-3).Draw(t, "step")
		h *= rapid.Float64Range(0, 1).Draw(t, "fall")
	}
	c, err := hydro.NewCurve(d)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return curve{c}
}

// A pump whose curve ends on a level stretch between two levels 5.5 m apart:
// the cubic through the first two flows led past all bounds. (Kept from a
// random network.) By the energy equation on the given laws.
func TestLevelStretchOnALine(t *testing.T) {
	w, err := hydro.WaterAt(1)
	if err != nil {
		t.Fatal(err)
	}
	const bore = 77.9 * unit.Millimetre
	p, err := hydro.PipeLaw{Bore: bore, Length: 0.25, Roughness: bore / 64}.Prepare(w)
	if err != nil {
		t.Fatal(err)
	}
	var d hydro.PumpData
	for _, x := range [][2]float64{{0, 12}, {4.27e-4, 8.25}, {1.373e-3, 0}, {4.373e-3, 0}} {
		d.Points = append(d.Points, hydro.CurvePoint{Flow: unit.Flow(x[0]), Head: unit.Head(x[1])})
	}
	c, err := hydro.NewCurve(d)
	if err != nil {
		t.Fatal(err)
	}
	var n Network
	n.AddNode(Node{Name: "upper", Kind: FixedLevel, Level: 6})
	n.AddNode(Node{Name: "lower", Kind: FixedLevel, Level: 0.5})
	n.AddLink(Link{Name: "line", From: 0, To: 1, Parts: []Part{{Name: "pipe", Law: p}, {Name: "pump", Role: Pump, Law: curve{c}}}})
	if st := solved(t, n); st.Links[0].Flow <= 4.373e-3 {
		t.Errorf("%g m³/s", float64(st.Links[0].Flow)) // 5.5 m drive more than the pump gives by itself
	}
}
