package answer

import (
	"fmt"
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
	p := &choosing{printer{w: w, say: l, unit: c.Units}, c}
	p.line("%s: pump and pipe to choose", c.Name)
	if c.Result != nil {
		p.wanted()
		p.front()
		p.lost()
		p.out()
		p.backwards("What design 1 leaves room for", c.Best)
		p.backwards("The job as drawn, valves set to give what is wanted", c.Drawn)
	}
	if len(c.Findings) > 0 {
		p.head("Worth knowing")
		for _, f := range c.Findings {
			p.line("[%s] %s", f.Severity, p.say.Finding(f, p.unit))
		}
	}
	p.faults(append(slices.Clone(read), c.Faults...))
	if len(c.Assumptions) > 0 {
		p.head("Assumed")
		for _, a := range c.Assumptions {
			p.line("%s", p.say.Assumption(a, p.unit))
		}
	}
	return p.err
}

func (p *choosing) money(x size.Cost) string { return p.c.Money(x).Round().Format() }

func (p *choosing) wanted() {
	var flows []string
	total := unit.Flow(0)
	for _, o := range p.c.Problem.Outlets {
		flows = append(flows, o.Name+" "+show(&p.printer, o.Wanted, unit.KindFlow))
		total += o.Wanted
	}
	p.line("wanted: %s: %s", unit.FormatFlow(total, p.unit), strings.Join(flows, ", "))
	p.line("over %s years at %s a year; water at most %s; every design has valves set to give exactly what is wanted", show(&p.printer, p.c.Years, unit.KindCount),
		show(&p.printer, p.c.Discount, unit.KindPercent), show(&p.printer, p.c.Speed, unit.KindSpeed))
}

// pumps names the pumps of a design.
func (p *choosing) pumps(d *size.Design) string {
	name := func(i int) string { return "pump " + p.c.Problem.Pumps[i].Name }
	if len(d.Pumps) == 1 {
		return name(d.Pumps[0])
	}
	if d.Pumps[0] == d.Pumps[1] {
		return "two of " + name(d.Pumps[0])
	}
	return name(d.Pumps[0]) + " with " + name(d.Pumps[1])
}

// pipe names the pipe of a design, the kind once where it is one throughout.
func (p *choosing) pipe(choices []int) string {
	var kind string
	one := true
	sizes, names := make([]string, 0, len(choices)), make([]string, 0, len(choices))
	for i, k := range choices {
		s := &p.c.Problem.Segments[i]
		name := s.Choices[k].Name
		cut := strings.LastIndexByte(name, ' ') // a size is one word
		if cut < 0 || i > 0 && name[:cut] != kind {
			one = false
		} else {
			kind = name[:cut]
		}
		sizes, names = append(sizes, s.Name+" "+name[cut+1:]), append(names, s.Name+" "+name)
	}
	if one {
		return strings.Join(sizes, ", ") + " in " + kind
	}
	return strings.Join(names, ", ")
}

func (p *choosing) reserve(step int) string {
	r := p.c.Problem.Reserves
	switch {
	case len(r) == 0:
		return "not asked for"
	case step == 0:
		return "under " + show(&p.printer, r[0]-1, unit.KindPercent)
	}
	return "at least " + show(&p.printer, r[step-1]-1, unit.KindPercent)
}

func (p *choosing) front() {
	p.head("Best designs")
	if len(p.c.Result.Front) == 0 {
		p.line("No pump of the shelf serves what is wanted. Ask for less, allow larger pipe, or add pumps.")
		return
	}
	p.line("held against %.0f designs; none beats one of these on first cost, cost over the years and reserve together", p.c.Result.Covered)
	for n := range p.c.Result.Front {
		d := &p.c.Result.Front[n]
		counts := fmt.Sprintf("%d. %s once, %s over the years; reserve %s", n+1, p.money(d.First), p.money(d.Years), p.reserve(d.Step))
		if n >= mostFull {
			p.line("%s: %s; %s", counts, p.pumps(d), p.pipe(d.Choices))
			continue
		}
		p.line("%s", counts)
		p.line("   %s: %s at %s, %s", p.pumps(d), unit.FormatFlow(d.Flow, p.unit), show(&p.printer, d.Head, unit.KindHead), show(&p.printer, d.Power, unit.KindPower))
		if len(d.Pumps) == 2 {
			p.line("   of it %s and %s; each needs a check valve and its own leg, which are neither priced nor counted here", show(&p.printer, d.Each[0], unit.KindFlow), show(&p.printer, d.Each[1], unit.KindFlow))
		}
		p.line("   pipe: %s", p.pipe(d.Choices))
		p.line("   pipe and height take %s; valves take %s", show(&p.printer, d.Need, unit.KindHead), p.valves(d))
		bound := ""
		if d.Open.AtLeast {
			bound = "at least "
		}
		p.line("   main valve open: %s%s of what is wanted, %s", bound, show(&p.printer, d.Open.Factor, unit.KindPercent), show(&p.printer, d.Open.Power, unit.KindPower))
		if n > 0 {
			p.line("   beside design 1: %s", p.beside(d))
		}
	}
}

