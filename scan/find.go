package scan

import (
	"cmp"
	"math"
	"slices"
)

// spot is the middle of a pattern, with the size of a module there, in dots.
type spot struct {
	x, y, module float64
	seen         int
}

func (a spot) to(b spot) float64 { return math.Hypot(b.x-a.x, b.y-a.y) }

// finder tells that five runs, dark and light by turns, are as 1 to 1 to 3 to 1 to
// 1, within half a module each.
func finder(runs [5]int) (module float64, ok bool) {
	sum := 0
	for _, r := range runs {
		if r == 0 {
			return 0, false
		}
		sum += r
	}
	module = float64(sum) / 7
	off := module*0.5 + 0.5
	for i, r := range runs {
		want := module
		if i == 2 {
			want = 3 * module
		}
		if math.Abs(float64(r)-want) > off*want/module {
			return 0, false
		}
	}
	return module, true
}

// through measures the five runs of a pattern through a point along a direction
// and gives the middle's distance from the point.
func (b *field) through(x, y, dx, dy, most int) (runs [5]int, off float64, ok bool) {
	if !b.is(x, y) {
		return runs, 0, false
	}
	var arm [2][3]int
	for side, sign := range [2]int{-1, 1} {
		u, v := x, y
		for k := range 3 {
			for b.is(u, v) == (k%2 == 0) && arm[side][k] <= most && u >= 0 && v >= 0 && u < b.w && v < b.h {
				arm[side][k]++
				u, v = u+sign*dx, v+sign*dy
			}
		}
	}
	runs = [5]int{arm[0][2], arm[0][1], arm[0][0] + arm[1][0] - 1, arm[1][1], arm[1][2]}
	return runs, float64(arm[1][0]-arm[0][0]) / 2, true
}

// finders lists the middles of what may be finder patterns, those seen by most
// rows first.
func (b *field) finders() []spot {
	var found []spot
	for y := range b.h {
		var runs [5]int // the last five, the newest last
		last, from := false, 0
		for x := 0; x <= b.w; x++ {
			now := x < b.w && b.is(x, y)
			if x > 0 && now == last && x < b.w {
				continue
			}
			if x > 0 {
				copy(runs[:], runs[1:])
				runs[4] = x - from
			}
			if last { // a dark run ended
				if _, ok := finder(runs); ok {
					b.confirm(x-runs[4]-runs[3]-(runs[2]+1)/2, y, runs[2], &found)
				}
			}
			last, from = now, x
		}
	}
	// A true one is seen by the rows of three modules, noise mostly by one.
	found = slices.DeleteFunc(found, func(s spot) bool { return s.seen < 2 })
	slices.SortFunc(found, func(a, b spot) int { return cmp.Compare(b.seen, a.seen) })
	return found
}

// mostSpots bounds the work on a picture that is all noise.
const mostSpots = 600

// confirm holds a pattern of a row against the column and the row through its
// middle, and notes it.
func (b *field) confirm(x, y, wide int, found *[]spot) {
	down, off, ok := b.through(x, y, 0, 1, 2*wide+2)
	if !ok {
		return
	}
	tall, ok := finder(down)
	if !ok {
		return
	}
	cy := float64(y) + off
	across, off, ok := b.through(x, int(math.Round(cy)), 1, 0, 2*wide+2)
	if !ok {
		return
	}
	broad, ok := finder(across)
	if !ok || broad > 2*tall || tall > 2*broad {
		return
	}
	s := spot{float64(x) + off, cy, (tall + broad) / 2, 1}
	for i := range *found {
		if p := &(*found)[i]; p.to(s) < 3*p.module && s.module < 2*p.module && p.module < 2*s.module {
			n := float64(p.seen)
			p.x, p.y, p.module, p.seen = (p.x*n+s.x)/(n+1), (p.y*n+s.y)/(n+1), (p.module*n+s.module)/(n+1), p.seen+1
			return
		}
	}
	if len(*found) < mostSpots {
		*found = append(*found, s)
	}
}

// corners are the three finder patterns of a code: at the upper left, the upper
// right and the lower left, with how far they are from a square.
type corners struct {
	tl, tr, bl spot
	off        float64
}

// squares lists which three patterns may be one code, the squarest first.
func squares(found []spot) []corners {
	const most = 14 // patterns that are tried
	found = found[:min(len(found), most)]
	var list []corners
	for i := range found {
		for j := range found {
			for k := j + 1; k < len(found); k++ {
				if i == j || i == k {
					continue
				}
				if c, ok := square(found[i], found[j], found[k]); ok {
					list = append(list, c)
				}
			}
		}
	}
	slices.SortFunc(list, func(a, b corners) int { return cmp.Compare(a.off, b.off) })
	return list
}

// square holds three patterns against a right angle at the first.
func square(tl, p, q spot) (corners, bool) {
	a, b := tl.to(p), tl.to(q)
	if a == 0 || b == 0 {
		return corners{}, false
	}
	least, greatest := min(tl.module, p.module, q.module), max(tl.module, p.module, q.module)
	angle := ((p.x-tl.x)*(q.x-tl.x) + (p.y-tl.y)*(q.y-tl.y)) / (a * b)
	uneven := math.Abs(math.Log(a / b))
	if greatest > 1.8*least || math.Abs(angle) > 0.5 || uneven > 0.5 || min(a, b) < 10*least {
		return corners{}, false
	}
	if (p.x-tl.x)*(q.y-tl.y)-(p.y-tl.y)*(q.x-tl.x) < 0 { // the page's y runs down
		p, q = q, p
	}
	return corners{tl, p, q, math.Abs(angle) + uneven + math.Log(greatest/least)}, true
}
