package design

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"plashet/engine/network"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/words"
)

// withBooster puts a second pump between two places of the hillside's main: the
// run that leads to the cascade then starts at it.
func withBooster(t *testing.T, more ...job.Run) *Result {
	t.Helper()
	book, j := read(t, "hillside-cascade")
	for i := range j.Runs {
		if j.Runs[i].Name == "main" {
			j.FurtherPumps = []job.FurtherPump{{Name: "booster", Pump: j.Pumps[0].Name, From: j.Runs[i].From}}
			j.Runs[i].From = "booster"
			for _, r := range more {
				r.Pipe, r.Length = j.Runs[i].Pipe, entry("3 ft", 3*unit.Foot)
				if r.To == "" {
					r.To = j.FurtherPumps[0].From
				}
				j.Runs = append(j.Runs, r)
			}
		}
	}
	r := Solve(book, j)
	if r.Delivery == nil {
		t.Fatal(r.Faults)
	}
	return r
}

// TestPumpedRound: a further pump whose water comes back to where it draws from
// is told of, with the run; one whose water goes on is not.
func TestPumpedRound(t *testing.T) {
	if f, told := severity(withBooster(t).Findings, FindRound); told {
		t.Errorf("told of a pump whose water goes on: %+v", f)
	}
	f, told := severity(withBooster(t, job.Run{Name: "back", From: "booster"}).Findings, FindRound)
	if !told || f.Severity != trace.Caution || f.Found.SI <= 0 {
		t.Fatalf("not told: %+v", f)
	}
	if said := words.English().Finding(f, unit.US); !strings.Contains(said, "“booster”") || !strings.Contains(said, "run “back”") || strings.Contains(said, "{") {
		t.Error(said)
	}
}

// TestTwins: what is found of two pumps of one kind at nearly one flow is told
// once; at different flows, or of different pumps, each time.
func TestTwins(t *testing.T) {
	of := func(path, other string, q unit.Flow) trace.Finding {
		v := unit.Of(q, unit.KindFlow)
		return trace.Finding{Message: trace.Message{Code: FindMinFlow, Args: []trace.Arg{{Name: "found", Value: v}, trace.Str("other", other)}}, Path: path, Found: v, Severity: trace.Caution}
	}
	finding := func(path string, q unit.Flow) trace.Finding { return of(path, "", q) }
	m := &model{out: &Result{Findings: []trace.Finding{
		finding("/pumps/0/minFlow", 1e-3), finding("/pumps/0/minFlow", 1.02e-3), finding("/pumps/0/minFlow", 2e-3), finding("/pumps/1/minFlow", 1e-3), finding("/runs/0", 1e-3), finding("/runs/0", 1e-3),
		of("/pumps/2/boxFlow", "a", 1e-3), of("/pumps/2/boxFlow", "b", 1e-3),
	}}}
	m.untwin()
	if len(m.out.Findings) != 7 || m.out.Findings[1].Found.SI != 2e-3 {
		t.Errorf("%+v", m.out.Findings)
	}
}

// TestPricedFirst: of the remedies that serve, those with a price come first,
// the cheapest of them in front, whatever the others draw.
func TestPricedFirst(t *testing.T) {
	money := func(n int64) unit.Money { return unit.Money{Amount: decimal.NewFromInt(n), Currency: "USD"} }
	a, b, c, d := &Option{Pump: "a", Power: 100, Cost: money(10)}, &Option{Pump: "b", Power: 300, Cost: money(30), Years: money(900)},
		&Option{Pump: "c", Power: 200, Cost: money(20), Years: money(500)}, &Option{Pump: "d", Power: 50, Cost: money(5)}
	list := []better{{a, 1, true}, {b, 1, true}, {&Option{Pump: "x"}, 0.5, false}, {c, 1, true}, {d, 1, true}}
	rank(list)
	order := ""
	for _, x := range list {
		order += x.option.Pump
	}
	if order != "cbdax" {
		t.Errorf("order %q", order)
	}
}

// TestNoRemedyOfNothing: no remedy is offered that moves a flow by nothing, as
// from none to none.
func TestNoRemedyOfNothing(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	for i := range j.Watercourses { // out of every pump's reach
		for k := range j.Watercourses[i].Parts {
			if l := j.Watercourses[i].Parts[k].Lip; l != nil {
				l.Crest = job.Level{Entry: entry("x", 60+l.Crest.SI)}
			}
		}
	}
	r := Solve(book, j)
	dry := 0
	for _, f := range r.Findings {
		if f.Code == FindDry {
			dry++
		}
		for _, m := range f.Remedies {
			for _, e := range m.Effect {
				if e.Before.Format(unit.Metric) == e.After.Format(unit.Metric) {
					t.Errorf("%s: %s to %s", m.Code, e.Before.Format(unit.Metric), e.After.Format(unit.Metric))
				}
			}
		}
	}
	if dry == 0 {
		t.Error("no feed is dry")
	}
	m := &model{out: &Result{Findings: []trace.Finding{{}}, Delivery: &Delivery{Feeds: []Feed{{Wanted: 1e-3}, {Wanted: 1e-3}}}, Options: []Option{{AsIs: true, Reach: 1e-9, Feeds: []unit.Flow{0, 0}}}}}
	m.remedy(0)
	if len(m.out.Findings[0].Remedies) > 0 {
		t.Errorf("offered: %+v", m.out.Findings[0].Remedies)
	}
}

// TestTwoRunsToOneFeed: that no one valve sets such a feed is told as it is.
func TestTwoRunsToOneFeed(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	twin := j.Runs[len(j.Runs)-1]
	twin.Name = "twin"
	j.Runs = append(j.Runs, twin)
	r := Solve(book, j)
	f, told := severity(r.Findings, string(network.FaultWays))
	if !told {
		t.Fatalf("not told: %+v", r.Faults)
	}
	said := words.English().Finding(f, unit.US)
	if strings.Contains(said, "does not lead") || !strings.Contains(said, "“"+twin.To+"”") {
		t.Error(said)
	}
	if _, told := severity(r.Findings, string(network.FaultThrottle)); told {
		t.Error("told of a valve")
	}
}

// TestNotOpenSaysWhere: the valve that does not open is named with its place,
// what is counted for it and what it may take: K v²/2g at both speeds.
func TestNotOpenSaysWhere(t *testing.T) {
	book, j := read(t, "old-pond")
	r := Solve(book, j)
	f, told := severity(r.Findings, FindNotOpen)
	if !told {
		t.Fatal("not told")
	}
	said := words.English().Finding(f, unit.US)
	if !strings.Contains(said, "run old hose, fitting 2") || strings.Contains(said, "{") {
		t.Error(said)
	}
	var counted, most float64
	for _, a := range f.Args {
		switch a.Name {
		case "counted":
			counted = a.Value.SI
		case "most":
			most = a.Value.SI
		}
	}
	if want := f.Limit.SI * f.Limit.SI / (f.Found.SI * f.Found.SI); counted <= 0 || most/counted < want*0.999 || most/counted > want*1.001 {
		t.Errorf("counted %v, most %v: want %v times", counted, most, want)
	}
}
