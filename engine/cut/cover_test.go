package cut

import (
	"context"
	"math/rand"
	"testing"
)

// layable tells by trying every bar for every piece whether the question has an
// answer. It shares nothing with the cover.
func layable(w, d, c []int, q question) bool {
	var pieces, room []int
	for i := range w {
		for range d[i] {
			pieces = append(pieces, w[i])
		}
	}
	if q.w > 0 {
		pieces = append(pieces, q.w)
	}
	for t := range c {
		for range q.n[t] {
			room = append(room, c[t])
		}
	}
	var lay func(i int) bool
	lay = func(i int) bool {
		if i == len(pieces) {
			return true
		}
		for b := range room {
			if room[b] >= pieces[i] {
				room[b] -= pieces[i]
				ok := lay(i + 1)
				room[b] += pieces[i]
				if ok {
					return true
				}
			}
		}
		return false
	}
	return lay(0)
}

// smallQuestion draws a question that is as often possible as not: up to nine
// pieces and four bars that leave little room.
func smallQuestion(r *rand.Rand) (w, d, c []int, q question) {
	seen := map[int]bool{}
	at := 20 + r.Intn(20)
	weight := 0
	for range 2 + r.Intn(5) {
		w, d = append(w, at), append(d, 1+r.Intn(2))
		weight += at * d[len(d)-1]
		at -= 1 + r.Intn(4)
	}
	bars := 1 + r.Intn(4)
	for left := bars; left > 0; left-- {
		most := weight/bars + r.Intn(6)
		if l := max(w[0], most+r.Intn(12)-6); !seen[l] {
			seen[l] = true
			c = append(c, l)
		}
	}
	for i := range c { // longest first
		for k := i; k > 0 && c[k] > c[k-1]; k-- {
			c[k], c[k-1] = c[k-1], c[k]
		}
	}
	q = question{d: d, n: make([]int, len(c))}
	for range bars {
		q.n[r.Intn(len(c))]++
	}
	if r.Intn(2) == 0 {
		q.w = 1 + r.Intn(12)
	}
	return w, d, c, q
}

// TestCover: answers from listings of any length, and cut short and run again,
// are those of trying everything.
func TestCover(t *testing.T) {
	answers := map[answer]int{}
	for seed := range int64(6000) {
		r := rand.New(rand.NewSource(seed))
		w, d, c, q := smallQuestion(r)
		possible := layable(w, d, c, q)
		for _, limit := range []int{1000, 2, 5} {
			e := &effort{ctx: context.Background(), left: 1_000_000}
			x := newDecider(w, d, c, e)
			x.relaxed(q) // may add a bound, and with it a shorter listing
			v := x.newCover(q, limit)
			a, fills := unknown, []fill(nil)
			for portion := 3; a == unknown && portion < 1000; portion *= 2 {
				e.portion(portion, func() { a, fills = v.run(limit == 5) })
			}
			answers[a]++
			if a == unknown && v.all {
				t.Fatalf("seed %d limit %d: undecided", seed, limit)
			}
			if a != unknown && (a == fits) != possible {
				t.Fatalf("seed %d limit %d: %+v answered %d; possible: %v", seed, limit, q, a, possible)
			}
			if a == fits {
				holds(t, w, c, q, fills)
			}
		}
	}
	t.Logf("%d laid, %d impossible, %d undecided", answers[fits], answers[never], answers[unknown])
	if answers[fits] < 2000 || answers[never] < 2000 {
		t.Error("the questions are too much of one sort")
	}
}

// holds checks a layout: every piece once, no bar too often or too full, and
// room for the remnant.
func holds(t *testing.T, w, c []int, q question, fills []fill) {
	t.Helper()
	d, n := make([]int, len(q.d)), make([]int, len(q.n))
	room := 0
	for _, f := range fills {
		n[f.bar]++
		left := c[f.bar]
		for _, i := range f.pieces {
			d[i]++
			left -= w[i]
		}
		if left < 0 {
			t.Errorf("bar %v is too full", f)
		}
		room = max(room, left)
	}
	for i := range n {
		if n[i] > q.n[i] {
			t.Errorf("%d bars of kind %d, there are %d", n[i], i, q.n[i])
		} else if n[i] < q.n[i] {
			room = max(room, c[i])
		}
	}
	for i := range d {
		if d[i] != q.d[i] {
			t.Errorf("piece %d lies %d times, wanted %d", i, d[i], q.d[i])
		}
	}
	if room < q.w {
		t.Errorf("the longest room is %d, wanted %d", room, q.w)
	}
}
