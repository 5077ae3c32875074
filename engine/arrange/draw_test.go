package arrange_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// known is a vault built round an assembly that was laid and proved first: a
// search must find one that is at least as good.
type known struct {
	input arrange.Input
	chain layout.Input
	laid  layout.Assembly
	tags  map[string]bool
}

// drawer draws vaults from a seed.
type drawer struct {
	*rand.Rand
	t    testing.TB
	book *catalog.Book
	seed uint64
	tags map[string]bool
	snug bool // hardly any room is left to the walls
}

func pick[T any](r *drawer, of ...T) T { return of[r.IntN(len(of))] }

// between draws inches in eighths.
func (r *drawer) between(lo, hi float64) float64 { return lo + float64(r.IntN(int((hi-lo)*8)+1))/8 }

func (r *drawer) tagged(name string, yes bool) bool {
	if yes {
		r.tags[name] = true
	}
	return yes
}

func draw(t testing.TB, book *catalog.Book, seed uint64) *drawer {
	return &drawer{Rand: rand.New(rand.NewPCG(seed, 12)), t: t, book: book, seed: seed, tags: map[string]bool{}}
}

// pump draws a pump whose port is of a size, on its side or on its top.
func (r *drawer) pump(size string) arrange.Standing {
	l, w, h := r.between(7, 13), r.between(5.5, 7.5), r.between(5.5, 9)
	p := layout.Pump{
		Name: "lying", Path: "/pumps/0", Blocks: []geom.Box{geom.BoxOf(geom.Vec3{}, point([3]float64{l, w, h}))},
		Outlet: layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, Size: size},
	}
	if r.IntN(2) == 0 {
		p.Port, p.Points = point([3]float64{l, w / 2, r.between(2, h-2)}), geom.Vec3{X: 1}
	} else {
		p.Port, p.Points = point([3]float64{l - r.between(2, 4), w / 2, h}), geom.Vec3{Z: 1}
	}
	return arrange.Standing{Pump: p}
}

// parts draws a chain of n elbows with what the rules ask for.
func (r *drawer) parts(i *arrange.Input, n int) []layout.Laid {
	of := map[layout.Kind]layout.Part{}
	for _, f := range i.Fittings {
		of[f.Part.Kind] = f.Part
	}
	gap := func() layout.Join {
		if r.IntN(3) == 0 {
			return layout.Join{}
		}
		return layout.Join{By: layout.Faces, Distance: inches(r.between(0, 4))}
	}
	var middle []layout.Laid
	for range n {
		k := pick(r, layout.Elbow90, layout.Elbow90, layout.Elbow90, layout.Elbow45, layout.Street90)
		middle = append(middle, layout.Laid{Part: of[k], Roll: unit.Angle(r.IntN(8)*45) * unit.Degree, Next: gap()})
		if k == layout.Elbow90 && r.IntN(2) == 0 {
			middle[len(middle)-1].Roll = unit.Angle(r.IntN(4)*90) * unit.Degree
		}
	}
	put := func(p layout.Part) {
		k := r.IntN(len(middle) + 1)
		middle = append(middle[:k:k], append([]layout.Laid{{Part: p, Next: gap()}}, middle[k:]...)...)
	}
	if i.Rules.Union {
		put(of[layout.Union])
	}
	for _, k := range []layout.Kind{layout.CheckSpring, layout.CheckSwing} {
		if p, ok := of[k]; ok {
			put(p)
		}
	}
	all := append([]layout.Laid{{Part: of[layout.MaleAdapter], Next: gap()}}, middle...)
	all = append(all, layout.Laid{Part: of[layout.Bulkhead]})
	for k := range all {
		all[k].Mark = fmt.Sprintf("F%d", k+1)
	}
	return all
}
