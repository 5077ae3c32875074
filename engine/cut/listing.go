package cut

import (
	"cmp"
	"slices"
)

// filling is one way to fill a bar that no bound rules out.
type filling struct {
	bar     int32
	from    int32 // its pieces are listing.places[from:to]
	to      int32
	remnant bool // it leaves the remnant besides
}

// listing holds the fillings of bars of a question that can stand in a layout.
// By a bound all bars are worth more than all pieces by its spare alone, so a
// filling that falls short of the bar's best by more stands in none (the same
// holds for columns by reduced cost; Baldacci, Christofides and Mingozzi,
// Mathematical Programming 115 (2008), list routes so). Near the end of the
// search the spare is small and so is the list.
type listing struct {
	question
	pieces, bars []int   // weights and capacities
	bounds       []bound // tightest first
	fillings     []filling
	places       []int32
	losses       []int64 // by filling and bound: how far it falls short
	listed       []bool  // by bar: all its fillings are here
	steps        int     // of the enumeration

	reach [][]int64 // by place: the most that pieces from it on are worth, by room, by the tightest bound
	value []int64   // by bound: of the pieces taken
	taken []int32
	limit int // fillings of one bar
}

// bound is a price as a listing uses it.
type bound struct {
	u       []int64 // by piece
	v       []int64 // by bar
	remnant int64   // worth of the remnant
	spare   int64
	ease    float64 // spare as a share of all bars
}

const (
	listBounds   = 6       // bounds that a listing uses: the tightest
	listTable    = 1 << 20 // entries in the table of worths
	stepsPerFill = 20      // steps of the enumeration for each filling wanted at most
	listPerStep  = 8       // these count as one step of effort
)

// list enumerates the fillings for the question, of each bar that has no more
// than limit; nil when the table for it would be too large.
func (x *decider) list(q question, limit int) *listing {
	if (len(x.w)+1)*(x.c[0]+1) > listTable {
		return nil
	}
	l := &listing{question: q, pieces: x.w, bars: x.c, listed: make([]bool, len(x.c)), limit: limit}
	l.choose(x.prices)
	l.tabulate()
	for t, n := range q.n {
		if n > 0 {
			l.fill(t)
		}
	}
	x.effort.spend(l.steps / listPerStep)
	return l
}

// choose takes the bounds that leave least to spare.
func (l *listing) choose(prices []price) {
	p := packing{l.pieces, l.d, l.bars, l.n}
	for _, pr := range prices {
		b := bound{u: pr.u, spare: pr.spare(p)}
		whole := int64(1)
		for t, c := range l.bars {
			b.v = append(b.v, pr.best[c])
			whole += pr.best[c] * int64(l.n[t])
		}
		if l.w > 0 {
			b.remnant, _ = pr.remnant(p, l.w)
			b.spare -= b.remnant
		}
		b.ease = float64(b.spare) / float64(whole)
		l.bounds = append(l.bounds, b)
	}
	slices.SortStableFunc(l.bounds, func(a, b bound) int { return cmp.Compare(a.ease, b.ease) })
	l.bounds = l.bounds[:min(len(l.bounds), listBounds)]
	l.value = make([]int64, len(l.bounds))
}

// tabulate works out the table of worths.
func (l *listing) tabulate() {
	u := l.bounds[0].u
	most := 0
	for t, n := range l.n {
		if n > 0 {
			most = max(most, l.bars[t])
		}
	}
	l.reach = make([][]int64, len(l.pieces)+1)
	l.reach[len(l.pieces)] = make([]int64, most+1)
	for i := len(l.pieces) - 1; i >= 0; i-- {
		if l.d[i] == 0 {
			l.reach[i] = l.reach[i+1]
			continue
		}
		row := slices.Clone(l.reach[i+1])
		for range min(l.d[i], most/l.pieces[i]) {
			for r := len(row) - 1; r >= l.pieces[i]; r-- {
				row[r] = max(row[r], row[r-l.pieces[i]]+u[i])
			}
			l.steps += len(row) / 8
		}
		l.reach[i] = row
	}
}

// fill lists the fillings of bar t, or none when there are too many.
func (l *listing) fill(t int) {
	fillings, places, losses := len(l.fillings), len(l.places), len(l.losses)
	stop := l.steps + l.limit*stepsPerFill
	ok := l.from(t, 0, l.bars[t], false, fillings+l.limit, stop)
	if l.w > 0 && l.w <= l.bars[t] {
		for k, b := range l.bounds {
			l.value[k] = b.remnant
		}
		ok = ok && l.from(t, 0, l.bars[t]-l.w, true, fillings+l.limit, stop)
		clear(l.value)
	}
	if l.listed[t] = ok; !ok {
		l.fillings, l.places, l.losses = l.fillings[:fillings], l.places[:places], l.losses[:losses]
	}
}

// from lists the fillings of bar t with the pieces taken and any of those from
// place i on; false when there are too many.
func (l *listing) from(t, i, room int, remnant bool, most, stop int) bool {
	l.steps++
	for i < len(l.pieces) && (l.d[i] == 0 || l.pieces[i] > room) {
		i++
	}
	if b := &l.bounds[0]; l.value[0]+l.reach[i][room] < b.v[t]-b.spare {
		return true
	}
	if i == len(l.pieces) {
		return l.note(t, remnant, most)
	}
	if l.steps > stop {
		return false
	}
	ok := true
	times := 0
	for ; ok; times++ {
		ok = l.from(t, i+1, room, remnant, most, stop)
		room -= l.pieces[i]
		if times == l.d[i] || room < 0 {
			break
		}
		l.taken = append(l.taken, int32(i))
		for k := range l.bounds {
			l.value[k] += l.bounds[k].u[i]
		}
	}
	l.taken = l.taken[:len(l.taken)-times]
	for k := range l.bounds {
		l.value[k] -= int64(times) * l.bounds[k].u[i]
	}
	return ok
}

// note adds the pieces taken as a filling unless a bound rules it out.
func (l *listing) note(t int, remnant bool, most int) bool {
	for k, b := range l.bounds {
		if b.v[t]-l.value[k] > b.spare {
			return true
		}
	}
	if len(l.fillings) == most {
		return false
	}
	for k, b := range l.bounds {
		l.losses = append(l.losses, b.v[t]-l.value[k])
	}
	at := int32(len(l.places))
	l.places = append(l.places, l.taken...)
	l.fillings = append(l.fillings, filling{int32(t), at, int32(len(l.places)), remnant})
	return true
}

// placesOf gives the pieces of a filling, heaviest first.
func (l *listing) placesOf(k int32) []int32 {
	f := &l.fillings[k]
	return l.places[f.from:f.to]
}

// loss gives by bound how far a filling falls short of its bar's best.
func (l *listing) loss(k int32) []int64 {
	n := len(l.bounds)
	return l.losses[int(k)*n : (int(k)+1)*n]
}
