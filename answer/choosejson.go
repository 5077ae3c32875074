package answer

import (
	"encoding/json"
	"io"
	"slices"

	"plashet/engine/design"
	"plashet/engine/size"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/words"
)

// ChosenDocument is what is best on a shelf, as JSON.
type ChosenDocument struct {
	Format   string         `json:"format" doc:"says that this is an answer"`
	Version  int            `json:"version" doc:"version of the answer's fields"`
	Name     string         `json:"name" doc:"the job's name"`
	Units    string         `json:"units" one:"us metric" doc:"us or metric: the units of every text"`
	Currency string         `json:"currency" doc:"of every amount"`
	Years    float64        `json:"years" doc:"over which costs are counted"`
	Discount float64        `json:"discount" doc:"rate a year, a part of 1"`
	Covered  float64        `json:"covered" doc:"number of designs that the front is proven best over"`
	Stopped  bool           `json:"stopped,omitempty" doc:"the search ended before it was done: the front is that of what was looked at, and proves nothing of the rest"`
	Front    []ChosenDesign `json:"front" doc:"the designs that none beats on first cost, cost over the years and reserve together; by cost over the years"`
	Lost     []ChosenLost   `json:"lost,omitempty" doc:"the other pumps that serve, each with its cheapest design"`
	Out      []ChosenOut    `json:"out,omitempty" doc:"the pumps that do not serve alone"`
	Best     *ChosenRoom    `json:"best,omitempty" doc:"what the first design leaves room for"`
	Drawn    *ChosenRoom    `json:"drawn,omitempty" doc:"what the job as drawn leaves room for, with valves set to give what is wanted"`
	Findings []string       `json:"findings,omitempty" doc:"worth knowing"`
	Assumed  []string       `json:"assumed,omitempty" doc:"defaults in force"`
	Faults   []Fault        `json:"faults,omitempty" doc:"errors in the input"`
}

// ChosenDesign is one way to serve what is wanted.
type ChosenDesign struct {
	Pumps   []string     `json:"pumps" doc:"one pump, or two side by side"`
	Pipe    []ChosenPipe `json:"pipe" doc:"of each run"`
	First   string       `json:"first,omitempty" doc:"first cost: pumps, pipe, fittings; absent where prices are not known"`
	Years   string       `json:"years" doc:"first cost and the present value of the electricity; without prices the electricity alone, without a tariff either its kWh"`
	Leg     string       `json:"leg,omitempty" doc:"kind and size of the leg of each of two pumps"`
	Reserve float64      `json:"reserve" doc:"step of reserve: part above what is wanted that it still reaches"`
	Flow    Quantity     `json:"flow" doc:"sum of the wanted flows"`
	Head    Quantity     `json:"head" doc:"head of the pumps there"`
	Need    Quantity     `json:"need" doc:"head that pipe and height take there; the valve in the main takes the rest"`
	Power   Quantity     `json:"power" doc:"electrical power of all its pumps there"`
	Open    float64      `json:"open,omitempty" doc:"part of what is wanted that it gives with the valve in the main opened; a bound where the published curve ends"`
}

// ChosenPipe is the pipe of one run.
type ChosenPipe struct {
	Run   string   `json:"run" doc:"name of the run"`
	Pipe  string   `json:"pipe" doc:"kind and size"`
	Speed Quantity `json:"speed" doc:"of the water at the wanted flows"`
}

// ChosenLost is a pump that serves and is beaten.
type ChosenLost struct {
	Design ChosenDesign `json:"design" doc:"its cheapest over the years"`
	By     int          `json:"by" doc:"which design of the front beats it, counted from 0"`
	First  string       `json:"first,omitempty" doc:"how much more it costs at first; absent where prices are not known"`
	Years  string       `json:"years" doc:"how much more over the years"`
	Steps  int          `json:"steps" doc:"how many steps of reserve it has less"`
}

// ChosenOut is a pump that does not serve alone.
type ChosenOut struct {
	Pump string `json:"pump" doc:"its name"`
	Code string `json:"code" doc:"the reason's code"`
	Text string `json:"text" doc:"the reason"`
}

// ChosenRoom holds the questions asked backwards.
type ChosenRoom struct {
	Higher  []Room         `json:"higher" doc:"how much higher each lip could be"`
	Longer  []Room         `json:"longer" doc:"how much longer each run could be; for one from the pump, how much farther the pump could stand"`
	Changes []ChosenChange `json:"changes" doc:"other pipe for a single run that saves head or money, what pays most first"`
}

// Room is how far one thing could go.
type Room struct {
	Name string    `json:"name" doc:"lip's feed, or run"`
	More *Quantity `json:"more,omitempty" doc:"how much; absent where there is no answer"`
	Why  string    `json:"why,omitempty" doc:"why there is no answer"`
}

