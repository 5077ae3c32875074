package motion

import (
	"math"
	"slices"
)

// beyond is the pipe beyond the check valves made ready: ways between boxes and
// the places where more than two ways meet.
type beyond struct {
	ways   []leg
	boxes  int       // places below this are boxes, in the order of the feeds
	head   []float64 // of each place; of those beyond the boxes the last found
	to     []int     // of each box, the one that its water runs to in the end; -1: none
	quiet  []float64 // of each box, the flow under which its way is straight
	known  []float64 // flow into each box
	lost   []float64 // what comes to each fork
	matrix [][]float64
	from   []float64 // heads of the forks before a step
	way    []float64 // the step
}

// leg is pipe between two places: h = back Q², below the flow quiet joined
// straight to zero. It lets water pass to its end, from it, or both.
type leg struct {
	from, to    int
	back, quiet float64
	on, off     bool // lets water pass from -> to; to -> from
}

// newBeyond makes the pipe of the inputs ready; nil where it joins nothing.
func newBeyond(s *System) *beyond {
	in := s.in
	n := len(in.Feeds)
	if n < 2 || len(in.Ways) == 0 {
		return nil
	}
	b := &beyond{boxes: n}
	for _, w := range in.Ways {
		b.ways = append(b.ways, leg{from: w.From, to: w.To, back: max(w.Back, leastLeg), on: true, off: !w.OneWay})
	}
	places := b.reduce(in.Places)
	if len(b.ways) == 0 {
		return nil
	}
	b.head, b.known = make([]float64, places), make([]float64, n)
	inner := places - n
	b.lost, b.from, b.way, b.matrix = make([]float64, inner), make([]float64, inner), make([]float64, inner), make([][]float64, inner)
	for i := range b.matrix {
		b.matrix[i] = make([]float64, inner)
	}
	b.to = in.lowest()
	b.calm(s)
	return b
}

// leastLeg keeps a way without any resistance from carrying without bound, in
// s²/m⁵.
const leastLeg = 1.0

// reduce takes dead ends away and makes one way of two that meet where nothing
// else does, until only boxes and forks are left; it numbers these anew and
// gives how many places there are.
func (b *beyond) reduce(places int) int {
	for again := true; again; {
		again = false
		b.ways = slices.DeleteFunc(b.ways, func(l leg) bool { return l.from == l.to || !l.on && !l.off })
		for p := b.boxes; p < places && !again; p++ {
			var met []int
			for k := range b.ways {
				if b.ways[k].from == p || b.ways[k].to == p {
					met = append(met, k)
				}
			}
			switch len(met) {
			case 1:
				b.ways, again = slices.Delete(b.ways, met[0], met[0]+1), true
			case 2:
				x, y := b.ways[met[0]], b.ways[met[1]]
				if x.from == p {
					x = x.turned()
				}
				if y.to == p {
					y = y.turned()
				}
				b.ways[met[0]] = leg{from: x.from, to: y.to, back: x.back + y.back, on: x.on && y.on, off: x.off && y.off}
				b.ways, again = slices.Delete(b.ways, met[1], met[1]+1), true
			}
		}
	}
	number := map[int]int{}
	place := func(p int) int {
		if p < b.boxes {
			return p
		}
		if _, met := number[p]; !met {
			number[p] = b.boxes + len(number)
		}
		return number[p]
	}
	for k := range b.ways {
		b.ways[k].from, b.ways[k].to = place(b.ways[k].from), place(b.ways[k].to)
	}
	return b.boxes + len(number)
}

func (l leg) turned() leg {
	return leg{from: l.to, to: l.from, back: l.back, quiet: l.quiet, on: l.off, off: l.on}
}

// calm sets the flow under which each way is straight, so that a box's levelling
// out takes five seconds at least: see sideways.
func (b *beyond) calm(s *System) {
	b.quiet = make([]float64, b.boxes)
	least := math.Inf(1)
	for i := range b.quiet {
		if b.to[i] < 0 {
			continue
		}
		back := b.easiest(i, b.to[i])
		thin := greatestThin
		if area := areaOf(&s.feeds[i]); area > 0 {
			thin = min(max(thinHead, sideways*sideways/(area*area*back)), greatestThin)
		}
		b.quiet[i] = math.Sqrt(thin / back)
		least = min(least, b.quiet[i])
	}
	if math.IsInf(least, 1) { // no box falls from full; one may run into one that is not
		least = math.Sqrt(greatestThin / b.ways[0].back)
	}
	for k := range b.ways {
		l := &b.ways[k]
		l.quiet = least
		for _, p := range [2]int{l.from, l.to} {
			if p < b.boxes && b.quiet[p] > 0 {
				l.quiet = b.quiet[p]
			}
		}
	}
}

