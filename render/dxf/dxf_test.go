package dxf

import (
	"bufio"
	"bytes"
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"plashet/drawing"
	"plashet/render/face"
)

var pen = drawing.Pen{Ink: drawing.Black, Wide: 0.4}

// group is one pair of a file.
type group struct {
	code  int
	value string
}

// groups reads a file's pairs: a number on one line, its value on the next.
func groups(t *testing.T, data []byte) []group {
	t.Helper()
	var out []group
	s := bufio.NewScanner(bytes.NewReader(data))
	for s.Scan() {
		code, err := strconv.Atoi(strings.TrimSpace(s.Text()))
		if err != nil || !s.Scan() {
			t.Fatalf("pair %d: %q is no group code", len(out), s.Text())
		}
		out = append(out, group{code, s.Text()})
	}
	return out
}

func written(t *testing.T, s drawing.Sheet) []group {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, &s, Millimetre); err != nil {
		t.Fatal(err)
	}
	return groups(t, b.Bytes())
}

// entities gives each entity's pairs.
func entities(list []group) [][]group {
	var out [][]group
	inside := false
	for i, g := range list {
		if g.code == 2 && g.value == "ENTITIES" && list[i-1].value == "SECTION" {
			inside = true
			continue
		}
		if !inside {
			continue
		}
		if g.code == 0 {
			if g.value == "ENDSEC" {
				break
			}
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], g)
	}
	return out
}

// A line behind a filled square shows on both sides of it; one along its edge,
// and one drawn later, show whole. Plane geometry.
func TestWhatAFillHides(t *testing.T) {
	square := drawing.Polygon{Points: []drawing.Point{{X: 40, Y: 40}, {X: 60, Y: 40}, {X: 60, Y: 60}, {X: 40, Y: 60}}, Pen: pen, Fill: drawing.Paper}
	line := func(y float64) drawing.Line {
		return drawing.Line{From: drawing.Point{X: 10, Y: y}, To: drawing.Point{X: 90, Y: y}, Pen: pen}
	}
	for _, c := range []struct {
		what  string
		items []drawing.Item
		want  []float64 // lengths of the lines, in order
	}{
		{"behind", []drawing.Item{line(50), square}, []float64{30, 30}},
		{"along the edge", []drawing.Item{line(40), square}, []float64{80}},
		{"before it", []drawing.Item{square, line(50)}, []float64{80}},
		{"beside", []drawing.Item{line(70), square}, []float64{80}},
		{"inside", []drawing.Item{drawing.Line{From: drawing.Point{X: 45, Y: 45}, To: drawing.Point{X: 55, Y: 55}, Pen: pen}, square}, nil},
		{"behind two", []drawing.Item{line(50), square, drawing.Arc{Centre: drawing.Point{X: 75, Y: 50}, RX: 5, RY: 5, Sweep: 360, Fill: drawing.Wash}}, []float64{30, 10, 10}},
	} {
		var got []float64
		for _, e := range entities(written(t, drawing.Sheet{Width: 100, Height: 100, Items: c.items})) {
			if e[0].value != "LINE" {
				continue
			}
			x := map[int]float64{}
			for _, g := range e {
				x[g.code], _ = strconv.ParseFloat(g.value, 64)
			}
			got = append(got, math.Hypot(x[11]-x[10], x[21]-x[20]))
		}
		ok := len(got) == len(c.want)
		for i := range got {
			ok = ok && math.Abs(got[i]-c.want[i]) < 0.02
		}
		if !ok {
			t.Errorf("%s: %v, want %v", c.what, got, c.want)
		}
	}
}

