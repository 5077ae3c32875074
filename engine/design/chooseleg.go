package design

import (
	"github.com/shopspring/decimal"

	"plashet/engine/hydro"
	"plashet/engine/size"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Codes of the legs by which two pumps are joined, and of valves that do not open.
const (
	// FindChooseLegs: no size has a price for all that a leg takes, so pairs are not compared. Args: item (the first that lacks one).
	FindChooseLegs = "design.choose.legs"
	// FindChooseNotOpen: in a design a check valve does not open fully. Args: name (of the run), number (of the design), valve, found, limit, more (head it may take beyond what is counted), spare (head the valve in the main has to give).
	FindChooseNotOpen = "design.choose.notopen"

	AssumeLeg = "assume.choose.leg" // what each of two pumps side by side is joined by. Args: value (pipe), valve
)

// legLength is the pipe in the leg of each of two pumps. Common practice, no source.
const legLength = unit.Metre

// checked is a check valve in a run with one choice of pipe.
type checked struct {
	name  string
	k     unit.Ratio // on the speed in the run's bore
	bore  unit.Length
	opens unit.Speed
}

// atLeast is a law that takes at no flow less than at one: a check valve that is
// not fully open takes about as much as just open. Common practice, no source.
type atLeast struct {
	law  hydro.Law
	flow unit.Flow
}

// Loss is the loss at the flow, or at the least.
func (l atLeast) Loss(q unit.Flow) (unit.Head, float64) {
	if q >= l.flow {
		return l.law.Loss(q)
	}
	h, _ := l.law.Loss(l.flow)
	return h, 0
}

// sum adds up laws that one flow passes.
type sum []hydro.Law

// Loss is the sum of the losses.
func (s sum) Loss(q unit.Flow) (h unit.Head, dhdq float64) {
	for _, l := range s {
		a, b := l.Loss(q)
		h, dhdq = h+a, dhdq+b
	}
	return h, dhdq
}

// legs fills what two pumps can be joined by: for each kind and size of pipe a
// length of it, a check valve and the branch of the tee at the join for each
// pump. False where a price is missing in every size, so that no pair can be
// compared.
func (m *model) legs(p *size.Problem, kinds []string) bool {
	valve, lacking := m.usualCheck(), ""
	for _, kind := range kinds {
		for _, s := range m.book.PipeSizes(kind) {
			r := job.Run{Name: "leg", Pipe: job.PipeName{Kind: kind, Size: s}, Length: job.Length{Text: "leg", SI: legLength}}
			r.Fittings = []job.Fitted{{Fitting: valve}, {Fitting: "tee branch"}}
			c, ok := m.leg(&r)
			if !ok {
				continue
			}
			if m.unpriced {
				c.Cost = 2 * rankOf(r.Length.SI, c.Bore)
				p.Legs = append(p.Legs, c)
				continue
			}
			cost, missing := m.legPrice(&r)
			if missing != "" {
				if lacking == "" {
					lacking = missing
				}
				continue
			}
			c.Cost = costOf(cost)
			p.Legs = append(p.Legs, c)
		}
	}
	if len(p.Legs) == 0 {
		m.find(trace.Finding{Message: trace.Message{Code: FindChooseLegs, Args: []trace.Arg{trace.Str("item", lacking)}}, Path: "/prices", Severity: trace.Caution})
		return false
	}
	m.assume("", AssumeLeg, unit.Of(unit.Length(legLength), unit.KindDistance), practice, trace.Str("valve", valve))
	return true
}

// usualCheck is the check valve that the job's runs name, or a swing valve.
func (m *model) usualCheck() string {
	for i := range m.job.Runs {
		for _, f := range m.job.Runs[i].Fittings {
			if isCheck(f.Fitting) {
				return f.Fitting
			}
		}
	}
	return "check valve swing"
}

// leg makes the laws of one leg.
func (m *model) leg(r *job.Run) (c size.Choice, ok bool) {
	t := m.trial()
	pipe, err := t.pipe(r.Pipe)
	if err != nil {
		return c, false
	}
	pp := pipeParts{bore: pipe.Bore, length: r.Length.SI}
	parts, ok := t.barrel("", r, pipe, &pp)
	if !ok {
		return c, false
	}
	var laws sum
	for _, f := range r.Fittings {
		l, sound := t.fitting("", r, f, &pp)
		if !sound {
			return c, false
		}
		law, err := hydro.MinorLaw{Bore: pp.bore, K: l.Rest, K1: l.PerRe}.Prepare(m.water)
		if err != nil {
			return c, false
		}
		laws = append(laws, atLeast{law, unit.Flow(float64(l.Opens) * float64(hydro.BoreArea(pp.bore)))})
	}
	return size.Choice{Name: r.Pipe.Kind + " " + r.Pipe.Size, Bore: pp.bore, Length: pp.length, Pipe: parts[0].Law, Fittings: laws}, true
}

// legPrice is the price of both legs: twice pipe and valve, one tee; or the
// first item without a price.
func (m *model) legPrice(r *job.Run) (sum decimal.Decimal, missing string) {
	name := m.named(r.Pipe)
	sum, ok := m.pipeCost(m.priced, name, 2*r.Length.SI)
	if !ok {
		return sum, name.Kind + " " + name.Size
	}
	for k, f := range r.Fittings {
		n := m.fitted(f.Fitting, "", r.Pipe)
		each, ok := priceOf(m.priced, job.PipeName{Kind: n.Part, Size: n.Size}, unit.Value{})
		if !ok {
			return sum, n.Part + ", " + n.Size
		}
		sum = sum.Add(each.Amount.Amount.Mul(decimal.NewFromInt(int64(2 - k))))
	}
	return sum, ""
}

// rankOf stands for what pipe costs where prices are not known: the smaller and
// the shorter, the cheaper.
func rankOf(length, bore unit.Length) size.Cost {
	return size.Cost(float64(length) * float64(bore) * float64(size.Whole))
}

// notOpen tells of check valves that do not open fully in one of the designs
// printed in full.
func (m *model) notOpen(c *Choice) {
	const most = 5
	for i := range m.job.Runs {
		for n := range c.Result.Front {
			d := &c.Result.Front[n]
			v, met := m.valves[m.job.Runs[i].Name+"\n"+c.Problem.Segments[i].Choices[d.Choices[i]].Name]
			if speed := d.Speeds[i]; met && n < most && speed < v.opens {
				more := unit.Head(float64(v.k) * float64(v.opens*v.opens-speed*speed) / (2 * unit.StandardGravity))
				m.found(FindChooseNotOpen, at("/runs", i), trace.Info, unit.Of(speed, unit.KindSpeed), unit.Of(v.opens, unit.KindSpeed), practice,
					trace.Str("name", m.job.Runs[i].Name), trace.Str("valve", v.name), trace.Num("number", unit.Ratio(n+1), unit.KindCount),
					trace.Num("more", more, unit.KindHead), trace.Num("spare", d.Surplus(), unit.KindHead))
				break // the same for the others, more or less
			}
		}
	}
}
