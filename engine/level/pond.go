package level

import (
	"cmp"
	"math"
	"strconv"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Step is one corner of the pond's side, from the edge inward and downward.
type Step struct {
	Depth unit.Length // below the water line
	In    unit.Length // in from the outline
}

// Pond is what an area-elevation curve of a pond or hidden basin is made from.
type Pond struct {
	Outline *geom.Outline // at the water line
	Line    unit.Length   // elevation of the water line
	// Section holds the corners of the side in order, each no higher and no
	// farther out than the one before; the last one's depth is the floor's. The
	// edge itself (depth 0, in 0) need not be told. Straight walls are one step.
	Section []Step
	Void    unit.Ratio // part of the volume that is water, above 0 to 1
	// MeasuredArea is the surface at the water line where it is known better
	// than the outline gives it; 0 when not. The outline is scaled in plan to
	// it; the distances in from the edge are kept as taped.
	MeasuredArea unit.Area
	// MeasuredVolume is the water up to the water line by meter or timed fill; 0
	// when not measured. It is the total that counts. It says nothing about
	// where the drawing errs, so areas, and with them every change of level, stay
	// as drawn, and the difference is put below the floor: Volume is shifted.
	MeasuredVolume unit.Volume
}

// NewPond makes the area-elevation curve. Between two steps the side slopes
// evenly, so at depth D the water's outline lies in from the edge by a distance
// linear in D, and the area is that of the inset (see geom.InsetPieces). The
// pond goes straight up above the water line. Errors: an *Error (codes above),
// or a *geom.Error when a step lies past the middle of the outline.
func NewPond(p Pond) (*AreaElevation, error) {
	if p.Outline == nil {
		return nil, fail("", CodeMissing, trace.Str("name", "outline"))
	}
	err := cmp.Or(
		elevation("", "line", p.Line),
		positive("", "void", p.Void, unit.KindPercent),
		within("", "void", p.Void, 0, 1, unit.KindPercent),
		notNegative("", "measured area", p.MeasuredArea, unit.KindArea),
		notNegative("", "measured volume", p.MeasuredVolume, unit.KindWater),
		checkSection(p.Section),
	)
	if err != nil {
		return nil, err
	}
	o := p.Outline
	if p.MeasuredArea > 0 {
		if o, err = o.Scaled(unit.Ratio(math.Sqrt(float64(p.MeasuredArea / o.Area())))); err != nil {
			return nil, err
		}
	}
	insets, err := o.InsetPieces(p.Section[len(p.Section)-1].In)
	if err != nil {
		return nil, err
	}
	var pieces []piece
	line := float64(p.Line)
	for i := len(p.Section) - 1; i >= 0; i-- {
		above := Step{}
		if i > 0 {
			above = p.Section[i-1]
		}
		pieces = append(pieces, slope(insets, above, p.Section[i], line)...)
	}
	if len(pieces) == 0 {
		return nil, fail("", CodeMissing, trace.Str("name", "depth"))
	}
	pieces[len(pieces)-1].until = line
	a := assemble(pieces, float64(o.Area()), float64(p.Void))
	if err := positive("", "volume", a.Drawn(), unit.KindWater); err != nil {
		return nil, err // every step lies in the very middle
	}
	if p.MeasuredVolume > 0 {
		a.shift, a.measured = float64(p.MeasuredVolume)-a.drawn, true
	}
	return a, nil
}

func checkSection(s []Step) error {
	if len(s) == 0 || s[len(s)-1].Depth == 0 {
		return fail("", CodeMissing, trace.Str("name", "depth"))
	}
	last := Step{}
	for i, v := range s {
		for _, c := range [...]struct {
			name       string
			v, against unit.Length
		}{{"depth", v.Depth, last.Depth}, {"in", v.In, last.In}} {
			if !finite(c.v) {
				return fail("", CodeNotFinite, trace.Str("name", c.name))
			}
			if c.v < c.against {
				return fail("", CodeSection, trace.Str("name", c.name), trace.Str("step", strconv.Itoa(i)),
					trace.Num("found", c.v, unit.KindDepth), trace.Num("limit", c.against, unit.KindDepth))
			}
		}
		last = v
	}
	return within("", "depth", last.Depth, 0, maxElevation, unit.KindDepth)
}

// flat is the fall, in metres, up to which a stretch of the side counts as a
// level shelf; the slices above and below it are joined.
const flat = 1e-6

// slope gives the slices between two corners, the lower first. Over an inset's
// piece the area is a - e y + k y^2, y the inset past its beginning; going up x
// metres the side moves out by m x, so y = y0 - m x.
func slope(insets []geom.InsetPiece, above, below Step, line float64) []piece {
	z0, z1 := line-float64(below.Depth), line-float64(above.Depth)
	if z1-z0 <= flat {
		return nil // a shelf
	}
	i0, i1 := float64(below.In), float64(above.In)
	var out []piece
	if i0 == i1 {
		return append(out, piece{from: z0, until: z1, a: insetArea(insets, i0)})
	}
	m := (i0 - i1) / (z1 - z0)
	for j := len(insets) - 1; j >= 0; j-- {
		p := insets[j]
		deep, shallow := min(i0, float64(p.Until)), max(i1, float64(p.From))
		if deep <= shallow {
			continue
		}
		y0 := deep - float64(p.From)
		e, k := float64(p.Edge), float64(p.K)
		out = append(out, piece{
			from: z0 + (i0-deep)/m, until: z0 + (i0-shallow)/m,
			a: max(0, float64(p.Area)-e*y0+k*y0*y0),
			b: m * (e - 2*k*y0),
			c: k * m * m,
		})
	}
	if len(out) == 0 {
		return append(out, piece{from: z0, until: z1, a: insetArea(insets, i0)})
	}
	// The ends as told, so that slices meet without a gap.
	out[0].from, out[len(out)-1].until = z0, z1
	for j := 1; j < len(out); j++ {
		out[j].from = out[j-1].until
	}
	return out
}

func insetArea(insets []geom.InsetPiece, in float64) float64 {
	for _, p := range insets {
		if in <= float64(p.Until) {
			return max(0, float64(p.At(unit.Length(in))))
		}
	}
	last := insets[len(insets)-1]
	return max(0, float64(last.At(last.Until)))
}
