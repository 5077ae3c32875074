package main

import (
	"math"
	"math/rand/v2"
)

// A drawer draws jobs. Sizes are those of garden work, invented.
type drawer struct {
	r *rand.Rand
	j *job
}

func (d *drawer) between(low, high float64) float64 { return low + (high-low)*d.r.Float64() }

// power draws evenly over the powers of ten.
func (d *drawer) power(low, high float64) float64 {
	return math.Pow(10, d.between(math.Log10(low), math.Log10(high)))
}

func (d *drawer) chance(part float64) bool { return d.r.Float64() < part }

var (
	bores       = []float64{0.0127, 0.0209, 0.0266, 0.035, 0.0409, 0.0525, 0.0627, 0.0779, 0.1023}
	roughnesses = []float64{0, 1.5e-6, 7e-6, 4.5e-5, 2.6e-4}
)

// pick draws one.
func pick[T any](d *drawer, from []T) T { return from[d.r.IntN(len(from))] }

func (d *drawer) node(x node) int {
	d.j.Nodes = append(d.j.Nodes, x)
	return len(d.j.Nodes) - 1
}

func (d *drawer) junction() int { return d.node(node{Kind: kindJunction}) }

func (d *drawer) level(z float64) int { return d.node(node{Kind: kindLevel, Level: z}) }

func (d *drawer) link(from, to int, parts ...part) {
	d.j.Links = append(d.j.Links, link{from, to, parts})
}

// lip draws a box with a lip; some tilt, into some the pipe pours.
func (d *drawer) lip(low, high float64) int {
	x := node{Kind: kindLip, Level: d.between(low, high), Width: d.between(0.1, 1.2), C: d.between(1.4, 1.85)}
	if d.chance(0.4) {
		x.Tilt = d.between(0.001, 0.02)
	}
	if d.chance(0.25) {
		x.Pours, x.Inlet = true, x.Level+d.between(-0.05, 0.2)
	}
	return d.node(x)
}

// outlet draws a lip, an open end or a return under water.
func (d *drawer) outlet(low, high float64) int {
	switch d.r.IntN(4) {
	case 0:
		return d.node(node{Kind: kindReturn, Level: d.between(low, high)})
	case 1:
		return d.node(node{Kind: kindEnd, Level: d.between(low, high), Bore: pick(d, bores), K: 1})
	}
	return d.lip(low, high)
}

func (d *drawer) pipe(bore float64) part {
	return part{Kind: partPipe, Bore: bore, Length: d.power(0.2, 40), Roughness: pick(d, roughnesses)}
}

func (d *drawer) fitting(bore float64) part {
	p := part{Kind: partFitting, Bore: bore, K: d.between(0.05, 3)}
	if d.chance(0.3) {
		p.K1 = d.between(50, 800)
	}
	return p
}

func (d *drawer) check(bore float64) part {
	return part{Kind: partCheck, Bore: bore, K: d.between(0.5, 4)}
}

// pump draws a curve of four to nine points that falls ever more.
func (d *drawer) pump() part {
	most, head := d.power(1e-3, 1.2e-2), d.between(2, 12)
	n := 4 + d.r.IntN(6)
	bend := d.between(1.2, 3)
	p := part{Kind: partPump}
	for i := range n {
		x := (float64(i) + d.between(0, 0.4)*float64(min(i, 1))) / float64(n-1)
		p.Curve = append(p.Curve, [2]float64{x * most, head * max(1-math.Pow(x, bend)*d.between(0.95, 1), 0)})
	}
	for i := 1; i < n; i++ {
		p.Curve[i][1] = min(p.Curve[i][1], p.Curve[i-1][1])
	}
	return p
}

// run draws pipes and fittings in a row, n elements.
func (d *drawer) run(bore float64, n int) (parts []part) {
	for i := range n {
		if i%3 == 0 {
			parts = append(parts, d.pipe(bore))
		} else {
			parts = append(parts, d.fitting(bore))
		}
	}
	return parts
}

// draw makes one job of a kind.
func draw(r *rand.Rand, kind string) *job {
	d := &drawer{r, &job{Kind: kind, Celsius: math.Round(10*(1+36*r.Float64())) / 10}}
	kinds[kind](d)
	return d.j
}

// kindNames is the order in which the kinds are drawn.
var kindNames = []string{"single line", "parallel falls", "several feeds", "loops", "two pumps in parallel", "two pumps in series", "trickle", "mixed"}

var kinds = map[string]func(d *drawer){
	"single line":           (*drawer).singleLine,
	"parallel falls":        (*drawer).parallelFalls,
	"several feeds":         (*drawer).severalFeeds,
	"loops":                 (*drawer).loops,
	"two pumps in parallel": (*drawer).pumpsInParallel,
	"two pumps in series":   (*drawer).pumpsInSeries,
	"trickle":               (*drawer).trickle,
	"mixed":                 (*drawer).mixed,
}

// singleLine is a pump, a check valve, pipes and fittings to a lip: twelve
// elements.
func (d *drawer) singleLine() {
	bore := pick(d, bores[3:])
	parts := append([]part{d.pump(), d.fitting(bore), d.check(bore)}, d.run(bore, 9)...)
	d.link(d.level(d.between(-1, 0)), d.lip(0.2, 5), parts...)
}

