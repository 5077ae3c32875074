package network

import "math"

// The steady state is the least of a convex function, the content
//
//	F(q) = sum over chains of the integral of loss(q) dq
//	       - sum over given heads of head × flow into the network there,
//
// over all flows that meet continuity at every node and are not negative in
// one-way chains; the heads are its multipliers (Collins et al. 1978, see the
// package comment). Each step
//
//  1. takes the Newton direction for flows and heads together (Todini and
//     Pilati 1988): with g = 1/slope and r = head(from) - head(to) - loss,
//     solve   sum g (dh_i - dh_j) = inflow - outflow - demand of (q + g r)
//     at every node, then  dq = g (r + dh_from - dh_to);
//  2. goes along it to where a one-way chain comes to stand, or less, by a line
//     search on F' = sum of (loss - head difference) × dq, which rises along
//     the line because F is convex, so that no value of F is needed;
//  3. closes the chains that came to stand, and opens those that stand though
//     the heads would drive water through them.
//
// Every step meets continuity and none raises F, so the search cannot cycle,
// but for the few leaps of the first steps (leap says why they do no harm); it
// ends when the heads agree with the losses. A block of one chain has no need
// of this (line.go). The first direction has
// secants for slopes, later ones the laws' derivatives.

// Limits of the search.
const (
	energyTarget  = 1e-12 // m: where the search is content, far inside EnergyTolerance
	flowTarget    = 1e-11 // m³/s, or flowPart of the flow where that is more: what the energy error may still mean in flow
	flowPart      = 1e-10
	leaps         = 12    // steps that may close many one-way chains at once
	easySteps     = 40    // steps that accept an overshoot; almost every solve ends within ten
	allSteps      = 400   // then each step must lower the content for certain
	overshoot     = 0.5   // part of the slope that may be left, on either side
	openMargin    = 1e-12 // m: what a chain that stands may be pressed the wrong way
	headNoise     = 1e-14 // m: rounding of heads of some ten metres
	runaway       = 1e4   // m³/s: nothing limits the flow
	gain          = 0.7   // a step that leaves more of the error has gained nothing
	stallingSteps = 4     // steps without gain after which rounding is taken to be the limit,
	rounding      = 1e-9  // m, if the energy error is below this
)

// start sets the flows to begin with.
func (b *block) start(head []float64, st *State) {
	for k, v := range b.nodes {
		b.head[k] = 0
		if h := float64(st.Nodes[v].Head); st.warm && finite(h) {
			b.head[k] = h
		} else if len(b.at[k]) > 0 { // any level of the block will do
			c := &b.chains[b.at[k][0]]
			b.head[k] = head[c.from] + head[c.to]
		}
		head[v] = b.head[k]
	}
	b.stale = true
	worst := 0.0
	for i := range b.chains {
		c := &b.chains[i]
		c.q, c.closed = c.base, false
		if st.warm {
			c.q, c.closed = st.flow[b.first+i], st.closed[b.first+i]
		}
		if c.closed {
			continue
		}
		c.h, c.slope = c.loss(c.q)
		worst = max(worst, math.Abs(head[c.from]-head[c.to]-c.h))
	}
	b.rootError = math.Sqrt(worst)
	for i := range b.chains {
		if c := &b.chains[i]; st.warm && c.q != 0 && !c.closed {
			c.bound(b.rootError)
		} else {
			c.slope = c.steep
		}
	}
}

