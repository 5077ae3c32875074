package design

import (
	"github.com/shopspring/decimal"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/takeoff"
)

// prices gives the job's prices by the names of the list, each for what it is
// for.
func (m *model) prices() []takeoff.Price {
	if m.job.Site.Currency == "" {
		return nil // told in reading
	}
	out := make([]takeoff.Price, 0, len(m.job.Prices))
	for i, p := range m.job.Prices {
		path := at("/prices", i)
		amount, err := p.Price.Amount(m.job.Style())
		if err != nil {
			if !m.toldUnread(path + "/price") {
				m.refuse(path, err)
			}
			continue
		}
		per, ok := m.per(p.Unit)
		if !ok {
			m.fault(path+"/unit", takeoff.FaultPriceUnit, trace.Str("name", p.Item))
			continue
		}
		name, size := m.item(p.Item)
		out = append(out, takeoff.Price{Name: name, Size: size, Amount: amount, Per: per, Counter: p.Counter, Order: p.Order, Path: path})
	}
	return out
}

// firstCost adds the prices of a pump and of the further pumps to that of the
// runs; without a currency when one of them has no price in the job.
func (m *model) firstCost(runs unit.Money, pump int) unit.Money {
	price, ok := m.pumpPrice(&m.job.Pumps[pump])
	if !ok || runs.Currency == "" {
		return unit.Money{}
	}
	price.Amount = price.Amount.Add(runs.Amount)
	for _, f := range m.job.FurtherPumps {
		p, ok := m.byName(f.Pump)
		if !ok {
			return unit.Money{}
		}
		more, priced := m.pumpPrice(p)
		if !priced {
			return unit.Money{}
		}
		price.Amount = price.Amount.Add(more.Amount)
	}
	return price
}

// pumpPrice is what a pump costs: nothing where it is there already; false where
// it has no price in the job.
func (m *model) pumpPrice(p *job.Pump) (unit.Money, bool) {
	if p.Existing {
		return unit.Money{Currency: m.job.Site.Currency}, true
	}
	price, err := p.Price.Amount(m.job.Style())
	return price, err == nil && !p.Price.IsZero()
}

// runCost adds up the prices of the pipe, couplings and fittings of the runs, but
// for those that are there already; without a currency when one of them has no
// price in the job.
func (m *model) runCost(prices []takeoff.Price) unit.Money {
	sum := unit.Money{Currency: m.job.Site.Currency}
	lengths := map[job.PipeName]unit.Length{}
	for _, r := range m.job.Runs {
		if r.Existing {
			continue
		}
		lengths[m.named(r.Pipe)] += r.Length.SI
		_, joined, _ := m.couplings(prices, m.named(r.Pipe), r.Length.SI) // what has no price is told by sayCouplings
		sum.Amount = sum.Amount.Add(joined)
	}
	for name, run := range lengths {
		cost, ok := m.pipeCost(prices, name, run)
		if !ok {
			return unit.Money{}
		}
		sum.Amount = sum.Amount.Add(cost)
	}
	vault, beyond := m.runParts()
	if m.pumpRunStays() {
		vault.list = nil
	}
	for _, c := range []parts{vault, beyond} {
		for _, p := range c.list {
			each, ok := priceOf(prices, p.name, unit.Value{})
			if !ok {
				return unit.Money{}
			}
			sum.Amount = sum.Amount.Add(each.Amount.Amount.Mul(decimal.NewFromInt(int64(p.count))))
		}
	}
	return sum
}

// pipeCost prices pipe by length, or by the sticks it takes where it is priced
// by the stick.
func (m *model) pipeCost(prices []takeoff.Price, name job.PipeName, run unit.Length) (decimal.Decimal, bool) {
	if p, ok := priceOf(prices, name, unit.Of(run, unit.KindDistance)); ok {
		cost, err := p.Amount.Times(float64(run) / p.Per.SI)
		return cost.Amount, err == nil
	}
	_, sticks := m.stock(name)
	each, ok := priceOf(prices, name, unit.Value{})
	for i := range sticks {
		if sticks[i].price.Currency == "" && ok {
			sticks[i].price = each.Amount
		}
	}
	counts, short := cover(run, sticks)
	cost := decimal.Zero
	for i, c := range counts {
		if c > 0 && sticks[i].price.Currency == "" {
			return cost, false
		}
		cost = cost.Add(sticks[i].price.Amount.Mul(decimal.NewFromInt(int64(c))))
	}
	return cost, short == 0 && len(sticks) > 0
}

// priceOf finds the price of a name and size, or else of the name alone, for
// what is sold by the kind of a value; the zero value is for each, and of a pack
// it gives a piece's share: what is compared here is not bought yet.
func priceOf(prices []takeoff.Price, name job.PipeName, by unit.Value) (takeoff.Price, bool) {
	for _, size := range []string{name.Size, ""} {
		for _, p := range prices {
			if p.Name == name.Kind && p.Size == size && p.Per.Kind.Dim() == by.Kind.Dim() {
				if p.Per.Kind == unit.KindCount && p.Per.SI > 1 {
					p.Amount.Amount, p.Per = p.Amount.Amount.Div(decimal.NewFromFloat(p.Per.SI)), unit.Value{}
				}
				return p, true
			}
		}
	}
	return takeoff.Price{}, false
}
