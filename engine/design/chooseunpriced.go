package design

import (
	"plashet/engine/size"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// without finds out whether first costs can be known: there must be a currency,
// a pump with a price, and for each run a size in which all has one. Where one
// of these is missing the choice is made without: by the electricity and the
// reserve, and smaller pipe goes for cheaper.
func (m *model) without(c *Choice, p *size.Problem, ill map[int]bool, asked []string) {
	tell := func(code, path string, args ...trace.Arg) {
		m.unpriced, c.Unpriced, p.Unpriced = true, true, true
		m.find(trace.Finding{Message: trace.Message{Code: code, Args: args}, Path: path, Severity: trace.Caution})
	}
	priced := false
	for i := range m.job.Pumps {
		priced = priced || !ill[i] && !m.job.Pumps[i].Price.IsZero()
	}
	switch {
	case m.job.Site.Currency == "":
		tell(FindChooseCurrency, "/site/currency")
	case !priced:
		tell(FindChoosePumps, "/pumps")
	default:
		kinds, payer := m.trial().kinds(asked), m.payers()
		for i := range m.job.Runs {
			if item, lacks := m.trial().lacksPrice(i, kinds, payer); lacks {
				tell(FindChooseRun, at("/runs", i), trace.Str("name", m.job.Runs[i].Name), trace.Str("item", item))
				break
			}
		}
	}
	switch {
	case c.Unpriced && c.Kilowatt:
		// Nothing tells what a kWh costs: what is counted is kWh themselves.
		p.Energy.Tariff, p.Energy.Worth = size.Whole, c.Years
		m.find(trace.Finding{Message: trace.Message{Code: FindChooseEnergy}, Path: "/site/tariff", Severity: trace.Caution})
	case c.Kilowatt:
		c.Kilowatt = false
		m.find(trace.Finding{Message: trace.Message{Code: FindChooseTariff}, Path: "/site/tariff", Severity: trace.Caution})
	}
}

// lacksPrice tells that a run has sizes to choose from and a price for all its
// parts in none of them, with the first item that lacks one.
func (m *model) lacksPrice(i int, kinds []string, payer map[string]string) (item string, lacks bool) {
	drawn := m.job.Runs[i]
	if !drawn.Bore.IsZero() || drawn.Existing {
		return "", false
	}
	for _, kind := range kinds {
		for _, s := range m.book.PipeSizes(kind) {
			r := drawn
			r.Pipe.Kind, r.Pipe.Size = kind, s
			if _, ok := m.pipeChoice(i, r); !ok {
				continue
			}
			_, missing := m.runPrice(&r, payer)
			if missing == "" {
				return "", false
			}
			if item == "" {
				item = missing
			}
		}
	}
	return item, item != ""
}

// Energy gives a cost that is counted in kWh as energy.
func (c *Choice) Energy(x size.Cost) unit.Energy {
	return unit.Energy(float64(x) / float64(size.Whole) * float64(unit.KilowattHour))
}
