package drawing

import (
	"math"
	"strconv"

	"plashet/engine/design"
	"plashet/engine/motion"
	"plashet/engine/unit"
)

// Course draws the levels of pond and vault through time for one case of start
// and stop, with what happens when. Without the case there is no sheet.
func Course(in Input, which design.MovingCase) (Sheet, bool) {
	m, b, ok := movingOf(in, which)
	if !ok {
		return Sheet{}, false
	}
	name := caseName(in, which)
	c := &course{page: newPage(in, "course-"+string(which), in.say("course.title", "case", name)), m: m, b: b}
	c.scales()
	c.group("events", c.events)
	for i := range c.panels {
		p := &c.panels[i]
		c.group(p.name, func() { c.panel(p) })
	}
	c.time()
	c.lists()
	return c.done(c.desc(name)), true
}

// movingOf finds a case and the section that its levels belong to.
func movingOf(in Input, which design.MovingCase) (*design.Moving, basin, bool) {
	if in.Result == nil || in.Result.Motion == nil {
		return nil, basin{}, false
	}
	m := in.Result.Motion.Find(which)
	if m == nil || len(m.Series) < 2 {
		return nil, basin{}, false
	}
	b, ok := basinOf(in)
	return m, b, ok
}

// caseName names a case; a stop by what its check valve does.
func caseName(in Input, which design.MovingCase) string {
	if which == design.CaseStop && !in.Result.Motion.Valve {
		return in.say("course.case.absent")
	}
	return in.say("course.case." + string(which))
}

// course is the sheet of a case while it is drawn.
type course struct {
	*page
	m      *design.Moving
	b      basin
	t      axis
	panels []panel
	right  float64 // of the plots, mm: what the names beside them leave
}

// panel is one plot of levels against time.
type panel struct {
	name      string
	z         axis // m from the water line
	at        func(motion.Sample) float64
	limits    []limit
	head      float64 // mm
	foot      float64
	low, high float64 // of what is drawn
}

// Sizes of the plots, mm.
const (
	courseLeft  = 24.0
	courseRight = 107.0 // at most
	courseNames = 4.5   // from there to the names of the lines
	courseTall  = 62.0
)

// edge gives where the plots end, so that the names of all the lines that any
// case can have stand beside them whole: the cases are looked at side by side.
func (c *course) edge() float64 {
	var names []string
	for _, code := range [...]string{"levels.rim", "levels.line", "levels.sill", "levels.vaultfloor", "levels.minwater", "course.end"} {
		names = append(names, c.say(code))
	}
	return min(courseRight, wide-margin-courseNames-widestOf(names...))
}

func (c *course) scales() {
	c.right = c.edge()
	last := c.m.Series[len(c.m.Series)-1].At
	one, name := durationUnit(last)
	for n := steps; n > 0; n-- {
		c.t = newAxis(c.in.Result.Units, courseLeft, c.right, float64(last), one, name, n)
		_, written := c.t.ticks()
		if each := (c.right - courseLeft) / float64(len(written)-1); n == 1 || widestOf(written...) < each-2 {
			break
		}
	}
	c.t.to, c.t.most = c.right, float64(last) // the plot ends with the case
	line := float64(c.b.line)
	pond := panel{name: c.say("course.pond"), at: func(s motion.Sample) float64 { return float64(s.Pond) - line }}
	pond.limits = []limit{{c.say("levels.rim"), float64(c.b.rim) - line, thick}, {c.say("levels.line"), 0, help}}
	if c.b.sill {
		pond.limits = append(pond.limits, limit{c.say("levels.sill"), float64(c.b.sillAt) - line, hidden})
	}
	c.place(pond)
	if !c.b.vault {
		return
	}
	vault := panel{name: c.say("course.vault"), at: func(s motion.Sample) float64 { return float64(s.Vault) - line }}
	vault.limits = []limit{{c.say("levels.line"), 0, help}, {c.say("levels.vaultfloor"), float64(c.b.vaultFloor) - line, thick}}
	if c.b.minKnown {
		vault.limits = append(vault.limits, limit{c.say("levels.minwater"), float64(c.b.minWater) - line, hidden})
	}
	c.place(vault)
}

