package design

import (
	"testing"

	"plashet/engine/catalog"
	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// drooping is the old pond with a pump whose head rises by 12 % before it
// falls, at a fall of the given height.
func drooping(t *testing.T, crest unit.Length) (*catalog.Book, *job.Job) {
	t.Helper()
	book, j := read(t, "old-pond")
	j.Use = j.Pumps[0].Name
	j.Pumps[0].Curve = nil
	for _, c := range [][2]float64{{0, 3}, {1000, 3.2}, {2000, 3.36}, {3500, 3.1}, {5000, 2.2}, {7000, 0.6}} {
		j.Pumps[0].Curve = append(j.Pumps[0].Curve, job.CurvePoint{
			Flow: entry("x", unit.Flow(c[0])*unit.LitrePerHour), Head: entry("x", unit.Head(c[1])),
		})
	}
	j.Watercourses[0].Parts[0].Lip.Crest = job.Level{Entry: entry("x", crest)}
	return book, j
}

// TestSeveralFlows: which flows a drooping pump can run at is told, and all of
// them: where the head of the curve crosses what the pipe asks, each point of
// which is solved on its own with the pump's curve out of play (CurvesOf).
func TestSeveralFlows(t *testing.T) {
	seen := map[string]bool{}
	for _, crest := range []unit.Length{2, 2.6, 2.9, 3.02, 3.05, 3.1, 3.15} {
		book, j := drooping(t, crest)
		r := SolveBands(book, j, 64, 1)
		if len(r.Faults) > 0 || r.Delivery == nil {
			t.Fatalf("crest %v: %v", crest, r.Faults)
		}
		c := CurvesOf(book, j, r, 400)
		curve := c.Pumps[0].Curve
		stands, crossings := false, [][2]unit.Flow(nil)
		for i := range c.System {
			h, _, _ := curve.Head(c.System[i].Flow)
			if i == 0 {
				stands = h < c.System[0].Head
				continue
			}
			before, _, _ := curve.Head(c.System[i-1].Flow)
			if (h < c.System[i].Head) != (before < c.System[i-1].Head) {
				crossings = append(crossings, [2]unit.Flow{c.System[i-1].Flow, c.System[i].Flow})
			}
		}
		states := len(crossings)
		if stands {
			states++
		}
		code := ""
		for _, k := range []string{FindOneState, FindSeveral, FindSeveralStands} {
			if f, told := severity(r.Findings, k); told {
				code = k
				for _, a := range f.Args {
					near := a.Value.SI == 0
					for _, x := range crossings {
						near = near || unit.Flow(a.Value.SI) > x[0]-1e-6 && unit.Flow(a.Value.SI) < x[1]+1e-6
					}
					if a.Value.Kind == unit.KindFlow && !near {
						t.Errorf("crest %v: %s %s = %v crosses nowhere: %v", crest, k, a.Name, a.Value.SI, crossings)
					}
				}
			}
		}
		want := FindOneState
		if states > 1 {
			want = FindSeveral
			if stands {
				want = FindSeveralStands
			}
		} else if len(crossings) == 0 {
			want = "" // it only stands: told with the feed
		}
		seen[want] = true
		if code != want && want != "" {
			t.Errorf("crest %v: told %q, want %q: %d crossings, stands %v", crest, code, want, len(crossings), stands)
		}
		if r.Delivery.Several != (states > 1) || (r.Bands != nil) == r.Delivery.Several && r.Delivery.Drawn > 0 {
			t.Errorf("crest %v: several %v, bands %v, %d states", crest, r.Delivery.Several, r.Bands != nil, states)
		}
		for _, o := range r.Options {
			if o.AsIs && o.Several != r.Delivery.Several {
				t.Errorf("crest %v: the option as drawn has several %v", crest, o.Several)
			}
		}
		for _, f := range r.Findings {
			for _, m := range f.Remedies {
				for _, a := range m.Args {
					for _, o := range r.Options {
						if o.Several && a.Name == "pipe" && a.Text == o.Pipe && o.Pump == j.Use && argOf(m.Args, "pump") == o.Pump {
							t.Errorf("crest %v: offered %s on %s, which may run at other flows", crest, o.Pump, o.Pipe)
						}
					}
				}
			}
		}
		if r.Delivery.Share != nil {
			t.Errorf("crest %v: the sharing is told", crest)
		}
	}
	if !seen[FindOneState] || !seen[FindSeveralStands] {
		t.Errorf("not all cases met: %v", seen)
	}
}

// TestRiseRefused: what is no drooping curve is refused as before.
func TestRiseRefused(t *testing.T) {
	for name, heads := range map[string][]float64{"rises at the end": {3, 2, 1, 1.2}, "rises by half": {3, 4.5, 2, 1}} {
		book, j := drooping(t, 2)
		j.Pumps[0].Curve = nil
		for i, h := range heads {
			j.Pumps[0].Curve = append(j.Pumps[0].Curve, job.CurvePoint{Flow: entry("x", unit.Flow(i)*1000*unit.LitrePerHour), Head: entry("x", unit.Head(h))})
		}
		if r := Solve(book, j); r.Delivery != nil || len(r.Faults) == 0 {
			t.Errorf("%s: taken", name)
		}
	}
}

// TestTeesBound: the flow as counted lies between the bounds told, and so do
// the flows with every tee alike at nothing, as counted and at twice.
func TestTeesBound(t *testing.T) {
	for _, name := range []string{"orchard-ring"} {
		book, j := read(t, name)
		r := Solve(book, j)
		told := 0
		for _, f := range r.Findings {
			if f.Code != FindTees {
				continue
			}
			told++
			var feed int
			var low, high float64
			for _, a := range f.Args {
				switch a.Name {
				case "low":
					low = a.Value.SI
				case "high":
					high = a.Value.SI
				case "name":
					for i := range r.Delivery.Feeds {
						if r.Delivery.Feeds[i].Name == a.Text {
							feed = i
						}
					}
				}
			}
			for _, by := range []unit.Ratio{0, 0.5, 1, 2} {
				m := &model{book: book, job: j, out: r, pipes: map[job.PipeName]catalog.Pipe{}, losses: map[job.PipeName]catalog.Loss{}, curves: map[int]*hydro.Curve{}, quiet: true}
				m.start()
				pump, _ := m.pump()
				lose := map[int]unit.Ratio{}
				for _, i := range m.teeRuns() {
					lose[i] = by
				}
				q, ok := m.withTees(pump, r.Vault, feed, lose)
				if !ok || float64(q) < low-1e-9 || float64(q) > high+1e-9 {
					t.Errorf("%s, %s with %v of the losses: %v is not between %v and %v", name, r.Delivery.Feeds[feed].Name, by, q, low, high)
				}
			}
		}
		if told == 0 {
			t.Errorf("%s: no bounds told", name)
		}
	}
}

func argOf(args []trace.Arg, name string) string {
	for _, a := range args {
		if a.Name == name {
			return a.Text
		}
	}
	return ""
}

// TestChooseLeavesDrooping: what may run at another flow than wanted is not
// chosen from a shelf, and the reason is told.
func TestChooseLeavesDrooping(t *testing.T) {
	book, j := drooping(t, 1)
	j.Pumps[0].Price = job.Money{Text: "300"}
	c := chooseAll(book, j, j.Pumps[:1], nil, Want{Pairs: PairsAny})
	if len(c.Faults) > 0 || len(c.Result.Front) > 0 || len(c.Result.Out) != 1 || c.Result.Out[0].Code != ReasonDroop {
		t.Errorf("%+v, %v", c.Result, c.Faults)
	}
}
