package arrange

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/layout"
)

// compass is the set of directions that a chain may run in, and which follows
// which by an elbow.
type compass struct {
	dirs    []geom.Vec3
	by90    [][]int
	by45    [][]int
	byHose  [][]int // by a hose; none where there is no hose
	start   int
	goal    int
	apart   []geom.Vec3 // normals of the planes that keep bodies apart
	cells   []cell      // the net that they make
	finer   finer       // the same with a net of finer triangles
	coarser *compass    // the same with one of coarser ones; nil: there is none

	pump      *layout.Frame // alone, as it stands and is turned; nil where it cannot be placed
	around    []body        // pump and surroundings
	pre, post []geom.Vec3   // flow into each glued turn on the pump's side, out of each on the wall's
}

// alike tells that two directions are the same.
func alike(a, b geom.Vec3) bool { return a.Dot(b) > 1-1e-9 }

// newCompass makes the directions between a port and a hole: the six along the
// axes and the twelve half way between two of them, in the vault's own frame, in
// the port's where the pump stands askew, and in the hole's where its axis does.
// All of them share the upright.
func newCompass(port, hole geom.Vec3, glued ...geom.Vec3) *compass {
	c := &compass{}
	add := func(d geom.Vec3) int {
		for i, o := range c.dirs {
			if alike(o, d) {
				return i
			}
		}
		c.dirs = append(c.dirs, d)
		return len(c.dirs) - 1
	}
	up := geom.Vec3{Z: 1}
	c.start, c.goal = add(port), add(hole)
	for _, askew := range append([]geom.Vec3{{X: 1}, port, hole}, glued...) {
		flat := geom.Vec3{X: askew.X, Y: askew.Y}
		if flat.Norm() < 1e-9 {
			continue
		}
		x := flat.Unit()
		y := up.Cross(x)
		axes := [3]geom.Vec3{x, y, up}
		for i, a := range axes {
			add(a)
			add(a.Scale(-1))
			for _, b := range axes[:i] {
				for _, s := range [4][2]float64{{1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
					add(a.Scale(s[0]).Add(b.Scale(s[1])).Unit())
				}
			}
		}
	}
	c.makeNormals()
	c.weave(c.dirs)
	c.by90, c.by45 = make([][]int, len(c.dirs)), make([][]int, len(c.dirs))
	for i, a := range c.dirs {
		for k, b := range c.dirs {
			switch dot := a.Dot(b); {
			case math.Abs(dot) < 1e-9:
				c.by90[i] = append(c.by90[i], k)
			case math.Abs(dot-math.Sqrt2/2) < 1e-9:
				c.by45[i] = append(c.by45[i], k)
			}
		}
	}
	return c
}

// makeNormals gives the directions across which planes may keep bodies apart: those
// of the legs, all that are square to two of them, and between the directions
// square to an axis four more in each quarter, because round bodies side by side
// can lie at any angle: with planes 22.5 degrees apart they are kept apart by at
// most 2 % more than they need. With each stands its opposite. What the list loses
// elsewhere the net tells (see net.go).
func (c *compass) makeNormals() {
	add := func(d geom.Vec3) {
		if n := d.Norm(); n < 1e-6 {
			return
		}
		d = square(d.Unit())
		for _, o := range c.apart {
			if alike(o, d) {
				return
			}
		}
		c.apart = append(c.apart, d)
	}
	for _, d := range c.dirs {
		add(d)
	}
	for i, a := range c.dirs {
		for _, b := range c.dirs[:i] {
			add(a.Cross(b))
			add(b.Cross(a))
		}
	}
	for _, a := range c.dirs[:len(c.dirs):len(c.dirs)] {
		if math.Max(math.Abs(a.X), math.Max(math.Abs(a.Y), math.Abs(a.Z))) < 1-1e-9 {
			continue // along the axes only: each pair of legs lies along one mostly
		}
		u := geom.Vec3{Z: 1}
		if math.Abs(a.Z) > 0.5 {
			u = geom.Vec3{X: 1}
		}
		v := a.Cross(u)
		for i := range 16 {
			sin, cos := math.Sincos(float64(i) * math.Pi / 8)
			add(u.Scale(cos).Add(v.Scale(sin)))
		}
	}
}

// turn is an elbow by its angle.
type turn uint8

const (
	turn90 turn = iota
	turn45
)

func (c *compass) next(i int, t turn) []int {
	if t == turn90 {
		return c.by90[i]
	}
	return c.by45[i]
}

// sequences gives all ways from the port's direction to the hole's with n
// elbows of the kinds at hand, as directions of the legs; one of them, counted
// from 1, may be a hose.
func (c *compass) sequences(n int, have [2]bool, hose int, halted func() bool) [][]int {
	// far[i] is how many elbows it takes from direction i to the goal, at least.
	far := make([]int, len(c.dirs))
	for i := range far {
		far[i] = math.MaxInt32
	}
	far[c.goal] = 0
	for queue := []int{c.goal}; len(queue) > 0; queue = queue[1:] {
		for _, t := range [...]turn{turn90, turn45} {
			if !have[t] {
				continue
			}
			for _, k := range c.next(queue[0], t) { // elbows turn both ways
				if far[k] > far[queue[0]]+1 {
					far[k] = far[queue[0]] + 1
					queue = append(queue, k)
				}
			}
		}
	}
	var out [][]int
	path := []int{c.start}
	var walk func()
	walk = func() {
		at, left := path[len(path)-1], n+1-len(path)
		if len(path) > hose && far[at] > left || halted() {
			return
		}
		if left == 0 {
			out = append(out, append([]int(nil), path...))
			return
		}
		on := func(list []int) {
			for _, k := range list {
				path = append(path, k)
				walk()
				path = path[:len(path)-1]
			}
		}
		if len(path) == hose {
			on(c.byHose[at])
			return
		}
		for _, t := range [...]turn{turn90, turn45} {
			if have[t] {
				on(c.next(at, t))
			}
		}
	}
	walk()
	return out
}

// turnOf gives the elbow between two directions.
func turnOf(a, b geom.Vec3) turn {
	if math.Abs(a.Dot(b)) < 0.3 {
		return turn90
	}
	return turn45
}
