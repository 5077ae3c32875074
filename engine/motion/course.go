package motion

import "plashet/engine/unit"

// Moment is where all the water is.
type Moment struct {
	Pond, Vault unit.Length // levels; without a vault both are the pond's
	x           []float64
}

// Start is what the watercourses hold before the pump starts.
type Start uint8

// The starts.
const (
	Dry  Start = iota // the first: pond filled, all else empty
	Held              // what stays with the check valve working
	Open              // what stays with the pipe open
)

// keeps gives what stays of a store: with the valve holding, with it open, or
// nothing before the first start.
func (c Start) keeps(held, open float64) float64 {
	switch c {
	case Held:
		return held
	case Open:
		return open
	case Dry:
	}
	return 0
}

// AtRest gives the moment at which the pond is filled to the water line and the
// watercourses hold what they keep.
func (s *System) AtRest(c Start) Moment {
	x := make([]float64, s.size)
	line := float64(s.in.Line)
	m := Moment{Pond: s.in.Line, Vault: s.in.Line}
	x[stPond] = s.pond.volume(line)
	if s.in.Vault != nil {
		if s.sill != nil && line <= s.sill.crest {
			m.Vault = s.in.Vault.Body.Floor()
		}
		x[stVault] = s.vault.volume(float64(m.Vault))
	}
	for i := range s.feeds {
		w := &s.feeds[i]
		x[w.pipe] = c.keeps(w.held, w.open)
		for k := range w.parts {
			p := &w.parts[k]
			x[p.at] = c.keeps(p.held, p.openKeep)
		}
	}
	m.x = x
	return m
}

// Filled gives the moment at which pond and vault stand at levels of their own
// (without a vault the pond's counts) and all that a valve holds is full.
func (s *System) Filled(pond, vault unit.Length) Moment {
	m := s.AtRest(Held)
	m.Pond, m.Vault = pond, pond
	m.x[stPond] = s.pond.volume(float64(pond))
	if s.in.Vault != nil {
		m.Vault = vault
		m.x[stVault] = s.vault.volume(float64(vault))
	}
	return m
}

// EventCode names what happens at an instant.
type EventCode string

// The events.
const (
	EventPipeFull   EventCode = "pipe-full"   // water comes into the box
	EventLip        EventCode = "lip"         // water comes over the first lip
	EventSill       EventCode = "sill"        // the pond has fallen to the sill: the vault is cut off
	EventDry        EventCode = "dry"         // the pump draws air
	EventRecovers   EventCode = "recovers"    // it has water again
	EventRim        EventCode = "rim"         // the pond runs over
	EventRimEnds    EventCode = "rim-ends"    // it no longer does
	EventSiphonEnds EventCode = "siphon-ends" // air comes in at the box's inlet
	EventPipeEmpty  EventCode = "pipe-empty"
	EventCut        EventCode = "cut"   // the power goes
	EventStill      EventCode = "still" // all is still, or runs steadily
)

// Event is one of them; Feed is -1 where it is of none.
type Event struct {
	Code EventCode
	At   unit.Duration
	Feed int
}

// Sample is the state at one time.
type Sample struct {
	At          unit.Duration
	Pond, Vault unit.Length
	Drawn       unit.Flow   // by the pump
	Back        unit.Flow   // through the stopped pump
	Returns     unit.Flow   // down the watercourses into the pond
	Stored      unit.Volume // in pipes, boxes, pools and streams
	Over        unit.Volume // run over the rim so far
}

// Course is the answer to a program.
type Course struct {
	End  Moment
	Took unit.Duration // until its end

	Lowest    unit.Length // of the vault's level, at the pump
	LowestAt  unit.Duration
	Highest   unit.Length // of the pond's level
	HighestAt unit.Duration

	Dry   bool // the pump draws air
	DryAt unit.Duration
	// Gasping: it still does at the end; DryFor is the time that it did in all.
	Gasping bool
	DryFor  unit.Duration
	Cut     bool // the pond fell to the sill
	CutAt   unit.Duration
	Spills  bool // the pond came to its rim and ran over
	RimAt   unit.Duration
	Over    unit.Volume // run over the rim
	Still   bool        // all came to rest, or to steady running, before the bound
	StillAt unit.Duration
	Back    unit.Volume // come back through the pump into the vault
	Down    unit.Volume // come down the watercourses into the pond
	Added   unit.Volume // rain and top-up
	Pumped  unit.Volume
	Stored  unit.Volume // in pipes, boxes, pools and streams at the end
	Passes  unit.Flow   // drawn by the pump at the end
	Events  []Event     // in their order
	Series  []Sample    // thinned
	Steps   int         // taken
	Evals   int         // of the rates
	// Mass is the water that the books lack or have too much at the end, by the
	// levels of pond and vault, over what the watercourses hold running.
	Mass unit.Ratio
}
