package level

import "plashet/engine/unit"

// Again works the levels out again and again for inputs that differ a little
// (the draws of a band), in one place: after the first time it allocates
// nothing.
type Again struct {
	s    solver
	in   Inputs
	weir sillWeir
	room []float64
}

// Solve gives what the package's Solve gives, less all that a band does not
// need: of the courses the first start and the everyday one, without the start
// after the last stop; of the margins not what the reserve leaves; of the rim
// not what the rain leaves; no figures, lines, findings and assumptions, and
// not what each store holds. What it gives is good until the next call. Errors
// as Solve.
func (a *Again) Solve(in Inputs) (*Levels, error) {
	if err := a.ready(in); err != nil {
		return nil, err
	}
	a.s.courses()
	return &a.s.out, nil
}

// Running gives the vault's level of everyday running alone: what Solve's
// state of the everyday course at MomentRun has, for a search by the flow.
// Errors as Solve.
func (a *Again) Running(in Inputs) (unit.Length, error) {
	if err := a.ready(in); err != nil {
		return 0, err
	}
	s := &a.s
	before := held
	switch s.out.Everyday() {
	case CourseTopped:
		return lengthOf(s.runningAt(float64(in.RunningLine)).zVault), nil
	case CourseOpen:
		before = heldOpen
	case CourseKept, CourseFirst:
	}
	return lengthOf(s.run(s.filled(float64(in.Line)).water, s.volumes(before)).zVault), nil
}

// ready makes the solver ready for inputs.
func (a *Again) ready(in Inputs) error {
	a.in = in
	if err := a.in.check(); err != nil {
		return err
	}
	s := &a.s
	s.in, s.basin.in, s.brief, s.weir, s.screen = &a.in, &a.in, true, nil, 0
	if v := in.Vault; v != nil {
		s.screen = float64(v.ScreenLoss)
		if v.Sill != nil {
			s.weir = &a.weir
			if err := v.Sill.prepare(in.Flow, s.weir); err != nil {
				return err
			}
		}
	}
	s.out.States = s.out.States[:0]
	if n := roomLists * len(in.Stores); len(a.room) < n {
		a.room = make([]float64, n)
	}
	s.room = a.room
	s.ready()
	return nil
}

// roomLists is how many lists of stores there is room for; the courses of a
// brief solution need no more than some twenty.
const roomLists = 32
