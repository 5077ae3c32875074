package unit

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// allMarks are all that a job may say.
func allMarks() (list []Marks) {
	for _, d := range []rune{Point, Comma} {
		for _, g := range []rune{NoGroup, Point, Comma, Space, Apostrophe} {
			if g != d {
				list = append(list, Marks{d, g, true}, Marks{d, g, false})
			}
		}
	}
	return list
}

// TestMarksRideAlong: a system keeps the marks it is given, and its units.
func TestMarksRideAlong(t *testing.T) {
	for _, m := range allMarks() {
		for _, base := range []System{US, Metric} {
			s := base.With(m)
			if s.Marks() != m || !s.Is(base) || s.Base() != base || s.In(US).Marks() != m || !s.In(Metric).Is(Metric) {
				t.Errorf("%+v comes back as %+v, units %v", m, s.Marks(), s.Base())
			}
		}
	}
	if m := US.Marks(); m != (Marks{Point, Comma, false}) || Metric.Marks() != m {
		t.Errorf("unsaid marks are %+v", m)
	}
	for _, d := range []rune{Point, Comma} { // one mark cannot do both
		if m := US.With(Marks{d, d, true}).Marks(); m.Group != NoGroup {
			t.Errorf("twice %q gives %+v", d, m)
		}
	}
}

// TestFormatByMarks: by hand.
func TestFormatByMarks(t *testing.T) {
	comma := Metric.With(Marks{Comma, Point, true})
	feet := US.With(Marks{Comma, Space, true})
	for got, want := range map[string]string{
		Value{SI: 1.41, Kind: KindTape}.Format(comma):          "1.410 mm",
		Value{SI: 3.542, Kind: KindElevation}.Format(comma):    "3,542 m",
		Value{SI: 2.84, Kind: KindHead}.Both(comma):            "2,84 m (9,32 ft)",
		FormatFlow(Flow(55*gpm), comma):                        "12.492 L/h (208,2 L/min)",
		Value{SI: 15000.5 * in, Kind: KindTape}.Format(feet):   "1\u202f250' 0-1/2\"",
		Value{SI: 0.0213, Kind: KindRatio}.Format(comma):       "0,0213",
		Value{SI: math.Inf(1), Kind: KindTape}.Format(comma):   "—",
		Value{SI: 1.5, Kind: KindHead, Bound: 1}.Format(comma): "> 1,50 m",
	} {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// TestReadsBackByMarks: what is printed in the marks of a job is read in them as
// the same, to within the step.
func TestReadsBackByMarks(t *testing.T) {
	kinds := allKinds()
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(allMarks()).Draw(t, "marks")
		m.Said = true
		s := rapid.SampledFrom([]System{US, Metric}).Draw(t, "system").With(m)
		k := rapid.SampledFrom(kinds).Draw(t, "kind")
		shown := rapid.Float64Range(-9e5, 9e5).Draw(t, "number")
		if rapid.Bool().Draw(t, "small") {
			shown /= 1e4
		}
		v := Value{SI: k.unit(s).si(shown), Kind: k}
		if k == KindCount {
			v.SI = math.Round(shown)
		}
		text := v.Format(s)
		r, err := Parse(text, k, s)
		if err != nil || math.Abs(r.SI-v.SI) > 0.5*v.Step(s)*(1+1e-9)+1e-9*math.Abs(v.SI) {
			t.Fatalf("%v as %s is %q, which reads as %v (%v)", v.SI, k.Name(), text, r.SI, err)
		}
	})
}

// TestReadByMarks: what is typed in a job that says its marks, by hand.
func TestReadByMarks(t *testing.T) {
	comma := Metric.With(Marks{Comma, Point, true})
	usComma := US.With(Marks{Comma, Point, true})
	swiss := Metric.With(Marks{Point, Apostrophe, true})
	for _, c := range []struct {
		text   string
		kind   Kind
		system System
		want   float64
		code   Code
	}{
		{"12,5 m", KindPlan, comma, 12.5, ""},
		{"12.5 m", KindPlan, comma, 12.5, ""}, // can be nothing else
		{"1,41 m", KindPlan, comma, 1.41, ""},
		{"1,410 m", KindPlan, comma, 1.41, ""},
		{"1.410 mm", KindTape, comma, 1.41, ""},
		{"1.410,5 mm", KindTape, comma, 1.4105, ""},
		{",5 m", KindPlan, comma, 0.5, ""},
		{"-1,5 m", KindElevation, comma, -1.5, ""},
		{"1.410 m", KindPlan, comma, 0, CodeAmbiguous},
		{"1,410 L/h", KindFlow, comma, 0, CodeAmbiguous},
		{"1.410 L/h", KindFlow, comma, 1410.0 / 3.6e6, ""},
		{"12.492 L/h", KindFlow, comma, 12492 / 3.6e6, ""},
		{"1.410", KindCount, comma, 1410, ""},
		{`4' 7,5"`, KindTape, usComma, 55.5 * in, ""},
		{"4 ft, 7 1/2 in", KindTape, usComma, 55.5 * in, ""},
		{"60,25 ft", KindDistance, usComma, 60.25 * 12 * in, ""},
		{"1.234", KindDistance, usComma, 0, CodeAmbiguous},
		{"1'410 mm", KindTape, swiss, 1.41, ""},
		{"1’410 mm", KindTape, swiss, 1.41, ""},
		{`4' 7"`, KindTape, swiss, 55 * in, ""},
		{"12,5 m", KindPlan, Metric, 12.5, ""},
		{"1,234", KindPlan, Metric, 0, CodeAmbiguous},
	} {
		r, err := Parse(c.text, c.kind, c.system)
		if c.code != "" {
			pe, ok := errors.AsType[*ParseError](err)
			if !ok || pe.Code != c.code || pe.Text != c.text {
				t.Errorf("%q reads as %v (%v), want %s", c.text, r.SI, err, c.code)
			}
			continue
		}
		if err != nil || math.Abs(r.SI-c.want) > 1e-9 {
			t.Errorf("%q reads as %v (%v), want %v", c.text, r.SI, err, c.want)
		}
	}
}
