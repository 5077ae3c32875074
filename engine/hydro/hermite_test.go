package hydro

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// The curves of testdata/vectors.py.
var pchipCurves = map[string][2][]float64{
	"M":     {{0, 18, 32, 44, 54, 63, 71, 78, 84, 92, 102}, {24, 22, 20, 18, 16, 14, 12, 10, 8, 5, 0}},
	"level": {{0, 5, 6, 20, 21, 40}, {10, 10, 9, 9, 3, 0}},
	"few":   {{0, 7, 30}, {12, 9, 1}},
	"two":   {{3, 30}, {12, 1}},
	"watts": {{0, 20, 60, 100}, {300, 360, 395, 380}},
}

// scipy's PchipInterpolator, value and slope (testdata/README.md): the rule is
// the same to the last digits.
func TestPCHIPVectors(t *testing.T) {
	names, rows := vectors(t, "pchip", 1)
	seen := map[string]bool{}
	for i, r := range rows {
		c, known := pchipCurves[names[i][0]]
		if !known {
			t.Fatalf("no curve %q", names[i][0])
		}
		seen[names[i][0]] = true
		y, dy := newPCHIP(c[0], c[1]).at(r[0])
		near(t, names[i][0]+" value", y, r[1], 1e-13, 1e-13)
		near(t, names[i][0]+" slope", dy, r[2], 1e-11, 1e-12)
	}
	if len(seen) != len(pchipCurves) {
		t.Errorf("vectors for %d curves, want %d", len(seen), len(pchipCurves))
	}
}

// Fritsch and Butland's first form (1984, without the widths) on the thirteen
// points of the reference's curve, against the form used here: the difference
// that the comment of newPCHIP tells.
func TestPCHIPFirstFormDifference(t *testing.T) {
	x := []float64{0, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000, 1100, 1200}
	y := []float64{200, 199, 196, 192, 190, 186, 180, 175, 165, 155, 140, 125, 100}
	d := make([]float64, len(x))
	pchipSlopes(x, y, d)
	for i := 1; i < len(x)-1; i++ {
		m0, m1 := (y[i]-y[i-1])/100, (y[i+1]-y[i])/100
		small, great := min(math.Abs(m0), math.Abs(m1)), max(math.Abs(m0), math.Abs(m1))
		d[i] = -3 * small * great / (great + 2*small)
	}
	first, ours := newHermite(x, y, d), newPCHIP(x, y)
	worst := 0.0
	for q := 0.0; q <= 1200; q++ {
		a, _ := first.at(q)
		b, _ := ours.at(q)
		worst = max(worst, math.Abs(a-b))
	}
	t.Logf("worst difference %.3f ft", worst)
	if worst < 0.2 || worst > 0.26 {
		t.Errorf("the two forms differ by %.3f ft: mend the comment of newPCHIP", worst)
	}
}

// Through falling points the curve never rises, and meets every point.
func TestPCHIPMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 12).Draw(t, "points")
		x, y := make([]float64, n), make([]float64, n)
		for i := range x {
			x[i] = rapid.Float64Range(0, 10).Draw(t, "x")
			y[i] = float64(rapid.IntRange(0, 40).Draw(t, "y"))
		}
		slices.Sort(x)
		for i := 1; i < n; i++ {
			if x[i]-x[i-1] < 1e-6 {
				t.Skip("points too near")
			}
		}
		slices.Sort(y)
		slices.Reverse(y)
		h := newPCHIP(x, y)
		const steps = 400
		last := y[0]
		for i := range steps + 1 {
			at := x[0] + (x[n-1]-x[0])*float64(i)/steps
			v, slope := h.at(at)
			if v > last+1e-9 || slope > 1e-9*(1+y[0]/(x[n-1]-x[0])) {
				t.Fatalf("rises at %g: %g after %g, slope %g", at, v, last, slope)
			}
			last = v
		}
		for i := range x {
			if v, _ := h.at(x[i]); math.Abs(v-y[i]) > 1e-9 {
				t.Fatalf("misses point %d: %g, want %g", i, v, y[i])
			}
		}
	})
}
