package arrange

import (
	"slices"
	"strings"

	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/verify"
)

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
