package drawing

import "math"

// field is what stands on a part of the sheet already, so that new texts keep
// off it.
type field struct {
	area  [4]Point // texts stay inside
	texts []patch  // what a text must not touch
	solid []patch  // what it had better not cover
	lines []patch  // what it had better not stand on: chains of lines
	edges []patch  // edges of bodies: no text stands on one, a lead may cross it
	soft  []patch  // help lines: likewise, but that matters little
}

// patch is a convex polygon or a chain of lines with the upright box round it.
type patch struct {
	points    []Point
	low, high Point
}

func patchOf(points ...Point) patch {
	p := patch{points, Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}}
	for _, q := range points {
		p.low = Point{min(p.low.X, q.X), min(p.low.Y, q.Y)}
		p.high = Point{max(p.high.X, q.X), max(p.high.Y, q.Y)}
	}
	return p
}

// far tells that the boxes round two patches keep apart.
func (p *patch) far(o *patch) bool {
	return p.high.X < o.low.X || o.high.X < p.low.X || p.high.Y < o.low.Y || o.high.Y < p.low.Y
}

func rectangle(x0, y0, x1, y1 float64) [4]Point {
	return [4]Point{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}
}

func polygonOf(corners [4]Point, pen Pen, fill Ink) Polygon {
	return Polygon{Points: corners[:], Pen: pen, Fill: fill}
}

// place is one way to put a text.
type place struct {
	text Text
	cost float64
	lead *[2]Point // a line that leads to what it names
}

// What a place costs, beside the distance of its lead in mm: nothing is worse
// than two texts on each other or off the sheet.
const (
	costText  = 1e6
	costSolid = 80.0
	costLine  = 70.0
	costSoft  = 14.0
	costCross = 40.0 // of two leads
	costOver  = 9.0  // of a lead over what it does not name
)

// pad is the paper kept round a text, mm.
const pad = 0.7

func padded(t Text) []Point {
	c := t.Corners()
	ux, uy := c[1].Sub(c[0]), c[3].Sub(c[0])
	if n := ux.Norm(); n > 0 {
		ux = ux.Scale(pad / n)
	}
	if n := uy.Norm(); n > 0 {
		uy = uy.Scale(pad / n)
	}
	return []Point{c[0].Sub(ux).Sub(uy), c[1].Add(ux).Sub(uy), c[2].Add(ux).Add(uy), c[3].Sub(ux).Add(uy)}
}

// best gives the cheapest of the places and keeps the next ones off it. The
// first of equals wins. It is false where every place is off the sheet or on
// another text.
func (f *field) best(places []place) (place, bool) {
	return f.under(costText/2, places)
}

// ifFree gives the cheapest of the places that touch nothing, if there is one.
func (f *field) ifFree(places []place) (place, bool) { return f.under(costLine, places) }

func (f *field) under(limit float64, places []place) (place, bool) {
	p, cost := f.cheapest(places)
	if cost >= limit {
		return place{}, false
	}
	f.take(p)
	return p, true
}

func (f *field) cheapest(places []place) (place, float64) {
	least, at := math.Inf(1), 0
	if len(places) == 0 {
		return place{}, least
	}
	for i := range places {
		if places[i].cost >= least {
			continue
		}
		if c := f.cost(&places[i], least); c < least {
			least, at = c, i
		}
	}
	return places[at], least
}

func (f *field) take(p place) {
	f.texts = append(f.texts, patchOf(padded(p.text)...))
	if p.lead != nil {
		f.lines = append(f.lines, patchOf(p.lead[:]...))
	}
}

// cost weighs a place. From enough upwards it stops counting.
func (f *field) cost(p *place, enough float64) float64 {
	box := patchOf(padded(p.text)...)
	sum := p.cost
	if box.low.X < f.area[0].X || box.high.X > f.area[2].X || box.low.Y < f.area[0].Y || box.high.Y > f.area[2].Y {
		sum += costText
	}
	count := func(list []patch, each float64, on func(a, b []Point) bool) {
		for i := range list {
			if sum < enough && !box.far(&list[i]) && on(box.points, list[i].points) {
				sum += each
			}
		}
	}
	count(f.texts, costText, meet)
	count(f.solid, costSolid, meet)
	count(f.lines, costLine, onChain)
	count(f.edges, costLine, onChain)
	count(f.soft, costSoft, onChain)
	if p.lead != nil && sum < enough {
		sum += f.leadCost(p.lead[0], p.lead[1])
	}
	return sum
}

