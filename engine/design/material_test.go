package design

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"plashet/demo"
	"plashet/engine/catalog"
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
func TestSticksOfTheCascade(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	r := Solve(book, j)
	p := items(r, takeoff.CodePipe)["PVC Sch 40, 2"]
	if p.Buy.High != 3 || p.Pack.SI != float64(20*unit.Foot) || p.Spare.High != 0 || p.Laid.Planned != 1 || p.Laid.Joined != 2 {
		t.Errorf("%+v", p)
	}
	if !p.Priced || p.Total.High.Format() != "102.60 USD" { // 3 x 34.20
		t.Errorf("%s", p.Total.High.Format())
	}
	// By hand: 60 ft less the pieces, 5-1/2 + 3-1/8 + 2-3/4 + 2-3/4 in from the
	// offcut and twice 8 ft 4-1/2 in and 38-3/8 in from the stick.
	if want := 60*12 - (5.5 + 3.125 + 2.75 + 2.75) - (2*100.5 + 38.375); math.Abs(float64(p.Laid.Run/unit.Inch)-want) > 0.2 {
		t.Errorf("the rest of the runs is %g in, by hand %g", float64(p.Laid.Run/unit.Inch), want)
	}
	if hose := items(r, takeoff.CodePipe)["PVC Sch 40, 1-1/4"]; !hose.Buy.One() || math.Abs(hose.Buy.Low-float64(22*unit.Foot)) > 1e-9 {
		t.Errorf("22 ft by length: %+v", hose.Buy)
	}
}

// What the plan leaves of a stick serves for the run.
func TestRunsTakeWhatThePlanLeaves(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	j.Stock.Offcuts = nil
	j.Stock.Sticks = j.Stock.Sticks[:1] // 10 ft
	j.Stock.Pieces = []job.Piece{{Pipe: j.Runs[0].Pipe, Length: job.Length{SI: 6 * unit.Foot}, Count: 3}}
	j.Assembly = job.Assembly{}
	j.Runs[1].Length.SI = 30*unit.Foot - j.Runs[0].Length.SI
	r := Solve(book, j)
	p := items(r, takeoff.CodePipe)["PVC Sch 40, 2"]
	// By hand: three sticks for three pieces of 6 ft leave 4 ft each less a cut,
	// so the other 12 ft of the run want 1/4 in or so more: a fourth stick.
	if p.Laid.Planned != 3 || p.Laid.Joined != 1 || math.Abs(float64(p.Laid.Rest/unit.Foot)-12) > 0.1 {
		t.Errorf("%+v", p.Laid)
	}
	j.Runs[1].Length.SI -= 2 * unit.Foot
	if p := items(Solve(book, j), takeoff.CodePipe)["PVC Sch 40, 2"]; p.Buy.High != 3 || math.Abs(float64(p.Laid.Run-10*unit.Foot)) > 1e-9 {
		t.Errorf("28 ft from three sticks: %+v", p)
	}
}

