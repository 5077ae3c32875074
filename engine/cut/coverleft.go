package cut

import (
	"encoding/binary"
	"slices"
)

// coverLeft is what a cover has still to lay.
type coverLeft struct {
	d, n  []int
	w     int     // of the remnant, zero once it is laid
	spare []int64 // by bound
}

func newCoverLeft(l *listing) coverLeft {
	left := coverLeft{d: slices.Clone(l.d), n: slices.Clone(l.n), w: l.w}
	for _, b := range l.bounds {
		left.spare = append(left.spare, b.spare)
	}
	return left
}

func (l *coverLeft) nothing() bool { return l.w == 0 && total(l.d) == 0 }

// state describes what is left, in full: two states with one key are one.
func (l *coverLeft) state(key []byte) []byte {
	for _, x := range l.d {
		key = binary.AppendUvarint(key, uint64(x))
	}
	for _, x := range l.n {
		key = binary.AppendUvarint(key, uint64(x))
	}
	return binary.AppendUvarint(key, uint64(l.w))
}

// wanted tells whether place i of cover.count is to be served from the listing.
// While some bars are not listed a piece may lie there, so only bars are.
func (v *cover) wanted(i int) bool {
	t := i - len(v.d)
	switch {
	case t < 0:
		return v.all && v.left.d[i] > 0
	case t < len(v.n):
		return v.left.n[t] > 0 && v.listed[t]
	}
	return v.all && v.left.w > 0
}

// serves tells whether filling k serves place i of cover.count.
func (v *cover) serves(k int32, i int) bool {
	f := &v.fillings[k]
	t := i - len(v.d)
	switch {
	case t < 0:
		return slices.Contains(v.placesOf(k), int32(i))
	case t < len(v.n):
		return int(f.bar) == t
	}
	return f.remnant
}

// fitsIn tells whether filling k still fits in what is left.
func (v *cover) fitsIn(k int32) bool {
	f := &v.fillings[k]
	if v.left.n[f.bar] == 0 || (f.remnant && v.left.w == 0) {
		return false
	}
	for b, l := range v.loss(k) {
		if l > v.left.spare[b] {
			return false
		}
	}
	places := v.placesOf(k)
	for j, i := range places {
		// pieces of one weight stand together: if the one so many places back is
		// of this weight too, there is one too many
		if n := j - v.left.d[i]; n >= 0 && places[n] == i {
			return false
		}
	}
	return true
}

func (v *cover) take(k int32) { v.lay(k, -1) }

func (v *cover) putBack(k int32) { v.lay(k, 1) }

func (v *cover) lay(k int32, sign int) {
	f := &v.fillings[k]
	for _, i := range v.placesOf(k) {
		v.left.d[i] += sign
	}
	v.left.n[f.bar] += sign
	for b, l := range v.loss(k) {
		v.left.spare[b] += int64(sign) * l
	}
	if f.remnant {
		v.left.w = 0
		if sign > 0 {
			v.left.w = v.w
		}
	}
}
