package job

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// decodeField decodes one field of a small job.
func decodeField(t testing.TB, units, field string) (*Job, []trace.Fault) {
	t.Helper()
	j, faults := Decode([]byte(`{"format": "plashet job", "version": 1, "name": "x", "units": "` + units + `", ` + field + `}`))
	if j == nil {
		t.Fatalf("%s: nothing read: %s", field, sayAll(t, faults))
	}
	return j, faults
}

// TestEntryForms: text, bare number and object, in both systems. Expected
// values are the definitions of the units (1 in = 0.0254 m, 1 ft = 0.3048 m, NIST
// Special Publication 811, appendix B.8).
func TestEntryForms(t *testing.T) {
	for _, c := range []struct {
		units, typed string
		text         string
		bare         bool
		si           float64
	}{
		{"us", `"2.5 ft"`, "2.5 ft", false, 0.762},
		{"us", `"2' 6\""`, `2' 6"`, false, 0.762},
		{"us", `"30 in"`, "30 in", false, 0.762},
		{"us", `2.5`, "2.5", true, 0.762},
		{"us", `2.50`, "2.50", true, 0.762},
		{"us", `"2.5"`, "2.5", false, 0.762},
		{"us", `25e-1`, "25e-1", true, 0.762},
		{"us", `0.25E1`, "0.25E1", true, 0.762},
		{"us", `{"value": 2.5}`, "2.5", true, 0.762},
		{"us", `{"value": "2.5 ft", "source": "measured"}`, "2.5 ft", false, 0.762},
		{"metric", `0.762`, "0.762", true, 0.762},
		{"metric", `"76.2 cm"`, "76.2 cm", false, 0.762},
		{"metric", `"2.5 ft"`, "2.5 ft", false, 0.762},
	} {
		j, faults := decodeField(t, c.units, `"pond": {"depth": `+c.typed+`}`)
		e := j.Pond.Depth
		if len(faults) > 0 || e.Text != c.text || e.Bare != c.bare || math.Abs(float64(e.SI)-c.si) > 1e-12 {
			t.Errorf("%s in %s: %+v %s", c.typed, c.units, e, sayAll(t, faults))
		}
	}
}

// A text with a point before three digits may mean thousands where thousands are
// usual; a JSON number cannot.
func TestPointBeforeThreeDigits(t *testing.T) {
	j, faults := decodeField(t, "us", `"pumps": [{"name": "M", "boxFlow": "1.000 gph"}]`)
	f := one(t, faults)
	if f.Code != CodeReadAmbiguous || !j.Pumps[0].BoxFlow.IsZero() {
		t.Errorf("%s, read as %v", f.Code, j.Pumps[0].BoxFlow.SI)
	}
	j, faults = decodeField(t, "metric", `"site": {"waterTemperature": 12.125}, "pond": {"measured": 1.125}, "pumps": [{"name": "M", "watts": 95.125}]`)
	// 1.125 L = 0.001125 m³, by definition of the litre.
	if len(faults) > 0 || math.Abs(float64(j.Pond.Measured.SI)-0.001125) > 1e-12 || j.Pumps[0].Watts.SI != 95.125 {
		t.Errorf("%s: %v and %v", sayAll(t, faults), j.Pond.Measured.SI, j.Pumps[0].Watts.SI)
	}
}

