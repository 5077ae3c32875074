package arrange

import (
	"math"
	"sync"
)

// What an assembly takes of pipe follows from how long its centre line is, and
// that is the same however fittings are put into its legs: so a sketch of the
// bare legs bounds them all, and the elbows alone bound all places of valve and
// union.

// line is what a chain is made of along its centre line.
type line struct {
	least   float64 // of the centre line, every hub touching
	sockets float64 // that pipe and hose go into, each by what a metre of its size counts for
	joints  int
}

// lines are those of a fill with valve and union in each of their places, kept
// because the legs' directions change nothing of them.
type lines struct {
	lock sync.Mutex
	of   []lineOf
}

type lineOf struct {
	line
	known, none bool
}

// line gives that of a placement; nil where the pieces do not go together.
func (w *worker) line(o *order, pl *placement) *line {
	o.lines.lock.Lock()
	defer o.lines.lock.Unlock()
	legs := len(o.elbows) + 2
	if o.lines.of == nil {
		o.lines.of = make([]lineOf, 2*legs*legs)
	}
	i := 2 * ((pl.check+1)*legs + pl.union + 1)
	if pl.unionFirst {
		i++
	}
	l := &o.lines.of[i]
	if !l.known {
		l.known, l.none = true, true
		w.parts = o.parts(pl.check, pl.union, pl.unionFirst)
		if c := w.chain(o, w.parts); c != nil {
			l.line, l.none = c.line(o.fill), false
		}
	}
	if l.none {
		return nil
	}
	return &l.line
}

// line works out that of a chain, sockets by what a metre of their size counts
// for in a filling; nil: all alike.
func (c *chain) line(f *fill) (l line) {
	for i := range c.frame.Links {
		k := &c.frame.Links[i]
		l.least += float64(k.Least)
		if l.joints += k.Joints; k.Piped {
			l.sockets += f.weight(k.Pipe.Size) * float64(k.Sockets)
		}
	}
	if c.hose >= 0 {
		l.sockets += f.weight("") * c.hoseIn
	}
	if c.through {
		l.joints++
	}
	return l
}

// limit gives the gaps between the hubs, added up as branch and bound does, from which on an assembly of
// a chain is beaten by something on the front; without end where nothing on it
// beats the chain's fittings. What is glued takes head but costs nothing: there
// it gives no limit.
func (s *search) limit(front []Layout, f *fill, l line, least worth) float64 {
	out := math.Inf(1)
	if s.glued.any() {
		return out
	}
	least.joints = l.joints
	least.head, least.cost = math.Inf(1), math.Inf(1)
	for i := range front {
		v := front[i].worth()
		if !v.beats(least) {
			continue
		}
		over := func(is, at, rate, alike float64) float64 {
			short := is - alike - at // by how much the fittings alone are better
			switch {
			case short <= 0:
				return 0
			case rate <= 0:
				return math.Inf(1)
			}
			return short/rate - l.sockets
		}
		out = min(out, max(over(v.head, f.head, f.rate(slopeOf), alikeHead), over(v.cost, f.cost, f.rate(costOf), alikeCost)))
	}
	return out
}
