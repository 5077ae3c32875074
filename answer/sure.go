package answer

import (
	"cmp"
	"slices"
	"strings"

	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// between gives the band of a figure in brackets, "(41.9 to 48.7 gpm)", or
// nothing where there is none.
func (p *printer) between(r *design.Result, figure string) string {
	if r.Bands == nil {
		return ""
	}
	for i := range r.Bands.Outputs {
		if o := &r.Bands.Outputs[i]; o.Figure == figure {
			if low, high := p.value(o.Low), p.value(o.High); low != high {
				return " (" + p.lowToHigh(low, high) + ")"
			}
		}
	}
	return ""
}

// flow gives a flow in two units, and its band where it has one.
func (p *printer) flow(r *design.Result, q unit.Flow, figure string, bound unit.Bound) string {
	text, between := unit.FormatFlow(q, p.unit), p.between(r, figure)
	if between != "" {
		text = strings.TrimSuffix(text, ")") + "; " + strings.TrimPrefix(between, " (")
	}
	return p.say.Bound(bound, text)
}

// lowToHigh joins two figures, the unit told once where both have the same.
func (p *printer) lowToHigh(low, high string) string {
	a, unitLow, one := strings.Cut(low, " ")
	_, unitHigh, other := strings.Cut(high, " ")
	if one && other && unitLow == unitHigh {
		low = a
	}
	return p.span(low, high)
}

// told lists the figures whose bands are printed, by the parts of their ID
// before and behind the numbers.
var told = []string{"pump.flow", "further.flow", "feed.flow", "feed.head", "pump.energy", "level.change", "level.pump", "level.freeboard"}

// most is a share of the doubt from which it is worth naming, telling one from
// which something is worth measuring again.
const (
	most    unit.Ratio = 0.15
	telling unit.Ratio = 0.3
)

// sure prints the bands and what makes them.
func (p *printer) sure(r *design.Result) {
	b := r.Bands
	if b == nil {
		return
	}
	p.head("print.head.sure")
	p.tell("", "print.sure.draws", count("count", b.Draws-b.Failed))
	rows := [][]string{{"", "", p.say.Word("print.sure.why")}}
	for i := range b.Outputs {
		o := &b.Outputs[i]
		between := p.between(r, o.Figure)
		if between == "" || !slices.Contains(told, kindOf(o.Figure)) {
			continue
		}
		var why []string
		for n, s := range o.Shares {
			if n < 3 && s.Part >= most {
				why = append(why, show(p, rounded(s.Part), unit.KindPercent)+" "+p.say.Say(b.Doubts[s.Doubt].Message, p.unit))
			}
		}
		if o.Together >= most {
			why = append(why, show(p, rounded(o.Together), unit.KindPercent)+" "+p.say.Word("sure.together"))
		}
		rows = append(rows, []string{p.label(o), p.value(o.Value) + between, strings.Join(why, "; ")})
	}
	p.table("lll", rows)
	for i := range b.Motion {
		o := &b.Motion[i]
		if i == 0 {
			p.tell("", "print.sure.motion", count("count", b.Moved))
		}
		parts := strings.Split(o.Figure, ".")
		p.tell("  ", "print.sure.moved", str("case", p.say.Word("motion.case."+parts[1])), str("what", p.say.Word("sure.motion."+parts[2])),
			str("value", p.value(o.Value)), str("low", p.value(o.Low)), str("high", p.value(o.High)))
	}
	for _, c := range b.Chances {
		if c.Part > 0.01 && c.Part < 0.99 {
			p.line("%s: %s", p.say.Say(trace.Message{Code: "sure." + strings.ReplaceAll(c.Code, ".", "-"), Args: []trace.Arg{trace.Str("name", c.Name)}}, p.unit),
				show(p, rounded(c.Part), unit.KindPercent))
		}
	}
	p.surer(r)
}

// weight is how much a doubt counts over the figures printed.
type weight struct {
	doubt int
	sum   unit.Ratio
	most  unit.Ratio
	in    *design.Banded // where it counts most
}

func (w *weight) add(o *design.Banded, part unit.Ratio) {
	w.sum += part
	if part > w.most {
		w.most, w.in = part, o
	}
}

// again lists what would lessen the doubts that count most in the figures that
// are printed, the most first.
func again(r *design.Result, p *printer) []*weight {
	of := map[int]*weight{}
	for i := range r.Bands.Outputs {
		o := &r.Bands.Outputs[i]
		if p.between(r, o.Figure) == "" || !slices.Contains(told, kindOf(o.Figure)) {
			continue
		}
		for _, s := range o.Shares {
			if of[s.Doubt] == nil {
				of[s.Doubt] = &weight{doubt: s.Doubt}
			}
			of[s.Doubt].add(o, s.Part)
		}
	}
	var list []*weight
	for _, w := range of {
		if w.most >= telling {
			list = append(list, w)
		}
	}
	slices.SortFunc(list, func(a, b *weight) int {
		return cmp.Or(cmp.Compare(b.sum, a.sum), cmp.Compare(a.doubt, b.doubt))
	})
	return list[:min(len(list), fewest)]
}

// surer prints what would lessen the doubts that count most.
func (p *printer) surer(r *design.Result) {
	for n, w := range again(r, p) {
		if n == 0 {
			p.tell("", "print.sure.lessen")
		}
		d := &r.Bands.Doubts[w.doubt]
		p.tell("  - ", "print.sure.part", str("what", p.say.Say(trace.Message{Code: lessen(d), Args: d.Args}, p.unit)), num("percent", rounded(w.most), unit.KindPercent), str("figure", p.label(w.in)))
	}
}

// fewest is how many doubts are told to lessen: more nobody does.
const fewest = 5

// rounded takes a share to whole percent: it is known no better.
func rounded(part unit.Ratio) unit.Ratio {
	const whole = 100
	return unit.Ratio(int(part*whole+0.5)) / whole
}

// kindOf is a figure's ID by its first and last part, "feed.flow".
func kindOf(figure string) string {
	return figure[:strings.IndexByte(figure, '.')+1] + figure[strings.LastIndexByte(figure, '.')+1:]
}

// lessen is the code of what would lessen a doubt.
func lessen(d *design.Doubt) string {
	return "lessen." + strings.ReplaceAll(strings.TrimPrefix(d.Code, "doubt."), ".", "-")
}

// label names a figure that has a band.
func (p *printer) label(o *design.Banded) string {
	name := o.Name
	if parts := strings.Split(o.Figure, "."); parts[0] == "level" {
		name = p.say.Word("level.course."+parts[1]) + ", " + p.say.Word("level.moment."+parts[2])
	}
	return p.say.Say(trace.Message{Code: "sure." + strings.ReplaceAll(kindOf(o.Figure), ".", "-"), Args: []trace.Arg{trace.Str("name", name)}}, p.unit)
}
