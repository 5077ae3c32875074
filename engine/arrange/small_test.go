package arrange_test

import (
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/geom"
	"plashet/engine/layout"
)

// smallVault draws a small case.
func smallVault(t testing.TB, book *catalog.Book, seed uint64) arrange.Input {
	r := draw(t, book, seed)
	half := func(lo, hi float64) float64 { return lo + float64(r.IntN(int((hi-lo)*2)+1))/2 }
	union, valve := r.IntN(3) != 0, r.IntN(3) == 0
	i := arrange.Input{Path: "/assembly", Rules: arrange.Rules{Union: union, Out: union, Check: valve, Elbows: 2, Best: 1000}}
	names := []string{"male adapter", "elbow 90", "bulkhead fitting"}
	if r.IntN(2) == 0 {
		names = append(names, "elbow 45")
	}
	if r.IntN(3) == 0 {
		names = append(names, "street elbow 90")
	}
	if union {
		names = append(names, "union")
	}
	if valve {
		names = append(names, pick(r, "check valve spring", "check valve swing"))
	}
	i.Pipes, i.Fittings = stock(t, book, "1-1/2", 35, names)
	size := [3]float64{half(6, 9), half(5, 7), half(5, 8)}
	p := layout.Pump{
		Name: "M", Path: "/pumps/0", Blocks: []geom.Box{geom.BoxOf(geom.Vec3{}, point(size))},
		Outlet: layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, Size: "1-1/2"},
	}
	if r.IntN(2) == 0 {
		p.Port, p.Points = point([3]float64{size[0], size[1] / 2, half(2, size[2]-2)}), geom.Vec3{X: 1}
	} else {
		p.Port, p.Points = point([3]float64{half(3, size[0]-2), size[1] / 2, size[2]}), geom.Vec3{Z: 1}
	}
	i.Standings = []arrange.Standing{{Pump: p}}
	v := &i.Vault
	v.Path, v.Length, v.Width, v.Depth = "/vault", inches(half(13, 20)), inches(half(13, 20)), inches(half(14, 24))
	v.Outlet.Wall = pick(r, layout.Left, layout.Right, layout.Front, layout.Back)
	across := v.Width
	if v.Outlet.Wall == layout.Front || v.Outlet.Wall == layout.Back {
		across = v.Length
	}
	v.Outlet.Along = inches(half(3, float64(across)/in-3))
	v.Outlet.Height = inches(half(4, float64(v.Depth)/in-3))
	if r.IntN(3) == 0 {
		lo := point([3]float64{half(0, 14), half(0, 14), half(4, 16)})
		v.Obstacles = []layout.Obstacle{{Name: "block", Box: geom.BoxOf(lo, lo.Add(point([3]float64{half(2, 8), half(2, 8), half(1, 5)})))}}
	}
	return i
}
