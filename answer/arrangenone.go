package answer

import (
	"strings"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

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
	case p.a.Stopped || o.Unfinished:
		p.tell("", "found.mend.stopped")
	case len(o.Short) == 0:
		p.tell("", p.noMend())
	}
	for i := range o.Short {
		s := &o.Short[i]
		what, with := str("what", p.say.Say(s.What, p.unit)), turns(&s.Layout.Worth)
		switch {
		case len(s.Besides) > 0:
			p.tell("", "found.several", append(with, what, p.sure(s, "found.several."))...)
		case s.By == 0:
			p.tell("", "found.instead", append(with, what)...)
		default:
			p.tell("", "found.mend", append(with, what, num("by", layout.Enough(s.By, p.unit), unit.KindTape), p.sure(s, "found.mend."))...)
		}
	}
}

// sure tells whether it is proven that less than a change does not do.
func (p *arranging) sure(s *arrange.Change, stem string) trace.Arg {
	if s.Sure {
		return str("sure", p.say.Word(stem+"sure"))
	}
	return str("sure", p.say.Word(stem+"guess"))
}

// turns counts the elbows of a layout, and its hoses where it has any.
func turns(w *arrange.Worth) []trace.Arg {
	args := []trace.Arg{count("elbows", w.Elbows)}
	if w.Hoses > 0 {
		args = append(args, count("hoses", w.Hoses))
	}
	return args
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
	all := l.Laid.CutList()
	for i := range all {
		c := &all[i]
		if c.Made {
			continue
		}
		cut := show(&p.printer, c.Cut, unit.KindTape)
		switch {
		case c.After == layout.NoPart:
			cut += " " + p.text("print.piece.hose", str("size", c.Pipe.Size))
		case l.Laid.TwoPipes():
			cut += " " + p.text("print.piece.pipe", str("size", c.Pipe.Size))
		}
		list = append(list, cut)
	}
	return strings.Join(list, "; ")
}