// easiest gives the resistance of the easiest way from one box to another.
func (b *beyond) easiest(from, to int) float64 {
	far := make([]float64, len(b.head))
	for i := range far {
		far[i] = math.Inf(1)
	}
	far[from] = 0
	for range far {
		for _, l := range b.ways {
			if l.on {
				far[l.to] = min(far[l.to], far[l.from]+l.back)
			}
			if l.off {
				far[l.from] = min(far[l.from], far[l.to]+l.back)
			}
		}
	}
	return far[to]
}

// flow gives what a way carries at the head between its ends, and how that grows
// with the head; on and off tell which way its ends let water pass.
func (l *leg) flow(h float64, on, off bool) (q, slope float64) {
	on, off = on && l.on, off && l.off
	if h > 0 && !on || h <= 0 && !off && !(h == 0 && on) {
		return 0, 0
	}
	a := math.Abs(h)
	if a <= l.back*l.quiet*l.quiet {
		slope = 1 / (l.back * l.quiet)
		return h * slope, slope
	}
	q = math.Sqrt(a / l.back)
	return math.Copysign(q, h), 0.5 / (q * l.back)
}

// solve finds what comes to each box through the pipe (below zero: leaves it),
// for the heads of the boxes and what each of them bears: the heads of the forks
// at which nothing is lost there, by Newton's steps on the content, which is
// convex, each as far as the content falls along it (the same method as package
// network's).
func (b *beyond) solve(gives, takes []bool) []float64 {
	b.balance(gives, takes)
	for range solveRounds {
		worst := 0.0
		for _, v := range b.lost {
			worst = max(worst, math.Abs(v))
		}
		if worst <= solveClose {
			break
		}
		b.step()
		copy(b.from, b.head[b.boxes:])
		b.along(gives, takes)
	}
	return b.known
}

// along goes along a step to where the content no longer falls, roughly: what
// comes to the forks, by the step, is its slope, which only falls.
func (b *beyond) along(gives, takes []bool) {
	slope := func(part float64) (sum float64) {
		for i, d := range b.way {
			b.head[b.boxes+i] = b.from[i] + part*d
		}
		b.balance(gives, takes)
		for i, v := range b.lost {
			sum += v * b.way[i]
		}
		return sum
	}
	first := 0.0
	for i, v := range b.lost {
		first += v * b.way[i]
	}
	low, high, part := 0.0, math.Inf(1), 1.0
	for range 50 {
		switch now := slope(part); {
		case math.Abs(now) <= first/2:
			return
		case now > 0:
			low = part
		default:
			high = part
		}
		if part = (low + high) / 2; math.IsInf(high, 1) {
			part = 2 * low
		}
	}
}

const (
	solveRounds = 60
	solveClose  = 1e-13 // m³/s lost at a fork
)

// bears tells which way a way lets water pass by what its ends bear: only a box
// that gives lets water out, only one that takes lets it in.
func (b *beyond) bears(l *leg, gives, takes []bool) (on, off bool) {
	on, off = true, true
	if l.from < b.boxes {
		on, off = gives[l.from], takes[l.from]
	}
	if l.to < b.boxes {
		on, off = on && takes[l.to], off && gives[l.to]
	}
	return on, off
}

// balance sums what comes to each box and to each fork, and fills the matrix of
// how that falls with the forks' heads.
func (b *beyond) balance(gives, takes []bool) {
	clear(b.known)
	clear(b.lost)
	for i := range b.matrix {
		clear(b.matrix[i])
		b.matrix[i][i] = leastSlope
	}
	for k := range b.ways {
		l := &b.ways[k]
		on, off := b.bears(l, gives, takes)
		q, slope := l.flow(b.head[l.from]-b.head[l.to], on, off)
		from, to := l.from-b.boxes, l.to-b.boxes
		if from < 0 {
			b.known[l.from] -= q
		} else {
			b.lost[from] -= q
			b.matrix[from][from] += slope
		}
		if to < 0 {
			b.known[l.to] += q
		} else {
			b.lost[to] += q
			b.matrix[to][to] += slope
		}
		if from >= 0 && to >= 0 {
			b.matrix[from][to] -= slope
			b.matrix[to][from] -= slope
		}
	}
}

// leastSlope, in m²/s, gives a fork that nothing leads to at the moment a head.
const leastSlope = 1e-9

// step turns what comes to each fork into the change of its head that takes it
// away: the matrix is symmetric and positive, so elimination needs no pivots.
func (b *beyond) step() {
	n, a, x := len(b.lost), b.matrix, b.way
	copy(x, b.lost)
	for i := range n {
		for k := i + 1; k < n; k++ {
			f := a[k][i] / a[i][i]
			if f == 0 {
				continue
			}
			for j := i; j < n; j++ {
				a[k][j] -= f * a[i][j]
			}
			x[k] -= f * x[i]
		}
	}
	for i := n - 1; i >= 0; i-- {
		for j := i + 1; j < n; j++ {
			x[i] -= a[i][j] * x[j]
		}
		x[i] /= a[i][i]
	}
}
