package checks

import (
	"fmt"

	"plashet/engine/hydro"
	"plashet/engine/network"
	"plashet/engine/unit"
)

// networks holds the solver of networks against worked examples: pipes in
// series and side by side, two loops, three levels, a pump on a line.
func networks() ([]Check, error) {
	parallel, err42 := equalPipes()
	head, err43 := parallelPipes()
	inSeries, err40 := seriesLoss()
	between, err41 := seriesFlow()
	pipe12, pipe14, err44 := hardyCross()
	top, err47 := threeLevels()
	point, err04 := pumpOnLine()
	out, err := fromExamples("network", []worked{
		{"E40", inSeries, err40},
		{"E41", between, err41},
		{"E42", parallel, err42},
		{"E43", head, err43},
		{"E44", pipe12, err44},
		{"E45", pipe14, err44},
		{"E47", top, err47},
		{"E04", point, err04},
	})
	for i := range out {
		out[i].ID += "-network" // some stand a second time, by formula
	}
	return out, err
}

// A conduit is a pipe of constant friction factor.
type conduit struct {
	f            unit.Ratio
	length, bore unit.Length
}

// link makes a link of conduits in series.
func link(from, to int, pipes ...conduit) (network.Link, error) {
	l := network.Link{From: from, To: to}
	for _, p := range pipes {
		r, err := hydro.FixedFriction(p.f, p.length, p.bore)
		if err != nil {
			return l, err
		}
		l.Parts = append(l.Parts, network.Part{Law: network.Quadratic(r)})
	}
	return l, nil
}

// solve solves a network without fault.
func solve(n network.Network) (*network.State, error) {
	s, faults := network.NewSolver(n)
	if len(faults) > 0 {
		return nil, fmt.Errorf("network: %v", faults)
	}
	st := s.NewState()
	if stop := s.Solve(st); stop != network.StopConverged {
		return nil, fmt.Errorf("network: %v", stop)
	}
	return st, nil
}

// drawn is a level that feeds a place where a flow is drawn, through links.
func drawn(demand unit.Flow, ways ...[]conduit) (*network.State, error) {
	var n network.Network
	n.AddNode(network.Node{Kind: network.FixedLevel})
	n.AddNode(network.Node{Demand: demand})
	for _, w := range ways {
		l, err := link(0, 1, w...)
		if err != nil {
			return nil, err
		}
		n.AddLink(l)
	}
	return solve(n)
}

const mm = unit.Millimetre

func seriesLoss() (float64, error) {
	st, err := drawn(0.05, []conduit{{0.02, 200, 200 * mm}, {0.02, 150, 150 * mm}})
	if err != nil {
		return 0, err
	}
	return float64(st.Links[0].Loss), nil
}

func seriesFlow() (float64, error) {
	var n network.Network
	n.AddNode(network.Node{Kind: network.FixedLevel, Level: 25})
	n.AddNode(network.Node{})
	n.AddNode(network.Node{})
	n.AddNode(network.Node{Kind: network.FixedLevel})
	for i, p := range []conduit{{0.02, 500, 300 * mm}, {0.022, 400, 250 * mm}, {0.018, 300, 200 * mm}} {
		l, err := link(i, i+1, p)
		if err != nil {
			return 0, err
		}
		n.AddLink(l)
	}
	st, err := solve(n)
	if err != nil {
		return 0, err
	}
	return float64(st.Links[2].Flow), nil
}

// equalPipes: the answer does not hang on bore and friction factor, which the
// example leaves open.
func equalPipes() (float64, error) {
	st, err := drawn(0.12, []conduit{{0.02, 100, 200 * mm}}, []conduit{{0.02, 400, 200 * mm}})
	if err != nil {
		return 0, err
	}
	return float64(st.Links[0].Flow), nil
}

func parallelPipes() (float64, error) {
	st, err := drawn(0.5, []conduit{{0.018, 200, 300 * mm}}, []conduit{{0.018, 200, 250 * mm}}, []conduit{{0.018, 200, 200 * mm}})
	if err != nil {
		return 0, err
	}
	return -float64(st.Nodes[1].Head), nil
}

// hardyCross gives the flows in pipes 1-2 and 1-4. All is in feet and ft³/s:
// the solver does not mind what the units are called.
func hardyCross() (pipe12, pipe14 float64, err error) {
	var n network.Network
	const a, b = 0, 5 // nodes 1 to 4 stand between
	n.AddNode(network.Node{Kind: network.FixedLevel, Level: 10})
	for _, demand := range []unit.Flow{2, 4, 1, 3} {
		n.AddNode(network.Node{Demand: demand})
	}
	n.AddNode(network.Node{Kind: network.FixedLevel})
	for _, p := range []struct {
		from, to int
		k        network.Quadratic
	}{{a, 1, 0.38}, {1, 2, 2.89}, {1, 4, 2.53}, {4, 2, 12.13}, {3, 2, 2.17}, {3, 4, 2.89}, {b, 3, 0.94}} {
		n.AddLink(network.Link{From: p.from, To: p.to, Parts: []network.Part{{Law: p.k}}})
	}
	st, err := solve(n)
	if err != nil {
		return 0, 0, err
	}
	return float64(st.Links[1].Flow), float64(st.Links[2].Flow), nil
}

func threeLevels() (float64, error) {
	var n network.Network
	n.AddNode(network.Node{})
	for i, p := range []struct{ level, length unit.Length }{{100, 1000}, {20, 500}, {0, 400}} {
		n.AddNode(network.Node{Kind: network.FixedLevel, Level: p.level * unit.Foot})
		l, err := link(i+1, 0, conduit{0.02, p.length * unit.Foot, unit.Foot})
		if err != nil {
			return 0, err
		}
		n.AddLink(l)
	}
	st, err := solve(n)
	if err != nil {
		return 0, err
	}
	return float64(st.Links[0].Flow / unit.CubicFootPerSecond), nil
}

// lifting is a pump's curve as a law.
type lifting struct{ curve *hydro.Curve }

func (p lifting) Loss(q unit.Flow) (unit.Head, float64) {
	h, slope, _ := p.curve.Head(q)
	return -h, -slope
}

func pumpOnLine() (float64, error) {
	curve, err := curveE02()
	if err != nil {
		return 0, err
	}
	var n network.Network
	n.AddNode(network.Node{Kind: network.FixedLevel})
	n.AddNode(network.Node{Kind: network.SubmergedReturn})
	n.AddLink(network.Link{From: 0, To: 1, Parts: []network.Part{
		{Role: network.Pump, Law: lifting{curve}}, {Law: perGPM(155.0 / (900 * 900))},
	}})
	st, err := solve(n)
	if err != nil {
		return 0, err
	}
	return float64(st.Links[0].Flow / unit.USGallonPerMinute), nil
}
