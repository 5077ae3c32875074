package arrange

import (
	"cmp"
	"slices"

	"plashet/engine/geom"
)

const (
	// nearby is the gap, to the first order, at which a seed is led on in any case.
	nearby = 0.03 // m
	// mostClosed is how many bearings are kept of one pattern, and mostLed how many
	// seeds are led on.
	mostClosed = 12
	mostLed    = 60
	// mostNeeded is how many programs the needs of one pattern may take, and enough how
	// many bearings are tried for each.
	mostNeeded  = 2000
	mostBriefly = 250
	enough      = 3
)

// found is a bearing that closes, with its pipe and with what closes there.
type found struct {
	bearing
	length float64
	fills  []*fill
}

// unlock seeks the bearings at which one pattern closes: first with its legs as short
// as any fill lets them be, then from there for each need of its fills.
func (w *worker) unlock(l *limber) {
	o := w.bonesOf(l.standing, l.kit, l.base, &l.joints)
	if o == nil || !o.seated() {
		return
	}
	all, easy := o.all(l)
	most := mostNeeded
	if easy {
		if most = mostBriefly; !slices.ContainsFunc(all, func(f found) bool { return w.open(l, &f) }) {
			return
		}
	}
	if len(all) > 0 {
		all = o.needed(l, all, most)
	}
	l.programs += o.programs
	for i := range all {
		if f := &all[i]; len(f.fills) > 0 && (l.yaw || slices.ContainsFunc(f.dirs, func(d geom.Vec3) bool { return f.odd(l.base, d) })) {
			l.out = append(l.out, w.s.wayAt(l, f))
		}
	}
	for i := range l.out {
		w.sketch(&l.out[i])
	}
}

// open tells that bare pipe has room at a bearing past all that stands in the vault.
func (w *worker) open(l *limber, f *found) bool {
	v := w.s.wayAt(l, f)
	w.sketch(&v)
	return v.open
}

// all gives the bearings found from all seeds, those with least pipe first; easy tells
// that a seed of a pattern that is looked at briefly closes as it is.
func (o *bones) all(l *limber) (all []found, easy bool) {
	type led struct {
		bearing
		gap float64
	}
	var seeds []led
	for _, b := range l.seeds {
		gap, length, _ := o.gap(&b, nil, 0)
		switch {
		case gap > closed:
			gap, length, _ = o.gap(&b, l.angles(&b), l.step)
		case l.brief:
			easy = true
		}
		// Half of what seeds stand apart, to the first order: of the second there is left
		// up to step^2 / 2 of the length; twice that, because lengths change too.
		if gap <= max(nearby, l.step*l.step*length) {
			seeds = append(seeds, led{b, gap})
		}
		if o.s.halted() {
			return nil, false
		}
	}
	slices.SortStableFunc(seeds, func(a, b led) int { return cmp.Compare(a.gap, b.gap) })
	for _, b := range seeds[:min(len(seeds), mostLed)] {
		at, ok := o.close(b.bearing)
		if !ok {
			continue
		}
		_, length, _ := o.gap(&at, nil, 0)
		if had := len(all); among(&all, at, length) == had {
			at, length = o.shorten(at)
			among(&all, at, length)
		}
	}
	slices.SortStableFunc(all, func(a, b found) int { return cmp.Compare(a.length, b.length) })
	return all[:min(len(all), mostClosed)], easy
}

// among puts a bearing in a list unless it is there, and gives its place.
func among(all *[]found, b bearing, length float64) int {
	for i := range *all {
		if (*all)[i].same(&b) {
			return i
		}
	}
	*all = append(*all, found{bearing: b, length: length})
	return len(*all) - 1
}

// needed finds for each need of the fills bearings at which it closes: of those that
// there are, else led on from the nearest of them.
func (o *bones) needed(l *limber, all []found, most int) []found {
	until := o.programs + most
	least := append([]float64(nil), o.least...)
	var failed []*need
	for _, n := range o.s.needsOf(l) {
		if o.programs > until || o.s.halted() {
			break
		}
		if slices.ContainsFunc(failed, n.hasNoLessThan) {
			continue
		}
		o.least, o.fixed = n.least, n.fixed
		gaps, closes := make([]gapAt, 0, len(all)), 0
		for i := range all {
			gap, _, _ := o.gap(&all[i].bearing, nil, 0)
			gaps = append(gaps, gapAt{i, gap})
		}
		slices.SortStableFunc(gaps, func(a, b gapAt) int { return cmp.Compare(a.gap, b.gap) })
		for _, g := range gaps {
			at, ok := all[g.n].bearing, g.gap <= closed
			if closes >= enough || !ok && closes > 0 {
				break
			}
			if !ok {
				at, ok = o.close(at)
			}
			if !ok {
				continue
			}
			closes++
			_, length, _ := o.gap(&at, nil, 0)
			all[among(&all, at, length)].take(n.fills)
			at, length = o.shorten(at)
			all[among(&all, at, length)].take(n.fills)
		}
		if closes == 0 {
			failed = append(failed, n)
		}
	}
	o.least, o.fixed = least, make([]bool, len(least))
	return all
}

// take adds fills that close at a bearing.
func (f *found) take(fills []*fill) {
	for _, one := range fills {
		if !slices.Contains(f.fills, one) {
			f.fills = append(f.fills, one)
		}
	}
}
