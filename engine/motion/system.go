package motion

import (
	"math"
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/unit"
)

// System is a feature made ready to be run. One System serves one goroutine.
type System struct {
	in    *Inputs
	pond  vessel
	vault vessel // of the pond where there is no vault
	sill  *sill
	feeds []way
	// beyond joins the boxes; nil where nothing does.
	beyond *beyond
	size   int // number of states
	low    float64
	rim    float64
	flow   float64
	loss   float64 // screen loss at flow
	// Rain falls on these, in m².
	pondPlan, vaultPlan float64
	transit             float64 // all that the watercourses hold running
	// LeftOut is the water over lips that empty too fast to be followed.
	LeftOut unit.Volume

	lift  []unit.Length
	given []unit.Flow
	brim  []float64 // of each state of a part, what it holds when full
	steps stepper
	run   run
	warm  hint
}

// The states that are not of a feed.
const (
	stPond = iota
	stVault
	stOver   // run over the rim
	stAdded  // rain and top-up
	stBack   // come back through the pump
	stReturn // come back down the watercourses
	stPumped
	stFeeds
)

// way is a feed made ready.
type way struct {
	*Feed
	pipe               int // state
	cap, held, open    float64
	end                float64 // elevation of the pipe's end
	parts              []part
	crest, depth, back float64
	boxAtRest          float64 // head over the crest where the box is not followed
}

// part is a Part made ready.
type part struct {
	*Part
	at                   int // state
	full, held, openKeep float64
	area                 float64
	lip                  *hydro.Lip // nil: what comes to a full one goes on
	coef                 float64    // of the plain weir: coef h^1.5
	reach                float64    // flow of a reach at its full volume
	over                 float64    // full less held, of a reach
	leak                 float64    // flow when full
	plan                 float64
}

// quick is the time in which a part empties, at steady flow, under which it is
// not followed: half a second.
const quick = 0.5

// New makes a system ready. Errors: an *Error for values out of range, a
// *hydro.Error for the sill's weir.
func New(in Inputs) (*System, error) {
	if err := in.check(); err != nil {
		return nil, err
	}
	s := &System{in: &in, pond: newVessel(in.Pond), low: float64(in.Low), rim: math.Inf(1), flow: float64(in.Flow), size: stFeeds}
	top := in.Line
	if !in.NoRim {
		s.rim = float64(in.Rim)
		top = max(top, in.Rim)
	}
	s.pondPlan = float64(in.Pond.Plan(top))
	if in.Vault != nil {
		s.vault = newVessel(in.Vault.Body)
		s.loss = float64(in.Vault.ScreenLoss)
		s.vaultPlan = float64(in.Vault.Body.Plan(max(top, in.Vault.Body.Top())))
		if in.Vault.Sill != nil {
			w, err := newSill(in.Vault.Sill)
			if err != nil {
				return nil, err
			}
			s.sill = w
		}
	}
	for i := range in.Feeds {
		s.feeds = append(s.feeds, s.way(&in.Feeds[i]))
	}
	s.lift, s.given = make([]unit.Length, len(s.feeds)), make([]unit.Flow, len(s.feeds))
	s.steps, s.brim = newStepper(s.size), make([]float64, s.size)
	for i := range s.feeds {
		for _, p := range s.feeds[i].parts {
			s.brim[p.at] = p.full
		}
	}
	s.beyond = newBeyond(s)
	n := len(s.feeds)
	s.run = run{s: s, pipes: make([]pipeState, n), gains: make([]float64, n), gives: make([]bool, n), takes: make([]bool, n), full: make([]bool, s.size)}
	return s, nil
}

func newSill(w *level.Sill) (*sill, error) {
	lip, err := hydro.LipLaw{Width: w.Width, C: w.C}.Prepare()
	if err != nil {
		return nil, err
	}
	return &sill{float64(w.Crest), w.C * float64(w.Width), lip}, nil
}

