package motion

import (
	"math"

	"plashet/engine/unit"
)

// pipeState is what a feed's pipe does.
type pipeState struct {
	full   bool // all of it; what is given goes on into the box
	siphon bool // the pump stands, and the box runs back through the full pipe
	drains bool // air is in it, and it runs back
	aside  bool // the pump stands, and the box may run into another
	clear  bool // the box has done so down to the pipe's end
}

// hint is where the levels were last, from where they are looked for.
type hint struct {
	weir float64
	sill drop
}

// run is one course under way: the rules in force and, after rates, what flows.
type run struct {
	s        *System
	p        Program
	pumping  bool // the pump has power
	supply   Supply
	rampEnd  float64
	joined   bool // pond and vault share their water
	gasp     bool // the pump draws air: it passes what comes to it
	spill    bool // the pond stands at its rim, and what comes runs over
	pipes    []pipeState
	gains    []float64 // what each box gets from others
	gives    []bool    // of each box, that it may give to others
	takes    []bool    // that it may take
	sideways bool      // a box may run into another
	full     []bool    // by state: a part without lip that passes on what it gets

	close            float64 // last step of the levels of pond and vault
	still            float64 // flow that counts as still
	vaultWeight      float64 // how much more a flow into the vault counts
	mayRest, rested  bool    // stillness counts now; has come
	sillTold         bool
	lipTold          []bool
	gaspFrom, gasped float64
	events           []Event
	evals            int
	now              float64 // of the last rates

	// What flows, set by rates.
	zPond, zVault, zSill float64 // zSill: behind the weir, before the screen
	weir, slope          float64 // flow into the vault, and by its level
	raw, drawn, back     float64 // what the pump would draw, draws; what runs back
	comes                float64 // what the pump could draw for good
	returns              float64 // what comes down to the pond
	basin                float64 // net into the pond (joined: into both)
	rainRate, topUp      float64
}

// rates gives the rates of change of all states at a time.
func (r *run) rates(t float64, x, dx []float64) {
	s := r.s
	r.evals++
	r.now = t
	for i := range stFeeds {
		dx[i] = 0
	}
	r.settle(t, x)
	share := 1.0
	if !r.joined {
		r.comes = r.weir + r.back + r.rainRate*s.vaultPlan
		share = r.limit()
	}
	down, onStreams := r.watercourses(x, dx, share)
	r.topUp = r.p.TopUp.flow(r.zPond)
	if r.joined {
		sky := r.topUp + r.back + r.rainRate*(s.pondPlan+s.vaultPlan)
		r.comes = down + sky
		if share = r.limit(); share < 1 {
			// Of what is given a part may come down at once, so less given is less
			// that comes: comes = a + b share, drawn = raw share, which are to be one.
			less, _ := r.watercourses(x, dx, share)
			b := (down - less) / (1 - share)
			share = max(0, min(1, (r.comes-b)/(r.raw-b)))
			r.drawn = r.raw * share
			down, onStreams = r.watercourses(x, dx, share)
		}
	}
	r.returns = down
	pond, vault := down+r.topUp+r.rainRate*s.pondPlan, r.back+r.rainRate*s.vaultPlan
	if r.joined {
		r.basin = pond + vault - r.drawn
	} else {
		r.basin = pond - r.weir
		dx[stVault] = vault + r.weir - r.drawn
	}
	dx[stPond] = r.basin
	if r.spill && r.basin > 0 {
		dx[stPond], dx[stOver] = 0, r.basin
	}
	dx[stAdded] = r.topUp + r.rainRate*(s.pondPlan+s.vaultPlan) + onStreams
	dx[stBack], dx[stReturn], dx[stPumped] = r.back, down, r.drawn
}

// limit lets a pump that draws air draw no more than comes to it, and gives the
// part that this is of what it would draw.
func (r *run) limit() float64 {
	r.drawn = r.raw
	if !r.gasp || r.raw <= 0 {
		return 1
	}
	r.drawn = max(0, min(r.raw, r.comes))
	return r.drawn / r.raw
}

// passes tells that a part holds nothing that moves: what comes goes on.
func (r *run) passes(p *part) bool {
	return p.lip == nil && p.reach == 0 && r.full[p.at]
}

