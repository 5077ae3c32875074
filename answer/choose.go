package answer

import (
	"io"
	"slices"
	"strings"

	"plashet/engine/design"
	"plashet/engine/size"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/words"
)

// How many of each are printed, or printed in full; JSON has all.
const (
	mostFull    = 5
	mostLost    = 8
	mostOut     = 12
	mostChanges = 4
)

// choosing prints a choice.
type choosing struct {
	printer
	c *design.Choice
}

// Chosen prints for reading what is best on a shelf, why the others lost, and
// what the best design leaves room for. Faults met in reading stand with the
// choice's.
func Chosen(w io.Writer, c *design.Choice, read []trace.Fault, l *words.Language) error {
	p := &choosing{printer{w: w, say: l, unit: c.Units, style: c.Style}, c}
	p.tell("", "choose.title", p.heads(c.Name))
	if c.Result != nil {
		p.wanted()
		p.front()
		p.lost()
		p.out()
		p.backwards("choose.head.best", c.Best)
		p.backwards("choose.head.drawn", c.Drawn)
	}
	if len(c.Findings) > 0 {
		p.head("choose.head.findings")
		for _, f := range c.Findings {
			p.line("%s%s", p.severity(f.Severity), p.say.Finding(f, p.unit))
		}
	}
	p.faults(append(slices.Clone(read), c.Faults...))
	if len(c.Assumptions) > 0 {
		p.head("choose.head.assumed")
		for _, a := range c.Assumptions {
			p.line("%s", p.say.Assumption(a, p.unit))
		}
	}
	return p.err
}

// ChooseProgress says how far a search over a shelf has got.
func ChooseProgress(g size.Progress, l *words.Language) string {
	p := printer{say: l}
	args := []trace.Arg{count("done", g.Pumps), count("of", g.Of)}
	if g.PairsOf > 0 {
		args = append(args, count("pairs", g.Pairs), count("pairsOf", g.PairsOf))
	}
	return p.text("choose.progress", args...)
}

// money shows what counts over the years: an amount, or kWh where nothing tells
// what these cost.
func (p *choosing) money(x size.Cost) string {
	if p.c.Kilowatt {
		return show(&p.printer, p.c.Energy(x), unit.KindEnergy)
	}
	return p.c.Money(x).Round().Format(p.c.Style)
}

// first shows a first cost; nothing where none is known.
func (p *choosing) first(x size.Cost) string {
	if p.c.Unpriced {
		return ""
	}
	return p.money(x)
}

// either picks a sentence by whether first costs are known.
func (p *choosing) either(known, unknown string) string {
	if p.c.Unpriced {
		return unknown
	}
	return known
}

func (p *choosing) wanted() {
	var flows []string
	total := unit.Flow(0)
	for _, o := range p.c.Problem.Outlets {
		flows = append(flows, o.Name+" "+show(&p.printer, o.Wanted, unit.KindFlow))
		total += o.Wanted
	}
	p.tell("", "choose.wanted", str("total", unit.FormatFlow(total, p.unit)), str("flows", strings.Join(flows, ", ")))
	p.tell("", "choose.over", num("years", p.c.Years, unit.KindCount), num("discount", p.c.Discount, unit.KindPercent), num("speed", p.c.Speed, unit.KindSpeed))
}

// pumps names the pumps of a design.
func (p *choosing) pumps(d *size.Design) string {
	one := str("name", p.c.Problem.Pumps[d.Pumps[0]].Name)
	if len(d.Pumps) == 1 {
		return p.text("choose.pump", one)
	}
	if d.Pumps[0] == d.Pumps[1] {
		return p.text("choose.pump.alike", one)
	}
	return p.text("choose.pump.pair", one, str("other", p.c.Problem.Pumps[d.Pumps[1]].Name))
}

// pipe names the pipe of a design, the kind once where it is one throughout.
func (p *choosing) pipe(choices []int) string {
	var kind string
	one := true
	sizes, names := make([]string, 0, len(choices)), make([]string, 0, len(choices))
	for i, k := range choices {
		s := &p.c.Problem.Segments[i]
		name := s.Choices[k].Name
		cut := strings.LastIndexByte(strings.TrimSuffix(name, " mm"), ' ') // a size is one word, and its unit
		if cut < 0 || i > 0 && name[:cut] != kind {
			one = false
		} else {
			kind = name[:cut]
		}
		sizes, names = append(sizes, s.Name+" "+name[cut+1:]), append(names, s.Name+" "+name)
	}
	if one {
		return p.text("choose.pipe.kind", str("sizes", strings.Join(sizes, ", ")), str("kind", kind))
	}
	return strings.Join(names, ", ")
}

func (p *choosing) reserve(step int) string {
	r := p.c.Problem.Reserves
	switch {
	case len(r) == 0:
		return p.say.Word("choose.reserve.none")
	case step == 0:
		return p.text("choose.reserve.under", num("percent", r[0]-1, unit.KindPercent))
	}
	return p.text("choose.reserve", num("percent", r[step-1]-1, unit.KindPercent))
}

