package quote

import (
	"slices"

	"github.com/shopspring/decimal"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Offer is the price with all that it is made of. Amounts are whole coins.
type Offer struct {
	Lines  []Line  // the cost build-up, in the order of the input
	Groups []Built // the groups that cost something
	Cost   unit.Money
	Price  unit.Money // before discount and tax
	Profit unit.Money // Net less Cost

	Discount unit.Money
	Net      unit.Money // before tax
	Scopes   []Scope    // what the client sees; their prices add up to Net
	Taxes    []Taxed
	Rounding unit.Money // that the total is rounded by
	Total    unit.Money // Net, taxes and rounding

	Deposit unit.Money
	Stages  []Due
	Rest    unit.Money // of the total, after deposit and stages
	Planned bool       // deposit and stages could be worked out

	Complete bool // no line was left out
	Findings []trace.Finding
	Faults   []trace.Fault
}

// Line is a line of cost with its amount.
type Line struct {
	Cost
	Amount unit.Money
	Counts bool // it is in the sum
}

// Built is how a group's price comes about.
type Built struct {
	Group       Group
	Lines       unit.Money // sum of the lines
	Waste       unit.Money
	Contingency unit.Money
	Profit      unit.Money
	Price       unit.Money // before discount
	Net         unit.Money // after it
}

// Scope is a part of the work as the client knows it.
type Scope struct {
	Name  string
	Price unit.Money // before tax
}

// Taxed is a tax and what it is on.
type Taxed struct {
	Name   string
	Rate   decimal.Decimal
	Base   unit.Money
	Amount unit.Money
}

// Due is a stage and its amount.
type Due struct {
	Name   string
	Amount unit.Money
}

// work is one offer in the making.
type work struct {
	in     Input
	offer  Offer
	faults []trace.Fault
	scopes []string
	grid   map[Group][]decimal.Decimal // net price by scope
}

// Unpriced tells that nothing of the offer has an amount though something should:
// then it has no total yet, and a sum of nothing would be a lie.
func (o *Offer) Unpriced() bool {
	return !o.Complete && !slices.ContainsFunc(o.Lines, func(l Line) bool { return l.Counts })
}

// Off is the discount as it stands in a sum, below zero.
func (o *Offer) Off() unit.Money {
	return unit.Money{Amount: o.Discount.Amount.Neg(), Currency: o.Discount.Currency}
}

// Make works out the offer.
func Make(in Input) Offer {
	w := &work{in: in, grid: map[Group][]decimal.Decimal{}}
	w.offer.Complete = true
	if in.Currency == "" {
		w.fault(in.Path, FaultNoMoney)
		w.offer.Complete = false
		w.offer.Faults = w.faults
		return w.offer
	}
	w.lines()
	w.groups()
	w.discount()
	w.share()
	w.taxes()
	w.total()
	w.plan()
	w.judge()
	w.offer.Faults = w.faults
	return w.offer
}

func (w *work) money(a decimal.Decimal) unit.Money {
	return unit.Money{Amount: a, Currency: w.in.Currency}
}

// judge tells what the firm should know of its own offer.
func (w *work) judge() {
	find := func(code string, s trace.Severity, path string, args ...trace.Arg) {
		w.offer.Findings = append(w.offer.Findings, trace.Finding{
			Message: trace.Message{Code: code, Args: args}, Severity: s, Path: path,
		})
	}
	for _, b := range w.offer.Groups {
		p := w.in.Profit[b.Group]
		if b.Lines.Amount.IsPositive() && p.Markup.IsZero() && p.Margin.IsZero() {
			find(FindNoProfit, trace.Info, w.in.Path, trace.Str("group", string(b.Group)))
		}
	}
	if w.offer.Profit.Amount.IsNegative() {
		find(FindLoss, trace.Caution, w.in.Path, trace.Str("cost", w.offer.Cost.Format(w.in.Style)), trace.Str("price", w.offer.Net.Format(w.in.Style)))
	}
	if !w.offer.Complete {
		left := 0
		for _, l := range w.offer.Lines {
			if !l.Counts {
				left++
			}
		}
		find(FindPartial, trace.Caution, w.in.Path, trace.Num("lines", unit.Ratio(left), unit.KindCount))
	}
}
