package drawing

import (
	"math"

	"plashet/engine/geom"
)

// Corner is the corner of the vault over which the assembly is looked at.
type Corner uint8

// The corners, as they lie in the vault's frame: left x = 0, front y = 0.
const (
	FrontLeft Corner = iota
	FrontRight
	BackRight
	BackLeft
)

// Corners lists them round the vault.
func Corners() []Corner { return []Corner{FrontLeft, FrontRight, BackRight, BackLeft} }

// String is the corner's name in a file's name.
func (c Corner) String() string {
	return [...]string{"front-left", "front-right", "back-right", "back-left"}[c&3]
}

// signs tell on which side of the vault's middle the viewer stands.
func (c Corner) signs() (x, y float64) {
	x, y = -1, -1
	if c == FrontRight || c == BackRight {
		x = 1
	}
	if c == BackLeft || c == BackRight {
		y = 1
	}
	return x, y
}

// view is an isometric view (ISO 5456-3): all three axes of the vault are
// drawn to one scale, at 120 degrees to one another, uprights upright.
type view struct {
	corner    Corner
	right, up geom.Vec3 // of the sheet, in the vault
	toward    geom.Vec3 // the viewer
	scale     float64   // mm per m square to the line of sight
	origin    Point     // of the vault's frame, on the sheet
}

func newView(c Corner) view {
	x, y := c.signs()
	return view{
		corner: c, scale: 1,
		right:  geom.Vec3{X: -y, Y: x}.Scale(1 / math.Sqrt2),
		up:     geom.Vec3{X: -x, Y: -y, Z: 2}.Scale(1 / math.Sqrt(6)),
		toward: geom.Vec3{X: x, Y: y, Z: 1}.Scale(1 / math.Sqrt(3)),
	}
}

// at gives where a point of the vault lies on the sheet.
func (v view) at(p geom.Vec3) Point { return v.origin.Add(v.along(p)) }

// along gives how a vector of the vault lies on the sheet, mm.
func (v view) along(p geom.Vec3) Point {
	return Point{v.right.Dot(p) * v.scale, -v.up.Dot(p) * v.scale}
}

// fitTo sets scale and origin so that the points fill a rectangle, and gives
// how far down they reach.
func (v *view) fitTo(points []geom.Vec3, x0, y0, x1, y1 float64) float64 {
	v.scale, v.origin = 1, Point{}
	low, high := Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		q := v.at(p)
		low = Point{min(low.X, q.X), min(low.Y, q.Y)}
		high = Point{max(high.X, q.X), max(high.Y, q.Y)}
	}
	size := high.Sub(low)
	v.scale = min((x1-x0)/max(size.X, 1e-9), (y1-y0)/max(size.Y, 1e-9))
	v.origin = Point{(x0+x1)/2 - (low.X+high.X)/2*v.scale, y0 - low.Y*v.scale}
	return y0 + size.Y*v.scale
}

// measure is the view's scale along the three axes, which are all shortened
// alike: by the square root of 2/3 (ISO 5456-3, isometric axonometry).
func (v view) measure() Scale { return Scale{PerM: v.scale * math.Sqrt(2.0/3), Zero: v.origin} }
