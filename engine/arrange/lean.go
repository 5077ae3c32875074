package arrange

import "context"

// Where layouts exist, but with none the pump lifts or slides out, they are looked
// for with the pump leaned over on its way. How that goes no program tells: each
// layout is laid, and package layout looks for a way (see its tilt.go). That costs
// far more than a program, so that of few chains one assembly each is looked at;
// what was not looked at is told as undecided.

// mostLeaned is how many orders are looked at for each number of elbows, and
// mostLooks how many assemblies of one order.
const (
	mostLeaned = 24
	mostLooks  = 4
)

// leaned searches with the pump leaned over; nil where nothing was found.
func (s *search) leaned(ctx context.Context, tell func(Progress)) *Outcome {
	in := s.in
	in.Rules.Tilt, in.Rules.Brief = true, true
	out := Search(ctx, in, tell)
	out.Leaned = true
	if len(out.Layouts) == 0 {
		return nil
	}
	return &out
}
