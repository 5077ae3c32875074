package unit

import (
	"math"
	"testing"
)

// The unrounded number is the one that is printed, before its rounding.
func TestInIsWhatIsPrinted(t *testing.T) {
	for k := KindNone + 1; k < kindEnd; k++ {
		for _, s := range []System{US, Metric} {
			want := kindUnits[k][s].number(0.12345)
			if got := (Value{SI: 0.12345, Kind: k}).In(s); math.Abs(got-want) > 1e-12*math.Abs(want) {
				t.Errorf("%s: %v, want %v", k.Name(), got, want)
			}
		}
	}
	// The inch is 25.4 mm (international inch, 1959; NIST SP 811, appendix B.8).
	if got := Of(254*Millimetre, KindTape).In(US); math.Abs(got-10) > 1e-12 {
		t.Error(got)
	}
	if got := Of(254*Millimetre, KindTape).In(Metric); math.Abs(got-254) > 1e-9 {
		t.Error(got)
	}
}