// sky sets the rain for a stretch of time that begins at t. It is fixed for the
// stretch, so that no step looks over its end.
func (r *run) sky(t float64) {
	r.rainRate = 0
	rain := &r.p.Rain
	if from := float64(rain.From); rain.Over > 0 && t > from-eventClose && t < from+float64(rain.Over)-eventClose {
		r.rainRate = float64(rain.Depth) / float64(rain.Over)
	}
}

// settle finds the levels of pond and vault, and what pump and pipe carry
// between them. Where they share their water, the drop between them depends on
// the flow, and the flow hardly on the drop: three rounds leave nothing.
func (r *run) settle(t float64, x []float64) {
	s := r.s
	if !r.joined {
		r.zPond, r.zVault = s.pond.level(x[stPond]), s.vault.level(x[stVault])
		r.carry(t, x)
		r.zSill = r.zVault + r.screen()
		r.weir, r.slope = s.sill.flow(r.zPond-s.sill.crest, r.zSill-s.sill.crest)
		return
	}
	r.share(t, x)
}

// screen is the drop through the mat at what the pump would draw.
func (r *run) screen() float64 {
	if r.s.loss == 0 || r.s.flow == 0 || r.raw <= 0 {
		return 0
	}
	part := r.raw / r.s.flow
	return r.s.loss * part * part
}

// share puts the water of pond and vault at levels between which just the flow
// runs that is drawn less what runs back. The levels are found by Newton's steps
// from the last ones, behind the drop that the last flow made; then the flow
// anew, which hardly depends on them.
func (r *run) share(t float64, x []float64) {
	s, water := r.s, x[stPond]
	q := s.warm.weir
	for range 15 {
		r.apart(s.pond.z, q)
		if !r.level(water) {
			break
		}
		r.carry(t, x)
		off := r.drawn - r.back - q
		q += off
		if math.Abs(off) <= r.close*max(s.flow, leastFlow) {
			s.warm.weir, r.weir = q, q
			return
		}
	}
	// Far off, or nearly empty: by halves.
	low, high := min(s.pond.floor, s.vault.floor), float64(s.in.Pond.Top())+farOver
	for range 60 {
		z := (low + high) / 2
		r.apart(z, q)
		if r.held() > water {
			high = z
		} else {
			low = z
		}
	}
	s.pond.z = r.zPond
	r.carry(t, x)
	q = r.drawn - r.back
	s.warm.weir, r.weir = q, q
}

// level moves both levels together to where they hold the water.
func (r *run) level(water float64) bool {
	s := r.s
	for range 12 {
		area := s.pond.area(r.zPond)
		if s.in.Vault != nil {
			area += s.vault.area(r.zVault)
		}
		step := (water - r.held()) / area
		r.zPond, r.zSill, r.zVault = r.zPond+step, r.zSill+step, r.zVault+step
		if !(area > 0) || r.zPond < s.pond.floor {
			return false
		}
		if math.Abs(step) <= r.close*nearby {
			s.pond.z = r.zPond
			return true // the next step would be this one's square
		}
	}
	return false
}

// held is what pond and vault hold at their levels.
func (r *run) held() float64 {
	v := r.s.pond.volume(r.zPond)
	if r.s.in.Vault != nil {
		v += r.s.vault.volume(r.zVault)
	}
	return v
}

// How near levels and flow of pond and vault must come to themselves: on the
// way, and for the books at the end.
const (
	roughly, exactly = 1e-3, 1e-9 // of the flow
	nearby           = 0.1        // m, for each part of the flow
	leastFlow        = 1e-4       // m³/s, where the pump gives less
	farOver          = 10.0       // m over the water line, to which no pond comes
)

// apart puts the vault behind a pond at z as a flow q wants it.
func (r *run) apart(z, q float64) {
	s := r.s
	r.zPond, r.zSill, r.zVault, r.slope = z, z, z, math.Inf(1)
	if s.in.Vault == nil {
		return
	}
	if s.sill != nil {
		var hv float64
		if r.close == exactly || !s.warm.sill.near(z-s.sill.crest, q) {
			s.warm.sill = s.sill.drop(z-s.sill.crest, q)
		}
		hv, r.slope = s.warm.sill.at(z-s.sill.crest, q)
		r.zSill = min(z, s.sill.crest) + hv
	}
	r.zVault = r.zSill - r.screen()
}

