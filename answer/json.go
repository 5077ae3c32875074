package answer

import (
	"encoding/json"
	"io"

	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/words"
)

// FormatName and FormatVersion stand in every JSON answer. A field that is
// renamed or changes its meaning raises the version.
const (
	FormatName    = "plashet answer"
	FormatVersion = 2
)

// Document is the answer as JSON; docs/answer.md tells each field.
type Document struct {
	Format      string       `json:"format" doc:"says that this is an answer"`
	Version     int          `json:"version" doc:"version of the answer's fields"`
	Name        string       `json:"name" doc:"the job's name"`
	Note        string       `json:"note,omitempty" doc:"the job's note"`
	Units       string       `json:"units" one:"us metric" doc:"us or metric: the units of every text"`
	Verdict     string       `json:"verdict" one:"danger caution info none" doc:"worst finding: danger, caution, info or none"`
	Pump        *Pump        `json:"pump,omitempty" doc:"the pump at its operating point"`
	Others      []Other      `json:"furtherPumps,omitempty" doc:"pumps that run at the same time, each at its operating point"`
	Runs        []Run        `json:"runs,omitempty" doc:"the runs of pipe"`
	Feeds       []Feed       `json:"feeds,omitempty" doc:"the watercourses"`
	Sharing     *Sharing     `json:"sharing,omitempty" doc:"how well valves can share the water as wanted; absent where it cannot be told"`
	Options     []Option     `json:"options,omitempty" doc:"pumps in hand on this pipe and on larger pipe"`
	Levels      []State      `json:"levels,omitempty" doc:"where the water stands, by course and moment"`
	Upkeep      *Upkeep      `json:"upkeep,omitempty" doc:"what the running feature asks for"`
	Motion      []Moving     `json:"motion,omitempty" doc:"start and stop through time, by case"`
	NotToCut    bool         `json:"notToCut,omitempty" doc:"the assembly cannot be built as it is laid: its pieces are not to be cut"`
	Pieces      []Piece      `json:"pieces,omitempty" doc:"pieces of the assembly to cut"`
	Rolls       []Roll       `json:"rolls,omitempty" doc:"roll marks of the elbows and hoses"`
	Assembly    *Assembly    `json:"assembly,omitempty" doc:"how the chain stands in the vault, what may be off, how the pump comes out"`
	Cutting     []Cutting    `json:"cutting,omitempty" doc:"cutting plans, one for each pipe"`
	Withheld    bool         `json:"glueWithheld,omitempty" doc:"the assembly cannot be built as it is laid: no step of gluing is told"`
	Glue        []GlueStep   `json:"glue,omitempty" doc:"gluing up, step by step"`
	GlueTimes   []GlueTime   `json:"glueTimes,omitempty" doc:"hold, set and cure of cemented joints, by size, with each manual"`
	Materials   []Material   `json:"materials,omitempty" doc:"material list"`
	Total       *Total       `json:"materialsTotal,omitempty" doc:"what the priced lines of the list come to"`
	Bands       *Bands       `json:"bands,omitempty" doc:"how sure the answer is, where it was asked for"`
	Findings    []Finding    `json:"findings,omitempty" doc:"what was found, worst first"`
	Assumptions []Assumption `json:"assumptions,omitempty" doc:"defaults in force"`
	Faults      []Fault      `json:"faults,omitempty" doc:"errors in the input"`
	Figures     []Figure     `json:"figures,omitempty" doc:"every figure with its formula, values and source"`
}

// Quantity is a number in SI with the text in the job's units.
type Quantity struct {
	SI    float64 `json:"si" doc:"in SI: m, m², m³, m³/s, m/s, W, J, rad, °C, s"`
	Text  string  `json:"text" doc:"in the job's units; a quantity that is not known is absent"`
	Bound string  `json:"bound,omitempty" one:"more less" doc:"more or less, where this is no figure: the true value is more, or less, than it"`
}

// Money is an amount of money, rounded to coins.
type Money struct {
	Amount   string `json:"amount" doc:"a decimal number, exact"`
	Currency string `json:"currency" doc:"three letters"`
	Text     string `json:"text" doc:"as printed"`
}

// span shows two figures as one where both are shown alike.
func span(l *words.Language, low, high string, s unit.System) string {
	if low == high {
		return low
	}
	return l.Say(trace.Message{Code: "print.to", Args: []trace.Arg{trace.Str("low", low), trace.Str("high", high)}}, s)
}

// JSON writes the answer. Faults of reading the file stand with the design's.
func JSON(w io.Writer, r *design.Result, read []trace.Fault, l *words.Language) error {
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(Build(r, read, l))
}

// maker turns values into quantities in one system of units.
type maker struct {
	unit  unit.System
	style unit.Style // of amounts of money
	say   *words.Language
}

func (m maker) value(v unit.Value) Quantity {
	// What is not known, and what JSON has no number for, is absent.
	if v.Kind == unit.KindNone || v.SI != v.SI || v.SI-v.SI != 0 {
		return Quantity{}
	}
	q := Quantity{SI: v.SI, Text: m.say.Value(v, m.unit)}
	switch v.Bound {
	case unit.MoreThan:
		q.Bound = "more"
	case unit.LessThan:
		q.Bound = "less"
	}
	return q
}

func of[Q unit.Quantity](m maker, q Q, k unit.Kind) Quantity { return m.value(unit.Of(q, k)) }

// bounded is of for what may be a bound.
func bounded[Q unit.Quantity](m maker, q Q, k unit.Kind, b unit.Bound) Quantity {
	return m.value(unit.Bounded(q, k, b))
}

// known is of, or nil for a figure that is not known.
func known[Q unit.Quantity](m maker, q Q, k unit.Kind) *Quantity {
	if q == 0 {
		return nil
	}
	return new(of(m, q, k))
}

// some is a quantity that is absent unless it is more than nothing.
func some[Q unit.Quantity](m maker, q Q, k unit.Kind) Quantity {
	if q <= 0 {
		return Quantity{}
	}
	return of(m, q, k)
}

// money gives an amount as a plain number, for reckoning, and as it is written.
func money(m unit.Money, st unit.Style) *Money {
	if m.Currency == "" {
		return nil
	}
	c := m.Round()
	return &Money{Amount: c.Amount.String(), Currency: c.Currency, Text: c.Format(st)}
}

func (m maker) money(x unit.Money) *Money { return money(x, m.style) }

// Build gives the answer as values: what JSON writes. Faults of reading the file
// stand with the design's.
func Build(r *design.Result, read []trace.Fault, l *words.Language) Document {
	m := maker{unit: r.Units, style: r.Style, say: l}
	d := Document{Format: FormatName, Version: FormatVersion, Name: r.Name, Note: r.Note, Units: systemName(r.Units), Verdict: "none"}
	if worst, any := r.Worst(); any {
		d.Verdict = worst.String()
	}
	m.delivery(&d, r)
	m.levels(&d, r)
	m.upkeep(&d, r)
	m.motion(&d, r)
	m.assembly(&d, r)
	m.materials(&d, r)
	m.bands(&d, r)
	m.told(&d, r, read)
	return whole(d)
}