// The run from the pump and the assembly of the old pond name one check valve
// in two sizes. It is bought once, and told.
func TestOneValveInTheVault(t *testing.T) {
	book, j := read(t, "old-pond")
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
		n += i.Need.High
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
func TestPricesOfTheExamples(t *testing.T) {
	for _, name := range demo.Names() {
		book, j := read(t, name)
		if n := codes(Solve(book, j).Findings, takeoff.FindPriceUnused); n != 0 {
			t.Errorf("%s: %d prices are told as unknown", name, n)
		}
		j.Prices = append(j.Prices, job.Price{Item: "elbwo 90, 2", Price: j.Prices[0].Price})
		r := Solve(book, j)
		if codes(r.Findings, takeoff.FindPriceUnused) != 1 {
			t.Errorf("%s: the slip is not told", name)
		}
		for _, f := range r.Findings {
			if f.Code == takeoff.FindPriceUnused && (len(f.Args) != 3 || !strings.Contains(f.Args[2].Text, "elbow 90")) {
				t.Errorf("%s: %+v", name, f)
			}
		}
	}
}

// TestItem reads the names of priced items.
func TestItem(t *testing.T) {
	book, j := read(t, "old-pond")
	m := &model{book: book, job: j, out: &Result{Units: unit.US}, pipes: map[job.PipeName]catalog.Pipe{}, quiet: true}
	for _, c := range []struct{ item, name, size string }{
		{"PVC Sch 40 2", "PVC Sch 40", "2"},
		{"PVC Sch 40, 2", "PVC Sch 40", "2"},
		{"PVC Sch 40,2 in", "PVC Sch 40", "2"},
		{"pipe PVC Sch 40, 2", "PVC Sch 40", "2"},
		{"sch40 pvc pipe 1 1/2", "PVC Sch 40", "1-1/2"},
		{"PVC Sch 40 2 in", "PVC Sch 40", "2"},
		{"PVC PN10 63", "PVC PN10", "d63"},
		{"PVC PN10, d63", "PVC PN10", "d63"},
		{"PVC Sch 40", "PVC Sch 40", ""},
		{"elbow 90, 2", "elbow 90", "2"},
		{"elbow 90 2", "elbow 90", "2"},
		{"elbow 90", "elbow 90", ""},
		{"90 ell 1 1/2", "elbow 90", "1-1/2"},
		{"tee branch, 2", "tee", "2"},
		{"reducer 2 x 1-1/2", "reducing coupling", "2 x 1-1/2"},
		{"elbow 90 Sch 80, 2", "elbow 90 Sch 80", "2"},
		{"Liner", "liner", ""},
		{"solvent cement", takeoff.NameCement, ""},
		{"boulders, pond", "boulders", ""},
		{"soil, clay", "soil", "clay"},
		{"soil left over, loose", "soil", ""},
		{"elbow 91, 2", "elbow 91", "2"},
		{"widget", "widget", ""},
		{"", "", ""},
		{",", ",", ""},
	} {
		if name, size := m.item(c.item); name != c.name || size != c.size {
			t.Errorf("%q: %q, %q", c.item, name, size)
		}
	}
	for text, want := range map[string]unit.Value{
		"": {}, "each": {}, "Stick": {}, "ft": unit.Of(unit.Foot, unit.KindDistance), "10 ft": unit.Of(10*unit.Foot, unit.KindDistance),
		"m": unit.Of(unit.Metre, unit.KindDistance), "ft2": unit.Of(unit.SquareFoot, unit.KindArea),
	} {
		if got, ok := m.per(text); !ok || got.Kind != want.Kind || math.Abs(got.SI-want.SI) > 1e-12 {
			t.Errorf("per %q: %v, %v", text, got, ok)
		}
	}
	for _, text := range []string{"parsec", "0 ft", "12"} {
		if got, ok := m.per(text); ok {
			t.Errorf("per %q: %v", text, got)
		}
	}
}

// A price for a unit that is none is told, not taken as each.
func TestPriceForNoUnit(t *testing.T) {
	book, j := read(t, "old-pond")
	j.Prices[0].Unit = "parsec"
	for _, f := range Solve(book, j).Faults {
		if f.Code == takeoff.FaultPriceUnit && f.Path == "/prices/0/unit" {
			return
		}
	}
	t.Error("not told")
}

// First cost: the pump, the pipe by length or by the stick, the fittings, a tee
// that two runs name once.
func TestFirstCost(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	cost := func(j *job.Job) string {
		m := &model{book: book, job: j, out: &Result{Units: unit.US}, pipes: map[job.PipeName]catalog.Pipe{}, losses: map[job.PipeName]catalog.Loss{}, quiet: true}
		return m.firstCost(m.prices(), 0).Format()
	}
	// By hand: 420 + 60 x 1.90 + 22 x 1.10 + male adapter 2.60 + union 14.20 +
	// 3 x elbow 3.15 + valve 38.00 + tee 4.10 + 2 x 45 3.40 + 3 x 2.05 + 10.66.
	if got := cost(j); got != "650.16 USD" {
		t.Errorf("by length: %s", got)
	}
	sticks := j.Clone()
	sticks.Prices = sticks.Prices[1:]             // no price of 2 in pipe by length
	if got := cost(sticks); got != "638.76 USD" { // 3 sticks at 34.20 for 114.00
		t.Errorf("by the stick: %s", got)
	}
	none := sticks.Clone()
	none.Stock.Sticks = nil
	if got := cost(none); got != "0.00" {
		t.Errorf("without a price: %s", got)
	}
}

func TestCover(t *testing.T) {
	money := func(s string) unit.Money {
		return unit.Money{Amount: decimal.RequireFromString(s), Currency: "USD"}
	}
	ten, twenty := length{10, -1, money("18.40")}, length{20, -1, money("34.20")}
	for _, c := range []struct {
		name  string
		reach unit.Length
		of    []length
		want  []int
		short unit.Length
	}{
		{"the long ones are cheaper", 38, []length{ten, twenty}, []int{0, 2}, 0},
		{"a short one for the end", 48, []length{ten, twenty}, []int{1, 2}, 0},
		{"exactly", 40, []length{twenty}, []int{2}, 0},
		{"no prices: least pipe, fewest sticks", 29, []length{{10, -1, unit.Money{}}, {20, -1, unit.Money{}}}, []int{1, 1}, 0},
		{"few long ones", 60, []length{ten, {20, 1, money("34.20")}}, []int{4, 1}, 0},
		{"not enough", 60, []length{{10, 2, money("1")}, {20, 1, money("2")}}, []int{2, 1}, 20},
		{"none", 60, nil, []int{}, 60},
	} {
		got, short := cover(c.reach, c.of)
		if !reflect.DeepEqual(got, c.want) || short != c.short {
			t.Errorf("%s: %v, %g short", c.name, got, float64(short))
		}
	}
}

// What cover takes reaches, stays within the stock, and no fewer of one length
// alone would be cheaper.
func TestCoverReaches(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		reach := unit.Length(rapid.Float64Range(0.01, 500).Draw(t, "reach"))
		var of []length
		for range rapid.IntRange(1, 4).Draw(t, "lengths") {
			of = append(of, length{
				unit.Length(rapid.Float64Range(0.1, 30).Draw(t, "long")), rapid.SampledFrom([]int{-1, -1, 0, 1, 5}).Draw(t, "limit"),
				unit.Money{Amount: decimal.New(rapid.Int64Range(1, 5000).Draw(t, "price"), -2), Currency: "USD"},
			})
		}
		counts, short := cover(reach, of)
		have, cost := unit.Length(0), decimal.Zero
		for i, n := range counts {
			if n < 0 || of[i].limit >= 0 && n > of[i].limit {
				t.Fatalf("%d of %+v", n, of[i])
			}
			have += unit.Length(n) * of[i].long
			cost = cost.Add(worth(of[i], n, true))
		}
		if have+short < reach*(1-1e-9) {
			t.Fatalf("%g and %g short do not reach %g", float64(have), float64(short), float64(reach))
		}
		for _, l := range of {
			if n, ok := whole(reach, l); ok && (short > 0 || worth(l, n, true).LessThan(cost)) {
				t.Fatalf("%d of %+v reach for less than %s", n, l, cost)
			}
		}
	})
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
