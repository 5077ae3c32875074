package hydro

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

const gpm, ft = unit.USGallonPerMinute, unit.Foot

// points makes curve points from gpm and ft.
func points(xy ...float64) []CurvePoint {
	var out []CurvePoint
	for i := 0; i+1 < len(xy); i += 2 {
		out = append(out, CurvePoint{Flow: unit.Flow(xy[i]) * gpm, Head: unit.Length(xy[i+1]) * ft})
	}
	return out
}

func newCurve(t testing.TB, d PumpData) *Curve {
	t.Helper()
	c, err := NewCurve(d)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// pumpM is an invented pump.
func pumpM(t testing.TB) *Curve {
	t.Helper()
	return newCurve(t, PumpData{Watts: 640, Points: points(0, 24, 18, 22, 32, 20, 44, 18, 54, 16, 63, 14, 71, 12, 78, 10, 84, 8, 92, 5, 102, 0)})
}

func TestCurveRefuses(t *testing.T) {
	nan := unit.Flow(math.NaN())
	if _, err := NewCurve(PumpData{Points: points(0, 10), MaxHead: 10 * ft, BoxFlow: 1}); err != nil {
		t.Errorf("a point that says what the box says: %v", err)
	}
	for what, c := range map[string]struct {
		data PumpData
		code string
	}{
		"nothing":           {PumpData{}, CodeCurveNone},
		"box flow alone":    {PumpData{BoxFlow: 1}, CodeCurveNone},
		"head alone":        {PumpData{MaxHead: 5}, CodeCurveNone},
		"one point alone":   {PumpData{Points: points(10, 5)}, CodeCurveNone},
		"duplicate":         {PumpData{Points: points(0, 10, 20, 5, 20, 4)}, CodeCurveDuplicate},
		"rise":              {PumpData{Points: points(0, 10, 10, 11, 20, 5), Reading: 0.2 * ft}, CodeCurveRise},
		"rise in two steps": {PumpData{Points: points(0, 10, 10, 10.15, 20, 10.3), Reading: 0.2 * ft}, CodeCurveRise},
		"negative flow":     {PumpData{Points: points(-1, 10, 20, 5)}, CodeRange},
		"negative head":     {PumpData{Points: points(0, 10, 20, -5)}, CodeRange},
		"no head":           {PumpData{Points: points(0, 0, 20, 0)}, CodeRange},
		"no number":         {PumpData{Points: []CurvePoint{{Flow: nan, Head: 1}, {Flow: 1}}}, CodeNotFinite},
		"negative watts":    {PumpData{Points: points(0, 10, 20, 5), Watts: -1}, CodeRange},
		"point and its box": {PumpData{Points: points(0, 10), MaxHead: 9 * ft, BoxFlow: 1}, CodeCurveDuplicate},
	} {
		_, err := NewCurve(c.data)
		wantCode(t, what, err, c.code)
	}
}

func TestCurveBases(t *testing.T) {
	for what, c := range map[string]struct {
		data  PumpData
		basis CurveBasis
		codes []string
	}{
		"four points":       {PumpData{Points: points(0, 10, 10, 8, 20, 5, 30, 0)}, CurvePoints, nil},
		"three points":      {PumpData{Points: points(0, 10, 10, 8, 20, 5)}, CurveFew, []string{CautionCurveFew}},
		"one point and box": {PumpData{Points: points(10, 8), BoxFlow: 30 * gpm, MaxHead: 10 * ft, Watts: 90}, CurveFew, []string{CautionCurveFew, CautionPowerConstant}},
		"box":               {PumpData{BoxFlow: 30 * gpm, MaxHead: 10 * ft}, CurveNameplate, []string{CautionCurveNameplate}},
		"small rise":        {PumpData{Points: points(0, 10, 10, 10.1, 20, 5, 30, 0), Reading: 0.2 * ft}, CurvePoints, []string{CautionCurveLevelled}},
	} {
		curve := newCurve(t, c.data)
		if curve.Basis() != c.basis {
			t.Errorf("%s: basis %v", what, curve.Basis())
		}
		var codes []string
		for _, m := range curve.Cautions() {
			codes = append(codes, m.Code)
		}
		if len(codes) != len(c.codes) {
			t.Errorf("%s: cautions %v, want %v", what, codes, c.codes)
			continue
		}
		for i := range codes {
			if codes[i] != c.codes[i] {
				t.Errorf("%s: cautions %v, want %v", what, codes, c.codes)
			}
		}
	}
}

// A rise within the reading error is made level at its mean, and the order of
// the points does not count.
func TestCurveLevelled(t *testing.T) {
	c := newCurve(t, PumpData{Points: points(30, 0, 10, 10.1, 0, 10, 20, 5), Reading: 0.2 * ft})
	for q := unit.Flow(0); q <= 10*gpm; q += gpm {
		h, d, inside := c.Head(q)
		near(t, "level", h, 10.05*ft, 1e-14, 0)
		if d != 0 || !inside {
			t.Errorf("at %v: slope %v, inside %v", q, d, inside)
		}
	}
	near(t, "rise told", argValue(c.Cautions()[0], "rise"), float64(0.1*ft), 1e-12, 0)
	heads := []float64{5, 6, 4, 4.5, 4.6, 1}
	level(heads)
	for i, want := range []float64{5.5, 5.5, 13.1 / 3, 13.1 / 3, 13.1 / 3, 1} {
		near(t, "pooled", heads[i], want, 1e-14, 0)
	}
}

// The box's curve is the parabola, its band the straight line and the third
// power, all exactly.
func TestNameplate(t *testing.T) {
	c := newCurve(t, PumpData{BoxFlow: 0.006, MaxHead: 7})
	low, high := c.Band()
	for x := 0.0; x <= 1; x += 0.0625 {
		q := unit.Flow(0.006 * x)
		for n, curve := range map[float64]*Curve{1: low, 2: c, 3: high} {
			h, d, inside := curve.Head(q)
			near(t, "head", float64(h), 7*(1-math.Pow(x, n)), 1e-14, 1e-14)
			near(t, "slope", d, -7*n*math.Pow(x, n-1)/0.006, 1e-12, 1e-9)
			if !inside {
				t.Errorf("%g of the box's flow is outside", x)
			}
		}
	}
	if a, b := pumpM(t).Band(); a != b {
		t.Error("a curve from points has a band of its own")
	}
}

// Beyond its data a curve keeps falling, without a jump, and says so.
func TestCurveOutside(t *testing.T) {
	partial := newCurve(t, PumpData{Points: points(10, 9, 15, 8, 20, 6, 30, 2)})
	for name, c := range map[string]*Curve{"M": pumpM(t), "partial": partial, "levelled": newCurve(t, PumpData{Points: points(0, 10, 10, 10, 20, 5, 30, 5)})} {
		least, greatest, atLeast, atGreatest := c.Range()
		for _, end := range []struct {
			q unit.Flow
			h unit.Head
		}{{least, atLeast}, {greatest, atGreatest}} {
			h0, d0, _ := c.Head(end.q - 1e-12)
			h1, d1, _ := c.Head(end.q + 1e-12)
			near(t, name+" value", h0, h1, 1e-7, 1e-8)
			near(t, name+" slope", d0, d1, 1e-6, 1e-4)
			h, _, inside := c.Head(end.q)
			near(t, name+" end", h, end.h, 1e-14, 1e-14)
			if !inside {
				t.Errorf("%s: the end %v is not inside", name, end.q)
			}
		}
		last := unit.Head(math.Inf(1))
		for q := least - 2*greatest; q <= 4*greatest; q += greatest / 50 {
			h, d, inside := c.Head(q)
			if h > last || d > 0 {
				t.Errorf("%s rises at %v", name, q)
			}
			if inside != (q >= least && q <= greatest) {
				t.Errorf("%s at %v: inside %v", name, q, inside)
			}
			if !inside && d >= 0 {
				t.Errorf("%s does not fall strictly at %v", name, q)
			}
			last = h
		}
		if h, _, inside := c.Head(unit.Flow(math.NaN())); !math.IsNaN(float64(h)) || inside {
			t.Errorf("%s: no number in, %v out", name, h)
		}
	}
}

// Flow is the inverse of Head, inside and outside the data.
func TestCurveFlow(t *testing.T) {
	c := pumpM(t)
	_, greatest, _, _ := c.Range()
	rapid.Check(t, func(t *rapid.T) {
		share := rapid.Float64Range(-2, 3).Draw(t, "share")
		if math.Abs(share) < 1e-12 || math.Abs(share-1) < 1e-12 {
			t.Skip("inside and outside differ by a rounding here")
		}
		q := unit.Flow(share) * greatest
		h, d, inside := c.Head(q)
		back, in := c.Flow(h)
		// where the curve is flat at its ends a head tells little of the flow
		if slack := 1e-12*float64(greatest) + 1e-14*math.Abs(float64(h)/d); math.Abs(float64(back-q)) > slack || in != inside {
			t.Fatalf("flow %v: head %v, back %v, inside %v and %v", q, h, back, inside, in)
		}
	})
	flat := newCurve(t, PumpData{Points: points(0, 10, 10, 9, 20, 9, 30, 2)})
	q, inside := flat.Flow(9 * ft)
	near(t, "least flow of a level stretch", q, 10*gpm, 1e-12, 0)
	if !inside {
		t.Error("a level stretch lies outside")
	}
	if q, inside := c.Flow(unit.Head(math.NaN())); !math.IsNaN(float64(q)) || inside {
		t.Errorf("head no number: %v", q)
	}
}

func TestCurvePower(t *testing.T) {
	watts := points(0, 24, 20, 21, 60, 15, 100, 1)
	for i, w := range []unit.Power{300, 360, 395, 380} {
		watts[i].Watts = w
	}
	c := newCurve(t, PumpData{Points: watts, Watts: 500})
	for _, p := range watts {
		w, basis, inside := c.Power(p.Flow)
		near(t, "watts", w, p.Watts, 1e-14, 0)
		if basis != PowerCurve || !inside {
			t.Errorf("at %v: %v, %v", p.Flow, basis, inside)
		}
	}
	if w, _, inside := c.Power(200 * gpm); w != 380 || inside {
		t.Errorf("beyond: %v, inside %v", w, inside)
	}
	one := points(0, 24, 20, 21, 60, 15, 100, 1)
	one[2].Watts = 390
	if w, basis, inside := newCurve(t, PumpData{Points: one}).Power(20 * gpm); w != 390 || basis != PowerConstant || !inside {
		t.Errorf("one point's watts: %v, %v, %v", w, basis, inside)
	}
	if w, basis, _ := newCurve(t, PumpData{Points: points(0, 24, 20, 21, 60, 15, 100, 1)}).Power(0); w != 0 || basis != PowerUnknown {
		t.Errorf("no watts: %v, %v", w, basis)
	}
}

// The affinity laws, point by point, and back again.
func TestAtSpeed(t *testing.T) {
	c := pumpM(t)
	slow, err := c.AtSpeed(0.8)
	if err != nil {
		t.Fatal(err)
	}
	back, err := slow.AtSpeed(1 / 0.8)
	if err != nil {
		t.Fatal(err)
	}
	for q := unit.Flow(0); q < 120*gpm; q += 7 * gpm {
		h, d, inside := c.Head(q)
		hs, ds, ins := slow.Head(q * 0.8)
		near(t, "head", hs, h*0.64, 1e-12, 1e-12)
		near(t, "slope", ds, d*0.8, 1e-12, 1e-9)
		if inside != ins {
			t.Errorf("inside %v, slow %v", inside, ins)
		}
		w, _, _ := c.Power(q)
		ws, _, _ := slow.Power(q * 0.8)
		near(t, "power", ws, w*0.512, 1e-14, 0)
		hb, _, _ := back.Head(q)
		near(t, "back", hb, h, 1e-12, 1e-12)
	}
	for _, bad := range []unit.Ratio{0, -1} {
		_, err := c.AtSpeed(bad)
		wantCode(t, "speed", err, CodeRange)
	}
	box := newCurve(t, PumpData{BoxFlow: 0.006, MaxHead: 7})
	worn, err := box.Scaled(1, 0.9, 1)
	if err != nil {
		t.Fatal(err)
	}
	low, _ := worn.Band()
	h, _, _ := low.Head(0.003)
	near(t, "worn band", h, 0.9*3.5, 1e-14, 0)
}

func BenchmarkCurveHead(b *testing.B) {
	c := pumpM(b)
	b.ReportAllocs()
	q := 70 * gpm
	for b.Loop() {
		h, d, _ := c.Head(q)
		sink += float64(h) + d
		q += 1e-12
	}
}

func BenchmarkCurveFlow(b *testing.B) {
	c := pumpM(b)
	b.ReportAllocs()
	h := 11 * ft
	for b.Loop() {
		q, _ := c.Flow(h)
		sink += float64(q)
		h += 1e-12
	}
}

// TestRedraw: drawn with nothing moved a curve is the one given, to the last
// digit; with ratios it is the scaled one; a head that would rise is level; a
// curve from the box goes from its low to its high end; and it allocates nothing.
func TestRedraw(t *testing.T) {
	points := PumpData{Watts: 100}
	for i, h := range []float64{8, 7.8, 7.2, 6, 4, 1} {
		points.Points = append(points.Points, CurvePoint{Flow: unit.Flow(i) * 1e-3, Head: unit.Head(h)})
	}
	box := PumpData{BoxFlow: 5e-3, MaxHead: 8}
	for name, d := range map[string]PumpData{"points": points, "box": box} {
		c, err := NewCurve(d)
		if err != nil {
			t.Fatal(err)
		}
		scaled, err := c.Scaled(0.9, 1.1, 1)
		if err != nil {
			t.Fatal(err)
		}
		low, high := c.Band()
		r := c.Redraw()
		compare := func(what string, want *Curve) {
			t.Helper()
			for q := unit.Flow(0); q < 6e-3; q += 0.17e-3 {
				a, da, _ := r.Curve.Head(q)
				b, db, _ := want.Head(q)
				near(t, name+" "+what, float64(a), float64(b), 1e-12, 1e-12)
				near(t, name+" "+what+" slope", da, db, 1e-9, 1e-12)
			}
		}
		r.Draw(1, 1, nil, 0)
		compare("given", c)
		r.Draw(0.9, 1.1, nil, 0)
		compare("scaled", scaled)
		r.Draw(1, 1, nil, -1)
		compare("low", low)
		r.Draw(1, 1, nil, 1)
		compare("high", high)
		if n := testing.AllocsPerRun(10, func() { r.Draw(1.1, 0.9, nil, 0.5) }); n > 0 {
			t.Errorf("%s: %v allocations", name, n)
		}
	}
	c, err := NewCurve(points)
	if err != nil {
		t.Fatal(err)
	}
	r := c.Redraw()
	r.Draw(1, 1, []unit.Head{0, 0.5, 0, 0, 0, -2}, 0)
	for _, p := range []struct {
		flow unit.Flow
		want float64
	}{{1e-3, 8}, {5e-3, 0}} {
		h, _, _ := r.Curve.Head(p.flow)
		near(t, "held", float64(h), p.want, 1e-12, 1e-12)
	}
}
