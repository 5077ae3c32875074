package network

import (
	"math"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// A step is one link on the way from the feeding level to an outlet.
type step struct {
	link int
	back bool // the water runs from To to From
}

// tree is the part of a network that one level feeds, as a balance needs it.
type tree struct {
	s     *Solver
	want  []Throttle
	level unit.Head   // of the feeding node
	ways  [][]step    // of each want, outwards; nil where no open way leads
	valve []int       // of each want: the link with its valve, -1 where no way leads
	flow  []unit.Flow // of each link at the wanted flows, from From to To
	lift  []step      // links with pumps; all the wanted water passes them
}

// tree follows the open links from the outlets to the one level behind them
// and back. The checks have found no fault before.
func (s *Solver) tree(want []Throttle) (*tree, []trace.Fault) {
	t := &tree{s: s, want: want, ways: make([][]step, len(want)), valve: make([]int, len(want)), flow: make([]unit.Flow, len(s.net.Links))}
	root, faults := t.feed()
	if len(faults) > 0 {
		return nil, faults
	}
	if root >= 0 {
		t.level = s.net.Nodes[root].Level
		if faults = t.spread(root); len(faults) > 0 {
			return nil, faults
		}
	}
	for i, w := range want {
		t.valve[i] = w.Link
		switch {
		case t.ways[i] == nil && w.Wanted > 0:
			faults = append(faults, s.net.wantFault(FaultNotFed, i, w, -1))
		case t.ways[i] == nil:
			t.valve[i] = -1
		case w.Link < 0:
			t.valve[i] = t.ways[i][len(t.ways[i])-1].link
		}
		for _, p := range t.ways[i] {
			if !s.lets(p) && w.Wanted > 0 {
				faults = append(faults, s.net.wantFault(FaultNotFed, i, w, p.link))
			}
			if p.back {
				t.flow[p.link] -= w.Wanted
			} else {
				t.flow[p.link] += w.Wanted
			}
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return t, append(t.checkValves(), t.checkPumps()...)
}

// lets tells that water can run through a link this way.
func (s *Solver) lets(p step) bool {
	forth, back := s.ways(int32(p.link))
	return p.back && back || !p.back && forth
}

// open tells that no valve of a link is closed.
func (s *Solver) open(link int) bool { return s.linkNote[link] != LinkShut }

// feed floods the open links from the outlets and gives the one level that
// they touch, -1 when there is none. A second one is a fault.
func (t *tree) feed() (root int, faults []trace.Fault) {
	root = -1
	n := &t.s.net
	met := make([]bool, len(n.Nodes))
	var queue []int
	for _, w := range t.want {
		if !met[w.Outlet] {
			met[w.Outlet] = true
			queue = append(queue, w.Outlet)
		}
	}
	starts := len(queue)
	for k := 0; k < len(queue); k++ {
		v := queue[k]
		if k >= starts && n.Nodes[v].fixed() {
			continue // what lies behind open water is another network
		}
		for i := range n.Links {
			l := &n.Links[i]
			if !t.s.open(i) || l.From != v && l.To != v {
				continue
			}
			other := l.From + l.To - v
			if met[other] {
				continue
			}
			met[other] = true
			queue = append(queue, other)
			x := &n.Nodes[other]
			switch {
			case x.Kind == FixedLevel && root >= 0:
				faults = append(faults, n.linkFault(FaultNotTree, i))
			case x.Kind == FixedLevel:
				root = other
			case x.Kind.IsOutlet(), x.Kind == Junction && x.Demand != 0:
				faults = append(faults, n.nodeFault(FaultWanted, other)) // an outflow that nobody has named
			}
		}
	}
	return root, faults
}

// spread goes outwards from the feeding node and sets the ways. A link that
// meets water already met closes a loop; one that leads on from an outlet
// would be fed from there too.
func (t *tree) spread(root int) (faults []trace.Fault) {
	n := &t.s.net
	wantAt := make([]int, len(n.Nodes))
	for i := range wantAt {
		wantAt[i] = -1
	}
	for i, w := range t.want {
		wantAt[w.Outlet] = i
	}
	type place struct {
		node int
		way  []step
	}
	met, used := make([]bool, len(n.Nodes)), make([]bool, len(n.Links))
	met[root] = true
	queue := []place{{node: root}}
	for k := 0; k < len(queue); k++ {
		at := queue[k]
		for i := range n.Links {
			l := &n.Links[i]
			if used[i] || !t.s.open(i) || l.From != at.node && l.To != at.node {
				continue
			}
			used[i] = true
			other := l.From + l.To - at.node
			if met[other] || k > 0 && n.Nodes[at.node].Kind != Junction {
				faults = append(faults, n.linkFault(FaultNotTree, i))
				continue
			}
			met[other] = true
			next := place{other, append(slices.Clone(at.way), step{i, l.From != at.node})}
			if w := wantAt[other]; w >= 0 {
				t.ways[w] = next.way
			}
			queue = append(queue, next)
		}
	}
	return faults
}

// checkValves finds valves that do not stand where they throttle their outlet
// alone.
func (t *tree) checkValves() (faults []trace.Fault) {
	for i, w := range t.want {
		if t.valve[i] < 0 {
			continue
		}
		alone := false
		for _, p := range t.ways[i] {
			alone = alone || p.link == t.valve[i]
		}
		for j, other := range t.want {
			if i != j && other.Wanted > 0 && slices.ContainsFunc(t.ways[j], func(p step) bool { return p.link == t.valve[i] }) {
				alone = false
			}
		}
		if !alone {
			faults = append(faults, t.s.net.wantFault(FaultThrottle, i, w, t.valve[i]))
		}
	}
	return faults
}

// checkPumps notes the pumps and finds those that not all the wanted water
// passes.
func (t *tree) checkPumps() (faults []trace.Fault) {
	on := make([]int, len(t.flow)) // ways of wanted water over each link
	ways := 0
	for i, w := range t.want {
		if w.Wanted == 0 {
			continue
		}
		ways++
		for _, p := range t.ways[i] {
			on[p.link]++
			if on[p.link] == 1 && t.pumps(p.link) {
				t.lift = append(t.lift, p)
			}
		}
	}
	for _, p := range t.lift {
		if on[p.link] != ways {
			faults = append(faults, t.s.net.linkFault(FaultNotTree, p.link))
		}
	}
	return faults
}

func (t *tree) pumps(link int) bool {
	return slices.ContainsFunc(t.s.net.Links[link].Parts, func(p Part) bool { return p.Role == Pump })
}

// heads gives, with all wanted flows times scale, what each outlet needs (0
// where no water is wanted), the greatest need, and what the pumps give.
func (t *tree) heads(scale float64, needs []unit.Head) (need, has unit.Head) {
	need = unit.Head(math.Inf(-1))
	for i, w := range t.want {
		needs[i] = 0
		if w.Wanted == 0 {
			continue
		}
		x := &t.s.net.Nodes[w.Outlet]
		h := x.Level
		if x.spills() {
			h, _ = outflow{x}.Loss(unit.Flow(scale * float64(w.Wanted)))
		}
		h -= t.level
		for _, p := range t.ways[i] {
			lost, _ := t.loss(p, scale)
			h += lost
		}
		needs[i] = h
		need = max(need, h) // not a number if h is none
	}
	for _, p := range t.lift {
		_, lifts := t.loss(p, scale)
		has += lifts
	}
	return need, has
}

// loss gives what a link takes along the water's way without its pumps, and
// what these give.
func (t *tree) loss(p step, scale float64) (lost, lifts unit.Head) {
	parts := t.s.net.Links[p.link].Parts
	q := unit.Flow(scale * float64(t.flow[p.link]))
	for i := range parts {
		h := parts[i].loss(q)
		if p.back {
			h = -h
		}
		if parts[i].Role == Pump {
			lifts -= h
		} else {
			lost += h
		}
	}
	return lost, lifts
}

// reachTold is how near reach comes to the scale it looks for, relative to it.
const reachTold = 1e-13

// reach finds the scale at which the pumps give just what is needed, by false
// position with the end that stays halved (the Illinois rule), and by halves
// where that is slow. It gives the end at which the pumps still give enough.
func (t *tree) reach(needs []unit.Head) unit.Ratio {
	spare := func(scale float64) float64 {
		need, has := t.heads(scale, needs)
		return float64(has - need)
	}
	low, high := 0.0, float64(MostReach)
	atHigh := spare(high)
	if atHigh >= 0 {
		return MostReach
	}
	atLow := spare(low)
	if !(atLow >= 0) {
		return 0
	}
	for n := 0; n < 200 && high-low > reachTold*high; n++ {
		mid := low + (high-low)*atLow/(atLow-atHigh)
		if n%4 == 3 || !(mid > low && mid < high) {
			mid = (low + high) / 2
		}
		if mid <= low || mid >= high {
			break // neighbours
		}
		switch f := spare(mid); {
		case f == 0:
			return unit.Ratio(mid)
		case f > 0:
			low, atLow, atHigh = mid, f, atHigh/2
		default:
			high, atHigh, atLow = mid, f, atLow/2
		}
	}
	return unit.Ratio(low)
}

// numbers finds the laws that give no number at the wanted flows: the checks
// have tried them at a few flows only.
func (t *tree) numbers() (faults []trace.Fault) {
	n := &t.s.net
	for i := range n.Links {
		for j := range n.Links[i].Parts {
			if p := &n.Links[i].Parts[j]; t.flow[i] != 0 && !finite(p.loss(t.flow[i])) {
				faults = append(faults, n.linkFault(FaultLaw, i, trace.Str("part", p.Name)))
			}
		}
	}
	for _, w := range t.want {
		if x := &n.Nodes[w.Outlet]; x.spills() && w.Wanted > 0 {
			if h, _ := (outflow{x}).Loss(w.Wanted); !finite(h) {
				faults = append(faults, n.nodeFault(FaultLaw, w.Outlet))
			}
		}
	}
	return faults
}

// beyond tells that a part runs outside its data at the wanted flows.
func (t *tree) beyond() bool {
	for i, q := range t.flow {
		if q != 0 && t.s.beyond(i, q) {
			return true
		}
	}
	return false
}
