package job

import (
	"math"
	"reflect"
	"testing"

	"plashet/engine/unit"
)

func everyField(t testing.TB) *Job {
	t.Helper()
	j, faults := Decode(files(t, "v1")["every-field.json"])
	if len(faults) > 0 {
		t.Fatal(sayAll(t, faults))
	}
	return j
}

func TestSet(t *testing.T) {
	j := everyField(t)
	for _, c := range []struct{ path, text string }{
		{"/name", "Another"},
		{"/runs/0/length", "70 ft"},
		{"/runs/0/drains", "false"},
		{"/runs/0/fittings/0/count", "4"},
		{"/pumps/0/price", "430"},
		{"/pond/rim", "@low edge + 1 in"},
		{"/vault/shape", "round"},
		{"/note", ""},
		{"/watercourses/0/parts/3/lip/width", "30 in"},
		{"/pumps/1/name", "N"},
		{"/pumps/-/name", "O"},
		{"/pond/measured", ""},
		{"/site/glueTemperature/source", "guess"},
		{"/site/glueTemperature/tolerance", "2 F"},
		{"/site/glueTemperature/note", "felt"},
	} {
		if f := j.Set(c.path, c.text); f != nil {
			t.Errorf("%s = %q: %s", c.path, c.text, say(t, *f, unit.US))
		}
	}
	r := j.Runs[0]
	if j.Name != "Another" || j.Note != "" || !near(r.Length.SI, 70*unit.Foot) || r.Length.Text != "70 ft" || r.Drains || r.Fittings[0].Count != 4 {
		t.Errorf("%+v", r)
	}
	if len(j.Pumps) != 3 || j.Pumps[1].Name != "N" || j.Pumps[2].Name != "O" || j.Pumps[0].Price.Text != "430" || !j.Pond.Measured.IsZero() {
		t.Errorf("%+v", j.Pumps)
	}
	if j.Pond.Rim.Point != "low edge" || !near(j.Pond.Rim.SI, unit.Inch) || j.Pond.Rim.Source != OriginNone {
		t.Errorf("the quantity's own path keeps what went with the old value: %+v", j.Pond.Rim)
	}
	if g := j.Site.GlueTemperature; g.Text != "12 °C" || g.Source != OriginGuess || g.Note != "felt" || math.Abs(float64(g.Plus)-2/1.8) > 1e-9 {
		t.Errorf("%+v", g)
	}
	stable(t, j)
}

// TestSetValueKeepsTheRest: a share of the value moves with it.
func TestSetValueKeepsTheRest(t *testing.T) {
	j := everyField(t)
	if f := j.Set("/pond/outline/area/value", "50 ft2"); f != nil {
		t.Fatal(say(t, *f, unit.US))
	}
	a := j.Pond.Outline.Area
	if a.Source != OriginGuess || a.Tolerance != "10 %" || math.Abs(float64(a.Plus-5*unit.SquareFoot)) > 1e-12 {
		t.Errorf("%+v", a)
	}
}

// TestSetFaults: the fault is that of the decoder, and the job stays as it was.
func TestSetFaults(t *testing.T) {
	for _, c := range []struct{ path, text, code string }{
		{"/runs/0/length", "sixty", CodeReadNumber},
		{"/runs/0/length", "-3 ft", CodeRange},
		{"/runs/0/length", "", CodeSetMust},
		{"/runs/0/lengt", "60 ft", CodeUnknownNear},
		{"/runs/0", "60 ft", CodeSetPart},
		{"/runs", "60 ft", CodeSetPart},
		{"", "x", CodeSetPart},
		{"/runs/7/length", "60 ft", CodeSetIndex},
		{"/runs/-1/length", "60 ft", CodeSetIndex},
		{"/runs/one/length", "60 ft", CodeSetIndex},
		{"/runs/-/length", "sixty", CodeReadNumber},
		{"/runs/0/length/value/deep", "x", CodeSetNowhere},
		{"/name/value", "x", CodeSetNowhere},
		{"/runs/0/length/unit", "ft", CodeUnknown},
		{"/runs/0/length/value", "", CodeSetMust},
		{"/site/waterTemperature/source", "hearsay", CodeWord},
		{"/site/waterTemperature/tolerance", "-2 F", CodeTolerance},
		{"/site/waterTemperature/value", "boiling", CodeReadNumber},
		{"/watercourses/0/parts/0/reach/width", "wide", CodeReadNumber},
		{"/runs/0/drains", "yes", CodeWantTrue},
		{"/runs/0/fittings/0/count", "0", CodeRange},
		{"/runs/0/fittings/0/count", "some", CodeWantWhole},
		{"/pumps/0/price", "cheap", CodeReadNumber},
		{"/vault/shape", "boxy", CodeWordNear},
		{"/units", "imperial", CodeWord},
		{"/version", "0", CodeSetFixed},
		{"/format", "x", CodeSetFixed},
		{"/name", "\xff", CodeEncoding},
		{"/name", " x", CodeNameSpace},
		{"/site/frost/really", "true", CodeSetNowhere},
		{"/site/tariff/value", "1", CodeSetNowhere},
	} {
		j := everyField(t)
		before := j.Clone()
		f := j.Set(c.path, c.text)
		if f == nil || f.Code != c.code || f.Path != c.path {
			t.Errorf("%s = %q: %+v, expected %s", c.path, c.text, f, c.code)
			continue
		}
		say(t, *f, unit.US)
		if !reflect.DeepEqual(j, before) {
			t.Errorf("%s = %q: the job was changed in spite of the fault", c.path, c.text)
		}
	}
	empty := &Job{Units: "us"}
	if f := empty.Set("/pond/depth/note", "x"); f == nil || f.Code != CodeSetMust {
		t.Errorf("a note without a value: %+v", f)
	}
}

// TestSetUnits: bare numbers are read again, as if the units had been others
// from the start; what has its unit stays.
func TestSetUnits(t *testing.T) {
	j := decodeWell(t, head+`, "pond": {"depth": 2, "outline": {"shape": "circle", "length": "9 ft"}}}`)
	if f := j.Set("/units", "metric"); f != nil {
		t.Fatal(say(t, *f, unit.US))
	}
	if j.Units != "metric" || j.Pond.Depth.SI != 2 || j.Pond.Depth.Text != "2" || !near(j.Pond.Outline.Length.SI, 9*unit.Foot) {
		t.Errorf("%+v", j.Pond)
	}
	deep := decodeWell(t, head+`, "pond": {"depth": 60}}`) // 60 ft are well, 60 m are absurd
	if f := deep.Set("/units", "metric"); f == nil || f.Code != CodeRange || deep.Units != "us" {
		t.Errorf("%+v", f)
	}
	// A fault that stood in the job before does not stand in the way.
	faulty, _ := Decode([]byte(head + `, "pumps": [{"watts": "640 W"}]}`))
	if f := faulty.Set("/units", "metric"); f != nil || faulty.Units != "metric" {
		t.Errorf("%+v", f)
	}
}

// TestCloneSharesNothing changes every field of a clone and looks at the first.
func TestCloneSharesNothing(t *testing.T) {
	j := everyField(t)
	before, err := Encode(j)
	if err != nil {
		t.Fatal(err)
	}
	c := j.Clone()
	w := walker{leaf: func(_ *walker, _ *field, v reflect.Value) { v.SetZero() }}
	w.each(c)
	after, err := Encode(j)
	if err != nil || string(before) != string(after) {
		t.Errorf("emptying the clone changed the job (%v)", err)
	}
	if empty := (&Job{}).Clone(); !reflect.DeepEqual(empty, &Job{}) {
		t.Errorf("%+v", empty)
	}
}
