package arrange

import (
	"math"
	"slices"
	"strings"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/engine/verify"
)

// held is what is fixed of a part that is glued already.
type held struct {
	laid   layout.Laid
	side   geom.Vec3 // where its roll points, as it was glued
	joint  bool      // the joint before it is made
	before layout.Join
	gap    float64 // of that joint, between the hub faces
	port   bool    // on the pump's side: it turns with the pump
}

// glued are the two rows that are made already.
type glued struct {
	port, wall []*piece
	pre        []geom.Vec3 // flow into each turn on the pump's side, the pump as it was glued
	from       geom.Vec3   // flow out of the last of the pump's side
	into       geom.Vec3   // flow into the first on the wall's side
	post       []geom.Vec3 // flow out of each turn there
	union      *piece
	check      *piece
}

func (g *glued) any() bool { return len(g.port)+len(g.wall) > 0 }

// made tells that the joint before a piece is made already.
func (p *piece) made() bool { return p.held != nil && p.held.joint }

// glue works out how what is glued already runs.
func (s *search) glue() []trace.Fault {
	in, g := &s.in, &s.glued
	if unmeasured(in.Glued.FromPort) || unmeasured(in.Glued.FromWall) {
		return []trace.Fault{{Path: in.Path, Message: trace.Message{Code: FaultGluedClosing}}}
	}
	if len(in.Glued.FromPort) > 0 {
		if in.Glued.Standing < 0 || in.Glued.Standing >= len(in.Standings) {
			return []trace.Fault{{Path: in.Path, Message: trace.Message{Code: FaultGluedPump}}}
		}
		f, faults := s.row(in.Standings[in.Glued.Standing].Pump, in.Glued.Turn, in.Glued.Start, in.Glued.FromPort)
		if len(faults) > 0 {
			return faults
		}
		g.port = heldOf(&f, in.Glued.FromPort, in.Glued.Start, true)
		for i, p := range g.port {
			if p.turns {
				g.pre = append(g.pre, f.Places[i].InDir)
			}
			g.from = f.Places[i].OutDir
		}
	}
	g.into = s.hole.Axis
	if list := in.Glued.FromWall; len(list) > 0 {
		turns := slices.ContainsFunc(list, func(l layout.Laid) bool { t, _ := l.Kind.Turn(); return t != 0 })
		switch d := in.Glued.Into; {
		case d.Norm() > 0.5:
			g.into = d.Unit()
		case turns:
			return []trace.Fault{{Path: in.Path, Message: trace.Message{Code: FaultGluedInto}}}
		}
		f, faults := s.row(layout.Pump{Blocks: []geom.Box{geom.BoxOf(geom.Vec3{}, geom.Vec3{X: 1, Y: 1, Z: 1})}, Points: g.into, Outlet: counter(list[0])}, 0, layout.Join{}, list)
		if len(faults) > 0 {
			return faults
		}
		g.wall = heldOf(&f, list, layout.Join{}, false)
		g.wall[0].held.joint = false
		for i, p := range g.wall {
			if p.turns {
				g.post = append(g.post, f.Places[i].OutDir)
			}
		}
		const square = 0.9999
		if f.Places[len(list)-1].OutDir.Dot(s.hole.Axis) < square {
			return []trace.Fault{{Path: in.Path, Message: trace.Message{Code: FaultGluedWall}}}
		}
	}
	for _, p := range append(g.port[:len(g.port):len(g.port)], g.wall...) {
		if p.opens && g.union == nil {
			g.union = p
		}
		if p.part.Kind.IsCheck() {
			g.check = p
		}
	}
	return nil
}

// unmeasured tells that a glued row has a piece whose length is still to be
// worked out.
func unmeasured(l []layout.Laid) bool {
	for i := range l[:max(0, len(l)-1)] {
		if l[i].Next.Closing && !l[i].Next.Measured.Given {
			return true
		}
	}
	return false
}

// row places parts alone.
func (s *search) row(pump layout.Pump, turned unit.Angle, start layout.Join, parts []layout.Laid) (layout.Frame, []trace.Fault) {
	in := layout.Input{Pump: pump, Pose: layout.Pose{Turn: turned}, Start: start, Parts: parts, Settings: s.in.Settings, Path: s.in.Path}
	for _, p := range s.in.Pipes {
		in.Pipes = append(in.Pipes, p.Pipe)
	}
	return layout.FrameOf(in)
}

// counter gives an end that goes together with a part's inlet.
func counter(l layout.Laid) layout.End {
	e := l.In
	e.Size = size(l.In, l.Part)
	switch l.In.Kind {
	case layout.Spigot:
		e.Kind = layout.Socket
	case layout.MaleThread:
		e.Kind = layout.FemaleThread
	case layout.FemaleThread:
		e.Kind = layout.MaleThread
	}
	return e
}

func heldOf(f *layout.Frame, parts []layout.Laid, before layout.Join, port bool) []*piece {
	var out []*piece
	for i, l := range parts {
		p := pieceOf(-1, l.Part)
		p.held = &held{laid: l, side: f.Places[i].Side, joint: true, before: before, port: port}
		if k := &f.Links[i]; k.Piped {
			p.held.gap = math.Max(0, float64(k.Span-k.Least))
		}
		out, before = append(out, p), l.Next
	}
	return out
}

