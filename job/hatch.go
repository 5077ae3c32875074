package job

import (
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// hatchCorners holds the corners of an opening against the rim of a round vault: no
// farther from its middle than half its diameter (plane geometry). What lies beyond
// the vault's box is told by hatch.
func (c *checker) hatchCorners(v *Vault) {
	h, r := &v.Hatch, v.Length.SI/2
	if h.Length.IsZero() || h.Width.IsZero() || v.Length.IsZero() || max(h.Length.SI, h.Width.SI) > 2*r {
		return
	}
	left, front := h.Left.Or(r-h.Length.SI/2), h.Front.Or(r-h.Width.SI/2)
	if max(left+h.Length.SI, front+h.Width.SI) > 2*r+readTape {
		return
	}
	x, y := max(r-left, left+h.Length.SI-r), max(r-front, front+h.Width.SI-r)
	found := unit.Length(math.Hypot(float64(x), float64(y)))
	if found <= r+readTape {
		return
	}
	// The largest square in the middle, down to what is easily read off a tape.
	step := unit.Inch / 4
	if c.j.System().Is(unit.Metric) {
		step = 5 * unit.Millimetre
	}
	square := step * unit.Length(math.Floor(float64(r/step)*math.Sqrt2+1e-9))
	c.add("/vault/hatch", CodeHatchRound, trace.Str("length", h.Length.Text), trace.Str("width", h.Width.Text),
		trace.Num("left", left, unit.KindTape), trace.Num("front", front, unit.KindTape),
		trace.Num("found", found, unit.KindTape), trace.Num("limit", r, unit.KindTape), trace.Num("square", square, unit.KindTape))
}
