package job

import (
	"math"
	"reflect"
	"strconv"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Names that a level may use without a survey point of that name.
const (
	nameWater = "water"
	nameRim   = "rim"
)

type progress uint8

const (
	untouched progress = iota
	busy
	known
	void
)

// reducer resolves points on demand, so that their order does not matter.
type reducer struct {
	checker
	out     Reduced
	points  map[string]int
	setups  map[string]int
	state   []progress // of points
	found   []elevation
	from    []string // standing of each point
	names   []string // of points, made when first asked for
	chain   []string // points being resolved, for a circle
	builtin map[string]progress
}

func reduce(j *Job) *reducer {
	s := &j.Survey
	r := &reducer{
		checker: checker{j: j},
		points:  make(map[string]int, len(s.Points)), setups: make(map[string]int, len(s.Setups)),
		state: make([]progress, len(s.Points)), found: make([]elevation, len(s.Points)), from: make([]string, len(s.Points)),
		builtin: map[string]progress{},
	}
	r.out.levels = make(map[string]elevation, len(s.Points)+2)
	for i := len(s.Points) - 1; i >= 0; i-- { // of two alike the first counts; Validate tells
		r.points[s.Points[i].Name] = i
	}
	for i := len(s.Setups) - 1; i >= 0; i-- {
		r.setups[s.Setups[i].Name] = i
	}
	for i := range s.Points {
		p := &s.Points[i]
		if e, ok := r.point(i); ok {
			r.out.Points = append(r.out.Points, ReducedPoint{Name: p.Name, Path: r.pathOf(i), Elevation: e.at, Plus: e.plus, Setup: r.from[i]})
			if r.points[p.Name] == i && p.Name != "" {
				r.out.levels[p.Name] = e
			}
		}
	}
	r.heights()
	r.named(nameWater)
	r.named(nameRim)
	return r
}

func (r *reducer) pathOf(point int) string { return "/survey/points/" + strconv.Itoa(point) }

// point gives the elevation of a survey point.
func (r *reducer) point(i int) (elevation, bool) {
	p := &r.j.Survey.Points[i]
	switch r.state[i] {
	case known:
		return r.found[i], true
	case void:
		return elevation{}, false
	case busy:
		r.add(r.pathOf(i), CodeSurveyCircle, trace.Str("chain", listed(append(r.chain[r.start(p.Name):], p.Name))))
		return elevation{}, false
	}
	r.state[i] = busy
	r.chain = append(r.chain, p.Name)
	e, ok := r.work(i, p)
	r.chain = r.chain[:len(r.chain)-1]
	r.state[i] = void
	if ok {
		r.state[i], r.found[i] = known, e
	}
	return e, ok
}

// start finds where a circle of points begins.
func (r *reducer) start(name string) int {
	for i, n := range r.chain {
		if n == name {
			return i
		}
	}
	return 0
}

func (r *reducer) work(i int, p *Point) (elevation, bool) {
	if !p.Elevation.IsZero() {
		return elevation{p.Elevation.SI, p.Elevation.Plus}, true
	}
	if p.Reading.IsZero() {
		r.add(r.pathOf(i), CodeSurveyNothing)
		return elevation{}, false
	}
	s, ok := r.setupOf(i, p)
	if !ok {
		return elevation{}, false
	}
	height, ok := r.height(s)
	r.from[i] = r.j.Survey.Setups[s].Name
	return elevation{height.at - p.Reading.SI, height.plus + p.Reading.Plus}, ok
}

// setupOf finds the standing a point was read from.
func (r *reducer) setupOf(i int, p *Point) (int, bool) {
	setups := r.j.Survey.Setups
	path := r.pathOf(i) + "/setup"
	if p.Setup == "" {
		switch len(setups) {
		case 1:
			return 0, true
		case 0:
			r.add(path, CodeSurveyNoSetup)
		default:
			r.add(path, CodeSurveyWhich, trace.Str("known", listed(r.setupNames())))
		}
		return 0, false
	}
	s, ok := r.setups[p.Setup]
	if !ok {
		r.noSuch(path, p.Setup, r.setupNames())
	}
	return s, ok
}

// height gives the height of instrument of a standing. What is wrong with the
// standing itself is told once, by heights.
func (r *reducer) height(s int) (elevation, bool) {
	st := &r.j.Survey.Setups[s]
	i, ok := r.points[st.Benchmark]
	if !ok || st.Benchmark == "" || st.Reading.IsZero() {
		return elevation{}, false
	}
	e, ok := r.point(i)
	return elevation{e.at + st.Reading.SI, e.plus + st.Reading.Plus}, ok
}

// heights lists the standings, tells benchmarks that are no points, and
// compares the points that are both given and levelled.
func (r *reducer) heights() {
	for s := range r.j.Survey.Setups {
		st := &r.j.Survey.Setups[s]
		path := "/survey/setups/" + strconv.Itoa(s)
		if _, ok := r.points[st.Benchmark]; !ok && st.Benchmark != "" {
			r.noSuch(path+"/benchmark", st.Benchmark, r.pointNames()[:len(r.pointNames())-2]) // not the pond's two
		}
		if h, ok := r.height(s); ok {
			r.out.Setups = append(r.out.Setups, ReducedSetup{Name: st.Name, Path: path, Height: h.at, Plus: h.plus})
		}
	}
	for i := range r.j.Survey.Points {
		if p := &r.j.Survey.Points[i]; !p.Elevation.IsZero() && !p.Reading.IsZero() {
			r.close(i, p)
		}
	}
}

// close compares a given elevation with the levelled one.
func (r *reducer) close(i int, p *Point) {
	s, ok := r.setupOf(i, p)
	if !ok {
		return
	}
	h, ok := r.height(s)
	if !ok {
		return
	}
	c := Closure{Path: r.pathOf(i), Misclosure: h.at - p.Reading.SI - p.Elevation.SI}
	c.Limit = h.plus + p.Reading.Plus + p.Elevation.Plus
	if c.Limit == 0 {
		c.Limit, c.Assumed = ClosureUnsaid, true
	}
	r.out.Closures = append(r.out.Closures, c)
	// The billionth of a metre keeps a difference of exactly the limit inside.
	if math.Abs(float64(c.Misclosure)) > float64(c.Limit)+1e-9 {
		r.add(r.pathOf(i), CodeSurveyClosure,
			trace.Str("found", p.Elevation.Text),
			trace.Num("levelled", p.Elevation.SI+c.Misclosure, unit.KindElevation),
			trace.Num("misclosure", c.Misclosure, unit.KindDepth),
			trace.Num("limit", c.Limit, unit.KindDepth))
	}
}

// named resolves "water" and "rim" to the pond's levels where the survey has
// no points of that name.
func (r *reducer) named(name string) (elevation, bool) {
	if i, ok := r.points[name]; ok {
		return r.point(i)
	}
	l := r.pondLevel(name)
	if l == nil || l.IsZero() {
		return elevation{}, false
	}
	switch r.builtin[name] {
	case known:
		return r.out.levels[name], true
	case void:
		return elevation{}, false
	case busy:
		r.add("/pond/"+name, CodeLevelCircle, trace.Str("found", snippet(l.Text)))
		return elevation{}, false
	}
	r.builtin[name] = busy
	e, ok := elevation{l.SI, l.Plus}, true
	if l.Point != "" {
		var base elevation
		base, ok = r.named(l.Point)
		e = elevation{base.at + l.SI, base.plus + l.Plus}
	}
	r.builtin[name] = void
	if ok {
		r.builtin[name] = known
		r.out.levels[name] = e
	}
	return e, ok
}

func (r *reducer) pondLevel(name string) *Level {
	switch name {
	case nameWater:
		return &r.j.Pond.Water
	case nameRim:
		return &r.j.Pond.Rim
	}
	return nil
}

// tellAll goes through every level of the job and tells the names that refer
// to nothing.
func (r *reducer) tellAll() {
	w := walker{leaf: func(w *walker, fd *field, v reflect.Value) {
		if fd.shape != shapeLevel {
			return
		}
		l := v.Addr().Interface().(*Level)
		if l.Point == "" {
			return
		}
		if _, ok := r.points[l.Point]; ok {
			return
		}
		base := r.pondLevel(l.Point)
		switch {
		case base == nil:
			r.noPoint(w.path(), l)
		case base.IsZero():
			r.add(w.path(), CodeLevelBase, trace.Str("found", snippet(l.Text)), trace.Str("base", l.Point))
		}
	}}
	w.each(r.j)
}

// noPoint tells that a level names a point that the survey has not.
func (r *reducer) noPoint(path string, l *Level) {
	args := []trace.Arg{trace.Str("found", snippet(l.Text)), trace.Str("name", snippet(l.Point))}
	if near := r.nearest(l.Point, r.pointNames()); near != "" {
		r.add(path, CodeNoPointNear, append(args, trace.Str("near", snippet(near)))...)
		return
	}
	r.add(path, CodeNoPoint, append(args, trace.Str("known", listed(r.pointNames())))...)
}

// pointNames lists what a level may refer to.
func (r *reducer) pointNames() []string {
	if r.names == nil {
		for _, p := range r.j.Survey.Points {
			if p.Name != "" {
				r.names = append(r.names, p.Name)
			}
		}
		r.names = append(r.names, nameWater, nameRim)
	}
	return r.names
}

func (r *reducer) setupNames() []string {
	var names []string
	for _, s := range r.j.Survey.Setups {
		if s.Name != "" {
			names = append(names, s.Name)
		}
	}
	return names
}
