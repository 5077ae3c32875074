package level

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
	a.in = in
	if err := a.in.check(); err != nil {
		return nil, err
	}
	s := &a.s
	s.in, s.basin.in, s.brief, s.weir, s.screen = &a.in, &a.in, true, nil, 0
	if v := in.Vault; v != nil {
		s.screen = float64(v.ScreenLoss)
		if v.Sill != nil {
			s.weir = &a.weir
			if err := v.Sill.prepare(in.Flow, s.weir); err != nil {
				return nil, err
			}
		}
	}
	s.out.States = s.out.States[:0]
	s.ready()
	if n := roomLists * len(in.Stores); len(a.room) < n {
		a.room = make([]float64, n)
	}
	s.room = a.room
	s.courses()
	return &s.out, nil
}

// roomLists is how many lists of stores there is room for; the courses of a
// brief solution need no more than some twenty.
const roomLists = 32
