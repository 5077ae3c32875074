package cut

import "math/bits"

// sums is a set of lengths that pieces can add up to, one bit each.
type sums []uint64

// addPieces adds to s every sum of a member and up to n pieces of weight w.
// The pieces are taken in lots of 1, 2, 4 ... so that every number up to n is
// the sum of some lots.
func (s sums) addPieces(w, n int) {
	for lot := 1; n > 0; lot *= 2 {
		k := min(lot, n)
		n -= k
		s.orShifted(k * w)
	}
}

// orShifted adds to s each of its members moved up by shift.
func (s sums) orShifted(shift int) {
	words, rest := shift/64, uint(shift%64)
	if rest == 0 {
		for i := len(s) - 1; i >= words; i-- {
			s[i] |= s[i-words]
		}
		return
	}
	for i := len(s) - 1; i > words; i-- {
		s[i] |= s[i-words]<<rest | s[i-words-1]>>(64-rest)
	}
	if words < len(s) {
		s[words] |= s[0] << rest
	}
}

// atMost gives the largest member not above x, or -1 when all are above it.
func (s sums) atMost(x int) int {
	if x < 0 {
		return -1
	}
	i := x / 64
	if i >= len(s) {
		i = len(s) - 1
		x = i*64 + 63
	}
	word := s[i] << (63 - uint(x%64)) >> (63 - uint(x%64))
	for word == 0 {
		if i == 0 {
			return -1
		}
		i--
		word = s[i]
	}
	return i*64 + 63 - bits.LeadingZeros64(word)
}

// hits tells whether a member lies between lo and hi.
func (s sums) hits(lo, hi int) bool {
	return hi >= 0 && s.atMost(hi) >= lo
}
