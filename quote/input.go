package quote

import (
	"github.com/shopspring/decimal"

	"plashet/engine/unit"
)

// Group is a kind of cost.
type Group string

// The groups, in the order in which they are shown.
const (
	Material  Group = "material"
	Labour    Group = "labour"
	Equipment Group = "equipment"
	Other     Group = "other" // disposal, permit, electrician
)

// Groups gives all of them in order.
func Groups() []Group { return []Group{Material, Labour, Equipment, Other} }

// Cost is one line of what the job costs the firm.
type Cost struct {
	Group Group
	Name  string
	Scope string // what the client is told it belongs to; "" is the job as a whole

	// Quantity times Each, unless Total is given.
	Quantity decimal.Decimal
	Unit     string
	Each     unit.Money
	Total    unit.Money // used where its currency is set

	Wasted bool   // waste comes on top; what is bought in whole packs holds it already
	Path   string // in the job
}

// Input is a job's costs and how they become a price.
type Input struct {
	Currency string
	Style    unit.Style // that amounts in messages are written in
	Costs    []Cost

	Waste       decimal.Decimal // share of the lines that are Wasted, 0.05 for 5 %
	Contingency decimal.Decimal // share of cost
	Profit      map[Group]Profit
	Discount    decimal.Decimal // share of the price before tax

	Taxes    []Tax
	TaxByRow bool       // tax is rounded for each scope, not once on the sum
	RoundTo  unit.Money // the total is rounded to a multiple of it; zero: to coins
	Deposit  Share      // of the total
	Stages   []Stage    // of what is left; the rest falls due at the end
	Path     string     // of the offer in the job
}

// Profit is what is earned on a group: a markup or a margin, not both.
type Profit struct {
	Markup, Margin decimal.Decimal
	Path           string
}

// Share is a share of an amount or an amount.
type Share struct {
	Of     decimal.Decimal // 0.3 for 30 %
	Amount unit.Money      // used where its currency is set
	Path   string
}

// Stage is a payment on the way.
type Stage struct {
	Name string
	Share
}

// Tax is one rule of tax on sales.
type Tax struct {
	Name string
	Rate decimal.Decimal // 0.0825 for 8.25 %
	On   []Group         // the groups whose price it is on; empty: all
	Over bool            // it is also on the taxes before it in the list
	Path string
}
