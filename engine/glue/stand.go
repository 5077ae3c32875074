package glue

import (
	"slices"
	"strings"

	"plashet/engine/trace"
)

// place keeps where each sub-assembly is while the steps are told.
type place struct {
	parts [][]string // marks of its parts, along the flow; the first holds the pump
	body  []int      // sub-assemblies that are cemented into one have the same number
	in    []bool     // it is in the vault
}

// whereabouts lists the parts of each sub-assembly. What hangs on the wall is in
// the vault from the start unless cement ties it there.
func (w *work) whereabouts() {
	n := w.last + 1
	w.place = place{parts: make([][]string, n), body: make([]int, n), in: make([]bool, n)}
	for i := range w.place.body {
		w.place.body[i] = i
	}
	for k := range w.plan.Joints {
		j := &w.plan.Joints[k]
		for _, e := range j.Ends {
			sub := j.sub[1]
			if e.Out {
				sub = j.sub[0]
			}
			if e.Part < 0 || slices.Contains(w.place.parts[sub], e.Mark) {
				continue
			}
			w.place.parts[sub] = append(w.place.parts[sub], e.Mark)
		}
	}
	w.place.in[w.last] = w.wallFixed() && w.anchor() < 0
}

// among gives the marks of the parts of some sub-assemblies, along the flow.
func (w *work) among(pick func(sub int) bool) []string {
	var out []string
	for sub, parts := range w.place.parts {
		for _, m := range parts {
			if pick(sub) && !slices.Contains(out, m) {
				out = append(out, m)
			}
		}
	}
	return out
}

// faces gives the marks of the parts with a union face for which pick holds of
// the sub-assemblies on its sides.
func (w *work) faces(pick func(pumpSide, wallSide int) bool) []string {
	var out []string
	for k := range w.plan.Joints {
		j := &w.plan.Joints[k]
		if m := j.Ends[0].Mark; j.Kind == Face && pick(j.sub[0], j.sub[1]) && !slices.Contains(out, m) {
			out = append(out, m)
		}
	}
	return out
}

// held makes an argument of the parts of a sub-assembly; of one that opens in
// two, a half is there: "½ U1".
func (w *work) held(name string, marks []string) []trace.Arg {
	shown := slices.Clone(marks)
	for i := range w.in.Parts {
		if k := slices.Index(marks, w.mark(i)); k >= 0 && len(w.in.Parts[i].Splits) == 1 {
			shown[k] = "½ " + marks[k]
		}
	}
	return list(name, shown)
}

// list makes an argument of marks; none where there are none.
func list(name string, marks []string) []trace.Arg {
	if len(marks) == 0 {
		return nil
	}
	return []trace.Arg{trace.Str(name, strings.Join(marks, ", "))}
}

// putIn puts into the vault what is still outside, but for what hangs on the
// wall already.
func (w *work) putIn(pick func(sub int) bool) {
	atWall := map[string]bool{}
	for k := len(w.plan.Joints) - 1; k >= 0; k-- {
		j := &w.plan.Joints[k]
		if !w.wallFixed() || j.Kind != Seal && j.Kind != Thread && !j.Made {
			break
		}
		for _, e := range j.Ends {
			atWall[e.Mark] = true
		}
	}
	out := w.among(func(sub int) bool { return !w.place.in[sub] && pick(sub) })
	out = slices.DeleteFunc(out, func(m string) bool { return atWall[m] })
	for sub := range w.place.in {
		w.place.in[sub] = w.place.in[sub] || pick(sub)
	}
	if len(out) > 0 {
		w.step(Step{Message: say(StepIn, w.held("parts", out)...), Parts: out, Where: Vault, Cautions: []string{CautionUnplug}})
	}
}

// stand has the whole chain stand in the vault as it will, so that a gap can be
// measured in it.
func (w *work) stand(piece string) {
	out := w.among(func(sub int) bool { return !w.place.in[sub] })
	unions := w.faces(func(int, int) bool { return true })
	var open, covers []string
	for k := range w.plan.Joints {
		j := &w.plan.Joints[k]
		if j.Closing && !w.made[k] && j.Piece != piece && !slices.Contains(open, j.Piece) {
			open = append(open, j.Piece)
		}
	}
	for i := range w.in.Parts {
		if w.coverUp(i) {
			covers = append(covers, w.mark(i))
		}
	}
	args := slices.Concat(w.held("parts", out), list("unions", unions), list("open", open), list("covers", covers))
	w.step(Step{Message: say(StepStand, args...), Parts: slices.Concat(out, unions), Where: Vault, Cautions: []string{CautionUnplug}})
	for sub := range w.place.in {
		w.place.in[sub] = true
	}
}

// takeOut brings what is cemented to a sub-assembly back to the bench.
func (w *work) takeOut(sub int) {
	mine := func(s int) bool { return w.place.body[s] == w.place.body[sub] }
	parts, unions := w.among(mine), w.bounding(sub)
	args := w.held("free", parts)
	if len(unions) > 0 {
		args = slices.Concat(list("unions", unions), w.held("parts", parts))
	}
	s := Step{Parts: parts, Where: Vault, Cautions: []string{CautionUnplug}}
	if mine(0) {
		args = append(args, trace.Flag("pump"))
		s.Parts, s.Cautions = append([]string{"pump"}, parts...), append(s.Cautions, CautionLift)
	}
	s.Message = say(StepTakeOut, args...)
	w.step(s)
	for i := range w.place.in {
		w.place.in[i] = w.place.in[i] && !mine(i)
	}
}

// back brings it in again.
func (w *work) back(sub int) {
	mine := func(s int) bool { return w.place.body[s] == w.place.body[sub] }
	parts := w.among(mine)
	w.step(Step{Message: say(StepBack, w.held("parts", parts)...), Parts: parts, Where: Vault, Cautions: []string{CautionUnplug}})
	if mine(0) {
		w.pump(nil)
	}
	for i := range w.place.in {
		w.place.in[i] = w.place.in[i] || mine(i)
	}
}

// bounding gives the unions by which a body is held to the rest.
func (w *work) bounding(sub int) []string {
	mine := w.place.body[sub]
	return w.faces(func(a, b int) bool { return (w.place.body[a] == mine) != (w.place.body[b] == mine) })
}

// join makes two sub-assemblies one body.
func (w *work) join(a, b int) {
	from, to := w.place.body[a], w.place.body[b]
	for i, n := range w.place.body {
		if n == from {
			w.place.body[i] = to
		}
	}
}

// pump sets the pump, with what is on it, in its place.
func (w *work) pump(parts []string) {
	w.step(Step{
		Message: say(StepPump, w.held("parts", parts)...), Parts: append([]string{"pump"}, parts...), Where: Vault,
		Cautions: []string{CautionUnplug, CautionLift},
	})
	w.place.in[0] = true
}
