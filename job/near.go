package job

import "strings"

// nearFaults is how many faults are told with a near name before the rest goes
// without: a file with more has another trouble than its spelling.
const nearFaults = 200

// nearest finds the word that was most likely meant: the one with the fewest
// slips (a letter wrong, missing, extra, or two swapped; capitals aside), at
// most one for every three letters typed. It gives "" when none is near: for a
// single letter every other one would be.
func nearest(typed string, words []string) string {
	const longest, mostNear = 64, 200 // a long list is a made-up one: no minutes are spent on it
	a := []rune(strings.ToLower(strings.TrimSpace(typed)))
	if len(a) == 0 || len(a) > longest {
		return ""
	}
	best, least := "", (len(a)+1)/3+1
	for _, w := range words[:min(len(words), mostNear)] {
		b := []rune(strings.ToLower(w))
		if len(b) > longest || abs(len(a)-len(b)) >= least {
			continue
		}
		if d := slips(a, b, least); d < least {
			best, least = w, d
		}
	}
	return best
}

// slips is the optimal string alignment distance (Damerau-Levenshtein without
// a second edit of a swapped pair), by dynamic programming over three rows. It
// stops early, and gives enough, once the distance cannot be less than that.
func slips(a, b []rune, enough int) int {
	var rows [3][65]int
	two, one, now := rows[0][:], rows[1][:], rows[2][:]
	for j := range len(b) + 1 {
		one[j] = j
	}
	for i := 1; i <= len(a); i++ {
		now[0] = i
		least := i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			now[j] = min(one[j]+1, now[j-1]+1, one[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				now[j] = min(now[j], two[j-2]+1)
			}
			least = min(least, now[j])
		}
		if least >= enough { // a swap from the row before costs one more than that row's least
			return enough
		}
		two, one, now = one, now, two
	}
	return one[len(b)]
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}
