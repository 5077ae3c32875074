package catalog

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Timed is one manual's time for a joint.
type Timed struct {
	Manual   string // "A" or "B"; the sources tell which
	Duration unit.Duration
	Sizes    string // as the manual gives them: "1-1/2-3"
	Temps    string // degrees F as the manual gives them: "40-60"
	Pressure string // psi, for a cure: "to 180"
	Source   trace.Source
}

// timedRow is a row with the upper ends of the ranges it covers.
type timedRow struct {
	timed    Timed
	toSize   float64 // nominal inches
	low      unit.Temperature
	high     unit.Temperature
	pressure unit.Pressure
}

type jointsRow struct {
	size float64
	span Span[float64]
}

// JointRule is a row of solvent-weld or thread practice in its own words: how
// far a pipe enters dry, how to bevel, how to tape.
type JointRule struct {
	Item   string
	Sizes  string // "all", "to 3 in"
	Value  string // "1/3 to 2/3"
	Unit   string // "of depth"
	Source trace.Source
}

// JointRules gives the rows of a topic: "fit", "insertion", "preparation",
// "thread"; nothing for a topic that is not there.
func (b *Book) JointRules(topic string) []JointRule { return slices.Clone(b.jointRules[topic]) }

// Bevel is how the end of a pipe is chamfered before it is cemented, so that it
// pushes no cement ahead of it.
type Bevel struct {
	Angle  Span[unit.Angle]
	Across Span[unit.Length] // of the chamfer
}

// PipeBevel gives the bevel of a pipe's end.
func (b *Book) PipeBevel() Bevel { return b.bevel }

// Twist gives by how much a pipe is turned while it is pushed home in its socket,
// which spreads the cement; 0 for a size that is pushed straight. Errors:
// CodeSizeUnread, CodeSizeDN.
func (b *Book) Twist(sizeText string) (unit.Angle, trace.Source, error) {
	nps, err := b.nominalInches(sizeText)
	if err != nil || nps > b.twistTo {
		return 0, b.twistSource, err
	}
	return b.twist, b.twistSource, nil
}

// HoldTime gives how long a joint is held together after it is pushed home, so
// that the taper does not push it out: the time of the small sizes, and past
// them from that up to the longest that the same pages name; High is the
// cautious one. The can decides. Errors: CodeSizeUnread, CodeSizeDN.
func (b *Book) HoldTime(sizeText string) (Span[unit.Duration], error) {
	nps, err := b.nominalInches(sizeText)
	if err != nil {
		return Span[unit.Duration]{}, err
	}
	if nps <= b.holdSmallTo {
		return b.holdSmall, nil
	}
	return b.holdLarge, nil
}

func (b *Book) loadJoints(l *loader) {
	b.jointRules = map[string][]JointRule{}
	for r := range b.Rows("solventweld") {
		switch topic, item := r.Get("topic"), r.Get("item"); {
		case topic == "fit", topic == "insertion", topic == "preparation", topic == "thread":
			b.jointRules[topic] = append(b.jointRules[topic], JointRule{
				Item: item, Sizes: r.Get("size_nps_in"), Value: r.Get("value"), Unit: r.Get("unit"), Source: l.source(r),
			})
			switch item {
			case "hold together to stop push-out":
				b.loadHold(l, r)
			case "bevel on pipe end":
				b.loadBevel(l, r)
			case "twist while pushing home":
				b.loadTwist(l, r)
			}
		case topic == "initial set":
			b.sets = append(b.sets, l.timed(r, math.Inf(1)))
		case topic == "cure":
			b.cures = append(b.cures, l.timed(r, l.topPressure(r)))
		case topic == "humidity":
			b.damp = Factor{unit.Ratio(l.num(r, "value")), l.source(r)}
		case item == "joints per US quart of cement", strings.HasPrefix(item, "1-1/4 in size"):
			low, high := l.span(r, "value")
			nps, _ := mixedNumber(r.Get("size_nps_in"))
			b.joints = append(b.joints, jointsRow{nps, Span[float64]{low, high, l.source(r)}})
		case topic == "primer quantity":
			b.primer = Factor{unit.Ratio(l.num(r, "value")), l.source(r)}
		}
	}
	slices.SortFunc(b.joints, func(a, c jointsRow) int { return cmp.Compare(a.size, c.size) })
	byTop := func(a, c timedRow) int {
		return cmp.Or(cmp.Compare(a.timed.Manual, c.timed.Manual), cmp.Compare(a.toSize, c.toSize),
			cmp.Compare(a.high, c.high), cmp.Compare(a.pressure, c.pressure))
	}
	slices.SortFunc(b.sets, byTop)
	slices.SortFunc(b.cures, byTop)
}

// loadHold reads the time for small sizes and, from the note of the same row,
// the longest for larger ones: "larger sizes up to 3 min".
func (b *Book) loadHold(l *loader, r Row) {
	v := unit.Duration(l.num(r, "value")) * unit.Second
	b.holdSmall = Span[unit.Duration]{v, v, l.source(r)}
	text, ok := strings.CutPrefix(r.Get("note"), "larger sizes up to ")
	if !ok {
		l.fail(r, "note", "does not tell how long larger sizes are held")
	}
	b.holdLarge = Span[unit.Duration]{v, l.parsed(r, "note", text), l.source(r)}
	for row := range b.Rows("limits") {
		if row.Get("name") == "largest size of pipe that is held for the shorter time" {
			b.holdSmallTo = l.num(row, "high")
		}
	}
	if b.holdSmallTo == 0 {
		l.fail(r, "size_nps_in", "has no row in table limits that tells how far it goes")
	}
}

