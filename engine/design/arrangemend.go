package design

import (
	"math"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/unit"
	"plashet/job"
)

// Entry is an entry of the job set anew.
type Entry struct{ Path, Text string }

// obstacleMend gives those of an obstacle that is moved; none for one that is to be
// taken out, which is for a person to do.
func obstacleMend(v *job.Vault, s *arrange.Change, by unit.Length, units unit.System) (out []Entry) {
	if s.Obstacle > len(v.Obstacles) {
		return nil
	}
	o := &v.Obstacles[s.Obstacle-1]
	var axis string
	var from, to unit.Length
	switch s.What.Code {
	case arrange.ChangeObstacleUp, arrange.ChangeObstacleDown:
		axis, from, to = "z", o.From.Z.SI, o.To.Z.SI
	case arrange.ChangeObstacleLeft, arrange.ChangeObstacleRight:
		axis, from, to = "x", o.From.X.SI, o.To.X.SI
	case arrange.ChangeObstacleFront, arrange.ChangeObstacleBack:
		axis, from, to = "y", o.From.Y.SI, o.To.Y.SI
	default:
		return nil
	}
	step, way := float64(layout.Step(units)), 1.0
	switch s.What.Code {
	case arrange.ChangeObstacleDown, arrange.ChangeObstacleLeft, arrange.ChangeObstacleFront:
		way = -1
	}
	moved := func(was unit.Length) unit.Length { // to where the tape has a mark, no less far than told
		const dust = 1e-6 // of a step, from the arithmetic
		return unit.Length(way * math.Ceil(way*float64(was)/step+float64(by)/step-dust) * step)
	}
	path := at("/vault/obstacles", s.Obstacle-1)
	return []Entry{tapeEntry(path+"/from/"+axis, moved(from), units), tapeEntry(path+"/to/"+axis, moved(to), units)}
}

// Mend gives the entries by which change n of what is short (counted from 0)
// is written into the job: the measure rounded up to a step of the tape, and
// where a wall before the hole moves, all that is placed from that wall; or another
// way for the pump to stand, or fittings. None
// where there is no such change. Whether a layout then fits is for a new search
// to say: what was found fits at the size that was not rounded.
func (a *Arranging) Mend(j *job.Job, n int) []Entry {
	if a.Outcome == nil || n < 0 || n >= len(a.Outcome.Short) {
		return nil
	}
	s := &a.Outcome.Short[n]
	if s.Instead > 0 {
		return a.insteadMend(j, s)
	}
	by := layout.Enough(s.By, a.Units)
	v := &j.Vault
	set := func(path string, was job.Length, by unit.Length) Entry { return tapeEntry(path, was.SI+by, a.Units) }
	switch s.What.Code {
	case arrange.ChangeDepth:
		return []Entry{set("/vault/depth", v.Depth, by)}
	case arrange.ChangeUp:
		return []Entry{set("/vault/outlet/height", v.Outlet.Height, by)}
	case arrange.ChangeDown:
		return []Entry{set("/vault/outlet/height", v.Outlet.Height, -by)}
	case arrange.ChangeLeft:
		return []Entry{set("/vault/outlet/along", v.Outlet.Along, -by)}
	case arrange.ChangeRight:
		return []Entry{set("/vault/outlet/along", v.Outlet.Along, by)}
	}
	if s.Obstacle > 0 {
		return obstacleMend(v, s, by, a.Units)
	}
	axis, high := "x", layout.Right
	var out []Entry
	switch s.What.Code {
	case arrange.ChangeLength:
		out = []Entry{set("/vault/length", v.Length, by)}
	case arrange.ChangeWidth:
		axis, high = "y", layout.Back
		out = []Entry{set("/vault/width", v.Width, by)}
	default:
		return hatchMend(v, s.What.Code, by, a.Units)
	}
	near := layout.Wall(v.Outlet.Wall) == high
	if out = append(out, hatchStays(v, axis, by, near, a.Units)...); !near {
		return out // the wall that gives way is the far one
	}
	for i := range v.Obstacles {
		from, to := v.Obstacles[i].From.X, v.Obstacles[i].To.X
		if axis == "y" {
			from, to = v.Obstacles[i].From.Y, v.Obstacles[i].To.Y
		}
		path := at("/vault/obstacles", i)
		out = append(out, set(path+"/from/"+axis, from, by), set(path+"/to/"+axis, to, by))
	}
	return out
}