// newton searches from the flows set by start. On return the heads of the
// block's nodes are in b.head.
func (b *block) newton(head []float64) {
	best, least, stalled := math.Inf(1), math.Inf(1), 0
	for b.iterations < allSteps {
		b.iterations++
		b.direction(head)
		for b.closeStuck() {
			b.direction(head)
		}
		if !b.leap(head) {
			b.advance(head, b.iterations > easySteps)
		}
		worst, miss := b.errors(head)
		if !finite(worst) {
			b.blame()
			return
		}
		b.rootError = math.Sqrt(worst)
		stalled++
		if b.stale { // other chains run now: what they miss is not to be held against what others missed
			best, least = math.Inf(1), math.Inf(1)
		}
		if b.iterations == leaps && b.balance() > flowTarget { // they left a want unmet: begin again, step by step
			b.restart()
			continue
		}
		if worst < gain*best || miss < gain*least {
			best, least, stalled = min(best, worst), min(least, miss), 0
		}
		done := miss <= 1 && b.balance() <= float64(MassTolerance)/10 || stalled >= stallingSteps && worst < rounding && b.balance() < float64(MassTolerance)/2
		if done || b.iterations <= easySteps {
			if b.open(head, worst, b.iterations > easySteps) {
				best, least = math.Inf(1), math.Inf(1)
				continue
			}
		}
		if done && !b.reopen(head, worst) {
			return
		}
	}
	b.stop = StopIterations
}

// direction solves for the change of heads and from it of flows.
func (b *block) direction(head []float64) {
	if b.stale {
		b.findGroups()
	}
	m := &b.matrix
	m.clear()
	for k, v := range b.wanted {
		b.imbalance[k] = -v
	}
	for i := range b.chains {
		c := &b.chains[i]
		c.start = c.q
		if c.closed {
			c.dq = 0
			continue
		}
		g := 1 / c.slope
		c.dq = g * (head[c.from] - head[c.to] - c.h)
		flow := c.q + c.dq
		if c.i >= 0 {
			m.diag[c.i] += g
			b.imbalance[c.i] -= flow
		}
		if c.j >= 0 {
			m.diag[c.j] += g
			b.imbalance[c.j] += flow
		}
		if c.slot >= 0 {
			m.off[c.slot] -= g
		}
	}
	if len(b.nodes) == 0 {
		return
	}
	for _, k := range b.pins {
		m.diag[k] += max(m.diag[k], 1) // a group floats: hold one of its rows
	}
	m.factor()
	m.solve(b.imbalance)
	for i := range b.chains {
		c := &b.chains[i]
		if c.closed {
			continue
		}
		change := 0.0
		if c.i >= 0 {
			change = b.imbalance[c.i]
		}
		if c.j >= 0 {
			change -= b.imbalance[c.j]
		}
		c.dq += change / c.slope
	}
}

// closeStuck closes the one-way chains that stand and would have to go
// backwards. It tells whether it closed any: then the direction is not theirs.
func (b *block) closeStuck() (any bool) {
	for i := range b.chains {
		c := &b.chains[i]
		if c.oneWay && !c.closed && c.q <= 0 && c.dq < 0 {
			c.q, c.closed = 0, true
			any = true
		}
	}
	b.stale = b.stale || any
	return any
}

// advance goes along the direction. Where strict is set the content falls for
// certain: the end of the step lies on the near side of the least.
func (b *block) advance(head []float64, strict bool) {
	reach := 1.0
	full, moved := 0.0, 0.0 // F' at the start; sum of all changes of flow
	for i := range b.chains {
		c := &b.chains[i]
		if c.closed {
			continue
		}
		full += (c.h - head[c.from] + head[c.to]) * c.dq
		moved += math.Abs(c.dq)
		if c.oneWay && c.dq < 0 && c.q < -c.dq*reach {
			reach = c.q / -c.dq
		}
	}
	left := b.try(head, reach)
	most, least := overshoot*math.Abs(full), math.Inf(-1)
	if strict {
		most, least = 0, -overshoot*math.Abs(full)
	}
	if !(left <= max(most, headNoise*moved)) {
		b.narrow(head, reach, full, left, least, most)
	} else if reach < 1 {
		for i := range b.chains {
			c := &b.chains[i]
			if c.oneWay && !c.closed && c.dq < 0 && c.start+reach*c.dq <= 1e-14*c.start {
				c.q, c.closed, b.stale = 0, true, true
			}
		}
	}
	b.moveHeads(head)
}

