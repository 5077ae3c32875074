package drawing

import "math"

// Point is a place on a sheet, in mm from its upper left corner.
type Point struct{ X, Y float64 }

// Add gives a + b.
func (a Point) Add(b Point) Point { return Point{a.X + b.X, a.Y + b.Y} }

// Sub gives a - b.
func (a Point) Sub(b Point) Point { return Point{a.X - b.X, a.Y - b.Y} }

// Scale gives a times k.
func (a Point) Scale(k float64) Point { return Point{a.X * k, a.Y * k} }

// Norm gives the length of a, in mm.
func (a Point) Norm() float64 { return math.Hypot(a.X, a.Y) }

// Ink is what a line is drawn or an area filled with. A back end picks the
// colours; no meaning stands in an ink alone.
type Ink uint8

// The inks.
const (
	Clear  Ink = iota // nothing is drawn
	Black             // the ink of lines and letters
	Pencil            // thinner in tone: help lines, what is hidden
	Water             // the one colour: water and what carries it
	Wash              // that colour laid on thinly, for areas
	Paper             // covers what lies behind
)

// Dash is how a line is broken.
type Dash uint8

// The dashes.
const (
	Whole  Dash = iota
	Dashed      // hidden edges, wanted levels
	Dotted      // lead lines
)

// Pen draws a line; the zero Pen draws none.
type Pen struct {
	Ink  Ink
	Wide float64 // mm
	Dash Dash
}

// Item is one thing on a sheet: a Line, Polyline, Polygon, Arc, Text or Group.
type Item interface{ item() }

// Line is a straight line.
type Line struct {
	From, To Point
	Pen      Pen
}

// Polyline is an open chain of lines.
type Polyline struct {
	Points []Point
	Pen    Pen
}

// Polygon is a closed one.
type Polygon struct {
	Points []Point
	Pen    Pen
	Fill   Ink
}

// Arc is a part of an ellipse, or all of it. Its axes are turned by Turn; it
// runs clockwise from From over Sweep, both counted at the centre of the circle
// that the ellipse is squeezed from. A sweep of 360 closes it.
type Arc struct {
	Centre      Point
	RX, RY      float64 // mm
	Turn        float64 // degrees
	From, Sweep float64 // degrees
	Pen         Pen
	Fill        Ink
}

// At gives the point of the arc's ellipse at an angle in degrees, counted as
// From is.
func (a Arc) At(degrees float64) Point {
	s, c := math.Sincos(degrees * math.Pi / 180)
	st, ct := math.Sincos(a.Turn * math.Pi / 180)
	x, y := a.RX*c, a.RY*s
	return a.Centre.Add(Point{x*ct - y*st, x*st + y*ct})
}

// Anchor is the part of a text that stands at its point.
type Anchor uint8

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// Text is one line of letters.
type Text struct {
	At     Point   // on the line the letters stand on
	Size   float64 // of the letters, mm from line to line set solid
	Turn   float64 // degrees about At
	Anchor Anchor
	Bold   bool
	Ink    Ink
	Halo   bool // paper shows round the letters where they stand on lines
	Text   string
}

// Group is several items that belong together.
type Group struct {
	Name  string // for finding it: "piece P1"
	Mark  string // of the part or piece that it shows, where it shows one: "P1"
	Title string // what it is, for who touches or points at it; may be empty
	Items []Item
}

// Data is the figures behind a picture as rows, for who cannot see it.
type Data struct {
	Title string
	Head  []string
	Rows  [][]string
}

func (Line) item()     {}
func (Polyline) item() {}
func (Polygon) item()  {}
func (Arc) item()      {}
func (Text) item()     {}
func (Group) item()    {}

// Scale tells how a picture that is drawn to scale lies on its sheet. The zero
// Scale: there is none to measure in.
type Scale struct {
	PerM float64 // mm on the sheet for a metre; in an isometric view for a metre along an axis
	Zero Point   // where the zero of what is drawn lies; may lie off the sheet
}

// Sheet is one drawing.
type Sheet struct {
	Name          string  // for a file: "curve", "assembly-front-left"
	Title         string  // what it shows
	Desc          string  // the same in words, for who cannot see it
	Width, Height float64 // mm
	Scale         Scale
	Items         []Item
	Data          []Data
}

// Each calls f for every item on the sheet that is not a group, in the order
// they are drawn.
func (s *Sheet) Each(f func(Item)) { each(s.Items, f) }

func each(items []Item, f func(Item)) {
	for _, it := range items {
		if g, ok := it.(Group); ok {
			each(g.Items, f)
			continue
		}
		f(it)
	}
}
