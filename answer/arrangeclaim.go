package answer

import (
	"slices"

	"plashet/engine/arrange"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// claims are the words by which a claim goes.
var claims = map[arrange.Claim]string{arrange.Everything: "everything", arrange.Family: "family", arrange.Capped: "capped", arrange.Stopped: "stopped"}

// claim prints how far the proof reaches.
func (p *arranging) claim(stem string) {
	f := &p.a.Outcome.Proof
	p.tell("", stem+claims[f.Claim], count("elbows", f.Elbows), count("caps", f.Caps))
	if p.a.Input.Hose != nil && f.Claim != arrange.Everything {
		p.tell("", "found.hose")
	}
	if f.Caps > 0 {
		p.tell("", "found.gap", p.gap()...)
	}
	if n := p.a.Outcome.Tally.Tight; n > 0 {
		p.tell("", "found.tight", count("count", n))
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
