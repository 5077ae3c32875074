package app

import (
	"bytes"
	"html/template"
	"strings"
	"sync"

	"plashet/answer"
	"plashet/drawing"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/render/svg"
)

// cached is how many answers are kept: enough for a crew's jobs of a day and
// the states that an edit compares.
const cached = 64

// curvePoints is at how many flows the system curve is worked out.
const curvePoints = 121

// solved is a job with its answer. It is never changed once made.
type solved struct {
	job    *job.Job // nil where nothing could be read
	faults []trace.Fault
	result *design.Result
	doc    answer.Document

	mu     sync.Mutex
	sheets map[string][]sheet // by part, drawn when first asked for
}

// sheet is a drawing ready to stand in a page.
type sheet struct {
	Name, Title string
	SVG         template.HTML
}

// cache keeps answers by the digest of their jobs, the least used go first.
type cache struct {
	mu    sync.Mutex
	most  int
	order []string
	kept  map[string]*entry
}

type entry struct {
	once sync.Once
	s    *solved
}

func newCache() *cache { return &cache{most: cached, kept: map[string]*entry{}} }

func (c *cache) get(digest string) *entry {
	c.mu.Lock()
	defer c.mu.Unlock()
	e, ok := c.kept[digest]
	if !ok {
		e = &entry{}
		c.kept[digest] = e
	}
	for i, d := range c.order {
		if d == digest {
			c.order = append(c.order[:i], c.order[i+1:]...)
			break
		}
	}
	c.order = append(c.order, digest)
	for len(c.order) > c.most {
		delete(c.kept, c.order[0])
		c.order = c.order[1:]
	}
	return e
}

// solve works out the answer to a job's bytes, once for each digest.
func (a *app) solve(digest string, data []byte) *solved {
	e := a.cache.get(digest)
	e.once.Do(func() {
		s := &solved{}
		s.job, s.faults = job.Read(data)
		if s.job == nil {
			s.job = &job.Job{Format: job.FormatName, Version: job.Version, Units: "us"}
		}
		s.result = design.Solve(a.Book, s.job, s.faults...)
		s.doc = answer.Build(s.result, s.faults, a.Language)
		e.s = s
	})
	if e.s == nil { // it panicked once: try again rather than hand out nothing
		a.cache.drop(digest)
		return a.solve(digest, data)
	}
	return e.s
}

// shown gives an answer in the units that a person has everything shown in; the
// job's fields stay as they were typed.
func (a *app) shown(s *solved, digest, units string) *solved {
	system := s.job.System()
	switch units {
	case "us":
		system = system.In(unit.US)
	case "metric":
		system = system.In(unit.Metric)
	}
	if system == s.job.System() {
		return s
	}
	e := a.cache.get(digest + " " + units)
	e.once.Do(func() {
		r := *s.result
		r.Units = system
		e.s = &solved{job: s.job, faults: s.faults, result: &r, doc: answer.Build(&r, s.faults, a.Language)}
	})
	if e.s == nil {
		return s
	}
	return e.s
}

func (c *cache) drop(digest string) {
	c.mu.Lock()
	defer c.mu.Unlock()
	delete(c.kept, digest)
}

// draws tells how the drawings of a part are made.
var draws = map[string]func(in drawing.Input) []drawing.Sheet{
	"pond":   one(drawing.Plan),
	"pump":   one(drawing.Curve, drawing.Front),
	"levels": func(in drawing.Input) []drawing.Sheet { return append(one(drawing.Levels)(in), courses(in)...) },
	"vault":  one(drawing.WayOut),
	"cuts":   drawing.Sticks,
	"glue":   drawing.GlueSteps,
}

// one makes a list of drawings that there is one or none of.
func one(list ...func(in drawing.Input) (drawing.Sheet, bool)) func(in drawing.Input) []drawing.Sheet {
	return func(in drawing.Input) []drawing.Sheet {
		var out []drawing.Sheet
		for _, draw := range list {
			if s, ok := draw(in); ok {
				out = append(out, s)
			}
		}
		return out
	}
}

// courses draws the levels through time, case by case.
func courses(in drawing.Input) []drawing.Sheet {
	var out []drawing.Sheet
	if in.Result.Motion != nil {
		for i := range in.Result.Motion.Cases {
			if s, ok := drawing.Course(in, in.Result.Motion.Cases[i].Case); ok {
				out = append(out, s)
			}
		}
	}
	return out
}

// drawn is what is drawn.
func (a *app) drawn(s *solved) drawing.Input {
	return drawing.Input{Job: s.job, Result: s.result, Curves: design.CurvesOf(a.Book, s.job, s.result, curvePoints), Say: a.Language}
}

// sheetsOf gives the drawings of a part.
func (a *app) sheetsOf(s *solved, part string) []sheet {
	return a.sheetsBy(s, part, nil, draws[part])
}

// sheetsBy gives drawings by the name they are kept under; with href their parts
// are links.
func (a *app) sheetsBy(s *solved, part string, href func(mark string) string, draw func(in drawing.Input) []drawing.Sheet) []sheet {
	s.mu.Lock()
	defer s.mu.Unlock()
	if list, ok := s.sheets[part]; ok || draw == nil {
		return list
	}
	var list []sheet
	for _, d := range drawing.Numbered(draw(a.drawn(s))) {
		if x := inline(d, href); x != nil {
			list = append(list, *x)
		}
	}
	if s.sheets == nil {
		s.sheets = map[string][]sheet{}
	}
	s.sheets[part] = list
	return list
}

// inline makes a drawing ready to stand in a page; nil where a coordinate is no
// number: the figures still stand.
func inline(d drawing.Sheet, href func(mark string) string) *sheet {
	var b bytes.Buffer
	if svg.Linked(&b, &d, href) != nil {
		return nil
	}
	//nolint:gosec // written by render/svg, which escapes every text
	return &sheet{d.Name, d.Title, template.HTML(b.String())}
}

// alone draws one sheet as a file; nil where there is none of that name.
func (a *app) alone(s *solved, name string) []byte {
	in := a.drawn(s)
	if c, ok := strings.CutPrefix(name, "assembly-"); ok && cornerOf(c) >= 0 {
		if d, ok := drawing.Assembly(in, drawing.Corner(cornerOf(c))); ok {
			var b bytes.Buffer
			if svg.Write(&b, &d) == nil {
				return b.Bytes()
			}
		}
		return nil
	}
	for _, p := range parts {
		if draws[p.Key] == nil {
			continue
		}
		for _, d := range drawing.Numbered(draws[p.Key](in)) {
			var b bytes.Buffer
			if d.Name == name && svg.Write(&b, &d) == nil {
				return b.Bytes()
			}
		}
	}
	return nil
}
