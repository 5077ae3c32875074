package drawing

import (
	"strconv"

	"plashet/engine/design"
	"plashet/engine/unit"
)

// Frames gives how many moments of a case there are to draw with Frame, in the
// order of time; 0 without the case.
func Frames(in Input, which design.MovingCase) int {
	m, _, ok := movingOf(in, which)
	if !ok {
		return 0
	}
	return len(m.Series)
}

// Frame draws pond and vault in section at one moment of a case, counted from
// 0. All the frames of a job have one scale and one size, so that they can be
// played one after the other.
func Frame(in Input, which design.MovingCase, k int) (Sheet, bool) {
	m, b, ok := movingOf(in, which)
	if !ok || k < 0 || k >= len(m.Series) {
		return Sheet{}, false
	}
	s := m.Series[k]
	b.run.Pond, b.run.Vault, b.moving = s.Pond, s.Vault, true
	for i := range in.Result.Motion.Cases {
		c := &in.Result.Motion.Cases[i]
		b.reach = append(b.reach, c.Highest, c.Lowest)
	}
	name := caseName(in, which)
	p := newPage(in, "section-"+string(which)+"-"+strconv.Itoa(k), in.say("section.title", "case", name))
	view := newSection(p, b)
	view.draw()
	t := table{columns: []column{{flexible: true}, {anchor: End, bold: true}}}
	t.add(in.say("course.when"), p.clock(s.At))
	t.add(in.say("course.drawn"), p.show(float64(s.Drawn), unit.KindFlow))
	t.add(in.say("course.flowsback"), p.show(float64(s.Back), unit.KindFlow))
	t.add(in.say("course.returns"), p.show(float64(s.Returns), unit.KindFlow))
	t.add(in.say("course.stored"), p.show(float64(s.Stored), unit.KindWater))
	t.add(in.say("course.spilt"), p.show(float64(s.Over), unit.KindWater))
	p.table(t)
	depth := func(z unit.Length) string { return signed(z-b.line, in.Result.Units) }
	return p.done([]string{in.say("section.desc", "case", name, "time", p.clock(s.At), "pond", depth(s.Pond), "vault", depth(s.Vault), "unit", p.depthUnit())}), true
}
