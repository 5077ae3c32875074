package paper

import (
	"math"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/drawing"
)

// TestGluePagesFull: no page of a glue card but the last is less than two thirds
// full, of letters and pictures; and each step's picture stands on its page.
func TestGluePagesFull(t *testing.T) {
	full := 0
	for _, name := range demo.Names() {
		for _, p := range []Paper{Letter, A4} {
			in := input(t, example(t, name), p)
			s := one(t, in, "glue")
			holds(t, name, in, s)
			for i := range s.Pages {
				page := &s.Pages[i]
				low, steps := top, 0
				page.Each(func(it drawing.Item) {
					if _, to := inked(&drawing.Sheet{Height: 1e9, Items: []drawing.Item{it}}); to < page.Height-bottom+1 {
						low = math.Max(low, to)
					}
					if x, ok := it.(drawing.Text); ok && x.Bold && x.Size == hand && strings.Contains(x.Text, ". ") {
						steps++
					}
				})
				used := (low - top) / (page.Height - top - bottom)
				if i < len(s.Pages)-1 {
					full++
					if used < 2.0/3 {
						t.Errorf("%s %s: page %d of %d is %.0f %% full", name, p.Name(), i+1, len(s.Pages), 100*used)
					}
				}
				if len(s.Pages) > 1 && steps == 0 {
					t.Errorf("%s %s: page %d has no step", name, p.Name(), i+1)
				}
			}
		}
	}
	if full < 20 {
		t.Fatalf("only %d pages that are not the last", full)
	}
}

// TestInked: what is drawn, pens and letters too, by hand.
func TestInked(t *testing.T) {
	pen := drawing.Pen{Ink: drawing.Black, Wide: 0.4}
	for _, c := range []struct {
		items    []drawing.Item
		from, to float64
	}{
		{nil, 0, 80},
		{[]drawing.Item{drawing.Line{From: drawing.Point{X: 1, Y: 20}, To: drawing.Point{X: 5, Y: 30}, Pen: pen}}, 19.8, 30.2},
		{[]drawing.Item{drawing.Group{Items: []drawing.Item{drawing.Arc{Centre: drawing.Point{X: 9, Y: 40}, RX: 3, RY: 5, Sweep: 360}}}}, 35, 45},
		{[]drawing.Item{drawing.Polygon{Points: []drawing.Point{{Y: -5}, {Y: 10}, {Y: 95}}}}, 0, 80},
	} {
		from, to := inked(&drawing.Sheet{Height: 80, Items: c.items})
		if math.Abs(from-c.from) > 1e-9 || math.Abs(to-c.to) > 1e-9 {
			t.Errorf("%v: %v to %v, want %v to %v", c.items, from, to, c.from, c.to)
		}
	}
}
