package unit

import (
	"errors"
	"math"
	"testing"
)

// FuzzParse: whatever the text, Parse gives a ParseError that keeps its
// promises, or a finite number in range that prints, reads back to within half
// a step and prints the same again. Further seeds stand in testdata/fuzz.
func FuzzParse(f *testing.F) {
	for _, k := range allKinds() {
		for i, s := range systems {
			f.Add(k.Example(s), uint8(k), i == 1)
		}
	}
	f.Fuzz(func(t *testing.T, text string, kind uint8, metric bool) {
		k, s := Kind(kind), US
		if metric {
			s = Metric
		}
		r, err := Parse(text, k, s)
		if err != nil {
			var pe *ParseError
			if !errors.As(err, &pe) || r != (Reading{}) {
				t.Fatalf("%q gives %+v and %v", text, r, err)
			}
			checkError(t, pe, text, k, s)
			return
		}
		if math.IsNaN(r.SI) || math.IsInf(r.SI, 0) || math.Signbit(r.SI) && r.SI == 0 || r.Kind != k {
			t.Fatalf("%q is %+v", text, r)
		}
		checkRoundTrip(t, Value{SI: r.SI, Kind: k}, s)
	})
}

// FuzzParseMoney: what is read prints and reads back exactly.
func FuzzParseMoney(f *testing.F) {
	for _, text := range []string{"18.40", "$1,234.50", "-5 USD", "€ 12,50", "1.410", "$-5", "1e9", "¥"} {
		for _, c := range []string{"USD", "EUR", "JPY", "INR", "x"} {
			f.Add(text, c)
		}
	}
	f.Fuzz(func(t *testing.T, text, currency string) {
		m, err := ParseMoney(text, currency)
		if err != nil {
			var pe *ParseError
			if !errors.As(err, &pe) {
				t.Fatalf("%q gives %v", text, err)
			}
			checkError(t, pe, text, KindMoney, US)
			return
		}
		back, err := ParseMoney(m.Format(coded), currency)
		if err != nil || !back.Amount.Equal(m.Round().Amount) || back.Format(coded) != m.Format(coded) {
			t.Fatalf("%q prints as %q, which reads as %s (%v)", text, m.Format(coded), back.Format(coded), err)
		}
	})
}
