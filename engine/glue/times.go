package glue

import (
	"errors"
	"math"

	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// coldLimit is 40 F, below which the manuals give their longest times.
const coldLimit unit.Temperature = (40.0 - 32) / 1.8

// times gives each cemented joint its hold, set and cure times:
//
//	time = slower manual x damp factor (1 in dry weather)
//
// Where a table does not reach, the times stay 0, the plan is not Known and a
// fault says so once for each size.
func (w *work) times() {
	b := w.in.Book
	if b == nil {
		w.fault(w.in.Path, FaultNoBook)
		return
	}
	w.plan.Known = true
	if t := float64(w.in.Temperature); math.IsNaN(t) || math.IsInf(t, 0) || t < -273.15 {
		w.missing("temperature")
	} else if w.in.Temperature < coldLimit {
		w.findings = append(w.findings, trace.Finding{
			Message: trace.Message{Code: FindCold, Args: []trace.Arg{
				trace.Num("found", w.in.Temperature, unit.KindTemperature), trace.Num("limit", coldLimit, unit.KindTemperature),
			}},
			Path: w.in.Path, Severity: trace.Caution,
			Found: unit.Of(w.in.Temperature, unit.KindTemperature), Limit: unit.Of(coldLimit, unit.KindTemperature),
			LimitSource: trace.Source{Title: "coldest range of the set and cure tables", Basis: trace.BasisPublished},
		})
	}
	if p := float64(w.in.Pressure); !(p >= 0) || math.IsInf(p, 0) {
		w.missing("pressure")
	}
	if !w.plan.Known {
		return
	}
	damp := unit.Duration(1)
	if w.in.Damp {
		damp, w.plan.Damp = unit.Duration(b.DampFactor().Value), true
	}
	told := map[string]bool{}
	for i := range w.plan.Joints {
		j := &w.plan.Joints[i]
		if j.Kind != Cement || j.Made {
			continue
		}
		t := &j.Times
		hold, err := b.HoldTime(j.Size)
		if err != nil {
			w.outside(told, "hold", j.Size, err)
		}
		t.Hold, t.HoldSource = hold.High, hold.Source
		if t.Twist, t.TwistSource, err = b.Twist(j.Size); err != nil {
			w.outside(told, "twist", j.Size, err)
		}
		if t.Sets, err = b.SetTimes(j.Size, w.in.Temperature); err != nil {
			w.outside(told, "set", j.Size, err)
		}
		if t.Cures, err = b.CureTimes(j.Size, w.in.Temperature, w.in.Pressure); err != nil {
			w.outside(told, "cure", j.Size, err)
		}
		if s, ok := catalog.Slowest(t.Sets); ok {
			t.Set, t.SetSource = s.Duration*damp, s.Source
		}
		if s, ok := catalog.Slowest(t.Cures); ok {
			t.Cure, t.CureSource = s.Duration*damp, s.Source
		}
		w.plan.Handle = max(w.plan.Handle, t.Set)
		w.plan.Ready = max(w.plan.Ready, t.Cure)
	}
	w.longest()
}

// longest opens the longest cure to the manuals behind it.
func (w *work) longest() {
	for _, j := range w.plan.Joints {
		if j.Kind != Cement || j.Times.Cure != w.plan.Ready || w.plan.Ready == 0 {
			continue
		}
		f := trace.Figure{
			ID: "glue.ready", Value: unit.Of(w.plan.Ready, unit.KindHours), Formula: "slowest manual x d, longest over the joints", Source: j.Times.CureSource,
		}
		for _, c := range j.Times.Cures {
			f.Terms = append(f.Terms, trace.Term{Symbol: "manual " + c.Manual, Value: unit.Of(c.Duration, unit.KindHours), Source: c.Source})
		}
		if w.in.Damp {
			d := w.in.Book.DampFactor()
			f.Terms = append(f.Terms, trace.Term{Symbol: "d", Value: unit.Of(d.Value, unit.KindRatio), Source: d.Source})
		}
		w.plan.Figures = append(w.plan.Figures, f)
		return
	}
}

func (w *work) missing(name string) {
	w.plan.Known = false
	w.fault(w.in.Path, FaultFinite, trace.Str("name", name))
}

func (w *work) outside(told map[string]bool, table, size string, err error) {
	w.plan.Known = false
	if key := table + " " + size; !told[key] {
		told[key] = true
		w.fault(w.in.Path, FaultTimes, trace.Str("table", table), trace.Str("size", size), trace.Str("cause", cause(err)))
	}
}

func cause(err error) string {
	var e *catalog.Error
	if errors.As(err, &e) {
		return e.Code
	}
	return ""
}

// quantity adds up cement and primer, in the table's cautious end:
//
//	cement = sum over joints of 1 US quart / joints per quart
//	primer = cement / primer factor
func (w *work) quantity() {
	b := w.in.Book
	if b == nil {
		return
	}
	var order []string
	count := map[string]int{}
	for _, j := range w.plan.Joints {
		if j.Kind != Cement || j.Made {
			continue
		}
		if count[j.Size] == 0 {
			order = append(order, j.Size)
		}
		count[j.Size]++
	}
	var terms []trace.Term
	source := trace.Source{}
	for _, size := range order {
		per, err := b.JointsPerQuart(size)
		if err != nil || !(per.Low > 0) {
			w.plan.Known = false
			w.fault(w.in.Path, FaultQuantity, trace.Str("size", size), trace.Str("cause", cause(err)))
			continue
		}
		w.plan.Cement += unit.Volume(float64(count[size])/per.Low) * unit.USQuart
		source = per.Source
		terms = append(terms,
			trace.Term{Symbol: "n " + size, Value: unit.Of(unit.Ratio(count[size]), unit.KindRatio), From: w.in.Path},
			trace.Term{Symbol: "k " + size, Value: unit.Of(unit.Ratio(per.Low), unit.KindRatio), Source: per.Source},
		)
	}
	if w.plan.Cement == 0 {
		return
	}
	w.plan.Figures = append(w.plan.Figures, trace.Figure{
		ID: "glue.cement", Value: unit.Of(w.plan.Cement, unit.KindCement), Formula: "sum over sizes of n / k x 1 US quart", Terms: terms, Source: source,
	})
	if f := b.PrimerFactor(); f.Value > 0 {
		w.plan.Primer = w.plan.Cement / unit.Volume(f.Value)
		w.plan.Figures = append(w.plan.Figures, trace.Figure{
			ID: "glue.primer", Value: unit.Of(w.plan.Primer, unit.KindCement), Formula: "cement / f",
			Terms:  []trace.Term{{Symbol: "cement", From: "glue.cement", Value: unit.Of(w.plan.Cement, unit.KindCement)}, {Symbol: "f", Value: unit.Of(f.Value, unit.KindRatio), Source: f.Source}},
			Source: f.Source,
		})
	}
}
