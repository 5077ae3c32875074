package arrange

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

// bearing is where the legs of a way point and how the pump is turned. The first
// leg runs as the port points, the last through the hole.
type bearing struct {
	dirs   []geom.Vec3
	turned unit.Angle
}

// joints says which of a bearing may turn. Legs and pump are held together by the
// elbows: between two legs stays the angle of the elbow there. What is left are
// the unknown angles, as many as there are ways to turn without parting from any
// of these.
type joints struct {
	turns []turn    // the elbows
	free  []bool    // legs that may point elsewhere
	yaw   bool      // the pump may be turned, and its port with it
	port  geom.Vec3 // where that points before the pump is turned
}

// elbowCosines are those of the elbows, by turn.
var elbowCosines = [2]float64{turn90: 0, turn45: math.Sqrt2 / 2}

// move is a step of a bearing: of each leg where its direction goes, and by how much
// the pump is turned.
type move struct {
	dirs   []geom.Vec3
	turned float64
}

const (
	aligned  = 1e-13 // by which the cosine of an elbow may be off
	parallel = 1e-7  // below which an elbow says nothing new
	longest  = 0.7   // rad: a step that is no step any more
)

// by moves a bearing by parts of steps, then back to where every elbow has its
// angle; false where that is not near.
func (j *joints) by(b *bearing, steps []move, parts []float64) (bearing, bool) {
	out := bearing{dirs: append([]geom.Vec3(nil), b.dirs...), turned: b.turned}
	for i, m := range steps {
		for l, d := range m.dirs {
			out.dirs[l] = out.dirs[l].Add(d.Scale(parts[i]))
		}
		out.turned += unit.Angle(m.turned * parts[i])
	}
	for l, free := range j.free {
		if free {
			out.dirs[l] = out.dirs[l].Unit()
		}
	}
	j.look(&out)
	return out, j.settle(&out)
}

// look points the first leg as the port points.
func (j *joints) look(b *bearing) {
	if j.yaw {
		b.dirs[0] = j.port.RotateAbout(geom.Vec3{Z: 1}, b.turned)
	}
}

// settle moves a bearing to the nearest one in which every elbow has its angle, by
// Newton's method with the least step.
func (j *joints) settle(b *bearing) bool {
	for range 20 {
		f, worst := j.frame(b), 0.0
		for i := range j.turns {
			worst = math.Max(worst, math.Abs(f.off[i]))
		}
		if worst < aligned {
			return true
		}
		step := make([]float64, f.n)
		for k, q := range f.rows {
			for u := range step {
				step[u] += f.needs[k] * q[u]
			}
		}
		if norm(step) > longest {
			return false
		}
		m := f.move(step)
		for l, d := range m.dirs {
			if j.free[l] {
				b.dirs[l] = b.dirs[l].Add(d).Unit()
			}
		}
		b.turned += unit.Angle(m.turned)
		j.look(b)
	}
	return false
}

// angles gives the ways in which a bearing may turn with every elbow keeping its
// angle, each a step of length 1 square to the others.
func (j *joints) angles(b *bearing) (out []move) {
	if len(j.turns) == 0 {
		return nil // the port looks through the hole
	}
	f := j.frame(b)
	basis := f.rows
	for range f.n {
		best, most := []float64(nil), parallel
		for u := range f.n {
			e := make([]float64, f.n)
			e[u] = 1
			for range 2 { // twice, against rounding
				for _, q := range basis {
					less(e, dot(e, q), q)
				}
			}
			if l := norm(e); l > most+1e-9 {
				best, most = e, l
			}
		}
		if best == nil {
			break
		}
		for u := range best {
			best[u] /= most
		}
		basis = append(basis[:len(basis):len(basis)], best)
		out = append(out, f.move(best))
	}
	return out
}

// pivots is a bearing seen from where it is: two ways to turn for each free leg and
// one for the pump, and what of these the elbows forbid.
type pivots struct {
	n     int
	legs  []int // of each two ways
	ways  [][2]geom.Vec3
	round geom.Vec3 // where the first leg goes when the pump is turned
	yaw   bool
	count int
	rows  [][]float64 // that the elbows forbid, square to each other, of length 1
	needs []float64   // of each, how far to go along it
	off   []float64   // of each elbow, what its cosine lacks
}

// frame works out what the elbows forbid at a bearing.
func (j *joints) frame(b *bearing) *pivots {
	f := &pivots{yaw: j.yaw, count: len(b.dirs), round: geom.Vec3{Z: 1}.Cross(b.dirs[0])}
	at := make([]int, len(b.dirs))
	for l := range b.dirs {
		at[l] = -1
		if j.free[l] {
			at[l] = f.n
			f.legs = append(f.legs, l)
			u := square(b.dirs[l].Cross(least(b.dirs[l])))
			f.ways = append(f.ways, [2]geom.Vec3{u, b.dirs[l].Cross(u)})
			f.n += 2
		}
	}
	if j.yaw {
		f.n++
	}
	for i, t := range j.turns {
		off := elbowCosines[t] - b.dirs[i].Dot(b.dirs[i+1])
		f.off = append(f.off, off)
		row := make([]float64, f.n)
		for side, l := range [2]int{i, i + 1} {
			if k := at[l]; k >= 0 {
				other := b.dirs[i+1-side]
				row[k], row[k+1] = other.Dot(f.ways[k/2][0]), other.Dot(f.ways[k/2][1])
			}
		}
		if j.yaw && i == 0 {
			row[f.n-1] = f.round.Dot(b.dirs[1])
		}
		for k, q := range f.rows {
			c := dot(row, q)
			less(row, c, q)
			off -= c * f.needs[k]
		}
		l := norm(row)
		if l < parallel {
			continue
		}
		for u := range row {
			row[u] /= l
		}
		f.rows, f.needs = append(f.rows, row), append(f.needs, off/l)
	}
	return f
}

// move gives a step of the bearing.
func (f *pivots) move(step []float64) move {
	m := move{dirs: make([]geom.Vec3, f.count)}
	for i, l := range f.legs {
		m.dirs[l] = f.ways[i][0].Scale(step[2*i]).Add(f.ways[i][1].Scale(step[2*i+1]))
	}
	if f.yaw {
		m.turned = step[f.n-1]
	}
	return m
}

// least gives the axis that a direction lies least along.
func least(d geom.Vec3) geom.Vec3 {
	x, y, z := math.Abs(d.X), math.Abs(d.Y), math.Abs(d.Z)
	switch {
	case x <= y && x <= z:
		return geom.Vec3{X: 1}
	case y <= z:
		return geom.Vec3{Y: 1}
	}
	return geom.Vec3{Z: 1}
}

func dot(a, b []float64) (sum float64) {
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}

func norm(a []float64) float64 { return math.Sqrt(dot(a, a)) }

// less takes f times b off a.
func less(a []float64, f float64, b []float64) {
	for i := range a {
		a[i] -= f * b[i]
	}
}
