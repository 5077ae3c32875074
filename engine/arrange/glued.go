package arrange

import (
	"math"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
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
		turns := slices.ContainsFunc(list, func(l layout.Laid) bool { t, _ := l.Turn(); return t != 0 })
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
