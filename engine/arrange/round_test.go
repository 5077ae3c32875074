package arrange

import (
	"math"
	"math/rand/v2"
	"testing"

	"plashet/engine/geom"
	"plashet/engine/layout"
)

// What a round wall says keeps the room without looking closely does keep it: no
// point of a pipe's faces comes nearer. How far out a face stands that is near the
// wall is found to a hundredth of a millimetre.
func TestRoundWallRejects(t *testing.T) {
	const seed = 7
	rnd := rand.New(rand.NewPCG(seed, seed))
	sure, near := 0, 0
	for n := range 20000 {
		r := roundWall{Cone: layout.Cone{X: 0.3, Y: 0.2, R: 0.25 + 0.1*rnd.Float64(), K: [3]float64{0, 0.1, -0.08}[n%3]}}
		axis := geom.Vec3{X: rnd.NormFloat64(), Y: rnd.NormFloat64(), Z: rnd.NormFloat64()}.Unit()
		if n%5 < 2 {
			axis = [2]geom.Vec3{{Z: 1}, {X: math.Sqrt(0.5), Z: -math.Sqrt(0.5)}}[n%5]
		}
		o := body{axis: axis, r: 0.02 + 0.04*rnd.Float64()}
		from := geom.Vec3{X: 0.3 + 0.25*rnd.NormFloat64()/2, Y: 0.2 + 0.25*rnd.NormFloat64()/2, Z: 0.4 * rnd.Float64()}
		to := from.Add(axis.Scale(0.15 * rnd.Float64()))
		b := branch{c: &chain{bodies: []body{o}}, ends: [][2]geom.Vec3{{from, to}}}
		const room = 0.006
		_, _, out := b.touch(&r, 0, geom.Vec3{}, room)
		u := axis.Cross(least(axis)).Unit()
		v := axis.Cross(u)
		far := math.Inf(-1)
		for _, end := range [2]geom.Vec3{from, to} {
			for k := range 720 {
				sin, cos := math.Sincos(float64(k) * math.Pi / 360)
				d, _, _ := r.over(end.Add(u.Scale(o.r * cos)).Add(v.Scale(o.r * sin)))
				far = max(far, d)
			}
		}
		switch {
		case math.IsInf(out, -1):
			if sure++; far > -room {
				t.Fatalf("case %d, seed %d: a face stands out by %g, said to keep %g", n, seed, far, room)
			}
		default:
			if near++; far < 0.03 && (out < far-1e-5 || out > far+1e-5) {
				t.Fatalf("case %d, seed %d: stands out by %g, found %g", n, seed, far, out)
			}
		}
	}
	if sure < 2000 || near < 2000 {
		t.Errorf("%d kept, %d near: nothing is proved", sure, near)
	}
}
