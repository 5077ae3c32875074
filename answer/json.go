package answer

import (
	"encoding/json"
	"io"

	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/takeoff"
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
	Units       string       `json:"units" doc:"us or metric: the units of every text"`
	Verdict     string       `json:"verdict" doc:"worst finding: danger, caution, info or none"`
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
	Rolls       []Roll       `json:"rolls,omitempty" doc:"roll marks of the elbows"`
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
	Bound string  `json:"bound,omitempty" doc:"more or less, where this is no figure: the true value is more, or less, than it"`
}

// Money is an amount of money, rounded to coins.
type Money struct {
	Amount   string `json:"amount" doc:"a decimal number, exact"`
	Currency string `json:"currency" doc:"three letters"`
	Text     string `json:"text" doc:"as printed"`
}

// Price is an amount of money, or a range of it.
type Price struct {
	Low  Money  `json:"low" doc:"by the smaller rule"`
	High Money  `json:"high" doc:"by the larger rule; the same where there is one"`
	Text string `json:"text" doc:"as printed"`
}

// Pump is the pump at its operating point.
type Pump struct {
	Name   string    `json:"name" doc:"its name in the job"`
	Flow   Quantity  `json:"flow" doc:"flow delivered"`
	Head   Quantity  `json:"head" doc:"total dynamic head"`
	Static Quantity  `json:"static" doc:"of that, height"`
	Power  *Quantity `json:"power,omitempty" doc:"electrical power; absent where the watts are not known"`
	Drawn  Quantity  `json:"drawn" doc:"flow that all pumps together take from the vault"`
	Energy *Quantity `json:"energyYear,omitempty" doc:"energy of all pumps in a year; absent where the watts of one are not known"`
	Cost   *Money    `json:"costYear,omitempty" doc:"cost of that energy"`
}

// Upkeep is what the running feature asks for.
type Upkeep struct {
	Turnover    Quantity  `json:"turnover,omitzero" doc:"time in which the pumps move as much water as the pond holds"`
	Evaporation *Quantity `json:"evaporation,omitempty" doc:"depth that a summer day takes"`
	TopUp       *Quantity `json:"topUp,omitempty" doc:"water that makes up for it"`
	Load        *Quantity `json:"load,omitempty" doc:"current of all pumps"`
	Drop        *Quantity `json:"voltageDrop,omitempty" doc:"voltage lost on the cable"`
	DropShare   float64   `json:"voltageDropShare,omitempty" doc:"the same as a part of the voltage"`
}

// Other is a further pump at its operating point.
type Other struct {
	Name  string    `json:"name" doc:"the name of its place"`
	Pump  string    `json:"pump" doc:"which pump it is"`
	Flow  Quantity  `json:"flow" doc:"flow delivered"`
	Head  Quantity  `json:"head" doc:"head"`
	Power *Quantity `json:"power,omitempty" doc:"electrical power; absent where the watts are not known"`
}

// Run is one run of pipe.
type Run struct {
	Name     string   `json:"name" doc:"its name in the job"`
	Flow     Quantity `json:"flow" doc:"flow"`
	Speed    Quantity `json:"speed" doc:"mean speed"`
	Reynolds float64  `json:"reynolds" doc:"Reynolds number"`
	Friction Quantity `json:"friction" doc:"head lost along the pipe"`
	Fittings Quantity `json:"fittings" doc:"head lost in fittings, valve and exit"`
	Volume   Quantity `json:"volume" doc:"water in it"`
}

// Feed is one watercourse.
type Feed struct {
	Name   string   `json:"name" doc:"its name in the job"`
	Flow   Quantity `json:"flow" doc:"flow it gets"`
	Wanted Quantity `json:"wanted,omitzero" doc:"flow wanted; absent where nothing is"`
	Dry    bool     `json:"dry,omitempty" doc:"the pump does not reach it"`
	Burn   Quantity `json:"burn,omitzero" doc:"head its valve must take so that all feeds get the part of what is wanted that stands in sharing.at; absent where it has nothing to take"`
	K      float64  `json:"k,omitempty" doc:"the same as a loss coefficient on the speed in its last run"`
	Lips   []Lip    `json:"lips,omitempty" doc:"its falls"`
}

