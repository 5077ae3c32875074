package arrange_test

import (
	"fmt"
	"math"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// closed closes one piece for each new way the chain runs, from its end, and
// leaves the others on a lattice.
func (l *lattice) closed(parts []layout.Laid, legOf []int, ways []geom.Vec3) {
	for k := range parts {
		parts[k].Mark = fmt.Sprintf("F%d", k+1)
	}
	seated(parts)
	l.legs = nil
	var spanned []geom.Vec3
	var open []int
	for k := len(legOf) - 1; k >= 0; k-- {
		hose := atHose(parts, k)
		if !hose && (parts[k].Out.Kind != layout.Socket || parts[k+1].In.Kind != layout.Socket) {
			continue
		}
		rest := ways[legOf[k]]
		for _, s := range spanned {
			rest = rest.Sub(s.Scale(rest.Dot(s)))
		}
		if rest.Norm() > 1e-6 {
			spanned = append(spanned, rest.Unit())
			if hose {
				l.legs = append(l.legs, k)
				continue
			}
			parts[k].Next = layout.Join{Closing: true}
		} else {
			open = append(open, k)
		}
	}
	l.open(parts, open)
}

func (l *lattice) open(parts []layout.Laid, open []int) {
	if len(open) == 0 {
		l.poses(parts)
		return
	}
	if atHose(parts, open[0]) {
		for _, gap := range []float64{0, 2, 5} {
			l.open(stretched(parts, open[0], gap*in), open[1:])
		}
		return
	}
	for _, gap := range []float64{0, 2, 5} {
		parts[open[0]].Next = layout.Join{By: layout.Faces, Distance: inches(gap)}
		l.open(parts, open[1:])
	}
}

// poses stands the pump on a lattice: from wall to wall in four steps, and in
// line with the hole.
func (l *lattice) poses(parts []layout.Laid) {
	s := l.chain.Pump.Blocks[0].Size()
	port := l.chain.Pump.Port
	turn := int(math.Round(float64(l.chain.Pose.Turn / (90 * unit.Degree))))
	for range turn {
		s.X, s.Y, port.X, port.Y = s.Y, s.X, s.Y-port.Y, port.X
	}
	stops := func(most, line float64) []float64 {
		if most < 0 {
			return nil
		}
		out := []float64{0, most / 3, most * 2 / 3, most}
		if line > 0 && line < most {
			out = append(out, line)
		}
		return out
	}
	chain := l.chain
	chain.Parts = append([]layout.Laid(nil), parts...)
	for k := range chain.Parts {
		chain.Parts[k].Next.Closing = false
	}
	touching, _, faults := layout.Lay(chain)
	if l.laid++; !touching.Laid || len(faults) > 0 {
		return
	}
	var ways []geom.Vec3
	for k := range parts {
		if parts[k].Next.Closing {
			ways = append(ways, touching.Places[k+1].InDir)
		}
	}
	for _, k := range l.legs {
		ways = append(ways, touching.Places[k+1].InDir)
	}
	short := l.hole.At.Sub(touching.Places[len(parts)-1].Centre)
	for _, x := range stops(float64(l.i.Vault.Length)-s.X, l.hole.At.X-port.X) {
		for _, y := range stops(float64(l.i.Vault.Width)-s.Y, l.hole.At.Y-port.Y) {
			by, ok := reaches(ways, short.Sub(geom.Vec3{X: x, Y: y}))
			if !ok {
				continue
			}
			own := chain
			own.Parts, own.Pose.At = append([]layout.Laid(nil), parts...), geom.Vec3{X: x, Y: y}
			for n, k := range l.legs {
				own.Parts = stretched(own.Parts, k, by[len(ways)-len(l.legs)+n])
			}
			a, _, faults := layout.Lay(own)
			l.laid++
			if a.Laid && len(faults) == 0 && a.Closure.Off.Norm() < 1e-6 {
				l.found(own, a)
			}
		}
	}
}

// reaches tells that what is missing is a sum of ways (independent, up to
// three), none of them backwards, and how much of each: by Cramer's rule on as many ways as there are,
// filled up with directions square to them that must not be needed.
func reaches(ways []geom.Vec3, missing geom.Vec3) (by [3]float64, ok bool) {
	a := [3]geom.Vec3{}
	n := copy(a[:], ways)
	for k := n; k < 3; k++ {
		var square geom.Vec3
		for _, e := range [3]geom.Vec3{{X: 1}, {Y: 1}, {Z: 1}} {
			switch k {
			case 0:
				square = e
			case 1:
				square = a[0].Cross(e)
			default:
				square = a[0].Cross(a[1])
			}
			if square.Norm() > 0.1 {
				break
			}
		}
		a[k] = square.Unit()
	}
	det := a[0].Cross(a[1]).Dot(a[2])
	for k := range 3 {
		t := missing.Dot(a[(k+1)%3].Cross(a[(k+2)%3])) / det
		if k < n && t < -1e-9 || k >= n && math.Abs(t) > 1e-7 {
			return by, false
		}
		by[k] = math.Max(0, t)
	}
	return by, true
}