// ChosenChange is another pipe for one run.
type ChosenChange struct {
	Run   string   `json:"run" doc:"name of the run"`
	Pipe  string   `json:"pipe" doc:"kind and size"`
	More  string   `json:"more,omitempty" doc:"what it costs more; below zero: less; absent where prices are not known"`
	Head  Quantity `json:"head" doc:"head saved at the wanted flows"`
	Saved string   `json:"saved" doc:"what the cheapest pump for it saves over the years, all costs counted; below zero: nothing"`
}

// ChosenJSON prints a choice as JSON.
func ChosenJSON(w io.Writer, c *design.Choice, read []trace.Fault, l *words.Language) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(BuildChosen(c, read, l))
}

// BuildChosen gives a choice as values: what ChosenJSON writes.
func BuildChosen(c *design.Choice, read []trace.Fault, l *words.Language) ChosenDocument {
	p := &choosing{printer{say: l, unit: c.Units, style: c.Style}, c}
	d := ChosenDocument{Format: FormatName, Version: FormatVersion, Name: c.Name, Units: systemName(c.Units), Currency: c.Currency, Years: float64(c.Years), Discount: float64(c.Discount), Front: []ChosenDesign{}}
	if c.Result != nil {
		d.Covered, d.Stopped = c.Result.Covered, c.Result.Stopped
		for i := range c.Result.Front {
			d.Front = append(d.Front, p.designJSON(&c.Result.Front[i]))
		}
		for _, x := range c.Result.Lost {
			d.Lost = append(d.Lost, ChosenLost{Design: p.designJSON(&x.Design), By: x.By, First: p.first(x.First), Years: p.money(x.Years), Steps: x.Steps})
		}
		for _, o := range c.Result.Out {
			d.Out = append(d.Out, ChosenOut{Pump: c.Problem.Pumps[o.Pump].Name, Code: o.Code, Text: l.Say(o.Message, c.Units)})
		}
		d.Best, d.Drawn = p.roomJSON(c.Best), p.roomJSON(c.Drawn)
	}
	for _, f := range c.Findings {
		d.Findings = append(d.Findings, l.Finding(f, c.Units))
	}
	for _, a := range c.Assumptions {
		d.Assumed = append(d.Assumed, l.Assumption(a, c.Units))
	}
	for _, f := range append(slices.Clone(read), c.Faults...) {
		d.Faults = append(d.Faults, FaultOf(f, c.Units, l))
	}
	return whole(d)
}

func (p *choosing) designJSON(d *size.Design) ChosenDesign {
	x := ChosenDesign{
		First: p.first(d.First), Years: p.money(d.Years), Flow: of(p.make(), d.Flow, unit.KindFlow), Head: of(p.make(), d.Head, unit.KindHead),
		Need: of(p.make(), d.Need, unit.KindHead), Power: of(p.make(), d.Power, unit.KindPower), Open: float64(d.Open.Factor),
	}
	if d.Leg >= 0 {
		x.Leg = p.c.Problem.Legs[d.Leg].Name
	}
	if d.Step > 0 {
		x.Reserve = float64(p.c.Problem.Reserves[d.Step-1] - 1)
	}
	for _, i := range d.Pumps {
		x.Pumps = append(x.Pumps, p.c.Problem.Pumps[i].Name)
	}
	for i, k := range d.Choices {
		s := &p.c.Problem.Segments[i]
		x.Pipe = append(x.Pipe, ChosenPipe{Run: s.Name, Pipe: s.Choices[k].Name, Speed: of(p.make(), d.Speeds[i], unit.KindSpeed)})
	}
	return x
}

func (p *choosing) roomJSON(b *design.Backwards) *ChosenRoom {
	if b == nil {
		return nil
	}
	rooms := func(list []size.Room, k unit.Kind) []Room {
		out := make([]Room, 0, len(list))
		for _, r := range list {
			x := Room{Name: r.Name}
			if r.Why.Code == "" {
				more := of(p.make(), r.More, k)
				x.More = &more
			} else {
				x.Why = p.say.Say(r.Why, p.unit)
			}
			out = append(out, x)
		}
		return out
	}
	out := &ChosenRoom{Higher: rooms(b.Highest, unit.KindHead), Longer: rooms(b.Longer, unit.KindDistance), Changes: []ChosenChange{}}
	for i := range b.Changes {
		x := &b.Changes[i]
		s := &p.c.Problem.Segments[x.Segment]
		out.Changes = append(out.Changes, ChosenChange{Run: s.Name, Pipe: s.Choices[x.Choice].Name, More: p.first(x.More), Head: of(p.make(), x.Head, unit.KindHead), Saved: p.money(x.Saved)})
	}
	return out
}

// make turns values into quantities in the choice's units.
func (p *choosing) make() maker { return maker{unit: p.unit, style: p.style, say: p.say} }

func systemName(s unit.System) string {
	if s.Is(unit.Metric) {
		return "metric"
	}
	return "us"
}