// Sharing is how well valves can share the water as wanted.
type Sharing struct {
	Reach float64 `json:"reach" doc:"part of all wanted flows that the pump gives with the valves of the better-off feeds set"`
	At    float64 `json:"at" doc:"part of the wanted flows that burn and k of the feeds are for: 1, or reach where that is less"`
}

// Lip is one fall.
type Lip struct {
	Name     string    `json:"name" doc:"its name in the job"`
	Head     Quantity  `json:"head" doc:"head upstream, over the low end of the crest"`
	Mid      *Quantity `json:"headMid,omitempty" doc:"on a tilted crest, the same over its middle, where a wanted depth is meant"`
	High     *Quantity `json:"headHigh,omitempty" doc:"on a tilted crest, the same over its high end"`
	Critical Quantity  `json:"critical" doc:"critical depth at mid crest"`
	Edge     Quantity  `json:"edge" doc:"thickness as it leaves the edge at mid crest"`
	PerWidth Quantity  `json:"perWidth" doc:"flow over the width, m²/s"`
}

// Option is one pump on one choice of pipe.
type Option struct {
	Pump  string     `json:"pump" doc:"name of the pump"`
	Pipe  string     `json:"pipe" doc:"sizes of the runs, in the job's order"`
	Flow  Quantity   `json:"flow" doc:"the pump's flow"`
	Feeds []Quantity `json:"feeds" doc:"flow of each watercourse"`
	Power *Quantity  `json:"power,omitempty" doc:"electrical power; absent where the watts are not known"`
	Cost  *Money     `json:"costYear,omitempty" doc:"cost of a year's energy"`
	Reach float64    `json:"reach,omitempty" doc:"part of what is wanted that the valves can bring every feed; absent where it cannot be told"`
	First *Money     `json:"firstCost,omitempty" doc:"price of pump, pipe and fittings, where all are priced"`
	AsIs  bool       `json:"asDrawn,omitempty" doc:"the job as it stands"`
}

// State is where the water stands at one moment.
type State struct {
	Course    string   `json:"course" doc:"first, kept, open or topped"`
	Moment    string   `json:"moment" doc:"rest, run, stop, rerun, stop-open or rerun-open"`
	Pond      Quantity `json:"pond" doc:"elevation of the pond"`
	Vault     Quantity `json:"vault" doc:"elevation in the vault"`
	Change    Quantity `json:"change" doc:"pond against the course's reference line"`
	Freeboard Quantity `json:"freeboard,omitzero" doc:"room under the rim; absent where the rim is not known"`
	OverSill  Quantity `json:"overSill,omitzero" doc:"water over the skimmer's sill, running"`
	NeedsSill Quantity `json:"overSillNeeded,omitzero" doc:"what the flow needs there"`
	OverPump  Quantity `json:"overPumpFloor,omitzero" doc:"water over the floor that the pump stands on, running"`
	NeedsPump Quantity `json:"overPumpFloorNeeded,omitzero" doc:"what the pump needs there"`
	Starved   bool     `json:"starved,omitempty" doc:"running, but the water does not suffice: the flow does not last"`
	Passes    Quantity `json:"passes,omitzero" doc:"running, the flow that lasts"`
	Missing   Quantity `json:"missing,omitzero" doc:"water to be added before all of the flow lasts"`
	Spare     Quantity `json:"spare,omitzero" doc:"water that may be lost before it no longer does"`
}

