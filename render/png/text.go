package png

import (
	"math"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"plashet/drawing"
	"plashet/render/face"
)

// curveSteps is how many lines draw one curve of a letter.
const curveSteps = 5

// text draws letters from their outlines, with paper round them where asked.
func (c *canvas) text(t drawing.Text) {
	shown, _ := face.Shown(t.Text)
	f := face.Font(t.Bold)
	const em = 1000 // letters are loaded in thousandths of their size
	var b sfnt.Buffer
	long := 0.0
	type letter struct {
		x       float64
		outline [][]drawing.Point
	}
	var letters []letter
	for _, r := range shown {
		i, err := f.GlyphIndex(&b, r)
		if err != nil {
			continue
		}
		if segments, err := f.LoadGlyph(&b, i, fixed.I(em), nil); err == nil {
			letters = append(letters, letter{long, outlines(segments)})
		}
		if a, err := f.GlyphAdvance(&b, i, fixed.I(em), font.HintingNone); err == nil {
			long += float64(a) / 64
		}
	}
	k := t.Size / em
	start := 0.0
	switch t.Anchor {
	case drawing.Middle:
		start = -long / 2
	case drawing.End:
		start = -long
	case drawing.Start:
	}
	s, cos := math.Sincos(t.Turn * math.Pi / 180)
	var all [][]drawing.Point
	for _, l := range letters {
		for _, o := range l.outline {
			placed := make([]drawing.Point, 0, len(o))
			for _, p := range o {
				x, y := (start+l.x+p.X)*k, p.Y*k
				placed = append(placed, t.At.Add(drawing.Point{X: x*cos - y*s, Y: x*s + y*cos}))
			}
			all = append(all, placed)
		}
	}
	if t.Halo {
		for _, o := range all {
			c.stroke(o, true, drawing.Pen{Ink: drawing.Paper, Wide: 1.2})
		}
	}
	c.fill(all, t.Ink)
}

// outlines makes lines of a letter's curves, in thousandths, y downward.
func outlines(segments sfnt.Segments) [][]drawing.Point {
	at := func(p fixed.Point26_6) drawing.Point {
		return drawing.Point{X: float64(p.X) / 64, Y: float64(p.Y) / 64}
	}
	var out [][]drawing.Point
	for _, s := range segments {
		if s.Op == sfnt.SegmentOpMoveTo {
			out = append(out, []drawing.Point{at(s.Args[0])})
			continue
		}
		if len(out) == 0 {
			continue
		}
		o := &out[len(out)-1]
		last := (*o)[len(*o)-1]
		switch s.Op {
		case sfnt.SegmentOpLineTo:
			*o = append(*o, at(s.Args[0]))
		case sfnt.SegmentOpQuadTo:
			p, q := at(s.Args[0]), at(s.Args[1])
			for i := 1; i <= curveSteps; i++ {
				u := float64(i) / curveSteps
				*o = append(*o, last.Scale((1-u)*(1-u)).Add(p.Scale(2*u*(1-u))).Add(q.Scale(u*u)))
			}
		case sfnt.SegmentOpCubeTo:
			p, q, r := at(s.Args[0]), at(s.Args[1]), at(s.Args[2])
			for i := 1; i <= curveSteps; i++ {
				u := float64(i) / curveSteps
				v := 1 - u
				*o = append(*o, last.Scale(v*v*v).Add(p.Scale(3*u*v*v)).Add(q.Scale(3*u*u*v)).Add(r.Scale(u*u*u)))
			}
		case sfnt.SegmentOpMoveTo:
		}
	}
	return out
}
