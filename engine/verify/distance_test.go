package verify

import (
	"math"
	"math/rand/v2"
	"testing"
)

func anyDirection(r *rand.Rand) vec {
	for {
		if n, ok := (vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}).one(); ok {
			return n
		}
	}
}

// anyBody draws a block or a cylinder, some along the frame, some drawn out.
func anyBody(r *rand.Rand) body {
	c := vec{r.Float64(), r.Float64(), r.Float64()}.times(0.6)
	var b body
	if r.IntN(2) == 0 {
		h := vec{r.Float64(), r.Float64(), r.Float64()}.times(0.2)
		b = block(c.minus(h), c.plus(h))
		if r.IntN(2) == 0 {
			b = b.spun(r.Float64() * 2 * math.Pi)
		}
	} else {
		d := anyDirection(r)
		if r.IntN(2) == 0 {
			d = pick(r, vec{x: 1}, vec{y: 1}, vec{z: 1})
		}
		b = cylinder(c, c.at(d, 0.3*r.Float64()), 0.01+0.1*r.Float64())
	}
	if r.IntN(3) == 0 {
		b = b.swept(pick(r, vec{z: 0.5}, vec{x: -0.2, y: 0.1}, anyDirection(r)))
	}
	return b
}

// inBody draws a point of the body.
func inBody(r *rand.Rand, b *body) vec {
	p := b.c
	for _, s := range b.s[:b.n] {
		p = p.at(s, 2*r.Float64()-1)
	}
	if b.r != 0 {
		u := noon(b.axis)
		p = p.plus(clock(b.axis, 2*math.Pi*r.Float64()).times(b.r * math.Sqrt(r.Float64()))).plus(u.times(0))
	}
	return p
}

// The bound is never above the distance of two points drawn, and the descent's
// two points show that it is sharp: each certifies the other.
func TestDistanceIsBoundAndSharp(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	const cases = 20000
	apart, dull, worst := 0, 0, 0.0
	for range cases {
		a, b := anyBody(r), anyBody(r)
		d := distance(&a, &b, math.Inf(1))
		for range 20 {
			if got := inBody(r, &a).toward(inBody(r, &b)); got < d-1e-9 {
				t.Fatalf("bound %g above the distance of two points %g: %+v %+v", d, got, a, b)
			}
		}
		w := minus(&a, &b)
		found := w.directions()
		high := w.descend(&found, 100*rounds)
		if high > near {
			apart++
			if high-d > grain {
				dull++
				worst = max(worst, high-d)
			}
		} else if d > high+1e-9 {
			t.Fatalf("bound %g above a distance attained %g", d, high)
		}
	}
	t.Logf("%d of %d apart, %d of them not sharp to a micrometre, worst by %g m", apart, cases, dull, worst)
	if apart < cases/4 || dull > apart/200 || worst > 1e-4 {
		t.Errorf("%d apart, %d not sharp, worst by %g", apart, dull, worst)
	}
}

