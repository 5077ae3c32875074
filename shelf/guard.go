package shelf

import (
	"strings"

	"plashet/table"
)

// A spreadsheet takes some texts for formulas (table.Risky) and runs them when
// the file is opened. Such a cell goes out with an apostrophe before it, which a
// spreadsheet shows as text, and comes in without.

// guarded is a cell as it goes out. A text that begins with an apostrophe before
// such a text, or before another apostrophe, gets one more, so that unguarded
// gives back what stood there.
func guarded(cell string) string {
	if table.Risky(strings.TrimLeft(cell, "'")) {
		return "'" + cell
	}
	return cell
}

// unguarded takes the apostrophe away again, and no other.
func unguarded(cell string) string {
	if inner, ok := strings.CutPrefix(cell, "'"); ok && table.Risky(strings.TrimLeft(inner, "'")) {
		return inner
	}
	return cell
}
