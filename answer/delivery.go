package answer

import (
	"strings"

	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// power shows what a pump draws, or that nobody knows.
func (p *printer) power(w unit.Power) string {
	if w == 0 {
		return p.say.Word("print.power.unknown")
	}
	return show(p, w, unit.KindPower)
}

func (p *printer) delivery(r *design.Result) {
	d := r.Delivery
	if d == nil {
		return
	}
	p.head("print.head.delivery")
	height := p.say.Word("print.dry")
	if d.Rises {
		height = p.text("print.height", num("height", d.Static, unit.KindHead))
	}
	p.tell("", "print.pump", str("pump", d.Pump), str("flow", p.flow(r, d.Flow, "pump.flow", d.Beyond)),
		str("head", showBound(p, d.Head, unit.KindHead, -d.Beyond)), str("height", height), str("power", p.power(d.Power)))
	for i, o := range d.Others {
		p.tell("", "print.further", str("name", o.Name), str("pump", o.Pump), str("flow", p.flow(r, o.Flow, design.OtherID(i)+".flow", o.Beyond)),
			str("head", showBound(p, o.Head, unit.KindHead, -o.Beyond)), str("power", p.power(o.Power)))
	}
	if d.Energy > 0 {
		cost := ""
		if d.Cost.Currency != "" {
			cost = d.Cost.Round().Format(p.style)
		}
		p.tell("", "print.year", num("energy", d.Energy, unit.KindEnergy), str("cost", cost))
	}
	p.runs(d)
	for i, f := range d.Feeds {
		wanted := ""
		if f.Wanted > 0 {
			wanted = show(p, f.Wanted, unit.KindFlow)
		}
		p.tell("", "print.feed", str("name", f.Name), str("flow", p.flow(r, f.Flow, design.FeedID(i)+".flow", d.Bound())), str("wanted", wanted))
		p.throttle(d.Share, f)
		for k, l := range f.Lips {
			p.lip(r, l, design.LipID(i, k), d.Bound())
		}
	}
}

// runs prints the runs of pipe in columns.
func (p *printer) runs(d *design.Delivery) {
	heads := [...]string{"print.run", "print.run.flow", "print.run.speed", "print.run.reynolds", "print.run.pipe", "print.run.fittings"}
	rows := [][]string{make([]string, 0, len(heads))}
	for _, code := range heads {
		rows[0] = append(rows[0], p.say.Word(code))
	}
	for _, run := range d.Runs {
		rows = append(rows, []string{
			run.Name, showBound(p, run.Flow, unit.KindFlow, d.Bound()), showBound(p, run.Speed, unit.KindSpeed, d.Bound()),
			show(p, run.Reynolds, unit.KindCount), showBound(p, run.Friction, unit.KindHead, d.Bound()), showBound(p, run.Fittings, unit.KindHead, d.Bound()),
		})
	}
	if len(d.Runs) > 0 {
		p.table("lrrrrr", rows)
	}
}

// lip tells the sheet over a lip. On one that is out of level each depth says
// where it is meant.
func (p *printer) lip(r *design.Result, l design.Lip, id string, bound unit.Bound) {
	depth := func(name string, h unit.Length) trace.Arg { return str(name, showBound(p, h, unit.KindDepth, bound)) }
	code := "print.lip"
	if l.Tilt > 0 {
		code = "print.lip.tilted"
	}
	p.tell("  ", code, str("name", l.Name), str("head", showBound(p, l.Sheet.Head, unit.KindDepth, bound)+p.between(r, id+".head")),
		depth("middle", l.Sheet.Middle), depth("high", l.Sheet.High), depth("critical", l.Sheet.Critical), depth("edge", l.Sheet.Edge),
		str("width", showBound(p, l.Sheet.PerWidth, unit.KindFlowPerWidth, bound)))
}

// throttle tells what a feed's valve must take; nothing where that is too
// little to be read.
func (p *printer) throttle(s *design.Share, f design.Feed) {
	burn := show(p, f.Burn, unit.KindHead)
	if s == nil || burn == show(p, unit.Head(0), unit.KindHead) {
		return
	}
	args := []trace.Arg{str("burn", burn), str("k", p.unit.Marks().Write(coefficient(f.K)))}
	if s.At < 1 {
		p.tell("     ", "print.throttle.part", append(args, num("percent", s.At, unit.KindPercent))...)
		return
	}
	p.tell("     ", "print.throttle", args...)
}

func (p *printer) options(r *design.Result) {
	if len(r.Options) < 2 {
		return
	}
	p.head("print.head.options")
	rows := [][]string{{"", p.say.Word("print.option.pump"), p.say.Word("print.option.pipe"), p.say.Word("print.option.flow"), p.say.Word("print.option.feeds"), p.say.Word("print.option.power"), p.say.Word("print.option.cost")}}
	for i := range r.Options {
		rows = append(rows, p.option(&r.Options[i]))
	}
	p.table("lllrlrl", rows)
	p.tell("", "print.drawn")
}

func (p *printer) option(o *design.Option) []string {
	feeds := make([]string, 0, len(o.Feeds))
	for _, f := range o.Feeds {
		feeds = append(feeds, showBound(p, f, unit.KindFlow, o.Beyond))
	}
	mark := " "
	if o.AsIs {
		mark = "*"
	}
	var costs []string
	if o.Cost.Currency != "" {
		costs = append(costs, p.text("print.cost.year", str("cost", o.Cost.Round().Format(p.style))))
	}
	if o.First.Currency != "" {
		costs = append(costs, p.text("print.cost.once", str("cost", o.First.Round().Format(p.style))))
	}
	shared := strings.Join(feeds, " + ")
	if o.Reach > 0 && len(o.Feeds) > 1 {
		shared += p.text("print.option.reach", num("percent", o.Reach, unit.KindPercent))
	}
	if o.Several {
		shared += p.say.Word("print.option.several")
	}
	return []string{mark, o.Pump, p.say.Term(o.Pipe), showBound(p, o.Flow, unit.KindFlow, o.Beyond), shared, p.power(o.Power), strings.Join(costs, ", ")}
}