// outlet is the end that the search goes on from, of a pump in a standing.
func (in *Input) outlet(standing int) layout.End {
	if n := len(in.Glued.FromPort); n > 0 {
		l := in.Glued.FromPort[n-1]
		e := l.Out
		e.Size = size(l.Out, l.Part)
		return e
	}
	return in.Standings[standing].Pump.Outlet
}

// hold puts what is glued into the kits of a standing.
func (s *search) hold(standing int, kits []kit) []kit {
	g := &s.glued
	if len(g.pre) > 0 && standing != s.in.Glued.Standing {
		return nil // how the elbows stand with the pump in another attitude is not known
	}
	for i := range kits {
		k := &kits[i]
		for j := range k.starts {
			k.starts[j] = append(g.port[:len(g.port):len(g.port)], k.starts[j]...)
		}
		if len(g.wall) > 0 {
			k.ends, k.tail = nil, g.wall
			if size(g.wall[0].part.In, g.wall[0].part) != k.pipe.Size {
				k.starts = nil
			}
		}
	}
	return kits
}

// needs tells that a check valve, or a union, is still to be put in.
func (s *search) needs() (check, union bool) {
	return s.in.Rules.Check && s.glued.check == nil, s.in.Rules.Union && s.glued.union == nil
}

// headOf gives what a piece takes of head: of a glued one what its like among
// the fittings takes, nothing where there is none.
func (s *search) headOf(p *piece) float64 {
	if p.fitting >= 0 {
		return float64(s.in.Fittings[p.fitting].Head)
	}
	for _, f := range s.in.Fittings {
		if f.Part.Kind == p.part.Kind && f.Part.Size == p.part.Size {
			return float64(f.Head)
		}
	}
	return 0
}

// roll gives how a glued part without a turn is rolled once the pump is turned.
func (s *search) roll(p *piece, in geom.Vec3, turned unit.Angle) unit.Angle {
	side := p.held.side
	if p.held.port {
		side = side.RotateAbout(geom.Vec3{Z: 1}, turned-s.in.Glued.Turn)
	}
	if side = side.Sub(in.Scale(in.Dot(side))); side.Norm() < 0.5 {
		return p.held.laid.Roll
	}
	return layout.RollOf(in, side.Unit())
}

// turnedPre gives the flow into each glued turn on the pump's side once it is
// turned, and the flow that the search goes on from.
func (s *search) turnedPre(port geom.Vec3, turned unit.Angle) (pre []geom.Vec3, from geom.Vec3) {
	g := &s.glued
	if len(g.pre) == 0 {
		return nil, port
	}
	up, by := geom.Vec3{Z: 1}, turned-s.in.Glued.Turn
	for _, d := range g.pre {
		pre = append(pre, square(d.RotateAbout(up, by)))
	}
	return pre, g.from.RotateAbout(up, by)
}

// drainsWith tells that the check valve comes before the union, whichever of
// them is glued.
func drainsWith(parts []*piece) bool {
	check, union := -1, -1
	for i, p := range parts {
		if p.part.Kind.IsCheck() && check < 0 {
			check = i
		}
		if p.opens && union < 0 {
			union = i
		}
	}
	return check >= 0 && union >= 0 && check < union
}

// row is where something is glued already.
type row uint8

const (
	loose  row = iota
	atPump     // it moves with the pump
	atWall     // it stands where it is
)

func rowOf(p *piece, glued bool) row {
	switch {
	case !glued:
		return loose
	case p.held.port:
		return atPump
	}
	return atWall
}

// together tells that two bodies stand to each other as they were glued: the
// room between them is as it is, and no layout can be refused for it.
func together(p, q *body) bool {
	switch p.glued {
	case loose:
		return false
	case atPump:
		return q.glued == atPump || q.pump()
	}
	return q.glued == atWall || q.obstacle()
}

// past tells that a finding or a check is about parts glued already and nothing
// else, so that it is not the layout's.
func (s *search) past(code string, args []trace.Arg) bool {
	var marks []string
	var against string
	for _, a := range args {
		switch a.Name {
		case "part", "parts":
			marks = append(marks, strings.Split(a.Text, ", ")...)
		case "other", "against":
			against = a.Text
		}
	}
	all := func(glued []layout.Laid) bool {
		return len(marks) > 0 && !slices.ContainsFunc(marks, func(m string) bool {
			return !slices.ContainsFunc(glued, func(l layout.Laid) bool { return l.Mark == m && m != "" })
		})
	}
	wall, port := all(s.in.Glued.FromWall), all(s.in.Glued.FromPort)
	among := func(glued []layout.Laid) bool {
		return slices.ContainsFunc(glued, func(l layout.Laid) bool { return l.Mark == against && against != "" })
	}
	fixed := func(name string) bool { // a wall or an obstacle
		return name == "" || slices.Contains([]layout.Wall{layout.Left, layout.Right, layout.Front, layout.Back, layout.Round, layout.Floor, layout.Lid}, layout.Wall(name)) ||
			slices.ContainsFunc(s.in.Vault.Obstacles, func(o layout.Obstacle) bool { return o.Name == name })
	}
	switch code {
	case layout.FindWall, layout.FindObstacle, verify.CheckWall, verify.CheckObstacle:
		return wall
	case layout.FindPump, verify.CheckPumpClear:
		return port
	case layout.FindParts, verify.CheckParts:
		return wall && among(s.in.Glued.FromWall) || port && among(s.in.Glued.FromPort)
	case layout.FindHand, verify.CheckHand:
		return wall && (fixed(against) || among(s.in.Glued.FromWall))
	}
	return false
}