// Distances by hand.
func TestDistanceByHand(t *testing.T) {
	unitBox := block(vec{}, vec{1, 1, 1})
	tube := cylinder(vec{}, vec{z: 1}, 0.5)
	for _, c := range []struct {
		name string
		a, b body
		want float64
	}{
		{"corner to corner of blocks", unitBox, block(vec{2, 3, 3}, vec{4, 4, 4}), 3},                                // 1, 2, 2
		{"edge to edge of blocks", unitBox, block(vec{4, 5, 0}, vec{5, 6, 1}), 5},                                    // 3, 4
		{"side by side", tube, cylinder(vec{3, 4, 0}, vec{3, 4, 1}, 1), 3.5},                                         // 5 - 0.5 - 1
		{"crossing", tube, cylinder(vec{-1, 2, 0.5}, vec{1, 2, 0.5}, 0.25), 1.25},                                    // 2 - 0.5 - 0.25
		{"end on end", tube, cylinder(vec{z: 3}, vec{z: 4}, 2), 2},                                                   //
		{"rim to edge", tube, block(vec{3.5, -1, 5}, vec{4, 1, 6}), 5},                                               // 3, 4
		{"touching faces", unitBox, block(vec{1, 0, 0}, vec{2, 1, 1}), 0},                                            //
		{"tilted rims touch", cylinder(vec{}, vec{1, 0, 1}, 0.5), cylinder(vec{y: 1}, vec{1, 1, 1}, 0.5), 0},         //
		{"standing in each other", unitBox, block(vec{0.75, 0, 0}, vec{2, 1, 1}), -0.25},                             //
		{"passing under", block(vec{}, vec{1, 1, 1}).swept(vec{x: 10}), block(vec{4, 0, 1.5}, vec{5, 1, 2}), 0.5},    //
		{"passing through", block(vec{}, vec{1, 1, 1}).swept(vec{z: 10}), block(vec{0.9, 0, 5}, vec{2, 1, 6}), -0.1}, //
		{"tilted ends, plan to plan", cylinder(vec{}, vec{0.1, 0, 0.1}, 0.5).swept(vec{z: 3}), block(vec{-1, 0.7, 1}, vec{1, 1, 2}), 0.2},
	} {
		if d := distance(&c.a, &c.b, math.Inf(1)); math.Abs(d-c.want) > grain {
			t.Errorf("%s: got %g, want %g", c.name, d, c.want)
		}
		if d := distance(&c.b, &c.a, math.Inf(1)); math.Abs(d-c.want) > grain {
			t.Errorf("%s, the other way: got %g, want %g", c.name, d, c.want)
		}
	}
}

// A sweep holds every place on the way: its bound is below that of each.
func TestSweptHoldsTheWay(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 3))
	for range 3000 {
		a, b, way := anyBody(r), anyBody(r), anyDirection(r).times(r.Float64())
		if a.n == len(a.s) {
			continue // drawn out already
		}
		s := a.swept(way)
		d := distance(&s, &b, math.Inf(1))
		for i := range 9 {
			m := a.moved(way.times(float64(i) / 8))
			w := minus(&m, &b)
			found := w.directions()
			if high := w.descend(&found, 100*rounds); d > high+1e-9 {
				t.Fatalf("swept %g above %g at step %d", d, high, i)
			}
		}
	}
}

// The round wall: a point of a body is never farther out than told.
func TestRoundWall(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 9))
	for range 3000 {
		w := barrel{x: 0.3, y: 0.3, r: 0.4, k: 0.2*r.Float64() - 0.1}
		b := anyBody(r)
		room := w.room(&b)
		best := math.Inf(1)
		for range 300 {
			p := inBody(r, &b)
			d := (w.r + w.k*p.z - math.Hypot(p.x-w.x, p.y-w.y)) / math.Sqrt(1+w.k*w.k)
			best = min(best, d)
		}
		if room > best+1e-9 {
			t.Fatalf("room %g told, a point has only %g", room, best)
		}
		if b.r == 0 && b.n == 3 && math.IsNaN(room) {
			t.Fatal("not a number")
		}
	}
	up := cylinder(vec{0.3, 0.5, 0}, vec{0.3, 0.5, 1}, 0.05)
	if got := (&barrel{0.3, 0.3, 0.4, 0}).room(&up); math.Abs(got-0.15) > 1e-12 {
		t.Errorf("upright by hand: %g", got)
	}
	level := cylinder(vec{0.3, 0.3, 0.5}, vec{0.6, 0.3, 0.5}, 0.04) // its rim is at 0.3, 0.04 in plan
	want := 0.4 - math.Hypot(0.3, 0.04)
	if got := (&barrel{0.3, 0.3, 0.4, 0}).room(&level); math.Abs(got-want) > grain || got > want {
		t.Errorf("level by hand: %g, want %g", got, want)
	}
}
