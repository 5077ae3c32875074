package design

import (
	"context"
	"errors"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/catalog"
	"plashet/engine/cut"
	"plashet/engine/geom"
	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/level"
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

// defaultGlue is the temperature of pipe and air when gluing, where the job
// does not say. Common practice, no source.
const defaultGlue unit.Temperature = 15

// glue orders the joints of a laid chain. Its steps are held back, and its
// pieces are not to be cut, while there is a danger on it or a fault in it.
func (m *model) glue(parts []layout.Laid, laid layout.Assembly, dangers []trace.Finding, faulty int) {
	in := m.gluing(parts, laid)
	if m.job.Site.GlueTemperature.IsZero() {
		m.assume("/site/glueTemperature", AssumeGlue, unit.Of(in.Temperature, unit.KindTemperature), practice)
	}
	in.Unfit = len(dangers) > 0 || faulty > 0
	plan, findings, faults := glue.Order(in)
	m.out.Glue = &plan
	m.out.Findings = append(m.out.Findings, findings...)
	m.out.Faults = append(m.out.Faults, faults...)
	m.out.Assumptions = append(m.out.Assumptions, plan.Assumptions...)
	m.out.Figures = append(m.out.Figures, plan.Figures...)
	if laid.Laid && (in.Unfit || plan.Withheld) {
		m.out.NotToCut = true
		m.withhold(append(dangers, m.dangers(findings)...), faulty)
	}
}

// gluing tells under which conditions a chain is glued.
func (m *model) gluing(parts []layout.Laid, laid layout.Assembly) glue.Input {
	site := &m.job.Site
	fromPump, _ := m.job.Assembly.Glued()
	in := glue.Input{
		Parts: parts, PortMade: fromPump > 0, Assembly: laid, Book: m.book,
		Temperature: site.GlueTemperature.Or(defaultGlue), Damp: site.Damp, Frost: site.Frost, Path: "/assembly",
	}
	if d := m.out.Delivery; d != nil {
		in.Pressure = m.water.PressureOf(d.Head)
	}
	return in
}

// MarkOf gives the mark of a part of the assembly: its own, or one made from
// its place in the chain, counted from 0.
func MarkOf(parts []job.Laid, i int) string {
	if parts[i].Mark != "" {
		return parts[i].Mark
	}
	return "F" + strconv.Itoa(i)
}

// chain fills the parts of the assembly, and of the assembly's kind the pipe
// of every size that goes into one of their ends.
func (m *model) chain(in *layout.Input) bool {
	a := &m.job.Assembly
	before, beforeSize := in.Pump.Outlet, in.Pump.Outlet.Size
	fromPump, toWall := a.Glued()
	in.Start = joinOf(&job.Laid{Next: a.Start, NextBy: a.StartBy, Closes: a.StartCloses}, a)
	in.Start.Made = fromPump > 0
	for i := range a.Parts {
		l, path := &a.Parts[i], at("/assembly/parts", i)
		size, sizePath := l.Size, path+"/size"
		if size == "" {
			size, sizePath = a.Pipe.Size, "/assembly/pipe"
		}
		if l.Fitting == "" {
			return false // told in reading
		}
		if l.Fitting == hoseName {
			p, ok := m.hosePart(i, size)
			if !ok || !m.lend(in, size, sizePath) {
				return false
			}
			before, beforeSize = p.Out, p.Size
			in.Parts = append(in.Parts, layout.Laid{Part: p, Roll: l.Roll.SI, Next: layout.Join{Made: i < fromPump-1 || i >= len(a.Parts)-toWall}})
			continue
		}
		f, err := m.book.Fitting(l.Fitting, size, m.measured)
		if err != nil {
			m.refuse(path+"/fitting", err)
			return false
		}
		p, ok := layout.PartOf(f, MarkOf(a.Parts, i))
		if !ok {
			m.fault(path+"/fitting", CodeChain, trace.Str("name", l.Fitting))
			return false
		}
		p = p.Facing(before, beforeSize)
		if out := l.Spigot == "wall"; l.Spigot != "" && (p.In.Kind == layout.Spigot) != (p.Out.Kind == layout.Spigot) && out == (p.In.Kind == layout.Spigot) {
			p = p.Swapped()
		}
		before, beforeSize = p.Out, p.Size
		laid := layout.Laid{Part: p, Roll: l.Roll.SI, Reverse: l.Reverse, Next: joinOf(l, a)}
		// Made is what lies between two glued parts, and beyond the last at the wall.
		laid.Next.Made = i < fromPump-1 || i >= len(a.Parts)-toWall
		in.Parts = append(in.Parts, laid)
		for _, e := range f.Ends {
			if (e.Kind == catalog.Socket || e.Kind == catalog.Spigot) && !m.lend(in, e.Size, sizePath) {
				return false
			}
		}
	}
	seatHoses(in)
	return true
}

// lend adds the assembly's pipe of a size, once.
func (m *model) lend(in *layout.Input, size, path string) bool {
	pipe, err := m.pipe(job.PipeName{Kind: m.job.Assembly.Pipe.Kind, Size: size})
	if err != nil {
		m.refuse(path, err)
		return false
	}
	if p := layout.PipeOf(pipe); !slices.Contains(in.Pipes, p) {
		in.Pipes = append(in.Pipes, p)
	}
	return true
}

// joinOf gives the joint behind a part.
func joinOf(l *job.Laid, a *job.Assembly) layout.Join {
	j := layout.Join{By: joinBy(l.NextBy), Distance: l.Next.SI, Closing: l.Closes}
	if l.NextBy == "" && !l.Next.IsZero() {
		j.By = layout.Centres
	}
	if l.Closes && !a.Closing.Gap.IsZero() {
		j.Measured = layout.Is(a.Closing.Gap.SI)
	}
	return j
}

func joinBy(word string) layout.By {
	switch word {
	case "centres":
		return layout.Centres
	case "faces":
		return layout.Faces
	case "stops":
		return layout.Stops
	case "pipe":
		return layout.PipeLength
	}
	return layout.Touching
}

// beyond tells of the water in the runs and in the boxes at the top. Where one
// of the runs could not be worked out nothing of it is known.
func (m *model) beyond() layout.Beyond {
	b, d := layout.Beyond{Frost: m.job.Site.Frost}, m.out.Delivery
	if d == nil || len(d.Runs) < len(m.job.Runs) {
		return b
	}
	started := false
	for _, r := range d.Runs {
		i := slices.IndexFunc(m.job.Runs, func(run job.Run) bool { return run.Name == r.Name })
		if i >= 0 && m.job.Runs[i].From == "pump" && !started {
			started, b.First = true, layout.Stretch{Length: r.Length, Volume: r.Volume}
			continue
		}
		b.Volume.Value += r.Volume
	}
	b.Volume.Given = true
	quiet := m.quiet
	m.quiet = true // what is wrong with a store was told with the levels
	for _, s := range m.stores(d) {
		if s.Kind == level.KindBox {
			b.Boxes += s.Running - s.HeldOpen
		}
	}
	m.quiet = quiet
	return b
}

// cutting plans the pieces of the assembly and those typed in, pipe by pipe.
func (m *model) cutting(a *layout.Assembly) {
	type lot struct {
		name     job.PipeName
		pieces   []cut.Piece
		notToCut bool
	}
	var lots []lot
	add := func(n job.PipeName, p cut.Piece, notToCut bool) {
		i := slices.IndexFunc(lots, func(l lot) bool { return l.name == n })
		if i < 0 {
			i = len(lots)
			lots = append(lots, lot{name: n})
		}
		lots[i].pieces = append(lots[i].pieces, p)
		lots[i].notToCut = lots[i].notToCut || notToCut
	}
	if a != nil && a.Laid {
		for _, p := range a.Pieces {
			if p.Cut > 0 && !p.Made {
				add(m.named(job.PipeName{Kind: p.Pipe.Kind, Size: p.Pipe.Size}), cut.Piece{Length: p.Cut, Mark: p.Mark, Count: 1}, m.out.NotToCut)
			}
		}
	}
	for _, p := range m.job.Stock.Pieces {
		add(m.named(p.Pipe), cut.Piece{Length: p.Length.SI, Mark: p.Mark, Count: max(1, p.Count)}, false)
	}
	if m.job.Stock.Kerf.IsZero() && len(lots) > 0 {
		m.assume("/stock/kerf", AssumeKerf, unit.Of(m.job.Stock.Kerf.SI, unit.KindTape), leftEmpty)
	}
	for _, l := range lots {
		m.plan(l.name, l.pieces, l.notToCut)
	}
}

// cutGrid gives the step to which lengths are rounded for a cutting plan, on the
// safe side.
func (m *model) cutGrid() unit.Length {
	if m.job.System().Is(unit.Metric) {
		return unit.Millimetre / 2
	}
	return unit.Inch / 64
}

func (m *model) plan(name job.PipeName, pieces []cut.Piece, notToCut bool) {
	s := &m.job.Stock
	p := cut.Problem{Pieces: pieces, Kerf: s.Kerf.SI, Keep: s.Keep.SI, Grid: m.cutGrid(), Round: true}
	for _, k := range s.Sticks {
		if m.named(k.Pipe) == name {
			stick := cut.Stick{Length: k.Length.SI, Limit: k.Count}
			if price, err := k.Price.Amount(m.job.Style()); err == nil && !k.Price.IsZero() {
				digits, _ := unit.MinorUnit(price.Currency)
				stick.Cost = price.Amount.Shift(int32(digits)).Round(0).IntPart()
			}
			p.Sticks = append(p.Sticks, stick)
		}
	}
	for _, o := range s.Offcuts {
		if m.named(o.Pipe) == name {
			p.Offcuts = append(p.Offcuts, cut.Offcut{Length: o.Length.SI, Count: max(1, o.Count)})
		}
	}
	label := name.Kind + " " + name.Size
	if len(p.Sticks)+len(p.Offcuts) == 0 {
		m.fault("/stock/sticks", CodeNoSticks, trace.Str("pipe", label))
		return
	}
	plan, err := cut.Solve(context.Background(), p)
	if err != nil {
		var short *cut.Error
		if !errors.As(err, &short) {
			m.refuse("/stock", err)
			return
		}
		for _, f := range short.Faults {
			f.Path = "/stock" + f.Path
			m.out.Faults = append(m.out.Faults, f)
		}
		return
	}
	if !plan.Proof.Proven() {
		m.find(trace.Finding{Message: trace.Message{Code: FindUnproven, Args: []trace.Arg{trace.Str("pipe", label)}}, Path: "/stock", Severity: trace.Info})
	}
	m.out.Cutting = append(m.out.Cutting, Cutting{Name: name, Pipe: label, Pieces: pieces, Plan: plan, NotToCut: notToCut})
}
