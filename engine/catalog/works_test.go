package catalog

import (
	"strings"
	"testing"

	"plashet/engine/unit"
)

// TestWorks: the practice rows as typed ranges.
func TestWorks(t *testing.T) {
	for _, c := range []struct {
		what      string
		low, high float64
		wantLow   float64
		wantHigh  float64
		source    string
	}{
		{"liner overlap, ft", float64(book.LinerOverlap().Low / unit.Foot), float64(book.LinerOverlap().High / unit.Foot), 1, 1.5, "gardening article"},
		{"liner overlap in all, ft", float64(book.LinerOverlapTotal().Low / unit.Foot), float64(book.LinerOverlapTotal().High / unit.Foot), 2, 3, "four trade pages"},
		{"underlayment, layers", book.UnderlayLayers().Low, book.UnderlayLayers().High, 1, 2, "trade pages"},
		{"pond per ton, ft2", float64(book.RockCover().Low / unit.SquareFoot), float64(book.RockCover().High / unit.SquareFoot), 40, 65, "four trade pages"},
		{"gravel share", float64(book.GravelShare().Low), float64(book.GravelShare().High), 0.25, 0.45, "three trade pages"},
		{"stream boulders, tons", float64(book.StreamBoulders().Low / unit.ShortTon), float64(book.StreamBoulders().High / unit.ShortTon), 0.75, 1.5, "three trade pages"},
		{"stream gravel, tons", float64(book.StreamGravel().Low / unit.ShortTon), float64(book.StreamGravel().High / unit.ShortTon), 0.25, 0.5, "three trade pages"},
		// 150 and 170 lb/ft3, 2700 and 3200 lb/yd3 in kg/m3: lb 0.45359237 kg, ft 0.3048 m.
		{"rock, kg/m3", float64(book.SolidRock().Low), float64(book.SolidRock().High), 2402.77, 2723.14, "stone yard page"},
		{"loose gravel, kg/m3", float64(book.LooseGravel().Low), float64(book.LooseGravel().High), 1601.85, 1898.48, "stone yard page"},
		{"voids", float64(book.StoneVoid().Low), float64(book.StoneVoid().High), 0.29, 0.29, "trade page"},
	} {
		if !near1e(c.low, c.wantLow, 0.01) || !near1e(c.high, c.wantHigh, 0.01) {
			t.Errorf("%s: %g to %g, want %g to %g (%s)", c.what, c.low, c.high, c.wantLow, c.wantHigh, c.source)
		}
	}
	if s := book.RockCover().Source; !strings.Contains(s.Note, "CONTRADICTION") {
		t.Errorf("the two rules for rock contradict one another and must say so: %+v", s)
	}
}

// TestSwell: Construction Planning, Equipment and Methods, Table 4-1, as quoted.
func TestSwell(t *testing.T) {
	for soil, want := range map[string][2]float64{
		"sand or gravel": {0.05, 0.15}, "top soil": {0.10, 0.25}, "loam": {0.10, 0.35}, "common earth": {0.20, 0.45}, "clay": {0.30, 0.60}, "rock": {0.50, 0.80},
	} {
		s, err := book.SoilSwell(soil)
		if err != nil || !near1e(float64(s.Low), want[0], 1e-9) || !near1e(float64(s.High), want[1], 1e-9) || s.Source.Title == "" {
			t.Errorf("%s swells by %v to %v (%v), want %v", soil, s.Low, s.High, err, want)
		}
	}
	if len(book.Soils()) != 6 {
		t.Errorf("soils %v", book.Soils())
	}
	_, err := book.SoilSwell("common erth")
	if near := fails(t, err, CodeSoilUnknown); !strings.Contains(near, "common earth") {
		t.Errorf("near %q", near)
	}
}

func TestRules(t *testing.T) {
	for _, topic := range book.Topics() {
		rules := book.Rules(topic)
		if len(rules) == 0 {
			t.Errorf("topic %s has no rules", topic)
		}
		for _, r := range rules {
			if r.Topic != topic || r.Name == "" || r.Source.Title == "" || (r.HasRange && r.Low > r.High && r.Name != "retaining: 1 ton of 12-18 in covers / 18-24 in covers" && !strings.HasPrefix(r.Name, "cable depth")) {
				t.Errorf("%+v", r)
			}
		}
	}
	if book.Rules("fish") != nil {
		t.Error("the book has no rules for fish")
	}
}