func TestEmptyTextIsLeftEmpty(t *testing.T) {
	j, faults := decodeField(t, "us", `"note": "", "pond": {"depth": "", "water": "", "outline": {"shape": "circle", "length": "9 ft"}}, "site": {"tariff": "", "currency": ""}`)
	if len(faults) > 0 || !j.Pond.Depth.IsZero() || !j.Site.Tariff.IsZero() {
		t.Errorf("%+v %s", j.Pond, sayAll(t, faults))
	}
	for field, path := range map[string]string{
		`"pumps": [{"name": ""}]`:                                 "/pumps/0/name",
		`"pond": {"section": [{"depth": "", "in": 1}]}`:           "/pond/section/0/depth",
		`"prices": [{"item": "a", "price": ""}]`:                  "/prices/0/price",
		`"pond": {"depth": {"value": "", "tolerance": "1 in"}}`:   "/pond/depth/value",
		`"pond": {"depth": {"value": "  ", "tolerance": "1 in"}}`: "/pond/depth/value",
	} {
		_, faults := decodeField(t, "us", field)
		if f := one(t, faults); f.Path != path {
			t.Errorf("%s: fault at %s, expected at %s", field, f.Path, path)
		}
	}
}

func TestTolerance(t *testing.T) {
	for _, c := range []struct {
		field string
		plus  float64 // worked by hand from the definitions of the units
	}{
		{`"pond": {"depth": {"value": "2 ft", "tolerance": "1 in"}}`, 0.0254},
		{`"pond": {"depth": {"value": "2 ft", "tolerance": "± 1/2 in"}}`, 0.0127},
		{`"pond": {"depth": {"value": "2 ft", "tolerance": "+/- 1 in"}}`, 0.0254},
		{`"pond": {"depth": {"value": "2 ft", "tolerance": "10 %"}}`, 0.06096},
		{`"pond": {"depth": {"value": "2 ft", "tolerance": 0.5}}`, 0.1524},
		{`"pond": {"depth": {"value": "2 ft", "tolerance": "0 in"}}`, 0},
	} {
		j, faults := decodeField(t, "us", c.field)
		if got := float64(j.Pond.Depth.Plus); len(faults) > 0 || math.Abs(got-c.plus) > 1e-12 {
			t.Errorf("%s: ± %v, expected %v %s", c.field, got, c.plus, sayAll(t, faults))
		}
	}
	t.Run("temperature is a difference", func(t *testing.T) { // 9 °F are 5 K, whatever the zero
		j, faults := decodeField(t, "us", `"site": {"waterTemperature": {"value": "60 F", "tolerance": "9 F"}, "glueTemperature": {"value": "12 C", "tolerance": 9}}`)
		if got := float64(j.Site.WaterTemperature.Plus); len(faults) > 0 || math.Abs(got-5) > 1e-9 {
			t.Errorf("± %v K %s", got, sayAll(t, faults))
		}
		if got := float64(j.Site.GlueTemperature.Plus); math.Abs(got-5) > 1e-9 {
			t.Errorf("bare: ± %v K", got)
		}
	})
	t.Run("percent are points", func(t *testing.T) {
		j, faults := decodeField(t, "us", `"pond": {"void": {"value": "40 %", "tolerance": "5 %"}}`)
		if got := float64(j.Pond.Void.Plus); len(faults) > 0 || math.Abs(got-0.05) > 1e-12 {
			t.Errorf("± %v %s", got, sayAll(t, faults))
		}
	})
	for field, code := range map[string]string{
		`"pond": {"depth": {"value": "2 ft", "tolerance": "-1 in"}}`:                           CodeTolerance,
		`"pond": {"depth": {"value": "2 ft", "tolerance": "-10 %"}}`:                           CodeTolerance,
		`"pond": {"depth": {"value": "2 ft", "tolerance": "some"}}`:                            CodeTolerance,
		`"pond": {"depth": {"value": "2 ft", "tolerance": "2 gpm"}}`:                           CodeTolerance,
		`"pond": {"depth": {"value": "2 ft", "tolerance": "900 ft"}}`:                          CodeRange,
		`"pond": {"water": {"value": "2 ft", "tolerance": "10 %"}}`:                            CodeToleranceOf,
		`"site": {"waterTemperature": {"value": "60 F", "tolerance": "10 %"}}`:                 CodeToleranceOf,
		`"pond": {"depth": {"value": "2 ft", "tolerance": true}}`:                              CodeWantText,
		`"pond": {"depth": {"value": "2 ft", "source": "measurd"}}`:                            CodeWordNear,
		`"pond": {"depth": {"value": "2 ft", "value": "3 ft"}}`:                                CodeTwice,
		`"pond": {"depth": {"value": "2 ft", "unit": "ft"}}`:                                   CodeUnknown,
		`"pond": {"depth": {"value": ["2 ft"]}}`:                                               CodeWantText,
		`"pond": {"depth": {}}`:                                                                CodeMissing,
		`"pond": {"depth": true}`:                                                              CodeWantUnit,
		`"pond": {"depth": "2 ft and then a very long tale` + strings.Repeat(" on", 40) + `"}`: CodeReadLong,
		`"pond": {"depth": 1e400}`:                                                             CodeReadHuge,
		`"pond": {"depth": 1e-400}`:                                                            CodeRange,
		`"pond": {"depth": 123456789012345678901234567890}`:                                    CodeReadHuge,
	} {
		_, faults := decodeField(t, "us", field)
		if f := one(t, faults); f.Code != code {
			t.Errorf("%s: %s, expected %s", field, f.Code, code)
		}
	}
}

