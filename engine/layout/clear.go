package layout

import (
	"math"
	"strconv"
	"strings"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// item is a part or a piece of pipe with its envelope. Items are counted along
// the chain: part k is 2k, the pipe after it 2k+1.
type item struct {
	name   string
	path   string
	at     int
	direct bool // no pipe between this part and the one before
	exit   bool // it passes through the wall of the hole
	first  bool // it stands on the pump's port
	shapes []shape
}

type shape struct {
	solid
	box     geom.Box
	leg     int
	opening int
}

// makeItems gathers the chain's envelope. Of a pipe only what shows between the hub
// faces counts: the rest lies inside the hubs.
func (l *laying) makeItems() {
	last := len(l.in.Parts) - 1
	for i := range l.in.Parts {
		j := &l.joints[i]
		pl := l.a.Places[i]
		if j.piped && j.faceGap() > dust {
			from := pl.InFace.Sub(pl.InDir.Scale(j.faceGap()))
			l.items = append(l.items, item{
				name: l.pieceAfter(i - 1), path: l.joinPath(i), at: 2*i - 1, first: i == 0,
				exit:   i == last && l.in.Parts[i].Kind == Bulkhead,
				shapes: []shape{shapeOf(Cylinder{From: from, To: pl.InFace, Radius: j.pipe.OD / 2}, l.legOf(i), 0)},
			})
		}
		it := item{
			name: l.mark(i), path: l.partPath(i), at: 2 * i, direct: !j.piped, first: i == 0 && !j.piped,
			exit: l.in.Parts[i].Kind == Bulkhead,
		}
		for _, s := range pl.Solids {
			it.shapes = append(it.shapes, shapeOf(s.Cylinder, s.Leg, s.Opening))
		}
		l.items = append(l.items, it)
	}
	if t := l.a.Tail; t != nil && t.FaceGap > dust {
		l.items = append(l.items, item{
			name: t.Mark, path: l.partPath(last), at: 2*last + 1, exit: true,
			shapes: []shape{shapeOf(Cylinder{From: l.a.Places[last].OutFace, To: t.End, Radius: t.Pipe.OD / 2}, l.legOf(last+1), 0)},
		})
	}
}

func shapeOf(c Cylinder, leg, opening int) shape {
	s := solidOf(c)
	return shape{solid: s, box: s.bounds(), leg: leg, opening: opening}
}

// legOf gives the leg on which the inlet of part i lies.
func (l *laying) legOf(i int) int {
	leg := 0
	for k := range min(i, len(l.in.Parts)) {
		if turn, _ := l.in.Parts[k].Turn(); turn != 0 {
			leg++
		}
	}
	return leg
}

func (l *laying) pieceAfter(i int) string {
	for _, p := range l.a.Pieces {
		if p.After == i {
			return p.Mark
		}
	}
	return "pipe after " + strconv.Itoa(i+1)
}

// near gives the distance of two shapes as far as it is below want (at or
// above it, some bound of at least want), negative by how far they stand in
// each other.
func near(a, b *shape, want float64) float64 {
	if d := apart(a.box, b.box); d >= want && d > 0 {
		return d
	}
	d := distance(&a.solid, &b.solid, math.Max(want, 2*sharp))
	if d > sharp {
		return d
	}
	if over, _ := depth(&a.solid, &b.solid); over > dust {
		return -over
	}
	return 0
}

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

// nearest gives the least distance of an item to shapes, leaving out its own
// shapes for which skip holds.
func (it *item) nearest(others []shape, want float64, skip func(*shape) bool) float64 {
	least := math.Inf(1)
	for i := range it.shapes {
		s := &it.shapes[i]
		if skip != nil && skip(s) {
			continue
		}
		for k := range others {
			least = math.Min(least, near(s, &others[k], math.Min(want, least)))
		}
	}
	return least
}

// between gives the least distance of two items that may not stand in each
// other. A part and the pipe in its own socket may; so may parts joined
// without a pipe; and what runs along one leg is kept apart by the joints.
func (it *item) between(other *item, want float64) float64 {
	least := math.Inf(1)
	if it.meets(other) {
		return least
	}
	for i := range it.shapes {
		s := &it.shapes[i]
		for k := range other.shapes {
			o := &other.shapes[k]
			if s.leg == o.leg && s.leg >= 0 {
				continue
			}
			least = math.Min(least, near(s, o, math.Min(want, least)))
		}
	}
	return least
}

// meets tells that two items are joined: a part and the pipe in its socket, or
// two parts without a pipe between them.
func (it *item) meets(other *item) bool {
	if it.at < other.at {
		it, other = other, it
	}
	apart := it.at - other.at
	return apart <= 1 || (apart == 2 && it.at%2 == 0 && it.direct)
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
