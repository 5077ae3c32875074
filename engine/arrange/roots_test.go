package arrange

import (
	"math"
	"testing"
)

// The rolls at which a gap closes, for gaps whose roots are known by hand: the
// distance from a point on the unit circle to a line, and to a stretch of it.
func TestRoots(t *testing.T) {
	const near = 1e-7
	for _, c := range []struct {
		name string
		gap  func(float64) float64
		want []float64 // each is one of the roots that come back, whole turns apart
		n    int
	}{
		{"cosine is 0.3", func(x float64) float64 { return math.Abs(math.Cos(x) - 0.3) }, []float64{math.Acos(0.3), -math.Acos(0.3)}, 2},
		{"sine is at least 0.5", func(x float64) float64 { return math.Max(0, 0.5-math.Sin(x)) }, []float64{math.Pi / 6, 5 * math.Pi / 6, math.Pi / 2}, 3},
		{"over the turn's end", func(x float64) float64 { return math.Max(0, 0.9-math.Cos(x)) }, []float64{-math.Acos(0.9), math.Acos(0.9), 0}, 3},
		{"narrower than a step", func(x float64) float64 { return math.Max(0, math.Abs(math.Mod(x+20*math.Pi, 2*math.Pi)-1)-1e-3) }, []float64{1 - 1e-3, 1 + 1e-3, 1}, 3},
		{"none", func(x float64) float64 { return 1.1 + math.Cos(x) }, nil, 0},
		{"no walls fit", func(float64) float64 { return math.Inf(1) }, nil, 0},
	} {
		got := roots(c.gap)
		if len(got) != c.n {
			t.Errorf("%s: roots %v, want %d", c.name, got, c.n)
		}
		for _, g := range got {
			if c.gap(g) > rollClosed {
				t.Errorf("%s: %g is no root: %g", c.name, g, c.gap(g))
			}
		}
		for _, w := range c.want {
			some := false
			for _, g := range got {
				some = some || math.Abs(math.Remainder(g-w, 2*math.Pi)) < near
			}
			if !some {
				t.Errorf("%s: %g is not among %v", c.name, w, got)
			}
		}
	}
}