// leadCost weighs what a lead runs over.
func (f *field) leadCost(from, to Point) float64 {
	lead := patchOf(from, to)
	sum := 0.0
	for i := range f.texts {
		if t := &f.texts[i]; meets(t.points, from, to) {
			sum += costText / 2
		}
	}
	for i := range f.solid {
		if s := &f.solid[i]; !lead.far(s) && meets(s.points, from, to) && !meets(s.points, from, from) {
			sum += costOver
		}
	}
	for i := range f.lines {
		for l, k := f.lines[i].points, 1; k < len(l); k++ {
			if cross(from, to, l[k-1], l[k]) {
				sum += costCross
				break
			}
		}
	}
	return sum
}

// callout finds a place for a text that names what lies at a point, with a lead
// from ring mm round the point to the text; near by there is none. wish turns
// the search to a side: distances that way count for less.
func (f *field) callout(at Point, ring float64, t Text, wish Point) (place, bool) {
	const (
		around = 24
		first  = 4.0 // mm from the ring to the middle of the text's nearest edge
		next   = 1.3 // each ring of places farther than the one before
		most   = 75.0
		short  = 6.0 // a lead of less than this says nothing
	)
	t.Anchor = Middle
	w, h := t.Width()/2, (ascent+descent)*t.Size/2
	lift := (ascent - descent) / 2 * t.Size
	var places []place
	for far := first; far < most; far = far*next + 0.5 {
		for k := range around {
			s, c := math.Sincos(float64(k) * 2 * math.Pi / around)
			// The box stands so that its edge is far from the ring along the way.
			mid := at.Add(Point{c * (ring + far + w*math.Abs(c)), s * (ring + far + h*math.Abs(s))})
			if math.Abs(c) < 0.99 && math.Abs(s) < 0.99 {
				mid.X = at.X + c*(ring+far) + math.Copysign(w, c)
			}
			t.At = mid.Add(Point{0, lift})
			near := Point{max(mid.X-w, min(mid.X+w, at.X)), max(mid.Y-h, min(mid.Y+h, at.Y))}
			p := place{text: t, cost: far - (wish.X*c+wish.Y*s)*far*0.4}
			if d := near.Sub(at); d.Norm() > ring+short {
				from := at.Add(d.Scale(ring / d.Norm()))
				p.lead = &[2]Point{from, near.Sub(d.Scale(pad * 1.5 / d.Norm()))}
			}
			places = append(places, p)
		}
	}
	return f.best(places)
}

func onChain(box, chain []Point) bool {
	for i := 1; i < len(chain); i++ {
		if meets(box, chain[i-1], chain[i]) {
			return true
		}
	}
	return false
}

// meets tells that a line comes into a convex polygon.
func meets(poly []Point, a, b Point) bool { return meet(poly, []Point{a, b}) }

// cross tells that two lines cross.
func cross(a, b, c, d Point) bool {
	return leftOf(a, b, c)*leftOf(a, b, d) < 0 && leftOf(c, d, a)*leftOf(c, d, b) < 0
}

// leftOf is above 0 when r lies to one side of the line from p to q, below 0 on
// the other.
func leftOf(p, q, r Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }

// spread moves heights, given in rising order, apart until each is at least
// gap below the one before, as little as it can and between low and high (where
// they have room). What is moved together is moved evenly.
func spread(at []float64, gap, low, high float64) []float64 {
	// Each height less its place in the row: apart by gap means not falling,
	// and the nearest such row is that of pooled means.
	type pool struct {
		sum float64
		n   int
	}
	var pools []pool
	for i, y := range at {
		pools = append(pools, pool{y - float64(i)*gap, 1})
		for k := len(pools) - 1; k > 0 && pools[k-1].sum*float64(pools[k].n) > pools[k].sum*float64(pools[k-1].n); k-- {
			pools[k-1].sum += pools[k].sum
			pools[k-1].n += pools[k].n
			pools = pools[:k]
		}
	}
	out := make([]float64, 0, len(at))
	last := high - float64(len(at)-1)*gap
	for _, p := range pools {
		y := max(low, min(last, p.sum/float64(p.n)))
		for range p.n {
			out = append(out, y+float64(len(out))*gap)
		}
	}
	return out
}
