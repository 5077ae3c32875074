package motion

import (
	"math"

	"plashet/engine/network"
	"plashet/engine/unit"
)

// Supply is pump and pipe: what they carry for the lifts from the vault's level
// to the water at the end of each pipe, in the order of the feeds.
type Supply interface {
	// Near makes ready for lifts near these, between two steps of time. It tells
	// whether the flows of Flows have changed by it; false with an error where
	// there is no steady flow.
	Near(lift []unit.Length) (changed bool, err error)
	// Within tells that Flows holds at these lifts without another Near.
	Within(lift []unit.Length) bool
	// Flows writes what each feed gets, all from 0 up. Between two calls of Near
	// it has neither jumps nor memory.
	Flows(lift []unit.Length, out []unit.Flow)
}

// Constant is a supply that gives each feed a fixed flow, whatever the lift.
type Constant []unit.Flow

// Near has nothing to do.
func (c Constant) Near([]unit.Length) (bool, error) { return false, nil }

// Within is always so.
func (c Constant) Within([]unit.Length) bool { return true }

// Flows gives the fixed flows.
func (c Constant) Flows(_ []unit.Length, out []unit.Flow) { copy(out, c) }

// Pipes is the supply of a network: flows and their slopes by the lifts are
// found at one set of lifts, the anchor, and carried on straight from there, as
// far as they stay true within accuracy. The reach is learnt: at each new
// anchor what the last one foretold is held against what is found.
type Pipes struct {
	solver *network.Solver
	state  *network.State
	source []int
	ends   []int
	lift   []unit.Length // the anchor
	flow   []unit.Flow   // there
	slope  []float64     // of flow i by lift k, at i*len + k, in m²/s
	reach  unit.Length
	told   []unit.Flow
	set    bool

	// Anchors counts the anchors, Solves the networks solved for them.
	Anchors, Solves int
}

// Bounds of a supply carried on from its anchor.
const (
	supplyAccuracy             = 1e-3 // of all the flow: far within what a pump's sheet is worth
	leastReach     unit.Length = 0.004
	firstReach     unit.Length = 0.05
	greatestReach  unit.Length = 0.3
	// What is foretold from farther off, as where a new course begins, tells
	// nothing of the reach.
	farthestTold             = 2
	slopeStep    unit.Length = 1e-3
)

// NewPipes makes the supply of a network whose open waters the pumps draw from
// are the nodes source, all of one level, and whose feeds end at the nodes ends.
// What a node does by itself is set aside: each end lets water go at the level
// that the lift gives it, and takes none back. The error has CodeSupply where
// the network is at fault.
func NewPipes(net network.Network, source, ends []int) (*Pipes, error) {
	net.Nodes = append([]network.Node(nil), net.Nodes...)
	for _, n := range ends {
		net.Nodes[n] = network.Node{Name: net.Nodes[n].Name, Kind: network.OpenEnd}
	}
	for _, n := range source {
		net.Nodes[n].Level = 0
	}
	solver, faults := network.NewSolver(net)
	if len(faults) > 0 {
		return nil, &Error{"/runs", faults[0].Message}
	}
	n := len(ends)
	return &Pipes{
		solver: solver, state: solver.NewState(), source: source, ends: ends, reach: firstReach,
		lift: make([]unit.Length, n), flow: make([]unit.Flow, n), slope: make([]float64, n*n), told: make([]unit.Flow, n),
	}, nil
}

// Within tells that the lifts are within half again of the anchor's reach.
func (p *Pipes) Within(lift []unit.Length) bool { return p.off(lift) <= 1.5*p.reach }

func (p *Pipes) off(lift []unit.Length) unit.Length {
	if !p.set {
		return unit.Length(math.Inf(1))
	}
	most := unit.Length(0)
	for i, v := range lift {
		most = max(most, v-p.lift[i], p.lift[i]-v)
	}
	return most
}

// Near puts a new anchor where the lifts have left the reach of the last.
func (p *Pipes) Near(lift []unit.Length) (bool, error) {
	if p.off(lift) <= p.reach {
		return false, nil
	}
	near := p.off(lift) <= farthestTold*p.reach
	p.Flows(lift, p.told)
	if err := p.solve(lift, p.flow); err != nil {
		return false, err
	}
	if near {
		p.learn()
	}
	n := len(lift)
	copy(p.lift, lift)
	for k := range p.lift {
		p.lift[k] = lift[k] + slopeStep
		beside := p.told
		if err := p.solve(p.lift, beside); err != nil {
			return false, err
		}
		for i := range beside {
			p.slope[i*n+k] = float64(beside[i]-p.flow[i]) / float64(slopeStep)
		}
		p.lift[k] = lift[k]
	}
	p.set = true
	p.Anchors++
	return true, nil
}

// learn holds what was foretold against what is found, and sets the reach.
func (p *Pipes) learn() {
	all, off := 0.0, 0.0
	for i, q := range p.flow {
		all += float64(q)
		off = max(off, math.Abs(float64(q-p.told[i])))
	}
	if all <= 0 {
		return
	}
	off /= all
	switch {
	case off > supplyAccuracy:
		p.reach = max(leastReach, p.reach/2)
	case off < supplyAccuracy/4:
		p.reach = min(greatestReach, p.reach*1.5)
	}
}

// solve finds the flows at lifts exactly.
func (p *Pipes) solve(lift []unit.Length, out []unit.Flow) error {
	for i, n := range p.ends {
		if faults := p.solver.SetLevel(n, lift[i]); len(faults) > 0 {
			return &Error{"/runs", faults[0].Message}
		}
	}
	p.Solves++
	if p.solver.Solve(p.state) != network.StopConverged {
		return fail("/runs", CodeSupply)
	}
	for i, n := range p.ends {
		out[i] = max(0, p.state.Nodes[n].Out)
	}
	return nil
}

// Flows gives flow + slope (lift - anchor) for each feed, not below 0.
func (p *Pipes) Flows(lift []unit.Length, out []unit.Flow) {
	n := len(lift)
	for i := range out {
		q := float64(p.flow[i])
		for k := range lift {
			q += p.slope[i*n+k] * float64(lift[k]-p.lift[k])
		}
		out[i] = unit.Flow(max(0, q))
	}
}
