package drawing

import "math"

// field is what stands on a part of the sheet already, so that new texts keep
// off it.
type field struct {
	area  [4]Point  // texts stay inside
	texts [][]Point // what a text must not touch
	solid [][]Point // what it had better not cover
	lines [][]Point // what it had better not stand on: chains of lines
	soft  [][]Point // help lines: likewise, but that matters little
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
// first of equals wins.
func (f *field) best(places []place) place {
	p, _ := f.cheapest(places)
	f.take(p)
	return p
}

func (f *field) cheapest(places []place) (place, float64) {
	least, at := math.Inf(1), 0
	for i := range places {
		if c := f.cost(&places[i]); c < least {
			least, at = c, i
		}
	}
	return places[at], least
}

// ifFree gives the first of the places that touches nothing, if there is one.
func (f *field) ifFree(places []place) (place, bool) {
	p, cost := f.cheapest(places)
	if cost >= costLine {
		return place{}, false
	}
	f.take(p)
	return p, true
}

func (f *field) take(p place) {
	f.texts = append(f.texts, padded(p.text))
	if p.lead != nil {
		f.lines = append(f.lines, p.lead[:])
	}
}

func (f *field) cost(p *place) float64 {
	box := padded(p.text)
	sum := p.cost
	for _, c := range box {
		if c.X < f.area[0].X || c.X > f.area[2].X || c.Y < f.area[0].Y || c.Y > f.area[2].Y {
			sum += costText
		}
	}
	for _, t := range f.texts {
		if meet(box, t) {
			sum += costText
		}
		if p.lead != nil && meets(t, p.lead[0], p.lead[1]) {
			sum += costText / 2
		}
	}
	for _, s := range f.solid {
		if meet(box, s) {
			sum += costSolid
		}
		if p.lead != nil && meets(s, p.lead[0], p.lead[1]) && !meets(s, p.lead[0], p.lead[0]) {
			sum += costOver
		}
	}
	for _, l := range f.soft {
		if onChain(box, l) {
			sum += costSoft
		}
	}
	for _, l := range f.lines {
		onLead := false
		for i := 1; i < len(l); i++ {
			onLead = onLead || p.lead != nil && cross(p.lead[0], p.lead[1], l[i-1], l[i])
		}
		if onChain(box, l) {
			sum += costLine
		}
		if onLead {
			sum += costCross
		}
	}
	return sum
}

// callout finds a place for a text that names what lies at a point, with a lead
// from ring mm round the point to the text; near by there is none. wish turns
// the search to a side: distances that way count for less.
func (f *field) callout(at Point, ring float64, t Text, wish Point) place {
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
