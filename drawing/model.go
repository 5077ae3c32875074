package drawing

import (
	"plashet/engine/geom"
	"plashet/engine/layout"
)

// Kind is what a solid of a model is, in words of the trade.
type Kind string

// The kinds.
const (
	KindPump     Kind = "pump"
	KindPipe     Kind = "pipe"
	KindFitting  Kind = "fitting"
	KindValve    Kind = "valve"
	KindUnion    Kind = "union"
	KindObstacle Kind = "obstacle"
)

// Ball is a ball.
type Ball struct {
	Centre geom.Vec3
	Radius float64 // m
}

// Solid is one thing in the vault, by the bodies that it is made of.
type Solid struct {
	Kind   Kind
	Mark   string // of the part or piece; "" for pump and obstacles
	Title  string // what it is, for who touches or points at it
	Tubes  []layout.Cylinder
	Blocks []layout.Block
	Balls  []Ball
}

// Name is the solid's mark, an obstacle's own name, or what it is.
func (s *Solid) Name() string {
	switch {
	case s.Mark != "":
		return s.Mark
	case s.Kind == KindObstacle && s.Title != "":
		return s.Title
	}
	return string(s.Kind)
}

// Model is the vault with what stands in it, in metres in the vault's frame: x to
// the right, y to the back, z up from the left front corner of the floor.
type Model struct {
	Title      string
	Held       bool // the assembly cannot be built as it is laid
	Floor, Rim []geom.Vec3
	Solids     []Solid
}

// ModelOf gives the bodies that the isometric sheets are drawn of. Without a laid
// assembly there are none.
func ModelOf(in Input) (Model, bool) {
	if in.Result == nil || in.Result.Assembly == nil || !in.Result.Assembly.Laid {
		return Model{}, false
	}
	a := &iso{page: &page{in: in}, laid: in.Result.Assembly, view: newView(FrontLeft), made: madeOf(in)}
	a.gather()
	rings := a.box().rings()
	m := Model{Title: in.say("model.title") + ": " + in.Result.Name, Held: in.Result.NotToCut, Floor: rings[0], Rim: rings[1]}
	for _, t := range a.things {
		s := Solid{Kind: t.kind, Mark: t.mark, Title: t.title}
		for _, x := range t.shapes {
			switch x := x.(type) {
			case tube:
				s.Tubes = append(s.Tubes, x.cylinder())
			case block:
				s.Blocks = append(s.Blocks, layout.Block(x))
			}
		}
		if t.corner != nil {
			s.Balls = append(s.Balls, *t.corner)
		}
		if n := len(m.Solids); n > 0 && s.Kind == KindPump && m.Solids[n-1].Kind == KindPump { // one pump of several bodies
			m.Solids[n-1].Tubes = append(m.Solids[n-1].Tubes, s.Tubes...)
			m.Solids[n-1].Blocks = append(m.Solids[n-1].Blocks, s.Blocks...)
			continue
		}
		m.Solids = append(m.Solids, s)
	}
	return m, true
}

// kindOf is what a part of the assembly is.
func (a *iso) kindOf(part int) Kind {
	if part >= len(a.in.Job.Assembly.Parts) {
		return KindFitting
	}
	switch k := layout.Kind(a.in.Job.Assembly.Parts[part].Fitting); {
	case k.IsCheck(), k == layout.BallValve, k == layout.GateValve:
		return KindValve
	case k == layout.Union:
		return KindUnion
	}
	return KindFitting
}