// Cutting is one cutting plan.
type Cutting struct {
	Pipe     string `json:"pipe" doc:"kind and size"`
	NotToCut bool   `json:"notToCut,omitempty" doc:"pieces of an assembly that cannot be built are among them"`
	Bars     []Bar  `json:"bars" doc:"what is cut up"`
	Proven   bool   `json:"proven" doc:"no plan is better"`
	Method   string `json:"method" doc:"how it was planned and what came first, in a few words"`

	Cautions []string `json:"cautions" doc:"what can hurt at the saw"`
}

// Bar is one stick or offcut.
type Bar struct {
	From    string   `json:"from" doc:"stick or offcut"`
	Length  Quantity `json:"length" doc:"its length"`
	Cuts    []CutOff `json:"cuts" doc:"pieces cut from it"`
	Remnant Quantity `json:"remnant" doc:"what is left"`
}

// CutOff is one piece from a bar.
type CutOff struct {
	Mark   string   `json:"mark" doc:"mark on the piece"`
	Length Quantity `json:"length" doc:"its length"`
}

// GlueStep is one step of gluing up.
type GlueStep struct {
	Number   int      `json:"number" doc:"order"`
	Code     string   `json:"code" doc:"stable code of what to do"`
	Text     string   `json:"text" doc:"the sentence"`
	Where    string   `json:"where" doc:"bench or vault"`
	Parts    []string `json:"parts,omitempty" doc:"marks of parts and pieces in hand"`
	Joints   []int    `json:"joints,omitempty" doc:"joints made, counted along the flow from 1"`
	Tilt     string   `json:"tilt,omitempty" doc:"how the work is held"`
	Hold     Quantity `json:"hold,omitzero" doc:"held together"`
	Set      Quantity `json:"set,omitzero" doc:"left before it is moved"`
	NoReturn bool     `json:"noReturn,omitempty" doc:"cannot be undone but with a saw"`
	Cautions []string `json:"cautions,omitempty" doc:"what can hurt"`
}

// Material is one line of the material list.
type Material struct {
	ID      string   `json:"id" doc:"stable within a list"`
	Text    string   `json:"text" doc:"what it is"`
	Low     Quantity `json:"buyLow" doc:"what to get, by the smaller rule"`
	High    Quantity `json:"buyHigh" doc:"by the larger rule; the same where there is one"`
	Pack    Quantity `json:"pack,omitzero" doc:"what one of a count holds (a stick, a can)"`
	Total   *Price   `json:"total,omitempty" doc:"price, or price range; absent without a price"`
	How     string   `json:"how,omitempty" doc:"how the sticks of pipe come about"`
	Formula string   `json:"formula" doc:"how the amount comes about"`
	Source  Source   `json:"source" doc:"of the formula"`

	Cautions []string `json:"cautions,omitempty" doc:"what can hurt at the work it stands for"`
}

// Total is the foot of the material list.
type Total struct {
	Sum      *Price `json:"sum,omitempty" doc:"sum, or range, of the lines with a price, each rounded to coins; absent where no line has one"`
	Unpriced int    `json:"unpriced" doc:"lines without a price, which are not in the sum"`
}

// Source is where a value comes from.
type Source = trace.Source

// Finding is one result of a check.
type Finding struct {
	Code        string   `json:"code" doc:"stable code"`
	Severity    string   `json:"severity" doc:"danger, caution or info"`
	Path        string   `json:"path" doc:"where in the job"`
	Text        string   `json:"text" doc:"the sentence"`
	Found       Quantity `json:"found,omitzero" doc:"what was found"`
	Limit       Quantity `json:"limit,omitzero" doc:"what it is held against"`
	LimitSource Source   `json:"limitSource,omitzero" doc:"whose limit it is"`
	Accepted    string   `json:"accepted,omitempty" doc:"why the user accepts it"`
	Remedies    []Remedy `json:"remedies,omitempty" doc:"what would mend it, the best first"`
	More        int      `json:"moreRemedies,omitempty" doc:"remedies left out: see options"`
}

