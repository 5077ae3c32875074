package drawing

import (
	"strings"

	"plashet/engine/level"
	"plashet/engine/unit"
	"plashet/job"
)

// basin is what the job and the answer tell of pond and vault in section:
// heights are elevations, in m.
type basin struct {
	line, rim unit.Length
	side      []job.Step // of the pond, from the water line down
	floor     unit.Length

	vault                     bool
	length, floorLength       unit.Length // of the vault
	vaultFloor, vaultTop      unit.Length
	sill                      bool
	sillAt, need              unit.Length // need: the level the skimmer needs; 0 head without one
	pump                      bool
	pumpName                  string
	pumpFrom, pumpTo, pumpTop unit.Length // along the vault from its left wall; elevation of its top
	minWater                  unit.Length // elevation; only with minKnown
	minKnown                  bool

	run level.State // everyday running, or where moving a moment of start or stop

	moving bool          // run holds the levels of one moment only
	reach  []unit.Length // levels that any moment comes to: the room kept for them
}

// basinOf gathers the section; false where the levels are not worked out.
func basinOf(in Input) (basin, bool) {
	l := in.Result.Levels
	if l == nil {
		return basin{}, false
	}
	survey, _ := in.Job.Elevations() // what is not known stays out of the drawing
	b := basin{}
	var known [2]bool
	b.line, known[0] = survey.Level(in.Job.Pond.Water)
	b.rim, known[1] = survey.Level(in.Job.Pond.Rim)
	run, running := everyday(in)
	if !known[0] || !known[1] || !running {
		return basin{}, false
	}
	b.run = run
	b.side = in.Job.Pond.Section
	if len(b.side) == 0 {
		b.side = []job.Step{{Depth: in.Job.Pond.Depth}}
	}
	b.floor = b.line - b.side[len(b.side)-1].Depth.SI
	v := &in.Job.Vault
	if b.vaultFloor, b.vault = survey.Level(v.Floor); v.Shape == "" {
		b.vault = false
	}
	if b.vault {
		b.length, b.floorLength = v.Length.SI, v.FloorLength.Or(v.Length.SI)
		b.vaultTop = b.vaultFloor + v.Depth.SI
		b.sillAt, b.sill = survey.Level(v.Sill)
		b.need = b.sillAt + l.HeadNeeded
	} else {
		b.vaultFloor = b.floor
	}
	b.stand(in)
	return b, true
}

// everyday gives the state of everyday running: topped up while running where
// that is the habit, else with the valve holding, else without one.
func everyday(in Input) (level.State, bool) {
	for _, c := range []level.Course{level.CourseTopped, steady(in)} {
		if s, ok := in.Result.Levels.Find(c, level.MomentRun); ok {
			return s, true
		}
	}
	return level.State{}, false
}

// steady is the course of every start but the first.
func steady(in Input) level.Course {
	if hasValve(in.Job) {
		return level.CourseKept
	}
	return level.CourseOpen
}

// hasValve tells that a check valve stands in one of the runs.
func hasValve(j *job.Job) bool {
	for _, r := range j.Runs {
		for _, f := range r.Fittings {
			if isCheck(f.Fitting) {
				return true
			}
		}
	}
	return false
}

func isCheck(fitting string) bool { return strings.HasPrefix(fitting, "check valve") }

// stand puts the pump on the floor: where the assembly has it, else in the
// middle.
func (b *basin) stand(in Input) {
	pump, ok := usedPump(in.Job)
	if !ok {
		return
	}
	b.pumpName = pump.Name
	if b.vault && !pump.MinWater.IsZero() {
		b.minKnown, b.minWater = true, b.vaultFloor+pump.MinWater.SI
	}
	if a := in.Result.Assembly; b.vault && a != nil && len(a.Body) > 0 {
		low, high := bodyOf(a)
		b.pump = true
		b.pumpFrom, b.pumpTo = unit.Length(low.X), unit.Length(high.X)
		b.pumpTop = b.vaultFloor + unit.Length(high.Z)
		return
	}
	if len(pump.Attitudes) > 0 {
		at := pump.Attitudes[0]
		b.pump = true
		if b.vault {
			b.pumpFrom = (b.length - at.Length.SI) / 2
		}
		b.pumpTo = b.pumpFrom + at.Length.SI
		b.pumpTop = b.vaultFloor + at.Height.SI
	}
}

// usedPump is the pump the job is designed with.
func usedPump(j *job.Job) (*job.Pump, bool) {
	for i := range j.Pumps {
		if j.Pumps[i].Name == j.Use || j.Use == "" {
			return &j.Pumps[i], true
		}
	}
	return nil, false
}
