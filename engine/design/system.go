package design

import (
	"plashet/engine/catalog"
	"plashet/engine/hydro"
	"plashet/engine/network"
	"plashet/engine/unit"
	"plashet/job"
)

// Curves are what a drawing of pump and pipe is made from.
type Curves struct {
	Pumps  []PumpCurve   // those of the job whose curve holds, in the job's order
	System []SystemPoint // of the pipe as drawn, flow rising; nil when it cannot be worked out
}

// PumpCurve is one pump of the job with its curve.
type PumpCurve struct {
	Name  string
	Used  bool // the job is designed with it
	Curve *hydro.Curve
}

// SystemPoint is the head that pipe, fittings and height ask of a pump at a flow.
type SystemPoint struct {
	Flow unit.Flow
	Head unit.Head
}

// CurvesOf gives the curves of a job's pumps and the system curve of its pipe at
// up to n flows, evenly up to the end of the longest pump curve:
//
//	H(Q) = head at the pump's outlet - running level in the vault
//
// with the water shared among the feeds as it shares itself at that flow. Each
// point is solved like the steady state itself, with a pump that gives Q almost
// whatever the head, so the points lie on the curve exactly and not by scaling.
// The vault stands at the running level of the answer r, or at the water line
// where r has no levels. n from 2; less gives no system curve. The method is
// that of package network.
func CurvesOf(book *catalog.Book, j *job.Job, r *Result, n int) Curves {
	m := &model{book: book, job: j, out: &Result{Units: j.System(), Style: j.Style()}, pipes: map[job.PipeName]catalog.Pipe{}, losses: map[job.PipeName]catalog.Loss{}, curves: map[int]*hydro.Curve{}, quiet: true}
	if !m.start() {
		return Curves{}
	}
	var out Curves
	used, ok := m.pump()
	var most unit.Flow
	for i := range j.Pumps {
		if c, holds := m.curve(i); holds {
			out.Pumps = append(out.Pumps, PumpCurve{Name: j.Pumps[i].Name, Used: ok && i == used, Curve: c})
			_, greatest, _, _ := c.Range()
			most = max(most, greatest)
		}
	}
	if ok && most > 0 && r.Delivery != nil {
		out.System = m.system(used, r, most, n)
	}
	return out
}

func (m *model) system(pump int, r *Result, most unit.Flow, n int) []SystemPoint {
	vault, known := m.survey.Level(m.job.Pond.Water)
	if r.Levels != nil {
		vault, known = running(r.Levels)
	}
	if !known || len(m.job.Watercourses) == 0 || len(m.job.Runs) == 0 {
		return nil
	}
	p, ok := m.build(pump, vault)
	if !ok {
		return nil
	}
	var out []SystemPoint
	for i := range n {
		law := &setPump{at: most * unit.Flow(i) / unit.Flow(n-1)}
		if i == 0 {
			law.at = most / 1000 // at no flow at all nothing tells the head
		}
		p.net.Links[p.pump].Parts = []network.Part{{Name: "pump", Law: law, Role: network.Pump}}
		solver, _ := network.NewSolver(p.net) // faults are told by Solve
		st := solver.NewState()
		if solver.Solve(st) != network.StopConverged {
			continue
		}
		if q := st.Links[p.pump].Flow; q > 0 && (len(out) == 0 || q > out[len(out)-1].Flow) {
			out = append(out, SystemPoint{Flow: q, Head: p.inlets[pump].law.head(q) - st.Links[p.pump].Loss})
		}
	}
	return out
}

// setPump is a pump that gives one flow almost whatever the head.
type setPump struct{ at unit.Flow }

// steepness of its curve in m per m³/s: ten metres of head move the flow by a
// hundredth of a litre in a second.
const steepness = 1e6

func (p *setPump) Loss(q unit.Flow) (h unit.Head, dhdq float64) {
	return unit.Head(steepness * float64(q-p.at)), steepness
}
