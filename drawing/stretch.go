package drawing

import "slices"

// A chain of more than longChain parts is not drawn whole in a picture the size
// of a stamp: what is in hand would not be seen. Then besideHand parts are drawn
// on either side of it. More than manyMarks marks in one picture are not told
// apart; then those stay by which one finds one's way, and the lists name all.
const (
	longChain  = 40
	besideHand = 4
	manyMarks  = 80
)

// stretch is the parts of a chain from one to another, both of them counted in.
type stretch struct{ first, last int }

// has tells that a part is of the stretch; without one all are.
func (s *stretch) has(part int) bool { return s == nil || part >= s.first && part <= s.last }

// stretchOf gives what is drawn for what is in hand; nil: all of it.
func (a *iso) stretchOf(hand []string) *stretch {
	n := len(a.laid.Places)
	if n <= longChain {
		return nil
	}
	s := &stretch{n, -1}
	take := func(part int) { s.first, s.last = min(s.first, part), max(s.last, part) }
	for i := range a.laid.Places {
		if slices.Contains(hand, a.mark(i)) {
			take(i)
		}
	}
	for i := range a.laid.Pieces {
		if c := &a.laid.Pieces[i]; slices.Contains(hand, c.Mark) {
			take(c.After)
			take(c.After + 1)
		}
	}
	if s.last < 0 { // the pump or the wall alone
		return nil
	}
	s.first, s.last = max(0, s.first-besideHand), min(n-1, s.last+besideHand)
	return s
}

// crowded tells that the marks of all parts and pieces are too many for one
// picture.
func (a *iso) crowded() bool { return len(a.laid.Places)+len(a.laid.Pieces) > manyMarks }

// landmark tells that a part is found at once: the chain turns in it or ends with
// it, or it is a valve or a union.
func (a *iso) landmark(i int) bool {
	p := &a.laid.Places[i]
	return i == 0 || i == len(a.laid.Places)-1 || p.InDir != p.OutDir || a.kindOf(i) != KindFitting
}
