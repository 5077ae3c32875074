package network

import (
	"math"

	"plashet/engine/unit"
)

// tester is what a test and a rapid test share.
type tester interface {
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
}

// firm tells that a head is one figure on the job's datum.
func firm(n NodeState) bool { return n.Status == NodeSet || n.Status == NodeDry }

// audit holds an answer against the two laws and the rules of one-way
// elements, from the network as it was given and by its own arithmetic: it
// uses nothing of the solver but the types.
func audit(t tester, n Network, st *State) {
	sum := make([]float64, len(n.Nodes))
	for i, l := range n.Links {
		x := st.Links[i]
		q := float64(x.Flow)
		if x.Status == LinkUnsolved || x.Status == LinkFaulty {
			continue
		}
		if math.IsNaN(q) {
			t.Errorf("link %d %v: no flow", i, x.Status)
			continue
		}
		sum[l.From] -= q
		sum[l.To] += q
		oneWay, opposed := 0, false
		loss := 0.0
		shut := false
		for _, p := range l.Parts {
			d := 1.0
			if p.Reverse {
				d = -1
			}
			shut = shut || p.Shut
			if p.Role != Passive {
				opposed = opposed || oneWay == -int(d)
				oneWay = int(d)
			}
			if p.Law != nil {
				h, _ := p.Law.Loss(unit.Flow(d * q))
				loss += d * float64(h)
			}
		}
		if oneWay != 0 && q*float64(oneWay) < 0 {
			t.Errorf("link %d (%s): %g m³/s backwards", i, l.Name, q)
		}
		if (shut || opposed) && q != 0 {
			t.Errorf("link %d (%s): %g m³/s through a closed link", i, l.Name, q)
		}
		from, to := float64(st.Nodes[l.From].Head), float64(st.Nodes[l.To].Head)
		if shut || opposed || math.IsNaN(from) || math.IsNaN(to) {
			if q != 0 {
				t.Errorf("link %d (%s): flow %g at unknown heads", i, l.Name, q)
			}
			continue
		}
		// energy: equality where it runs, inequality where a one-way element stands
		e := from - to - loss
		tol := float64(EnergyTolerance)
		switch {
		case q == 0 && oneWay > 0:
			if e > tol && firm(st.Nodes[l.From]) && firm(st.Nodes[l.To]) {
				t.Errorf("link %d (%s) stands, but %g m would drive water through it", i, l.Name, e)
			}
		case q == 0 && oneWay < 0:
			if e < -tol && firm(st.Nodes[l.From]) && firm(st.Nodes[l.To]) {
				t.Errorf("link %d (%s) stands, but %g m would drive water back through it", i, l.Name, -e)
			}
		default:
			if !(math.Abs(e) <= tol) {
				t.Errorf("link %d (%s) %v: energy out by %g m at %g m³/s", i, l.Name, x.Status, e, q)
			}
		}
	}
	for i, x := range n.Nodes {
		s := st.Nodes[i]
		if s.Status == NodeUnsolved {
			continue
		}
		out := float64(s.Out)
		if !(math.Abs(sum[i]-out) <= float64(MassTolerance)) {
			t.Errorf("node %d (%s): %g m³/s in, %g out", i, x.Name, sum[i], out)
		}
		switch x.Kind {
		case Junction:
			if s.Status != NodeCut && out != float64(x.Demand) {
				t.Errorf("node %d (%s): demand %g, got %g", i, x.Name, float64(x.Demand), out)
			}
		case FixedLevel, SubmergedReturn:
			if s.Head != x.Level {
				t.Errorf("node %d (%s): level %g, head %g", i, x.Name, float64(x.Level), float64(s.Head))
			}
		case FreeLip, OpenEnd:
			level := float64(x.Level)
			if x.Law != nil {
				h, _ := x.Law.Loss(s.Out)
				level += float64(h)
			}
			if x.Pours {
				level = max(level, float64(x.Inlet))
			}
			switch {
			case out < 0:
				t.Errorf("node %d (%s): %g m³/s flows back", i, x.Name, out)
			case out > 0 && !(math.Abs(float64(s.Head)-level) <= float64(EnergyTolerance)):
				t.Errorf("node %d (%s): head %g, its law says %g", i, x.Name, float64(s.Head), level)
			case out == 0 && s.Status != NodeCut && s.Status != NodeRelative && float64(s.Head) > level+float64(EnergyTolerance):
				t.Errorf("node %d (%s): dry, but its head %g is over %g", i, x.Name, float64(s.Head), level)
			}
		}
	}
}
