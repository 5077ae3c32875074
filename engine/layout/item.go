package layout

import (
	"math"
	"strconv"

	"plashet/engine/geom"
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

// shape is a solid of an item's envelope, or of what stands in the vault.
type shape struct {
	solid
	box     geom.Box
	leg     int // of the chain, from 0 at the port; below zero: of none
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
