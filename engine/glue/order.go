package glue

import (
	"slices"

	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Order gives the sequence in which the joints of a laid chain are made, each
// exactly once, by the package comment's order (common practice, no source).
// Temperature is that of pipe and air, -18 to 38 °C (0 to 100 F, the tables'
// range); pressure is 0 or more. Outside the tables times stay 0, Plan.Known is
// false and a fault says so; the order itself stands. Of a chain that is unfit,
// or in which a danger is found here, joints, times and quantities are told,
// but no step: nobody is to cement it. Without a laid chain the plan is empty.
// It never panics, whatever the input.
func Order(in Input) (Plan, []trace.Finding, []trace.Fault) {
	w := &work{in: in}
	if !in.Assembly.Laid || len(in.Parts) == 0 {
		w.fault(in.Path, FaultNotLaid)
		return w.plan, w.findings, w.faults
	}
	if !w.matches() {
		w.fault(in.Path, FaultMismatch)
		return w.plan, w.findings, w.faults
	}
	if !w.joints() {
		w.plan = Plan{}
		return w.plan, w.findings, w.faults
	}
	w.times()
	w.quantity()
	w.dry()
	w.threads()
	w.subassemblies()
	w.closings()
	w.unions()
	w.finish()
	danger := slices.ContainsFunc(w.findings, func(f trace.Finding) bool { return f.Severity == trace.Danger })
	if w.plan.Withheld = in.Unfit || danger; w.plan.Withheld {
		w.plan.Steps = nil
	}
	return w.plan, w.findings, w.faults
}

// matches tells that the assembly can have been laid from these parts.
func (w *work) matches() bool {
	n := len(w.in.Parts)
	ok := func(i int) bool { return i >= -1 && i < n }
	if len(w.in.Assembly.Places) != n {
		return false
	}
	for _, p := range w.in.Assembly.Pieces {
		if !ok(p.After) || p.After == n-1 {
			return false
		}
	}
	for _, h := range w.in.Assembly.Hoses {
		if h.Part < 0 || h.Part >= n {
			return false
		}
	}
	for _, r := range w.in.Assembly.Rolls {
		if r.Part < 0 || r.Part >= n {
			return false
		}
	}
	return true
}

func (w *work) step(s Step) {
	s.Number = len(w.plan.Steps) + 1
	if s.Source == (trace.Source{}) {
		s.Source = practice
	}
	w.plan.Steps = append(w.plan.Steps, s)
}

func say(code string, args ...trace.Arg) trace.Message {
	return trace.Message{Code: code, Args: args}
}

func tape(name string, v unit.Length) trace.Arg { return trace.Num(name, v, unit.KindTape) }

// dry lays the chain without cement, marks it and takes it apart.
func (w *work) dry() {
	a := &w.in.Assembly
	stubs := trace.Num("stubs", unit.Ratio(len(a.Stubs)), unit.KindCount)
	var all, fast []string
	for i := range w.in.Parts {
		if w.stays(i) {
			fast = append(fast, w.mark(i))
			continue
		}
		all = append(all, w.mark(i))
	}
	glued := list("glued", fast)
	w.prepare()
	fit := Step{Message: say(StepDryFit, append(glued, stubs)...), Parts: all, Where: Vault, Cautions: []string{CautionUnplug}}
	if w.in.Book != nil {
		if rules := w.in.Book.JointRules("fit"); len(rules) > 0 {
			fit.Source = rules[0].Source
			fit.Args = append(fit.Args, trace.Str("part", rules[0].Value))
		}
	}
	w.step(fit)
	for _, p := range a.Pieces {
		if p.Closing || p.Made {
			continue // a closing piece is cut and marked when its gap has been measured
		}
		w.step(Step{Message: insertion(StepMarkInsertion, p), Parts: []string{p.Mark}, Where: Bench})
	}
	w.hoses()
	if a.Tail != nil && !w.ready(len(w.in.Parts)-1) {
		w.step(Step{Message: insertion(StepMarkInsertion, *a.Tail), Parts: []string{a.Tail.Mark}, Where: Vault, Cautions: []string{CautionUnplug}})
	}
	w.marks()
	w.step(Step{Message: say(StepApart, append(glued, stubs)...), Parts: all, Where: Vault, Cautions: []string{CautionUnplug}})
}

// prepare has the pieces cut and their ends made ready.
func (w *work) prepare() {
	var cut []string
	for _, p := range w.in.Assembly.Pieces {
		if !p.Closing && !p.Made {
			cut = append(cut, p.Mark)
		}
	}
	s := Step{Message: say(StepPrepare), Parts: cut, Where: Bench, Cautions: []string{CautionSaw}}
	if w.in.Book != nil {
		b := w.in.Book.PipeBevel()
		s.Source = b.Angle.Source
		s.Args = []trace.Arg{
			trace.Num("low", b.Angle.Low, unit.KindAngle), trace.Num("high", b.Angle.High, unit.KindAngle),
			trace.Num("narrow", b.Across.Low, unit.KindDepth), trace.Num("wide", b.Across.High, unit.KindDepth),
		}
	}
	w.step(s)
}

func insertion(code string, p layout.Piece) trace.Message {
	return say(code, trace.Str("piece", p.Mark), trace.Str("from", p.From), trace.Str("to", p.To),
		tape("near", p.Ends[0].Mark), tape("far", p.Ends[1].Mark))
}

// threads makes every thread while no cement holds anything: on the bench from
// the pump outwards; what is screwed to the wall's own fitting from there
// inwards, in the vault.
func (w *work) threads() {
	wall := map[int]bool{}
	var inward []int
	free := false // something other than a thread between pump and wall
	for k := len(w.plan.Joints) - 1; k >= 0; k-- {
		j := &w.plan.Joints[k]
		if j.Kind == Seal {
			continue
		}
		if j.Kind != Thread {
			free = true
			break
		}
		if w.wallFixed() {
			wall[k], inward = true, append(inward, k)
		}
	}
	if !free && len(inward) > 0 {
		w.note(trace.Danger, w.in.Path, FindCaptive, trace.Str("from", "pump"), trace.Str("to", "wall"))
	}
	for k := range w.plan.Joints {
		if w.plan.Joints[k].Kind == Thread && !wall[k] && !w.made[k] {
			w.thread(k, Bench)
		}
	}
	if k := len(w.plan.Joints) - 1; k >= 0 && w.plan.Joints[k].Kind == Seal && !w.made[k] {
		w.made[k] = true
		part := w.plan.Joints[k].Ends[0].Mark
		w.step(Step{Message: say(StepWall, trace.Str("part", part)), Joints: []int{k + 1}, Parts: []string{part}, Where: Vault, Cautions: []string{CautionUnplug}})
	}
	for _, k := range inward {
		if !w.made[k] {
			w.thread(k, Vault)
		}
	}
}

// wallFixed tells that the chain's end is held by the wall.
func (w *work) wallFixed() bool {
	return w.in.Assembly.Tail != nil || w.in.Parts[len(w.in.Parts)-1].Kind == layout.Bulkhead
}

func (w *work) thread(k int, where Where) {
	j := &w.plan.Joints[k]
	w.nutsFor(k, where)
	w.made[k] = true
	from, to := j.Ends[0], j.Ends[1] // the male one and the one it goes into
	if j.Thread.Inward {
		from, to = to, from
	}
	args := []trace.Arg{trace.Str("from", from.Mark), trace.Str("to", to.Mark), trace.Str("size", j.Size), trace.Str("thread", j.Thread.Family.String())}
	s := Step{Joints: []int{j.Number}, Parts: []string{from.Mark, to.Mark}, Where: where, Cautions: []string{CautionStrap}}
	if j.Ends[0].Part == Pump || where == Vault {
		s.Cautions = append(s.Cautions, CautionUnplug)
	}
	if !j.Thread.Tape {
		s.Message = say(StepThreadRing, args...)
		w.step(s)
		return
	}
	s.Message = say(StepThread, append(args,
		trace.Num("low", unit.Ratio(j.Thread.Wraps.Low), unit.KindCount), trace.Num("high", unit.Ratio(j.Thread.Wraps.High), unit.KindCount),
		trace.Num("turns", unit.Ratio(j.Thread.Turns.Low), unit.KindRatio), trace.Num("turnsHigh", unit.Ratio(j.Thread.Turns.High), unit.KindRatio))...)
	w.step(s)
}

// nutsFor slides on each nut that joint k would lock out. Each end has one
// joint, so each nut goes on once.
func (w *work) nutsFor(k int, where Where) {
	j := &w.plan.Joints[k]
	for _, n := range w.nuts {
		for _, e := range j.Ends {
			if e.Part != n.part || e.Opening != n.opening {
				continue
			}
			w.step(Step{Message: say(StepNut, trace.Str("part", e.Mark), trace.Str("piece", j.Piece)), Parts: parts(j), Where: where, Cautions: unplug(where)})
		}
	}
}

func unplug(where Where) []string {
	if where == Vault {
		return []string{CautionUnplug}
	}
	return nil
}

func parts(j *Joint) []string {
	var out []string
	for _, e := range j.Ends {
		out = append(out, e.Mark)
	}
	if j.Piece != "" {
		out = append(out, j.Piece)
	}
	return out
}
