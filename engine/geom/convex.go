package geom

import "math"

// stage is a range of insets over which a convex polygon keeps its edges:
// A(d) = area - edge (d - from) + k (d - from)^2 for from <= d <= until.
type stage struct {
	from, until   float64
	area, edge, k float64
}

// shrink gives the stages of a convex polygon whose edges all move inward at
// the same pace until nothing is left. Each corner runs along its bisector; an
// edge between corners that turn by a and b loses tan(a/2) + tan(b/2) of its
// length for each unit of inset; where that takes all of it the edge drops out
// and its neighbours meet. For a convex outline the remaining polygon is
// exactly the set of points at least d from the edge (a point nearer to the
// line of an edge than to the edge itself lies outside), so no rounding of
// corners comes in. Method: the straight skeleton of a convex polygon (Aichholzer
// and others, A novel type of skeleton for polygons, 1995), which has edge
// events only.
func shrink(p []Vec2) []stage {
	n := len(p)
	at := append([]Vec2(nil), p...)
	dir := make([]Vec2, n)
	for i := range p {
		dir[i], _ = direction(p[i], p[(i+1)%n])
	}
	size := rectOf(p).Max.sub(rectOf(p).Min).norm()
	hair := 1e-13 * size
	var out []stage
	d := 0.0
	for {
		s, tan, ok := measure(at, dir)
		if !ok {
			break
		}
		n = len(at)
		step := math.Inf(1)
		length := make([]float64, n)
		for i := range at {
			length[i] = at[(i+1)%n].sub(at[i]).dot(dir[i])
			if pace := tan[i] + tan[(i+1)%n]; pace > 0 {
				step = min(step, length[i]/pace)
			}
		}
		step = max(step, 0)
		s.from, s.until = d, d+step
		if step > hair || len(out) == 0 {
			out = append(out, s)
		}
		d += step
		// Each corner moves along its bisector: inward by step and forward by
		// step times tan(theta/2) along the edge that leaves it.
		var nextAt, nextDir []Vec2
		for i := range at {
			if length[i]-(tan[i]+tan[(i+1)%n])*step <= hair {
				continue
			}
			nextAt = append(nextAt, at[i].add(dir[i].left().add(dir[i].scale(tan[i])).scale(step)))
			nextDir = append(nextDir, dir[i])
		}
		if len(nextAt) == n {
			break // cannot happen but for rounding; the last stage stands
		}
		at, dir = nextAt, nextDir
	}
	return out
}

// measure gives area, edge length and k of the polygon and the tangent of half
// the turn at each corner; false when it has shrunk to a line or a point.
func measure(at, dir []Vec2) (s stage, tan []float64, ok bool) {
	n := len(at)
	if n < 3 {
		return s, nil, false
	}
	tan = make([]float64, n)
	for i := range at {
		in, out := dir[(i+n-1)%n], dir[i]
		theta := math.Atan2(in.cross(out), in.dot(out))
		if theta < -straight || theta > math.Pi-straight {
			return s, nil, false // the two edges have come face to face
		}
		tan[i] = math.Tan(max(0, theta) / 2)
		s.k += tan[i]
		s.edge += at[(i+1)%n].distance(at[i])
	}
	s.area = shoelace(at)
	return s, tan, s.area > 0
}

func areaAt(stages []stage, d float64) float64 {
	for _, s := range stages {
		if d <= s.until {
			x := d - s.from
			return max(0, s.area-s.edge*x+s.k*x*x)
		}
	}
	return 0
}
