package cut

import "context"

// effort is what the search may still spend. It is counted, not timed, so that
// the same problem ends at the same place on every machine; one step is about
// half a microsecond on a machine of 2020.
type effort struct {
	ctx     context.Context
	left    int
	spent   int
	stopped bool // by the caller
}

const (
	costPerStep   = 400  // floating point operations that count as one step
	stepsPerCheck = 4096 // steps between two looks at the caller's wish to stop
)

// spend takes steps off and tells whether to go on.
func (e *effort) spend(steps int) bool {
	if (e.spent+steps)/stepsPerCheck != e.spent/stepsPerCheck && e.ctx.Err() != nil {
		e.stopped = true
	}
	e.spent += steps
	e.left -= steps
	return e.left > 0 && !e.stopped
}

// portion runs f with at most limit steps.
func (e *effort) portion(limit int, f func()) {
	kept := 0
	if e.left > limit {
		kept = e.left - limit
		e.left = limit
	}
	f()
	e.left += kept
}