// Remedy is one way to mend a finding.
type Remedy struct {
	Text   string   `json:"text" doc:"the sentence"`
	Effect []Effect `json:"effect" doc:"what it moves, computed"`
}

// Effect is a figure before and after.
type Effect struct {
	Figure string   `json:"figure" doc:"ID of the figure, or of the line of the material list"`
	Before Quantity `json:"before" doc:"now"`
	After  Quantity `json:"after" doc:"with the remedy"`
}

// Assumption is a default in force.
type Assumption struct {
	Code   string   `json:"code" doc:"stable code"`
	Path   string   `json:"path" doc:"where the job could say better"`
	Text   string   `json:"text" doc:"the sentence"`
	Value  Quantity `json:"value,omitzero" doc:"the value in force"`
	Source Source   `json:"source" doc:"where it comes from"`
	Weight []Effect `json:"weight,omitempty" doc:"what moves at the other end of its usual range"`
	Turns  bool     `json:"turns,omitempty" doc:"that would turn a verdict"`
}

// Fault is an error in the input.
type Fault struct {
	Code string `json:"code" doc:"stable code"`
	Path string `json:"path" doc:"where in the job"`
	Line int    `json:"line,omitempty" doc:"in the file"`
	Text string `json:"text" doc:"the sentence"`
}

// Figure is a number opened.
type Figure struct {
	ID      string   `json:"id" doc:"stable"`
	Value   Quantity `json:"value,omitzero" doc:"the figure"`
	Formula string   `json:"formula" doc:"in the symbols of the terms"`
	Terms   []Term   `json:"terms,omitempty" doc:"the values in it"`
	Source  Source   `json:"source" doc:"of the formula"`
}

// Term is one value in a figure.
type Term struct {
	Symbol string   `json:"symbol" doc:"as in the formula"`
	Value  Quantity `json:"value,omitzero" doc:"its value"`
	From   string   `json:"from,omitempty" doc:"path in the job, or ID of a figure"`
}

// JSON writes the answer. Faults of reading the file stand with the design's.
func JSON(w io.Writer, r *design.Result, read []trace.Fault, l *words.Language) error {
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(build(r, read, l))
}

// maker turns values into quantities in one system of units.
type maker struct {
	unit unit.System
	say  *words.Language
}

