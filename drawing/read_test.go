package drawing

import (
	"math"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/unit"
)

// These tests read the sheets as a person does, by ticks, lines and letters,
// and hold what they read against the answer.

func sheet(t *testing.T, all []Sheet, name string) *Sheet {
	t.Helper()
	for i := range all {
		if all[i].Name == name {
			return &all[i]
		}
	}
	t.Fatalf("there is no sheet %s", name)
	return nil
}

// group gives the items of a group by name.
func group(t *testing.T, items []Item, name string) []Item {
	t.Helper()
	for _, it := range items {
		if g, ok := it.(Group); ok && g.Name == name {
			return g.Items
		}
	}
	t.Fatalf("there is no group %q", name)
	return nil
}

// number reads a printed number, with grouping commas and a typographic minus.
func number(t *testing.T, s string, k unit.Kind, sys unit.System) float64 {
	t.Helper()
	m := sys.Marks()
	m.Said = true // by whoever reads it
	v, err := unit.Parse(strings.NewReplacer("−", "-", string(m.Group), "").Replace(s), k, sys.With(m))
	if err != nil {
		t.Fatalf("%q: %v", s, err)
	}
	return v.SI
}

// TestCutLengths: every cut length of the answer stands on every sheet of the
// assembly, once at its piece and once in the list, and no other does.
func TestCutLengths(t *testing.T) {
	for _, name := range demo.Names() {
		in, all := draw(t, example(t, name))
		sys := in.Result.Units
		for _, c := range Corners() {
			s := sheet(t, all, "assembly-"+c.String())
			at := map[string]float64{}
			for _, x := range group(t, s.Items, "marks") {
				if txt, ok := x.(Text); ok && txt.Bold {
					mark, cut, _ := strings.Cut(txt.Text, " ")
					at[mark] = number(t, cut, unit.KindTape, sys)
				}
			}
			if len(at) != len(in.Result.Assembly.Pieces) {
				t.Errorf("%s %s: %d pieces are marked, the answer has %d", name, c, len(at), len(in.Result.Assembly.Pieces))
			}
			list := lines(s)
			for _, p := range in.Result.Assembly.Pieces {
				// Cut lengths are rounded to the step they are printed in, so they
				// read back to the micrometre.
				if got, ok := at[p.Mark]; !ok || math.Abs(got-float64(p.Cut)) > 1e-6 {
					t.Errorf("%s %s: piece %s is marked %v m, the answer cuts %v m", name, c, p.Mark, got, p.Cut)
				}
				found := false
				for _, l := range list {
					if strings.TrimSuffix(l[0], " *") == p.Mark && len(l) == 5 {
						found = true
						for i, want := range []unit.Length{p.Cut, p.Ends[0].Mark, p.Ends[1].Mark} {
							near := 1e-6
							if i > 0 { // an insertion mark is drawn as near as the tape goes
								near += unit.Of(want, unit.KindTape).Step(sys) / 2
							}
							if got := number(t, l[i+2], unit.KindTape, sys); math.Abs(got-float64(want)) > near {
								t.Errorf("%s %s: the list has %q for piece %s, the answer %v m", name, c, l[i+2], p.Mark, want)
							}
						}
						if strings.HasSuffix(l[0], "*") == (p.Ends[0].Sure && p.Ends[1].Sure) {
							t.Errorf("%s %s: the star of %q is wrong", name, c, l[0])
						}
					}
				}
				if !found {
					t.Errorf("%s %s: piece %s is not in the list", name, c, p.Mark)
				}
			}
		}
	}
}

// lines gives the level texts of a sheet line by line, each from left to right.
func lines(s *Sheet) [][]string {
	byY := map[float64][]Text{}
	var order []float64
	for _, x := range texts(s) {
		if byY[x.At.Y] == nil {
			order = append(order, x.At.Y)
		}
		byY[x.At.Y] = append(byY[x.At.Y], x)
	}
	var out [][]string
	for _, y := range order {
		var l []string
		for _, x := range byY[y] {
			l = append(l, x.Text)
		}
		out = append(out, l)
	}
	return out
}

