package arrange

import (
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// piece is a fitting as it goes into the chain: turned round where that makes
// another joint of it.
type piece struct {
	fitting int // index in Input.Fittings; -1 of a glued one
	part    layout.Part
	turns   bool
	opens   bool
	held    *held // glued already
	hose    *bent // a hose of the search's, its ends as long as the chain asks
	past    bool  // stands beyond a coupling
}

func pieceOf(fitting int, p layout.Part) *piece {
	turned, _ := p.Turn()
	return &piece{fitting: fitting, part: p, turns: turned != 0, opens: len(p.Splits) > 0}
}

// opens tells that a part is a union, or a check valve with union ends, which is
// one too.
func opens(p *layout.Part) bool {
	return len(p.Splits) > 0 && (p.Kind == layout.Union || p.Kind.IsCheck())
}

// kit is what is at hand for one size of pipe, by what it serves for.
type kit struct {
	pipe   Pipe
	starts [][]*piece // from the pump's port to a socket of the size
	elbows [2][]*piece
	checks []*piece
	unions []*piece
	ends   []*piece         // at the wall; none: the pipe goes through
	tail   []*piece         // glued on the wall's side
	hoses  map[int64]*piece // by turn
	spaces spacings
	change *change // of the size, or a coupling, after which another kit serves; nil: there is none
}

// kits sorts the fittings for a pump's outlet.
func (in *Input) kits(outlet layout.End) []kit {
	var out []kit
	for _, p := range in.Pipes {
		k := kit{pipe: p}
		for i, f := range in.Fittings {
			if f.AtHand == 0 {
				continue
			}
			part := f.Part
			inSize, outSize := size(part.In, part), size(part.Out, part)
			turns, _ := part.Turn()
			switch {
			case part.Kind == layout.Bulkhead:
				if inSize == p.Size {
					k.ends = append(k.ends, pieceOf(i, part))
				}
			case turns != 0 && inSize == p.Size && outSize == p.Size:
				t := turn90
				if turns < 60*unit.Degree {
					t = turn45
				}
				k.elbows[t] = append(k.elbows[t], pieceOf(i, part))
				if part.In.Kind != part.Out.Kind {
					round := part
					round.In, round.Out = part.Out, part.In
					k.elbows[t] = append(k.elbows[t], pieceOf(i, round))
				}
			case part.Kind.IsCheck() && inSize == p.Size && outSize == p.Size:
				k.checks = append(k.checks, pieceOf(i, part))
			case part.Kind == layout.Union && inSize == p.Size && outSize == p.Size:
				k.unions = append(k.unions, pieceOf(i, part))
			}
		}
		k.starts = in.starts(outlet, p.Size)
		out = append(out, k)
	}
	return out
}

func size(e layout.End, p layout.Part) string {
	if e.Size != "" {
		return e.Size
	}
	return p.Size
}

// starts gives the fittings that lead from the pump's outlet to a socket of the
// size: none where it is one, or goes into one, else an adapter, or an adapter and
// a reducer. Where there is pipe of the size before it, a reducer is a change (see
// changing) and no start.
func (in *Input) starts(outlet layout.End, to string) [][]*piece {
	var out [][]*piece
	if (outlet.Kind == layout.Socket || outlet.Kind == layout.Spigot) && outlet.Size == to {
		out = append(out, nil)
	}
	for i, f := range in.Fittings {
		p := f.Part
		if f.AtHand == 0 || !leads(p) || !fits(outlet, outlet.Size, p.In, size(p.In, p)) {
			continue
		}
		if p.Out.Kind == layout.Socket && size(p.Out, p) == to && !in.changes(p) {
			out = append(out, []*piece{pieceOf(i, p)})
			continue
		}
		for k, g := range in.Fittings {
			q := g.Part
			if g.AtHand != 0 && q.Kind == layout.Reducer && !in.changes(q) && q.Out.Kind == layout.Socket && size(q.Out, q) == to && fits(p.Out, size(p.Out, p), q.In, size(q.In, q)) {
				out = append(out, []*piece{pieceOf(i, p), pieceOf(k, q)})
			}
		}
	}
	return out
}

// leads tells that a fitting is made to lead from one kind of end to another.
func leads(p layout.Part) bool {
	switch p.Kind {
	case layout.MaleAdapter, layout.FemaleAdapter, layout.Reducer, layout.Coupling:
		return true
	}
	return false
}

// fits tells that two ends go together, with or without a pipe between them.
func fits(out layout.End, outSize string, in layout.End, inSize string) bool {
	if outSize != inSize {
		return false
	}
	switch out.Kind {
	case layout.Socket:
		return in.Kind == layout.Socket || in.Kind == layout.Spigot
	case layout.Spigot:
		return in.Kind == layout.Socket
	case layout.FemaleThread:
		return in.Kind == layout.MaleThread && seals(out.Thread, in.Thread)
	case layout.MaleThread:
		return in.Kind == layout.FemaleThread && seals(in.Thread, out.Thread)
	}
	return false
}

// seals tells that a male thread goes into a female one without a fault: the
// same family, or a taper one in a parallel one.
func seals(female, male layout.Thread) bool {
	return female == male || female == layout.BSPP && male == layout.BSPT
}

// enough tells that there are as many fittings at hand as a chain takes.
func (in *Input) enough(chain []*piece) bool {
	for i, p := range chain {
		if p.fitting < 0 {
			continue
		}
		n := in.Fittings[p.fitting].AtHand
		if n < 0 || slices.ContainsFunc(chain[:i], func(q *piece) bool { return q.fitting == p.fitting }) {
			continue
		}
		for _, q := range chain {
			if q.fitting == p.fitting {
				n--
			}
		}
		if n < 0 {
			return false
		}
	}
	return true
}

// poseAt is the pump turned, with its corner over a place on the floor: as high
// as it is fixed, else on the floor.
func (s *Standing) poseAt(turned unit.Angle, x, y float64) layout.Pose {
	p := layout.Pose{At: geom.Vec3{X: x, Y: y}, Turn: turned}
	if s.Fixed {
		p.At.Z = s.Pose.At.Z
	}
	return p
}

// turnsOf gives the angles that a pump may be turned by.
func (s *Standing) turnsOf() []unit.Angle {
	switch {
	case len(s.Turns) > 0:
		return s.Turns
	case s.Fixed:
		return []unit.Angle{s.Pose.Turn}
	}
	return []unit.Angle{0, 90 * unit.Degree, 180 * unit.Degree, 270 * unit.Degree}
}
