package answer

import (
	"plashet/engine/design"
	"plashet/engine/unit"
)

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
