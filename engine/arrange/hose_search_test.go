package arrange_test

import (
	"math"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// withHose allows a vault a hose of invented sizes, in inches: as thick as the
// pipe, bent to `radius`, an inch straight beyond each socket. It takes half as
// much again of head as pipe and costs two and a half times as much, so that least
// head and least cost ask for other lengths.
func withHose(i arrange.Input, radius float64) arrange.Input {
	own := func(l unit.Length) layout.Measure {
		return layout.Measure{Length: l, Source: trace.Source{Title: "invented", Basis: trace.BasisMeasured}}
	}
	p := &i.Pipes[0]
	e := layout.End{Kind: layout.Spigot, Hub: own(p.OD)}
	i.Hose = &arrange.Hose{
		Part: layout.Part{
			Kind: layout.Hose, Size: p.Size, In: e, Out: e,
			Curve: layout.Curve{Radius: inches(radius), Least: own(inches(radius)), Straight: inches(1), Longest: inches(60)},
		},
		Bend: 0.02, Slope: 1.5 * p.Slope, Cost: 2.5 * p.Cost, Priced: p.Priced,
	}
	return i
}

// askew is a low vault whose pump stands turned by 30 degrees against its walls,
// its port level: with one turn no elbow looks out square to the wall, because none
// turns by 30 degrees. (With three, rolled at odd angles, some do.)
func askew(t testing.TB, book *catalog.Book) arrange.Input {
	i := arrange.Input{Path: "/assembly", Rules: arrange.Rules{Union: true, Out: true, Elbows: 1, Best: 1000}}
	i.Vault = layout.Vault{Path: "/vault", Length: inches(30), Width: inches(24), Depth: inches(6.75)}
	i.Vault.Outlet = layout.Outlet{Wall: layout.Right, Along: inches(17), Height: inches(3.25)}
	i.Standings = []arrange.Standing{{
		Pump: layout.Pump{
			Name: "lying", Path: "/pumps/0", Blocks: []geom.Box{geom.BoxOf(geom.Vec3{}, point([3]float64{9, 6.5, 6.5}))},
			Port: point([3]float64{9, 3.25, 3.25}), Points: geom.Vec3{X: 1},
			Outlet: layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, Size: "1-1/2"},
		},
		Turns: []unit.Angle{30 * unit.Degree},
	}}
	i.Pipes, i.Fittings = stock(t, book, "1-1/2", 35, []string{"male adapter", "elbow 90", "elbow 45", "street elbow 90", "street elbow 45", "bulkhead fitting", "union"})
	return i
}

// Where a pump stands askew under a low lid nothing rigid fits, and a hose does.
func TestHoseWhereNothingRigidFits(t *testing.T) {
	i := askew(t, newBook(t))
	if out := searched(t, i); len(out.Layouts) > 0 {
		t.Errorf("%d rigid layouts: %s", len(out.Layouts), described(&out.Layouts[0].Chain))
	}
	out := searched(t, withHose(i, 6))
	if len(out.Layouts) == 0 {
		t.Fatalf("no layout with a hose: stage %q", out.Stage)
	}
	for k := range out.Layouts {
		l := &out.Layouts[k]
		t.Logf("%s\n%+v", described(&l.Chain), l.Worth)
		if len(l.Laid.Hoses) != 1 {
			t.Errorf("layout %d has %d hoses", k+1, len(l.Laid.Hoses))
		}
	}
	h := &out.Layouts[0].Laid.Hoses[0]
	if d := math.Abs(float64(h.Curve.Turn - 30*unit.Degree)); d > 1e-6 {
		t.Errorf("the hose turns by %v", h.Curve.Turn)
	}
}

// With a hose allowed, what fits without one is still there.
func TestHoseDropsNothingRigid(t *testing.T) {
	book, hoses := newBook(t), 0
	for _, v := range family(t) {
		if v.Name != "easy" && v.Name != "taper" && v.Name != "round" && v.Name != "lip" {
			continue
		}
		i := v.input(t, book)
		i.Rules.Best = 1000
		without := searched(t, i)
		with := searched(t, withHose(i, 6))
		for k := range without.Layouts {
			w := &without.Layouts[k].Worth
			found := false
			for j := range with.Layouts {
				l := &with.Layouts[j]
				found = found || len(l.Laid.Hoses) == 0 && l.Worth.Joints <= w.Joints && l.Worth.Head <= w.Head+1e-4 && l.Worth.Cost <= w.Cost+5e-3 && l.Worth.Slide <= w.Slide+1e-5
			}
			if !found {
				t.Errorf("%s: layout %d is gone: %+v", v.Name, k+1, w)
			}
		}
		for j := range with.Layouts {
			hoses += len(with.Layouts[j].Laid.Hoses)
		}
		t.Logf("%s: %d layouts without, %d with, claims %d and %d, %d and %d nodes", v.Name, len(without.Layouts), len(with.Layouts), without.Proof.Claim, with.Proof.Claim, without.Tally.Nodes, with.Tally.Nodes)
	}
	if hoses == 0 {
		t.Error("no layout with a hose among them")
	}
}
