package drawing

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/layout"
)

// bodyOf gives the box round the pump as it stands in the vault.
func bodyOf(a *layout.Assembly) (low, high geom.Vec3) {
	low = geom.Vec3{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}
	high = low.Scale(-1)
	grow := func(c, r geom.Vec3) {
		low = geom.Vec3{X: min(low.X, c.X-r.X), Y: min(low.Y, c.Y-r.Y), Z: min(low.Z, c.Z-r.Z)}
		high = geom.Vec3{X: max(high.X, c.X+r.X), Y: max(high.Y, c.Y+r.Y), Z: max(high.Z, c.Z+r.Z)}
	}
	for _, b := range a.Body {
		grow(b.Centre, geom.Vec3{
			X: math.Abs(b.U.X) + math.Abs(b.V.X) + math.Abs(b.W.X),
			Y: math.Abs(b.U.Y) + math.Abs(b.V.Y) + math.Abs(b.W.Y),
			Z: math.Abs(b.U.Z) + math.Abs(b.V.Z) + math.Abs(b.W.Z),
		})
	}
	for _, c := range a.Rounds {
		h, r := c.To.Sub(c.From).Scale(0.5), float64(c.Radius)
		grow(c.From.Add(h), geom.Vec3{X: math.Abs(h.X) + r, Y: math.Abs(h.Y) + r, Z: math.Abs(h.Z) + r})
	}
	return low, high
}
