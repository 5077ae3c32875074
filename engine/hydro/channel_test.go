package hydro

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// scipy's brentq on Manning's formula (testdata/README.md).
func TestNormalDepthVectors(t *testing.T) {
	_, rows := vectors(t, "manning", 0)
	for _, r := range rows {
		c := Channel{Width: unit.Length(r[0]), N: unit.Ratio(r[1]), Slope: unit.Ratio(r[2])}
		f, err := c.Normal(unit.Flow(r[3]))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "depth", float64(f.Depth), r[4], 1e-12, 0)
	}
}

func TestNormalProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Channel{
			Width: unit.Length(math.Exp(rapid.Float64Range(-5, 4).Draw(t, "ln width"))),
			Slope: unit.Ratio(math.Exp(rapid.Float64Range(-9, 0).Draw(t, "ln slope"))),
			N:     unit.Ratio(rapid.Float64Range(0.008, 0.3).Draw(t, "n")),
		}
		q := unit.Flow(math.Exp(rapid.Float64Range(-16, 3).Draw(t, "ln flow")))
		f, err := c.Normal(q)
		if err != nil {
			t.Fatal(err)
		}
		back, err := c.Flow(f.Depth)
		if err != nil || relDiff(float64(back), float64(q)) > 1e-11 {
			t.Fatalf("%v m carries %v, want %v (%v)", f.Depth, back, q, err)
		}
		// the state by depths and by the Froude number must agree
		if (f.Depth < f.Critical) != (f.State == Supercritical) && relDiff(float64(f.Depth), float64(f.Critical)) > 1e-8 {
			t.Fatalf("%+v", f)
		}
		more, err := c.Normal(q * 1.01)
		if err != nil || !(more.Depth > f.Depth) {
			t.Fatalf("more flow, less depth: %v, %v", f.Depth, more.Depth)
		}
	})
}

func TestChannelEdges(t *testing.T) {
	good := Channel{Width: 0.6, Slope: 0.02, N: 0.035}
	for what, c := range map[string]Channel{
		"width": {Slope: 0.02, N: 0.035}, "slope": {Width: 0.6, N: 0.035}, "n": {Width: 0.6, Slope: 0.02},
	} {
		_, err := c.Normal(0.001)
		wantCode(t, what, err, CodeRange)
		_, err = c.Flow(0.1)
		wantCode(t, what, err, CodeRange)
	}
	_, err := good.Normal(-1)
	wantCode(t, "flow", err, CodeRange)
	_, err = good.Normal(unit.Flow(math.Inf(1)))
	wantCode(t, "flow", err, CodeNotFinite)
	if f, err := good.Normal(0); err != nil || f.Depth != 0 {
		t.Errorf("no flow: %+v, %v", f, err)
	}
	if q, err := good.Flow(0); err != nil || q != 0 {
		t.Errorf("no depth: %v, %v", q, err)
	}
	steep := good
	steep.Slope = 0.2
	f, err := steep.Normal(0.002)
	if err != nil || len(f.Cautions) != 1 || f.Cautions[0].Code != CautionSteep || f.State != Supercritical {
		t.Errorf("steep: %+v, %v", f, err)
	}
}

// Critical depth: 1 m²/s has (1/g)^(1/3) = 0.4672 m (any hydraulics text).
func TestCriticalDepth(t *testing.T) {
	near(t, "critical", CriticalDepth(1), 0.46717, 1e-4, 0)
	near(t, "sign", CriticalDepth(-1), CriticalDepth(1), 0, 0)
}
