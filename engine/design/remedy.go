package design

import (
	"cmp"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// enough is the part of the wanted flows from which a feed counts as served.
const enough = 1 - shortBy

// mostRemedies is how many remedies of one finding are told; the rest is
// counted. Nobody weighs more.
const mostRemedies = 4

// better is an option that gives a feed more than it has.
type better struct {
	option *Option
	flow   unit.Flow
	serves bool
}

// remedy puts what would give a feed more under the last finding: the valves
// set to share, and the options that come nearer to what is wanted; the best
// first.
func (m *model) remedy(feed int) {
	f := &m.out.Findings[len(m.out.Findings)-1]
	now := m.out.Delivery
	have, want := now.Feeds[feed].Flow, now.Feeds[feed].Wanted
	var list []better
	for i := range m.out.Options {
		o := &m.out.Options[i]
		q := m.gives(o, feed)
		serves := q >= want*unit.Flow(enough)
		switch {
		case o.Several, o.Beyond == unit.LessThan, now.Bound() == unit.MoreThan && !serves:
			// It is not known that it gives more than there is.
		case q-have > leastGain*max(have, want) || serves && now.Bound() == unit.LessThan && !o.AsIs:
			list = append(list, better{o, q, serves})
		}
	}
	rank(list)
	for n, b := range list {
		if n == mostRemedies {
			f.MoreRemedies = len(list) - n
			break
		}
		f.Remedies = append(f.Remedies, m.option(feed, b.option, b.flow))
	}
}

// rank puts first what serves, the cheapest of it first: what is priced, by its
// cost over the years, and behind it what is not, by the electricity of a year
// where that is known of all of it, else by the power. What does not serve stands behind, the most water
// first. Of equals the smaller pipe stays in front.
func rank(list []better) {
	priced := func(o *Option) bool { return o.Years.Currency != "" }
	all := func(known func(o *Option) bool) bool {
		return !slices.ContainsFunc(list, func(b better) bool { return b.serves && !priced(b.option) && !known(b.option) })
	}
	cost := func(a, b *Option) int {
		switch {
		case priced(a) && priced(b):
			return a.Years.Amount.Cmp(b.Years.Amount)
		case priced(a):
			return -1
		case priced(b):
			return 1
		case all(func(o *Option) bool { return o.Cost.Currency != "" }):
			return a.Cost.Amount.Cmp(b.Cost.Amount)
		case all(func(o *Option) bool { return o.Power > 0 }):
			return cmp.Compare(a.Power, b.Power)
		}
		return 0
	}
	slices.SortStableFunc(list, func(a, b better) int {
		switch {
		case a.serves && b.serves:
			return cost(a.option, b.option)
		case a.serves:
			return -1
		case b.serves:
			return 1
		}
		return cmp.Compare(b.flow, a.flow)
	})
}

// option words one option as a remedy.
func (m *model) option(feed int, o *Option, flow unit.Flow) trace.Remedy {
	now := m.out.Delivery
	if o.AsIs {
		return trace.Remedy{
			Message: trace.Message{Code: RemedyValves, Args: []trace.Arg{trace.Num("percent", min(o.Reach, 1), unit.KindPercent)}},
			Effect:  []trace.Effect{m.more(feed, flow, o.Beyond)},
		}
	}
	code := RemedyOption
	if len(now.Feeds) == 1 {
		code = RemedyPump
	}
	r := trace.Remedy{
		Message: trace.Message{Code: code, Args: []trace.Arg{trace.Str("pump", o.Pump), trace.Str("pipe", o.Pipe)}},
		Effect:  []trace.Effect{m.more(feed, flow, o.Beyond)},
	}
	if now.Power > 0 && o.Power > 0 && now.Power != o.Power {
		r.Effect = append(r.Effect, trace.Effect{Figure: "pump.power", Before: unit.Of(now.Power, unit.KindPower), After: unit.Of(o.Power, unit.KindPower)})
	}
	if now.Cost.Currency != "" && o.Cost.Currency != "" {
		r.Args = append(r.Args, trace.Str("cost", o.Cost.Round().Format(m.out.Style)))
	}
	for i := range m.out.Options {
		as := &m.out.Options[i]
		if as.AsIs && as.First.Currency != "" && as.First.Currency == o.First.Currency {
			r.Args = append(r.Args, trace.Str("more", unit.Money{Amount: o.First.Amount.Sub(as.First.Amount), Currency: o.First.Currency}.Round().Format(m.out.Style)))
			if as.Years.Currency != "" && as.Years.Currency == o.Years.Currency {
				r.Args = append(r.Args, trace.Str("years", unit.Money{Amount: o.Years.Amount.Sub(as.Years.Amount), Currency: o.Years.Currency}.Round().Format(m.out.Style)))
			}
		}
	}
	return r
}

// more is the effect on a feed's flow.
func (m *model) more(feed int, q unit.Flow, bound unit.Bound) trace.Effect {
	now := m.out.Delivery
	return trace.Effect{
		Figure: FeedID(feed) + ".flow", Before: unit.Bounded(now.Feeds[feed].Flow, unit.KindFlow, now.Bound()), After: unit.Bounded(q, unit.KindFlow, bound),
	}
}
