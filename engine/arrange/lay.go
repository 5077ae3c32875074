package arrange

import (
	"math"

	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/engine/verify"
)

// closing gives the joint whose piece is measured in place: an upright one,
// because the pump has no play in height, the nearest to the pump; -1 where the
// chain has none.
func (c *chain) closing() int {
	for i, k := range c.slot {
		if k >= 0 && c.made[i] == nil && c.frame.Links[i].Piped && math.Abs(c.dirs[i].Z) > 0.7 {
			return i
		}
	}
	return -1
}

// lay makes the assembly of a solution, has it judged by package layout and
// proved by package verify; false where one of them refuses it. Where only its pieces
// cannot be cut, a coupling in it is moved.
func (s *search) lay(o *order, parts []*piece, x []float64) (*Layout, bool) {
	return s.laid(o, parts, x, true)
}

func (s *search) laid(o *order, parts []*piece, x []float64, moves bool) (*Layout, bool) {
	c, ok := s.newChain(o, parts)
	if !ok {
		return nil, false
	}
	in := c.in
	in.Vault = s.in.Vault
	in.Pose = s.in.Standings[o.standing].poseAt(o.turned, x[varX], x[varY])
	in.Parts = append([]layout.Laid(nil), c.in.Parts...)
	marks(in.Parts, parts)
	for i, k := range c.slot {
		j := layout.Join{}
		if k >= 0 && c.frame.Links[i].Piped {
			j.By, j.Distance = layout.Faces, unit.Length(math.Max(0, x[k]))
			if i == c.closing() {
				j = layout.Join{Closing: true}
			}
		}
		if m := c.made[i]; m != nil {
			j = m.before
		}
		if i == 0 {
			in.Start = j
		} else {
			in.Parts[i-1].Next = j
		}
		if parts[i].hose != nil {
			in.Parts[i].In.TakeOff.Length += unit.Length(math.Max(0, x[k]))
			in.Parts[i].Out.TakeOff.Length += unit.Length(math.Max(0, x[c.slot[i+1]]))
		}
	}
	s.drill(&in, c, x)
	a, findings, faults := layout.Lay(in)
	if len(faults) > 0 {
		return nil, false
	}
	for i := range findings {
		if f := &findings[i]; s.refuses(f) && !s.past(f.Code, f.Args) {
			return nil, false
		}
	}
	if !s.cuttable(&a) {
		if moved := s.resplit(o, c, parts, x, &a); moves && moved != nil {
			return s.laid(o, parts, moved, false)
		}
		return nil, false
	}
	report := verify.Prove(in, a)
	for _, c := range report.Failed() {
		if s.counts(c.Code) && !s.past(c.Code, c.Args) {
			return nil, false
		}
	}
	l := &Layout{Chain: in, Standing: o.standing, Laid: a, Proved: report, Way: a.LiftOut.Moves}
	l.Worth = s.weigh(o, c, parts, &a)
	return l, true
}

// counts tells that a failed check refutes an assembly under the rules.
func (s *search) counts(code string) bool {
	switch code {
	case verify.CheckPlay, verify.CheckSpare:
		return s.in.Rules.Play
	case verify.CheckUnion:
		return s.in.Rules.Union
	case verify.CheckWay, verify.CheckMove, verify.CheckMoveWall, verify.CheckRim, verify.CheckOut, verify.CheckSlide:
		return s.in.Rules.Out
	}
	return true
}

// refuses tells that an assembly with this finding is none.
func (s *search) refuses(f *trace.Finding) bool {
	switch f.Code {
	case layout.FindPlay, layout.FindClosingSpare:
		return s.in.Rules.Play
	case layout.FindNoUnion:
		return s.in.Rules.Union
	case layout.FindBlocked, layout.FindLip:
		return s.in.Rules.Out
	case layout.FindWall, layout.FindPump, layout.FindObstacle, layout.FindParts, layout.FindPumpWall, layout.FindPumpObstacle,
		layout.FindHand, layout.FindClosure, layout.FindTurned:
		return true
	case layout.FindReturns, layout.FindReleased, layout.FindNoCheck:
		return false
	}
	return f.Severity == trace.Danger
}

// drill sets the hole where the chain ends, where it is not drilled yet.
func (s *search) drill(in *layout.Input, c *chain, x []float64) {
	if s.in.Reach == (Reach{}) {
		return
	}
	at := c.at(&c.end, x)
	in.Vault.Outlet.Height = unit.Length(at.Z)
	switch in.Vault.Outlet.Wall {
	case layout.Left, layout.Right:
		in.Vault.Outlet.Along = unit.Length(at.Y)
	default:
		in.Vault.Outlet.Along = unit.Length(at.X)
	}
}

// marks names the parts as a drawing does.
func marks(parts []layout.Laid, as []*piece) {
	n, had := map[string]int{}, map[string]bool{}
	for _, p := range as {
		if p.held != nil {
			had[p.part.Mark] = true
		}
	}
	for i := range parts {
		if as[i].held != nil && parts[i].Mark != "" {
			continue // it is written on it
		}
		letter := "F"
		turned, _ := parts[i].Kind.Turn()
		switch {
		case parts[i].Kind == layout.Hose:
			letter = "H"
		case turned != 0:
			letter = "E"
		case parts[i].Kind.IsCheck():
			letter = "V"
		case parts[i].Kind == layout.Union:
			letter = "U"
		case parts[i].Kind == layout.Bulkhead:
			letter = "B"
		}
		for parts[i].Mark = ""; parts[i].Mark == "" || had[parts[i].Mark]; {
			n[letter]++
			parts[i].Mark = letter + digits(n[letter])
		}
	}
}

func digits(n int) string {
	if n < 10 {
		return string(rune('0' + n))
	}
	return digits(n/10) + digits(n%10)
}
