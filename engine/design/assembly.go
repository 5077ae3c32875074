package design

import (
	"context"
	"errors"
	"strconv"

	"plashet/engine/cut"
	"plashet/engine/geom"
	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

func vec(p job.XYZ) geom.Vec3 {
	return geom.Vec3{X: float64(p.X.SI), Y: float64(p.Y.SI), Z: float64(p.Z.SI)}
}

// looks gives the direction of a port's word, before the pump is turned.
var looks = map[string]geom.Vec3{
	"up": {Z: 1}, "left": {X: -1}, "right": {X: 1}, "front": {Y: -1}, "back": {Y: 1},
}

// lay lays the assembly of the job; nil when there is none.
func (m *model) lay(pumpIndex int) *layout.Assembly {
	a, v := &m.job.Assembly, &m.job.Vault
	if len(a.Parts) == 0 {
		return nil
	}
	in := layout.Input{Path: "/assembly", Settings: layout.Settings{Units: m.out.Units}}
	in.Vault = layout.Vault{
		Round: v.Shape == "round", Length: v.Length.SI, Width: v.Width.SI, Depth: v.Depth.SI,
		FloorLength: v.FloorLength.SI, FloorWidth: v.FloorWidth.SI, Path: "/vault",
		Outlet: layout.Outlet{Wall: layout.Wall(v.Outlet.Wall), Along: v.Outlet.Along.SI, Height: v.Outlet.Height.SI},
	}
	for _, o := range v.Obstacles {
		in.Vault.Obstacles = append(in.Vault.Obstacles, layout.Obstacle{Name: o.Name, Box: geom.BoxOf(vec(o.From), vec(o.To))})
	}
	if !m.pumpBody(pumpIndex, &in) || !m.chain(&in) {
		return nil
	}
	in.Pose = layout.Pose{At: vec(a.At), Turn: a.Turn.SI}
	if !a.MakeUp.IsZero() {
		in.Settings.MakeUp = layout.Is(a.MakeUp.SI)
	}
	if !a.Closing.MakeUp.IsZero() {
		in.Settings.ClosingMakeUp = layout.Is(a.Closing.MakeUp.SI)
	}
	in.Beyond = m.beyond()
	out, findings, faults := layout.Lay(in)
	m.out.Assumptions = append(m.out.Assumptions, out.Assumptions...)
	m.out.Findings = append(m.out.Findings, findings...)
	m.out.Faults = append(m.out.Faults, faults...)
	m.glue(in.Parts, out)
	return &out
}

// defaultGlue is the temperature of pipe and air when gluing, where the job
// does not say. Common practice, no source.
const defaultGlue unit.Temperature = 15

// glue orders the joints of a laid chain.
func (m *model) glue(parts []layout.Laid, laid layout.Assembly) {
	site := &m.job.Site
	in := glue.Input{Parts: parts, Assembly: laid, Book: m.book, Temperature: site.GlueTemperature.Or(defaultGlue), Damp: site.Damp, Frost: site.Frost, Path: "/assembly"}
	if site.GlueTemperature.IsZero() {
		m.assume("/site/glueTemperature", AssumeGlue, unit.Of(in.Temperature, unit.KindTemperature), practice)
	}
	if d := m.out.Delivery; d != nil {
		in.Pressure = m.water.PressureOf(d.Head)
	}
	plan, findings, faults := glue.Order(in)
	m.out.Glue = &plan
	m.out.Findings = append(m.out.Findings, findings...)
	m.out.Faults = append(m.out.Faults, faults...)
	m.out.Assumptions = append(m.out.Assumptions, plan.Assumptions...)
	m.out.Figures = append(m.out.Figures, plan.Figures...)
}

// pumpBody fills the pump in the attitude that the assembly names.
func (m *model) pumpBody(pumpIndex int, in *layout.Input) bool {
	pump := &m.job.Pumps[pumpIndex]
	for i := range pump.Attitudes {
		at := &pump.Attitudes[i]
		if at.Name != m.job.Assembly.Attitude && m.job.Assembly.Attitude != "" {
			continue
		}
		end, ok := layout.Port(pump.Port.Thread, pump.Port.Size, layout.Measure{})
		if !ok {
			m.fault("/pumps", CodePort, trace.Str("name", pump.Name))
			return false
		}
		in.Pump = layout.Pump{
			Name: pump.Name, Port: vec(at.Port), Points: looks[at.Points], Outlet: end, Path: "/pumps",
			Blocks: []geom.Box{geom.BoxOf(geom.Vec3{}, geom.Vec3{X: float64(at.Length.SI), Y: float64(at.Width.SI), Z: float64(at.Height.SI)})},
		}
		return true
	}
	m.fault("/assembly/attitude", CodeAttitude, trace.Str("name", pump.Name))
	return false
}

// MarkOf gives the mark of a part of the assembly: its own, or one made from
// its place in the chain, counted from 0.
func MarkOf(parts []job.Laid, i int) string {
	if parts[i].Mark != "" {
		return parts[i].Mark
	}
	return "F" + strconv.Itoa(i)
}

var byWord = map[string]layout.By{"": layout.Touching, "centres": layout.Centres, "faces": layout.Faces, "stops": layout.Stops, "pipe": layout.PipeLength}

// chain fills the parts and the pipes of the assembly.
func (m *model) chain(in *layout.Input) bool {
	a := &m.job.Assembly
	sizes := map[string]bool{}
	before, beforeSize := in.Pump.Outlet, in.Pump.Outlet.Size
	for i := range a.Parts {
		l, path := &a.Parts[i], at("/assembly/parts", i)
		size := l.Size
		if size == "" {
			size = a.Pipe.Size
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
		before, beforeSize = p.Out, p.Size
		laid := layout.Laid{Part: p, Roll: l.Roll.SI, Reverse: l.Reverse, Next: layout.Join{By: byWord[l.NextBy], Distance: l.Next.SI, Closing: l.Closes}}
		if l.NextBy == "" && !l.Next.IsZero() {
			laid.Next.By = layout.Centres
		}
		if l.Closes && !a.Closing.Gap.IsZero() {
			laid.Next.Measured = layout.Is(a.Closing.Gap.SI)
		}
		in.Parts = append(in.Parts, laid)
		sizes[size] = true
		if len(sizes) > len(in.Pipes) {
			pipe, err := m.book.FindPipe(a.Pipe.Kind, size)
			if err != nil {
				m.refuse("/assembly/pipe", err)
				return false
			}
			in.Pipes = append(in.Pipes, layout.PipeOf(pipe))
		}
	}
	return true
}

// beyond tells of the water in the runs that stands above the vault.
func (m *model) beyond() layout.Beyond {
	b := layout.Beyond{Frost: m.job.Site.Frost}
	if m.out.Delivery != nil {
		var sum unit.Volume
		for _, r := range m.out.Delivery.Runs {
			sum += r.Volume
		}
		b.Volume = layout.Is(sum)
	}
	return b
}

// cutting plans the pieces of the assembly and those typed in, pipe by pipe.
func (m *model) cutting(a *layout.Assembly) {
	type lot struct {
		name   job.PipeName
		pieces []cut.Piece
	}
	var lots []lot
	add := func(n job.PipeName, p cut.Piece) {
		for i := range lots {
			if lots[i].name == n {
				lots[i].pieces = append(lots[i].pieces, p)
				return
			}
		}
		lots = append(lots, lot{n, []cut.Piece{p}})
	}
	if a != nil && a.Laid {
		for _, p := range a.Pieces {
			if p.Cut > 0 {
				add(m.named(m.job.Assembly.Pipe), cut.Piece{Length: p.Cut, Mark: p.Mark, Count: 1})
			}
		}
	}
	for _, p := range m.job.Stock.Pieces {
		add(m.named(p.Pipe), cut.Piece{Length: p.Length.SI, Mark: p.Mark, Count: max(1, p.Count)})
	}
	for _, l := range lots {
		m.plan(l.name, l.pieces)
	}
}

func (m *model) plan(name job.PipeName, pieces []cut.Piece) {
	s := &m.job.Stock
	p := cut.Problem{Pieces: pieces, Kerf: s.Kerf.SI, Keep: s.Keep.SI, Grid: unit.Inch / 64, Round: true}
	if m.out.Units == unit.Metric {
		p.Grid = unit.Millimetre / 2
	}
	for _, k := range s.Sticks {
		if m.named(k.Pipe) == name {
			stick := cut.Stick{Length: k.Length.SI, Limit: k.Count}
			if price, err := k.Price.Amount(m.job.Site.Currency); err == nil && !k.Price.IsZero() {
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
		m.out.Faults = append(m.out.Faults, short.Faults...)
		return
	}
	if !plan.Proof.Proven() {
		m.find(trace.Finding{Message: trace.Message{Code: FindUnproven, Args: []trace.Arg{trace.Str("pipe", label)}}, Path: "/stock", Severity: trace.Info})
	}
	m.out.Cutting = append(m.out.Cutting, Cutting{Name: name, Pipe: label, Pieces: pieces, Plan: plan})
}
