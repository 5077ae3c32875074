package drawing

import (
	"math"
	"strings"

	"plashet/engine/unit"
	"plashet/job"
)

// PlanParts gives the picture of a plan and, apart from it, its lists: the pond's
// sizes, the runs, the falls from the top down, each as far as the job has it, and
// last what was not surveyed. Without an outline there are none.
func PlanParts(in Input) (picture Sheet, lists []List, ok bool) {
	p, ok := planOf(in)
	if !ok {
		return Sheet{}, nil, false
	}
	for _, t := range p.tables() {
		lists = append(lists, t.list())
	}
	if n := p.noShelf(); n != "" {
		lists[0].Notes = append(lists[0].Notes, n)
	}
	last := &lists[len(lists)-1]
	last.Notes = append(last.Notes, p.say("plan.unsurveyed"))
	return p.done(p.desc()), lists, true
}

// lists writes them below the picture.
func (p *plan) lists() {
	for i, t := range p.tables() {
		p.table(t)
		if n := p.noShelf(); i == 0 && n != "" {
			p.paragraph(n, false)
		}
		p.y += 2
	}
	p.paragraph(p.say("plan.unsurveyed"), false)
}

// noShelf names the shelves that could not be drawn; nothing where all could.
func (p *plan) noShelf() string {
	if len(p.unsaid) == 0 {
		return ""
	}
	return p.say("plan.noshelf", "list", strings.Join(p.unsaid, ", "))
}

// tables gives sizes and shelves, runs and falls; the pond's is always there.
func (p *plan) tables() []table {
	t := table{title: p.say("plan.pond"), columns: []column{{flexible: true}, {anchor: End, bold: true}}}
	t.add(p.say("plan.area"), p.show(float64(p.o.Area()), unit.KindArea))
	t.add(p.say("plan.round"), p.show(float64(p.o.Perimeter()), unit.KindDistance))
	for _, s := range p.in.Job.Pond.Section {
		t.add(p.say("plan.shelf", "in", p.show(float64(s.In.SI), unit.KindDepth)), p.show(float64(s.Depth.SI), unit.KindDepth))
	}
	out := []table{t}
	if len(p.in.Job.Runs) > 0 {
		out = append(out, p.runs())
	}
	if t := p.falls(); len(t.rows) > 0 {
		out = append(out, t)
	}
	return out
}

func (p *plan) runs() table {
	t := table{title: p.say("plan.runs"), columns: []column{{flexible: true}, {}, {anchor: End}, {anchor: End}}, head: []string{p.say("plan.run"), p.say("plan.pipe"), p.say("plan.length"), p.say("plan.rise")}}
	for i := range p.in.Job.Runs {
		run := &p.in.Job.Runs[i]
		rise := "—"
		if !run.Rise.IsZero() {
			rise = p.show(float64(run.Rise.SI), unit.KindElevation)
		}
		name := run.Name
		if run.Existing {
			name += " (" + p.say("plan.existing") + ")"
		}
		t.add(name+", "+p.end(run.From)+" – "+p.end(run.To), run.Pipe.Size, p.show(float64(run.Length.SI), unit.KindDistance), rise)
	}
	return t
}

// end names an end of a run: where it begins at the pump by a word of the language.
func (p *plan) end(name string) string {
	if name == job.FromPump {
		return p.in.language().Term(name)
	}
	return name
}

// falls lists the parts of the watercourses from the top down.
func (p *plan) falls() table {
	t := table{title: p.say("plan.falls"), columns: []column{{flexible: true}, {}, {anchor: End}}, head: []string{p.say("plan.fall"), "", p.say("plan.width")}}
	for i := range p.in.Job.Watercourses {
		c := &p.in.Job.Watercourses[i]
		for _, part := range c.Parts {
			switch {
			case part.Lip != nil:
				t.add(c.Name+": "+part.Lip.Name, p.say("plan.lip"), p.tape(part.Lip.Width.SI))
			case part.Reach != nil:
				t.add(c.Name+": "+part.Reach.Name, p.say("plan.reach", "length", p.show(float64(part.Reach.Length.SI), unit.KindPlan)), p.show(float64(part.Reach.Width.SI), unit.KindPlan))
			case part.Pool != nil:
				w := "—"
				if part.Pool.Width.SI > 0 {
					w = p.show(float64(part.Pool.Width.SI), unit.KindPlan)
				}
				t.add(c.Name+": "+part.Pool.Name, p.say("plan.pool"), w)
			}
		}
	}
	return t
}

// depths writes how deep the pond is from each shelf's edge on: one under the
// other in its middle, where they stand on no line, each with a lead to the
// left to the edge that it tells of. The list has them in any case.
func (p *plan) depths(rings [][]Point, said []string) {
	if len(rings) == 0 {
		return
	}
	mid := middle(rings[len(rings)-1])
	for i, ring := range rings {
		y := mid.Y + (float64(i)-float64(len(rings)-1)/2)*row
		t := Text{At: Point{mid.X, y + small*0.36}, Size: small, Anchor: Middle, Ink: Black, Halo: true, Text: said[i]}
		from := mid.X - t.Width()/2 - 1.2
		to, ok := leftOn(ring, y, from)
		if !ok {
			continue
		}
		if best, ok := p.field.ifFree([]place{{text: t}}); ok {
			p.text(best.text)
			p.add(Line{Point{from, y}, Point{to, y}, help}, Arc{Centre: Point{to, y}, RX: 0.8, RY: 0.8, Sweep: 360, Fill: Black})
		}
	}
}

// middle gives the middle of the box round some points.
func middle(points []Point) Point {
	b := patchOf(points...)
	return b.low.Add(b.high).Scale(0.5)
}

// leftOn gives where a level line at height y first meets a closed line to the
// left of x.
func leftOn(ring []Point, y, x float64) (float64, bool) {
	best := math.Inf(-1)
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > y) == (b.Y > y) {
			continue
		}
		if at := a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y); at < x {
			best = max(best, at)
		}
	}
	return best, !math.IsInf(best, -1)
}
