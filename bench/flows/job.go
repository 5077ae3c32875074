package main

import (
	"fmt"

	"plashet/engine/hydro"
	"plashet/engine/network"
	"plashet/engine/unit"
)

// A job is a network as the other side reads it: sizes and levels in SI, no
// figure that this engine has worked out but the flows at the end of it.
type job struct {
	Kind      string    `json:"kind"`
	Celsius   float64   `json:"celsius"`
	Nodes     []node    `json:"nodes"`
	Links     []link    `json:"links"`
	Flows     []float64 `json:"flows"`
	Converged bool      `json:"converged"`
	Why       []string  `json:"why,omitempty"`
}

// node is a junction, a level, a lip or an open end.
type node struct {
	Kind  string  `json:"kind"`
	Level float64 `json:"level"`           // m
	Width float64 `json:"width,omitempty"` // lip, m
	C     float64 `json:"c,omitempty"`     // lip, m^0.5/s
	Tilt  float64 `json:"tilt,omitempty"`  // lip, m
	Inlet float64 `json:"inlet,omitempty"` // lip that the pipe pours into, m
	Pours bool    `json:"pours,omitempty"`
	Bore  float64 `json:"bore,omitempty"` // open end, m
	K     float64 `json:"k,omitempty"`    // open end
}

// The kinds of node.
const (
	kindJunction = "junction"
	kindLevel    = "level"
	kindReturn   = "return"
	kindLip      = "lip"
	kindEnd      = "end"
)

// link is elements in a row.
type link struct {
	From  int    `json:"from"`
	To    int    `json:"to"`
	Parts []part `json:"parts"`
}

// part is a pipe, a fitting, a check valve, a pump or a closed valve.
type part struct {
	Kind      string       `json:"kind"`
	Bore      float64      `json:"bore,omitempty"`      // m
	Length    float64      `json:"length,omitempty"`    // pipe, m
	Roughness float64      `json:"roughness,omitempty"` // pipe, m
	K         float64      `json:"k,omitempty"`
	K1        float64      `json:"k1,omitempty"`
	Curve     [][2]float64 `json:"curve,omitempty"` // pump: m³/s, m
	Reverse   bool         `json:"reverse,omitempty"`
}

// The kinds of part.
const (
	partPipe    = "pipe"
	partFitting = "fitting"
	partCheck   = "check"
	partPump    = "pump"
	partShut    = "shut"
)

// pumpLaw is a pump's curve as a loss.
type pumpLaw struct{ curve *hydro.Curve }

func (p pumpLaw) Loss(q unit.Flow) (h unit.Head, dhdq float64) {
	h, dhdq, _ = p.curve.Head(q)
	return -h, -dhdq
}

// build makes the engine's network of a job.
func (j *job) build() (n network.Network, err error) {
	w, err := hydro.WaterAt(unit.Temperature(j.Celsius))
	if err != nil {
		return n, err
	}
	for i := range j.Nodes {
		x, err := j.Nodes[i].build(w)
		if err != nil {
			return n, fmt.Errorf("node %d: %w", i, err)
		}
		n.AddNode(x)
	}
	for i, l := range j.Links {
		out := network.Link{Name: fmt.Sprint(i), From: l.From, To: l.To}
		for k := range l.Parts {
			p, err := l.Parts[k].build(w)
			if err != nil {
				return n, fmt.Errorf("link %d, part %d: %w", i, k, err)
			}
			out.Parts = append(out.Parts, p)
		}
		n.AddLink(out)
	}
	return n, nil
}

func (x *node) build(w hydro.Water) (out network.Node, err error) {
	out.Level = unit.Length(x.Level)
	switch x.Kind {
	case kindLevel:
		out.Kind = network.FixedLevel
	case kindReturn:
		out.Kind = network.SubmergedReturn
	case kindLip:
		out.Kind, out.Pours, out.Inlet = network.FreeLip, x.Pours, unit.Length(x.Inlet)
		out.Law, err = hydro.LipLaw{Width: unit.Length(x.Width), C: x.C, Tilt: unit.Length(x.Tilt)}.Prepare()
	case kindEnd:
		out.Kind = network.OpenEnd
		out.Law, err = hydro.MinorLaw{Bore: unit.Length(x.Bore), K: unit.Ratio(x.K)}.Prepare(w)
	}
	return out, err
}

func (p *part) build(w hydro.Water) (out network.Part, err error) {
	bore := unit.Length(p.Bore)
	out = network.Part{Name: p.Kind, Reverse: p.Reverse}
	switch p.Kind {
	case partPipe:
		out.Law, err = hydro.PipeLaw{Bore: bore, Length: unit.Length(p.Length), Roughness: unit.Length(p.Roughness)}.Prepare(w)
	case partPump:
		var d hydro.PumpData
		for _, c := range p.Curve {
			d.Points = append(d.Points, hydro.CurvePoint{Flow: unit.Flow(c[0]), Head: unit.Head(c[1])})
		}
		curve, bad := hydro.NewCurve(d)
		out.Law, out.Role, err = pumpLaw{curve}, network.Pump, bad
	case partShut:
		out.Shut = true
	default:
		out.Law, err = hydro.MinorLaw{Bore: bore, K: unit.Ratio(p.K), K1: unit.Ratio(p.K1)}.Prepare(w)
		if p.Kind == partCheck {
			out.Role = network.CheckValve
		}
	}
	return out, err
}

// solve sets the flows of a job.
func (j *job) solve() error {
	n, err := j.build()
	if err != nil {
		return err
	}
	s, faults := network.NewSolver(n)
	if len(faults) > 0 {
		return fmt.Errorf("faults: %v", faults)
	}
	st := s.NewState()
	j.Converged = s.Solve(st) == network.StopConverged
	for i := range st.Links {
		j.Flows = append(j.Flows, float64(st.Links[i].Flow))
	}
	for _, m := range s.Messages(st) {
		j.Why = append(j.Why, m.Code)
	}
	return nil
}
