package arrange

import (
	"cmp"
	"context"
	"slices"
)

// mostTogether is how many pairs are told: with many fittings left out a dozen would
// do, and one is got.
const mostTogether = 6

// several looks for fittings that let a layout fit only together, where none of those
// that are lacking does alone. With a set with which nothing fits, nothing fits with
// less of it either: so whole sets are looked at before the pairs in them.
type several struct {
	s       *search
	tell    func(Progress)
	proven  bool    // that none does alone
	decided bool    // that nothing fits with any set of vain
	vain    [][]int // sets with which nothing was found
	out     []Change
}

// several gives two that do, of a set with which a layout fits, up to so many pairs,
// and where no two do, more, none of which can be left out. Each is sure where it is
// proven that nothing fits with one of them less. What is found before it is stopped
// is told, fewer elbows first.
func (s *search) several(ctx context.Context, set []int, fits Layout, proven bool, tell func(Progress)) []Change {
	v := &several{s: s, tell: tell, proven: proven, decided: true}
	if v.inside(ctx, set); len(v.out) == 0 && ctx.Err() == nil {
		v.needed(ctx, set, fits)
	}
	slices.SortStableFunc(v.out, func(a, b Change) int { return cmp.Compare(a.Layout.Worth.Elbows, b.Layout.Worth.Elbows) })
	return v.out
}

// inside looks for pairs in a set with which a layout fits: in either half of it, and
// of one in each.
func (v *several) inside(ctx context.Context, set []int) {
	if len(set) < 2 {
		return
	}
	a, b := set[:len(set)/2], set[len(set)/2:]
	for _, half := range [2][]int{a, b} {
		if len(half) <= 2 || v.fits(ctx, half) != nil {
			v.inside(ctx, half)
		}
	}
	v.across(ctx, a, b)
}

// across looks for pairs of one in each of two sets with which together a layout fits.
func (v *several) across(ctx context.Context, a, b []int) {
	if len(a) == 1 && len(b) == 1 {
		pair := []int{min(a[0], b[0]), max(a[0], b[0])}
		if l := v.fits(ctx, pair); l != nil {
			v.out = append(v.out, v.s.change(pair, *l, v.proven))
		}
		return
	}
	if len(a) < len(b) {
		a, b = b, a
	}
	for _, half := range [2][]int{a[:len(a)/2], a[len(a)/2:]} {
		if len(half)+len(b) == 2 || v.fits(ctx, slices.Concat(half, b)) != nil {
			v.across(ctx, half, b)
		}
	}
}

// needed leaves out one of a set after the other, the last first, as long as a layout
// fits: of what then is left, none can be left out.
func (v *several) needed(ctx context.Context, set []int, fits Layout) {
	for k := len(set) - 1; k >= 0; k-- {
		fewer := slices.Delete(slices.Clone(set), k, k+1)
		if l := v.fits(ctx, fewer); l != nil {
			set, fits = fewer, *l
		}
	}
	if ctx.Err() == nil {
		v.out = append(v.out, v.s.change(set, fits, v.decided))
	}
}

// fits gives a layout that fits with a set of fittings; nil where none is found, or
// none is looked for any more.
func (v *several) fits(ctx context.Context, set []int) *Layout {
	if ctx.Err() != nil || len(v.out) == mostTogether || slices.ContainsFunc(v.vain, func(more []int) bool { return within(set, more) }) {
		return nil
	}
	v.s.lookingFor(set[len(set)-1], v.tell)
	found := one(ctx, v.s.besides(set))
	if len(found.Layouts) > 0 {
		return &found.Layouts[0]
	}
	v.vain, v.decided = append(v.vain, set), v.decided && found.Proof.Claim < Capped
	return nil
}

// change tells of a set of fittings with which a layout fits.
func (s *search) change(set []int, fits Layout, sure bool) Change {
	c := Change{What: s.in.Instead[set[0]].What, Layout: fits, Sure: sure, Instead: set[0] + 1}
	for _, i := range set[1:] {
		c.Besides = append(c.Besides, i+1)
	}
	return c
}

// Numbers lists the numbers in Input.Instead, from 1, of all that a change takes.
func (c *Change) Numbers() []int { return append([]int{c.Instead}, c.Besides...) }

// within tells that all of a set are in another.
func within(set, of []int) bool {
	return !slices.ContainsFunc(set, func(i int) bool { return !slices.Contains(of, i) })
}
