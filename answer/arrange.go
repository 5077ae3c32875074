package answer

import (
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/arrange"
	"plashet/engine/design"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/words"
)

// arranging prints what a search for layouts found.
type arranging struct {
	printer
	a    *design.Arranging
	full bool // with all of the play and the steps of gluing of each layout
}

// Arranged prints for reading the layouts that a search found, side by side and
// one by one, and how far the claim reaches; where nothing fits, what failed and
// what would mend it. Faults met in reading stand with the search's. In full each
// layout comes with all of its play and the steps of gluing it up.
func Arranged(w io.Writer, a *design.Arranging, read []trace.Fault, l *words.Language, full bool) error {
	p := &arranging{printer{w: w, say: l, unit: a.Units}, a, full}
	p.tell("", "found.title", p.heads(a.Name))
	if a.Note != "" {
		p.line("%s", a.Note)
	}
	if o := a.Outcome; o != nil {
		p.tell("", "found.pump", str("name", a.Pump), num("flow", a.Flow, unit.KindFlow))
		switch {
		case len(o.Layouts) > 0:
			p.sideBySide()
			for i := range o.Layouts[:p.shown()] {
				p.layout(i)
			}
		case len(o.Faults) == 0:
			p.none()
		}
	}
	if len(a.Findings) > 0 {
		p.head("found.head.findings")
		for _, f := range a.Findings {
			p.line("%s%s", p.severity(f.Severity), p.say.Finding(f, p.unit))
		}
	}
	p.faults(append(slices.Clone(read), a.Faults...))
	if len(a.Assumptions) > 0 {
		p.head("print.head.assumed")
		for _, x := range a.Assumptions {
			p.line("%s", p.say.Assumption(x, p.unit))
		}
	}
	return p.err
}

// sideBySide prints what each layout costs in every respect, and the claim.
func (p *arranging) sideBySide() {
	o := p.a.Outcome
	p.head("found.head.layouts")
	var head []string
	for _, c := range []string{"layout", "head", "elbows", "joints", "cost", "slide", "deep", "released", "stands"} {
		head = append(head, p.say.Word("found.column."+c))
	}
	rows := [][]string{head}
	for i := range o.Layouts[:p.shown()] {
		l := &o.Layouts[i]
		w := &l.Worth
		rows = append(rows, []string{
			strconv.Itoa(i + 1), show(&p.printer, w.Head, unit.KindHead), strconv.Itoa(w.Elbows), strconv.Itoa(w.Joints), p.cost(w),
			p.out(w), p.deep(l), p.down(l), p.a.Attitudes[l.Standing],
		})
	}
	p.table("rrrrrrrrl", rows)
	p.tell("", "found.columns")
	if n := len(o.Layouts); n == 1 {
		p.tell("", "found.one")
	} else {
		p.tell("", "found.many", count("count", n))
	}
	if more := len(o.Layouts) - p.shown(); more > 0 {
		p.tell("", "found.more", count("count", more))
	}
	if o.Leaned {
		p.tell("", "found.leaned")
	}
	p.claim("found.claim.")
	p.tell("", "found.keep")
}

// out tells what the pump must be slid, and leaned over where it must.
func (p *arranging) out(w *arrange.Worth) string {
	slide := show(&p.printer, w.Slide, unit.KindTape)
	if w.Lean == 0 {
		return slide
	}
	return p.text("found.lean", str("slide", slide), num("lean", w.Lean, unit.KindAngle))
}

// shown tells how many of the layouts are printed.
func (p *arranging) shown() int { return min(p.a.Shown, len(p.a.Outcome.Layouts)) }

func (p *arranging) cost(w *arrange.Worth) string {
	if !w.Priced || p.a.Currency == "" {
		return p.say.Word("found.unpriced")
	}
	return p.a.Money(w.Cost).Format(p.a.Style)
}

// deep tells how far the union's nut lies under the rim.
func (p *arranging) deep(l *arrange.Layout) string {
	if !opens(l) {
		return p.say.Word("found.nounion")
	}
	return show(&p.printer, l.Worth.Deep, unit.KindTape)
}

// opens tells that a layout has a union.
func opens(l *arrange.Layout) bool {
	return slices.ContainsFunc(l.Chain.Parts, func(x layout.Laid) bool { return len(x.Splits) > 0 })
}

// down tells what comes down into the vault when the union is opened. Without a
// valve it comes down at every stop; where the runs are not known there is more.
func (p *arranging) down(l *arrange.Layout) string {
	w := &l.Laid.Water
	switch {
	case w.Order == layout.NoValve:
		return p.say.Word("found.down.stop")
	case !opens(l):
		return p.say.Word("found.nounion")
	case w.Order == layout.ValveFirst && !w.RunKnown:
		return p.say.Word("found.down.all")
	}
	return show(&p.printer, l.Worth.Released, unit.KindWater)
}

