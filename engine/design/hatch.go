package design

import (
	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Codes of the hatch.
const (
	// AssumeHatch: the opening over the vault lies in its middle, along, across or
	// both. Args: left, front (from the wall), each where it was assumed.
	AssumeHatch = "assume.vault.hatch"
)

// hatch gives the opening over the vault and tells what of its place is assumed.
func (m *model) hatch() layout.Opening {
	h, o := &m.job.Vault.Hatch, openingOf(&m.job.Vault)
	if o == (layout.Opening{}) {
		return o
	}
	var assumed []trace.Arg
	if h.Left.IsZero() {
		assumed = append(assumed, trace.Num("left", o.FromX, unit.KindTape))
	}
	if h.Front.IsZero() {
		assumed = append(assumed, trace.Num("front", o.FromY, unit.KindTape))
	}
	if len(assumed) > 0 {
		m.assume("/vault/hatch", AssumeHatch, unit.Value{}, leftEmpty, assumed...)
	}
	return o
}

// openingOf gives the opening over a vault; it lies in the middle where the job
// does not say. Zero where there is none, or a size of it is not known.
func openingOf(v *job.Vault) layout.Opening {
	h, across := &v.Hatch, v.Width.SI
	if h.Length.IsZero() || h.Width.IsZero() {
		return layout.Opening{}
	}
	if v.Shape == "round" {
		across = v.Length.SI
	}
	left, front := h.Left.Or((v.Length.SI-h.Length.SI)/2), h.Front.Or((across-h.Width.SI)/2)
	return layout.Opening{FromX: left, ToX: left + h.Length.SI, FromY: front, ToY: front + h.Width.SI}
}

// hatchMend gives the entries of a hatch that is made larger toward a wall; none
// for any other change. Its place is written with its size, for in the middle it
// would not stay.
func hatchMend(v *job.Vault, code string, by unit.Length, units unit.System) []Entry {
	o := openingOf(v)
	along, from := "length", "left"
	size, at := v.Hatch.Length.SI, o.FromX
	switch code {
	case arrange.ChangeHatchFront, arrange.ChangeHatchBack:
		along, from = "width", "front"
		size, at = v.Hatch.Width.SI, o.FromY
	case arrange.ChangeHatchLeft, arrange.ChangeHatchRight:
	default:
		return nil
	}
	if code == arrange.ChangeHatchLeft || code == arrange.ChangeHatchFront {
		at = max(0, at-by)
	}
	return []Entry{tapeEntry("/vault/hatch/"+along, size+by, units), tapeEntry("/vault/hatch/"+from, at, units)}
}

func tapeEntry(path string, l unit.Length, units unit.System) Entry {
	return Entry{path, unit.Of(l, unit.KindTape).Format(units.Typed())}
}

// hatchStays gives where a hatch lies once the vault is made longer along an axis
// by moving its wall left or front away (near), or the one across.
func hatchStays(v *job.Vault, axis string, by unit.Length, near bool, units unit.System) []Entry {
	o := openingOf(v)
	if o == (layout.Opening{}) {
		return nil
	}
	path, at := "/vault/hatch/left", o.FromX
	if axis == "y" {
		path, at = "/vault/hatch/front", o.FromY
	}
	if near {
		at += by
	}
	return []Entry{tapeEntry(path, at, units)}
}