// carry sets what the pump draws and gives, and what runs back.
func (r *run) carry(t float64, x []float64) {
	s := r.s
	r.raw, r.drawn, r.back = 0, 0, 0
	if r.pumping {
		if r.p.Valve == StuckShut {
			for i := range s.given {
				s.given[i] = 0
			}
			return
		}
		r.lifts(x)
		r.supply.Flows(s.lift, s.given)
		part := 1.0
		if t < r.rampEnd {
			part = t / r.rampEnd
		}
		for i := range s.given {
			s.given[i] *= unit.Flow(part)
			r.raw += float64(s.given[i])
		}
		r.drawn = r.raw
		return
	}
	for i := range s.feeds {
		s.given[i] = -unit.Flow(r.runsBack(i, x))
		r.back -= float64(s.given[i])
	}
}

// lifts sets the lift to the water at each pipe's end.
func (r *run) lifts(x []float64) {
	s := r.s
	for i := range s.feeds {
		s.lift[i] = unit.Length(r.water(i, x) - r.zVault)
	}
}

// water gives the level of the water that a pipe's head stands against: the
// box's, or of a pipe that is not full how far it has filled.
func (r *run) water(i int, x []float64) float64 {
	w := &r.s.feeds[i]
	if r.pipes[i].full {
		return w.surface(x)
	}
	low := min(r.zVault, w.end)
	return low + (w.end-low)*max(0, min(1, x[w.pipe]/w.cap))
}

// thinHead is the head under which a flow that goes with its root is joined
// straight to zero, in metres.
const thinHead = 1e-4

// runsBack gives what runs back through a feed's pipe and the stopped pump:
// sqrt(h / R), R of pipe, pump and, of a valve that leaks, its opening.
func (r *run) runsBack(i int, x []float64) float64 {
	st, w := &r.pipes[i], &r.s.feeds[i]
	if !st.siphon && !st.drains {
		return 0
	}
	h := r.water(i, x) - r.zVault
	if h <= 0 {
		return 0
	}
	back := r.wayBack(w)
	if h < thinHead {
		return h / math.Sqrt(thinHead*back)
	}
	return math.Sqrt(h / back)
}

// wayBack is R of a feed's way back as the valve lets it.
func (r *run) wayBack(w *way) float64 {
	back := w.back
	if w.Valve && r.p.Valve == Leaking {
		back += r.p.Leak.resistance(w.Bore)
	}
	if back <= 0 {
		back = leastBack
	}
	return back
}

// leastBack keeps a way without any resistance from emptying in no time, in
// s²/m⁵: a metre of head drives 100 l/s.
const leastBack = 100

// watercourses runs a share of what is given through box, reaches and pools,
// and gives what comes down to the pond, and the rain on the way.
func (r *run) watercourses(x, dx []float64, share float64) (down, rain float64) {
	for i := stFeeds; i < len(dx); i++ {
		dx[i] = 0
	}
	if r.sideways {
		clear(r.gains)
		r.asides(x, dx)
	}
	for i := range r.s.feeds {
		w := &r.s.feeds[i]
		in := float64(r.s.given[i]) * share
		switch st := &r.pipes[i]; {
		case !st.full:
			dx[w.pipe], in = in, 0
		case st.siphon:
			dx[w.parts[0].at] += in // below zero: out of the box
			in = 0
		}
		if r.sideways {
			in += r.gains[i]
		}
		for k := range w.parts {
			p := &w.parts[k]
			rain += r.rainRate * p.plan
			in += r.rainRate * p.plan
			out, leak := 0.0, p.leaks(x[p.at])
			switch {
			case k == 0 && (r.pipes[i].aside || r.pipes[i].siphon) && r.passes(p):
				// What the pipe takes comes first, and fills up first.
				if x[p.at] >= p.full*(1-restSlack) {
					leak = min(leak, in)
					out = max(0, in+dx[p.at]-leak)
				}
			case r.passes(p):
				leak = min(leak, in)
				out = in - leak
			case p.reach > 0:
				out = p.runs(x[p.at])
			case p.lip != nil:
				out = p.spills(x[p.at])
			}
			dx[p.at] += in - out - leak
			down += leak
			in = out
		}
		down += in
	}
	return down, rain
}
