package cli

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"plashet/engine/unit"
	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/store"
	"plashet/words"
)

func pricesCommand() *cobra.Command {
	return shelfCommand(shelfVerbs{
		use: "prices", one: "price", outName: "prices.csv", fields: shelf.PriceFields(), take: takePrices, give: keep.PricesCSV,
		in:        "Takes prices from a CSV file, one on each row, onto the shelf that all jobs share. A price\nthat is there for the same item, unit, currency and counter is changed.",
		inExample: "  plashet prices import list.csv\n  plashet prices import list.csv --column item=Description --currency USD --yes",
		out:       "Writes the prices in use as CSV, which plashet prices import reads back to the same values.\nA text that a spreadsheet would take for a formula has an apostrophe before it.",
	})
}

// takePrices takes all of a file in one save, so that one undo takes it back.
func takePrices(cmd *cobra.Command, s store.Store, f *csvFlags, t *shelf.Table, m shelf.Mapping, file string) (x taking, err error) {
	list, rev, err := keep.Prices(cmd.Context(), s)
	if err != nil {
		return x, blame(err)
	}
	if m.Currency == "" && len(list.List) > 0 {
		m.Currency = list.List[0].Currency
	}
	rows, faults := shelf.ReadPrices(t, m)
	next, moves, full := list.Take(rows)
	if full != nil {
		return x, errors.New(words.English().Row(*full, unit.US))
	}
	for _, c := range moves.Changed {
		_, _ = fmt.Fprintf(cmd.OutOrStdout(), "changed: %s; was %s\n", c.After.Line(), c.Before.Per())
	}
	for _, p := range moves.New {
		_, _ = fmt.Fprintf(cmd.OutOrStdout(), "new: %s\n", p.Line())
	}
	rowFaults(cmd, faults)
	x = taking{len(moves.New), len(moves.Changed), moves.Same, faults}
	if f.yes && x.fresh+x.changed > 0 {
		what := fmt.Sprintf(": %d new, %d changed", x.fresh, x.changed)
		if _, err := keep.SavePrices(cmd.Context(), s, rev.Number, next, fromFile(cmd, file, what)); err != nil {
			return x, taken(err)
		}
	}
	return x, nil
}
