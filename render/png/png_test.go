package png

import (
	"bytes"
	"errors"
	"image/color" //nolint:misspell // the package's name
	"image/png"
	"math"
	"testing"

	"plashet/drawing"
)

func at(t *testing.T, s *drawing.Sheet, scale float64) func(x, y float64) color.RGBA { //nolint:misspell // the package's name
	t.Helper()
	img, err := Draw(s, scale)
	if err != nil {
		t.Fatal(err)
	}
	return func(x, y float64) color.RGBA { return img.RGBAAt(int(x*scale), int(y*scale)) } //nolint:misspell // the package's name
}

// TestShapes reads pixels where a person would see ink, and where not.
func TestShapes(t *testing.T) {
	p := func(x, y float64) drawing.Point { return drawing.Point{X: x, Y: y} }
	black := drawing.Pen{Ink: drawing.Black, Wide: 1}
	s := &drawing.Sheet{Width: 60, Height: 40, Items: []drawing.Item{
		drawing.Line{From: p(5, 5), To: p(25, 5), Pen: black},
		drawing.Polygon{Points: []drawing.Point{p(30, 2), p(40, 2), p(40, 12), p(30, 12)}, Fill: drawing.Wash},
		drawing.Polygon{Points: []drawing.Point{p(52, 2), p(42, 2), p(42, 12), p(52, 12)}, Pen: black, Fill: drawing.Black}, // turned the other way
		drawing.Arc{Centre: p(15, 25), RX: 8, RY: 8, Sweep: 360, Pen: black},
		drawing.Arc{Centre: p(40, 25), RX: 8, RY: 8, From: 0, Sweep: 90, Pen: black},
		drawing.Line{From: p(5, 37), To: p(55, 37), Pen: drawing.Pen{Ink: drawing.Black, Wide: 0.6, Dash: drawing.Dashed}},
	}}
	px := at(t, s, 10)
	ink, paper, wash := colours[drawing.Black], colours[drawing.Paper], colours[drawing.Wash]
	for _, c := range []struct {
		x, y float64
		want color.RGBA //nolint:misspell // the package's name
	}{
		{15, 5, ink},                // on the line
		{4.6, 5, ink},               // its round end
		{15, 6.2, paper},            // beside it
		{35, 7, wash},               // in the area
		{47, 7, ink},                //
		{51.9, 7, ink},              // pen and fill of either turn add up
		{23, 25, ink}, {7, 25, ink}, // round the circle
		{15, 25, paper},              // inside it
		{48, 25, ink}, {40, 33, ink}, // ends of the arc, clockwise
		{45.6, 30.6, ink}, {32, 25, paper}, // on it, and where it does not run
		{5.5, 37, ink}, {7.5, 37, paper}, // dash and gap
	} {
		if got := px(c.x, c.y); got != c.want {
			t.Errorf("at %g, %g: %v, not %v", c.x, c.y, got, c.want)
		}
	}
}

// TestText: letters stand where their anchor says, as long as they are measured,
// turned as asked; a character that is lacking leaves a box.
func TestText(t *testing.T) {
	for _, c := range []struct {
		name   string
		t      drawing.Text
		x0, x1 float64
	}{
		{"start", drawing.Text{At: drawing.Point{X: 20, Y: 20}, Size: 10, Text: "HH"}, 20, 35.04},
		{"end", drawing.Text{At: drawing.Point{X: 20, Y: 20}, Size: 10, Text: "HH", Anchor: drawing.End}, 4.96, 20},
		{"middle", drawing.Text{At: drawing.Point{X: 20, Y: 20}, Size: 10, Text: "HH", Anchor: drawing.Middle}, 12.48, 27.52},
		{"lacking", drawing.Text{At: drawing.Point{X: 20, Y: 20}, Size: 10, Text: "水"}, 20, 29},
	} {
		c.t.Ink = drawing.Black
		s := &drawing.Sheet{Width: 40, Height: 30, Items: []drawing.Item{c.t}}
		img, err := Draw(s, 20)
		if err != nil {
			t.Fatal(err)
		}
		left, right := math.Inf(1), math.Inf(-1)
		for y := range img.Rect.Max.Y {
			for x := range img.Rect.Max.X {
				if img.RGBAAt(x, y).R < 128 {
					left, right = math.Min(left, float64(x)/20), math.Max(right, float64(x)/20)
				}
			}
		}
		// The letters keep about a tenth of their size clear on each side.
		if left < c.x0 || left > c.x0+1.3 || right > c.x1 || right < c.x1-1.3 {
			t.Errorf("%s: ink from %.2f to %.2f, not from %.2f to %.2f", c.name, left, right, c.x0, c.x1)
		}
	}
}

func TestRefuses(t *testing.T) {
	for _, c := range []struct {
		s     drawing.Sheet
		scale float64
		want  error
	}{
		{drawing.Sheet{Width: math.NaN(), Height: 10}, 1, ErrNotFinite},
		{drawing.Sheet{Width: 10, Height: 0}, 1, ErrNotFinite},
		{drawing.Sheet{Width: 1e4, Height: 1e4}, 10, ErrTooLarge},
		{drawing.Sheet{Width: 10, Height: 10, Items: []drawing.Item{drawing.Line{To: drawing.Point{X: math.Inf(1)}, Pen: drawing.Pen{Ink: drawing.Black, Wide: 1}}}}, 1, ErrNotFinite},
	} {
		var b bytes.Buffer
		if err := Write(&b, &c.s, c.scale); !errors.Is(err, c.want) || b.Len() > 0 {
			t.Errorf("%+v: %v, %d bytes", c.s, err, b.Len())
		}
	}
}

// TestWrites: what is written is a PNG of the right size, the same each time, and
// a shape far off the sheet costs nothing.
func TestWrites(t *testing.T) {
	s := &drawing.Sheet{Width: 30, Height: 20, Items: []drawing.Item{
		drawing.Line{From: drawing.Point{X: -1e9, Y: 10}, To: drawing.Point{X: 1e9, Y: 10}, Pen: drawing.Pen{Ink: drawing.Black, Wide: 2}},
		drawing.Text{At: drawing.Point{X: 2, Y: 5}, Size: 4, Ink: drawing.Black, Halo: true, Bold: true, Turn: 30, Text: "½ ″ Ж"},
	}}
	var a, b bytes.Buffer
	if err := Write(&a, s, 5); err != nil {
		t.Fatal(err)
	}
	if err := Write(&b, s, 5); err != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Fatal("the second time it comes out differently")
	}
	img, err := png.Decode(&a)
	if err != nil {
		t.Fatal(err)
	}
	if size := img.Bounds().Size(); size.X != 150 || size.Y != 100 {
		t.Errorf("%v", size)
	}
}
