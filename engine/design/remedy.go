package design

import (
	"cmp"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// enough is the part of the wanted flows from which a feed counts as served.
const enough = 1 - shortBy

// remedy puts what would give a feed more under the last finding: the valves
// set to share, and the options that come nearer to what is wanted; those that
// serve it first, and of these the cheapest over the years first.
func (m *model) remedy(feed int) {
	f := &m.out.Findings[len(m.out.Findings)-1]
	now := m.out.Delivery
	have, want, single := now.Feeds[feed].Flow, now.Feeds[feed].Wanted, len(now.Feeds) == 1
	if s := now.Share; s != nil && !single {
		if q := unit.Flow(min(s.Reach, 1)) * want; q > have {
			f.Remedies = append(f.Remedies, trace.Remedy{
				Message: trace.Message{Code: RemedyValves, Args: []trace.Arg{trace.Num("percent", min(s.Reach, 1), unit.KindPercent)}},
				Effect:  []trace.Effect{m.more(feed, q)},
			})
		}
	}
	type better struct {
		option *Option
		flow   unit.Flow
	}
	var list []better
	for i := range m.out.Options {
		o := &m.out.Options[i]
		q := o.Feeds[feed]
		if o.Reach > 0 && !single {
			q = unit.Flow(min(o.Reach, 1)) * want
		}
		if !o.AsIs && q > have {
			list = append(list, better{o, q})
		}
	}
	slices.SortStableFunc(list, func(a, b better) int {
		if a, b := a.flow >= want*unit.Flow(enough), b.flow >= want*unit.Flow(enough); a != b {
			if a {
				return -1
			}
			return 1
		}
		if a.option.Years.Currency != "" && b.option.Years.Currency != "" {
			return a.option.Years.Amount.Cmp(b.option.Years.Amount)
		}
		return cmp.Compare(a.option.Power, b.option.Power)
	})
	for _, b := range list {
		f.Remedies = append(f.Remedies, m.option(feed, single, b.option, b.flow))
	}
}

// option words one option as a remedy.
func (m *model) option(feed int, single bool, o *Option, flow unit.Flow) trace.Remedy {
	now := m.out.Delivery
	code := RemedyOption
	if single {
		code = RemedyPump
	}
	r := trace.Remedy{
		Message: trace.Message{Code: code, Args: []trace.Arg{trace.Str("pump", o.Pump), trace.Str("pipe", o.Pipe)}},
		Effect:  []trace.Effect{m.more(feed, flow)},
	}
	if now.Power > 0 && o.Power > 0 && now.Power != o.Power {
		r.Effect = append(r.Effect, trace.Effect{Figure: "pump.power", Before: unit.Of(now.Power, unit.KindPower), After: unit.Of(o.Power, unit.KindPower)})
	}
	if now.Cost.Currency != "" && o.Cost.Currency != "" {
		r.Args = append(r.Args, trace.Str("cost", o.Cost.Round().Format()))
	}
	for i := range m.out.Options {
		as := &m.out.Options[i]
		if as.AsIs && as.First.Currency != "" && as.First.Currency == o.First.Currency {
			r.Args = append(r.Args, trace.Str("more", unit.Money{Amount: o.First.Amount.Sub(as.First.Amount), Currency: o.First.Currency}.Round().Format()))
			if as.Years.Currency != "" && as.Years.Currency == o.Years.Currency {
				r.Args = append(r.Args, trace.Str("years", unit.Money{Amount: o.Years.Amount.Sub(as.Years.Amount), Currency: o.Years.Currency}.Round().Format()))
			}
		}
	}
	return r
}

// more is the effect on a feed's flow.
func (m *model) more(feed int, q unit.Flow) trace.Effect {
	return trace.Effect{Figure: FeedID(feed) + ".flow", Before: unit.Of(m.out.Delivery.Feeds[feed].Flow, unit.KindFlow), After: unit.Of(q, unit.KindFlow)}
}
