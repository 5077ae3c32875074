package paper

import (
	"sync"

	"plashet/drawing"
	"plashet/engine/design"
)

// Of a last page that holds less than lastPage mm somebody prints, carries and
// loses a sheet for a line or two: it is saved where the sheet can be set tighter,
// and else filled with more of the page before.
const lastPage = 45.0

// tightly is how much of the paper between two things stays where a sheet is set
// tighter.
const tightly = 0.5

// art is the drawings of a job, each made once, when a sheet first asks for it: a
// sheet may be laid out more than once.
type art struct {
	plan     func() *planned
	water    func() []drawing.Sheet
	assembly func() []drawing.Sheet
	lists    func() []drawing.List
	sticks   func() []drawing.Sheet
	steps    func() []drawing.Sheet
}

// planned is the plan with its lists; nil without an outline.
type planned struct {
	picture drawing.Sheet
	lists   []drawing.List
}

func artOf(in drawing.Input) *art {
	return &art{
		plan: sync.OnceValue(func() *planned {
			s, l, ok := drawing.PlanParts(in)
			if !ok {
				return nil
			}
			return &planned{s, l}
		}),
		water: sync.OnceValue(func() (list []drawing.Sheet) {
			for _, draw := range []func(drawing.Input) (drawing.Sheet, bool){drawing.Curve, drawing.Levels} {
				if s, ok := draw(in); ok {
					list = append(list, s)
				}
			}
			for _, c := range []design.MovingCase{design.CaseFirst, design.CaseStop, design.CaseLeaks, design.CaseOpen} {
				if s, ok := drawing.Course(in, c); ok {
					list = append(list, s)
				}
			}
			return list
		}),
		assembly: sync.OnceValue(func() (list []drawing.Sheet) {
			for _, c := range []drawing.Corner{drawing.FrontLeft, drawing.BackRight} {
				if s, ok := drawing.AssemblyPicture(in, c); ok {
					list = append(list, s)
				}
			}
			return list
		}),
		lists:  sync.OnceValue(func() []drawing.List { return drawing.AssemblyLists(in) }),
		sticks: sync.OnceValue(func() []drawing.Sheet { return drawing.Sticks(in) }),
		steps:  sync.OnceValue(func() []drawing.Sheet { return drawing.GlueSteps(in) }),
	}
}

// setting is how a sheet's pages are filled.
type setting struct {
	loose float64 // how much of the paper between two things is kept
	page  int     // the page, from 1, that ends sooner, and by how many mm
	less  float64
}

// filled lays out a sheet, so that its last page is worth its paper where that can
// be.
func filled(in *Input, a *art, s *kind) *flow {
	f := fill(in, a, s, setting{loose: 1})
	if !f.widowed() {
		return f
	}
	n := len(f.pages)
	if t := fill(in, a, s, setting{loose: tightly}); len(t.pages) < n {
		return t
	}
	const step = 12.0 // mm: two or three lines more go over
	for less := step; less <= 8*step; less += step {
		if t := fill(in, a, s, setting{loose: 1, page: n - 1, less: less}); len(t.pages) == n && !t.widowed() {
			return t
		}
	}
	return f
}

// fill lays out a sheet in a setting.
func fill(in *Input, a *art, s *kind, set setting) *flow {
	f := newFlow(in, a, s.name, set)
	f.client = s.client
	s.fill(f)
	f.standing()
	f.aground()
	f.lacking()
	return f
}

// widowed tells that the last of several pages holds next to nothing.
func (f *flow) widowed() bool { return len(f.pages) > 1 && f.y-f.from < lastPage }
