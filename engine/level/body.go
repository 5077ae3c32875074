package level

import (
	"cmp"
	"math"

	"plashet/engine/unit"
)

// NewBox makes the area-elevation curve of an upright box whose walls may taper
// evenly: sizes at the floor and at a height above it. All sizes above 0. What
// stands in it (pump, pipe, mats) is not taken off: the levels move a little
// less in the sum than they do in truth.
func NewBox(floorLength, floorWidth, length, width, height, floor unit.Length) (*AreaElevation, error) {
	err := cmp.Or(
		positive("", "floor length", floorLength, unit.KindTape), positive("", "floor width", floorWidth, unit.KindTape),
		positive("", "length", length, unit.KindTape), positive("", "width", width, unit.KindTape),
		positive("", "depth", height, unit.KindTape), elevation("", "floor", floor),
	)
	if err != nil {
		return nil, err
	}
	h := float64(height)
	l, w := float64(floorLength), float64(floorWidth)
	dl, dw := float64(length-floorLength)/h, float64(width-floorWidth)/h
	z := float64(floor)
	return assemble([]piece{{from: z, until: z + h, a: l * w, b: l*dw + w*dl, c: dl * dw}}, float64(length)*float64(width), 1), nil
}

// NewRound makes the same for an upright round vessel, by its diameters.
func NewRound(floorDiameter, diameter, height, floor unit.Length) (*AreaElevation, error) {
	a, err := NewBox(floorDiameter, floorDiameter, diameter, diameter, height, floor)
	if err != nil {
		return nil, err
	}
	// A circle is pi/4 of the square round it at every height.
	p := a.pieces[0]
	return assemble([]piece{{from: p.from, until: p.until, a: p.a * math.Pi / 4, b: p.b * math.Pi / 4, c: p.c * math.Pi / 4}}, a.top.a*math.Pi/4, 1), nil
}
