package catalog

import (
	"slices"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// rating is a printed pressure rating at 73 F.
type rating struct {
	pressure unit.Pressure
	source   trace.Source
}

// derateRow is the part of the 73 F rating that is left at a temperature.
type derateRow struct {
	temp   unit.Temperature
	factor Factor
}

// Expansion is one published coefficient of linear expansion of PVC.
type Expansion struct {
	PerKelvin float64 // 1/K
	Source    trace.Source
}

// Change = a L dT: the change of length of a run of pipe. Range L >= 0, any
// finite temperature difference; NaN outside. A fall of temperature gives a
// negative change.
func (e Expansion) Change(length unit.Length, rise unit.Temperature) unit.Length {
	if !(length >= 0) {
		return nan[unit.Length]()
	}
	return unit.Length(e.PerKelvin * float64(length) * float64(rise))
}

type supportKey struct {
	series string // "Sch 40", "Sch 80"
	size   size
}

type supportRow struct {
	temp    unit.Temperature
	spacing unit.Length
	source  trace.Source
}

// celsius turns degrees Fahrenheit into degrees Celsius: (F - 32) / 1.8.
func celsius(f float64) unit.Temperature { return unit.Temperature((f - 32) / 1.8) }

// aboutSame is the part of a degree within which two temperatures count as one,
// so that 60 F typed and converted is still 60 F.
const aboutSame = 1e-6

func (b *Book) loadRatings(l *loader) {
	b.ratings = map[pipeKey]rating{}
	for r := range b.Rows("solventweld") {
		// The unrounded rows of the second source serve the outside checks.
		if r.Get("topic") != "pressure rating" || strings.HasSuffix(r.Get("item"), "unrounded") {
			continue
		}
		series := strings.TrimSuffix(strings.TrimPrefix(r.Get("item"), "PVC 1120 "), " plain end at 73 F")
		b.ratings[pipeKey{series, l.size(r, "size_nps_in")}] = rating{unit.Pressure(l.num(r, "value")) * unit.PSI, l.source(r)}
	}
}

// ratingOf gives a pipe's rating: the table's own where it has one, else the
// printed rating of the schedule, else the ISO equation.
func (b *Book) ratingOf(l *loader, series string, s size, p Pipe, r Row) (unit.Pressure, trace.Source) {
	if psi := l.opt(r, "pressure_rating_73F_psi"); psi > 0 {
		return unit.Pressure(psi) * unit.PSI, l.source(r)
	}
	_, schedule, _ := strings.Cut(series, "D1785 ")
	if printed, ok := b.ratings[pipeKey{schedule, s}]; ok {
		return printed.pressure, printed.source
	}
	return PressureRating(p.OD, p.Wall), trace.Source{
		Title: "2 S t / (D - t), S = 2000 psi, ASTM D1785 annex", Basis: trace.BasisLibrary,
		Note: "no printed rating for this size; computed from the wall",
	}
}

func (b *Book) loadSupports(l *loader) {
	b.supports = map[supportKey][]supportRow{}
	for r := range b.Rows("solventweld") {
		item := r.Get("item")
		switch {
		case strings.HasPrefix(item, "support spacing "):
			key := supportKey{strings.TrimPrefix(item, "support spacing "), l.size(r, "size_nps_in")}
			b.supports[key] = append(b.supports[key], supportRow{
				celsius(l.num(r, "temperature_F")), unit.Length(l.num(r, "value")) * unit.Foot, l.source(r),
			})
		case item == "PVC pressure factor by water temperature":
			b.derates = append(b.derates, derateRow{
				celsius(l.num(r, "temperature_F")), Factor{unit.Ratio(l.num(r, "value")), l.source(r)},
			})
		case item == "factor for threaded Sch 80":
			b.threaded = Factor{unit.Ratio(l.num(r, "value")), l.source(r)}
		case item == "linear expansion coefficient of PVC":
			perKelvin := l.num(r, "value")
			if r.Get("unit") == "in/in/F" {
				perKelvin *= 1.8
			}
			b.expansions = append(b.expansions, Expansion{perKelvin, l.source(r)})
		}
	}
}

// Derating gives the part of the 73 F pressure rating that PVC keeps at a water
// temperature: the figure of the next hotter row of the table, which is the
// lower one. Up to 73 F it is 1. Above 140 F, where PVC is not to be used, the
// error is CodeOutside.
func (b *Book) Derating(water unit.Temperature) (Factor, error) {
	for _, d := range b.derates {
		if water <= d.temp+aboutSame {
			return d.factor, nil
		}
	}
	return Factor{}, outside("derating", "temperature")
}

// ThreadedRating gives the part of its plain-end rating that threaded Sch 80
// pipe keeps. Sch 40 pipe is not threaded at all.
func (b *Book) ThreadedRating() Factor { return b.threaded }

// Expansions gives every published coefficient of linear expansion of PVC; they
// differ by 7 percent.
func (b *Book) Expansions() []Expansion { return slices.Clone(b.expansions) }

// SupportSpacing gives the greatest distance between supports of Sch 40 or Sch
// 80 pipe full of water: the figure of the next hotter row of the table, which
// is the shorter one. Errors: CodeOutside, CodeSizeUnread, CodeSizeDN.
func (b *Book) SupportSpacing(series, sizeText string, pipe unit.Temperature) (unit.Length, trace.Source, error) {
	s, err := b.readSize(sizeText, inch)
	if err != nil {
		return 0, trace.Source{}, err
	}
	rows := b.supports[supportKey{series, s}]
	if rows == nil {
		return 0, trace.Source{}, outside("support spacing", "size")
	}
	for _, r := range rows {
		if pipe <= r.temp+aboutSame {
			return r.spacing, r.source, nil
		}
	}
	return 0, trace.Source{}, outside("support spacing", "temperature")
}

func outside(table, value string) *Error {
	return fault(CodeOutside, trace.Str("table", table), trace.Str("value", value))
}
