package design

import (
	"context"

	"github.com/shopspring/decimal"

	"plashet/engine/catalog"
	"plashet/engine/hydro"
	"plashet/engine/size"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Codes of choosing from a shelf.
const (
	// CodeChooseFurther: pumps run together already, which is not sized. No args.
	CodeChooseFurther = "design.choose.further"
	// CodeChooseLoop: two ways lead to one place, which is not sized. Args: name.
	CodeChooseLoop = "design.choose.loop"
	// FindChooseCurrency: the job has no currency, so first costs are not known. No args.
	FindChooseCurrency = "design.choose.currency"
	// FindChoosePumps: no pump that could serve has a price, so first costs are not known. No args.
	FindChoosePumps = "design.choose.pumps"
	// FindChooseRun: no size for a run has a price for all its parts, so first costs are not known. Args: name, item (the first that lacks one).
	FindChooseRun = "design.choose.run"
	// CodeChooseYears: years or discount out of range. No args.
	CodeChooseYears = "design.choose.years"
	// CodeChooseKind: a kind of pipe that the tables do not have. Args: name.
	CodeChooseKind = "design.choose.kind"
	// FindNoChoice: faults of reading, on which a choice would stand. Args: places.
	FindNoChoice = "design.void.choice"
	// FindChooseStopped: the search was stopped before it was done. Args: done, of, pairs and pairsOf where two pumps may run.
	FindChooseStopped = "design.choose.stopped"
	// FindChooseTariff: without a tariff the electricity counts for nothing. No args.
	FindChooseTariff = "design.choose.tariff"
	// FindChooseEnergy: with neither first costs nor a tariff what counts over the years is kWh. No args.
	FindChooseEnergy = "design.choose.energy"
	// FindChooseLeft: sizes left out because a part of them has no price. Args: name, count, item.
	FindChooseLeft = "design.choose.left"

	// FindChooseDuty: a pump among the best is not said to run continuously. Args: name, found (hours a day).
	FindChooseDuty = "design.choose.duty"

	AssumeYears    = "assume.choose.years"    // how long costs are counted over. Args: value
	AssumeDiscount = "assume.choose.discount" // the discount rate. Args: value
)

// Want is what a choice is to keep to.
type Want struct {
	Years     unit.Ratio // that costs are counted over; 0: five, told as assumed
	Discount  unit.Ratio // a year
	Rated     bool       // Discount is given; else nothing is discounted, told as assumed
	MostSpeed unit.Speed // in every run at the wanted flows; 0: 8 ft/s
	Kinds     []string   // of pipe; empty: those of the job's runs, for hose the usual rigid pipe too
	Uniform   bool       // one size throughout
	Pairs     Pairs
}

// Pairs says which two pumps may run in parallel; see size.Pairs.
type Pairs = size.Pairs

// The ways.
const (
	PairsNone  = size.PairsNone
	PairsAlike = size.PairsAlike
	PairsAny   = size.PairsAny
)

// Choice is the answer.
type Choice struct {
	Name     string
	Units    unit.System
	Style    unit.Style // of amounts of money
	Currency string
	Years    unit.Ratio
	Discount unit.Ratio
	// Unpriced: first costs are not known. Designs are then told apart by the
	// electricity, the size of their pipe and the reserve.
	Unpriced bool
	Kilowatt bool       // what is counted over the years is kWh, since there is no tariff
	Speed    unit.Speed // the limit
	Vault    unit.Length
	Problem  *size.Problem // nil where it could not be put together
	Result   *size.Result  // likewise
	Of       []int         // of each of the problem's pumps, its place on the shelf: one for each of its speeds
	Best     *Backwards    // the cheapest over the years, asked backwards; nil without one
	Drawn    *Backwards    // the job as drawn, likewise, where its pump and pipe are among those chosen from

	Findings    []trace.Finding
	Assumptions []trace.Assumption
	Faults      []trace.Fault
}

// Backwards holds the questions asked the other way round.
type Backwards struct {
	Given   size.Given
	Highest []size.Room
	Longer  []size.Room
	Changes []size.Change
}

// reserves are the steps of reserve that designs are told apart by. Common
// practice, no source.
var reserves = []unit.Ratio{1.05, 1.10, 1.15, 1.20, 1.25}

// Choose finds the best pumps of a shelf with the best pipe for what the job
// wants; see package size. The shelf is in the form of the job's own pumps; ill
// names by index those that were not read whole. The job's runs give lengths and
// fittings, its prices the costs. Unread are the faults of reading the job, as
// with Solve; those of its pumps are ill's matter.
//
// The search goes on until it is done or the context is; what it has then is told
// as what it is. Progress is told while it runs, where tell is not nil.
func Choose(ctx context.Context, book *catalog.Book, j *job.Job, shelf []job.Pump, ill map[int]bool, want Want, tell func(size.Progress), unread ...trace.Fault) *Choice {
	own := *j
	var of []int
	own.Pumps, ill, of = spread(shelf, ill)
	m := &model{book: book, job: &own, out: &Result{Units: j.System(), Style: j.Style()}, pipes: map[job.PipeName]catalog.Pipe{}, losses: map[job.PipeName]catalog.Loss{}, curves: map[int]*hydro.Curve{}}
	for _, f := range unread {
		if !begins(f.Path, "/pumps") {
			m.unread = append(m.unread, f)
		}
	}
	c := &Choice{Name: j.Name, Units: j.System(), Style: j.Style(), Currency: j.Site.Currency, Speed: want.MostSpeed, Years: want.Years, Discount: want.Discount, Of: of}
	if c.Speed <= 0 {
		c.Speed = fastBad
	}
	if m.start() {
		inUse := j.Use
		if inUse == "" && len(j.Pumps) > 0 {
			inUse = j.Pumps[0].Name
		}
		m.choose(ctx, c, want, ill, inUse, tell)
	}
	c.Faults = append(c.Faults, m.out.Faults...)
	c.Findings = append(c.Findings, m.out.Findings...)
	c.Assumptions = append(c.Assumptions, m.out.Assumptions...)
	return c
}

func (m *model) choose(ctx context.Context, c *Choice, want Want, ill map[int]bool, inUse string, tell func(size.Progress)) {
	p := &size.Problem{Uniform: want.Uniform, Pairs: want.Pairs, MostSpeed: c.Speed, Reserves: reserves}
	if !m.choosable() || !m.energyOf(c, p, want) {
		return
	}
	m.priced, m.valves = m.prices(), map[string]checked{}
	m.without(c, p, ill, want.Kinds)
	if m.segments(p, want) && m.outlets(c, p) {
		m.shelf(p, c.Vault, ill)
		r, faults := size.Find(ctx, p, tell)
		if len(faults) > 0 {
			for _, f := range faults {
				m.fault("/runs", f.Code, f.Args...) // its path is the problem's, and its arguments name the run
			}
			return
		}
		c.Problem, c.Result = p, r
		m.stopped(r)
		m.backwards(c, inUse)
		m.notOpen(c)
		m.lasting(c)
		if !m.unpriced {
			m.sayCouplings(m.priced)
		}
	}
}

// choosable tells what cannot be sized at all.
func (m *model) choosable() bool {
	if where := m.voided(aspectFlow | aspectLevels | aspectCost | aspectCut); len(where) > 0 {
		m.find(trace.Finding{Message: trace.Message{Code: FindNoChoice, Args: []trace.Arg{trace.At("places", where...)}}, Severity: trace.Danger})
		return false
	}
	before := len(m.out.Faults)
	if len(m.job.FurtherPumps) > 0 {
		m.fault("/furtherPumps", CodeChooseFurther)
	}
	if len(m.job.Watercourses) == 0 || len(m.job.Runs) == 0 {
		m.fault("/watercourses", CodeNoFeed)
	}
	return len(m.out.Faults) == before
}

// energyOf fills what running costs.
func (m *model) energyOf(c *Choice, p *size.Problem, want Want) bool {
	if want.Years == 0 {
		c.Years = years
		m.assume("", AssumeYears, unit.Of(unit.Ratio(years), unit.KindCount), practice)
	}
	if !want.Rated {
		m.assume("", AssumeDiscount, unit.Of(want.Discount, unit.KindPercent), practice)
	}
	worth, ok := size.PresentWorth(c.Years, want.Discount)
	if !ok || c.Years < 0 {
		m.fault("", CodeChooseYears)
		return false
	}
	site := &m.job.Site
	hours, days := site.HoursPerDay.Or(defaultHours), site.DaysPerYear.Or(defaultDays)
	if site.HoursPerDay.IsZero() {
		m.assume("/site/hoursPerDay", AssumeHours, unit.Of(hours, unit.KindHours), practice)
	}
	if site.DaysPerYear.IsZero() {
		m.assume("/site/daysPerYear", AssumeDays, unit.Of(days, unit.KindCount), practice)
	}
	p.Energy = size.Energy{PerYear: hours * unit.Duration(days), Worth: worth}
	if site.Tariff.IsZero() || site.Currency == "" {
		c.Kilowatt = true // what that means is told once it is known whether there are prices
		return true
	}
	tariff, err := site.Tariff.Amount(m.job.Style())
	if err != nil {
		m.refuse("/site/tariff", err)
		return false
	}
	p.Energy.Tariff = costOf(tariff.Amount)
	return true
}

// costOf rounds an amount to the millionth; what is too great to be true comes
// out beyond size.MostCost, which is refused there.
func costOf(d decimal.Decimal) size.Cost {
	d = d.Shift(6).Round(0)
	if most := decimal.NewFromInt(int64(size.MostCost) + 1); d.GreaterThan(most) {
		return size.MostCost + 1
	}
	return size.Cost(d.IntPart())
}

// Money gives a cost as an amount in the job's currency.
func (c *Choice) Money(x size.Cost) unit.Money {
	return unit.Money{Amount: decimal.New(int64(x), -6), Currency: c.Currency}
}