// leap goes the whole way in one of the first steps when several one-way chains
// come to stand on it: all that would pass zero are set to zero and closed at
// once, where advance would close them step by step, which in a network of a
// hundred pumps takes a hundred steps. The nodes at these chains are then out
// of balance; the next direction mends that, as it starts from the flows as
// they are. Nothing says that leaps lower the content, so they are few, and
// where continuity is not met after them the search starts afresh without.
func (b *block) leap(head []float64) bool {
	if b.iterations > leaps {
		return false
	}
	passing := 0
	for i := range b.chains {
		if c := &b.chains[i]; c.oneWay && !c.closed && c.q+c.dq < 0 {
			passing++
		}
	}
	if passing < 2 {
		return false
	}
	b.try(head, 1)
	for i := range b.chains {
		if c := &b.chains[i]; c.oneWay && !c.closed && c.start+c.dq < 0 {
			c.q, c.closed, b.stale = 0, true, true
		}
	}
	b.moveHeads(head)
	return true
}

// restart takes the flows back to those that meet the wants by themselves.
func (b *block) restart() {
	for i := range b.chains {
		c := &b.chains[i]
		c.q, c.slope, c.closed = c.base, c.steep, false
		c.h, _ = c.loss(c.q)
	}
	b.stale = true
}

// moveHeads adds the direction to the heads.
func (b *block) moveHeads(head []float64) {
	for k, v := range b.nodes {
		b.head[k] += b.imbalance[k]
		head[v] = b.head[k]
	}
}

// try takes all open chains a part of the way and gives F' there.
func (b *block) try(head []float64, part float64) (slope float64) {
	for i := range b.chains {
		c := &b.chains[i]
		if c.closed {
			continue
		}
		q := c.start + part*c.dq
		if c.oneWay && q < 0 {
			q = 0
		}
		c.eval(q, b.rootError)
		slope += (c.h - head[c.from] + head[c.to]) * c.dq
	}
	return slope
}

// narrow looks between the start, where F' is fromSlope < 0, and the part
// where it is toSlope > 0, for a place where it lies between least and most.
func (b *block) narrow(head []float64, to, fromSlope, toSlope, least, most float64) {
	from := 0.0
	least = max(least, fromSlope*overshoot)
	for k := range 60 {
		part := from - fromSlope*(to-from)/(toSlope-fromSlope)
		if k%3 == 2 || !(part > from && part < to) {
			part = (from + to) / 2
		}
		at := b.try(head, part)
		if at >= least && at <= most || to-from < 1e-15 {
			return
		}
		if at < 0 {
			from, fromSlope = part, at
		} else {
			to, toSlope = part, at
		}
	}
	b.try(head, from)
}

// errors gives the worst energy error of the chains that run, in m, and how
// many times too great it is, as head or as the flow that it may still mean.
func (b *block) errors(head []float64) (worst, miss float64) {
	for i := range b.chains {
		c := &b.chains[i]
		if c.closed {
			continue
		}
		r := math.Abs(head[c.from] - head[c.to] - c.h)
		if r != r || math.Abs(c.q) > runaway {
			return math.NaN(), math.NaN()
		}
		worst = max(worst, r)
		if r > headNoise {
			miss = max(miss, r/(c.slope*max(flowTarget, flowPart*math.Abs(c.q))))
		}
	}
	return worst, max(miss, worst/energyTarget)
}

// blame ends a search that went astray and names the chain.
func (b *block) blame() {
	b.stop = StopLaw
	for i := range b.chains {
		c := &b.chains[i]
		switch {
		case !finite(c.h) || !finite(c.q):
			b.culprit = int32(i)
			return
		case math.Abs(c.q) > runaway:
			b.culprit, b.stop = int32(i), StopNoSteadyState
		}
	}
}
