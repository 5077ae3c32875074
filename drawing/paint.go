package drawing

import (
	"math"

	"plashet/engine/geom"
)

// shape is a solid that something drawn consists of.
type shape interface {
	reach(n geom.Vec3) (low, high float64)
	axes() []geom.Vec3
	corners() []geom.Vec3
}

// thing is what is drawn in one go: a part, a piece of pipe, the pump.
type thing struct {
	name   string
	mark   string // of the part or piece it is
	title  string
	kind   Kind
	shapes []shape
	corner *Ball // of an elbow, round which its legs meet; the picture draws it as a part of them
	draw   func()
}

func (t *thing) reach(n geom.Vec3) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, s := range t.shapes {
		a, b := s.reach(n)
		low, high = min(low, a), max(high, b)
	}
	return low, high
}

// behind tells how surely a stands behind b: above 0 when it does, below when
// it is the other way, 0 when neither hides the other. They are looked at along
// the directions of their own faces and axes; where a direction parts them (or
// parts them most nearly: threads and spigots stand in each other), what lies
// on the viewer's side is in front.
func behind(a, b *thing, toward geom.Vec3) float64 {
	const edgeOn = 0.05
	best, sign := math.Inf(-1), 0.0
	try := func(n geom.Vec3) {
		d := n.Dot(toward)
		aLow, aHigh := a.reach(n)
		bLow, bHigh := b.reach(n)
		gap := max(bLow-aHigh, aLow-bHigh)
		if gap <= best || math.Abs(d) < edgeOn {
			return
		}
		best, sign = gap, math.Copysign(1, d)
		if aLow-bHigh > bLow-aHigh {
			sign = -sign
		}
	}
	for _, n := range [...]geom.Vec3{{X: 1}, {Y: 1}, {Z: 1}} {
		try(n)
	}
	for _, t := range [...]*thing{a, b} {
		for _, s := range t.shapes {
			for _, n := range s.axes() {
				try(n)
			}
		}
	}
	return sign
}

// painted orders things from the back to the front. Where they stand round
// each other in a ring, the farthest goes first.
func painted(things []*thing, toward geom.Vec3) []*thing {
	depth := func(t *thing) float64 {
		low, high := t.reach(toward)
		return (low + high) / 2
	}
	left := append([]*thing(nil), things...)
	out := make([]*thing, 0, len(things))
	for len(left) > 0 {
		pick, free := 0, false
		for i, t := range left {
			hides := false
			for k, o := range left {
				if k != i && behind(o, t, toward) > 0 {
					hides = true
					break
				}
			}
			if better := depth(t) < depth(left[pick]); !hides && (!free || better) || !free && hides && better {
				pick, free = i, free || !hides
			}
		}
		out = append(out, left[pick])
		left = append(left[:pick], left[pick+1:]...)
	}
	return out
}
