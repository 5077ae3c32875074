package catalog

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
)

// words cuts a trade name into lower-case words and numbers: "Sch40 PVC" gives
// sch, 40, pvc. Plurals and spellings of the same word become one.
func words(name string) []string {
	var out []string
	var cur strings.Builder
	kind := 0 // of the word being read: 0 none, 1 letters, 2 digits
	flush := func() {
		if cur.Len() > 0 {
			out = append(out, spelling(cur.String()))
			cur.Reset()
		}
		kind = 0
	}
	for _, r := range strings.ToLower(name) {
		k := 0
		switch {
		case unicode.IsLetter(r):
			k = 1
		case unicode.IsDigit(r), r == '.' && kind == 2:
			k = 2
		}
		if k != kind {
			flush()
		}
		if k != 0 {
			cur.WriteRune(r)
			kind = k
		}
	}
	flush()
	return out
}

func spelling(w string) string {
	if len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") {
		w = w[:len(w)-1]
	}
	switch w {
	case "schedule":
		return "sch"
	case "ell", "el":
		return "elbow"
	}
	return w
}

// nameKey folds a name so that word order, case, hyphens and words that tell
// nothing here do not matter: "90° elbow" and "Elbow 90" have one key.
func nameKey(ws []string) string {
	kept := make([]string, 0, len(ws))
	for _, w := range ws {
		switch w {
		case "pvc", "pipe", "valve", "fitting", "deg", "degree", "the":
			continue
		}
		kept = append(kept, w)
	}
	slices.Sort(kept)
	return strings.Join(slices.Compact(kept), " ")
}

// near gives up to three of the names that look most like what was asked, by
// the share of letter pairs they have in common (Dice's coefficient).
func near(asked string, names []string) []string {
	type scored struct {
		name  string
		score float64
	}
	want := pairs(asked)
	var best []scored
	for _, n := range names {
		if s := dice(want, pairs(n)); s >= 0.3 {
			best = append(best, scored{n, s})
		}
	}
	slices.SortStableFunc(best, func(a, b scored) int { return cmp.Compare(b.score, a.score) })
	out := make([]string, min(3, len(best)))
	for i := range out {
		out[i] = best[i].name
	}
	return out
}

// pairs counts the neighbouring letters of each word. A very long text is cut,
// so that nonsense costs nothing.
func pairs(s string) map[[2]rune]int {
	m := map[[2]rune]int{}
	for _, w := range words(s[:min(len(s), 100)]) {
		last := ' '
		for _, r := range w {
			m[[2]rune{last, r}]++
			last = r
		}
	}
	return m
}

func dice(a, b map[[2]rune]int) float64 {
	shared, total := 0, 0
	for p, n := range a {
		shared += min(n, b[p])
		total += n
	}
	for _, n := range b {
		total += n
	}
	if total == 0 {
		return 0
	}
	return 2 * float64(shared) / float64(total)
}
