package glue

import (
	"slices"
	"strings"

	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// marks has the chain marked as it stands dry, so that every joint comes back
// as it was: elbows by their roll, valves by arrow and cover, all others by a
// line.
func (w *work) marks() {
	for _, r := range w.in.Assembly.Rolls {
		if !r.Made {
			w.markRoll(r)
		}
	}
	for i := range w.in.Parts {
		if !w.in.Parts[i].Kind.IsCheck() || w.stays(i) {
			continue
		}
		w.markStep(say(StepMarkArrow, trace.Str("part", w.mark(i))), w.mark(i))
		if w.coverUp(i) {
			w.markCover(i)
		}
	}
	if slices.ContainsFunc(w.plan.Joints, func(j Joint) bool { return j.Kind == Cement && !j.Closing && !j.Made }) {
		w.markStep(say(StepMarkLines))
	}
}

func (w *work) markStep(m trace.Message, parts ...string) {
	w.step(Step{Message: m, Parts: parts, Where: Vault, Cautions: []string{CautionUnplug}})
}

func (w *work) markRoll(r layout.RollMark) {
	parts := []string{w.mark(r.Part)}
	args := []trace.Arg{trace.Str("part", w.mark(r.Part)), trace.Num("angle", r.Angle, unit.KindAngle)}
	if r.Piece != "" {
		parts = append(parts, r.Piece)
		args = append(args, trace.Str("piece", r.Piece))
	}
	code := StepMarkRoll
	hose := w.in.Parts[r.Part].Kind == layout.Hose
	switch {
	case hose && r.Upright:
		code = StepMarkBendUpright
	case hose:
		code = StepMarkBend
	case r.Upright:
		code = StepMarkRollUpright
	}
	if r.Arc > 0 {
		args = append(args, tape("arc", r.Arc), tape("other", r.Other))
	}
	w.markStep(say(code, args...), parts...)
}

// coverUp tells that part i is a valve whose cover must come on top.
func (w *work) coverUp(i int) bool {
	return w.in.Assembly.Places[i].CoverUp
}

func (w *work) markCover(i int) {
	var pieces []string
	for _, p := range w.in.Assembly.Pieces {
		if (p.After == i-1 || p.After == i) && !p.Closing && !p.Made {
			pieces = append(pieces, p.Mark)
		}
	}
	args := []trace.Arg{trace.Str("part", w.mark(i))}
	if len(pieces) > 0 {
		args = append(args, trace.Str("pieces", strings.Join(pieces, ", ")))
	}
	w.markStep(say(StepMarkCover, args...), append([]string{w.mark(i)}, pieces...)...)
}

// hoses has each hose measured, cut and marked, with all else as it stands dry.
func (w *work) hoses() {
	for i := range w.in.Assembly.Hoses {
		h := &w.in.Assembly.Hoses[i]
		if w.stays(h.Part) {
			continue
		}
		args := []trace.Arg{
			trace.Str("part", h.Mark), trace.Str("from", h.From), trace.Str("to", h.To), tape("cut", h.Cut),
			tape("near", h.Ends[0].Mark), tape("far", h.Ends[1].Mark),
		}
		if h.Curve.Turn > 0 {
			args = append(args, trace.Num("turn", h.Curve.Turn, unit.KindAngle))
		}
		w.step(Step{Message: say(StepHose, args...), Parts: []string{h.Mark}, Where: Bench, Cautions: []string{CautionSaw, CautionHose}})
	}
}