func (d *drawer) parallelFalls() {
	at, bore := d.level(d.between(-1, 0)), pick(d, bores[5:])
	parts := []part{d.pump(), d.check(bore)}
	for range 2 + d.r.IntN(3) {
		tee := d.junction()
		d.link(at, tee, append(parts, d.run(bore, 3)...)...)
		d.link(tee, d.lip(0.2, 4), d.run(pick(d, bores[2:7]), 4)...)
		at, parts = tee, nil
	}
}

func (d *drawer) severalFeeds() {
	tee := d.junction()
	for range 2 + d.r.IntN(2) {
		bore := pick(d, bores[3:])
		d.link(d.level(d.between(-1, 0.5)), tee, append([]part{d.pump(), d.check(bore)}, d.run(bore, 3)...)...)
	}
	d.link(d.level(d.between(0, 4)), tee, d.run(pick(d, bores[2:6]), 2)...) // a header pond
	next := d.junction()
	d.link(tee, next, d.run(pick(d, bores[4:]), 3)...)
	for range 2 {
		d.link(next, d.outlet(0, 3), d.run(pick(d, bores[2:7]), 3)...)
	}
}

// loops is a ring main with chords; two runs lie side by side.
func (d *drawer) loops() {
	ring := make([]int, 3+d.r.IntN(3))
	for i := range ring {
		ring[i] = d.junction()
	}
	for i, v := range ring {
		d.link(v, ring[(i+1)%len(ring)], d.run(pick(d, bores[2:]), 2)...)
	}
	d.link(ring[0], ring[2], d.run(pick(d, bores[2:]), 2)...)
	d.link(ring[1], ring[0], d.run(pick(d, bores[2:]), 2)...)
	d.link(d.level(d.between(-1, 0)), ring[0], d.pump(), d.pipe(pick(d, bores[5:])))
	for _, v := range ring[1:] {
		if d.chance(0.7) {
			d.link(v, d.outlet(0, 3), d.run(pick(d, bores[2:7]), 3)...)
		}
	}
	d.link(ring[len(ring)-1], d.outlet(0, 1), d.run(pick(d, bores[2:7]), 3)...)
}

func (d *drawer) pumpsInParallel() {
	vault, tee := d.level(d.between(-1, 0)), d.junction()
	for range 2 {
		bore := pick(d, bores[4:])
		d.link(vault, tee, append([]part{d.pump(), d.check(bore)}, d.run(bore, 2)...)...)
	}
	d.link(tee, d.lip(0.3, 4), d.run(pick(d, bores[4:]), 4)...)
}

func (d *drawer) pumpsInSeries() {
	vault, between, bore := d.level(d.between(-1, 0)), d.junction(), pick(d, bores[4:])
	d.link(vault, between, append([]part{d.pump()}, d.run(bore, 2)...)...)
	after := d.junction()
	d.link(between, after, append([]part{d.pump(), d.check(bore)}, d.run(bore, 2)...)...)
	d.link(between, d.outlet(0, 4), d.run(pick(d, bores[2:6]), 2)...)
	d.link(after, d.lip(1, 9), d.run(pick(d, bores[3:]), 3)...)
}

// trickle is a header pond a little above what it feeds: flows laminar and in
// the bridge.
func (d *drawer) trickle() {
	head, tee := d.level(1), d.junction()
	bore := pick(d, bores[2:])
	d.link(head, tee, d.run(bore, 2)...)
	for range 2 + d.r.IntN(2) {
		d.link(tee, d.outlet(1-d.power(0.002, 0.2), 1.005), d.run(pick(d, bores[:6]), 2)...)
	}
	other := d.level(1 - d.power(0.001, 0.1))
	d.link(tee, other, append(d.run(pick(d, bores[1:6]), 2), d.check(bore))...)
}

// mixed is a tree with a few more links, and anything in them.
func (d *drawer) mixed() {
	nodes := []int{d.level(d.between(-1, 1)), d.level(d.between(0, 4))}
	for range 2 + d.r.IntN(3) {
		nodes = append(nodes, d.junction())
	}
	for i := 1; i < len(nodes); i++ {
		d.anyLink(nodes[i], nodes[d.r.IntN(i)])
	}
	for range 1 + d.r.IntN(3) {
		d.anyLink(pick(d, nodes), d.outlet(0, 4))
	}
	for range d.r.IntN(3) {
		a, b := pick(d, nodes), pick(d, nodes)
		if a != b {
			d.anyLink(a, b)
		}
	}
}

// anyLink draws a link, some with a pump, a check valve either way, or shut.
func (d *drawer) anyLink(from, to int) {
	bore := pick(d, bores)
	parts := d.run(bore, 1+d.r.IntN(3))
	switch d.r.IntN(10) {
	case 0, 1:
		c := d.check(bore)
		c.Reverse = d.chance(0.5)
		parts = append(parts, c)
	case 2, 3:
		p := d.pump()
		p.Reverse = d.chance(0.5)
		parts = append(parts, p)
	case 4:
		if d.chance(0.4) {
			parts = append(parts, part{Kind: partShut})
		}
	}
	d.link(from, to, parts...)
}
