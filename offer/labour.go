package offer

import (
	"github.com/shopspring/decimal"

	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/quote"
	"plashet/takeoff"
)

// labour gives the tasks: hours for one unit, times the units that the design
// needs, to hundredths of an hour.
func (w *work) labour(high bool) []quote.Cost {
	var out []quote.Cost
	for i, l := range w.job.Offer.Labour {
		path := at("/offer/labour", i)
		c := quote.Cost{Group: quote.Labour, Name: l.Task, Scope: l.Scope, Unit: "h", Path: path}
		if c.Scope == "" {
			c.Scope = scopeOf(l.Per)
		}
		units, ok := w.units(l, path, high)
		if ok {
			c.Quantity = units.Mul(ratio(l.Hours)).Round(2)
			c.Each = w.amount(l.Rate)
		}
		out = append(out, c)
	}
	return out
}

// scopeOf gives the part of the work that a task belongs to.
func scopeOf(per string) string {
	switch per {
	case "joint", "cut", "pipe":
		return ScopePlumbing
	case "pump":
		return ScopePump
	case "liner", "fall":
		return ScopePond
	case "stone":
		return ScopeStone
	case "digging":
		return ScopeEarth
	}
	return ""
}

// units gives how often the hours of a task are needed.
func (w *work) units(l job.Labour, path string, high bool) (decimal.Decimal, bool) {
	need, known := w.need(l.Per, high)
	if !known {
		w.fault(path, FaultNeed, trace.Str("task", l.Task), trace.Str("per", l.Per))
		return decimal.Zero, false
	}
	if need.Kind == unit.KindCount {
		return decimal.NewFromFloat(need.SI).Round(2), true
	}
	per, ok := design.PriceUnit(l.Unit, w.result.Units)
	if !ok || per.SI <= 0 || per.Kind.Dim() != need.Kind.Dim() {
		w.fault(path+"/unit", FaultUnit, trace.Str("task", l.Task), trace.Str("found", l.Unit))
		return decimal.Zero, false
	}
	return decimal.NewFromFloat(need.SI / per.SI).Round(4), true
}

// need gives what the design has of something; false where it is not known.
func (w *work) need(per string, high bool) (unit.Value, bool) {
	r, j := w.result, w.job
	count := func(n int) (unit.Value, bool) { return unit.Of(unit.Ratio(n), unit.KindCount), true }
	switch per {
	case "", "job":
		return count(1)
	case "joint":
		v, _ := count(r.Joints)
		return v, r.Glue != nil || len(j.Assembly.Parts) == 0
	case "cut":
		n := 0
		for _, c := range r.Cutting {
			n += len(c.Pieces)
		}
		return count(n)
	case "fall":
		n := 0
		for _, c := range j.Watercourses {
			for _, p := range c.Parts {
				if p.Lip != nil {
					n++
				}
			}
		}
		return count(n)
	case "pump":
		n := 0
		for _, p := range w.used() {
			if !p.Existing {
				n++
			}
		}
		return count(n)
	case "pipe":
		var length unit.Length
		for _, run := range j.Runs {
			if !run.Existing {
				length += run.Length.SI
			}
		}
		return unit.Of(length, unit.KindDistance), true
	}
	return w.listed(per, high)
}

// listed adds up what the list has of liner, soil to dig or stone.
func (w *work) listed(per string, high bool) (unit.Value, bool) {
	kind := map[string]unit.Kind{"liner": unit.KindArea, "digging": unit.KindEarth, "stone": unit.KindMass}[per]
	sum, any := 0.0, false
	for _, it := range w.result.Materials {
		amount := it.Buy.High
		if !high {
			amount = it.Buy.Low
		}
		switch {
		case per == "liner" && it.Code == takeoff.CodeLiner:
			amount = float64(it.Length) * float64(it.Width)
		case per == "digging" && it.Code == takeoff.CodeDig:
		case per == "stone" && (it.Code == takeoff.CodeBoulders || it.Code == takeoff.CodeGravel):
		default:
			continue
		}
		sum, any = sum+amount, true
	}
	return unit.Value{SI: sum, Kind: kind}, any
}