// Valved tells that a check valve stands in the way of any feed; without one a
// stop is the same whatever the valve does.
func (s *System) Valved() bool {
	return slices.ContainsFunc(s.feeds, func(w way) bool { return w.Valve })
}

func (s *System) next() int {
	s.size++
	return s.size - 1
}

func (s *System) way(f *Feed) way {
	w := way{Feed: f, pipe: s.next(), cap: float64(f.Pipe), held: float64(f.PipeHeld), open: float64(f.PipeOpen), crest: float64(f.Crest), depth: float64(f.Depth), back: f.Back}
	w.end = w.crest
	if f.Depth > 0 {
		w.end = float64(f.Crest - f.Depth + f.Inlet)
	}
	s.transit += w.cap
	for i := range f.Parts {
		p := &f.Parts[i]
		r := part{Part: p, at: s.next(), full: float64(p.Full), held: float64(p.Held), openKeep: float64(p.HeldOpen), plan: float64(p.Plan)}
		if p.Empties > 0 {
			r.leak = 2 * r.full / float64(p.Empties)
		}
		head := unit.Head(0)
		switch {
		case p.Reach:
			r.over = r.full - r.held
			// Emptying from steady running takes 3/5 of what is over, over the flow.
			if p.Flow > 0 && 0.6*r.over > quick*float64(p.Flow) {
				r.reach = float64(p.Flow)
			} else {
				r.full = r.held
				s.LeftOut += unit.Volume(r.over)
			}
		case p.Lip != nil:
			q := steadyFlow(f, s.in)
			head, _ = p.Lip.Head(unit.Flow(q))
			if h := float64(head); q <= 0 || float64(p.Area)*h > quick*1.5*q {
				r.lip, r.area = p.Lip, float64(p.Area)
				if p.Lip.Tilt == 0 {
					r.coef = p.Lip.C * float64(p.Lip.Width)
				}
			} else {
				s.LeftOut += unit.Volume(float64(p.Area) * h)
			}
			s.transit += float64(p.Area) * float64(head)
		}
		if r.area == 0 {
			r.lip = nil
		}
		if i == 0 && r.lip == nil {
			w.boxAtRest = float64(head)
		}
		s.transit += r.full
		w.parts = append(w.parts, r)
	}
	return w
}

// steadyFlow is what a feed gets in steady running: what its parts say, else an
// even share of the pump's.
func steadyFlow(f *Feed, in *Inputs) float64 {
	for _, p := range f.Parts {
		if p.Flow > 0 {
			return float64(p.Flow)
		}
	}
	return float64(in.Flow) / float64(len(in.Feeds))
}

// spills gives the flow over a part's lip for what it holds.
func (p *part) spills(v float64) float64 {
	if h := (v - p.full) / p.area; h > 0 {
		return overLip(p.lip, p.coef, h)
	}
	return 0
}

// runs gives the flow out of a reach: Manning's power of the depth over what
// stays, through what it holds and passes in steady running.
func (p *part) runs(v float64) float64 {
	x := (v - p.held) / p.over
	if x <= 0 {
		return 0
	}
	return p.reach * x * twoThirds(x)
}

// leaks gives what a leaking pool loses, as through a hole in its floor.
func (p *part) leaks(v float64) float64 {
	if p.leak == 0 || v <= 0 {
		return 0
	}
	return p.leak * math.Sqrt(v/p.full)
}

// surface gives the level of the water at the end of a full pipe: the box's,
// or the end itself where it pours in from above.
func (w *way) surface(x []float64) float64 {
	return max(w.end, w.boxLevel(x))
}

func (w *way) boxLevel(x []float64) float64 {
	p := &w.parts[0]
	v := x[p.at]
	switch {
	case v > p.full && p.lip != nil:
		return w.crest + (v-p.full)/p.area
	case p.full > 0 && w.depth > 0 && v < p.full:
		return w.crest - w.depth*(1-v/p.full)
	}
	return w.crest + w.boxAtRest
}
