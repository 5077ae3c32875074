package design

import (
	"reflect"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/takeoff"
)

// items gives the lines of a code, by name and size.
func items(r *Result, code string) map[string]takeoff.Item {
	out := map[string]takeoff.Item{}
	for _, i := range r.Materials {
		if i.Code == code {
			out[strings.TrimSuffix(i.Name+", "+i.Size, ", ")] = i
		}
	}
	return out
}

func codes(fs []trace.Finding, code string) (n int) {
	for _, f := range fs {
		if f.Code == code {
			n++
		}
	}
	return n
}

// respelt writes every size and kind of a job in another way.
func respelt(j *job.Job) {
	pipe := func(p *job.PipeName) {
		switch {
		case p.Size == "":
		case strings.HasPrefix(p.Kind, "PVC Sch"):
			p.Kind, p.Size = "Schedule 40 PVC", p.Size+" in"
		case p.Size == "50":
			p.Size = "d50"
		}
	}
	for i := range j.Stock.Sticks {
		pipe(&j.Stock.Sticks[i].Pipe)
	}
	for i := range j.Stock.Offcuts {
		pipe(&j.Stock.Offcuts[i].Pipe)
	}
	for i := 0; i < len(j.Stock.Pieces); i += 2 {
		pipe(&j.Stock.Pieces[i].Pipe)
	}
	for i := 0; i < len(j.Runs); i += 2 {
		pipe(&j.Runs[i].Pipe)
		for k := range j.Runs[i].Fittings {
			j.Runs[i].Fittings[k].Fitting = strings.Replace(j.Runs[i].Fittings[k].Fitting, "elbow 90", "90 Ell", 1)
		}
	}
	for i := range j.Prices {
		item := strings.Replace(j.Prices[i].Item, "elbow 90,", "90 ell,", 1)
		item = strings.Replace(item, "PVC PN10 63", "PVC PN10, d63", 1)
		if rest, ok := strings.CutPrefix(item, "PVC Sch 40 "); ok {
			item = "PVC Sch 40, " + rest + " in"
		}
		j.Prices[i].Item = item
	}
}

// Names of pipe, fittings and stock mean the same however they are spelt: the
// list, the plans and the costs of a job do not change.
func TestSpellingDoesNotMatter(t *testing.T) {
	for _, name := range demo.Names() {
		book, j := read(t, name)
		want := Solve(book, j)
		other := j.Clone()
		respelt(other)
		if reflect.DeepEqual(j.Stock, other.Stock) || reflect.DeepEqual(j.Prices, other.Prices) {
			t.Fatalf("%s: nothing was spelt otherwise", name)
		}
		got := Solve(book, other)
		if !reflect.DeepEqual(want.Materials, got.Materials) {
			t.Errorf("%s:\n%+v\nbecomes\n%+v", name, want.Materials, got.Materials)
		}
		if len(want.Cutting) != len(got.Cutting) || len(want.Faults) != len(got.Faults) {
			t.Errorf("%s: %d plans and faults %v become %d and %v", name, len(want.Cutting), want.Faults, len(got.Cutting), got.Faults)
		}
		for i := range want.Options {
			if !reflect.DeepEqual(want.Options[i].First, got.Options[i].First) {
				t.Errorf("%s: option %d costs %v and %v", name, i, want.Options[i].First, got.Options[i].First)
			}
		}
	}
}

// The example's runs take 60 ft of 2 in pipe, 31-1/2 in of it from an offcut:
// three sticks of 20 ft, one of them opened by the cutting plan, and none as
// spare.
// What the plan leaves of a stick serves for the run.
// The run from the pump and the assembly of the old pond name one check valve
// in two sizes. It is bought once, and told.
func TestOneValveInTheVault(t *testing.T) {
	book, j := read(t, "old-pond")
	if f := j.Set("/runs/0/existing", ""); f != nil { // as if the old pipe were bought
		t.Fatal(f)
	}
	r := Solve(book, j)
	list := items(r, takeoff.CodeFitting)
	valves := 0.0
	for name, i := range list {
		if strings.HasPrefix(name, "check valve swing") {
			valves += i.Need.High
		}
	}
	// The run's three elbows are the assembly's two and one more.
	if valves != 1 || list["check valve swing, 2"].Need.High != 1 || list["elbow 90, 2"].Need.High != 2 || list["elbow 90, 1-1/4"].Need.High != 1 {
		t.Errorf("%g valves in %v", valves, list)
	}
	if n := codes(r.Findings, FindVaultSize); n != 2 {
		t.Errorf("%d findings, want one for the valve and one for the elbows", n)
	}
	for _, f := range r.Findings {
		if f.Code == FindVaultSize && (f.Severity != trace.Caution || !strings.HasPrefix(f.Path, "/runs/0/fittings/")) {
			t.Errorf("%+v", f)
		}
	}
	book, j = read(t, "hillside-cascade")
	r = Solve(book, j)
	if codes(r.Findings, FindVaultSize) != 0 || items(r, takeoff.CodeFitting)["tee, 2"].Need.High != 1 {
		t.Error("the cascade's run and assembly agree, and its tee is one")
	}
}

