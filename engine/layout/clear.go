package layout

import (
	"math"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// clearances holds every part against walls, pump, obstacles and the rest of
// the chain.
func (l *laying) clearances() {
	l.makeItems()
	exitWall := l.in.Vault.Outlet.Wall
	if l.in.Vault.Round {
		exitWall = Round
	}
	pump := make([]shape, len(l.pump))
	for i, s := range l.pump {
		pump[i] = shape{solid: s, box: s.bounds(), leg: -1}
	}
	obstacles := make([]shape, len(l.in.Vault.Obstacles))
	for i, o := range l.in.Vault.Obstacles {
		obstacles[i] = shape{solid: boxOf(o.Box), box: o.Box, leg: -1}
	}
	l.pumpClear(pump, obstacles)
	var walls []meeting
	for i := range l.items {
		it := &l.items[i]
		walls = append(walls, l.wallClear(it, exitWall)...)
		limit := float64(l.lim.pump)
		if d := it.nearest(pump, limit, func(s *shape) bool { return it.first && s.leg == 0 }); d < limit-dust {
			l.tooNear(it.path, FindPump, d, l.lim.pump, trace.Str("part", it.name))
		}
		limit = float64(l.lim.obstacle)
		for k := range obstacles {
			if d := it.nearest(obstacles[k:k+1], limit, nil); d < limit-dust {
				l.tooNear(it.path, FindObstacle, d, l.lim.obstacle,
					trace.Str("part", it.name), trace.Str("obstacle", l.in.Vault.Obstacles[k].Name))
			}
		}
		limit = float64(l.lim.part)
		for k := range l.items[:i] {
			other := &l.items[k]
			if d := it.between(other, limit); d < limit-dust {
				l.tooNear(it.path, FindParts, d, l.lim.part, trace.Str("part", it.name), trace.Str("other", other.name))
			}
		}
	}
	l.tellWalls(walls)
}

// tooNear reports a distance below its limit: a danger where things stand in
// each other, else a caution.
func (l *laying) tooNear(path, code string, found float64, limit unit.Length, args ...trace.Arg) {
	sev, room := trace.Caution, tape("room", unit.Length(found))
	if found < -dust {
		sev, room = trace.Danger, tape("into", unit.Length(-found))
	}
	args = append(args, room, tape("found", unit.Length(found)), tape("limit", limit), tape("short", limit-unit.Length(found)))
	l.find(sev, path, code, tapeOf(found), unit.Of(limit, unit.KindTape), l.lim.clearSource, args...)
}

// naming names what something comes too near to for a sentence: a wall by its
// side, floor and lid as they are, anything else as a thing.
func naming(what string) trace.Arg {
	switch Wall(what) {
	case Left, Right, Front, Back, Round:
		return trace.Str("side", what)
	case Floor, Lid:
		return trace.Str("plane", what)
	}
	return trace.Str("thing", what)
}

// meeting is an item too near to a wall.
type meeting struct {
	item *item
	wall Wall
	d    float64
}

// wallClear holds an item against the walls. What passes through the hole's
// wall is not held against that one.
func (l *laying) wallClear(it *item, exitWall Wall) []meeting {
	limit := float64(l.lim.wall)
	least := map[Wall]float64{}
	hold := func(w Wall, d float64) {
		if had, known := least[w]; !known || d < had {
			least[w] = d
		}
	}
	exempt := Wall("")
	if it.exit {
		exempt = exitWall
	}
	for i := range it.shapes {
		s := &it.shapes[i]
		for _, p := range l.inside.planes {
			if p.wall != exempt {
				hold(p.wall, p.b-s.reach(p.n))
			}
		}
		if l.inside.round != nil && exempt != Round {
			hold(Round, l.inside.round.room(s.solid))
		}
	}
	var out []meeting
	for w, d := range least {
		if d < limit-dust {
			out = append(out, meeting{it, w, d})
		}
	}
	return out
}

// tellWalls reports the walls that parts come too near to: for each wall once
// what stands in it, and once what only lacks room.
func (l *laying) tellWalls(all []meeting) {
	for _, w := range [...]Wall{Left, Right, Front, Back, Floor, Lid, Round} {
		for _, in := range [...]bool{true, false} {
			var names []string
			var worst meeting
			for _, m := range all {
				if m.wall != w || m.d < -dust != in {
					continue
				}
				if len(names) == 0 || m.d < worst.d {
					worst = m
				}
				names = append(names, m.item.name)
			}
			args := []trace.Arg{trace.Str("wall", string(w)), naming(string(w))}
			switch len(names) {
			case 0:
				continue
			case 1:
				args = append(args, trace.Str("part", names[0]))
			default:
				args = append(args, trace.Str("parts", strings.Join(names, ", ")), trace.Str("worst", worst.item.name))
			}
			l.tooNear(worst.item.path, FindWall, worst.d, l.lim.wall, args...)
		}
	}
}

// pumpClear holds the pump against walls, which it may touch, and obstacles.
func (l *laying) pumpClear(pump, obstacles []shape) {
	path := l.in.Path
	least, wall := math.Inf(1), Wall("")
	for i := range pump {
		if d, w := l.inside.room(pump[i].solid); d < least {
			least, wall = d, w
		}
	}
	if least < -dust {
		l.tooNear(path, FindPumpWall, least, 0, trace.Str("wall", string(wall)), naming(string(wall)))
	}
	limit := float64(l.lim.obstacle)
	for k := range obstacles {
		d := math.Inf(1)
		for i := range pump {
			d = math.Min(d, near(&pump[i], &obstacles[k], math.Min(limit, d)))
		}
		if d < limit-dust {
			l.tooNear(path, FindPumpObstacle, d, l.lim.obstacle, trace.Str("obstacle", l.in.Vault.Obstacles[k].Name))
		}
	}
}
