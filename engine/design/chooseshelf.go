package design

import (
	"math"
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/size"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Reasons why a pump of the shelf is left aside.
const (
	// ReasonIll: its data could not all be read. Args: name.
	ReasonIll = "design.choose.ill"
	// ReasonNoPrice: it has no price. Args: name.
	ReasonNoPrice = "design.choose.noprice"
	// ReasonBox: it is known by its box only. Args: name.
	ReasonBox = "design.choose.box"
	// ReasonOutside: it stands outside the water, and its suction pipe is not sized. Args: name.
	ReasonOutside = "design.choose.outside"
	// ReasonSpace: it fits into the vault in none of its attitudes. Args: name.
	ReasonSpace = "design.choose.space"
	// ReasonShallow: the water over the vault's floor is less than it asks for. Args: name, found, limit.
	ReasonShallow = "design.choose.shallow"
	// ReasonPort: its outlet takes no connection known here. Args: name.
	ReasonPort = "design.choose.port"
	// ReasonDroop: its head rises over part of its curve, so that it may run at other flows. Args: name.
	ReasonDroop = "design.choose.droop"
)

// spread lists each further speed of a pump as a pump of its own; of names the
// place on the shelf of each.
func spread(shelf []job.Pump, ill map[int]bool) (out []job.Pump, still map[int]bool, of []int) {
	still = map[int]bool{}
	for i, p := range shelf {
		still[len(out)] = ill[i]
		p.Speed = ""
		out, of = append(out, p), append(of, i)
		for _, s := range p.Speeds {
			q := p
			q.Name, q.Speed = p.Name+", speed "+s.Name, s.Name
			still[len(out)] = ill[i]
			out, of = append(out, q), append(of, i)
		}
	}
	return out, still, of
}

// shelf fills the pumps. One at fault is left aside with its reason; the rest
// is still compared.
func (m *model) shelf(p *size.Problem, vault unit.Length, ill map[int]bool) {
	p.Pumps = make([]size.Pump, len(m.job.Pumps))
	for i := range m.job.Pumps {
		pump, out := &m.job.Pumps[i], &p.Pumps[i]
		out.Name, out.Least, out.LeastBore = pump.Name, pump.MinFlow.SI, pump.Solids.SI
		if out.Barred = m.barred(i, vault, ill[i]); out.Barred != nil {
			continue
		}
		var err error
		if !m.unpriced {
			var price unit.Money
			price, err = pump.Price.Amount(m.job.Style())
			out.Price = costOf(price.Amount)
		}
		// A trial of its own, so that what is wrong with its curve is at hand.
		t := *m
		t.out = &Result{}
		var ok bool
		switch out.Curve, ok = t.ownCurve(i); {
		case err != nil:
			t.refuse(at("/pumps", i)+"/price", err)
			out.Barred = &t.out.Faults[0].Message
		case !ok:
			out.Curve, out.Barred = nil, &t.out.Faults[0].Message
		case out.Curve.Basis() == hydro.CurveNameplate:
			out.Barred = reason(ReasonBox, pump)
		case out.Curve.Droops():
			out.Curve, out.Barred = nil, reason(ReasonDroop, pump)
		}
	}
}

func reason(code string, p *job.Pump, args ...trace.Arg) *trace.Message {
	return &trace.Message{Code: code, Args: append([]trace.Arg{trace.Str("name", p.Name)}, args...)}
}

// barred holds a pump against the limits that pipe has no part in.
func (m *model) barred(i int, vault unit.Length, ill bool) *trace.Message {
	p := &m.job.Pumps[i]
	switch {
	case ill:
		return reason(ReasonIll, p)
	case p.Price.IsZero() && !m.unpriced:
		return reason(ReasonNoPrice, p)
	case outside(p):
		return reason(ReasonOutside, p)
	}
	if p.Port.Size != "" || p.Port.Thread != "" {
		if _, ok := m.trial().port(p, at("/pumps", i)+"/port"); !ok {
			return reason(ReasonPort, p)
		}
	}
	if len(p.Attitudes) > 0 && !slices.ContainsFunc(p.Attitudes, m.roomFor) {
		return reason(ReasonSpace, p)
	}
	if floor, known := m.survey.Level(m.job.Vault.Floor); known && !p.MinWater.IsZero() && vault-floor < p.MinWater.SI {
		return reason(ReasonShallow, p, trace.Num("found", vault-floor, unit.KindDepth), trace.Num("limit", p.MinWater.SI, unit.KindDepth))
	}
	return nil
}

// roomFor tells whether a pump in an attitude goes into the vault, turned either
// way: a necessary room, its plumbing aside. A vault of unknown size has room.
func (m *model) roomFor(a job.Attitude) bool {
	v := &m.job.Vault
	long, wide := v.FloorLength.Or(v.Length.SI), v.FloorWidth.Or(v.Width.SI)
	if v.Shape == "" || v.Length.IsZero() {
		return true
	}
	if a.Height.SI > v.Depth.SI {
		return false
	}
	if v.Shape == "round" {
		return math.Hypot(float64(a.Length.SI), float64(a.Width.SI)) <= float64(long)
	}
	return min(a.Length.SI, a.Width.SI) <= min(long, wide) && max(a.Length.SI, a.Width.SI) <= max(long, wide)
}

// backwards asks the best design, and the job as drawn, the other way round.
func (m *model) backwards(c *Choice, inUse string) {
	ask := func(g size.Given) *Backwards {
		b := &Backwards{Given: g}
		var faults []trace.Fault
		if b.Highest, faults = size.Highest(c.Problem, g); len(faults) > 0 {
			return nil
		}
		b.Longer, _ = size.Farthest(c.Problem, g)
		b.Changes, _ = size.Changes(c.Problem, g)
		return b
	}
	if len(c.Result.Front) > 0 {
		d := &c.Result.Front[0]
		c.Best = ask(size.Given{Pumps: d.Pumps, Choices: d.Choices, Leg: d.Leg})
	}
	use := m.pumpNamed(inUse)
	if use < 0 || c.Problem.Pumps[use].Curve == nil {
		return
	}
	g := size.Given{Pumps: []int{use}}
	for i := range m.job.Runs {
		n := m.named(m.job.Runs[i].Pipe)
		k := slices.IndexFunc(c.Problem.Segments[i].Choices, func(x size.Choice) bool { return x.Name == n.Kind+" "+n.Size })
		if len(c.Problem.Segments[i].Choices) == 1 {
			k = 0
		}
		if k < 0 {
			return
		}
		g.Choices = append(g.Choices, k)
	}
	c.Drawn = ask(g)
}

// lasting tells which pumps of the best designs are to run longer than their
// sheet is said to allow.
func (m *model) lasting(c *Choice) {
	hours := m.job.Site.HoursPerDay.Or(defaultHours)
	told := map[int]bool{}
	for i := range c.Result.Front {
		for _, k := range c.Result.Front[i].Pumps {
			if p := &m.job.Pumps[k]; hours > dutyLong && !p.Continuous && !told[k] {
				told[k] = true
				m.find(trace.Finding{Message: *reason(FindChooseDuty, p, trace.Num("found", hours, unit.KindHours)), Path: at("/pumps", k), Severity: trace.Caution})
			}
		}
	}
}

// stopped tells that a search was ended before it was done.
func (m *model) stopped(r *size.Result) {
	if !r.Stopped {
		return
	}
	count := func(name string, n int) trace.Arg { return trace.Num(name, unit.Ratio(n), unit.KindCount) }
	args := []trace.Arg{count("done", r.Progress.Pumps), count("of", r.Progress.Of)}
	if r.Progress.PairsOf > 0 {
		args = append(args, count("pairs", r.Progress.Pairs), count("pairsOf", r.Progress.PairsOf))
	}
	m.find(trace.Finding{Message: trace.Message{Code: FindChooseStopped, Args: args}, Path: "/pumps", Severity: trace.Caution})
}
