package design

import (
	"slices"

	"github.com/shopspring/decimal"

	"plashet/engine/cut"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/takeoff"
)

// leastLaid is the shortest remnant of a cutting plan that is laid in a run
// rather than thrown away: a shorter one is not worth its coupling. Common
// practice, no source.
const leastLaid = unit.Foot

// need is one pipe of the job.
type need struct {
	name    job.PipeName
	run     unit.Length // of all runs
	cut     unit.Length // pieces of the cutting plans
	path    string
	entries []takeoff.Pipe // one for each stick of the stock
	sticks  []length       // likewise
}

// length is one length of pipe that can be bought.
type length struct {
	long  unit.Length
	limit int // how many there are; -1: any number
	price unit.Money
}

// pipeNeeded lists whole sticks for each pipe of the job: those that the
// cutting plan opens, and for what the runs need beyond the plan's pieces as
// many as reach when joined end to end, after what the plan leaves of its
// sticks. Pipe that is not among the sticks of the stock is listed by length.
func (m *model) pipeNeeded() []takeoff.Pipe {
	var needs []*need
	of := func(p job.PipeName, path string) *need {
		p = m.named(p)
		for _, n := range needs {
			if n.name == p {
				return n
			}
		}
		n := &need{name: p, path: path}
		n.entries, n.sticks = m.stock(p)
		needs = append(needs, n)
		return n
	}
	keep := max(m.job.Stock.Keep.SI, leastLaid)
	left := map[*need][]unit.Length{} // by stick: what the plan leaves and can be laid
	for _, c := range m.out.Cutting {
		n := of(c.Name, "/stock")
		if left[n] == nil {
			left[n] = make([]unit.Length, len(n.entries))
		}
		for _, b := range c.Plan.Bars {
			var pieces unit.Length
			for _, k := range b.Cuts {
				pieces += k.Length
			}
			n.cut += pieces
			if b.From == cut.FromOffcut || b.Index >= len(n.entries) {
				continue
			}
			e := &n.entries[b.Index]
			e.Sticks++
			e.Length += pieces
			if n.sticks[b.Index].limit > 0 {
				n.sticks[b.Index].limit--
			}
			if b.Remnant >= keep {
				left[n][b.Index] += b.Remnant
			}
		}
	}
	for i, r := range m.job.Runs {
		if !r.Existing {
			of(r.Pipe, at("/runs", i)).run += r.Length.SI
		}
	}
	var out []takeoff.Pipe
	for _, n := range needs {
		rest := max(0, n.run-n.cut)
		for i := range left[n] {
			e := &n.entries[i]
			e.Rest = min(left[n][i], rest)
			e.Run, rest = e.Rest, rest-e.Rest
		}
		short := rest
		if rest > 0 {
			var counts []int
			counts, short = cover(rest, n.sticks)
			for _, i := range longestFirst(n.sticks) {
				laid := min(rest-short, unit.Length(counts[i])*n.sticks[i].long)
				n.entries[i].Run, rest = n.entries[i].Run+laid, rest-laid
			}
		}
		for _, e := range n.entries {
			if e.Sticks > 0 || e.Run > 0 {
				out = append(out, e)
			}
		}
		if short > 0 {
			out = append(out, takeoff.Pipe{Kind: n.name.Kind, Size: n.name.Size, Run: short, Path: n.path})
		}
	}
	return m.withHoses(out)
}

// stock gives the sticks of a pipe in the order of the stock, as a cutting plan
// counts them.
func (m *model) stock(p job.PipeName) (entries []takeoff.Pipe, sticks []length) {
	for i, s := range m.job.Stock.Sticks {
		if m.named(s.Pipe) != p {
			continue
		}
		l := length{long: s.Length.SI, limit: -1}
		if s.Count > 0 {
			l.limit = s.Count
		}
		if price, err := s.Price.Amount(m.job.Style()); err == nil && !s.Price.IsZero() {
			l.price = price
		}
		sticks = append(sticks, l)
		q, err := m.pipe(p)
		entries = append(entries, takeoff.Pipe{
			Kind: p.Kind, Size: p.Size, Stick: s.Length.SI, Welded: err == nil && q.Rigid && q.SolventWeld, Bell: s.Bell, Price: l.price, Path: at("/stock/sticks", i),
		})
	}
	return entries, sticks
}

// Bounds of the search of cover: how many sticks of the first length may give
// way to the second (the other way round they change places), and how many
// sticks there may be at all.
const (
	giveWay    = 64
	mostSticks = 1_000_000
)

// cover chooses whole sticks that reach so far when joined end to end: of the
// length that is best alone, and of one other where a mixture is better. Best is
// the cheapest where every length has a price, else the least pipe; of equals
// the fewest sticks. Where the lengths in stock do not reach, the longest are
// taken first and short tells what is missing.
func cover(reach unit.Length, of []length) (counts []int, short unit.Length) {
	priced := !slices.ContainsFunc(of, func(l length) bool { return l.price.Currency == "" })
	var best decimal.Decimal
	found, bestCount := false, 0
	try := func(i, n, j, k int) (better bool) {
		cost := worth(of[i], n, priced).Add(worth(of[j], k, priced))
		c := cost.Cmp(best)
		better = !found || c < 0 || c == 0 && n+k < bestCount
		if better {
			best, bestCount, found = cost, n+k, true
			counts = make([]int, len(of))
			counts[i] += n
			counts[j] += k
		}
		return better
	}
	alone := 0
	for i := range of {
		if n, ok := whole(reach, of[i]); ok && try(i, n, i, 0) {
			alone = i
		}
	}
	for j := range of {
		for _, pair := range [][2]int{{alone, j}, {j, alone}} {
			main, other := pair[0], pair[1]
			n, _ := whole(reach, of[main])
			for give := 0; give <= min(n, giveWay) && main != other; give++ {
				if k, ok := whole(reach-unit.Length(n-give)*of[main].long, of[other]); ok {
					try(main, n-give, other, k)
				}
			}
		}
	}
	if found {
		return counts, 0
	}
	counts = make([]int, len(of))
	for _, i := range longestFirst(of) {
		n, _ := whole(reach, of[i])
		counts[i] = n
		reach -= unit.Length(n) * of[i].long
	}
	return counts, max(0, reach)
}

// whole gives how many of a length reach, as far as there are so many.
func whole(reach unit.Length, of length) (n int, ok bool) {
	if reach <= 0 {
		return 0, true
	}
	sticks := takeoff.Sticks(reach, of.long)
	if !(sticks <= mostSticks) {
		return 0, false
	}
	n = int(sticks)
	if of.limit >= 0 && n > of.limit {
		return of.limit, false
	}
	return n, true
}

// worth is what n sticks cost, or how long they are.
func worth(of length, n int, priced bool) decimal.Decimal {
	one := of.price.Amount
	if !priced {
		one = decimal.NewFromFloat(float64(of.long))
	}
	return one.Mul(decimal.NewFromInt(int64(n)))
}

// longestFirst gives the indices of the lengths.
func longestFirst(of []length) []int {
	order := make([]int, len(of))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case of[a].long > of[b].long:
			return -1
		case of[a].long < of[b].long:
			return 1
		}
		return 0
	})
	return order
}
