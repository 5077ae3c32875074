package level

import "plashet/engine/unit"

// Joined is boxes at the tops of feeds with the full pipe that joins them
// beyond the check valves: communicating vessels. Places are numbered; those of
// the vessels come first, in their order.
type Joined struct {
	Vessels []Vessel
	Ways    []Way
	Places  int // vessels, tees and all other places

	lowest []int // of each place, the vessel that its water runs to; -1: none
}

// Vessel is one of the boxes.
type Vessel struct {
	Crest unit.Length // elevation of its lip
	Depth unit.Length // floor to lip, from 0 up; 0: not known
	Inlet unit.Length // end of its pipe above the floor; at the lip or above it pours in from over the water
}

// Way is pipe between two places, full of water. With OneWay a check valve in
// it lets water pass to its end only.
type Way struct {
	From, To int
	OneWay   bool
}

// Takes gives the level that the water in a box's pipe must stand above to come
// in and run on over its lip: the crest, or the pipe's end where that is higher.
func (v *Vessel) Takes() unit.Length {
	if v.Depth > 0 {
		return v.Crest + max(0, v.Inlet-v.Depth)
	}
	return v.Crest
}

// Below is where a vessel's water goes once all stands still.
type Below struct {
	Fall unit.Length // under its lip, down to where the next one takes it; 0: none
	To   int         // that vessel; -1: none
}

// Settle tells how far the water of each vessel falls, from full up to its lip,
// once the pump stands and no valve lets it back to the pump:
//
//	fall = crest - lowest of (crest, or pipe's end where higher) of the vessels
//	that its water can come to
//
// for communicating vessels come to one level, and what is above the lowest lip
// runs over it. The fall may be more than the inlet lets it: what stays is told
// by BoxSize.Keeps. The pipe is taken to stay full: air that gathers at a high
// point would break the siphon and leave more in the box, and a pipe whose end
// comes clear would run down too. It writes to out, one for each vessel, and
// allocates nothing after the first time. Source: hydrostatics.
func (j *Joined) Settle(out []Below) {
	if len(j.lowest) != j.Places {
		j.lowest = make([]int, j.Places)
	}
	for i := range j.lowest {
		j.lowest[i] = -1
		if i < len(j.Vessels) {
			j.lowest[i] = i
		}
	}
	for more := true; more; {
		more = false
		for _, w := range j.Ways {
			more = j.lower(w.From, w.To) || more
			if !w.OneWay {
				more = j.lower(w.To, w.From) || more
			}
		}
	}
	for i := range j.Vessels {
		v := &j.Vessels[i]
		out[i] = Below{To: -1}
		if v.Depth > 0 && v.Inlet >= v.Depth {
			continue // its pipe ends over the water: nothing siphons
		}
		if k := j.lowest[i]; v.Crest > j.Vessels[k].Takes() {
			out[i] = Below{v.Crest - j.Vessels[k].Takes(), k}
		}
	}
}

// lower lets a place's water run to where that of the next place runs, if that
// is lower.
func (j *Joined) lower(from, to int) bool {
	k, was := j.lowest[to], j.lowest[from]
	if k < 0 || was >= 0 && j.Vessels[k].Takes() >= j.Vessels[was].Takes() {
		return false
	}
	j.lowest[from] = k
	return true
}

// Keeps gives the parts of a box's water that stay after a stop: with the check
// valve holding what is below the fall or the inlet, with the pipe open what is
// below the inlet. One of unknown depth that falls at all is taken to empty.
// Walls are taken as upright.
func (b *BoxSize) Keeps() (held, open unit.Ratio) {
	held = 1
	if b.Depth > 0 {
		open = min(1, unit.Ratio(b.Inlet/b.Depth))
		held = 1 - unit.Ratio(b.Fall/b.Depth)
	} else if b.Fall > 0 {
		held = 0
	}
	return max(held, open), open
}
