package arrange

import (
	"math"
	"testing"

	"plashet/engine/layout"
	"plashet/engine/unit"
)

// A hatch over a round vault is made larger only as far as its corners stay within
// the rim.
func TestHatchGrowsWithinRim(t *testing.T) {
	s := &search{lim: layout.Settings{}.InForce()}
	r := 13 * unit.Inch
	s.in.Vault = layout.Vault{Round: true, Length: 2 * r, Depth: 30 * unit.Inch}
	s.in.Vault.Opening = layout.Opening{FromX: 6 * unit.Inch, ToX: 18 * unit.Inch, FromY: 5 * unit.Inch, ToY: 20 * unit.Inch}
	list := s.hatches()
	if len(list) != 4 {
		t.Fatalf("%d sides", len(list))
	}
	for _, g := range list {
		for _, c := range [2]struct {
			by   float64
			fits bool
		}{{g.upTo() + float64(s.lim.Step), true}, {g.upTo() + 2*float64(s.lim.Step), false}} {
			o := g.made(s.in, unit.Length(c.by)).Vault.Opening
			far := math.Hypot(math.Max(float64(r-o.FromX), float64(o.ToX-r)), math.Max(float64(r-o.FromY), float64(o.ToY-r)))
			if fits := far <= float64(r)+1e-9; fits != c.fits {
				t.Errorf("%s by %v m: the corner %v m from the middle", g.code, c.by, far)
			}
		}
	}
}
