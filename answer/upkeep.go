package answer

import (
	"plashet/engine/design"
	"plashet/engine/unit"
)

// Upkeep is what the running feature asks for.
type Upkeep struct {
	Turnover    Quantity  `json:"turnover,omitzero" doc:"time in which the pumps move as much water as the pond holds"`
	Evaporation *Quantity `json:"evaporation,omitempty" doc:"depth that a summer day takes"`
	TopUp       *Quantity `json:"topUp,omitempty" doc:"water that makes up for it"`
	Load        *Quantity `json:"load,omitempty" doc:"current of all pumps"`
	Drop        *Quantity `json:"voltageDrop,omitempty" doc:"voltage lost on the cable"`
	DropShare   float64   `json:"voltageDropShare,omitempty" doc:"the same as a part of the voltage"`
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

func (p *printer) upkeep(r *design.Result) {
	u := r.Upkeep
	if u == nil {
		return
	}
	p.head("print.head.upkeep")
	if u.Turnover > 0 {
		p.tell("", "print.turnover", str("time", showBound(p, u.Turnover, unit.KindDuration, -r.Delivery.Bound())))
	}
	if u.Evaporation > 0 {
		p.tell("", "print.evaporation", num("depth", u.Evaporation, unit.KindDepth), num("area", u.WaterArea, unit.KindArea), num("water", u.TopUp, unit.KindWater))
	}
	if u.LoadKnown {
		p.tell("", "print.load", num("current", u.Load, unit.KindCurrent))
	}
	if u.DropShare > 0 {
		p.tell("", "print.drop", num("drop", u.Drop, unit.KindVoltage), num("share", u.DropShare, unit.KindPercent))
	}
	p.tell("", "print.electrician")
}
