package hydro

import (
	"math"
	"testing"

	"plashet/engine/unit"
)

// The same half inch, told at three places, with C 3.09 ft^0.5/s (by hand from
// Q = C L H^1.5, H = d, 1.5 d, 1.5 d/0.715): 59, 108 and 179 gph for each inch.
func TestSheetPlaces(t *testing.T) {
	l := newLip(t, LipLaw{Width: unit.Inch, C: 3.09 * rootFoot})
	for at, want := range map[SheetAt]float64{AtUpstream: 59.0, AtCritical: 108.4, AtEdge: 179.2} {
		q, err := l.FlowForSheet(unit.Inch/2, at)
		if err != nil {
			t.Fatal(err)
		}
		near(t, string(at), float64(q/unit.USGallonPerHour), want, 0.001, 0)
		h, err := HeadForSheet(unit.Inch/2, at)
		if err != nil {
			t.Fatal(err)
		}
		d, err := SheetDepth(h, at)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "and back", d, unit.Inch/2, 1e-14, 0)
	}
	_, err := l.FlowForSheet(0.01, "behind")
	wantCode(t, "place", err, CodeWord)
	_, err = l.FlowForSheet(0, AtEdge)
	wantCode(t, "no depth", err, CodeRange)
	_, err = SheetDepth(0.01, "")
	wantCode(t, "no place", err, CodeWord)
}

// Over a broad crest the critical depth is that of its flow.
func TestSheetCriticalIsCritical(t *testing.T) {
	c, err := CrestBroad.Coefficient()
	if err != nil {
		t.Fatal(err)
	}
	l := newLip(t, LipLaw{Width: 0.9, C: c.C})
	s, err := l.Sheet(0.0044)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "critical", s.Critical, CriticalDepth(s.PerWidth), 1e-12, 0)
	near(t, "edge", s.Edge, 0.715*s.Critical, 1e-14, 0)
	near(t, "at both ends", s.AtLow, s.AtHigh, 1e-14, 0)
	near(t, "for each metre", s.AtLow, s.PerWidth, 1e-12, 0)
	near(t, "flow for that", l.FlowFor(s.PerWidth), 0.0044, 1e-14, 0)
}

func TestSheetCautions(t *testing.T) {
	codes := func(law LipLaw, q unit.Flow) string {
		s, err := newLip(t, law).Sheet(q)
		if err != nil {
			t.Fatal(err)
		}
		out := ""
		for _, m := range s.Cautions {
			out += m.Code + " "
		}
		return out
	}
	broad := LipLaw{Width: 0.9, C: 1.7}
	tilted := LipLaw{Width: 0.9, C: 1.7, Tilt: 0.006}
	for _, c := range []struct {
		law  LipLaw
		q    unit.Flow
		want string
	}{
		{broad, 0, ""},
		{broad, 0.0044, ""},
		{broad, 0.001, CautionCling + " "},
		{tilted, 0.0044, CautionTilt + " "},
		{tilted, 0.0025, CautionClingHigh + " " + CautionTilt + " "},
		{tilted, 0.0002, CautionCling + " " + CautionTilt + " " + CautionDry + " "},
	} {
		if got := codes(c.law, c.q); got != c.want {
			t.Errorf("%+v at %v: %q, want %q", c.law, c.q, got, c.want)
		}
	}
	// By hand: 0.0044 m³/s on 0.9 m with C 1.7 is 20.2 mm over a level lip, so
	// about that over the middle of the tilted one, 3 mm more at the low end and
	// 3 mm less, 17 mm, at the high end: no cling. At 0.0025 m³/s it is 13.9 mm,
	// and 10.9 mm at the high end.
	s, err := newLip(t, tilted).Sheet(0.0025)
	if err != nil || len(s.Cautions) == 0 || s.Cautions[0].Code != CautionClingHigh {
		t.Fatalf("%+v, %v", s, err)
	}
	near(t, "head at the high end", unit.Length(argValue(s.Cautions[0], "head")), 0.0109, 0.01, 0)
	near(t, "the middle", s.Middle, 0.0139, 0.01, 0)
	l := newLip(t, broad)
	_, err = l.Sheet(-1)
	wantCode(t, "negative", err, CodeRange)
	_, err = l.Sheet(unit.Flow(math.NaN()))
	wantCode(t, "no number", err, CodeNotFinite)
	if s, err := l.Sheet(0); err != nil || s.DryWidth != l.Width {
		t.Errorf("no flow: %+v, %v", s, err)
	}
}
