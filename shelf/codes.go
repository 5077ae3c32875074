package shelf

import "plashet/engine/trace"

// Faults of a whole file. Nothing of it is taken.
const (
	FaultEmpty   = "shelf.csv.empty"   // FaultEmpty: there is no row with values. No args.
	FaultLarge   = "shelf.csv.large"   // FaultLarge: more bytes than are read. Args: limit
	FaultRows    = "shelf.csv.rows"    // FaultRows: more rows than are read. Args: limit
	FaultColumns = "shelf.csv.columns" // FaultColumns: more columns than are read. Args: line, limit
	FaultCell    = "shelf.csv.cell"    // FaultCell: a cell longer than is read. Args: line, limit
	FaultBinary  = "shelf.csv.binary"  // FaultBinary: no text but something else. Args: sort
	FaultQuote   = "shelf.csv.quote"   // FaultQuote: a quotation mark that was opened is not closed. Args: line
	FaultPrices  = "shelf.prices.form" // FaultPrices: no list of prices as this program writes it. Args: found
	FaultFull    = "shelf.full"        // FaultFull: more prices than a list may have. Args: limit
)

// Faults of what is said of columns and units (Mapping.Choose). Nothing is taken.
const (
	FaultChoice   = "shelf.choice.form"     // FaultChoice: no = between the field and what is chosen. Args: found, example
	FaultNoField  = "shelf.choice.field"    // FaultNoField: no such field. Args: found, expected
	FaultNoColumn = "shelf.choice.column"   // FaultNoColumn: no such column in the file. Args: found, expected
	FaultNoUnit   = "shelf.choice.unit"     // FaultNoUnit: no unit of what the field holds. Args: found, field, example
	FaultUnitless = "shelf.choice.unitless" // FaultUnitless: a field without units. Args: field
)

// Faults of a row. Each names its line in the file and, but for those of a
// whole row, its column.
const (
	FaultMissing  = "shelf.row.missing"  // FaultMissing: a field that must be there is empty. Args: line, field, column, example
	FaultUnmapped = "shelf.row.unmapped" // FaultUnmapped: no column was chosen for a field that must be there. Args: field, example
	FaultMoney    = "shelf.row.money"    // FaultMoney: no amount. Args: line, field, column, found, example
	FaultNegative = "shelf.row.negative" // FaultNegative: an amount below zero. Args: line, field, column, found, example
	FaultCurrency = "shelf.row.currency" // FaultCurrency: no currency is said, or none by this code. Args: line, field, column, found, example
	FaultUnit     = "shelf.row.unit"     // FaultUnit: nothing a price can be for. Args: line, field, column, found, example
	FaultDate     = "shelf.row.date"     // FaultDate: no day. Args: line, field, column, found, example
	FaultOrder    = "shelf.row.order"    // FaultOrder: no whole number from 0 to 999. Args: line, field, column, found, example
	FaultText     = "shelf.row.text"     // FaultText: an unprintable sign, or too long. Args: line, field, column, found, limit
	FaultTwice    = "shelf.row.twice"    // FaultTwice: the same price stands in an earlier row. Args: line, item, first
	FaultDiffers  = "shelf.row.differs"  // FaultDiffers: one pump has two values for what it has once. Args: line, field, column, found, first, name
	FaultPair     = "shelf.row.pair"     // FaultPair: a flow without a head, or a head without a flow. Args: line, name
	FaultComma    = "shelf.row.comma"    // FaultComma: a decimal comma where the decimals are said to have a point. Args: line, field, column, found
)

// fault makes one; its args are pairs of name and text.
func fault(code string, line int, pairs ...string) trace.Fault {
	f := trace.Fault{Message: trace.Message{Code: code}, Line: line}
	for i := 0; i+1 < len(pairs); i += 2 {
		f.Args = append(f.Args, trace.Str(pairs[i], pairs[i+1]))
	}
	return f
}
