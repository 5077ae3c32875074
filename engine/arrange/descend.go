package arrange

import "math"

// How a bearing is led to where its bones close. At each step the gap is made
// least over lengths and angles together, the angles to the first order and no
// farther than a trust region lets them; what the step truly does decides how far
// the next may go (R. Fletcher, *Practical Methods of Optimization*, 1987). Where
// as much is left open as is asked for, this is Newton's method.

const (
	firstStep = 0.25 // rad
	lastStep  = 1e-7
	mostSteps = 40
	hopeless  = 1e-3 // share of the gap that a step must promise
	alikeRoll = 1e-5 // rad: below which two bearings are the same
)

// close leads a bearing to one that closes; false where that comes to no end.
func (o *bones) close(b bearing) (bearing, bool) {
	gap, _, _ := o.gap(&b, nil, 0)
	step := firstStep
	for range mostSteps {
		if gap <= closed {
			return b, true
		}
		if step < lastStep || math.IsInf(gap, 1) || o.s.halted() {
			return b, false
		}
		angles := o.joints.angles(&b)
		if len(angles) == 0 {
			return b, false
		}
		at := append([]float64(nil), o.x...)
		hoped, _, parts := o.gap(&b, angles, step)
		if gap-hoped < hopeless*gap {
			return b, false
		}
		next, ok := o.joints.by(&b, angles, parts)
		got := math.Inf(1)
		if ok {
			got, _, _ = o.gap(&next, nil, 0)
		}
		if got <= gap-0.1*(gap-hoped) {
			b, gap = next, got
			step = math.Min(2*step, longest)
			continue
		}
		step = math.Min(step, biggest(parts)) / 3
		o.x = at // slopes are taken where the solution at the bearing lay
	}
	return b, false
}

// shorten leads a bearing that closes to where it does so with the least pipe near by.
func (o *bones) shorten(b bearing) (bearing, float64) {
	_, length, _ := o.gap(&b, nil, 0)
	step := firstStep
	for n := 0; n < mostSteps && step > 1e-3 && !o.s.halted(); n++ {
		angles := o.joints.angles(&b)
		at := append([]float64(nil), o.x...)
		_, hoped, parts := o.gap(&b, angles, step)
		if length-hoped < worthIt {
			break
		}
		if next, ok := o.joints.by(&b, angles, parts); ok {
			if next, ok = o.close(next); ok {
				if _, got, _ := o.gap(&next, nil, 0); got < length-0.1*(length-hoped) {
					b, length = next, got
					continue
				}
			}
		}
		o.x, step = at, step/3
	}
	return b, length
}

// worthIt is pipe that is worth another step.
const worthIt = 2e-4 // m

func biggest(a []float64) (most float64) {
	for _, v := range a {
		most = math.Max(most, math.Abs(v))
	}
	return most
}

// same tells that two bearings are one.
func (b *bearing) same(o *bearing) bool {
	if math.Abs(math.Remainder(float64(b.turned-o.turned), 2*math.Pi)) > alikeRoll {
		return false
	}
	for l, d := range b.dirs {
		if d.Sub(o.dirs[l]).Norm() > alikeRoll {
			return false
		}
	}
	return true
}
