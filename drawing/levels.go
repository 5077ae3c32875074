package drawing

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"plashet/engine/level"
	"plashet/engine/unit"
)

// Levels draws pond and vault in section and, enlarged below, where the pond
// stands at rest, running and after a stop. Without levels there is no sheet.
func Levels(in Input) (Sheet, bool) {
	if in.Result == nil {
		return Sheet{}, false
	}
	b, ok := basinOf(in)
	if !ok {
		return Sheet{}, false
	}
	p := newPage(in, "levels", in.say("levels.title"))
	newSection(p, b).draw()
	l := &ladder{page: p, b: b}
	l.draw()
	l.margins()
	return p.done(l.desc()), true
}

// ladder draws the pond's level at each moment as columns of water side by
// side, much enlarged, between sill and rim.
type ladder struct {
	*page
	b       basin
	states  []stand
	low, up float64 // m from the water line, at foot and head
	foot    float64 // mm
	head    float64 // mm
	field   field
}

// stand is the pond at one moment.
type stand struct {
	name  string
	state level.State
}

// Size of the columns, mm.
const (
	ladderTall  = 62.0
	ladderRight = 112.6
	ladderNames = 5.8 // from there to the names of the limits
	columnGap   = 2.6
)

// pick gathers the moments that are drawn.
func (l *ladder) pick() {
	levels := l.in.Result.Levels
	c := l.b.run.Course
	for _, s := range []struct {
		name   string
		course level.Course
		moment level.Moment
	}{
		{"levels.rest", steady(l.in), level.MomentRest},
		{"levels.first", level.CourseFirst, level.MomentRun},
		{"levels.run", c, level.MomentRun},
		{"levels.stop", c, level.MomentHeld},
		{"levels.open", c, level.MomentOpen},
	} {
		st, ok := levels.Find(s.course, s.moment)
		if !ok || s.moment == level.MomentHeld && !hasValve(l.in.Job) {
			continue
		}
		name := l.say(s.name)
		if s.moment == level.MomentOpen && !hasValve(l.in.Job) {
			name = l.say("levels.stop.novalve")
		}
		l.states = append(l.states, stand{name, st})
	}
}

// limits chooses what part of the height is shown: all the levels, sill and rim
// where they are not far off.
func (l *ladder) limits() {
	least, most := 0.0, 0.0
	for _, s := range l.states {
		d := float64(s.state.Pond - l.b.line)
		least, most = min(least, d), max(most, d)
	}
	if l.b.sill {
		least = min(least, float64(l.b.need-l.b.line))
	}
	reach := max(most-least, 0.005)
	rim := float64(l.b.rim - l.b.line)
	most = max(most, min(rim, most+2*reach))
	if l.b.sill {
		least = min(least, max(float64(l.b.sillAt-l.b.line), least-2*reach))
	} else {
		least -= reach / 2
	}
	spare := (most - least) * 0.09
	l.low, l.up = least-spare, most+1.6*spare
}

func (l *ladder) at(fromLine float64) float64 {
	return l.foot - (fromLine-l.low)/(l.up-l.low)*(l.foot-l.head)
}

func (l *ladder) draw() {
	l.pick()
	l.limits()
	l.text(Text{At: Point{margin, l.y + small}, Size: small, Text: l.say("levels.ladder", "unit", l.depthUnit())})
	l.head = l.y + row + 2
	l.foot = l.head + ladderTall
	l.group("levels of the pond", l.columns)
	l.group("moments", l.names)
	l.group("limits", l.lines)
}

// columns draws the columns with their figures.
func (l *ladder) columns() {
	each := l.each()
	l.field.area = rectangle(0, l.head-2, wide, l.foot)
	for _, m := range l.limitsDrawn() {
		if y := l.at(max(l.low, min(l.up, m.at))); m.at != 0 { // the water line may run through a figure
			l.field.lines = append(l.field.lines, patchOf(Point{0, y}, Point{ladderRight, y}))
		}
	}
	for i, s := range l.states {
		x0 := margin + float64(i)*each
		x1 := x0 + each - columnGap
		d := s.state.Pond - l.b.line
		y := l.at(float64(d))
		l.add(polygonOf(rectangle(x0, y, x1, l.foot), Pen{}, Wash), Line{Point{x0, y}, Point{x1, y}, stream})
		l.figure(Text{At: Point{(x0 + x1) / 2, y - 1.6}, Size: figure, Anchor: Middle, Bold: true, Text: signed(d, l.in.Result.Units)}, each)
	}
}

// names writes below the columns what they are and what is wrong with them: there
// nothing else stands.
func (l *ladder) names() {
	each := l.each()
	below := l.foot
	for i, s := range l.states {
		at := Point{margin + float64(i)*each + (each-columnGap)/2, l.foot + small + 1.4}
		name := func(s string, bold bool) {
			for _, w := range wrap(s, bold, each-0.6) {
				l.text(Text{At: at, Size: small, Bold: bold, Anchor: Middle, Text: w})
				at.Y += lineStep
			}
		}
		name(s.name, false)
		name(l.troubled(s.state), true)
		below = max(below, at.Y)
	}
	l.y = below
}

// each gives the width of a column with the gap beside it, mm.
func (l *ladder) each() float64 {
	return min((ladderRight-margin+columnGap)/float64(len(l.states)), 26)
}

