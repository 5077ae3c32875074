package design

import (
	"github.com/shopspring/decimal"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// written tells how numbers and amounts are written where the job does not say all
// of it: a default that everyone sees, and that has no weight in the design.
func (m *model) written() {
	n := &m.job.Numbers
	currency := m.job.Site.Currency
	if n.Decimal != "" && n.Thousands != "" && (currency == "" || n.Money != "" && n.Side != "") {
		return
	}
	example := decimal.RequireFromString("1234.5")
	args := []trace.Arg{trace.Str("number", m.out.Style.Write("1,234.5"))}
	if currency != "" {
		args = append(args, trace.Str("amount", unit.Money{Amount: example, Currency: currency}.Format(m.out.Style)))
	}
	source := practice
	if currency != "" {
		source = trace.Source{Title: "Unicode CLDR 48, ISO 4217", Basis: trace.BasisPublished}
	}
	m.assume("/numbers", AssumeNumbers, unit.Value{}, source, args...)
}