// TestOperatingPoint: the ring on the plot, read against the ticks, is the flow
// and head of the answer, and both curves run through it.
func TestOperatingPoint(t *testing.T) {
	for _, name := range demo.Names() {
		in, all := draw(t, example(t, name))
		s, d := sheet(t, all, "curve"), in.Result.Delivery
		var xs, ys []tick
		var last Line
		for _, it := range group(t, s.Items, "axes") {
			switch v := it.(type) {
			case Line:
				last = v
			case Text:
				switch {
				case strings.Contains(v.Text, " "): // an axis' name
				case v.Anchor == Middle:
					xs = append(xs, tick{last.From.X, number(t, v.Text, unit.KindFlow, in.Result.Units)})
				default:
					ys = append(ys, tick{last.From.Y, number(t, v.Text, unit.KindHead, in.Result.Units)})
				}
			}
		}
		var ring Point
		for _, it := range group(t, s.Items, "operating point") {
			if x, ok := it.(Arc); ok {
				ring = x.Centre
			}
		}
		flow, head := between(xs, ring.X), between(ys, ring.Y)
		if math.Abs(flow-float64(d.Flow)) > 1e-9 || math.Abs(head-float64(d.Head)) > 1e-9 {
			t.Errorf("%s: the ring stands at %g m³/s, %g m; the answer is %g, %g", name, flow, head, float64(d.Flow), float64(d.Head))
		}
		for _, g := range []string{"system", "pump " + d.Pump} {
			near := math.Inf(1)
			for _, it := range group(t, s.Items, g) {
				if l, ok := it.(Polyline); ok {
					for i := 1; i < len(l.Points); i++ {
						near = min(near, apart(ring, l.Points[i-1], l.Points[i]))
					}
				}
			}
			if near > 0.1 { // mm: between two points of a curve the line is straight
				t.Errorf("%s: the line of %s passes the ring %.2f mm off", name, g, near)
			}
		}
	}
}

// tick is a line of the grid with the number at it.
type tick struct{ mm, si float64 }

// between reads a place against the first and the last tick.
func between(ticks []tick, mm float64) float64 {
	a, b := ticks[0], ticks[len(ticks)-1]
	return a.si + (b.si-a.si)*(mm-a.mm)/(b.mm-a.mm)
}

// apart gives the distance of a point from a line between two others.
func apart(p, a, b Point) float64 {
	d := b.Sub(a)
	t := max(0, min(1, ((p.X-a.X)*d.X+(p.Y-a.Y)*d.Y)/(d.X*d.X+d.Y*d.Y)))
	return p.Sub(a.Add(d.Scale(t))).Norm()
}

// TestColumns: the columns' heights are to scale with the figures on them, the
// water line and the rim.
func TestColumns(t *testing.T) {
	for _, name := range demo.Names() {
		in, all := draw(t, example(t, name))
		s := sheet(t, all, "levels")
		b, ok := basinOf(in)
		if !ok {
			t.Fatal(name)
		}
		var figures []Text
		var tops []Line
		for _, it := range group(t, s.Items, "levels of the pond") {
			switch x := it.(type) {
			case Text:
				if x.Bold {
					figures = append(figures, x)
				}
			case Line:
				tops = append(tops, x)
			}
		}
		if len(figures) != 5 || len(tops) != 5 {
			t.Fatalf("%s: %d figures on %d columns", name, len(figures), len(tops))
		}
		half := unit.Of(unit.Length(0), unit.KindDepth).Step(in.Result.Units) / 2
		// The rim's line and the column at rest, which stands at the water line,
		// give the scale.
		rim := group(t, s.Items, "limits")[0].(Line)
		perMM := float64(b.rim-b.line) / (tops[0].From.Y - rim.From.Y)
		for i := range tops {
			want := (tops[0].From.Y - tops[i].From.Y) * perMM
			if got := number(t, figures[i].Text, unit.KindDepth, in.Result.Units); math.Abs(got-want) > half*1.001 {
				t.Errorf("%s: column %d stands at %g m by its height and says %q", name, i, want, figures[i].Text)
			}
		}
	}
}

// TestIsometric: the three axes are drawn to one scale at 120 degrees to each
// other, and the upright is upright (ISO 5456-3, isometric axonometry).
func TestIsometric(t *testing.T) {
	for _, c := range Corners() {
		v := newView(c)
		x, y := c.signs()
		// The near ends of the axes from the corner looked over.
		a := []Point{v.along(vec(-x, 0, 0)), v.along(vec(0, -y, 0)), v.along(vec(0, 0, 1))}
		for i := range a {
			b := a[(i+1)%3]
			cos := (a[i].X*b.X + a[i].Y*b.Y) / a[i].Norm() / b.Norm()
			if math.Abs(a[i].Norm()-math.Sqrt(2.0/3)) > 1e-12 { // sqrt(2/3) of the true length in a true projection
				t.Errorf("%s: axis %d is %g long", c, i, a[i].Norm())
			}
			if i < 2 && math.Abs(cos-0.5) > 1e-12 && math.Abs(cos+0.5) > 1e-12 {
				t.Errorf("%s: axes %d and %d stand at cos %g", c, i, i+1, cos)
			}
		}
		if a[2].X != 0 || a[2].Y >= 0 {
			t.Errorf("%s: up is %v", c, a[2])
		}
		if a[0].Y >= 0 || a[1].Y >= 0 {
			t.Errorf("%s: the far ends do not lie higher on the sheet: %v", c, a)
		}
		if v.right.Cross(v.up).Sub(v.toward).Norm() > 1e-12 {
			t.Errorf("%s: the view is mirrored", c)
		}
	}
}
