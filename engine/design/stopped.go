package design

import (
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/motion"
	"plashet/engine/network"
	"plashet/engine/unit"
)

// Astray is what the water does where a part fails: a check valve that sticks
// shut, a pump that stands still beside others that run.
type Astray struct {
	Pump  string      // that stands still, or pushes against the valve
	Run   string      // with the valve; empty: the one in the assembly
	Flows []unit.Flow // of each feed
	Back  unit.Flow   // through the pump that stands still
	Gives unit.Flow   // by the pump that pushes against the valve; 0: it moves nothing
	Head  unit.Head   // that it then pushes with
	Watts unit.Power  // that it then takes; 0: not known
	Boils unit.Duration
}

// Left is what all feeds together still get.
func (a *Astray) Left() (q unit.Flow) {
	for _, f := range a.Flows {
		q += f
	}
	return q
}

// valveAt names the check valve that a pump pushes through first: of the pump in
// use, else the first of the runs.
func (m *model) valveAt() (run int, ok bool) {
	if m.assemblyHolds() {
		return -1, true
	}
	first := -1
	for i := range m.job.Runs {
		if r := &m.job.Runs[i]; hasCheck(r) {
			if r.From == "pump" {
				return i, true
			}
			if first < 0 {
				first = i
			}
		}
	}
	return first, first >= 0
}

// altered is the network of a system with links of its own, for a part that
// fails.
func altered(sys *system) network.Network {
	net := sys.net
	net.Nodes, net.Links = slices.Clone(net.Nodes), slices.Clone(net.Links)
	return net
}

// swapPart puts other parts into a link.
func swapPart(net *network.Network, link int, parts []network.Part) { net.Links[link].Parts = parts }

// stuckShut works out what runs with a check valve stuck shut; nil where none
// is fitted, or nothing can be worked out.
func (m *model) stuckShut(sys *system, vault unit.Length) (*Astray, motion.Supply) {
	run, ok := m.valveAt()
	if !ok {
		return nil, nil
	}
	net, link := altered(sys), sys.pump
	out := &Astray{Pump: m.job.Pumps[sys.pumpIndex].Name}
	if run >= 0 {
		link, out.Run = sys.runs[run], m.job.Runs[run].Name
	}
	swapPart(&net, link, append([]network.Part{{Name: "stuck", Shut: true}}, net.Links[link].Parts...))
	state, ok := m.alteredFlows(sys, net, vault, out)
	if !ok {
		return nil, nil
	}
	if out.Gives = max(0, state.Links[sys.pump].Flow); out.Gives <= network.MassTolerance {
		h, _, _ := sys.curve.Head(0)
		out.Gives, out.Head, out.Watts = 0, h, power(sys.curve, 0)
		if out.Watts > 0 {
			out.Boils = unit.Duration(float64(boiling-m.job.Site.WaterTemperature.Or(defaultTemperature)) * waterHeat / float64(out.Watts))
		}
	}
	if slices.Max(out.Flows) <= 0 {
		return out, nil
	}
	return out, supplyOf(sys, net)
}

// A litre of water takes waterHeat joules to warm by a degree (4.18 to 4.22 kJ
// for a kilogram, steam tables, from memory); it boils at boiling.
const (
	waterHeat                  = 4190.0
	boiling   unit.Temperature = 100
)

// alteredFlows solves an altered network and reads its feeds.
func (m *model) alteredFlows(sys *system, net network.Network, vault unit.Length, out *Astray) (*network.State, bool) {
	net.Nodes[sys.source].Level = vault
	solver, faults := network.NewSolver(net)
	if len(faults) > 0 {
		return nil, false
	}
	state := solver.NewState()
	if solver.Solve(state) != network.StopConverged {
		return nil, false
	}
	for _, n := range sys.feeds {
		q := max(0, state.Nodes[n].Out)
		if q <= network.MassTolerance {
			q = 0
		}
		out.Flows = append(out.Flows, q)
	}
	return state, true
}

// supplyOf makes the supply of an altered network; nil where it cannot be.
func supplyOf(sys *system, net network.Network) motion.Supply {
	supply, err := motion.NewPipes(net, []int{sys.source}, sys.feeds)
	if err != nil {
		return nil
	}
	return supply
}

// stoppable is one of several pumps.
type stoppable struct {
	name, place string
	path        string
	link        int
	vault       bool
}

// stoppables lists the pumps that can stand still beside others.
func (m *model) stoppables(sys *system) []stoppable {
	if len(sys.others) == 0 {
		return nil
	}
	out := []stoppable{{m.job.Pumps[sys.pumpIndex].Name, "pump", "/runs", sys.pump, true}}
	for _, o := range sys.others {
		name := m.job.FurtherPumps[o.index].Name
		out = append(out, stoppable{name, name, at("/furtherPumps", o.index), o.link, o.vault})
	}
	return out
}

// pumpLeg lists the runs from a pump up to where other water joins, and tells whether
// a check valve stands in it and where it joins; no place: it does not.
func (m *model) pumpLeg(place string) (runs []int, valve bool, joint string) {
	valve = place == "pump" && m.assemblyHolds()
	for range m.job.Runs {
		next := -1
		for i := range m.job.Runs {
			if m.job.Runs[i].From == place {
				if next >= 0 {
					return runs, valve, "" // it feeds several places of its own
				}
				next = i
			}
		}
		if next < 0 {
			return runs, valve, ""
		}
		runs, valve = append(runs, next), valve || hasCheck(&m.job.Runs[next])
		place = m.job.Runs[next].To
		joins := 0
		for i := range m.job.Runs {
			if m.job.Runs[i].To == place {
				joins++
			}
		}
		if joins > 1 {
			return runs, valve, place
		}
	}
	return runs, valve, ""
}

// oneStops works out what runs while one of several pumps stands still: water that
// comes back through it meets its legs and a pump at rest, a passage. With open
// the check valve of its leg is stuck open.
func (m *model) oneStops(sys *system, s stoppable, vault unit.Length, open bool) (*Astray, motion.Supply) {
	net := altered(sys)
	runs, valve, joint := m.pumpLeg(s.place)
	if joint == "" || open && !valve {
		return nil, nil
	}
	bore := float64(hydro.BoreArea(sys.pipes[runs[0]].bore))
	still := []network.Part{{Name: s.name, Law: network.Quadratic(float64(defaultStopped) / (2 * unit.StandardGravity * bore * bore)), Role: network.Passive}}
	if s.place == "pump" && m.assemblyHolds() && !open {
		still = append(still, network.Part{Name: "check valve", Role: network.CheckValve})
	}
	swapPart(&net, s.link, still)
	if open && valve {
		for _, k := range runs {
			parts := slices.Clone(net.Links[sys.runs[k]].Parts)
			for i := range parts {
				if parts[i].Role == network.CheckValve {
					parts[i].Role = network.Passive
				}
			}
			swapPart(&net, sys.runs[k], parts)
		}
	}
	out := &Astray{Pump: s.name}
	state, ok := m.alteredFlows(sys, net, vault, out)
	if !ok {
		return nil, nil
	}
	if q := -state.Links[s.link].Flow; q > network.MassTolerance {
		out.Back = q
	}
	return out, supplyOf(sys, net)
}
