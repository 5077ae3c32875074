package network

import (
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// What a job can get wrong as a whole: each gives one fault or remark that
// names the elements, and the rest is solved.

func faultsOf(n Network) (codes []string, faults []trace.Fault) {
	_, faults = NewSolver(n)
	for _, f := range faults {
		codes = append(codes, f.Code)
	}
	return codes, faults
}

// text gives an argument that is a text, "" when there is none.
func text(m trace.Message, name string) string {
	for _, a := range m.Args {
		if a.Name == name {
			return a.Text
		}
	}
	return ""
}

// Two waters at 1 m and 0 m joined by a lossless way, directly or over a tee;
// at one level; and an open end at another.
func TestLevelsJoinedWithoutPipe(t *testing.T) {
	hose := []Part{{Name: "hose"}}
	for name, c := range map[string]struct {
		other Node
		tee   bool
		code  Code
	}{
		"contradict":          {Node{Name: "pool", Kind: FixedLevel, Level: 0}, false, FaultLevels},
		"contradict by a tee": {Node{Name: "pool", Kind: FixedLevel, Level: 0}, true, FaultLevels},
		"contradict, return":  {Node{Name: "pool", Kind: SubmergedReturn, Level: 0}, false, FaultLevels},
		"contradict, end":     {Node{Name: "pool", Kind: OpenEnd, Level: 0}, true, FaultLevels},
		"agree":               {Node{Name: "pool", Kind: FixedLevel, Level: 1}, false, FaultNoPipe},
		"agree by a tee":      {Node{Name: "pool", Kind: SubmergedReturn, Level: 1}, true, FaultNoPipe},
	} {
		n := line(Node{Name: "pond", Kind: SubmergedReturn, Level: 1})
		pool := n.AddNode(c.other)
		at := 1
		if c.tee {
			at = n.AddNode(Node{Name: "tee"})
			n.AddLink(Link{Name: "first", From: 1, To: at, Parts: hose})
			n.AddLink(Link{Name: "side", From: at, To: 0, Parts: pipe(1e4)})
		}
		n.AddLink(Link{Name: "last", From: at, To: pool, Parts: hose})
		codes, faults := faultsOf(n)
		if len(codes) != 1 || codes[0] != string(c.code) {
			t.Errorf("%s: %v, want %s", name, faults, c.code)
			continue
		}
		names := map[string]bool{}
		for _, k := range []string{"node", "other"} {
			names[text(faults[0].Message, k)] = true
		}
		if link := text(faults[0].Message, "link"); !names["pond"] || !names["pool"] || link == "" {
			t.Errorf("%s: names %v, link %q", name, names, link)
		}
		s, _ := NewSolver(n)
		st := s.NewState()
		if stop := s.Solve(st); stop != StopConverged || st.Links[0].Flow <= 0 {
			t.Errorf("%s: the rest is not solved: %v, %+v", name, stop, st.Links[0])
		}
	}
}

// A loop of three links without any resistance: one fault, and not one about
// levels.
func TestLosslessLoopOfThree(t *testing.T) {
	n := line(Node{Name: "pool", Kind: SubmergedReturn, Level: 1})
	a, b, c := n.AddNode(Node{Name: "a"}), n.AddNode(Node{Name: "b"}), n.AddNode(Node{Name: "c"})
	n.Links[0].To = a
	for _, ends := range [][2]int{{a, b}, {b, c}, {c, a}} {
		n.AddLink(Link{Name: "hose", From: ends[0], To: ends[1]})
	}
	n.AddLink(Link{Name: "on", From: b, To: 1, Parts: pipe(1e4)})
	n.AddLink(Link{Name: "on too", From: c, To: 1, Parts: pipe(1e4)})
	if codes, faults := faultsOf(n); len(codes) != 1 || codes[0] != string(FaultNoLoss) {
		t.Errorf("%v", faults)
	}
}

// A pump against a valve that is shut, in its own link and in the next: both
// say that it pushes against a closed part.
func TestPumpAgainstShutValve(t *testing.T) {
	own := line(Node{Name: "pool", Kind: SubmergedReturn, Level: 1}, Part{Name: "valve", Shut: true})
	next := line(Node{Name: "tee"})
	next.AddLink(Link{Name: "on", From: 1, To: next.AddNode(Node{Name: "pool", Kind: SubmergedReturn, Level: 1}), Parts: []Part{{Name: "valve", Shut: true}}})
	for name, n := range map[string]Network{"own": own, "next": next} {
		st := solved(t, n)
		if !has(st, ReasonDeadHead) || st.Links[0].Flow != 0 {
			t.Errorf("%s link: %v, %v", name, st.Links[0], st.Reasons)
		}
	}
}

// What Several finds is told with names and figures.
func TestSeveralTold(t *testing.T) {
	n := line(Node{Name: "pool", Kind: SubmergedReturn, Level: 5.3})
	n.Links[0].Parts[0].Law = humped{}
	s := mustSolver(t, n)
	x, _ := s.Several(0, 0)
	want := []Code{ReasonStands, ReasonTips, ReasonStates}
	told := s.Told(x)
	if len(told) != len(want) {
		t.Fatalf("%v", told)
	}
	for i, m := range told {
		if m.Code != string(want[i]) || text(m, "link") != "line" {
			t.Errorf("%d: %v, want %s", i, m, want[i])
		}
	}
	n.Nodes[1].Level = 4
	s = mustSolver(t, n)
	if x, _ = s.Several(0, 0); len(s.Told(x)) != 0 {
		t.Errorf("one state: %v", s.Told(x))
	}
	doubt := s.Told(SteadyStates{States: x.States, Open: []FlowRange{{1 * unit.LitrePerSecond, 2 * unit.LitrePerSecond}}})
	if n := len(doubt); n != 3 || doubt[n-2].Code != string(ReasonOpen) || doubt[n-1].Code != string(ReasonSample) {
		t.Errorf("%v", doubt)
	}
}
