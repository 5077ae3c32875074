package takeoff

import (
	"math"
	"strconv"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Limits of what is taken as possible.
const (
	mostCount  = 1_000_000
	mostLength = 100_000 * unit.Metre
	mostVolume = 1_000_000_000 * unit.CubicMetre
	mostSpare  = 2
)

// work is one list in the making.
type work struct {
	in       Input
	spare    float64
	items    []Item
	findings []trace.Finding
	faults   []trace.Fault
}

// List makes the material list: fittings and pipe, cement, primer and tape,
// liner and underlayment, stone, soil, in this order. Each item carries its
// formula and its terms. The defaults in force are told by Assumed.
func List(in Input) ([]Item, []trace.Finding, []trace.Fault) {
	w := &work{in: in}
	if w.number(in.Paths.Spare, "spare", float64(in.Spare), 0, mostSpare, unit.KindPercent) {
		w.spare = float64(in.Spare)
	}
	w.ends()
	w.fittings()
	w.pipe()
	if in.Book == nil {
		w.fault("", FaultBook)
	} else {
		w.cement()
		w.tape()
		w.liners()
		w.stone()
		w.soil()
	}
	w.identify()
	w.prices()
	return w.items, w.findings, w.faults
}

// identify numbers the items within their code.
func (w *work) identify() {
	seen := map[string]int{}
	for i := range w.items {
		code := w.items[i].Code
		w.items[i].ID = code + "." + strconv.Itoa(seen[code])
		seen[code]++
	}
}

func (w *work) fault(path, code string, args ...trace.Arg) {
	w.faults = append(w.faults, trace.Fault{Message: trace.Message{Code: code, Args: args}, Path: path})
}

// number tells whether a value is finite and within its bounds, and faults it
// where not.
func (w *work) number(path, name string, v, least, most float64, k unit.Kind) bool {
	limit := least
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		w.fault(path, FaultFinite, trace.Str("name", name))
		return false
	case v > most:
		limit = most
	case v >= least:
		return true
	}
	w.fault(path, FaultRange, trace.Str("name", name),
		trace.Arg{Name: "found", Value: unit.Value{SI: v, Kind: k}}, trace.Arg{Name: "limit", Value: unit.Value{SI: limit, Kind: k}})
	return false
}

// length is number for lengths that must be there.
func (w *work) length(path, name string, v unit.Length) bool {
	return w.number(path, name, float64(v), float64(unit.Millimetre), float64(mostLength), unit.KindDistance)
}

// extent is number for lengths that may be nought.
func (w *work) extent(path, name string, v unit.Length) bool {
	return w.number(path, name, float64(v), 0, float64(mostLength), unit.KindDistance)
}

func (w *work) count(path string, n int) bool {
	return w.number(path, "count", float64(n), 0, mostCount, unit.KindCount)
}

// term makes a term that comes from the job or from another figure.
func term(symbol string, v float64, k unit.Kind, from string) trace.Term {
	return trace.Term{Symbol: symbol, Value: unit.Value{SI: v, Kind: k}, From: from}
}

// ruled makes a term that a source gives.
func ruled(symbol string, v float64, k unit.Kind, s trace.Source) trace.Term {
	return trace.Term{Symbol: symbol, Value: unit.Value{SI: v, Kind: k}, Source: s}
}
