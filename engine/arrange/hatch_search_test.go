package arrange_test

import (
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// TestHatchLarger: under a hatch a quarter of an inch narrower than the pump is
// high and wide, no way of turning or leaning it helps. The hatch must grow by that
// quarter of an inch to either side, no less; along its length nothing helps.
// Worked out by hand from the sizes: 6-1/2 in of pump, 6-1/4 in of hatch.
func TestHatchLarger(t *testing.T) {
	i := underHatch(t, 1, 29, 5.875, 12.125)
	out := arrange.Search(t.Context(), i, nil)
	if len(out.Layouts) > 0 || out.Stage != arrange.StageOut {
		t.Fatalf("%d layouts, %s", len(out.Layouts), out.Stage)
	}
	told := map[string]bool{}
	for _, c := range out.Short {
		switch code := c.What.Code; code {
		case arrange.ChangeHatchFront, arrange.ChangeHatchBack:
			told[code] = true
			if off := c.By - 0.25*unit.Inch; off < -1e-6 || off > 0.01*unit.Inch || !c.Sure {
				t.Errorf("%s: %v in, proved least %v", code, c.By/unit.Inch, c.Sure)
			}
			if o := c.Layout.Chain.Vault.Opening; o == (layout.Opening{}) || o.ToY-o.FromY < 6.5*unit.Inch-1e-9 {
				t.Errorf("%s: laid under %v", code, o)
			}
		default:
			t.Errorf("%s by %v in is told", code, c.By/unit.Inch)
		}
	}
	if len(told) != 2 {
		t.Errorf("told: %v", told)
	}
}