// claims are the words by which a claim goes.
var claims = map[arrange.Claim]string{arrange.Everything: "everything", arrange.Family: "family", arrange.Capped: "capped", arrange.Stopped: "stopped"}

// claim prints how far the proof reaches.
func (p *arranging) claim(stem string) {
	f := &p.a.Outcome.Proof
	p.tell("", stem+claims[f.Claim], count("elbows", f.Elbows), count("caps", f.Caps))
	if f.Caps > 0 {
		p.tell("", "found.gap", p.gap()...)
	}
	if slices.ContainsFunc(p.a.Outcome.Layouts, func(l arrange.Layout) bool { return l.Odd }) {
		p.tell("", "found.odd")
	}
	p.tell("", "found.reach")
	if l := p.a.Outcome.Layouts; slices.ContainsFunc(l, func(l arrange.Layout) bool { return l.Worth.Priced && l.Laid.TwoPipes() }) {
		p.tell("", "found.between")
	}
}

// gap tells what the chains that stayed undecided take at least.
func (p *arranging) gap() []trace.Arg {
	g := &p.a.Outcome.Proof.Open
	args := []trace.Arg{num("head", g.Head, unit.KindHead), count("joints", g.Joints)}
	if g.Cost > 0 && p.a.Currency != "" { // without a price for all, none is counted
		args = append(args, str("cost", p.a.Money(g.Cost).Format(p.a.Style)))
	}
	return args
}

// layout prints one layout: where the pump stands, its parts in order with rolls
// and cuts, and the pump's way out.
func (p *arranging) layout(i int) {
	l := &p.a.Outcome.Layouts[i]
	c := &l.Chain
	p.head("found.head.layout", count("number", i+1))
	p.tell("", "found.stands", str("attitude", p.a.Attitudes[l.Standing]), num("turn", c.Pose.Turn, unit.KindAngle),
		num("left", unit.Length(c.Pose.At.X), unit.KindTape), num("front", unit.Length(c.Pose.At.Y), unit.KindTape), num("floor", unit.Length(c.Pose.At.Z), unit.KindTape))
	if o := c.Vault.Outlet; o != p.a.Input.Vault.Outlet {
		p.tell("", "found.drill", num("along", o.Along, unit.KindTape), num("height", o.Height, unit.KindTape))
	}
	var rows [][]string
	if t := p.then(l, -1); t != "" {
		rows = append(rows, []string{"", "", "", t})
	}
	for k := range c.Parts {
		x := &c.Parts[k]
		roll := ""
		if turn, _ := x.Turn(); turn != 0 {
			roll = p.roll(l, k)
		} else if x.Reverse {
			roll = p.say.Word("found.reverse")
		}
		then := p.then(l, k)
		if then == "" && k+1 < len(c.Parts) {
			then = p.say.Word("found.directly")
		}
		rows = append(rows, []string{l.Laid.Places[k].Mark, p.a.PartName(&x.Part) + " " + p.a.PartSize(&x.Part), roll, then})
	}
	p.table("llll", rows)
	if slices.ContainsFunc(l.Laid.Rolls, func(r layout.RollMark) bool { return !r.Made }) {
		p.tell("", "found.rolls")
	}
	p.moves(l.Laid.LiftOut.Union, l.Way)
	if p.full {
		p.play(&l.Laid)
	} else {
		p.needed(&l.Laid)
	}
	p.proved(l)
	if p.full && i < len(p.a.Told) {
		p.tell("", "found.glue")
		p.glueSteps(&p.a.Told[i].Glue)
	}
	if i < len(p.a.Told) {
		p.measure(p.a.Told[i].Findings)
		for _, f := range p.a.Told[i].Findings {
			if f.Code == layout.FindAskew || f.Severity != trace.Info && f.Code != layout.FindMeasureFirst {
				p.line("%s%s", p.severity(f.Severity), p.say.Finding(f, p.unit))
			}
		}
	}
}

// measure tells in one line what is to be measured before anything is cut.
func (p *arranging) measure(findings []trace.Finding) {
	var marks []string
	for _, f := range findings {
		for _, a := range f.Args {
			if f.Code == layout.FindMeasureFirst && a.Name == "parts" {
				marks = append(marks, a.Text)
			}
		}
	}
	if len(marks) > 0 {
		p.tell("", "found.measure", str("severity", p.severity(trace.Caution)), str("parts", strings.Join(marks, ", ")))
	}
}

