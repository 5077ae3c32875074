// Package png draws a sheet of package drawing as pixels and writes them as a
// PNG file (W3C, Portable Network Graphics). Shapes are filled with smoothed
// edges by golang.org/x/image/vector, letters drawn from the outlines of package
// face. The same sheet at the same scale always gives the same bytes.
package png

import (
	"errors"
	"image"
	"image/color" //nolint:misspell // the package's name
	"image/draw"
	"image/png"
	"io"
	"math"

	"golang.org/x/image/vector"

	"plashet/drawing"
)

// The errors.
var (
	ErrNotFinite = errors.New("the sheet holds a coordinate that is not a number")
	ErrTooLarge  = errors.New("the picture would have too many pixels")
)

// MostPixels is the largest picture that is drawn.
const MostPixels = 60_000_000

// colours of the inks, as on the screen; in grey they keep their order.
var colours = [...]color.RGBA{ //nolint:misspell // the package's name
	drawing.Black: {0x1c, 0x2a, 0x35, 255}, drawing.Pencil: {0x84, 0x90, 0x9a, 255},
	drawing.Water: {0x4f, 0x8f, 0xa3, 255}, drawing.Wash: {0xd8, 0xe8, 0xec, 255}, drawing.Paper: {0xff, 0xff, 0xff, 255},
}

// Write writes the sheet at a scale in pixels per mm (300 dots per inch are
// 11.81). The errors are ErrNotFinite and ErrTooLarge, with nothing written, and
// those of the writer.
func Write(w io.Writer, s *drawing.Sheet, perMM float64) error {
	img, err := Draw(s, perMM)
	if err != nil {
		return err
	}
	e := png.Encoder{CompressionLevel: png.BestSpeed}
	return e.Encode(w, img)
}

// Draw gives the sheet as pixels; see Write.
func Draw(s *drawing.Sheet, perMM float64) (*image.RGBA, error) {
	wide, tall := math.Ceil(s.Width*perMM), math.Ceil(s.Height*perMM)
	if !(wide >= 1) || !(tall >= 1) || math.IsInf(wide*tall, 0) {
		return nil, ErrNotFinite
	}
	if wide*tall > MostPixels {
		return nil, ErrTooLarge
	}
	c := &canvas{img: image.NewRGBA(image.Rect(0, 0, int(wide), int(tall))), scale: perMM}
	draw.Draw(c.img, c.img.Bounds(), image.NewUniform(colours[drawing.Paper]), image.Point{}, draw.Src)
	s.Each(c.item)
	if c.bad {
		return nil, ErrNotFinite
	}
	return c.img, nil
}

// canvas is a picture while it is drawn.
type canvas struct {
	img   *image.RGBA
	scale float64
	bad   bool
}

func (c *canvas) item(it drawing.Item) {
	switch v := it.(type) {
	case drawing.Line:
		c.stroke([]drawing.Point{v.From, v.To}, false, v.Pen)
	case drawing.Polyline:
		c.stroke(v.Points, false, v.Pen)
	case drawing.Polygon:
		c.fill([][]drawing.Point{v.Points}, v.Fill)
		c.stroke(v.Points, true, v.Pen)
	case drawing.Arc:
		closed := math.Abs(v.Sweep) >= 360
		points := flat(v, c.scale)
		c.fill([][]drawing.Point{points}, v.Fill)
		c.stroke(points, closed, v.Pen)
	case drawing.Text:
		c.text(v)
	}
}

// flat gives points along an arc, so many that it looks round.
func flat(a drawing.Arc, scale float64) []drawing.Point {
	sweep := math.Max(-360, math.Min(360, a.Sweep))
	n := int(math.Ceil(math.Min(720, math.Max(8, math.Sqrt(math.Max(a.RX, a.RY)*scale)*math.Abs(sweep)/30))))
	out := make([]drawing.Point, 0, n+1)
	for i := range n + 1 {
		out = append(out, a.At(a.From+sweep*float64(i)/float64(n)))
	}
	if math.Abs(a.Sweep) >= 360 {
		out = out[:n]
	}
	return out
}

// fill fills closed outlines with an ink (nonzero winding).
func (c *canvas) fill(outlines [][]drawing.Point, ink drawing.Ink) {
	if ink == drawing.Clear || int(ink) >= len(colours) {
		return
	}
	// The rasteriser is as large as what it fills and no larger.
	low, high := drawing.Point{X: math.Inf(1), Y: math.Inf(1)}, drawing.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, o := range outlines {
		for _, p := range o {
			if math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) {
				c.bad = true
				return
			}
			low = drawing.Point{X: math.Min(low.X, p.X), Y: math.Min(low.Y, p.Y)}
			high = drawing.Point{X: math.Max(high.X, p.X), Y: math.Max(high.Y, p.Y)}
		}
	}
	box := image.Rect(
		int(math.Floor(max(-1, low.X*c.scale))), int(math.Floor(max(-1, low.Y*c.scale))),
		int(math.Ceil(min(float64(c.img.Rect.Max.X)+1, high.X*c.scale)))+1, int(math.Ceil(min(float64(c.img.Rect.Max.Y)+1, high.Y*c.scale)))+1,
	)
	if box.Empty() {
		return
	}
	r := vector.NewRasterizer(box.Dx(), box.Dy())
	for _, o := range outlines {
		for i, p := range o {
			x, y := float32(p.X*c.scale-float64(box.Min.X)), float32(p.Y*c.scale-float64(box.Min.Y))
			if i == 0 {
				r.MoveTo(x, y)
				continue
			}
			r.LineTo(x, y)
		}
		r.ClosePath()
	}
	r.Draw(c.img, box, image.NewUniform(colours[ink]), image.Point{})
}
