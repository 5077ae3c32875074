package level

import "math"

// Boxes are joined boxes with the stores that hold their water, for a stop at
// which not all of them are full.
type Boxes struct {
	*Joined
	Store []int // of each vessel, among the stores of the inputs; -1: none, or one that no valve holds
}

// part tells that a joined box is not full.
func (b *Boxes) part(stores []Store, have []float64) bool {
	for _, k := range b.Store {
		if k >= 0 && have[k] < float64(stores[k].Running)*(1-partFull) {
			return true
		}
	}
	return false
}

// partFull is what a full box may lack by rounding.
const partFull = 1e-9

// communicate lets boxes that need not be full run into one another after a
// stop, the check valve holding, and gives what runs over their lips: time and
// again from the box that stands highest over one that it can come to, until
// both are level, it is down to its pipe's end, or the other is full, when the
// rest runs over that one's lip. From full boxes that ends where Settle says.
// What two boxes with a valve each in their branch share out between them hangs
// on their pipes, which are not known here: the one that stands lower gets it.
func (b *Boxes) communicate(stores []Store, have []float64) (over float64) {
	reach := b.reach()
	for range len(b.Vessels) * levelRounds {
		from, to, most := -1, -1, levelled
		for i := range b.Vessels {
			for k := range b.Vessels {
				if i == k || !reach[i][k] || b.gives(stores, have, i) <= 0 {
					continue
				}
				if fall := b.stands(stores, have, i) - max(b.stands(stores, have, k), b.end(k)); fall > most {
					from, to, most = i, k, fall
				}
			}
		}
		if from < 0 {
			break
		}
		over += b.run(stores, have, from, to, most)
	}
	return over
}

const (
	levelled    = 1e-7 // m
	levelRounds = 200
)

// run lets one box run into another that stands lower by fall.
func (b *Boxes) run(stores []Store, have []float64, from, to int, fall float64) (over float64) {
	i, k := b.Store[from], b.Store[to]
	area, room, other := b.area(stores, from), 0.0, 0.0
	if k >= 0 {
		room, other = max(0, float64(stores[k].Running)-have[k]), b.area(stores, to)
	}
	level := fall * area
	if room > 0 && other > 0 {
		// Below the other's pipe end its water rises without holding this one up.
		under := max(0, b.end(to)-b.stands(stores, have, to)) * other
		level = min(level, under+max(0, level-under)*other/(area+other))
	}
	give := min(b.gives(stores, have, from), level)
	have[i] -= give
	if room <= 0 {
		return give
	}
	take := min(give, room) // the rest is over its lip at the next turn
	have[i] += give - take
	have[k] += take
	return 0
}

// gives is what a box can give until its pipe's end comes clear.
func (b *Boxes) gives(stores []Store, have []float64, i int) float64 {
	v, k := &b.Vessels[i], b.Store[i]
	if k < 0 || v.Depth > 0 && v.Inlet >= v.Depth {
		return 0
	}
	return have[k] - float64(stores[k].HeldOpen)
}

// area is a box's surface; of one of unknown depth, so large that it empties.
func (b *Boxes) area(stores []Store, i int) float64 {
	if d := b.Vessels[i].Depth; d > 0 {
		return float64(stores[b.Store[i]].Running) / float64(d)
	}
	return math.MaxFloat32
}

// stands is the level in a box; one without water to tell of stands at its lip.
func (b *Boxes) stands(stores []Store, have []float64, i int) float64 {
	v, k := &b.Vessels[i], b.Store[i]
	if k < 0 || v.Depth <= 0 || stores[k].Running <= 0 {
		return float64(v.Crest)
	}
	return float64(v.Crest) - float64(v.Depth)*(1-have[k]/float64(stores[k].Running))
}

// end is the level of the end of a box's pipe.
func (b *Boxes) end(i int) float64 {
	v := &b.Vessels[i]
	if v.Depth <= 0 {
		return float64(v.Crest)
	}
	return float64(v.Crest - v.Depth + v.Inlet)
}

// reach tells which vessel's water comes to which.
func (b *Boxes) reach() [][]bool {
	out := make([][]bool, b.Places)
	for i := range out {
		out[i] = make([]bool, b.Places)
		out[i][i] = true
	}
	for more := true; more; {
		more = false
		for _, w := range b.Ways {
			for i := range out {
				if out[i][w.From] && !out[i][w.To] {
					out[i][w.To], more = true, true
				}
				if out[i][w.To] && !out[i][w.From] && !w.OneWay {
					out[i][w.From], more = true, true
				}
			}
		}
	}
	return out
}