// place scales a panel and puts it below the one before. Limits far off the
// levels are left out: the list names them.
func (c *course) place(p panel) {
	p.low, p.high = math.Inf(1), math.Inf(-1)
	for _, s := range c.m.Series {
		p.low, p.high = min(p.low, p.at(s)), max(p.high, p.at(s))
	}
	reach := max(p.high-p.low, 0.01)
	least, most := p.low-reach*0.1, p.high+reach*0.1
	var near []limit
	for _, l := range p.limits {
		if l.at > p.low-2*reach && l.at < p.high+2*reach {
			near = append(near, l)
			least, most = min(least, l.at-reach*0.05), max(most, l.at+reach*0.05)
		}
	}
	p.limits = near
	p.head = c.y + 2*row + 1
	p.foot = p.head + courseTall
	one, name := depthAxisUnit(c.in.Result.Units)
	p.z = newSpan(c.in.Result.Units, p.foot, p.head, least, most, one, name, steps)
	c.panels = append(c.panels, p)
	c.y = p.foot
}

func (c *course) panel(p *panel) {
	c.text(Text{At: Point{margin, p.head - row}, Size: small, Bold: true, Text: p.name})
	c.text(Text{At: Point{wide - margin, p.head - row}, Size: small, Anchor: End, Text: c.say("levels.from", "unit", p.z.name)})
	si, written := p.z.ticks()
	for i, v := range si {
		y := p.z.at(v)
		c.add(Line{Point{courseLeft, y}, Point{c.right, y}, grid})
		c.text(Text{At: Point{courseLeft - 2, y + small*0.36}, Size: small, Anchor: End, Text: written[i]})
	}
	level := make([]Point, 0, len(c.m.Series)+2)
	for _, s := range c.m.Series {
		level = append(level, Point{c.t.at(float64(s.At)), p.z.at(p.at(s))})
	}
	area := append(append([]Point{{courseLeft, p.foot}}, level...), Point{level[len(level)-1].X, p.foot})
	c.add(Polygon{Points: area, Fill: Wash}, Polyline{level, stream})
	end := level[len(level)-1]
	names := []limit{{c.say("course.end"), p.at(c.m.Series[len(c.m.Series)-1]), stream}}
	for _, l := range p.limits {
		y := p.z.at(l.at)
		c.add(Line{Point{courseLeft, y}, Point{c.right, y}, l.pen})
		names = append(names, l)
	}
	c.add(Line{Point{courseLeft, p.head}, Point{courseLeft, p.foot}, line}, Line{Point{courseLeft, p.foot}, Point{c.right, p.foot}, line})
	c.names(p, names, end)
}

// names sets what the lines are beside their right ends.
func (c *course) names(p *panel, list []limit, end Point) {
	sortLimits(list)
	at := make([]float64, len(list))
	for i, l := range list {
		at[i] = p.z.at(l.at)
	}
	spaced := spread(at, small*1.15, p.head, p.foot)
	for i, l := range list {
		from := Point{c.right, at[i]}
		if l.name == c.say("course.end") {
			from = Point{end.X, end.Y}
			c.add(Arc{Centre: from, RX: 0.9, RY: 0.9, Sweep: 360, Fill: Black})
		}
		c.add(Line{from, Point{c.right + courseNames - 1, spaced[i]}, help})
		c.text(Text{At: Point{c.right + courseNames, spaced[i] + small*0.36}, Size: small, Text: l.name})
	}
}

// events draws a line at each thing that happens, with its number.
func (c *course) events() {
	if len(c.panels) == 0 {
		return
	}
	top := c.panels[0].head
	at := make([]float64, 0, len(c.m.Events))
	for _, e := range c.m.Events {
		at = append(at, c.t.at(min(float64(e.At), c.t.most)))
	}
	each := widestOf(strconv.Itoa(len(at))) + 1.2
	if each*float64(len(at)) > c.right-courseLeft { // their list tells the times
		return
	}
	for i, x := range spread(at, each, courseLeft, c.right) {
		c.add(Line{Point{x, top - 1}, Point{at[i], top + 2}, dots})
		for _, p := range c.panels {
			c.add(Line{Point{at[i], p.head + 2}, Point{at[i], p.foot}, dots})
		}
		c.text(Text{At: Point{x, top - 1.6}, Size: small, Anchor: Middle, Text: strconv.Itoa(i + 1)})
	}
}

