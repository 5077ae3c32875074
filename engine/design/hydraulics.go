package design

import (
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/network"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// pumpLaw is a pump as the solver sees it: it gives head, so its loss is
// negative and rises with the flow.
type pumpLaw struct {
	curve   *hydro.Curve
	suction inLine // what its suction pipe takes off it
	held    bool   // it ends at the end of its data: see hold
}

func (p pumpLaw) Loss(q unit.Flow) (unit.Head, float64) {
	h, d, _ := p.curve.Head(q)
	if p.held {
		h, d = p.hold(q, h, d)
	}
	lost, slope := p.suction.Loss(q)
	return lost - h, slope - d
}

// wall is how much steeper than its mean slope a held curve falls past its data:
// the flow is then its end's within a hundredth of a percent.
const wall = 1e4

// hold makes the curve all but upright past its data. Where the pump runs out of
// them, the system then settles at their end, and every flow is the one that
// the true one lies beyond: more than at the right end, less than at the left,
// because the true curve falls too.
func (p pumpLaw) hold(q unit.Flow, h unit.Head, d float64) (unit.Head, float64) {
	least, most, atLeast, atMost := p.curve.Range()
	slope := -wall * float64(max(atLeast, atMost)) / float64(most)
	switch {
	case q > most:
		return atMost + unit.Head(slope*float64(q-most)), slope
	case q < least:
		return atLeast + unit.Head(slope*float64(q-least)), slope
	}
	return h, d
}

// side tells on which side of its data a pump runs.
func (p pumpLaw) side(q unit.Flow) unit.Bound {
	switch least, most, _, _ := p.curve.Range(); {
	case q > most+network.MassTolerance:
		return unit.MoreThan
	case q < least-network.MassTolerance:
		return unit.LessThan
	}
	return unit.Exact
}

func (p pumpLaw) Bounds() (low, high unit.Flow) {
	low, high, _, _ = p.curve.Range()
	return low, high
}

// plumbing is the network of a job with the way back to the document.
type plumbing struct {
	net    network.Network
	curve  *hydro.Curve
	source int         // node of the water the pump draws from
	pump   int         // link
	others []further   // the pumps that run beside it
	inlets []suction   // the suction pipe of each of the job's pumps
	runs   []int       // link of each run
	feeds  []int       // node of each watercourse
	pipes  []pipeParts // of each run
	lips   [][]feedLip // of each watercourse
}

// droops tells that the head of a pump rises somewhere.
func (p *plumbing) droops() bool {
	return p.curve.Droops() || slices.ContainsFunc(p.others, func(o further) bool { return o.curve.Droops() })
}

// build makes the network: pump from the vault's water into the node "pump",
// further pumps likewise, each run a link, each watercourse a free lip. One run or feed at fault voids
// the flow of all, because water shares itself among all of them.
func (m *model) build(pumpIndex int, vault unit.Length) (*plumbing, bool) {
	p := &plumbing{}
	curve, sound := m.curve(pumpIndex)
	p.curve = curve
	p.inlets = m.suctions(pumpIndex)
	sound = sound && !p.inlets[pumpIndex].bad
	p.source = p.net.AddNode(network.Node{Name: "vault", Kind: network.FixedLevel, Level: vault})
	nodes := map[string]int{"pump": p.net.AddNode(network.Node{Name: "pump"})}
	for i := range m.job.Watercourses {
		w, path := &m.job.Watercourses[i], at("/watercourses", i)
		lips, ok := m.lips(i)
		p.lips = append(p.lips, lips)
		if !ok {
			m.fault(path, CodeVoid, trace.Str("name", w.Name))
			p.feeds = append(p.feeds, -1)
			sound = false
			continue
		}
		n := network.Node{Name: w.Name, Kind: network.FreeLip, Level: lips[0].crest, Law: lips[0].law}
		// Above the lip the pipe pours in from over the water.
		if !w.Box.Inlet.IsZero() && !w.Box.Depth.IsZero() && w.Box.Inlet.SI >= w.Box.Depth.SI {
			n.Pours, n.Inlet = true, lips[0].crest+w.Box.Inlet.SI-w.Box.Depth.SI
		}
		p.feeds = append(p.feeds, p.net.AddNode(n))
		nodes[w.Name] = p.feeds[i]
	}
	p.pump = p.net.AddLink(network.Link{
		Name: "pump", From: p.source, To: nodes["pump"],
		Parts: []network.Part{{Name: "pump", Law: pumpLaw{curve: curve, suction: p.inlets[pumpIndex].law}, Role: network.Pump}},
	})
	node := func(name string) int {
		if _, known := nodes[name]; !known {
			nodes[name] = p.net.AddNode(network.Node{Name: name})
		}
		return nodes[name]
	}
	for i := range m.job.FurtherPumps {
		if !m.further(p, i, node) {
			sound = false
		}
	}
	for i := range m.job.Runs {
		r := &m.job.Runs[i]
		parts, pp, ok := m.run(i)
		if !ok {
			m.fault(at("/runs", i), CodeVoid, trace.Str("name", r.Name))
			sound = false
			continue
		}
		from, to := node(r.From), node(r.To)
		p.pipes = append(p.pipes, pp)
		p.runs = append(p.runs, p.net.AddLink(network.Link{Name: r.Name, From: from, To: to, Parts: parts}))
	}
	return p, sound
}

// curve makes the curve of the pump in use, or of the one tried in its place.
func (m *model) curve(i int) (*hydro.Curve, bool) {
	if m.instead != nil {
		return m.instead, true
	}
	return m.ownCurve(i)
}

// ownCurve makes the curve of a pump, once.
func (m *model) ownCurve(i int) (*hydro.Curve, bool) {
	if c := m.curves[i]; c != nil {
		return c, true
	}
	speed, ok := m.setSpeed(i)
	if !ok {
		return nil, false
	}
	c, err := hydro.NewCurve(pumpData(&m.job.Pumps[i], speed))
	if err == nil {
		c, err = m.asSet(i, c, speed)
	}
	if err != nil {
		m.refuse(at("/pumps", i), err)
		return nil, false
	}
	for _, msg := range c.Cautions() {
		m.remark(at("/pumps", i), trace.Caution, msg)
	}
	m.curves[i] = c
	return c, true
}
