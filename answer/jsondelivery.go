package answer

import (
	"plashet/engine/design"
	"plashet/engine/unit"
)

// Pump is the pump at its operating point.
type Pump struct {
	Name    string    `json:"name" doc:"its name in the job"`
	Flow    Quantity  `json:"flow" doc:"flow delivered"`
	Head    Quantity  `json:"head" doc:"total dynamic head"`
	Static  Quantity  `json:"static" doc:"of that, height"`
	Power   *Quantity `json:"power,omitempty" doc:"electrical power; absent where the watts are not known"`
	Several bool      `json:"several,omitempty" doc:"it, or a pump beside it, could run at other flows too, by a curve that rises: see the findings"`
	Drawn   Quantity  `json:"drawn" doc:"flow that all pumps together take from the vault"`
	Energy  *Quantity `json:"energyYear,omitempty" doc:"energy of all pumps in a year; absent where the watts of one are not known"`
	Cost    *Money    `json:"costYear,omitempty" doc:"cost of that energy"`
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
	Pump    string     `json:"pump" doc:"name of the pump"`
	Pipe    string     `json:"pipe" doc:"sizes of the runs, in the job's order"`
	Flow    Quantity   `json:"flow" doc:"the pump's flow"`
	Feeds   []Quantity `json:"feeds" doc:"flow of each watercourse"`
	Power   *Quantity  `json:"power,omitempty" doc:"electrical power; absent where the watts are not known"`
	Cost    *Money     `json:"costYear,omitempty" doc:"cost of a year's energy"`
	Reach   float64    `json:"reach,omitempty" doc:"part of what is wanted that the valves can bring every feed; absent where it cannot be told"`
	First   *Money     `json:"firstCost,omitempty" doc:"price of pump, pipe and fittings, where all are priced"`
	Several bool       `json:"several,omitempty" doc:"it could run at other flows too, by a curve that rises"`
	AsIs    bool       `json:"asDrawn,omitempty" doc:"the job as it stands"`
}

func (m maker) delivery(d *Document, r *design.Result) {
	if r.Delivery == nil {
		return
	}
	v := r.Delivery
	d.Pump = &Pump{
		Name: v.Pump, Flow: bounded(m, v.Flow, unit.KindFlow, v.Beyond), Head: bounded(m, v.Head, unit.KindHead, -v.Beyond), Static: of(m, v.Static, unit.KindHead),
		Power: known(m, v.Power, unit.KindPower), Several: v.Several, Drawn: bounded(m, v.Drawn, unit.KindFlow, v.Bound()), Energy: known(m, v.Energy, unit.KindEnergy), Cost: m.money(v.Cost),
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
		o := Option{Pump: x.Pump, Pipe: x.Pipe, Flow: bounded(m, x.Flow, unit.KindFlow, x.Beyond), Power: known(m, x.Power, unit.KindPower), Cost: m.money(x.Cost), Reach: float64(x.Reach), First: m.money(x.First), AsIs: x.AsIs, Several: x.Several}
		for _, f := range x.Feeds {
			o.Feeds = append(o.Feeds, bounded(m, f, unit.KindFlow, x.Beyond))
		}
		d.Options = append(d.Options, o)
	}
}
