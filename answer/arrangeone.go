package answer

import (
	"slices"
	"strings"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

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
		code := "found.rolls"
		if len(l.Laid.Hoses) > 0 {
			code = "found.rolls.hose"
		}
		p.tell("", code)
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
