package job

import (
	"strings"
	"testing"

	"plashet/engine/unit"
)

// TestStyleOfJob: what is said, and what follows where nothing is. By hand, from
// the habits of CLDR 48 (engine/unit/currencies.go).
func TestStyleOfJob(t *testing.T) {
	for _, c := range []struct {
		units, currency string
		numbers         Numbers
		want            string
		said            bool
	}{
		{"us", "USD", Numbers{}, "$1,234.50", false},
		{"us", "", Numbers{}, "1,234.50 EUR", false},
		{"metric", "EUR", Numbers{}, "1.234,50 €", false},
		{"us", "EUR", Numbers{}, "1,234.50 €", false},
		{"metric", "EUR", Numbers{Decimal: "point"}, "1,234.50 €", true},
		{"metric", "EUR", Numbers{Thousands: "space"}, "1\u202f234,50 €", false},
		{"metric", "EUR", Numbers{Thousands: "comma"}, "1,234.50 €", true},
		{"metric", "EUR", Numbers{Decimal: "comma", Thousands: "none"}, "1234,50 €", true},
		{"metric", "EUR", Numbers{Money: "code", Side: "before"}, "EUR 1.234,50", false},
		{"metric", "EUR", Numbers{Side: "before"}, "€1.234,50", false},
		{"metric", "EUR", Numbers{Decimal: "comma", Thousands: "comma"}, "1.234,50 €", true}, // told as a fault
		{"us", "USD", Numbers{Decimal: "comma"}, "$1.234,50", true},
		{"metric", "CHF", Numbers{}, "CHF 1'234.50", false},
	} {
		j := &Job{Units: c.units, Site: Site{Currency: c.currency}, Numbers: c.numbers}
		st := j.Style()
		currency := c.currency
		if currency == "" {
			currency = "EUR"
		}
		m, err := unit.ParseMoney("1234.50", currency)
		if got := m.Format(st); err != nil || got != c.want || st.Said != c.said {
			t.Errorf("%+v writes %q, said %v, want %q, %v (%v)", c, got, st.Said, c.want, c.said, err)
		}
		if j.System().Marks() != st.Marks {
			t.Errorf("%+v: numbers have %+v, amounts %+v", c, j.System().Marks(), st.Marks)
		}
	}
}

// TestReadByNumbers: what is typed is read by the marks of the job, and kept as
// typed.
func TestReadByNumbers(t *testing.T) {
	const comma = `"numbers": {"decimal": "comma"}, `
	for _, c := range []struct {
		doc      string
		altitude unit.Length
		tariff   string
	}{
		{comma + `"site": {"currency": "EUR", "altitude": "1.250,5 m", "tariff": "1.234,50 EUR"}`, 1250.5, "1234.5"},
		{comma + `"site": {"currency": "EUR", "altitude": "12,5 m", "tariff": "0,305"}`, 12.5, "0.305"},
		{comma + `"site": {"currency": "EUR", "altitude": 12.125, "tariff": 1.250}`, 12.125, "1.25"}, // a number of JSON has a point
		{`"site": {"currency": "EUR", "altitude": "1.250 m", "tariff": "0,30"}`, 1.25, "0.3"},
	} {
		j, faults := decodeField(t, "metric", c.doc)
		sum, err := j.Site.Tariff.Amount(j.Style())
		if len(faults) > 0 || err != nil {
			t.Fatalf("%s: %v %s", c.doc, err, sayAll(t, faults))
		}
		if got := j.Site.Altitude.SI; got != c.altitude || sum.Amount.String() != c.tariff {
			t.Errorf("%s: %v and %s", c.doc, got, sum)
		}
		again, err := Encode(j)
		if err != nil || !strings.Contains(string(again), j.Site.Tariff.Text) || !strings.Contains(string(again), j.Site.Altitude.Text) {
			t.Errorf("%s is kept as %s", c.doc, again)
		}
	}
	for doc, code := range map[string]string{
		comma + `"site": {"currency": "EUR", "tariff": "1,234"}`:     CodeReadUnclear,
		comma + `"site": {"currency": "EUR", "altitude": "1.250 m"}`: CodeReadUnclear,
		`"site": {"currency": "EUR", "tariff": "1,234"}`:             CodeReadAmbiguous,
		`"numbers": {"decimal": "comma", "thousands": "comma"}`:      CodeNumbersSame,
		`"numbers": {"decimal": "semicolon"}`:                        CodeWord,
		`"numbers": {"decimal": "coma"}`:                             CodeWordNear,
	} {
		_, faults := Read([]byte(`{"format": "plashet job", "version": 1, "name": "x", "units": "metric", ` + doc + `}`))
		if f := one(t, faults); f.Code != code {
			t.Errorf("%s: %s, expected %s", doc, f.Code, code)
		}
	}
}

// TestSetNumbers: other marks are refused where something typed would mean
// another amount or length than before.
func TestSetNumbers(t *testing.T) {
	j, faults := decodeField(t, "metric", `"site": {"currency": "EUR", "altitude": "1.250 m", "tariff": "0,30"}`)
	if len(faults) > 0 {
		t.Fatal(sayAll(t, faults))
	}
	if f := j.Set("/numbers/decimal", "comma"); f == nil || f.Code != CodeSetNumbers || j.Numbers.Decimal != "" {
		t.Errorf("1.250 m is turned into another length: %v", f)
	}
	for _, s := range []struct{ path, text string }{{"/site/altitude", "1,25 m"}, {"/numbers/decimal", "comma"}, {"/site/altitude", "1.250,5 m"}, {"/numbers/money", "code"}} {
		if f := j.Set(s.path, s.text); f != nil {
			t.Errorf("%s cannot be %q: %s", s.path, s.text, f.Code)
		}
	}
	if j.Site.Altitude.SI != 1250.5 {
		t.Errorf("the altitude is read as %v m", j.Site.Altitude.SI)
	}
	if f := j.Set("/numbers/decimal", "point"); f == nil && j.Site.Altitude.SI != 1250.5 {
		t.Errorf("the altitude moved to %v", j.Site.Altitude.SI)
	}
	if f := j.Set("/numbers/thousands", "point"); f == nil || f.Code != CodeNumbersSame {
		t.Errorf("one mark does both: %v", f)
	}
}
