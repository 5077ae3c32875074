package network

import "math"

// findGroups finds the rows that open chains tie to a given head (group 0)
// and sorts the others into groups that open chains tie to one another.
func (b *block) findGroups() {
	b.stale = false
	b.pins = b.pins[:0]
	b.groups = 1
	for k := range b.group {
		b.group[k] = -1
	}
	for i := range b.chains {
		c := &b.chains[i]
		if !c.closed && (c.i < 0) != (c.j < 0) {
			b.spread(max(c.i, c.j), 0)
		}
	}
	for k := range b.group {
		if b.group[k] < 0 {
			b.pins = append(b.pins, int32(k))
			b.spread(int32(k), int32(b.groups))
			b.groups++
		}
	}
}

// spread gives a row and all that open chains tie to it a group.
func (b *block) spread(k, group int32) {
	if b.group[k] >= 0 {
		return
	}
	b.group[k] = group
	b.queue = append(b.queue[:0], k)
	for len(b.queue) > 0 {
		k = b.queue[len(b.queue)-1]
		b.queue = b.queue[:len(b.queue)-1]
		for _, i := range b.at[k] {
			c := &b.chains[i]
			other := c.i + c.j - k
			if !c.closed && c.i >= 0 && c.j >= 0 && b.group[other] < 0 {
				b.group[other] = group
				b.queue = append(b.queue, other)
			}
		}
	}
}

// of gives the group of a row; given heads are group 0.
func (b *block) of(k int32) int32 {
	if k < 0 {
		return 0
	}
	return b.group[k]
}

// hold is the head by which a closed chain is held shut: negative when water
// would run. It means something between rows of one group only.
func (c *chain) hold(head []float64) float64 { return c.atZero - head[c.from] + head[c.to] }

// open opens closed chains that the heads would drive water through, only the
// one that is driven most when single is set. Heads that are still in error by
// worst open only what is clear.
func (b *block) open(head []float64, worst float64, single bool) (any bool) {
	if b.stale {
		b.findGroups()
	}
	var most *chain
	for i := range b.chains {
		c := &b.chains[i]
		if !c.closed || b.of(c.i) != b.of(c.j) {
			continue
		}
		if h := c.hold(head); h < -openMargin-2*worst {
			if !single {
				c.open()
				any = true
			} else if most == nil || h < most.hold(head) {
				most = c
			}
		}
	}
	if most != nil {
		most.open()
		any = true
	}
	b.stale = b.stale || any
	return any
}

func (c *chain) open() {
	c.closed, c.q, c.h, c.slope = false, 0, c.atZero, c.steep
}

// reopen opens what stands though the heads, within worst, would drive water
// through it, and tells whether it opened any; else the search has ended, and
// it settles the heads that nothing determines.
func (b *block) reopen(head []float64, worst float64) bool {
	if b.open(head, worst, true) || b.openRing(head) {
		return true
	}
	for i := range b.chains { // a one-way chain that runs without water stands just as well
		c := &b.chains[i]
		if c.oneWay && !c.closed && c.q <= noFlow && c.h-c.atZero < float64(EnergyTolerance)/10 {
			c.q, c.closed, b.stale = 0, true, true
		}
	}
	if b.stale {
		b.findGroups()
	}
	if b.groups > 1 {
		b.potentials(head)
		b.shift(head, b.low)
		b.settle(head)
	}
	return false
}

// noFlow, m³/s, is what a search may leave of a flow that is nothing.
const noFlow = 1e-11

// openRing looks at the groups that no open chain ties to a given head. A
// closed chain from group a to group b holds as long as
//
//	shift(a) - shift(b) <= hold,
//
// where the shift of a group lifts all its heads. These are bounds on
// differences: there are shifts that meet them all unless the holds round some
// ring of closed chains sum to less than zero (R. Bellman, "On a routing
// problem", 1958); then water runs round that ring, and it is opened.
func (b *block) openRing(head []float64) bool {
	if b.groups == 1 {
		return false
	}
	at := b.potentials(head)
	if at < 0 {
		return false
	}
	for range b.groups { // a group that still rises: behind it lies the ring
		at = b.of(b.chains[b.by[at]].i)
	}
	for {
		c := &b.chains[b.by[at]]
		if !c.closed {
			break
		}
		c.open()
		at = b.of(c.i)
	}
	b.stale = true
	return true
}

// potentials looks for shifts that meet all bounds, in b.low. It gives a group
// that still rises when there are none, else -1.
func (b *block) potentials(head []float64) (at int32) {
	for g := range b.groups {
		b.low[g], b.by[g] = 0, -1
	}
	for range b.groups + 1 {
		if at = b.raise(head); at < 0 {
			break
		}
	}
	return at
}

// raise lifts the lower bounds once over all closed chains and gives the last
// group that rose, -1 when none did.
func (b *block) raise(head []float64) (last int32) {
	last = -1
	for i := range b.chains {
		c := &b.chains[i]
		from, to := b.of(c.i), b.of(c.j)
		if !c.closed || from == to {
			continue
		}
		if v := b.low[from] - c.hold(head); v > b.low[to]+openMargin {
			b.low[to], b.by[to], last = v, int32(i), to
		}
	}
	return last
}

// settle finds the bounds of the heads of every group and sets them to the
// least that their chains allow (what the pumps behind them hold up), or to the
// greatest when there is no least.
func (b *block) settle(head []float64) {
	low, high := b.low[:b.groups], b.high[:b.groups]
	for g := range low {
		low[g], high[g] = math.Inf(-1), math.Inf(1)
	}
	low[0], high[0] = 0, 0
	for range b.groups {
		b.raise(head)
	}
	for g, v := range low {
		if finite(v) {
			high[g] = v
		}
	}
	for range b.groups {
		for i := range b.chains {
			c := &b.chains[i]
			from, to := b.of(c.i), b.of(c.j)
			if c.closed && from != to {
				high[from] = min(high[from], max(high[to]+c.hold(head), low[from])) // a least head is kept
			}
		}
	}
	b.shift(head, high)
}

// shift lifts the heads of the groups, as far as the lifts are known, each
// less that of group 0.
func (b *block) shift(head, by []float64) {
	for k, v := range b.nodes {
		if lift := by[b.group[k]] - by[0]; finite(lift) {
			b.head[k] += lift
			head[v] = b.head[k]
		}
	}
}
