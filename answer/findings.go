package answer

import (
	"slices"
	"strings"

	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// verdict counts what was found.
func (p *printer) verdict(r *design.Result, read int) {
	found, accepted := [3]int{}, 0
	for _, f := range r.Findings {
		if f.Accepted != "" {
			accepted++
			continue
		}
		found[f.Severity]++
	}
	args := []trace.Arg{
		count("danger", found[trace.Danger]), count("caution", found[trace.Caution]), count("info", found[trace.Info]),
		str("faults", p.counted(len(r.Faults)+read, "print.faults.")), str("assumptions", p.counted(len(r.Assumptions), "print.assumptions.")),
	}
	if accepted > 0 {
		args = append(args, count("accepted", accepted))
	}
	p.line("")
	p.tell("", "print.verdict", args...)
}

// severities from the worst.
var severities = [...]trace.Severity{trace.Danger, trace.Caution, trace.Info}

func (p *printer) findings(r *design.Result) {
	if len(r.Findings) == 0 {
		return
	}
	p.head("print.head.findings")
	for _, sev := range severities {
		for _, f := range r.Findings {
			if f.Severity == sev {
				p.finding(f)
			}
		}
	}
}

func (p *printer) finding(f trace.Finding) {
	p.line("%s%s", p.severity(f.Severity), p.say.Finding(f, p.unit))
	if f.Accepted != "" {
		p.tell("    ", "print.accepted", str("why", f.Accepted))
	}
	switch source := []trace.Arg{str("source", f.LimitSource.Title), str("basis", p.basis(f.LimitSource))}; {
	case f.LimitSource.Title == "":
	case f.Limit.Kind == unit.KindNone:
		p.tell("    ", "print.by", source...)
	default:
		p.tell("    ", "print.limit", append(source, str("limit", p.value(f.Limit)))...)
	}
	for _, m := range f.Remedies {
		remedy := p.say.Say(m.Message, p.unit)
		effects := make([]string, 0, len(m.Effect))
		for _, e := range m.Effect {
			effects = append(effects, p.effect(e))
		}
		if len(effects) > 0 {
			remedy += ": " + strings.Join(effects, ", ")
		}
		p.line("    - %s", remedy)
	}
	if f.MoreRemedies > 0 {
		p.tell("    - ", "print.more.remedies", count("count", f.MoreRemedies))
	}
}

// severity is the mark before a finding.
func (p *printer) severity(s trace.Severity) string {
	return "[" + p.say.Mark(s) + "] "
}

// basis says in a word how far a value can be trusted.
func (p *printer) basis(s trace.Source) string { return p.say.Word("print.basis." + string(s.Basis)) }

// effect tells what a remedy moves.
func (p *printer) effect(e trace.Effect) string {
	what := ""
	if code := "effect." + e.Figure[strings.LastIndexByte(e.Figure, '.')+1:]; p.say.Has(code) {
		what = p.say.Word(code) + " "
	}
	return what + p.text("print.to", str("low", p.value(e.Before)), str("high", p.value(e.After)))
}

func (p *printer) faults(list []trace.Fault) {
	if len(list) == 0 {
		return
	}
	p.head("print.head.faults")
	for _, f := range list {
		place := f.Path
		if f.Line > 0 {
			place = p.text("print.place", count("line", f.Line), str("path", f.Path))
		}
		p.line("%s: %s", place, p.say.Say(f.Message, p.unit))
	}
}

func (p *printer) assumptions(r *design.Result) {
	if len(r.Assumptions) == 0 {
		return
	}
	p.head("print.head.assumed")
	for _, a := range r.Assumptions {
		p.line("%s: %s (%s)", a.Path, p.say.Assumption(a, p.unit), p.say.Source(a.Source.Title))
		for _, e := range a.Weight {
			if before, after := p.value(e.Before), p.value(e.After); before != after {
				p.tell("    ", "print.weight", str("figure", p.moved(r, e.Figure)), str("before", before), str("after", after))
			}
		}
		if a.Turns {
			p.tell("    ", "print.turns")
		}
	}
}

// moved names the figure of an effect: a line of the list by its own name.
func (p *printer) moved(r *design.Result, figure string) string {
	if i := slices.IndexFunc(r.Materials, func(i material) bool { return i.ID == figure }); i >= 0 {
		return p.say.Say(r.Materials[i].Message(), p.unit)
	}
	return p.say.Word("moves." + figure[strings.LastIndexByte(figure, '.')+1:])
}
