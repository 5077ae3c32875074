package glue

import (
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// subassemblies makes what is rigid between union faces and closing pieces, the
// wall's side first, and puts the pump in its place.
func (w *work) subassemblies() {
	w.bodiesOut()
	anchor := w.anchor()
	for sub := w.last; sub >= 1; sub-- {
		w.bench(sub, anchor)
	}
	if w.last > 0 && anchor >= 0 {
		w.putIn(func(sub int) bool { return sub == w.last })
		w.cement(anchor, Vault)
	}
	w.bench(0, anchor)
	w.pump(w.place.parts[0])
	if w.last == 0 && anchor >= 0 {
		w.cement(anchor, Vault)
	}
}

// anchor gives the joint that ties the wall's sub-assembly to the wall: the
// cemented one nearest to it that is still to be made; -1 where there is none but closing pieces.
func (w *work) anchor() int {
	if !w.wallFixed() {
		return -1
	}
	for k := len(w.plan.Joints) - 1; k >= 0; k-- {
		switch j := &w.plan.Joints[k]; {
		case j.Made:
		case j.Closing || j.Kind == Face:
			return -1
		case j.Kind == Cement:
			return k
		}
	}
	return -1
}

// bodiesOut parts valves with two nuts from their tails, so that no cement
// comes near the valve.
func (w *work) bodiesOut() {
	for i := range w.in.Parts {
		if p := &w.in.Parts[i]; isValve(p.Kind) && len(p.Splits) > 1 && !w.stays(i) {
			w.step(Step{Message: say(StepBodyOut, trace.Str("part", w.mark(i))), Parts: []string{w.mark(i)}, Where: Bench})
		}
	}
}

// bench cements a sub-assembly outside the vault: the joints of valves first,
// then from the pump's side on.
func (w *work) bench(sub, anchor int) {
	for _, valve := range []bool{true, false} {
		for k := range w.plan.Joints {
			j := &w.plan.Joints[k]
			if j.Kind == Cement && !j.Closing && !j.Made && j.sub[0] == sub && j.Valve == valve && k != anchor {
				w.cement(k, Bench)
			}
		}
	}
}

// cement makes one joint. In the vault nothing can be tilted. Together are the
// unions whose faces are held together while it sets.
func (w *work) cement(k int, where Where, together ...string) {
	j := &w.plan.Joints[k]
	w.nutsFor(k, where)
	w.made[k] = true
	part, with := j.Ends[0], j.Piece
	if with == "" {
		with = j.Ends[1].Mark
	}
	args := []trace.Arg{
		trace.Str("part", part.Mark), trace.Str("with", with), trace.Str("size", j.Size),
		trace.Num("hold", j.Times.Hold, unit.KindDuration), trace.Num("set", j.Times.Set, unit.KindDuration),
	}
	if t := j.Times.Twist; t > 0 && where == Bench { // in the vault the other end is held
		args = append(args, trace.Num("twist", t, unit.KindAngle))
	}
	args = append(args, list("together", together)...)
	s := Step{
		Message: say(StepCement, args...), Joints: []int{j.Number}, Parts: parts(j), Where: where,
		Hold: j.Times.Hold, Set: j.Times.Set, Source: j.Times.SetSource, NoReturn: true,
		Cautions: []string{CautionGloves, CautionSparks},
	}
	if where == Vault {
		s.Cautions = append(s.Cautions, CautionVapour, CautionUnplug)
	}
	if j.Valve {
		s.Code = StepCementValve
		if where == Bench {
			s.Tilt = TiltBelow
		} else {
			s.Code = StepCementValveInPlace
			w.note(trace.Caution, w.path(part.Part), FindValveInVault, trace.Str("part", part.Mark), trace.Str("with", with))
		}
	}
	w.step(s)
	w.flaps(j, where)
}

// flaps has the flap of a check valve tried once the last cement at it has set.
func (w *work) flaps(j *Joint, where Where) {
	if !j.Check {
		return
	}
	for _, e := range j.Ends {
		if e.Part < 0 || !w.in.Parts[e.Part].Kind.IsCheck() {
			continue
		}
		open := slices.ContainsFunc(w.plan.Joints, func(o Joint) bool {
			return o.Check && !w.made[o.Number-1] && slices.ContainsFunc(o.Ends, func(f End) bool { return f.Part == e.Part })
		})
		if !open {
			w.flap(e.Part, where)
		}
	}
}

func (w *work) flap(part int, where Where) {
	w.step(Step{Message: say(StepFlap, trace.Str("part", w.mark(part))), Parts: []string{w.mark(part)}, Where: where, Cautions: unplug(where)})
}

// closings makes the closing pieces from the wall inward. Of each piece's two
// joints one is made on the bench, at the side that still comes out (a valve's
// if it can be, so that it is tilted), and the other in the vault.
func (w *work) closings() {
	any := false
	for k := len(w.plan.Joints) - 1; k > 0; k-- {
		far, near := k, k-1
		if !w.plan.Joints[far].Closing || w.plan.Joints[far].Piece != w.plan.Joints[near].Piece {
			continue
		}
		any = true
		j := &w.plan.Joints[far]
		w.stand(j.Piece)
		for _, p := range w.in.Assembly.Pieces {
			if p.Mark == j.Piece {
				w.step(Step{Message: insertion(StepMeasure, p), Parts: []string{p.From, p.To, p.Mark}, Where: Vault, Cautions: []string{CautionUnplug, CautionSaw}})
			}
		}
		first, second := near, far
		if !w.fixed[j.sub[1]] && (j.Valve || j.sub[0] == 0) && (j.Valve || !w.plan.Joints[near].Valve) {
			first, second = far, near
		}
		out := j.sub[0]
		if first == far {
			out = j.sub[1]
		}
		w.takeOut(out)
		w.cement(first, Bench)
		w.back(out)
		w.cement(second, Vault, w.bounding(out)...)
		w.join(j.sub[0], j.sub[1])
		w.fixed[j.sub[0]] = w.fixed[j.sub[1]]
		k--
	}
	if !any && len(w.in.Assembly.Hoses) == 0 { // a hose is cut by what it has to bridge
		w.note(trace.Caution, w.in.Path, FindNoClosing)
	}
}

// unions makes the faces up by hand, from the wall inward.
func (w *work) unions() {
	w.putIn(func(int) bool { return true })
	for k := len(w.plan.Joints) - 1; k >= 0; k-- {
		j := &w.plan.Joints[k]
		if j.Kind != Face {
			continue
		}
		part := j.Ends[0].Part
		if p := &w.in.Parts[part]; p.Kind.IsCheck() && len(p.Splits) > 1 && j.Ends[1].Opening == len(p.Splits) {
			w.flap(part, Bench) // no cement came near it, but it may have been fitted the wrong way round
		}
		w.made[k] = true
		w.step(Step{
			Message: say(StepUnion, trace.Str("part", j.Ends[0].Mark)), Joints: []int{j.Number},
			Parts: []string{j.Ends[0].Mark}, Where: Vault, Cautions: []string{CautionUnplug},
		})
	}
}

// finish waits for the cure and tests with water.
func (w *work) finish() {
	src := practice
	for _, j := range w.plan.Joints {
		if j.Kind == Cement && j.Times.Cure == w.plan.Ready && w.plan.Ready > 0 {
			src = j.Times.CureSource
		}
	}
	if w.plan.Ready > 0 || !w.plan.Known {
		w.step(Step{Message: say(StepCure, trace.Num("duration", w.plan.Ready, unit.KindDuration)), Where: Vault, Set: w.plan.Ready, Source: src, Cautions: []string{CautionVapour, CautionUnplug}})
	}
	cautions := []string{CautionWaterOnly, CautionUnplug}
	if w.in.Frost {
		cautions = append(cautions, CautionFrost)
	}
	w.step(Step{Message: say(StepTest), Where: Vault, Cautions: cautions})
}
