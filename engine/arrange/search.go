package arrange

import (
	"context"
	"math"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// The usual limits.
const (
	usualElbows = 4
	usualBest   = 5
	usualNodes  = 4000
)

// search is the work on one input. Nothing in it but its workers changes once
// it runs, so that several orders can be looked at at once.
type search struct {
	in     Input
	lim    layout.InForce
	hole   layout.Hole
	across geom.Vec3 // level, along the wall
	seat   geom.Vec3 // square to the wall
	exit   layout.Wall
	walls  []wall
	rounds []roundWall
	kits   [][]kit // by standing
	ways   map[wayKey]*compass
	glued  glued

	since *Outcome           // what was found before, of chains that are not looked at again; nil: nothing was
	until func(*Layout) bool // a layout that ends the search; nil: none does

	recalls bool    // orders left undecided are kept
	undone  []order // these

	programs int // linear ones that the search took in which nothing was found
	spent    int // and those that went into what would mend it

	unfinished bool // of which some was left undecided

	idle       []bool // standings that no angle between those of the compass helps; nil: not looked at
	sound      bool   // the input can be searched
	halted     func() bool
	unsketched bool               // sketches rule out nothing, for tests
	listed     bool               // planes of the list alone decide, in sketches too, for tests
	watch      func() bool        // asked in place of the context, for tests; nil: the context is
	judge      func(*Layout) bool // refuses layouts, for tests; nil: none
	workers    []*worker          // one for each core
}

type wayKey struct {
	standing int
	turned   unit.Angle
}

// roundWall is the wall of a round vault, or its rim.
type roundWall struct {
	layout.Cone
	wall layout.Wall
	slid bool
}

// Search finds the assemblies that no other beats in every respect: head,
// joints, cost, how far the pump must be slid, and whether the water above comes
// down when the union is opened; how deep the union lies and how much water
// comes down are told beside them. Of assemblies alike but for their lengths it
// takes the one with the least pipe, and it slides the pump only where the same
// fittings give no assembly that lifts straight out. One that must be slid counts
// as beaten by one that is slid no farther than its union asks and takes less of
// everything else even with three times its slide added to its pipe. Where nothing fits it says
// what failed. It never panics; what is wrong with the input comes back as
// faults. Cancelling the context ends it with what was found; tell may be nil.
//
// Method: depth first over the directions of the legs; for each order of
// fittings a bound on what it costs at least; branch and bound over the planes
// that keep bodies apart (A. H. Land and A. G. Doig, 1960), with a linear program
// for lengths and place (see program).
func Search(ctx context.Context, in Input, tell func(Progress)) Outcome {
	in.coupled = false
	s, out := newSearch(in)
	switch {
	case !s.sound:
		return out
	case in.couples():
		return s.coupling(ctx, out, tell)
	}
	return s.run(ctx, out, tell)
}

func newSearch(in Input) (*search, Outcome) {
	var out Outcome
	r := &in.Rules
	if r.Elbows <= 0 {
		r.Elbows = usualElbows
	}
	if r.Best <= 0 {
		r.Best = usualBest
	}
	if r.Nodes <= 0 {
		r.Nodes = usualNodes
	}
	s := &search{in: in, lim: in.Settings.InForce(), ways: map[wayKey]*compass{}}
	out.Faults = s.check()
	if s.sound = !slices.ContainsFunc(out.Faults, func(f trace.Fault) bool { return f.Code != FaultOverlap }); !s.sound {
		return s, out
	}
	s.hole, _ = in.Vault.Hole()
	s.across = geom.Vec3{Z: 1}.Cross(s.hole.Axis)
	if wrong := s.glue(); len(wrong) > 0 {
		s.sound, out.Faults = false, append(out.Faults, wrong...)
		return s, out
	}
	s.seat, s.exit = s.hole.Axis, in.Vault.Outlet.Wall
	planes, round := in.Vault.Inside()
	for _, p := range planes {
		s.walls = append(s.walls, wall{Plane: p}, wall{Plane: p, slid: true})
		if p.Wall == in.Vault.Outlet.Wall {
			s.seat = p.N
		}
	}
	if round != nil {
		s.exit = layout.Round
		s.rounds = append(s.rounds, roundWall{*round, layout.Round, false}, roundWall{*round, layout.Round, true})
	}
	way, rim := in.Vault.Way()
	whole := in.Vault.Opening == layout.Opening{} // else the way out may grow without the wall
	for _, p := range way {
		if !whole || !slices.Contains(planes, p) {
			s.walls = append(s.walls, wall{Plane: p, slid: true, rim: true})
		}
	}
	if rim != nil && (round == nil || *rim != *round) {
		s.rounds = append(s.rounds, roundWall{*rim, layout.Round, true})
	}
	for i := range in.Standings {
		st := &in.Standings[i]
		kits := s.hold(i, s.in.kits(in.outlet(i)))
		s.kits = append(s.kits, kits)
		for _, turned := range st.turnsOf() {
			port := st.Pump.Points.RotateAbout(geom.Vec3{Z: 1}, turned).Unit()
			pre, from := s.turnedPre(square(port), turned)
			c := newCompass(square(from), square(s.glued.into), append(append(pre[:len(pre):len(pre)], s.glued.post...), port, s.hole.Axis)...)
			c.pre, c.post = pre, s.glued.post
			s.bow(kits, c)
			if c.pump = s.bareOf(st, turned); c.pump != nil {
				for _, b := range s.surroundings(c.pump, nil) {
					for _, d := range b.edges() {
						c.cut(d) // a pump may stand askew to all legs
					}
				}
				c.mirror()
				c.around = s.surroundings(c.pump, c.apart)
			}
			s.ways[wayKey{i, turned}] = c
		}
	}
	out.Least = s.leastTurn()
	return s, out
}

// square takes the dust off a direction along an axis.
func square(d geom.Vec3) geom.Vec3 {
	for _, f := range [...]*float64{&d.X, &d.Y, &d.Z} {
		if math.Abs(*f) < 1e-12 {
			*f = 0
		}
	}
	return d.Unit()
}

func (s *search) compassOf(standing int, turned unit.Angle) *compass {
	return s.ways[wayKey{standing, turned}]
}

// standing gives the attitude of a chain's pump.
func (s *search) standing(c *chain) *Standing { return &s.in.Standings[c.standing] }
