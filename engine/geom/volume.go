package geom

import (
	"math"

	"plashet/engine/unit"
)

// Prismoid gives the volume between two parallel faces by the areas of both and
// of the section halfway: V = (A + 4 M + B) d / 6. It is exact wherever the area
// is a polynomial of degree 3 or less of the depth: all shapes with straight or
// evenly sloping sides. All values from 0 up; an *Error outside. Source:
// prismoidal formula (Newton); the reference's example E52.
func Prismoid(top, middle, bottom unit.Area, depth unit.Length) (unit.Volume, error) {
	if err := checkAreas(depth, top, middle, bottom); err != nil {
		return 0, err
	}
	return unit.Volume(float64(top+4*middle+bottom) * float64(depth) / 6), nil
}

// Frustum gives the volume between two parallel faces by the conic method: V =
// (A + B + sqrt(A B)) d / 3. It is exact only when the faces are similar and
// alike in place (a cone or pyramid cut off); for a long pond with evenly
// sloping sides it comes out low (example E55: 13,521 against the prismoid's
// 13,964, although its source calls it exact). All values from 0 up; an *Error
// outside. Source: volume of a frustum (Euclid XII); examples E53, E55.
func Frustum(top, bottom unit.Area, depth unit.Length) (unit.Volume, error) {
	if err := checkAreas(depth, top, bottom); err != nil {
		return 0, err
	}
	a, b := float64(top), float64(bottom)
	return unit.Volume((a + b + math.Sqrt(a)*math.Sqrt(b)) * float64(depth) / 3), nil
}

// AverageEndArea gives the volume between two parallel faces as d (A + B) / 2:
// exact for faces that vary evenly, otherwise too high for a bowl. All values
// from 0 up; an *Error outside. Source: earthwork practice; example E56.
func AverageEndArea(top, bottom unit.Area, depth unit.Length) (unit.Volume, error) {
	if err := checkAreas(depth, top, bottom); err != nil {
		return 0, err
	}
	return unit.Volume(float64(top+bottom) / 2 * float64(depth)), nil
}

// MeanDepthVolume gives area times mean depth. Source: definition; example E59.
func MeanDepthVolume(area unit.Area, mean unit.Length) (unit.Volume, error) {
	return AverageEndArea(area, area, mean)
}

// BowlVolume estimates a dug pond known only by its surface area and greatest
// depth: V = 0.4 A D. An estimate, not geometry. Source: USDA NRCS, Agriculture
// Handbook 590, Ponds: planning, design, construction (from memory); example
// E58.
func BowlVolume(area unit.Area, greatest unit.Length) (unit.Volume, error) {
	v, err := AverageEndArea(area, area, greatest)
	return 0.4 * v, err
}

func checkAreas(depth unit.Length, areas ...unit.Area) error {
	if err := notNegative("depth", depth, unit.KindDepth); err != nil {
		return err
	}
	for i, a := range areas {
		if err := notNegativeAt("area", i, a, unit.KindArea); err != nil {
			return err
		}
	}
	return nil
}

// RadiusFromChord gives the radius of a circle from a chord and the height of
// the arc over it: r = (c^2/4 + h^2) / (2 h). Chord from 0, height above 0; an
// *Error outside. Source: Euclid III.35.
func RadiusFromChord(chord, height unit.Length) (unit.Length, error) {
	if err := notNegative("chord", chord, unit.KindTape); err != nil {
		return 0, err
	}
	if err := notNegative("height", height, unit.KindTape); err != nil {
		return 0, err
	}
	if height == 0 {
		return 0, &Error{Code: CodeRange, Name: "height", Found: unit.Of(height, unit.KindTape)}
	}
	c, h := float64(chord), float64(height)
	return unit.Length(c*c/(8*h) + h/2), nil
}

// CylinderVolume gives the water in a cylinder that lies level, filled to a
// depth: V = l (r^2 acos((r - h)/r) - (r - h) sqrt(2 r h - h^2)); the angle is
// taken as 2 atan(sqrt(h/(2r - h))), which keeps its digits near empty and full. Radius above
// 0, length from 0, depth from 0 to the diameter; an *Error outside. Source:
// area of a circular segment; example E61.
func CylinderVolume(radius, length, depth unit.Length) (unit.Volume, error) {
	for _, v := range [...]struct {
		name string
		v    unit.Length
	}{{"radius", radius}, {"length", length}, {"depth", depth}} {
		if err := notNegative(v.name, v.v, unit.KindTape); err != nil {
			return 0, err
		}
	}
	if radius == 0 {
		return 0, &Error{Code: CodeRange, Name: "radius", Found: unit.Of(radius, unit.KindTape)}
	}
	if depth > 2*radius {
		return 0, &Error{Code: CodeRange, Name: "depth", Found: unit.Of(depth, unit.KindTape), Limit: unit.Of(2*radius, unit.KindTape)}
	}
	r, h := float64(radius), float64(depth)
	seg := r*r*2*math.Atan2(math.Sqrt(h), math.Sqrt(max(0, 2*r-h))) - (r-h)*math.Sqrt(max(0, h*(2*r-h)))
	return unit.Volume(max(0, seg) * float64(length)), nil
}
