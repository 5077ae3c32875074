package answer

import (
	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/takeoff"
)

type material = takeoff.Item

// materials prints the list.
func (p *printer) materials(r *design.Result) {
	if len(r.Materials) == 0 {
		return
	}
	p.head("print.head.material")
	told := map[string]bool{}
	for _, i := range r.Materials {
		price := p.say.Word("print.unpriced")
		if i.Priced {
			price = p.span(i.Total.Low.Round().Format(p.style), i.Total.High.Round().Format(p.style))
			if per, ok := i.Sold(); ok {
				price += " (" + p.text("print.per", str("price", i.Price.Round().Format(p.style)), str("unit", p.say.Unit(per, p.unit))) + ")"
			}
		}
		spare := ""
		if i.Spare.High > 0 {
			spare = p.text("print.spare", str("amount", p.amount(i.Spare)))
		}
		p.line("%-44s %s%s%s; %s", p.say.Say(i.Message(), p.unit), p.amount(i.Buy), p.pack(i.Pack), spare, price)
		if how, ok := i.How(); ok {
			p.line("    %s", p.say.Say(how, p.unit))
		}
		p.cautions(i.Cautions(), told)
	}
	p.total(r)
}

// cautions prints what can hurt, each of a list once.
func (p *printer) cautions(codes []string, told map[string]bool) {
	for _, c := range codes {
		if !told[c] {
			p.line("    ! %s", p.say.Word(c))
		}
		told[c] = true
	}
}

// total prints the foot of the list. The lines are of one currency, the job's.
func (p *printer) total(r *design.Result) {
	sum, unpriced, err := takeoff.Sum(r.Materials)
	switch {
	case err != nil:
		p.tell("", "print.total.mixed")
	case unpriced == len(r.Materials):
		p.tell("", "print.total.none")
	case unpriced > 0:
		p.line("%-44s %s", p.say.Word("print.total.priced"), p.text("print.total.part",
			str("sum", p.span(sum.Low.Format(p.style), sum.High.Format(p.style))), count("count", unpriced), count("of", len(r.Materials))))
	default:
		p.line("%-44s %s", p.say.Word("print.total"), p.span(sum.Low.Format(p.style), sum.High.Format(p.style)))
	}
}

// amount shows a range as one figure where both ends are shown alike.
func (p *printer) amount(v takeoff.Range) string {
	low, high := v.Values()
	return p.span(p.value(low), p.value(high))
}

func (p *printer) span(low, high string) string { return span(p.say, low, high, p.unit) }

// pack tells what one of a count holds.
func (p *printer) pack(v unit.Value) string {
	if v.Kind == unit.KindNone {
		return ""
	}
	return p.text("print.pack", str("each", p.value(v)))
}
