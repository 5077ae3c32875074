package design

import (
	"slices"
	"strings"

	"plashet/engine/catalog"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// tally counts what the run that starts at the pump and the assembly have in
// common.
type tally struct {
	valve, union     string // the first check valve; a union
	valveAt, unionAt string // marks, in the assembly
	elbows           [2]int // of 90 and of 45 degrees
}

// unionEnded ends the name of a check valve that opens at both ends.
const unionEnded = " union-ended"

func (t *tally) add(name, mark string, count int) {
	if plain, ended := strings.CutSuffix(name, unionEnded); ended && isCheck(name) { // valve and union in one
		t.add(plain, mark, count)
		t.add("union", mark, count)
		return
	}
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
	i := pumpRun(m.job)
	if i < 0 {
		return
	}
	run, a := &m.job.Runs[i], &m.job.Assembly
	of, laid := tallied(m.book, run), tally{}
	for k, l := range a.Parts {
		laid.add(trade(m.book, l.Fitting), in.Parts[k].Mark, 1)
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
		differs(trace.Info, trace.Flag("runUnionOnly"))
	}
	if len(args) == 0 {
		return
	}
	where := at("/runs", i)
	f := trace.Finding{Path: where, Severity: sev, Message: trace.Message{
		Code: FindDiffers, Args: append(args, trace.Str("run", run.Name), trace.At("where", m.job.PlaceOf(where))),
	}}
	if of.lacks(&laid) {
		f.Remedies = []trace.Remedy{{Message: trace.Message{Code: RemedyRun, Args: []trace.Arg{trace.Str("run", run.Name)}}}}
	}
	m.find(f)
}

// pumpRun finds the first run that starts at the pump; -1 for none.
func pumpRun(j *job.Job) int {
	return slices.IndexFunc(j.Runs, func(r job.Run) bool { return r.From == "pump" })
}

// tallied counts the fittings of a run.
func tallied(book *catalog.Book, run *job.Run) tally {
	var of tally
	for _, f := range run.Fittings {
		of.add(trade(book, f.Fitting), "", max(1, f.Count))
	}
	return of
}

// lacks tells that the run has less than is laid, or another valve.
func (t *tally) lacks(laid *tally) bool {
	return laid.valve != "" && t.valve != laid.valve || laid.union != "" && t.union == "" ||
		t.elbows[0] < laid.elbows[0] || t.elbows[1] < laid.elbows[1]
}

// run puts into the run at the pump what it lacks of the assembly's fittings, in
// their order before what it has; another check valve becomes the assembly's.
func (t *taker) run(m trace.Remedy) {
	i := pumpRun(t.job)
	if i < 0 || t.job.Runs[i].Name != text(m.Message, "run") {
		t.ok = false
		return
	}
	run := &t.job.Runs[i]
	of, size := tallied(t.book, run), t.job.Assembly.Pipe.Size
	if size == run.Pipe.Size {
		size = "" // the run's own
	}
	var more []job.Fitted
	var laid tally
	for _, l := range t.job.Assembly.Parts {
		name, had := trade(t.book, l.Fitting), of
		laid.add(name, "", 1)
		if !of.lacks(&laid) {
			continue
		}
		if of.valve != "" && of.valve != laid.valve {
			for k := range run.Fittings {
				if f := &run.Fittings[k]; trade(t.book, f.Fitting) == of.valve {
					*f = job.Fitted{Fitting: name, Size: size, Count: f.Count}
				}
			}
			of.valve = laid.valve
			continue
		}
		if of.add(name, "", 1); of != had {
			more = append(more, job.Fitted{Fitting: name, Size: size})
		}
	}
	run.Fittings = slices.Concat(more, run.Fittings)
}

// trade gives a fitting's name as the catalogue writes it.
func trade(book *catalog.Book, name string) string {
	if n, err := book.Names(name, ""); err == nil {
		return n.Fitting
	}
	return name
}