// loadTwist reads "1/4 turn" and the size up to which it is done, "to 3 in".
func (b *Book) loadTwist(l *loader, r Row) {
	part, ok := mixedNumber(strings.TrimSuffix(r.Get("value"), " turn"))
	_, top, okSize := sizeRange(strings.TrimSuffix(strings.TrimPrefix(r.Get("size_nps_in"), "to "), " in"))
	if !ok || !okSize {
		l.fail(r, "value", "is no part of a turn up to a size")
	}
	b.twist, b.twistTo, b.twistSource = unit.Angle(part)*360*unit.Degree, top, l.source(r)
}

// loadBevel reads the angle and, from the note of the same row, the width:
// "1/16 to 3/32 in wide".
func (b *Book) loadBevel(l *loader, r Row) {
	low, high := l.span(r, "value")
	from, to, ok := strings.Cut(strings.TrimSuffix(r.Get("note"), " in wide"), " to ")
	narrow, okFrom := mixedNumber(from)
	wide, okTo := mixedNumber(to)
	if !ok || !okFrom || !okTo {
		l.fail(r, "note", "is no range of widths")
	}
	b.bevel = Bevel{
		Angle:  Span[unit.Angle]{unit.Angle(low) * unit.Degree, unit.Angle(high) * unit.Degree, l.source(r)},
		Across: Span[unit.Length]{unit.Length(narrow) * unit.Inch, unit.Length(wide) * unit.Inch, l.source(r)},
	}
}

func (l *loader) timed(r Row, psi float64) timedRow {
	_, top, okSize := sizeRange(r.Get("size_nps_in"))
	coldest, warmest, okTemp := sizeRange(r.Get("temperature_F"))
	if !okSize || !okTemp {
		l.fail(r, "size_nps_in", "or its temperature is no range")
	}
	manual := "A"
	if strings.Contains(r.Get("item"), "(manual B)") {
		manual = "B"
	}
	return timedRow{
		timed: Timed{
			Manual: manual, Duration: l.duration(r, "value"), Sizes: r.Get("size_nps_in"),
			Temps: r.Get("temperature_F"), Pressure: r.Get("pressure_psi"), Source: l.source(r),
		},
		toSize: top, low: celsius(coldest), high: celsius(warmest), pressure: unit.Pressure(psi) * unit.PSI,
	}
}

// topPressure reads "to 180", "180-370" or "160-315 (page prints 370)". Of two
// printed limits the lower is taken.
func (l *loader) topPressure(r Row) float64 {
	text, _, _ := strings.Cut(r.Get("pressure_psi"), " (")
	_, high, ok := sizeRange(strings.TrimPrefix(text, "to "))
	if !ok {
		l.fail(r, "pressure_psi", "is no range")
	}
	return high
}

// SetTimes gives the time before a fresh joint may be handled, by each manual
// that covers the case. Sizes between two ranges of a manual take the larger
// range; a temperature on the border of two takes the colder one: both are the
// slower. The time holds for a relative humidity of 60 percent or less
// (DampFactor). The can decides. Errors: CodeOutside (below 0 F, above 100 F,
// larger than the manuals go), CodeSizeUnread, CodeSizeDN.
func (b *Book) SetTimes(sizeText string, temp unit.Temperature) ([]Timed, error) {
	return b.timed(b.sets, "set time", sizeText, temp, 0)
}

// CureTimes gives the time before a joint may be put under a water pressure, as
// SetTimes does. A pressure above what a manual covers leaves that manual out.
// Never test plastic pipe with air or gas: it stores energy and bursts.
func (b *Book) CureTimes(sizeText string, temp unit.Temperature, pressure unit.Pressure) ([]Timed, error) {
	return b.timed(b.cures, "cure time", sizeText, temp, pressure)
}

func (b *Book) timed(rows []timedRow, table, sizeText string, temp unit.Temperature, pressure unit.Pressure) ([]Timed, error) {
	nps, err := b.nominalInches(sizeText)
	if err != nil {
		return nil, err
	}
	if !(pressure >= 0) {
		return nil, outside(table, "pressure")
	}
	var out []Timed
	for _, r := range rows {
		taken := len(out) > 0 && out[len(out)-1].Manual == r.timed.Manual
		if !taken && nps <= r.toSize && temp >= r.low-aboutSame && temp <= r.high+aboutSame && pressure <= r.pressure {
			out = append(out, r.timed)
		}
	}
	if out == nil {
		return nil, outside(table, "size, temperature or pressure")
	}
	return out, nil
}

// Slowest gives the longest of several times, the default where manuals differ.
func Slowest(ts []Timed) (Timed, bool) {
	if len(ts) == 0 {
		return Timed{}, false
	}
	return slices.MaxFunc(ts, func(a, b Timed) int { return cmp.Compare(a.Duration, b.Duration) }), true
}

// DampFactor multiplies set and cure times when the relative humidity is above
// 60 percent.
func (b *Book) DampFactor() Factor { return b.damp }

// JointsPerQuart gives the joints that one US quart of cement makes in a size;
// a joint is one socket. A size that is not in the table takes the next larger
// one's figure, and the source says so. Errors: CodeOutside, CodeSizeUnread,
// CodeSizeDN.
func (b *Book) JointsPerQuart(sizeText string) (Span[float64], error) {
	nps, err := b.nominalInches(sizeText)
	if err != nil {
		return Span[float64]{}, err
	}
	for _, j := range b.joints {
		if j.size < nps {
			continue
		}
		s := j.span
		if j.size != nps {
			s.Source.Note = "size not in the table; the figure of the next larger size"
		}
		return s, nil
	}
	return Span[float64]{}, outside("joints per quart", "size")
}

// PrimerFactor tells how many times as many joints a quart of primer serves as
// a quart of cement.
func (b *Book) PrimerFactor() Factor { return b.primer }