// figure writes a column's level above its water, or on it or higher where
// something is in the way.
func (l *ladder) figure(t Text, each float64) {
	if t.Width() > each-0.6 {
		t.Size = small
	}
	var places []place
	for k, dy := range [...]float64{0, 2.6 + t.Size*ascent, -t.Size, -2 * t.Size, -3 * t.Size} {
		p := place{text: t, cost: float64(k)}
		p.text.At.Y += dy
		if dy > 0 && p.text.At.Y > l.foot-0.5 {
			continue
		}
		places = append(places, p)
	}
	if p, ok := l.field.best(places); ok {
		l.text(p.text)
	}
}

// troubled says what is wrong with a moment.
func (l *ladder) troubled(s level.State) string {
	switch {
	case s.Starved:
		return l.say("levels.starved")
	case !s.Moment.Running() && s.Edge.Freeboard < 0:
		return l.say("levels.spills")
	}
	return ""
}

// limit is a level that the pond is held against.
type limit struct {
	name string
	at   float64 // m from the water line
	pen  Pen
}

// limitsDrawn lists them from the top down.
func (l *ladder) limitsDrawn() []limit {
	out := []limit{{l.say("levels.rim"), float64(l.b.rim - l.b.line), thick}, {l.say("levels.line"), 0, help}}
	if l.b.sill {
		if l.b.need > l.b.sillAt {
			out = append(out, limit{l.say("levels.need"), float64(l.b.need - l.b.line), Pen{Ink: Black, Wide: 0.4, Dash: Dashed}})
		}
		out = append(out, limit{l.say("levels.sill"), float64(l.b.sillAt - l.b.line), thick})
	}
	sortLimits(out)
	return out
}

// sortLimits puts them from the top down.
func sortLimits(list []limit) {
	slices.SortStableFunc(list, func(a, b limit) int { return cmp.Compare(b.at, a.at) })
}

// lines draws rim, sill and what the skimmer needs across the columns, named at
// the right.
func (l *ladder) lines() {
	limits := l.limitsDrawn()
	at := make([]float64, 0, len(limits))
	for _, m := range limits { // in falling height, as they stand
		at = append(at, l.at(max(l.low, min(l.up, m.at))))
	}
	names := spread(at, 2*small*1.12, l.head, l.foot+small)
	for i, m := range limits {
		pen := m.pen
		name := m.name
		if m.at > l.up {
			name += " ↑"
			pen = hidden
		} else if m.at < l.low {
			name += " ↓"
			pen = hidden
		}
		l.add(Line{Point{margin - 1.5, at[i]}, Point{ladderRight + 1, at[i]}, pen},
			Line{Point{ladderRight + 1, at[i]}, Point{ladderRight + ladderNames - 1, names[i]}, help})
		const over = 0.8 // mm into the margin
		side := wrap(name, false, wide-margin+over-ladderRight-ladderNames)
		for k, s := range side[:min(len(side), 2)] {
			l.text(Text{At: Point{ladderRight + ladderNames, names[i] - 0.3 + float64(k)*small*1.02}, Size: small, Text: s})
		}
		if m.at != 0 {
			l.text(Text{At: Point{ladderRight + ladderNames, names[i] + small*0.95}, Size: small, Bold: true, Text: signed(unit.Length(m.at), l.in.Result.Units)})
		}
	}
}

// margins writes what is there and what is needed.
func (l *ladder) margins() {
	l.y += 2
	depth := func(d unit.Length) string { return l.show(float64(d), unit.KindDepth) }
	t := table{columns: []column{{flexible: true}, {anchor: End, bold: true}, {anchor: End}}, head: []string{"", l.say("levels.is"), l.say("levels.needs")}}
	margin := func(name string, m level.Margin) {
		if m.Applies {
			t.add(l.judged(name, m.Over < 0), depth(m.Present), depth(m.Needed))
		}
	}
	margin(l.say("levels.oversill"), l.b.run.Sill)
	margin(l.say("levels.overpump"), l.b.run.Pump)
	rain := "—"
	if r := l.in.Job.Site.DesignRain; !r.IsZero() {
		rain = l.say("levels.rain", "depth", depth(r.SI))
	}
	for _, s := range l.states {
		if s.state.Moment.Running() || s.state.Moment == level.MomentRest {
			continue
		}
		code := "levels.under." + string(s.state.Moment)
		if !hasValve(l.in.Job) {
			code = "levels.under.stop"
		}
		e := s.state.Edge
		t.add(l.judged(l.say(code), e.Freeboard < 0 || e.RainRoom < 0), depth(e.Freeboard), rain)
	}
	l.table(t)
}

// judged adds to a margin's name that it does not suffice.
func (l *ladder) judged(name string, short bool) string {
	if short {
		return name + ", " + l.say("levels.short")
	}
	return name
}

func (l *ladder) desc() []string {
	var parts []string
	for _, s := range l.states {
		d := s.state.Pond - l.b.line
		code := "levels.below"
		switch zero := l.show(0, unit.KindDepth); {
		case l.show(float64(d), unit.KindDepth) == zero:
			code = "levels.even"
		case d > 0:
			code = "levels.above"
		}
		parts = append(parts, l.say(code, "name", s.name, "depth", l.show(math.Abs(float64(d)), unit.KindDepth)))
	}
	out := []string{l.say("levels.desc", "list", strings.Join(parts, "; "))}
	if l.b.sill {
		out = append(out, l.say("levels.descsill", "sill", l.show(float64(l.b.line-l.b.sillAt), unit.KindDepth), "rim", l.show(float64(l.b.rim-l.b.line), unit.KindDepth)))
	}
	return out
}
