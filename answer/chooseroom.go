package answer

import (
	"strconv"

	"plashet/engine/design"
	"plashet/engine/size"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

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
		p.tell("", "choose.higher", str("name", r.Name), num("more", r.More, unit.KindHead))
	}
	for i, r := range b.Longer {
		if r.Why.Code != "" {
			continue // told with the lip beyond it
		}
		code := "choose.longer"
		if p.c.Problem.Segments[i].Parent < 0 {
			code = "choose.farther"
		}
		p.tell("", code, str("name", r.Name), num("more", r.More, unit.KindDistance))
	}
	if len(b.Changes) == 0 {
		p.tell("", "choose.change.none")
	}
	for n := range b.Changes {
		if n == mostChanges {
			break
		}
		p.change(&b.Changes[n])
	}
}

// change tells of other pipe for one run.
func (p *choosing) change(x *size.Change) {
	s := &p.c.Problem.Segments[x.Segment]
	args := []trace.Arg{str("run", s.Name), str("pipe", s.Choices[x.Choice].Name), str("cost", p.money(max(x.More, -x.More)))}
	code := "choose.change.more"
	switch {
	case p.c.Unpriced:
		code = "choose.change.unpriced"
	case x.More < 0:
		code = "choose.change.less"
	}
	if x.Head > 0 {
		args = append(args, num("head", x.Head, unit.KindHead))
	}
	if x.PerHead > 0 {
		args = append(args, str("perHead", p.money(p.perHead(x.PerHead))), str("unit", p.headUnit()))
	}
	if x.Saved > 0 {
		args = append(args, str("pump", p.c.Problem.Pumps[x.Pump].Name), str("saved", p.money(x.Saved)))
		if x.PerCost > 0 {
			args = append(args, str("ratio", p.unit.Marks().Write(strconv.FormatFloat(float64(x.PerCost), 'f', 2, 64))))
		}
	}
	p.tell("", code, args...)
}

func (p *choosing) headUnit() string {
	if p.unit.Is(unit.Metric) {
		return "m"
	}
	return "ft"
}

// perHead turns a cost for each metre into one for each unit shown.
func (p *choosing) perHead(x size.Cost) size.Cost {
	if p.unit.Is(unit.Metric) {
		return x
	}
	return size.Cost(float64(x) * float64(unit.Foot))
}