func (m maker) value(v unit.Value) Quantity {
	// What is not known, and what JSON has no number for, is absent.
	if v.Kind == unit.KindNone || v.SI != v.SI || v.SI-v.SI != 0 {
		return Quantity{}
	}
	q := Quantity{SI: v.SI, Text: v.Format(m.unit)}
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

func money(m unit.Money) *Money {
	if m.Currency == "" {
		return nil
	}
	c := m.Round()
	return &Money{Amount: c.Amount.String(), Currency: c.Currency, Text: c.Format()}
}

func price(low, high unit.Money) *Price {
	l, h := money(low), money(high)
	if l == nil || h == nil {
		return nil
	}
	return &Price{Low: *l, High: *h, Text: span(l.Text, h.Text)}
}

func build(r *design.Result, read []trace.Fault, l *words.Language) Document {
	m := maker{unit: r.Units, say: l}
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
	return d
}

func (m maker) upkeep(d *Document, r *design.Result) {
	u := r.Upkeep
	if u == nil {
		return
	}
	d.Upkeep = &Upkeep{DropShare: float64(u.DropShare)}
	if u.Turnover > 0 {
		d.Upkeep.Turnover = bounded(m, u.Turnover, unit.KindDuration, -r.Delivery.Bound())
	}
	if u.Evaporation > 0 {
		d.Upkeep.Evaporation, d.Upkeep.TopUp = new(of(m, u.Evaporation, unit.KindDepth)), new(of(m, u.TopUp, unit.KindWater))
	}
	if u.LoadKnown {
		d.Upkeep.Load = new(of(m, u.Load, unit.KindCurrent))
	}
	if u.DropShare > 0 {
		d.Upkeep.Drop = new(of(m, u.Drop, unit.KindVoltage))
	}
}

func (m maker) delivery(d *Document, r *design.Result) {
	if r.Delivery == nil {
		return
	}
	v := r.Delivery
	d.Pump = &Pump{
		Name: v.Pump, Flow: bounded(m, v.Flow, unit.KindFlow, v.Beyond), Head: bounded(m, v.Head, unit.KindHead, -v.Beyond), Static: of(m, v.Static, unit.KindHead),
		Power: known(m, v.Power, unit.KindPower), Drawn: bounded(m, v.Drawn, unit.KindFlow, v.Bound()), Energy: known(m, v.Energy, unit.KindEnergy), Cost: money(v.Cost),
	}
	for _, x := range v.Others {
		d.Others = append(d.Others, Other{Name: x.Name, Pump: x.Pump, Flow: bounded(m, x.Flow, unit.KindFlow, x.Beyond), Head: bounded(m, x.Head, unit.KindHead, -x.Beyond), Power: known(m, x.Power, unit.KindPower)})
	}
	for _, x := range v.Runs {
		d.Runs = append(d.Runs, Run{
			Name: x.Name, Flow: bounded(m, x.Flow, unit.KindFlow, v.Bound()), Speed: bounded(m, x.Speed, unit.KindSpeed, v.Bound()), Reynolds: float64(x.Reynolds),
			Friction: bounded(m, x.Friction, unit.KindHead, v.Bound()), Fittings: bounded(m, x.Fittings, unit.KindHead, v.Bound()), Volume: of(m, x.Volume, unit.KindWater),
		})
	}
	if s := v.Share; s != nil {
		d.Sharing = &Sharing{Reach: float64(s.Reach), At: float64(s.At)}
	}
	for _, x := range v.Feeds {
		f := Feed{Name: x.Name, Flow: bounded(m, x.Flow, unit.KindFlow, v.Bound()), Wanted: some(m, x.Wanted, unit.KindFlow), Dry: x.Dry, Burn: some(m, x.Burn, unit.KindHead), K: float64(x.K)}
		for _, p := range x.Lips {
			x := Lip{
				Name: p.Name, Head: bounded(m, p.Sheet.Head, unit.KindDepth, v.Bound()), Critical: bounded(m, p.Sheet.Critical, unit.KindDepth, v.Bound()),
				Edge: bounded(m, p.Sheet.Edge, unit.KindDepth, v.Bound()), PerWidth: bounded(m, p.Sheet.PerWidth, unit.KindFlowPerWidth, v.Bound()),
			}
			if p.Tilt > 0 {
				x.Mid, x.High = new(bounded(m, p.Sheet.Middle, unit.KindDepth, v.Bound())), new(bounded(m, p.Sheet.High, unit.KindDepth, v.Bound()))
			}
			f.Lips = append(f.Lips, x)
		}
		d.Feeds = append(d.Feeds, f)
	}
	for _, x := range r.Options {
		o := Option{Pump: x.Pump, Pipe: x.Pipe, Flow: bounded(m, x.Flow, unit.KindFlow, x.Beyond), Power: known(m, x.Power, unit.KindPower), Cost: money(x.Cost), Reach: float64(x.Reach), First: money(x.First), AsIs: x.AsIs}
		for _, f := range x.Feeds {
			o.Feeds = append(o.Feeds, bounded(m, f, unit.KindFlow, x.Beyond))
		}
		d.Options = append(d.Options, o)
	}
}

func (m maker) levels(d *Document, r *design.Result) {
	if r.Levels == nil {
		return
	}
	for _, s := range r.Levels.States {
		x := State{
			Course: string(s.Course), Moment: string(s.Moment), Pond: of(m, s.Pond, unit.KindElevation), Vault: of(m, s.Vault, unit.KindElevation),
			Change: of(m, s.Change, unit.KindDepth), Starved: s.Starved,
		}
		if s.Edge.Known {
			x.Freeboard = of(m, s.Edge.Freeboard, unit.KindDepth)
		}
		if s.Moment.Running() {
			x.Passes, x.Missing, x.Spare = of(m, s.Passes, unit.KindFlow), of(m, s.Missing, unit.KindWater), of(m, s.Spare, unit.KindWater)
		}
		if s.Sill.Applies {
			x.OverSill, x.NeedsSill = of(m, s.Sill.Present, unit.KindDepth), of(m, s.Sill.Needed, unit.KindDepth)
		}
		if s.Pump.Applies {
			x.OverPump, x.NeedsPump = of(m, s.Pump.Present, unit.KindDepth), of(m, s.Pump.Needed, unit.KindDepth)
		}
		d.Levels = append(d.Levels, x)
	}
}

func (m maker) materials(d *Document, r *design.Result) {
	for _, i := range r.Materials {
		low, high := i.Buy.Values()
		x := Material{ID: i.ID, Text: m.say.Say(i.Message(), m.unit), Low: m.value(low), High: m.value(high), Pack: m.value(i.Pack), Formula: i.Formula, Source: i.Source}
		for _, c := range i.Cautions() {
			x.Cautions = append(x.Cautions, m.say.Word(c))
		}
		if i.Priced {
			x.Total = price(i.Total.Low, i.Total.High)
		}
		if how, ok := i.How(); ok {
			x.How = m.say.Say(how, m.unit)
		}
		d.Materials = append(d.Materials, x)
	}
	if sum, unpriced, err := takeoff.Sum(r.Materials); err == nil && len(r.Materials) > 0 {
		d.Total = &Total{Unpriced: unpriced}
		if unpriced < len(r.Materials) {
			d.Total.Sum = price(sum.Low, sum.High)
		}
	}
}

func (m maker) told(d *Document, r *design.Result, read []trace.Fault) {
	for sev := trace.Danger; ; sev-- {
		for _, f := range r.Findings {
			if f.Severity == sev {
				d.Findings = append(d.Findings, m.finding(f))
			}
		}
		if sev == trace.Info {
			break
		}
	}
	for _, a := range r.Assumptions {
		d.Assumptions = append(d.Assumptions, Assumption{
			Code: a.Code, Path: a.Path, Text: m.say.Assumption(a, m.unit), Value: m.value(a.Value), Source: a.Source, Weight: m.effects(a.Weight), Turns: a.Turns,
		})
	}
	for _, list := range [][]trace.Fault{read, r.Faults} {
		for _, f := range list {
			d.Faults = append(d.Faults, Fault{Code: f.Code, Path: f.Path, Line: f.Line, Text: m.say.Say(f.Message, m.unit)})
		}
	}
	for _, f := range r.Figures {
		x := Figure{ID: f.ID, Value: m.value(f.Value), Formula: f.Formula, Source: f.Source}
		for _, t := range f.Terms {
			x.Terms = append(x.Terms, Term{Symbol: t.Symbol, Value: m.value(t.Value), From: t.From})
		}
		d.Figures = append(d.Figures, x)
	}
}

func (m maker) finding(f trace.Finding) Finding {
	x := Finding{
		Code: f.Code, Severity: f.Severity.String(), Path: f.Path, Text: m.say.Finding(f, m.unit),
		Found: m.value(f.Found), Limit: m.value(f.Limit), LimitSource: f.LimitSource,
		Accepted: f.Accepted, More: f.MoreRemedies,
	}
	for _, r := range f.Remedies {
		x.Remedies = append(x.Remedies, Remedy{Text: m.say.Say(r.Message, m.unit), Effect: m.effects(r.Effect)})
	}
	return x
}

func (m maker) effects(list []trace.Effect) []Effect {
	var out []Effect
	for _, e := range list {
		out = append(out, Effect{Figure: e.Figure, Before: m.value(e.Before), After: m.value(e.After)})
	}
	return out
}
