package design

import (
	"strings"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Codes of the assembly. What carries "where" besides is told in codes.go.
const (
	// FindWithheld: the assembly cannot be built as it is laid, so that no step
	// of gluing is told and its pieces are not to be cut. Each argument stands
	// only where that danger does. Args: off (how far the chain misses the
	// hole), turned (its last leg from the hole's axis), through (marks standing
	// in wall, floor or lid), inside (marks standing in the pump, an obstacle or
	// each other), pump (flag: the pump stands in something), reversed and
	// attitude (marks of valves), union (flag: there is none), blocked (mark of
	// the union by which the pump does not come out), captive (flag: nothing
	// but threads), second (flag: the second check does not agree), others (codes of further dangers), faults (count).
	FindWithheld = "design.glue.withheld"
	// FindDiffers: the run that starts at the pump and the assembly are one and
	// the same pipe, and differ. Each pair only where it differs. Args: run,
	// runPipe, pipe, runValve, valve, valveOnly (mark of a valve that the run
	// lacks), runValveOnly (a valve that the assembly lacks), runElbows,
	// elbows (of 90 degrees), runFortyFives, fortyFives (of 45), unionOnly
	// (mark), runUnionOnly (flag).
	FindDiffers = "design.assembly.differs"
	// CodePortSize: the port's size is none of its thread's. Args: name, size,
	// thread, dn and inch (the size as a DN, and what that is in inches; where
	// it is one), pipe and usual (the size as a pipe's, and the thread on its
	// fittings; where it is one).
	CodePortSize = "design.pump.port.size"

	// AssumeAttitude: the first attitude of the pump. Args: name, attitude.
	AssumeAttitude = "assume.assembly.attitude"
	// AssumePlace: the pump stands in the corner left, front. No args.
	AssumePlace = "assume.assembly.at"
	// AssumeTurn: the pump is not turned. Args: value.
	AssumeTurn = "assume.assembly.turn"
	// AssumeRolls: elbows without a roll point up, or to the back wall. Args: parts (marks).
	AssumeRolls = "assume.assembly.roll"
	// AssumeKerf: the saw takes nothing away. Args: value.
	AssumeKerf = "assume.cut.kerf"
)

// leftEmpty is the source of what counts as nothing where nothing is typed.
var leftEmpty = trace.Source{Title: "left empty in the job", Basis: trace.BasisGuess}

func vec(p job.XYZ) geom.Vec3 {
	return geom.Vec3{X: float64(p.X.SI), Y: float64(p.Y.SI), Z: float64(p.Z.SI)}
}

// vault gives the inside of the vault with what stands in it.
func (m *model) vault() layout.Vault {
	v := &m.job.Vault
	out := layout.Vault{
		Round: v.Shape == "round", Length: v.Length.SI, Width: v.Width.SI, Depth: v.Depth.SI,
		FloorLength: v.FloorLength.SI, FloorWidth: v.FloorWidth.SI, Path: "/vault",
		Outlet: layout.Outlet{Wall: layout.Wall(v.Outlet.Wall), Along: v.Outlet.Along.SI, Height: v.Outlet.Height.SI},
	}
	out.Opening = m.hatch()
	for _, o := range v.Obstacles {
		out.Obstacles = append(out.Obstacles, layout.Obstacle{Name: o.Name, Box: geom.BoxOf(vec(o.From), vec(o.To))})
	}
	return out
}

// lay lays the assembly of the job; nil when there is none.
func (m *model) lay(pumpIndex int) *layout.Assembly {
	a := &m.job.Assembly
	if len(a.Parts) == 0 {
		return nil
	}
	told := len(m.out.Faults)
	in := layout.Input{Path: "/assembly", Settings: m.settings()}
	unset := len(m.out.Faults) - told // settings that could not be read
	in.Vault = m.vault()
	if !m.pumpBody(pumpIndex, &in) || !m.chain(&in) {
		return nil
	}
	m.pose(&in)
	in.Beyond = m.beyond()
	out, findings, faults := layout.Lay(in)
	m.unturned(findings)
	m.out.Assumptions = append(m.out.Assumptions, out.Assumptions...)
	m.out.Findings = append(m.out.Findings, findings...)
	m.out.Faults = append(m.out.Faults, faults...)
	m.agree(&in)
	findings = append(findings, m.second(in, out, findings, faults)...)
	findings = append(findings, m.kept(pumpIndex, &in, &out, m.dangers(findings), faults)...)
	m.laidFrom = &in
	m.glue(in.Parts, out, m.dangers(findings), len(faults)+m.faulty()+unset)
	return &out
}

// pose says where the pump stands.
func (m *model) pose(in *layout.Input) {
	a := &m.job.Assembly
	in.Pose = layout.Pose{At: vec(a.At), Turn: a.Turn.SI}
	if a.At.X.IsZero() && a.At.Y.IsZero() && a.At.Z.IsZero() {
		m.assume("/assembly/at", AssumePlace, unit.Value{}, leftEmpty)
	}
	if a.Turn.IsZero() {
		m.assume("/assembly/turn", AssumeTurn, unit.Of(a.Turn.SI, unit.KindAngle), leftEmpty)
	}
	var open []string
	for i, l := range in.Parts {
		if turn, _ := l.Turn(); turn != 0 && a.Parts[i].Roll.IsZero() {
			open = append(open, l.Mark)
		}
	}
	if len(open) > 0 {
		m.assume("/assembly/parts", AssumeRolls, unit.Value{}, leftEmpty, trace.Str("parts", strings.Join(open, ", ")))
	}
}

// unturned tells under a valve that points against the flow that the flow
// worked out is not the one there is.
func (m *model) unturned(findings []trace.Finding) {
	for i := range findings {
		if f := &findings[i]; f.Code == layout.FindReversed && m.out.Delivery != nil && m.out.Delivery.Flow > 0 {
			f.Args = append(f.Args, trace.Arg{Name: "flow", Value: unit.Bounded(m.out.Delivery.Flow, unit.KindFlow, m.out.Delivery.Beyond)})
		}
	}
}
