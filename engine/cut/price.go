package cut

import "slices"

// price is a dual bound: u says what each piece is worth, best[c] the most that
// pieces laid into a bar that holds c can be worth. When all bars together are
// worth less than all pieces there is no packing. Whole numbers throughout.
type price struct {
	u    []int64
	best []int64
}

// spare gives what the bars are worth beyond the pieces; negative proves that
// there is no packing.
func (pr price) spare(p packing) int64 {
	var s int64
	for t, c := range p.c {
		s += pr.best[c] * int64(p.n[t])
	}
	for i, d := range p.d {
		s -= pr.u[i] * int64(d)
	}
	return s
}

// remnant gives the most that one more piece of weight w can be worth while
// every bar stays worth no more than its best: what the bar that loses least by
// giving up w loses. ok is false when no bar holds w.
//
// A plan with such a remnant exists only if this is at most spare: that is the
// bound above with the remnant as a piece, its worth chosen to make the bound
// strongest (a larger worth would raise the bars at least as much).
func (pr price) remnant(p packing, w int) (worth int64, ok bool) {
	for t, c := range p.c {
		if p.n[t] == 0 || c < w {
			continue
		}
		if loss := pr.best[c] - pr.best[c-w]; !ok || loss < worth {
			worth, ok = loss, true
		}
	}
	return worth, ok
}

// refutes tells whether the price proves that the pieces and, with w > 0, a
// remnant of weight w have no place in the bars.
func (pr price) refutes(p packing, w int) bool {
	spare := pr.spare(p)
	if w == 0 || spare < 0 {
		return spare < 0
	}
	worth, ok := pr.remnant(p, w)
	return !ok || worth > spare
}

// knapsack finds the dearest pattern for every length of bar at once, by
// dynamic programming (Gilmore and Gomory 1963). Pieces of one weight are taken
// in lots of 1, 2, 4 ... that add up to their number.
type knapsack struct {
	best []int64
	lots []lot
}

type lot struct {
	piece, size int
	took        []uint64 // by length: whether the best pattern so far has this lot
}

// solve works out the dearest patterns when a piece of weight w[i], of which
// there are d[i], is worth u[i].
func (k *knapsack) solve(w, d []int, u []int64, most int) {
	k.best = slices.Grow(k.best[:0], most+1)[:most+1]
	clear(k.best)
	k.lots = k.lots[:0]
	for i := range w {
		left := min(d[i], most/w[i])
		for size := 1; left > 0 && u[i] > 0; size *= 2 {
			n := min(size, left)
			left -= n
			k.take(i, n, n*w[i], int64(n)*u[i])
		}
	}
}

func (k *knapsack) take(piece, size, w int, u int64) {
	n := len(k.lots)
	k.lots = slices.Grow(k.lots, 1)[:n+1]
	l := &k.lots[n]
	words := len(k.best)/64 + 1
	l.piece, l.size = piece, size
	l.took = slices.Grow(l.took[:0], words)[:words]
	clear(l.took)
	for c := len(k.best) - 1; c >= w; c-- {
		if v := k.best[c-w] + u; v > k.best[c] {
			k.best[c] = v
			l.took[c/64] |= 1 << (c % 64)
		}
	}
}

// pattern gives how many of each piece the dearest pattern for a bar that holds
// c has.
func (k *knapsack) pattern(w []int, c int) []int {
	a := make([]int, len(w))
	for i := len(k.lots) - 1; i >= 0; i-- {
		l := &k.lots[i]
		if l.took[c/64]>>(c%64)&1 == 1 {
			a[l.piece] += l.size
			c -= l.size * w[l.piece]
		}
	}
	return a
}

// priced gives the bound with these worths.
func (k *knapsack) priced(w, d []int, u []int64, most int) price {
	k.solve(w, d, u, most)
	return price{u: slices.Clone(u), best: slices.Clone(k.best)}
}
