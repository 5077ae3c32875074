package arrange

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A program by hand: least 2x + 3y with x + y >= 4, x <= 3, y <= 2.5, x - y >= -1
// is at (3, 1), worth 9.
func TestProgramByHand(t *testing.T) {
	var p program
	p.reset([]float64{2, 3})
	p.row([]float64{-1, -1}, -4)
	p.row([]float64{1, 0}, 3)
	p.row([]float64{0, 1}, 2.5)
	p.row([]float64{-1, 1}, 1)
	if !p.solve() || math.Abs(p.value()-9) > 1e-12 {
		t.Fatalf("value %g, want 9", p.value())
	}
	p.row([]float64{1, 1}, 3.9)
	if p.solve() {
		t.Fatal("a program without solution was solved")
	}
}

// The least over random programs is at a corner: the best of all corners, found
// by solving every pair of rows in the plane, is the same.
func TestProgramAtCorners(t *testing.T) {
	solved, empty := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		// Sixty-fourths: rows nearly in line have no corner that tells anything.
		draw := rapid.Map(rapid.IntRange(-64, 64), func(n int) float64 { return float64(n) / 64 })
		c := []float64{math.Abs(draw.Draw(t, "c")), math.Abs(draw.Draw(t, "c"))}
		rows := [][3]float64{{-1, 0, 0}, {0, -1, 0}, {1, 0, 3}, {0, 1, 3}}
		for range rapid.IntRange(1, 8).Draw(t, "rows") {
			rows = append(rows, [3]float64{draw.Draw(t, "a"), draw.Draw(t, "a"), draw.Draw(t, "b")})
		}
		var p program
		p.reset(c)
		ok := true
		for _, r := range rows[2:] {
			p.row(r[:2], r[2])
			ok = ok && p.solve() // step by step, as a search does
		}
		best, slack := math.Inf(1), math.Inf(-1)
		for i := range rows {
			for k := range i {
				a, b := rows[i], rows[k]
				det := a[0]*b[1] - a[1]*b[0]
				if math.Abs(det) < 1e-6 {
					continue
				}
				x, y := (a[2]*b[1]-a[1]*b[2])/det, (a[0]*b[2]-a[2]*b[0])/det
				least := math.Inf(1)
				for _, r := range rows {
					least = math.Min(least, r[2]-r[0]*x-r[1]*y)
				}
				slack = math.Max(slack, least)
				if least >= -1e-9 {
					best = math.Min(best, c[0]*x+c[1]*y)
				}
			}
		}
		switch {
		case ok && (slack < -1e-6 || math.Abs(p.value()-best) > 1e-6):
			t.Fatalf("solved to %g, corners say %g (slack %g)", p.value(), best, slack)
		case !ok && slack > 1e-6:
			t.Fatalf("not solved, corners say %g", best)
		case ok:
			solved++
		default:
			empty++
		}
	})
	if solved == 0 || empty == 0 {
		t.Fatalf("%d solved, %d empty: nothing is proved", solved, empty)
	}
}
