package arrange_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// twoSizes gives pipe and fittings from one size to another at a flow: all names
// in both, the male adapter in the first and the bulkhead fitting in the second,
// and the reducers between them.
func twoSizes(t testing.TB, book *catalog.Book, from, to string, gpm float64, names, reducers []string) (pipes []arrange.Pipe, fittings []arrange.Fitting) {
	t.Helper()
	for _, size := range []string{from, to} {
		p, f := stock(t, book, size, gpm, names)
		p[0].Cost *= float64(p[0].OD) / (1.9 * in) // the larger pipe costs more
		f = slices.DeleteFunc(f, func(f arrange.Fitting) bool {
			k := f.Part.Kind
			return k == layout.MaleAdapter && size != from || k == layout.Bulkhead && size != to
		})
		pipes, fittings = append(pipes, p...), append(fittings, f...)
	}
	for _, name := range reducers {
		f, err := book.Fitting(name, from+" x "+to, nil)
		if err != nil {
			t.Fatal(err)
		}
		part, ok := layout.PartOf(f, "")
		if !ok {
			t.Fatalf("%s is no part of a chain", name)
		}
		loss, err := book.Loss(name, from+" x "+to)
		if err != nil {
			t.Fatal(err)
		}
		const gravity = 9.80665
		bore := math.Min(float64(pipes[0].Bore), float64(pipes[1].Bore)) // K is on the smaller
		speed := gpm * 3.785411784e-3 / 60 / (math.Pi / 4 * bore * bore)
		k := loss.Coefficient(1e5, 0, 0)
		fittings = append(fittings, arrange.Fitting{Part: part, Head: unit.Length(k * speed * speed / (2 * gravity)), Cost: prices[name], Priced: true, AtHand: -1})
	}
	return pipes, fittings
}

// reduced draws an assembly of n elbows whose size changes in one of its legs, and
// builds the vault round it; false where the seed gives none.
func reduced(t testing.TB, book *catalog.Book, seed uint64, n int) (*known, bool) {
	r := draw(t, book, seed)
	sizes := pick(r, [2]string{"1-1/2", "2"}, [2]string{"2", "1-1/2"}, [2]string{"1-1/4", "2"})
	union := r.IntN(8) != 0
	i := arrange.Input{Path: "/assembly", Rules: arrange.Rules{Union: union, Out: union, Check: true, Best: 1000, Elbows: n}}
	names := []string{"male adapter", "elbow 90", "elbow 45", "street elbow 90", "bulkhead fitting", pick(r, "check valve spring", "check valve spring", "check valve swing")}
	if union {
		names = append(names, "union")
	}
	reducers := pick(r, []string{"reducing coupling"}, []string{"reducer bushing"}, []string{"reducing coupling", "reducer bushing"})
	i.Pipes, i.Fittings = twoSizes(t, book, sizes[0], sizes[1], 30, names, reducers)
	i.Standings = []arrange.Standing{r.pump(sizes[0])}
	of := map[string]map[layout.Kind]layout.Part{sizes[0]: {}, sizes[1]: {}}
	var change []layout.Part
	for _, f := range i.Fittings {
		if f.Part.Kind == layout.Reducer {
			change = append(change, f.Part)
			continue
		}
		of[f.Part.Size][f.Part.Kind] = f.Part
	}
	one := i
	one.Fittings = slices.DeleteFunc(slices.Clone(i.Fittings), func(f arrange.Fitting) bool { return f.Part.Size == sizes[1] && f.Part.Kind != layout.Bulkhead })
	parts := r.parts(&one, n)
	at := 1 + r.IntN(len(parts)-1) // the reducer comes before this one
	for k := at; k < len(parts); k++ {
		parts[k].Part = of[sizes[1]][parts[k].Kind]
	}
	reducer := layout.Laid{Part: pick(r, change...), Next: layout.Join{}}
	if reducer.Out.Kind == layout.Socket && r.IntN(2) == 0 {
		reducer.Next = layout.Join{By: layout.Faces, Distance: inches(r.between(0, 3))}
	}
	if reducer.In.Kind == layout.Spigot || parts[at-1].Out.Kind == layout.Spigot {
		parts[at-1].Next = layout.Join{}
	}
	parts = slices.Insert(parts, at, reducer)
	for k := range parts {
		parts[k].Mark = fmt.Sprintf("F%d", k+1)
		if k > 0 && (parts[k].In.Kind == layout.Spigot || parts[k-1].Out.Kind == layout.Spigot) {
			parts[k-1].Next = layout.Join{}
		}
	}
	r.tagged("bushing", reducer.In.Kind == layout.Spigot || reducer.Out.Kind == layout.Spigot)
	r.tagged("at the wall", at == len(parts)-2)
	r.tagged("wider", reducer.Out.Kind == layout.Spigot)
	return r.around(i, parts, unit.Angle(r.IntN(4)*90)*unit.Degree)
}

// smallReduced draws a small case whose hole is of another size than the port.
func smallReduced(t testing.TB, book *catalog.Book, seed uint64) arrange.Input {
	i := smallVault(t, book, seed)
	var names []string
	for _, f := range i.Fittings {
		names = append(names, string(f.Part.Kind))
	}
	to := [...]string{"2", "1-1/4"}[seed%2]
	reducers := [...][]string{{"reducing coupling"}, {"reducer bushing"}, {"reducing coupling", "reducer bushing"}}[seed%3]
	i.Pipes, i.Fittings = twoSizes(t, book, "1-1/2", to, 35, names, reducers)
	return i
}