// roll tells how an elbow is turned, and how far that is round its pipe.
func (p *arranging) roll(l *arrange.Layout, part int) string {
	angle := num("angle", l.Chain.Parts[part].Roll, unit.KindAngle)
	for _, r := range l.Laid.Rolls {
		if r.Part == part && r.Arc > 0 {
			return p.text("found.roll.arc", angle, num("arc", r.Arc, unit.KindTape))
		}
	}
	return p.text("found.roll", angle)
}

// proved tells what the second check made of a layout: all that does not pass
// is the union that the job does without.
func (p *arranging) proved(l *arrange.Layout) {
	if failed := l.Proved.Failed(); len(failed) > 0 && !opens(l) {
		p.tell("", "found.second", count("count", l.Proved.Passed()))
		return
	}
	p.second(&l.Proved)
}

// then tells the piece of pipe behind a part; "" where there is none.
func (p *arranging) then(l *arrange.Layout, after int) string {
	i := slices.IndexFunc(l.Laid.Pieces, func(c layout.Piece) bool { return c.After == after })
	if i < 0 {
		return ""
	}
	c := &l.Laid.Pieces[i]
	code := "found.piece"
	switch {
	case c.Made:
		code = "found.made"
	case c.Closing:
		code = "found.closing"
	}
	args := []trace.Arg{str("piece", c.Mark), num("cut", c.Cut, unit.KindTape)}
	if l.Laid.TwoPipes() {
		args = append(args, str("pipe", c.Pipe.Size))
	}
	return p.text(code, args...)
}

// none prints why nothing fits, and what would mend it.
func (p *arranging) none() {
	o := p.a.Outcome
	p.head("found.head.none")
	if o.Stage != "" {
		p.tell("", "found.stage."+string(o.Stage))
	}
	if o.Uncut != nil {
		p.tell("", "found.uncut", str("pieces", p.pieces(o.Uncut)))
	}
	p.claim("found.none.")
	if o.Uncut != nil {
		return // more pipe mends it
	}
	if o.Proof.Claim == arrange.Stopped && len(o.Short) == 0 {
		return // nobody looked for what would mend it
	}
	p.head("found.head.mend")
	switch {
	case p.a.Stopped:
		p.tell("", "found.mend.stopped")
	case len(o.Short) == 0:
		p.tell("", p.noMend())
	}
	for i := range o.Short {
		s := &o.Short[i]
		if s.Instead > 0 {
			p.tell("", "found.instead", str("what", p.say.Say(s.What, p.unit)), count("elbows", s.Layout.Worth.Elbows))
			continue
		}
		sure := "found.mend.guess"
		if s.Sure {
			sure = "found.mend.sure"
		}
		p.tell("", "found.mend", str("what", p.say.Say(s.What, p.unit)), num("by", enough(s.By, p.unit), unit.KindTape),
			count("elbows", s.Layout.Worth.Elbows), str("sure", p.say.Word(sure)))
	}
}

// noMend says what is left to try; an opening smaller than the vault is among it,
// for that it must be cut larger both ways at once is not looked at.
func (p *arranging) noMend() string {
	if p.a.Input.Vault.Opening != (layout.Opening{}) {
		return "found.mend.none.hatch"
	}
	return "found.mend.none"
}

// pieces lists what a layout is cut into.
func (p *arranging) pieces(l *arrange.Layout) string {
	var list []string
	for i := range l.Laid.Pieces {
		if c := &l.Laid.Pieces[i]; !c.Made {
			cut := show(&p.printer, c.Cut, unit.KindTape)
			if l.Laid.TwoPipes() {
				cut += " " + p.text("print.piece.pipe", str("size", c.Pipe.Size))
			}
			list = append(list, cut)
		}
	}
	return strings.Join(list, "; ")
}

// enough rounds a length up to the step that is taped: what is short by less
// than a step is mended by a whole one.
func enough(by unit.Length, s unit.System) unit.Length {
	step := layout.Step(s)
	const dust = 1e-6 // of a step, from the arithmetic
	return unit.Length(math.Ceil(math.Abs(float64(by/step))-dust)) * step
}

// Progress says how far a search has got.
func Progress(g arrange.Progress, l *words.Language) string {
	p := printer{say: l}
	if g.Short != "" {
		return p.text("found.progress.short", str("what", l.Say(trace.Message{Code: g.Short, Args: g.Args}, unit.US)), count("done", g.Done), count("of", g.Of))
	}
	return p.text("found.progress", count("elbows", g.Elbows), count("done", g.Done), count("of", g.Of), count("layouts", g.Layouts))
}
