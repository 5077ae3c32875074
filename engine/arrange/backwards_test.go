package arrange_test

import (
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// backwards draws a known assembly of n elbows and builds the vault round it;
// false where the seed gives none that can be built.
func backwards(t testing.TB, book *catalog.Book, seed uint64, n int) (*known, bool) {
	r := draw(t, book, seed)
	size := pick(r, "1-1/2", "1-1/2", "2")
	union := r.IntN(8) != 0
	i := arrange.Input{Path: "/assembly", Rules: arrange.Rules{Union: union, Out: union, Check: true, Best: 1000}}
	names := []string{
		"male adapter", "elbow 90", "elbow 45", "street elbow 90", "bulkhead fitting",
		pick(r, "check valve spring", "check valve spring", "check valve swing"),
	}
	if union {
		names = append(names, "union")
	}
	i.Pipes, i.Fittings = stock(t, book, size, 30, names)
	if lip := r.tagged("lip", union && r.IntN(3) == 0); lip {
		for k := range i.Fittings {
			if i.Fittings[k].Part.Kind == layout.Union {
				i.Fittings[k].Part.Splits = []layout.Split{{Lip: inches(0.125)}}
			}
		}
	}
	i.Standings = []arrange.Standing{r.pump(size)}
	parts := r.parts(&i, n)
	k, ok := r.around(i, parts, unit.Angle(r.IntN(4)*90)*unit.Degree)
	if !ok {
		return nil, false
	}
	v := &k.input.Vault
	r.tagged("taper", v.FloorLength > 0 && !v.Round)
	r.tagged("round", v.Round)
	return k, true
}
