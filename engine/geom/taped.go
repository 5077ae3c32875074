package geom

import "plashet/engine/unit"

// TapedOffset is one reading along a baseline: at a distance from its start,
// how far the edge is to the left and to the right. A negative one lies on the
// other side (the baseline runs outside there).
type TapedOffset struct{ At, Left, Right unit.Length }

// FromOffsets gives the points of an outline from taped offsets, anticlockwise:
// out along the right edge, back along the left. The baseline is the x axis.
// Where left and right cancel, the outline has a tip, one point. Distances must
// grow from reading to reading and left + right must not be negative; an *Error
// otherwise. Hand the points to Polygon or SmoothCurve.
func FromOffsets(offsets []TapedOffset) ([]Vec2, error) {
	if len(offsets) < 2 {
		return nil, countError(len(offsets), 2)
	}
	if len(offsets) > maxPoints/2 {
		return nil, countError(len(offsets), maxPoints/2)
	}
	for i, o := range offsets {
		for _, v := range [...]struct {
			name string
			v    unit.Length
		}{{"at", o.At}, {"left", o.Left}, {"right", o.Right}} {
			if !finite(float64(v.v)) {
				return nil, &Error{Code: CodeNotFinite, Name: v.name, At: i, Found: plan(float64(v.v))}
			}
		}
		if i > 0 && o.At <= offsets[i-1].At {
			return nil, &Error{Code: CodeOrder, Name: "at", At: i, Found: plan(float64(o.At)), Limit: plan(float64(offsets[i-1].At))}
		}
		if o.Left+o.Right < 0 {
			return nil, &Error{Code: CodeRange, Name: "width", At: i, Found: plan(float64(o.Left + o.Right)), Limit: plan(0)}
		}
	}
	var out []Vec2
	for _, o := range offsets {
		out = append(out, Vec2{float64(o.At), -float64(o.Right)})
	}
	for i := len(offsets) - 1; i >= 0; i-- {
		if o := offsets[i]; o.Left+o.Right > 0 {
			out = append(out, Vec2{float64(o.At), float64(o.Left)})
		}
	}
	return out, nil
}
