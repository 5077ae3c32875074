package arrange_test

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// in is an inch in metres.
const in = float64(unit.Inch)

// testVault is one of testdata/vaults.json: invented vaults of ours, in inches.
type testVault struct {
	Name, Why, Size         string
	Round                   bool
	Length, Width, Depth    float64
	FloorLength, FloorWidth float64
	Opening                 []float64
	Obstacles               []struct {
		Name     string
		From, To [3]float64
	}
	Standings []struct {
		Name  string
		Box   [3]float64
		Port  [3]float64
		Looks [3]float64
	}
	Hole struct {
		Wall          string
		Along, Height float64
	}
	Flow  float64 // US gallons a minute
	Valve string  // "spring", "swing"; none: no check valve
	Union bool
	Lip   float64
	Fits  string // "yes", "no", "unknown"
}

func point(p [3]float64) geom.Vec3 { return geom.Vec3{X: p[0] * in, Y: p[1] * in, Z: p[2] * in} }

func inches(x float64) unit.Length { return unit.Length(x * in) }

// family reads the test vaults.
func family(t testing.TB) []testVault {
	t.Helper()
	data, err := os.ReadFile("testdata/vaults.json")
	if err != nil {
		t.Fatal(err)
	}
	var all []testVault
	if err := json.Unmarshal(data, &all); err != nil {
		t.Fatal(err)
	}
	if len(all) < 10 {
		t.Fatalf("only %d vaults: the file is not the one", len(all))
	}
	return all
}

// input makes what the search is given.
func (v *testVault) input(t testing.TB, book *catalog.Book) arrange.Input {
	t.Helper()
	i := arrange.Input{Path: "/assembly"}
	i.Vault = layout.Vault{
		Round: v.Round, Length: inches(v.Length), Width: inches(v.Width), Depth: inches(v.Depth),
		FloorLength: inches(v.FloorLength), FloorWidth: inches(v.FloorWidth), Path: "/vault",
		Outlet: layout.Outlet{Wall: layout.Wall(v.Hole.Wall), Along: inches(v.Hole.Along), Height: inches(v.Hole.Height)},
	}
	if o := v.Opening; len(o) == 4 {
		i.Vault.Opening = layout.Opening{FromX: inches(o[0]), ToX: inches(o[1]), FromY: inches(o[2]), ToY: inches(o[3])}
	}
	for _, o := range v.Obstacles {
		i.Vault.Obstacles = append(i.Vault.Obstacles, layout.Obstacle{Name: o.Name, Box: geom.BoxOf(point(o.From), point(o.To))})
	}
	for _, s := range v.Standings {
		i.Standings = append(i.Standings, arrange.Standing{Pump: layout.Pump{
			Name: s.Name, Path: "/pumps/0", Blocks: []geom.Box{geom.BoxOf(geom.Vec3{}, point(s.Box))},
			Port: point(s.Port), Points: geom.Vec3{X: s.Looks[0], Y: s.Looks[1], Z: s.Looks[2]},
			Outlet: layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, Size: v.Size},
		}})
	}
	names := []string{"male adapter", "elbow 90", "elbow 45", "street elbow 90", "street elbow 45", "bulkhead fitting"}
	if v.Union {
		names = append(names, "union")
	}
	if v.Valve != "" {
		names = append(names, "check valve "+v.Valve)
	}
	i.Rules = arrange.Rules{Union: v.Union, Check: v.Valve != "", Out: v.Union}
	i.Pipes, i.Fittings = stock(t, book, v.Size, v.Flow, names)
	for k := range i.Fittings {
		if i.Fittings[k].Part.Kind == layout.Union {
			i.Fittings[k].Part.Splits = []layout.Split{{Lip: inches(v.Lip)}}
		}
	}
	return i
}

// prices are invented, for one, and for a metre of pipe.
var prices = map[string]float64{
	"male adapter": 1.5, "elbow 90": 2, "elbow 45": 2.5, "street elbow 90": 3, "street elbow 45": 3.5,
	"bulkhead fitting": 14, "check valve spring union-ended": 25, "union": 8, "check valve spring": 22, "check valve swing": 18, "pipe": 4,
	"reducing coupling": 3, "reducer bushing": 2.5,
}

// stock gives pipe and fittings of a size as the catalogue has them. What they
// take of head at a flow comes from the catalogue's losses with a friction
// factor of 0.02 (typed in, of the order of smooth pipe at these flows).
func stock(t testing.TB, book *catalog.Book, size string, gpm float64, names []string) (pipes []arrange.Pipe, fittings []arrange.Fitting) {
	t.Helper()
	const friction, gravity, viscosity = 0.02, 9.80665, 1.0e-6
	p, err := book.FindPipe("PVC Sch 40", size)
	if err != nil {
		t.Fatal(err)
	}
	bore := float64(p.Bore)
	speed := gpm * 3.785411784e-3 / 60 / (math.Pi / 4 * bore * bore)
	head := speed * speed / (2 * gravity)
	pipes = []arrange.Pipe{{Pipe: layout.PipeOf(p), Slope: friction / bore * head, Cost: prices["pipe"], Priced: true, AtHand: -1}}
	for _, name := range names {
		f, err := book.Fitting(name, size, nil)
		if err != nil {
			t.Fatal(err)
		}
		part, ok := layout.PartOf(f, "")
		if !ok {
			t.Fatalf("%s is no part of a chain", name)
		}
		loss, err := book.Loss(name, size)
		if err != nil {
			t.Fatal(err)
		}
		k := loss.Coefficient(speed*bore/viscosity, friction, p.Bore)
		fittings = append(fittings, arrange.Fitting{Part: part, Head: unit.Length(k * head), Cost: prices[name], Priced: true, AtHand: -1})
	}
	return pipes, fittings
}

func newBook(t testing.TB) *catalog.Book {
	t.Helper()
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	return book
}

// The family is fit to be searched: the hole lies on its wall, every fitting
// has its sizes and what it takes of head.
func TestFamily(t *testing.T) {
	book, seen := newBook(t), map[string]bool{}
	for _, v := range family(t) {
		if seen[v.Name] {
			t.Errorf("%s comes twice", v.Name)
		}
		seen[v.Name] = true
		i := v.input(t, book)
		if _, ok := i.Vault.Hole(); !ok {
			t.Errorf("%s: the hole lies off its wall", v.Name)
		}
		if len(i.Standings) == 0 || len(i.Pipes) != 1 || i.Pipes[0].Slope <= 0 || i.Pipes[0].Bore <= 0 {
			t.Errorf("%s: no pump or no pipe", v.Name)
		}
		for _, f := range i.Fittings {
			if !(f.Head > 0) || f.Part.In.TakeOff.Missing() || f.Part.In.Hub.Length <= 0 {
				t.Errorf("%s: %s has no head or no size", v.Name, f.Part.Kind)
			}
		}
		if v.Fits != "yes" && v.Fits != "no" && v.Fits != "unknown" {
			t.Errorf("%s: fits %q", v.Name, v.Fits)
		}
	}
}
