package design

import (
	"strings"

	"github.com/shopspring/decimal"

	"plashet/engine/unit"
	"plashet/job"
)

// larger names the next size up in which pipe and fittings are to be had.
func (m *model) larger(p job.PipeName) (job.PipeName, bool) {
	sizes := m.book.PipeSizes(p.Kind)
	here, err := m.pipe(p)
	if err != nil {
		return p, false
	}
	best := job.PipeName{}
	bore := unit.Length(0)
	for _, s := range sizes {
		q, err := m.pipe(job.PipeName{Kind: p.Kind, Size: s})
		if err != nil || q.Bore <= here.Bore || (bore > 0 && q.Bore >= bore) {
			continue
		}
		if _, err := m.loss("elbow 90", s); err != nil {
			continue // no fittings of that size
		}
		best, bore = job.PipeName{Kind: p.Kind, Size: s}, q.Bore
	}
	return best, bore > 0
}

// options tries every pump in hand on the pipe as drawn and with every run one
// and two sizes larger.
func (m *model) options(pump int, vault unit.Length) []Option {
	var out []Option
	asDrawn := m.job
	defer func() { m.job, m.quiet = asDrawn, false }()
	m.quiet = true
	for up := 0; up <= 2; up++ {
		j := asDrawn.Clone()
		m.job = j
		changed := up == 0
		for range up {
			for i := range j.Runs {
				if next, ok := m.larger(j.Runs[i].Pipe); ok && j.Runs[i].Bore.IsZero() {
					j.Runs[i].Pipe = next
					changed = true
				}
			}
		}
		if !changed {
			continue
		}
		var sizes []string
		for _, r := range j.Runs {
			sizes = append(sizes, r.Pipe.Size)
		}
		for i := range j.Pumps {
			d, ok := m.deliver(i, vault)
			if !ok {
				continue
			}
			o := Option{Pump: d.Pump, Pipe: strings.Join(sizes, ", "), Flow: d.Flow, Power: d.Power, Cost: d.Cost, AsIs: up == 0 && i == pump}
			for _, f := range d.Feeds {
				o.Feeds = append(o.Feeds, f.Flow)
			}
			if d.Share != nil {
				o.Reach = d.Share.Reach
			}
			o.First = m.firstCost(i)
			out = append(out, o)
		}
	}
	return out
}

// firstCost adds up the prices of a pump and of the pipe and fittings of the
// runs; without a currency when one of them has no price in the job.
func (m *model) firstCost(pump int) unit.Money {
	currency := m.job.Site.Currency
	sum, ok := m.job.Pumps[pump].Price.Amount(currency)
	if ok != nil || m.job.Pumps[pump].Price.IsZero() {
		return unit.Money{}
	}
	for _, r := range m.job.Runs {
		each, by, known := m.price(r.Pipe.Kind+" "+r.Pipe.Size, currency)
		if !known {
			return unit.Money{}
		}
		length := decimal.NewFromFloat(float64(r.Length.SI))
		switch by {
		case "ft":
			length = decimal.NewFromFloat(float64(r.Length.SI / unit.Foot))
		case "m":
		default:
			return unit.Money{}
		}
		sum.Amount = sum.Amount.Add(each.Amount.Mul(length))
		for _, f := range r.Fittings {
			name := strings.TrimSuffix(strings.TrimSuffix(f.Fitting, " run"), " branch")
			size := f.Size
			if size == "" {
				size = r.Pipe.Size
			}
			each, _, known := m.price(name+", "+size, currency)
			if !known {
				return unit.Money{}
			}
			sum.Amount = sum.Amount.Add(each.Amount.Mul(decimal.NewFromInt(int64(max(1, f.Count)))))
		}
	}
	return sum
}

func (m *model) price(item, currency string) (unit.Money, string, bool) {
	for _, p := range m.job.Prices {
		if p.Item == item {
			v, err := p.Price.Amount(currency)
			return v, p.Unit, err == nil
		}
	}
	return unit.Money{}, "", false
}
