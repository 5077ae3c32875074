package design

import (
	"github.com/shopspring/decimal"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/takeoff"
)

// FindCouplings tells that first costs leave out the couplings between sticks,
// for they have no price. Args: item (the first of them), count (in the runs as
// drawn).
const FindCouplings = "design.first.couplings"

// couplings gives how many couplings a run of pipe takes, in sticks with plain
// ends as long as the job's longest, and what they cost together. Where the job
// has no sticks of the pipe, its sticks of other pipe tell the length; without any
// it is not known, and none are counted. False where they have no price.
func (m *model) couplings(prices []takeoff.Price, name job.PipeName, run unit.Length) (count int, cost decimal.Decimal, priced bool) {
	pipe, err := m.pipe(name)
	if err != nil || !pipe.Rigid || !pipe.SolventWeld {
		return 0, cost, true
	}
	if _, err := m.book.Fitting(takeoff.NameCoupling, name.Size, nil); err != nil {
		return 0, cost, true // as the material list, which has none then
	}
	long, own := unit.Length(0), false
	for i := range m.job.Stock.Sticks {
		s := &m.job.Stock.Sticks[i]
		mine := m.named(s.Pipe) == name
		if s.Bell {
			if mine {
				return 0, cost, true
			}
			continue
		}
		if mine && !own {
			long, own = 0, true
		}
		if mine == own {
			long = max(long, s.Length.SI)
		}
	}
	if long <= 0 || run <= long {
		return 0, cost, true
	}
	count = takeoff.Couplings(int(takeoff.Sticks(run, long)))
	each, ok := priceOf(prices, job.PipeName{Kind: takeoff.NameCoupling, Size: name.Size}, unit.Value{})
	if !ok {
		return count, cost, false
	}
	return count, each.Amount.Amount.Mul(decimal.NewFromInt(int64(count))), true
}

// sayCouplings tells where first costs leave couplings out.
func (m *model) sayCouplings(prices []takeoff.Price) {
	item, left := "", 0
	for i := range m.job.Runs {
		r := &m.job.Runs[i]
		name := m.named(r.Pipe)
		n, _, priced := m.couplings(prices, name, r.Length.SI)
		if priced || !r.Bore.IsZero() || r.Existing {
			continue
		}
		if left += n; item == "" {
			item = takeoff.NameCoupling + ", " + name.Size
		}
	}
	if left > 0 {
		m.find(trace.Finding{
			Message: trace.Message{Code: FindCouplings, Args: []trace.Arg{trace.Str("item", item), trace.Num("count", unit.Ratio(left), unit.KindCount)}},
			Path:    "/prices", Severity: trace.Info,
		})
	}
}
