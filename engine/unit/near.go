package unit

import "strings"

// nearUnit names the unit of the kind's dimension whose spelling is nearest to
// what was typed, "" when none is near. The kind's own unit wins a tie, then
// the order of the table.
func nearUnit(typed string, k Kind, s System) string {
	var buf [maxUnit + 8]byte
	b, ok := normalForm(buf[:0], typed)
	if !ok {
		return ""
	}
	got := string(b)
	limit := 1
	if len(got) > 4 {
		limit = 2
	}
	best, bestAt := "", 2*limit+2
	try := func(r *unitRow, spelling string) {
		at := 2 * editDistance(got, spelling)
		if at > 2*limit || at >= 2*max(len(got), len(spelling)) {
			return
		}
		if r.name != k.UnitName(s) {
			at++
		}
		if at < bestAt {
			best, bestAt = r.name, at
		}
	}
	for i := range unitRows {
		r := &unitRows[i]
		if r.dim != k.Dim() {
			continue
		}
		try(r, normalName(r.name))
		for sp := range strings.FieldsSeq(r.spellings) {
			try(r, sp)
		}
	}
	return best
}

// editDistance counts the letters to insert, delete, replace or swap with
// their neighbour (optimal string alignment).
func editDistance(a, b string) int {
	var rows [3][maxUnit + 16]int
	if len(b) >= len(rows[0]) {
		return len(b)
	}
	for j := range len(b) + 1 {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		cur, prev, older := &rows[i%3], &rows[(i+2)%3], &rows[(i+1)%3]
		cur[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			cur[j] = min(prev[j]+1, cur[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				cur[j] = min(cur[j], older[j-2]+1)
			}
		}
	}
	return rows[len(a)%3][len(b)]
}
