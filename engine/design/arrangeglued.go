package design

import (
	"slices"

	"plashet/engine/arrange"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// gluedAlready fills what is made already, from the parts of the job's assembly.
func (m *model) gluedAlready(a *Arranging) {
	as := &m.job.Assembly
	fromPump, toWall := as.Glued()
	if fromPump+toWall == 0 {
		return
	}
	stood := 0
	if as.Attitude != "" && fromPump > 0 {
		stood = slices.Index(a.Attitudes, as.Attitude) // -1: told by the search
	}
	in := layout.Input{Path: "/assembly", Pump: a.Input.Standings[max(0, stood)].Pump, Pose: layout.Pose{Turn: as.Turn.SI}}
	if !m.chain(&in) {
		return
	}
	a.Input.Glued = arrange.Glued{
		FromPort: in.Parts[:fromPump:fromPump], FromWall: in.Parts[len(in.Parts)-toWall:],
		Start: in.Start, Standing: stood, Turn: in.Pose.Turn,
	}
	for _, p := range in.Pipes {
		if !slices.ContainsFunc(a.Input.Pipes, func(q arrange.Pipe) bool { return q.Pipe == p }) {
			a.Input.Pipes = append(a.Input.Pipes, arrange.Pipe{Pipe: p, AtHand: -1})
		}
	}
	m.intoGlued(a, in, toWall)
	for i, p := range in.Parts {
		// What is glued of a union at the end of a row is one half of it; its other half may be new.
		if k := len(in.Parts) - toWall; p.Kind == layout.Union && (i == k || i == fromPump-1) {
			m.remark(at("/assembly/parts", i), trace.Caution, trace.Message{Code: FindGluedUnion, Args: []trace.Arg{trace.Str("part", p.Mark)}})
		}
	}
}

// intoGlued tells which way the water runs into what is glued at the wall: as
// the job says, or as the chain runs from the pump that it was glued to.
func (m *model) intoGlued(a *Arranging, in layout.Input, toWall int) {
	list := a.Input.Glued.FromWall
	if !slices.ContainsFunc(list, func(l layout.Laid) bool { t, _ := l.Turn(); return t != 0 }) {
		return // straight out through the hole
	}
	if d := way(m.job.Assembly.Search.Into); d != (geom.Vec3{}) {
		a.Input.Glued.Into = d
		return
	}
	for _, k := range m.job.Assembly.Kept.Inputs {
		if k.Path == "/pump/attitude/points" { // of the pump that it was kept with
			in.Pump.Points = way(k.Value)
		}
	}
	hole, _ := a.Input.Vault.Hole()
	const square = 0.9999
	f, faults := layout.FrameOf(in)
	if last := len(in.Parts) - 1; len(faults) > 0 || f.Places[last].OutDir.Dot(hole.Axis) < square {
		return // it cannot have been glued to a pump that stands like this: the search asks
	}
	first := &f.Places[len(in.Parts)-toWall]
	a.Input.Glued.Into = first.InDir
	m.assume("/assembly/search/into", AssumeGluedInto, unit.Value{}, leftEmpty, trace.Str("part", first.Mark), trace.Str("way", wayWord(first.InDir)))
}

// wayWord gives the job's word for a direction; of one between the axes that of
// the axis nearest to it.
func wayWord(d geom.Vec3) string {
	words := []string{"up", "down", "left", "right", "front", "back"}
	return slices.MaxFunc(words, func(a, b string) int {
		if p, q := way(a).Dot(d), way(b).Dot(d); p != q {
			if p < q {
				return -1
			}
			return 1
		}
		return 0
	})
}

// gluedPart gives how a part that is glued already stands in the job: a piece
// that was measured in place is as long as it was made.
func gluedPart(l job.Laid, c job.ClosingPiece) job.Laid {
	if l.Closes && !c.Gap.IsZero() {
		l.Closes, l.Next, l.NextBy = false, c.Gap, "faces"
	}
	return l
}