// Water is filled on a layer of its own, with what covers it left out; the wash on
// a pipe is not water. Areas by hand: a square of 40 with a box of 10 by 10 wholly
// in it, and one that lies half over its edge.
func TestWater(t *testing.T) {
	box := func(x, y, l, w float64, fill drawing.Ink) drawing.Polygon {
		return drawing.Polygon{Points: []drawing.Point{{X: x, Y: y}, {X: x + l, Y: y}, {X: x + l, Y: y + w}, {X: x, Y: y + w}}, Pen: pen, Fill: fill}
	}
	for _, c := range []struct {
		group string
		items []drawing.Item
		want  []float64 // areas of the loops
	}{
		{"water", []drawing.Item{box(20, 20, 40, 40, drawing.Wash)}, []float64{1600}},
		{"pond", []drawing.Item{box(20, 20, 40, 40, drawing.Wash), box(30, 30, 10, 10, drawing.Paper)}, []float64{1600, 100}},
		{"water", []drawing.Item{box(20, 20, 40, 40, drawing.Wash), box(55, 30, 10, 10, drawing.Paper)}, []float64{1600, 50}},
		{"water", []drawing.Item{box(20, 20, 40, 40, drawing.Wash), box(70, 30, 10, 10, drawing.Paper)}, []float64{1600}},
		{"water", []drawing.Item{box(30, 30, 10, 10, drawing.Paper), box(20, 20, 40, 40, drawing.Wash)}, []float64{1600}},
		{"piece 1", []drawing.Item{box(20, 20, 40, 40, drawing.Wash)}, nil},
		{"water", []drawing.Item{box(20, 20, 40, 40, drawing.Paper)}, nil},
	} {
		var got []float64
		for _, e := range entities(written(t, drawing.Sheet{Width: 100, Height: 100, Items: []drawing.Item{drawing.Group{Name: c.group, Items: c.items}}})) {
			if e[0].value != "HATCH" {
				continue
			}
			var xs, ys []float64
			end := func() {
				if len(xs) > 0 {
					sum := 0.0
					for i := range xs {
						k := (i + 1) % len(xs)
						sum += xs[i]*ys[k] - xs[k]*ys[i]
					}
					got = append(got, math.Abs(sum)/2)
				}
				xs, ys = nil, nil
			}
			loops := false
			for _, g := range e {
				v, _ := strconv.ParseFloat(g.value, 64)
				switch {
				case g.code == 8 && g.value != "WATER-FILL":
					t.Errorf("%s: filled on layer %s", c.group, g.value)
				case g.code == 92:
					loops = true
				case g.code == 97:
					end()
				case loops && g.code == 10:
					xs = append(xs, v)
				case loops && g.code == 20:
					ys = append(ys, v)
				}
			}
		}
		ok := len(got) == len(c.want)
		for i := range got {
			ok = ok && math.Abs(got[i]-c.want[i]) < 1e-6
		}
		if !ok {
			t.Errorf("%s %v: %v, want %v", c.group, c.items, got, c.want)
		}
	}
}

// Circles, arcs and ellipses keep their ends: the sheet's angles run clockwise
// with y down, the file's the other way with y up.
func TestArcsKeepTheirEnds(t *testing.T) {
	for _, a := range []drawing.Arc{
		{RX: 10, RY: 10, Sweep: 360},
		{RX: 10, RY: 10, From: 20, Sweep: 70},
		{RX: 10, RY: 10, From: 20, Sweep: -70, Turn: 15},
		{RX: 10, RY: 4, From: 20, Sweep: 200, Turn: 33},
		{RX: 4, RY: 10, From: -80, Sweep: 130, Turn: -10},
		{RX: 4, RY: 10, Sweep: 360, Turn: 70},
	} {
		a.Centre, a.Pen = drawing.Point{X: 50, Y: 40}, pen
		list := entities(written(t, drawing.Sheet{Width: 100, Height: 100, Items: []drawing.Item{a}}))
		if len(list) != 1 {
			t.Fatalf("%+v: %d entities", a, len(list))
		}
		x := map[int]float64{}
		for _, g := range list[0] {
			x[g.code], _ = strconv.ParseFloat(g.value, 64)
		}
		var at func(k float64) (float64, float64) // k from 0 to 1, anticlockwise
		switch list[0][0].value {
		case "CIRCLE":
			at = func(k float64) (float64, float64) {
				return x[10] + x[40]*math.Cos(2*math.Pi*k), x[20] + x[40]*math.Sin(2*math.Pi*k)
			}
		case "ARC":
			span := math.Mod(x[51]-x[50]+360, 360)
			at = func(k float64) (float64, float64) {
				s, c := math.Sincos((x[50] + k*span) * math.Pi / 180)
				return x[10] + x[40]*c, x[20] + x[40]*s
			}
		case "ELLIPSE":
			span := math.Mod(x[42]-x[41]+2*math.Pi, 2*math.Pi)
			if span == 0 {
				span = 2 * math.Pi
			}
			at = func(k float64) (float64, float64) {
				s, c := math.Sincos(x[41] + k*span)
				return x[10] + x[11]*c - x[40]*x[21]*s, x[20] + x[21]*c + x[40]*x[11]*s
			}
		default:
			t.Fatal(list[0][0].value)
		}
		for i := range 21 {
			k := float64(i) / 20
			gx, gy := at(k)
			p := drawing.Point{X: gx, Y: 100 - gy}
			// On the same curve: the point nearest to it among many of the sheet's.
			near := math.Inf(1)
			for n := range 20001 {
				near = math.Min(near, a.At(a.From+a.Sweep*float64(n)/20000).Sub(p).Norm())
			}
			if near > 0.01 {
				t.Errorf("%+v as %s: %v lies %v mm off", a, list[0][0].value, p, near)
				break
			}
		}
		if math.Abs(a.Sweep) < 360 { // both ends
			ends := []drawing.Point{a.At(a.From), a.At(a.From + a.Sweep)}
			if a.Sweep > 0 {
				ends[0], ends[1] = ends[1], ends[0]
			}
			for k, want := range ends {
				gx, gy := at(float64(k))
				if d := (drawing.Point{X: gx, Y: 100 - gy}).Sub(want).Norm(); d > 1e-3 {
					t.Errorf("%+v: end %d lies %v mm off", a, k, d)
				}
			}
		}
	}
}