// time writes the axis of time below the last panel.
func (c *course) time() {
	si, written := c.t.ticks()
	for i, v := range si {
		if v > c.t.most*(1+1e-9) {
			break
		}
		x := c.t.at(v)
		c.add(Line{Point{x, c.y}, Point{x, c.y + 1.2}, line})
		c.text(Text{At: Point{x, c.y + 7}, Size: small, Anchor: Middle, Text: written[i]})
	}
	c.text(Text{At: Point{c.right, c.y + 13}, Size: small, Anchor: End, Text: c.say("course.time", "unit", c.t.name)})
	c.y += 16.2
}

func (c *course) depth(z unit.Length) string { return signed(z-c.b.line, c.in.Result.Units) }

// lists writes what happens, the extremes, and keeps the levels as rows.
func (c *course) lists() {
	m := c.m
	t := table{title: c.say("course.extremes"), columns: []column{{flexible: true}, {anchor: End, bold: true}, {anchor: End}}, head: []string{"", c.depthUnit(), c.say("course.when")}}
	t.add(c.say("course.highest"), c.depth(m.Highest), c.clock(m.HighestAt))
	if c.b.vault {
		t.add(c.say("course.lowest"), c.depth(m.Lowest), c.clock(m.LowestAt))
	}
	c.table(t)
	if back, ok := m.CameBack(); ok {
		c.paragraph(c.say("course.back", "water", c.show(float64(back), unit.KindWater)), false)
	}
	if m.Over > 0 {
		c.paragraph(c.say("course.over", "water", c.show(float64(m.Over), unit.KindWater)), true)
	}
	if m.Dry {
		c.paragraph(c.say("course.dry", "time", c.clock(m.DryAt)), true)
	}
	if len(m.Events) > 0 {
		c.y += 2
		e := table{title: c.say("course.events"), columns: []column{{}, {flexible: true}, {anchor: End}}}
		for i, x := range m.Events {
			what := c.say("course.event." + string(x.Code))
			if n := x.Feed; n >= 0 && n < len(c.in.Job.Watercourses) && len(c.in.Job.Watercourses) > 1 {
				what += ", " + c.in.Job.Watercourses[n].Name
			}
			e.add(strconv.Itoa(i+1), what, c.clock(x.At))
		}
		c.table(e)
	}
	c.rows()
}

// rows keeps the levels through time.
func (c *course) rows() {
	head := []string{c.say("course.when"), c.say("course.pond") + ", " + c.depthUnit(), c.say("course.vault") + ", " + c.depthUnit(), c.say("course.drawn"), c.say("course.flowsback")}
	var rows [][]string
	for _, s := range c.m.Series {
		rows = append(rows, []string{c.clock(s.At), c.depth(s.Pond), c.depth(s.Vault), c.show(float64(s.Drawn), unit.KindFlow), c.show(float64(s.Back), unit.KindFlow)})
	}
	c.data(c.say("course.rows"), head, rows)
}

// clock shows a time from the beginning of a case as minutes and seconds.
func (p *page) clock(d unit.Duration) string {
	s := int(math.Round(float64(d)))
	return strconv.Itoa(s/60) + ":" + strconv.Itoa(s%60/10) + strconv.Itoa(s%10)
}

func (c *course) desc(name string) []string {
	m := c.m
	out := []string{c.say("course.desc", "case", name, "time", c.clock(m.Took), "high", c.depth(m.Highest), "unit", c.depthUnit(), "at", c.clock(m.HighestAt))}
	if c.b.vault {
		out = append(out, c.say("course.desclow", "low", c.depth(m.Lowest), "unit", c.depthUnit(), "at", c.clock(m.LowestAt)))
	}
	return out
}