func TestLevel(t *testing.T) {
	for _, c := range []struct {
		typed, point string
		si           float64
	}{
		{`"3 ft"`, "", 0.9144},
		{`-3`, "", -0.9144},
		{`"@rim"`, "rim", 0},
		{`"@ rim "`, "rim", 0},
		{`{"value": "@rim", "tolerance": "1/4 in"}`, "rim", 0},
		{`"@upper lip"`, "upper lip", 0},
		{`"@water + 2 in"`, "water", 0.0508},
		{`"@water - 4 in"`, "water", -0.1016},
		{`"@water -4 in"`, "water", -0.1016},
		{`"@water − 4 in"`, "water", -0.1016},
		{`"@water - 2"`, "water", -0.6096},
		{`"@water - 1' 7-1/2\""`, "water", -0.4953},
		{`"@water + ½ in"`, "water", 0.0127},
		{`"@low-edge - 1 in"`, "low-edge", -0.0254},
		{`"@high - low"`, "high - low", 0},
		{`"@a + b + 1 in"`, "a + b", 0.0254},
	} {
		j, faults := decodeField(t, "us", `"pond": {"rim": `+c.typed+`}`)
		if l := j.Pond.Rim; len(faults) > 0 || l.Point != c.point || math.Abs(float64(l.SI)-c.si) > 1e-12 {
			t.Errorf("%s: point %q, %v m, expected %q, %v m %s", c.typed, l.Point, l.SI, c.point, c.si, sayAll(t, faults))
		}
	}
	for typed, code := range map[string]string{
		`"@"`: CodeReadLevel, `"@ + 2 in"`: CodeReadLevel, `"@water + 2 gpm"`: CodeReadDimension,
		`"@water + 20000 m"`: CodeRange, `"@water - 4 furlongs"`: CodeReadUnit, `"water"`: CodeReadNumber,
	} {
		_, faults := decodeField(t, "us", `"pond": {"rim": `+typed+`}`)
		if f := one(t, faults); f.Code != code {
			t.Errorf("%s: %s, expected %s", typed, f.Code, code)
		}
	}
}

