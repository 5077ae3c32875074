package arrange

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

// seed lists bearings all round, at steps that leave not too many of them.
func (l *limber) seed(turned unit.Angle, hole geom.Vec3, unknown int) {
	step := math.Pi / 12
	if unknown > 1 {
		step = math.Pi / 6
	}
	l.step = step / 2
	whole := int(math.Round(2 * math.Pi / step))
	around := 1
	switch {
	case len(l.turns) == 0: // one turn, if any, has the port look through the hole
		turned, around = unit.Angle(math.Atan2(hole.Y, hole.X)-math.Atan2(l.port.Y, l.port.X)), 1
	case l.yaw:
		around = whole
	}
	for i := range around {
		by := turned + unit.Angle(float64(i)*step)
		port := square(l.port.RotateAbout(geom.Vec3{Z: 1}, by))
		l.spread([]geom.Vec3{port}, hole, by, step)
	}
}

// spread carries a row of legs on: by each step about the last leg as long as more
// than two elbows are left, then by where two circles about two directions meet.
func (l *limber) spread(dirs []geom.Vec3, hole geom.Vec3, turned unit.Angle, step float64) {
	i := len(dirs) - 1 // elbow that comes next
	left, last := len(l.turns)-i, dirs[i]
	take := func(d geom.Vec3) []geom.Vec3 { return append(dirs[:len(dirs):len(dirs)], d) }
	switch {
	case left <= 1:
		b := bearing{dirs: take(hole), turned: turned}
		if left == 0 {
			b.dirs = dirs
		}
		if (left > 0 || alike(last, hole)) && l.settle(&b) {
			l.seeds = append(l.seeds, b)
		}
	case left == 2:
		for _, d := range meet(last, hole, elbowCosines[l.turns[i]], elbowCosines[l.turns[i+1]], step) {
			l.spread(take(d), hole, turned, step)
		}
	default:
		from := hole
		if i > 0 {
			from = dirs[i-1]
		}
		for _, d := range cone(last, from, elbowCosines[l.turns[i]], step) {
			l.spread(take(d), hole, turned, step)
		}
	}
}

// cone gives directions at a cosine to an axis, step by step from where another
// direction lies about it.
func cone(axis, from geom.Vec3, cosine, step float64) (out []geom.Vec3) {
	u := from.Sub(axis.Scale(axis.Dot(from)))
	if u.Norm() < 1e-6 {
		u = axis.Cross(least(axis))
	}
	u = u.Unit()
	v, sine := axis.Cross(u), math.Sqrt(1-cosine*cosine)
	for k := range int(math.Round(2 * math.Pi / step)) {
		sin, cos := math.Sincos(float64(k) * step)
		out = append(out, axis.Scale(cosine).Add(u.Scale(sine*cos)).Add(v.Scale(sine*sin)).Unit())
	}
	return out
}

// meet gives the directions at two cosines to two others: two or none, or a whole
// round in steps where these lie along one line. In a plane that just misses, as
// many as touch it nearly.
func meet(a, b geom.Vec3, toA, toB, step float64) []geom.Vec3 {
	q := a.Dot(b)
	w := 1 - q*q
	if w < 1e-12 {
		if math.Abs(toA-math.Copysign(toB, q*toB)) > 1e-9 {
			return nil
		}
		return cone(a, b, toA, step)
	}
	x, y := (toA-toB*q)/w, (toB-toA*q)/w
	in := a.Scale(x).Add(b.Scale(y))
	out := 1 - in.Dot(in)
	if out < -0.05 {
		return nil
	}
	n := a.Cross(b).Scale(math.Sqrt(math.Max(0, out) / w))
	return []geom.Vec3{in.Add(n).Unit(), in.Sub(n).Unit()}
}
