package geom

import (
	"math"

	"plashet/engine/unit"
)

// Vec3 is a point or a direction in space, in metres (a direction of length 1
// has no unit).
type Vec3 struct{ X, Y, Z float64 }

// Add gives a + b.
func (a Vec3) Add(b Vec3) Vec3 { return Vec3{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }

// Sub gives a - b.
func (a Vec3) Sub(b Vec3) Vec3 { return Vec3{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

// Scale gives a times k.
func (a Vec3) Scale(k float64) Vec3 { return Vec3{a.X * k, a.Y * k, a.Z * k} }

// Dot gives the scalar product.
func (a Vec3) Dot(b Vec3) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

// Cross gives the vector product, right-handed: x cross y is z.
func (a Vec3) Cross(b Vec3) Vec3 {
	return Vec3{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// Norm gives the length, without overflow for large components.
func (a Vec3) Norm() float64 { return math.Hypot(math.Hypot(a.X, a.Y), a.Z) }

// Unit gives the direction of a with length 1; NaN in each component for the
// zero vector, which has none.
func (a Vec3) Unit() Vec3 {
	n := a.Norm()
	if n == 0 {
		return Vec3{math.NaN(), math.NaN(), math.NaN()}
	}
	return Vec3{a.X / n, a.Y / n, a.Z / n}
}

// IsFinite tells that no component is NaN or infinite.
func (a Vec3) IsFinite() bool { return finite(a.X, a.Y, a.Z) }

// RotateAbout turns a about an axis through the origin by the right hand:
//
//	v' = v cos t + (k x v) sin t + k (k.v)(1 - cos t), k the axis' unit vector
//
// The axis may have any length but zero (NaN then). Quarter turns are exact:
// an elbow's outlet along x is exactly along y after 90 degrees, so that
// chains of elbows close without dust. Source: Rodrigues' rotation formula.
func (a Vec3) RotateAbout(axis Vec3, angle unit.Angle) Vec3 {
	k := axis.Unit()
	s, c := sinCos(angle)
	return a.Scale(c).Add(k.Cross(a).Scale(s)).Add(k.Scale(k.Dot(a) * (1 - c)))
}

// quarterDust is the greatest sine or cosine taken for the rounding error of
// a quarter turn (math.Cos of the nearest double to pi/2 is 6e-17, and a sum
// of several turns adds a few units in the last place).
const quarterDust = 4e-15

func sinCos(angle unit.Angle) (s, c float64) {
	s, c = math.Sincos(float64(angle))
	switch {
	case math.Abs(c) < quarterDust:
		return math.Copysign(1, s), 0
	case math.Abs(s) < quarterDust:
		return 0, math.Copysign(1, c)
	}
	return s, c
}

// Box is a block with sides along the axes, in metres. Min is the corner with
// the smallest coordinates.
type Box struct{ Min, Max Vec3 }

// BoxOf gives the block with a and b as opposite corners, in any order.
func BoxOf(a, b Vec3) Box {
	return Box{
		Min: Vec3{min(a.X, b.X), min(a.Y, b.Y), min(a.Z, b.Z)},
		Max: Vec3{max(a.X, b.X), max(a.Y, b.Y), max(a.Z, b.Z)},
	}
}

// Size gives the three edges.
func (b Box) Size() Vec3 { return b.Max.Sub(b.Min) }

// Centre gives the middle.
func (b Box) Centre() Vec3 { return b.Min.Add(b.Max).Scale(0.5) }

// Shift gives the block moved by v.
func (b Box) Shift(v Vec3) Box { return Box{b.Min.Add(v), b.Max.Add(v)} }

// Grow gives the block with every face moved out by d (in, when negative). A
// block shrunk past its middle has Min above Max: it holds nothing and
// overlaps nothing.
func (b Box) Grow(d float64) Box {
	v := Vec3{d, d, d}
	return Box{b.Min.Sub(v), b.Max.Add(v)}
}

// Join gives the smallest block round both.
func (b Box) Join(o Box) Box {
	return Box{
		Min: Vec3{min(b.Min.X, o.Min.X), min(b.Min.Y, o.Min.Y), min(b.Min.Z, o.Min.Z)},
		Max: Vec3{max(b.Max.X, o.Max.X), max(b.Max.Y, o.Max.Y), max(b.Max.Z, o.Max.Z)},
	}
}

// Contains tells that o lies in b; faces may touch. A NaN is never inside.
func (b Box) Contains(o Box) bool {
	return o.Min.X >= b.Min.X && o.Min.Y >= b.Min.Y && o.Min.Z >= b.Min.Z &&
		o.Max.X <= b.Max.X && o.Max.Y <= b.Max.Y && o.Max.Z <= b.Max.Z
}

// Overlaps tells that the insides share a point; blocks whose faces touch do
// not overlap.
func (b Box) Overlaps(o Box) bool {
	return b.Min.X < o.Max.X && o.Min.X < b.Max.X &&
		b.Min.Y < o.Max.Y && o.Min.Y < b.Max.Y &&
		b.Min.Z < o.Max.Z && o.Min.Z < b.Max.Z
}
