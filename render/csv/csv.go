// Package csv writes a table of package table as comma-separated values (RFC
// 4180: commas, quotes doubled, lines ended by CR LF) in UTF-8 with a byte order
// mark, without which spreadsheet programs show fractions wrongly. A text that
// such a program could take for a formula stands behind an apostrophe, which
// makes a text of it. Numbers are written with a point and without groups.
package csv

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"

	"plashet/table"
)

// Mark is the byte order mark before the first cell.
const Mark = "\ufeff"

// Write writes the table. The error is the writer's.
func Write(w io.Writer, t *table.Table) error {
	if _, err := io.WriteString(w, Mark); err != nil {
		return err
	}
	c := csv.NewWriter(w)
	c.UseCRLF = true
	line := make([]string, 0, len(t.Head))
	for _, h := range t.Head {
		line = append(line, Text(h))
	}
	if err := c.Write(line); err != nil {
		return err
	}
	for _, row := range t.Rows {
		line = line[:0]
		for _, cell := range row {
			if cell.Is {
				line = append(line, strconv.FormatFloat(cell.Number, 'f', -1, 64))
				continue
			}
			line = append(line, Text(cell.Text))
		}
		if err := c.Write(line); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

// Text makes a text safe to be opened by a spreadsheet program. A carriage
// return becomes a line break: alone it would end the line for some readers.
func Text(s string) string {
	safe := returns.Replace(s)
	if table.Risky(s) {
		return "'" + safe
	}
	return safe
}

var returns = strings.NewReplacer("\r\n", "\n", "\r", "\n")