// The fittings of a run from the pump that no assembly holds are bought and
// cemented too.
func TestNoAssembly(t *testing.T) {
	book, j := read(t, "courtyard-rill")
	j.Assembly = job.Assembly{}
	r := Solve(book, j)
	n := 0.0
	for _, i := range items(r, takeoff.CodeFitting) {
		if i.Name != takeoff.NameCoupling {
			n += i.Need.High
		}
	}
	// By hand: 14.5 m in sticks of 3 m are five, with four couplings.
	if c := items(r, takeoff.CodeFitting)["coupling, d50"]; c.Need.High != 4 {
		t.Errorf("couplings: %+v", c)
	}
	want := 0
	for _, f := range j.Runs[0].Fittings {
		want += max(1, f.Count)
	}
	if n != float64(want) || len(items(r, takeoff.CodeCement)) != 1 {
		t.Errorf("%g fittings of %d, cement %v", n, want, items(r, takeoff.CodeCement))
	}
}

// Prices of the examples name parts of the catalogue: none is a slip of the
// pen. A price that names nothing is told with what comes near.
// TestItem reads the names of priced items.
// A price for a unit that is none is told, not taken as each.
// First cost: the pump, the pipe by length or by the stick, the fittings, a tee
// that two runs name once.
// What cover takes reaches, stays within the stock, and no fewer of one length
// alone would be cheaper.
// The sizes of cans, rolls and trucks are the job's: what is bought follows them,
// and none is assumed.
func TestPacksOfTheJob(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	before := Solve(book, j)
	j.Works.CementCan.SI, j.Works.TapeRoll.SI, j.Works.Truck.SI = unit.USPint/4, 10*unit.Foot, unit.CubicYard
	r := Solve(book, j)
	for _, c := range []struct {
		code string
		pack float64
	}{{takeoff.CodeCement, float64(unit.USPint / 4)}, {takeoff.CodePrimer, float64(unit.USPint / 4)}, {takeoff.CodeTape, float64(10 * unit.Foot)}, {takeoff.CodeLoads, float64(unit.CubicYard)}} {
		for _, i := range items(r, c.code) {
			if i.Pack.SI != c.pack || i.Buy.High*c.pack < i.Need.High*(1-1e-9) {
				t.Errorf("%s: %+v", c.code, i)
			}
		}
		if len(items(r, c.code)) != 1 {
			t.Errorf("%d of %s", len(items(r, c.code)), c.code)
		}
	}
	if len(items(before, takeoff.CodeLoads)) != 0 {
		t.Error("loads are told of a truck that nobody named")
	}
	for _, a := range r.Assumptions {
		if a.Code == takeoff.AssumeCan {
			t.Errorf("the can is assumed all the same: %+v", a)
		}
	}
}

// Every place that the list names stands in the job document.
func TestPlacesAreTheJobs(t *testing.T) {
	for _, name := range demo.Names() {
		book, j := read(t, name)
		j.Works = job.Works{Soil: "loma", LinerOverlap: job.Length{SI: -1}, UnderlayLayers: 99, SpareFittings: job.Ratio{SI: -1}}
		for _, works := range []job.Works{j.Works, {}} {
			j.Works = works
			r := Solve(book, j)
			check := func(path string) {
				if strings.HasPrefix(path, "/") && !stands(reflect.TypeFor[job.Job](), path) {
					t.Errorf("%s: %s is no place in a job", name, path)
				}
			}
			for _, a := range r.Assumptions {
				check(a.Path)
			}
			for _, f := range r.Findings {
				check(f.Path)
			}
			for _, f := range r.Faults {
				check(f.Path)
			}
			for _, i := range r.Materials {
				check(i.Path)
				for _, x := range i.Terms {
					check(x.From)
				}
			}
		}
	}
	if stands(reflect.TypeFor[job.Job](), "/layers") || !stands(reflect.TypeFor[job.Job](), "/works/underlayLayers") {
		t.Error("this test does not see")
	}
}

// stands tells that a type of the document has a path.
func stands(t reflect.Type, path string) bool {
	for _, token := range strings.Split(path, "/")[1:] {
		for t.Kind() == reflect.Pointer {
			t = t.Elem()
		}
		switch t.Kind() {
		case reflect.Slice:
			t = t.Elem()
			continue
		case reflect.Struct:
		default:
			return false
		}
		field, found := reflect.StructField{}, false
		for i := range t.NumField() {
			if name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ","); name == token {
				field, found = t.Field(i), true
			}
		}
		if !found {
			return false
		}
		t = field.Type
	}
	return true
}
