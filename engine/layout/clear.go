package layout

import (
	"math"
	"strconv"

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
		if turn, _ := l.in.Parts[k].Kind.Turn(); turn != 0 {
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
	for i := range l.items {
		it := &l.items[i]
		l.wallClear(it, exitWall)
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
}

// tooNear reports a distance below its limit: a danger where things stand in
// each other, else a caution.
func (l *laying) tooNear(path, code string, found float64, limit unit.Length, args ...trace.Arg) {
	sev := trace.Caution
	if found < -dust {
		sev = trace.Danger
	}
	args = append(args, tape("found", unit.Length(found)), tape("limit", limit), tape("short", limit-unit.Length(found)))
	l.find(sev, path, code, tapeOf(found), unit.Of(limit, unit.KindTape), l.lim.clearSource, args...)
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
	if apart := it.at - other.at; apart <= 1 || (apart == 2 && it.at%2 == 0 && it.direct) {
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

// wallClear holds an item against the walls, reporting each wall once. What
// passes through the hole's wall is not held against that one.
func (l *laying) wallClear(it *item, exitWall Wall) {
	limit := float64(l.lim.wall)
	type worst struct {
		wall Wall
		d    float64
	}
	var found []worst
	for i := range it.shapes {
		s := &it.shapes[i]
		exempt := Wall("")
		if it.exit {
			exempt = exitWall
		}
		for _, p := range l.inside.planes {
			if p.wall == exempt {
				continue
			}
			found = append(found, worst{p.wall, p.b - s.reach(p.n)})
		}
		if l.inside.round != nil && exempt != Round {
			found = append(found, worst{Round, l.inside.round.room(s.solid)})
		}
	}
	for _, w := range [...]Wall{Left, Right, Front, Back, Floor, Lid, Round} {
		d := math.Inf(1)
		for _, f := range found {
			if f.wall == w {
				d = math.Min(d, f.d)
			}
		}
		if d < limit-dust {
			l.tooNear(it.path, FindWall, d, l.lim.wall, trace.Str("part", it.name), trace.Str("wall", string(w)))
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
		l.tooNear(path, FindPumpWall, least, 0, trace.Str("wall", string(wall)))
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
