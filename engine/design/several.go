package design

import (
	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Codes of pumps that may run at more than one flow.
const (
	// FindSeveral: the pump can run steadily at several flows on this pipe. Args: name, found (the answer's), low, high (least and greatest), tips (one between that does not last, where one was found).
	FindSeveral = "design.pump.several"
	// FindSeveralStands: it can run, and can also stand and give nothing. Args as FindSeveral, low is nothing.
	FindSeveralStands = "design.pump.stands"
	// FindWanders: between two flows the pump gives just about what the pipe asks. Args: name, low, high.
	FindWanders = "design.pump.wanders"
	// FindSeveralUnsure: several curves rise, so that flows may have been passed over. Args: name, found.
	FindSeveralUnsure = "design.pump.unsure"
	// FindOneState: the curve rises somewhere, but on this pipe there is one flow. Args: name, found.
	FindOneState = "design.pump.onestate"
)

// Turns tells where the pump's loss turns; behind a suction pipe, whose loss
// turns it elsewhere, it is not known.
func (p pumpLaw) Turns() (at []unit.Flow, known bool) { return p.curve.Turns(), len(p.suction) == 0 }

// several looks for all flows at which the pumps with drooping curves can run;
// the others have one.
func (m *model) several(s *system, d *Delivery) {
	m.states(s, d, s.pump, s.pumpIndex, s.curve, d.Flow, d.Beyond)
	for i, o := range s.others {
		m.states(s, d, o.link, o.pump, o.curve, d.Others[i].Flow, d.Others[i].Beyond)
	}
}

// states tells what one pump can do.
func (m *model) states(s *system, d *Delivery, link, pump int, curve *hydro.Curve, q unit.Flow, side unit.Bound) {
	if !curve.Droops() {
		return
	}
	x, faults := s.solver.Several(link, 0)
	if len(faults) > 0 {
		m.fault("/runs", faults[0].Code, faults[0].Args...)
		return
	}
	path := at("/pumps", pump) + "/curve"
	tell := func(code string, sev trace.Severity, args ...trace.Arg) {
		found := unit.Bounded(q, unit.KindFlow, side)
		args = append(args, trace.Str("name", m.job.Pumps[pump].Name))
		m.find(trace.Finding{Message: trace.Message{Code: code, Args: append(args, trace.Arg{Name: "found", Value: found})}, Path: path, Severity: sev, Found: found})
	}
	for _, r := range x.Open {
		tell(FindWanders, trace.Caution, trace.Num("low", r.Low, unit.KindFlow), trace.Num("high", r.High, unit.KindFlow))
	}
	if !x.All {
		tell(FindSeveralUnsure, trace.Caution)
	}
	if len(x.States) > 1 {
		low, high := x.States[0].Flow, x.States[len(x.States)-1].Flow
		args := []trace.Arg{{Name: "low", Value: reached(curve, low)}, {Name: "high", Value: reached(curve, high)}}
		for _, st := range x.States[1 : len(x.States)-1] {
			if !st.Stable && len(args) == 2 {
				args = append(args, trace.Num("tips", st.Flow, unit.KindFlow))
			}
		}
		code := FindSeveral
		if low == 0 {
			code = FindSeveralStands
		}
		tell(code, trace.Caution, args...)
	}
	switch {
	case len(x.States)+len(x.Open) > 1 || !x.All:
		d.Several = true
	case len(x.States) == 1:
		tell(FindOneState, trace.Info)
	}
}

// reached is a flow of a pump, told as a bound where it lies past its data.
func reached(c *hydro.Curve, q unit.Flow) unit.Value {
	side := pumpLaw{curve: c}.side(q)
	least, most, _, _ := c.Range()
	return unit.Bounded(min(max(q, least), most), unit.KindFlow, side)
}
