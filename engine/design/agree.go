package design

import (
	"slices"
	"strings"

	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// tally counts what the run that starts at the pump and the assembly have in
// common.
type tally struct {
	valve, union     string // the first check valve; a union
	valveAt, unionAt string // marks, in the assembly
	elbows           [2]int // of 90 and of 45 degrees
}

func (t *tally) add(name, mark string, count int) {
	switch {
	case strings.HasPrefix(name, "check valve ") && t.valve == "":
		t.valve, t.valveAt = name, mark
	case name == "union" && t.union == "":
		t.union, t.unionAt = name, mark
	case name == "elbow 90", name == "street elbow 90":
		t.elbows[0] += count
	case name == "elbow 45", name == "street elbow 45":
		t.elbows[1] += count
	}
}

// agree compares the run that starts at the pump, from which the flow is worked
// out, with the assembly, which is that run's first stretch: pipe, valve,
// elbows, union. What the run has more may lie beyond the wall.
func (m *model) agree(in *layout.Input) {
	i := 0
	for i < len(m.job.Runs) && m.job.Runs[i].From != "pump" {
		i++
	}
	if i == len(m.job.Runs) {
		return
	}
	run, a := &m.job.Runs[i], &m.job.Assembly
	var of, laid tally
	for _, f := range run.Fittings {
		of.add(m.trade(f.Fitting), "", max(1, f.Count))
	}
	for k, l := range a.Parts {
		laid.add(m.trade(l.Fitting), in.Parts[k].Mark, 1)
	}
	var args []trace.Arg
	sev := trace.Info
	differs := func(worst trace.Severity, more ...trace.Arg) {
		sev, args = max(sev, worst), append(args, more...)
	}
	if pipe, err := m.pipe(run.Pipe); err == nil && !slices.Contains(in.Pipes, layout.PipeOf(pipe)) {
		differs(trace.Caution, trace.Str("runPipe", pipe.Kind+" "+pipe.Size), trace.Str("pipe", a.Pipe.Kind+" "+a.Pipe.Size))
	}
	switch {
	case of.valve == laid.valve:
	case of.valve == "":
		differs(trace.Caution, trace.Str("valveOnly", laid.valveAt))
	case laid.valve == "":
		differs(trace.Info, trace.Str("runValveOnly", of.valve))
	default:
		differs(trace.Caution, trace.Str("runValve", of.valve), trace.Str("valve", laid.valve))
	}
	for k, names := range [2][2]string{{"runElbows", "elbows"}, {"runFortyFives", "fortyFives"}} {
		if of.elbows[k] < laid.elbows[k] {
			differs(trace.Caution,
				trace.Num(names[0], unit.Ratio(of.elbows[k]), unit.KindCount), trace.Num(names[1], unit.Ratio(laid.elbows[k]), unit.KindCount))
		}
	}
	switch of.union {
	case laid.union:
	case "":
		differs(trace.Caution, trace.Str("unionOnly", laid.unionAt))
	default:
		differs(trace.Info, trace.Str("runUnionOnly", ""))
	}
	if len(args) > 0 {
		m.remark(at("/runs", i), sev, trace.Message{Code: FindDiffers, Args: append(args, trace.Str("run", run.Name))})
	}
}

// trade gives a fitting's name as the catalogue writes it.
func (m *model) trade(name string) string {
	if n, err := m.book.Names(name, ""); err == nil {
		return n.Fitting
	}
	return name
}