// A text of the job can neither end its group nor forge one.
func TestHostileTexts(t *testing.T) {
	for in, want := range map[string]string{
		"a\n  0\nENDSEC": "a   0 ENDSEC", "a\r\nb\u2028c": "a  b c", "50%": "50%", "%%u": "%%%%%%u", "^J": "^ J",
		"½ ″ Łódź": "½ ″ Łódź", "\xff": "\ufffd", "": "", "\x00": "",
	} {
		list := entities(written(t, drawing.Sheet{Width: 100, Height: 100, Items: []drawing.Item{
			drawing.Group{Name: in, Items: []drawing.Item{drawing.Text{Size: 4, Ink: drawing.Black, Text: in}}},
		}}))
		if want == "" {
			if len(list) != 0 {
				t.Errorf("%q: %v", in, list)
			}
			continue
		}
		if len(list) != 1 {
			t.Fatalf("%q gives %d entities", in, len(list))
		}
		for _, g := range list[0] {
			if g.code == 1 && g.value != want {
				t.Errorf("%q: %q, want %q", in, g.value, want)
			}
			if g.code == 8 && g.value != "OBSTACLES" {
				t.Errorf("%q: layer %q", in, g.value)
			}
		}
	}
}

func TestNotFinite(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1)} {
		for _, it := range []drawing.Item{
			drawing.Line{From: drawing.Point{X: x}, Pen: pen},
			drawing.Arc{Centre: drawing.Point{X: x}, RX: 1, RY: 1, Sweep: 90, Pen: pen},
			drawing.Arc{RX: 1, RY: 1, Sweep: x, Pen: pen},
			drawing.Text{At: drawing.Point{Y: x}, Size: 4, Text: "x"},
			drawing.Polygon{Points: []drawing.Point{{X: x}, {}, {X: 1}}, Fill: drawing.Black},
		} {
			var b bytes.Buffer
			if err := Write(&b, &drawing.Sheet{Width: 10, Height: 10, Items: []drawing.Item{it}}, Inch); !errors.Is(err, ErrNotFinite) || b.Len() > 0 {
				t.Errorf("%v in %T: %v, %d bytes", x, it, err, b.Len())
			}
		}
	}
}

// A scale brings the picture to full size: 0.02 mm on the sheet for a millimetre
// is a scale of 1 to 50.
func TestFullSize(t *testing.T) {
	s := drawing.Sheet{
		Width: 100, Height: 100, Scale: drawing.Scale{PerM: 20, Zero: drawing.Point{X: 10, Y: 90}},
		Items: []drawing.Item{drawing.Line{From: drawing.Point{X: 10, Y: 90}, To: drawing.Point{X: 50, Y: 60}, Pen: pen}},
	}
	for u, perM := range map[Unit]float64{Millimetre: 1000, Inch: 1 / 0.0254} {
		var b bytes.Buffer
		if err := Write(&b, &s, u); err != nil {
			t.Fatal(err)
		}
		x := map[int]float64{}
		for _, g := range entities(groups(t, b.Bytes()))[0] {
			x[g.code], _ = strconv.ParseFloat(g.value, 64)
		}
		if x[10] != 0 || x[20] != 0 || math.Abs(x[11]-2*perM) > 1e-5 || math.Abs(x[21]-1.5*perM) > 1e-5 {
			t.Errorf("unit %d: from %v,%v to %v,%v", u, x[10], x[20], x[11], x[21])
		}
	}
}

// Handles are never twice the same, and none is at or past the seed.
func TestHandles(t *testing.T) {
	var items []drawing.Item
	for i := range 300 {
		items = append(items, drawing.Line{To: drawing.Point{X: float64(i)}, Pen: pen})
	}
	seen := map[string]bool{}
	for _, g := range written(t, drawing.Sheet{Width: 10, Height: 10, Items: items}) {
		if g.code != 5 && g.code != 105 || g.value == strconv.FormatInt(lastHandle, 16) {
			continue
		}
		n, err := strconv.ParseInt(g.value, 16, 64)
		if err != nil || n >= lastHandle || seen[g.value] {
			t.Errorf("handle %q: %v", g.value, err)
		}
		seen[g.value] = true
	}
	if len(seen) < 300 {
		t.Error("only", len(seen), "handles")
	}
}

// The height of capitals is the font's own, of its H.
func TestCapital(t *testing.T) {
	f := face.Font(false)
	var b sfnt.Buffer
	i, err := f.GlyphIndex(&b, 'H')
	if err != nil || i == 0 {
		t.Fatal(err)
	}
	box, _, err := f.GlyphBounds(&b, i, fixed.I(2048), font.HintingNone)
	if err != nil {
		t.Fatal(err)
	}
	if tall := -float64(box.Min.Y) / 64 / 2048; math.Abs(tall-capital) > 1e-3 {
		t.Errorf("capitals are %v of the size, not %v", tall, capital)
	}
}
