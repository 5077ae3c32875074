package quote

import "plashet/engine/trace"

// Faults. Arguments: the name of the line; the value as read.
const (
	FaultCurrency = "quote.currency"      // name, currency, wanted: an amount in another currency
	FaultNegative = "quote.negative"      // name: a price or a quantity below zero
	FaultShare    = "quote.share"         // name, share: a share outside what it can be
	FaultMargin   = "quote.margin"        // name: a margin of the whole price, or more
	FaultBoth     = "quote.both"          // name: a markup and a margin for one group
	FaultStages   = "quote.stages"        // deposit and stages come to more than the total
	FaultNoMoney  = "quote.currency.none" // no currency
)

// Findings.
const (
	FindLoss     = "quote.loss"     // the price before tax is below cost
	FindNoProfit = "quote.noprofit" // no markup and no margin is set for a group that costs something
	FindPartial  = "quote.partial"  // lines were left out of the sum
)

func (w *work) fault(path, code string, args ...trace.Arg) {
	w.faults = append(w.faults, trace.Fault{Path: path, Message: trace.Message{Code: code, Args: args}})
}
