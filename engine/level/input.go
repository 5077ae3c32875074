package level

import (
	"cmp"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Vault is the vessel the pump stands in.
type Vault struct {
	Body       *AreaElevation
	Sill       *Sill       // nil when the pond reaches the vault freely at every level
	ScreenLoss unit.Length // drop of level through mat, net or screen while running, from 0 up
}

// Stand is where the pump stands and what its sheet asks for.
type Stand struct {
	// Floor is the elevation of what it stands on in the vault. Without a vault
	// it stands on the pond's floor, and this is not read.
	Floor unit.Length
	// MinWater is the least depth of water over that floor, from 0 up; only with
	// MinKnown, otherwise no margin over the pump is told.
	MinWater unit.Length
	MinKnown bool
	// Unknown: where it stands is not known (a vault without levels); then
	// MinWater is not held against anything.
	Unknown bool
}

// Inputs is all that the levels follow from.
type Inputs struct {
	Pond *AreaElevation
	Line unit.Length // water line at rest
	Rim  unit.Length // lowest point of the edge, or the overflow
	// NoRim: the rim is not known; nothing is then told of the room under it.
	NoRim bool
	// RimSource says where the rim's level comes from.
	RimSource trace.Source
	Vault     *Vault // nil when the pump stands in the pond or hidden basin itself
	Stand     Stand
	Flow      unit.Flow // the pump's in everyday running, from 0 up
	// FlowSlope tells how the flow grows with the vault's level round FlowAt, at
	// which it is Flow, in m²/s from 0 up; 0: the pump gives Flow wherever the
	// vault stands. It counts in every course but the everyday one.
	FlowSlope float64
	FlowAt    unit.Length
	// Stores in watercourse order.
	Stores []Store
	// Boxes joins boxes among the stores beyond the check valve; nil: none is. It
	// counts only where a stop finds them part full.
	Boxes *Boxes
	// Valve: a check valve is fitted. Without one every stop is an open one.
	Valve bool
	// RunningLine is the pond's level to which it is topped up while running;
	// only with TopsUp.
	RunningLine unit.Length
	TopsUp      bool
	// Fill is the level to which a float valve keeps the pond, running too; only
	// with Fills. What it gives in time is not known here: a start may starve
	// until it has given enough.
	Fill  unit.Length
	Fills bool
	// DesignRain is the depth of a cloudburst that must fit under the rim; it
	// falls on pond and vault and on RainOn (what runs in from the ground round
	// them is not counted). Both from 0 up.
	DesignRain unit.Length
	RainOn     unit.Area // boxes, pools and reaches, which let it run on to the pond
	// Reserve is the depth that may evaporate before someone tops up, over the
	// pond's surface at the water line. From 0 up.
	Reserve unit.Length
}

// Lowest gives the level of the water, in the vault or without one in the pond,
// from which the pump draws air: what its sheet asks for over the floor that it
// stands on, or that floor where the sheet's depth is not known. Without a vault
// it stands on the pond's floor.
func (in *Inputs) Lowest() unit.Length {
	_, low := in.heights()
	return unit.Length(low)
}

func (in *Inputs) heights() (stand, low float64) {
	stand = float64(in.Pond.Floor())
	if in.Vault != nil {
		stand = max(float64(in.Stand.Floor), float64(in.Vault.Body.Floor()))
	}
	low = stand
	if in.Stand.MinKnown && !in.Stand.Unknown {
		low += float64(in.Stand.MinWater)
	}
	return stand, low
}

func (in *Inputs) check() error {
	if in.Pond == nil {
		return fail("/pond", CodeMissing, trace.Str("name", "pond"))
	}
	err := cmp.Or(
		elevation("/pond/water", "line", in.Line),
		elevation("/vault/floor", "floor", in.Stand.Floor),
		notNegative("", "pump minimum", in.Stand.MinWater, unit.KindDepth),
		notNegative("", "flow", in.Flow, unit.KindFlow),
		notNegative("/site/designRain", "design rain", in.DesignRain, unit.KindDepth),
		notNegative("/watercourses", "area that takes rain", in.RainOn, unit.KindArea),
		notNegative("", "reserve", in.Reserve, unit.KindDepth),
	)
	if err == nil && !in.NoRim {
		err = elevation("/pond/rim", "rim", in.Rim)
	}
	if err == nil && in.TopsUp {
		err = elevation("/pond/runningLine", "running line", in.RunningLine)
	}
	if err == nil && in.Fills {
		err = elevation("/pond/fillLevel", "fill level", in.Fill)
	}
	if err == nil && in.FlowSlope != 0 {
		err = cmp.Or(notNegative("", "slope of the flow", unit.Ratio(in.FlowSlope), unit.KindRatio), elevation("", "level of the flow", in.FlowAt))
	}
	if err == nil && in.Vault != nil {
		if in.Vault.Body == nil {
			return fail("/vault", CodeMissing, trace.Str("name", "vault"))
		}
		err = notNegative("/vault/screenLoss", "screen loss", in.Vault.ScreenLoss, unit.KindDepth)
	}
	for i := range in.Stores {
		err = cmp.Or(err, in.Stores[i].check())
	}
	if err == nil && in.Boxes != nil {
		for _, k := range in.Boxes.Store {
			err = cmp.Or(err, within("/watercourses", "box", unit.Ratio(k), -1, unit.Ratio(len(in.Stores)-1), unit.KindCount))
		}
	}
	if err == nil && in.Line <= in.Pond.Floor() {
		err = fail("/pond/water", CodeRange, trace.Str("name", "line"),
			trace.Num("found", in.Line, unit.KindElevation), trace.Num("limit", in.Pond.Floor(), unit.KindElevation))
	}
	return err
}
