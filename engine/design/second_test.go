package design

import (
	"slices"
	"testing"

	"plashet/demo"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/engine/verify"
	"plashet/job"
)

// straightOut is a pump whose port looks at the wall, a union and a bulkhead
// fitting: sizes invented.
func straightOut() layout.Input {
	const in = unit.Inch
	by := func(v unit.Length) layout.Measure {
		return layout.Measure{Length: v, Source: trace.Source{Title: "measured", Basis: trace.BasisMeasured}}
	}
	v := func(x, y, z float64) geom.Vec3 { return geom.Vec3{X: x, Y: y, Z: z}.Scale(float64(in)) }
	adapter := layout.ThreadedInlet("2", layout.NPT, by(0.1*in), layout.Measure{}, by(1.5*in), by(2.875*in))
	union := layout.Inline(layout.Union, "2", by(0.9*in), by(1.5*in), by(4.125*in))
	bulkhead := layout.WallFitting("2", by(0.1*in), by(1.5*in), by(3*in))
	adapter.Mark, union.Mark, bulkhead.Mark = "A1", "U1", "B1"
	return layout.Input{
		Path: "/assembly",
		Vault: layout.Vault{
			Length: 30 * in, Width: 18 * in, Depth: 26 * in, Path: "/vault",
			Outlet: layout.Outlet{Wall: layout.Right, Along: 9 * in, Height: 5 * in},
		},
		Pump: layout.Pump{
			Name: "M", Path: "/pumps/0", Blocks: []geom.Box{{Max: v(15.5, 7.5, 9.5)}}, Port: v(15.5, 3.75, 5), Points: geom.Vec3{X: 1},
			Outlet: layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, Size: "2"},
		},
		Pose:  layout.Pose{At: v(0.5, 5.25, 0)},
		Parts: []layout.Laid{{Part: adapter}, {Part: union, Next: layout.Join{Closing: true}}, {Part: bulkhead}},
		Pipes: []layout.Pipe{{Kind: "PVC Sch 40", Size: "2", OD: 2.375 * in, Bore: 2.067 * in}},
	}
}

func bare() *model { return &model{job: &job.Job{}, out: &Result{}} }

// Where the second check does not agree with the first, that is a danger and
// holds cutting and gluing back; where they agree nothing is said.
func TestSecondCheckHoldsBack(t *testing.T) {
	in := straightOut()
	a, findings, faults := layout.Lay(in)
	if len(faults) > 0 {
		t.Fatalf("%+v", faults)
	}
	m := bare()
	if out := m.second(in, a, findings, faults); len(out) > 0 || len(m.out.Findings) > 0 {
		t.Fatalf("the two agree: %+v %+v", out, m.out.Findings)
	}
	if m.out.Second == nil || m.out.Second.Passed() < 40 {
		t.Fatalf("%+v", m.out.Second)
	}

	a.Pieces = slices.Clone(a.Pieces)
	a.Pieces[1].Cut -= unit.Inch
	m = bare()
	out := m.second(in, a, findings, faults)
	if !slices.ContainsFunc(out, func(f trace.Finding) bool {
		return f.Code == verify.CheckCut && f.Severity == trace.Danger && f.Found.SI < f.Limit.SI-0.02
	}) {
		t.Fatalf("a piece an inch short: %+v", out)
	}
	if len(m.dangers(out)) != len(out) || len(m.out.Findings) != len(out) {
		t.Errorf("%d of %d are dangers, %d told", len(m.dangers(out)), len(out), len(m.out.Findings))
	}
	m.withhold(m.dangers(out), 0)
	last := m.out.Findings[len(m.out.Findings)-1]
	if last.Code != FindWithheld || !slices.ContainsFunc(last.Args, func(a trace.Arg) bool { return a.Name == "second" }) {
		t.Errorf("%+v", last)
	}

	// Under a fault it is held back already.
	m = bare()
	if out := m.second(in, a, findings, []trace.Fault{{}}); len(out) > 0 || m.out.Second == nil {
		t.Errorf("%+v", out)
	}
}

// A danger that the second check does not find stands, and is told as doubtful.
func TestSecondCheckUnconfirmed(t *testing.T) {
	in := straightOut()
	a, findings, faults := layout.Lay(in)
	m := bare()
	m.second(in, a, append(findings, trace.Finding{Message: trace.Message{Code: layout.FindReversed, Args: []trace.Arg{trace.Str("part", "V1")}}, Severity: trace.Danger}), faults)
	if len(m.out.Findings) != 1 || m.out.Findings[0].Code != FindUnconfirmed || m.out.Findings[0].Severity != trace.Caution {
		t.Errorf("%+v", m.out.Findings)
	}
}

// The demos: those that can be built pass every check, those that cannot fail
// for what the first check tells too.
func TestSecondCheckOfDemos(t *testing.T) {
	all, some := 0, 0
	for _, name := range demo.Names() {
		book, j := read(t, name)
		r := Solve(book, j)
		if r.Assembly == nil || !r.Assembly.Laid {
			continue
		}
		if r.Second == nil {
			t.Fatalf("%s: no second check", name)
		}
		for _, f := range r.Findings {
			if f.LimitSource == twice || f.Code == FindUnconfirmed {
				t.Errorf("%s: %+v", name, f)
			}
		}
		failed := r.Second.Failed()
		switch {
		case len(failed) == 0:
			all++
		default:
			some++
		}
		if !r.NotToCut && slices.ContainsFunc(failed, func(c verify.Check) bool { return c.Code == verify.CheckWay || c.Code == verify.CheckClosure }) {
			t.Errorf("%s may be cut, and the second check refutes it: %+v", name, failed)
		}
	}
	if all == 0 || some == 0 {
		t.Errorf("%d demos pass, %d fail: want some of each", all, some)
	}
}
