package design

import (
	"math"
	"slices"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/takeoff"
)

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

func TestFirstCost(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	cost := func(j *job.Job) string {
		m := &model{book: book, job: j, out: &Result{Units: unit.US}, pipes: map[job.PipeName]catalog.Pipe{}, losses: map[job.PipeName]catalog.Loss{}, quiet: true}
		return m.firstCost(m.runCost(m.prices()), 0).Format(unit.StyleOf("", unit.US))
	}
	// By hand: 420 + 60 x 1.90 + 22 x 1.10 + male adapter 2.60 + union 14.20 +
	// 3 x elbow 3.15 + valve 38.00 + tee 4.10 + 2 x 45 3.40 + 3 x 2.05 + 10.66,
	// and couplings 2 x 1.60 + 0.85 (TestCouplings).
	if got := cost(j); got != "654.21 USD" {
		t.Errorf("by length: %s", got)
	}
	sticks := j.Clone()
	sticks.Prices = sticks.Prices[1:]             // no price of 2 in pipe by length
	if got := cost(sticks); got != "642.81 USD" { // 3 sticks at 34.20 for 114.00
		t.Errorf("by the stick: %s", got)
	}
	none := sticks.Clone()
	none.Stock.Sticks = nil
	if got := cost(none); got != "0.00" {
		t.Errorf("without a price: %s", got)
	}
}

// Sticks with plain ends are joined by couplings, which cost where they have a
// price, and of which it is told where they have none.
func TestCouplings(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	j.Prices = slices.DeleteFunc(j.Prices, func(p job.Price) bool { return strings.HasPrefix(p.Item, "coupling") })
	told := func(j *job.Job) float64 {
		for _, f := range Solve(book, j).Findings {
			if f.Code == FindCouplings {
				return f.Args[1].Value.SI
			}
		}
		return 0
	}
	sticks := func(m *model) (n int) {
		for _, r := range j.Runs {
			count, _, _ := m.couplings(nil, m.named(r.Pipe), r.Length.SI)
			n += count
		}
		return n
	}
	m := &model{book: book, job: j, out: &Result{Units: unit.US}, pipes: map[job.PipeName]catalog.Pipe{}, losses: map[job.PipeName]catalog.Loss{}, quiet: true}
	// By hand, in sticks of 20 ft: none for 4 ft, two for 56 ft, one for 22 ft.
	if sticks(m) != 3 || told(j) != 3 {
		t.Errorf("%d couplings, %v told", sticks(m), told(j))
	}
	priced := j.Clone()
	for _, size := range []string{"2", "1-1/4"} {
		priced.Prices = append(priced.Prices, job.Price{Item: "coupling, " + size, Price: job.Money{Text: "1.00"}})
	}
	if told(priced) != 0 {
		t.Errorf("still told: %v", told(priced))
	}
	bells := j.Clone()
	for i := range bells.Stock.Sticks {
		bells.Stock.Sticks[i].Bell = true
	}
	if told(bells) != 0 {
		t.Error("bells need none")
	}
}