func TestMoney(t *testing.T) {
	for _, c := range []struct{ currency, typed, amount string }{
		{"USD", `"18.40"`, "18.4"},
		{"USD", `18.40`, "18.4"},
		{"USD", `"$1,234.50"`, "1234.5"},
		{"USD", `"18.40 USD"`, "18.4"},
		{"EUR", `1.410`, "1.41"},
		{"EUR", `"12,50"`, "12.5"},
		{"EUR", `0.30`, "0.3"},
	} {
		j, faults := decodeField(t, "us", `"site": {"currency": "`+c.currency+`", "tariff": `+c.typed+`}`)
		sum, err := j.Site.Tariff.Amount(j.Style())
		if len(faults) > 0 || err != nil || sum.Amount.String() != c.amount || sum.Currency != c.currency {
			t.Errorf("%s %s: %v %v %s", c.typed, c.currency, sum, err, sayAll(t, faults))
		}
	}
	for site, code := range map[string]string{
		`"currency": "USD", "tariff": "€ 3"`:        CodeReadCurrency,
		`"currency": "USD", "tariff": "-3"`:         CodeMoneyBelow,
		`"currency": "USD", "tariff": -0.01`:        CodeMoneyBelow,
		`"currency": "USD", "tariff": "cheap"`:      CodeReadNumber,
		`"currency": "USD", "tariff": {"value": 3}`: CodeWantMoney,
		`"currency": "EUR", "tariff": "1.410"`:      CodeReadAmbiguous,
		`"currency": "Euro"`:                        CodeCurrency,
		`"tariff": "EUR three"`:                     CodeReadNumber,
		`"tariff": 1e3`:                             CodeReadTrailing,
	} {
		_, faults := decodeField(t, "us", `"site": {`+site+`}`)
		if f := one(t, faults); f.Code != code {
			t.Errorf("%s: %s, expected %s", site, f.Code, code)
		}
	}
	for _, site := range []string{`"tariff": "$0.18"`, `"tariff": "0.18 EUR"`, `"tariff": 0.18`} { // no currency said: the figure counts
		if _, faults := decodeField(t, "us", `"site": {`+site+`}`); len(faults) > 0 {
			t.Errorf("%s: %s", site, sayAll(t, faults))
		}
	}
}

func TestDates(t *testing.T) {
	for date, ok := range map[string]bool{ // Gregorian calendar: ISO 8601
		"2026-05-14": true, "2024-02-29": true, "2000-02-29": true, "2100-02-29": false, "2026-02-29": false,
		"2026-04-31": false, "2026-13-01": false, "2026-00-10": false, "2026-1-1": false, "14.05.2026": false, "+026-05-14": false, "2026-05-+4": false,
	} {
		if got := validDate(date); got != ok {
			t.Errorf("%s: %v", date, got)
		}
	}
}

// TestQuantities: every figure is listed with its path, in order, as typed and
// as read; a bare one says which unit it took.
func TestQuantities(t *testing.T) {
	j := decodeWell(t, head+`, "site": {"waterTemperature": 60, "tariff": "0.18", "daysPerYear": 365},
		"pond": {"depth": {"value": "15-1/2", "source": "guess", "tolerance": "10 %", "note": "by eye"}, "rim": "@water + 2"},
		"pumps": [{"name": "A", "maxHead": "10 psi"}]}`)
	var got []string
	for path, q := range j.Quantities() {
		got = append(got, fmt.Sprintf("%s: %q %s [%s] bare %v point %q source %q plus %q density %v",
			path, q.Text, q.Read.Format(unit.US), q.Unit, q.Bare, q.Point, q.Source, q.Plus.Format(unit.US), q.DensityKgM3))
	}
	want := []string{
		`/site/waterTemperature: "60" 60 °F [°F] bare true point "" source "" plus "0" density 0`,
		`/site/daysPerYear: "365" 365 [] bare false point "" source "" plus "0" density 0`,
		`/site/tariff: "0.18" 0 [] bare false point "" source "" plus "0" density 0`,
		`/pond/depth: "15-1/2" 15' 6" [ft] bare true point "" source "guess" plus "1' 6-1/2\"" density 0`,
		`/pond/rim: "@water + 2" 2.00 ft [ft] bare true point "water" source "" plus "0" density 0`,
		`/pumps/0/maxHead: "10 psi" 23.07 ft [psi] bare false point "" source "" plus "0" density 1000`,
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	for range j.Quantities() { // stopping early is well
		break
	}
}
