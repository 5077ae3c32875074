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
// each other in a ring, the farthest goes first. Each two are looked at once.
func painted(things []*thing, toward geom.Vec3) []*thing {
	n := len(things)
	depth := make([]float64, n)
	hiders := make([]int, n) // how many of those left stand behind it
	before := make([][]int, n)
	for i, t := range things {
		low, high := t.reach(toward)
		depth[i] = (low + high) / 2
		for k, o := range things {
			if k != i && behind(o, t, toward) > 0 {
				hiders[i]++
				before[k] = append(before[k], i)
			}
		}
	}
	out := make([]*thing, 0, n)
	gone := make([]bool, n)
	for range n {
		pick := -1
		for i := range things {
			if gone[i] {
				continue
			}
			if pick < 0 {
				pick = i
				continue
			}
			free, found := hiders[i] == 0, hiders[pick] == 0
			if free && !found || free == found && depth[i] < depth[pick] {
				pick = i
			}
		}
		gone[pick] = true
		out = append(out, things[pick])
		for _, i := range before[pick] {
			hiders[i]--
		}
	}
	return out
}