func (p *choosing) valves(d *size.Design) string {
	out := []string{show(&p.printer, d.Surplus(), unit.KindHead) + " in the main"}
	for o, b := range d.Burns {
		if len(d.Burns) > 1 {
			out = append(out, show(&p.printer, b, unit.KindHead)+" at "+p.c.Problem.Outlets[o].Name)
		}
	}
	return strings.Join(out, ", ")
}

// beside tells by how much a design is better and worse than the first.
func (p *choosing) beside(d *size.Design) string {
	best := &p.c.Result.Front[0]
	more := func(x size.Cost, what string) string {
		switch {
		case x > 0:
			return p.money(x) + " more " + what
		case x < 0:
			return p.money(-x) + " less " + what
		}
		return "the same " + what
	}
	steps := "the same reserve"
	if d.Step > best.Step {
		steps = "more reserve"
	} else if d.Step < best.Step {
		steps = "less reserve"
	}
	return more(d.Years-best.Years, "over the years") + ", " + more(d.First-best.First, "once") + ", " + steps
}

func (p *choosing) lost() {
	if len(p.c.Result.Lost) == 0 {
		return
	}
	p.head("Why the others lost")
	for n, l := range p.c.Result.Lost {
		if n == mostLost {
			p.line("and %d more", len(p.c.Result.Lost)-n)
			break
		}
		var why []string
		if l.Years > 0 {
			why = append(why, p.money(l.Years)+" more over the years")
		}
		if l.First > 0 {
			why = append(why, p.money(l.First)+" more once")
		}
		if l.Steps > 0 {
			why = append(why, "less reserve")
		}
		if len(why) == 0 {
			why = append(why, "alike; the other stands first on the shelf")
		}
		p.line("%s, at best %s over the years on %s: beside design %d %s", p.pumps(&l.Design), p.money(l.Design.Years), p.pipe(l.Design.Choices), l.By+1, strings.Join(why, ", "))
	}
}

func (p *choosing) out() {
	if len(p.c.Result.Out) == 0 {
		return
	}
	p.head("Pumps that do not serve alone")
	for n, o := range p.c.Result.Out {
		if n == mostOut {
			p.line("and %d more", len(p.c.Result.Out)-n)
			break
		}
		p.line("%s", p.say.Say(o.Message, p.unit))
	}
}

func (p *choosing) backwards(title string, b *design.Backwards) {
	if b == nil {
		return
	}
	p.head(title)
	for _, r := range b.Highest {
		if r.Why.Code != "" {
			p.line("%s", p.say.Say(r.Why, p.unit))
			continue
		}
		p.line("%s could be %s higher", r.Name, show(&p.printer, r.More, unit.KindHead))
	}
	for i, r := range b.Longer {
		if r.Why.Code != "" {
			continue // told with the lip beyond it
		}
		far := ""
		if p.c.Problem.Segments[i].Parent < 0 {
			far = ": so much farther could the pump stand"
		}
		p.line("run %s could be %s longer%s", r.Name, show(&p.printer, r.More, unit.KindDistance), far)
	}
	if len(b.Changes) == 0 {
		p.line("no other pipe for a single run saves head or money")
	}
	for n := range b.Changes {
		if n == mostChanges {
			break
		}
		p.line("%s", p.change(&b.Changes[n]))
	}
}

func (p *choosing) change(x *size.Change) string {
	s := &p.c.Problem.Segments[x.Segment]
	said := fmt.Sprintf("run %s in %s", s.Name, s.Choices[x.Choice].Name)
	switch {
	case x.More >= 0:
		said += ": " + p.money(x.More) + " more"
	default:
		said += ": " + p.money(-x.More) + " less"
	}
	if x.Head > 0 {
		said += ", saves " + show(&p.printer, x.Head, unit.KindHead)
	}
	if x.PerHead > 0 {
		said += fmt.Sprintf(" (%s for each %s)", p.money(p.perHead(x.PerHead)), p.headUnit())
	}
	if x.Saved > 0 {
		said += fmt.Sprintf("; with pump %s %s less over the years", p.c.Problem.Pumps[x.Pump].Name, p.money(x.Saved))
		if x.PerCost > 0 {
			said += fmt.Sprintf(", %.2f for each 1 spent", float64(x.PerCost))
		}
	}
	return said
}

func (p *choosing) headUnit() string {
	if p.unit == unit.Metric {
		return "m"
	}
	return "ft"
}

// perHead turns a cost for each metre into one for each unit shown.
func (p *choosing) perHead(x size.Cost) size.Cost {
	if p.unit == unit.Metric {
		return x
	}
	return size.Cost(float64(x) * float64(unit.Foot))
}
