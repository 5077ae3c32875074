package answer

import (
	"strings"
	"unicode/utf8"
)

// table prints rows with their columns in line, each to the left (l) or to the
// right (r), and no column that is empty below its head.
func (p *printer) table(sides string, rows [][]string) {
	wide := make([]int, len(rows[0]))
	for c := range wide {
		empty := true
		for i, row := range rows {
			wide[c] = max(wide[c], utf8.RuneCountInString(row[c]))
			empty = empty && (i == 0 || row[c] == "")
		}
		if empty {
			wide[c] = 0
		}
	}
	for _, row := range rows {
		var b strings.Builder
		for c, cell := range row {
			room := strings.Repeat(" ", max(0, wide[c]-utf8.RuneCountInString(cell)))
			if wide[c] == 0 {
				continue
			}
			if b.Len() > 0 {
				b.WriteString("  ")
			}
			if sides[c] == 'l' {
				b.WriteString(cell + room)
			} else {
				b.WriteString(room + cell)
			}
		}
		p.line("%s", strings.TrimRight(b.String(), " "))
	}
}