func (p *choosing) front() {
	p.head("choose.head.front")
	if len(p.c.Result.Front) == 0 {
		p.tell("", "choose.front.none")
		return
	}
	covered := p.either("choose.front.covered", "choose.front.covered.unpriced")
	if p.c.Result.Stopped {
		covered = "choose.front.stopped"
	}
	p.tell("", covered, num("count", unit.Ratio(p.c.Result.Covered), unit.KindCount))
	for n := range p.c.Result.Front {
		d := &p.c.Result.Front[n]
		counts := p.text(p.either("choose.design", "choose.design.unpriced"), count("number", n+1), str("first", p.first(d.First)), str("years", p.money(d.Years)), str("reserve", p.reserve(d.Step)))
		if n >= mostFull {
			p.line("%s: %s; %s", counts, p.pumps(d), p.pipe(d.Choices))
			continue
		}
		p.line("%s", counts)
		p.design(d)
		if n > 0 {
			p.tell("   ", "choose.beside", str("what", p.beside(d)))
		}
	}
}

// design opens one of the best designs.
func (p *choosing) design(d *size.Design) {
	const margin = "   "
	p.tell(margin, "choose.runs", str("pumps", p.pumps(d)), str("flow", unit.FormatFlow(d.Flow, p.unit)), num("head", d.Head, unit.KindHead), num("power", d.Power, unit.KindPower))
	if len(d.Pumps) == 2 {
		p.tell(margin, "choose.each", num("one", d.Each[0], unit.KindFlow), num("other", d.Each[1], unit.KindFlow))
		if d.Leg >= 0 {
			leg := &p.c.Problem.Legs[d.Leg]
			p.tell(margin, p.either("choose.leg", "choose.leg.unpriced"), num("length", leg.Length, unit.KindDistance), str("pipe", leg.Name))
		}
	}
	p.tell(margin, "choose.pipe", str("pipe", p.pipe(d.Choices)))
	p.tell(margin, "choose.takes", num("need", d.Need, unit.KindHead), str("valves", p.valves(d)))
	open := "choose.open"
	if d.Open.AtLeast {
		open = "choose.open.least"
	}
	p.tell(margin, open, num("percent", d.Open.Factor, unit.KindPercent), num("power", d.Open.Power, unit.KindPower))
}

func (p *choosing) valves(d *size.Design) string {
	out := []string{p.text("choose.valve.main", num("head", d.Surplus(), unit.KindHead))}
	for o, b := range d.Burns {
		if len(d.Burns) > 1 {
			out = append(out, p.text("choose.valve", num("head", b, unit.KindHead), str("name", p.c.Problem.Outlets[o].Name)))
		}
	}
	return strings.Join(out, ", ")
}

// beside tells by how much a design is better and worse than the first.
func (p *choosing) beside(d *size.Design) string {
	best := &p.c.Result.Front[0]
	steps := "choose.beside.reserve.same"
	if d.Step > best.Step {
		steps = "choose.beside.reserve.more"
	} else if d.Step < best.Step {
		steps = "choose.beside.reserve.less"
	}
	all := []string{p.more("choose.years.", d.Years-best.Years)}
	if !p.c.Unpriced {
		all = append(all, p.more("choose.first.", d.First-best.First))
	}
	return strings.Join(append(all, p.say.Word(steps)), ", ")
}

// more tells a difference of cost.
func (p *choosing) more(code string, x size.Cost) string {
	switch {
	case x > 0:
		return p.text(code+"more", str("cost", p.money(x)))
	case x < 0:
		return p.text(code+"less", str("cost", p.money(-x)))
	}
	return p.text(code + "same")
}

func (p *choosing) lost() {
	if len(p.c.Result.Lost) == 0 {
		return
	}
	p.head("choose.head.lost")
	for n, l := range p.c.Result.Lost {
		if n == mostLost {
			p.tell("", "choose.rest", count("count", len(p.c.Result.Lost)-n))
			break
		}
		var why []string
		if l.Years > 0 {
			why = append(why, p.more("choose.years.", l.Years))
		}
		if l.First > 0 && p.c.Unpriced {
			why = append(why, p.say.Word("choose.pipe.more"))
		} else if l.First > 0 {
			why = append(why, p.more("choose.first.", l.First))
		}
		if l.Steps > 0 {
			why = append(why, p.say.Word("choose.beside.reserve.less"))
		}
		if len(why) == 0 {
			why = append(why, p.say.Word("choose.alike"))
		}
		p.tell("", "choose.lost", str("pumps", p.pumps(&l.Design)), str("years", p.money(l.Design.Years)), str("pipe", p.pipe(l.Design.Choices)),
			count("number", l.By+1), str("why", strings.Join(why, ", ")))
	}
}

func (p *choosing) out() {
	if len(p.c.Result.Out) == 0 {
		return
	}
	p.head("choose.head.out")
	for n, o := range p.c.Result.Out {
		if n == mostOut {
			p.tell("", "choose.rest", count("count", len(p.c.Result.Out)-n))
			break
		}
		p.line("%s", p.say.Say(o.Message, p.unit))
	}
}
