package design

import (
	"math"
	"testing"

	"plashet/engine/catalog"
	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// changed solves the hillside with its first pump changed.
func changed(t *testing.T, change func(j *job.Job, p *job.Pump)) (*catalog.Book, *Result) {
	t.Helper()
	book, j := read(t, "hillside-cascade")
	change(j, &j.Pumps[0])
	return book, Solve(book, j)
}

func figureOf(t *testing.T, r *Result, id string) float64 {
	t.Helper()
	for _, f := range r.Figures {
		if f.ID == id {
			return f.Value.SI
		}
	}
	t.Fatalf("no figure %s", id)
	return 0
}

// TestSpeedIsAffinity: at a part of full speed the job runs as with the curve
// whose points were turned by hand, Q by n, H by n², P by n³.
func TestSpeedIsAffinity(t *testing.T) {
	const n = 0.85
	_, set := changed(t, func(_ *job.Job, p *job.Pump) {
		p.Speeds = []job.PumpSpeed{{Name: "low", Part: entry("85 %", unit.Ratio(n))}}
		p.Speed = "low"
	})
	_, byHand := changed(t, func(_ *job.Job, p *job.Pump) {
		for i := range p.Curve {
			p.Curve[i].Flow.SI *= n
			p.Curve[i].Head.SI *= n * n
		}
		p.Watts.SI *= n * n * n
	})
	_, given := changed(t, func(_ *job.Job, p *job.Pump) {
		own := make([]job.CurvePoint, len(p.Curve))
		for i, c := range p.Curve {
			c.Flow.SI, c.Head.SI = c.Flow.SI*n, c.Head.SI*n*n
			own[i] = c
		}
		p.Speeds = []job.PumpSpeed{{Name: "low", Curve: own, Watts: entry("x", p.Watts.SI*n*n*n)}}
		p.Speed = "low"
	})
	const rel = 1e-9
	for name, r := range map[string]*Result{"by hand": byHand, "by its own curve": given} {
		if math.Abs(float64(set.Delivery.Flow/r.Delivery.Flow-1)) > rel || math.Abs(float64(set.Delivery.Power/r.Delivery.Power-1)) > rel {
			t.Errorf("%s: %v and %v W, at the speed set %v and %v", name, r.Delivery.Flow, r.Delivery.Power, set.Delivery.Flow, set.Delivery.Power)
		}
	}
	if !assumed(set, AssumeAffinity) || assumed(given, AssumeAffinity) {
		t.Error("a curve by the affinity laws is to be told, one from the sheet is not")
	}
}

func TestSpeedThatIsNone(t *testing.T) {
	for code, change := range map[string]func(p *job.Pump){
		CodeNoSpeed:    func(p *job.Pump) { p.Speed = "silent" },
		CodeSpeedEmpty: func(p *job.Pump) { p.Speeds, p.Speed = []job.PumpSpeed{{Name: "low"}}, "low" },
	} {
		_, r := changed(t, func(_ *job.Job, p *job.Pump) { change(p) })
		told := 0
		for _, f := range r.Faults {
			if f.Code == code {
				told++
			}
		}
		if told != 1 || r.Delivery != nil || len(r.Materials) == 0 {
			t.Errorf("%s is told %d times, delivery %v, %d materials", code, told, r.Delivery, len(r.Materials))
		}
	}
}

func TestWearTakesHead(t *testing.T) {
	_, before := changed(t, func(_ *job.Job, _ *job.Pump) {})
	_, worn := changed(t, func(_ *job.Job, p *job.Pump) { p.Wear = entry("15 %", unit.Ratio(0.15)) })
	if worn.Delivery.Flow >= before.Delivery.Flow || worn.Delivery.Flow < before.Delivery.Flow*0.7 {
		t.Errorf("worn by 15 %%: %v of %v", worn.Delivery.Flow, before.Delivery.Flow)
	}
}

func TestDutyFindings(t *testing.T) {
	flow := func(v unit.Flow) job.Flow { return job.Flow{Text: "x", SI: v} }
	for code, c := range map[string]struct {
		at, off func(p *job.Pump, q unit.Flow)
	}{
		FindMinFlow: {
			at:  func(p *job.Pump, q unit.Flow) { p.MinFlow = flow(q * 1.001) },
			off: func(p *job.Pump, q unit.Flow) { p.MinFlow = flow(q * 0.999) },
		},
		FindOffBest: {
			at:  func(p *job.Pump, q unit.Flow) { p.BestFlow = flow(q / 1.21) },
			off: func(p *job.Pump, q unit.Flow) { p.BestFlow = flow(q / 1.19) },
		},
		FindOverload: {
			at:  func(p *job.Pump, _ unit.Flow) { p.MotorWatts = entry("x", p.Watts.SI-1) },
			off: func(p *job.Pump, _ unit.Flow) { p.MotorWatts = entry("x", p.Watts.SI) },
		},
	} {
		_, plain := changed(t, func(_ *job.Job, _ *job.Pump) {})
		if len(coded(plain, code)) > 0 {
			t.Errorf("%s is found on the plain job", code)
		}
		q := plain.Delivery.Flow
		_, at := changed(t, func(_ *job.Job, p *job.Pump) { c.at(p, q) })
		_, off := changed(t, func(_ *job.Job, p *job.Pump) { c.off(p, q) })
		if len(coded(at, code)) != 1 || len(coded(off, code)) != 0 {
			t.Errorf("%s: %d past the limit, %d short of it", code, len(coded(at, code)), len(coded(off, code)))
		}
	}
	// below the region
	_, plain := changed(t, func(_ *job.Job, _ *job.Pump) {})
	_, low := changed(t, func(_ *job.Job, p *job.Pump) { p.BestFlow = flow(plain.Delivery.Flow / 0.69) })
	if f := coded(low, FindOffBest); len(f) != 1 || math.Abs(f[0].Limit.SI/float64(plain.Delivery.Flow)-0.70/0.69) > 1e-9 {
		t.Errorf("below the preferred region: %+v", f)
	}
}

// TestBestFromTheWatts: the best flow comes from watts along the curve.
func TestBestFromTheWatts(t *testing.T) {
	_, r := changed(t, func(_ *job.Job, p *job.Pump) {
		for i := range p.Curve {
			p.Curve[i].Watts = entry("x", unit.Power(400+30*float64(i)))
		}
	})
	w, err := hydro.WaterAt(unit.Temperature((60.0 - 32) / 1.8))
	if err != nil {
		t.Fatal(err)
	}
	best, greatest := 0.0, 0.0
	for i, c := range read2(t) { // by hand at the points themselves
		if e := float64(hydro.WaterPower(c.Flow.SI, c.Head.SI, w)) / (400 + 30*float64(i)); e > greatest {
			best, greatest = float64(c.Flow.SI), e
		}
	}
	if got := figureOf(t, r, "pump.efficiency.best"); got < greatest || got > greatest*1.02 {
		t.Errorf("best efficiency %g, at the points %g", got, greatest)
	}
	if got := figureOf(t, r, "pump.best"); math.Abs(got/best-1) > 0.2 {
		t.Errorf("best flow %g, of the points %g", got, best)
	}
}

func read2(t *testing.T) []job.CurvePoint {
	t.Helper()
	_, j := read(t, "hillside-cascade")
	return j.Pumps[0].Curve
}

// dry puts the pump beside the pond, its inlet 1 m over the water, with 4 m of suction pipe.
func dry(required unit.Head) func(j *job.Job, p *job.Pump) {
	return func(j *job.Job, p *job.Pump) {
		r, _ := j.Elevations()
		water, _ := r.Level(j.Pond.Water)
		p.Outside = job.Outside{
			Centre: job.Level{Entry: entry("x", water+1)}, Intake: job.Level{Entry: entry("x", water-0.9)},
			Pipe: job.PipeName{Kind: "PVC Sch 40", Size: "2"}, Length: entry("x", unit.Length(4)), Fittings: []job.Fitted{{Fitting: "entrance"}, {Fitting: "elbow 90", Count: 2}},
		}
		if required > 0 {
			p.NPSH = []job.NPSHPoint{{Flow: entry("0", unit.Flow(0)), Head: entry("x", required)}, {Flow: entry("x", unit.Flow(0.01)), Head: entry("x", required)}}
		}
	}
}

// TestSuction: the suction head is the formula's, friction and all, and the
// suction pipe takes its head off the pump.
func TestSuction(t *testing.T) {
	_, wet := changed(t, func(_ *job.Job, _ *job.Pump) {})
	book, r := changed(t, dry(2))
	d := r.Delivery
	if d == nil || d.Flow >= wet.Delivery.Flow {
		t.Fatalf("with a suction pipe %v, without %v", d, wet.Delivery.Flow)
	}
	pipe, err := book.FindPipe("PVC Sch 40", "2")
	if err != nil {
		t.Fatal(err)
	}
	law, err := hydro.PipeLaw{Bore: pipe.Bore, Length: 4, Roughness: pipe.Roughness}.Prepare(r.Water)
	if err != nil {
		t.Fatal(err)
	}
	friction, _ := law.Loss(d.Flow)
	v := float64(hydro.Velocity(d.Flow, pipe.Bore))
	head := v * v / (2 * unit.StandardGravity)
	// pump's head = height + losses of the runs on the way + suction pipe and fittings
	const entrance = 0.5
	run := d.Runs[0].Friction + d.Runs[0].Fittings + d.Runs[1].Friction + d.Runs[1].Fittings
	left := float64(d.Head-d.Static-run-friction) - entrance*head
	if left < 0.2*head || left > 2*head { // two elbows: K 0.1 to 1 each
		t.Errorf("two elbows would take %g of velocity head", left/head)
	}
	has := figureOf(t, r, "pump.npsh.available")
	water, _ := changedLevel(t)
	want := float64(r.Water.HeadOf(101325-r.Water.VapourPressure)) + float64(r.Vault-(water+1)) - float64(friction) - entrance*head - left
	if math.Abs(has-want) > 1e-6 {
		t.Errorf("NPSH available %g, by hand %g", has, want)
	}
	if len(coded(r, FindLift)) != 1 || len(coded(r, FindEntrap)) != 1 || len(coded(r, FindNPSH)) != 0 || !assumed(r, AssumeAltitude) {
		t.Errorf("lift %d, entrapment %d, NPSH %d", len(coded(r, FindLift)), len(coded(r, FindEntrap)), len(coded(r, FindNPSH)))
	}
	// as much as is there, less the reserve, passes; a hair more does not
	for _, c := range []struct {
		required float64
		severity trace.Severity
		told     int
	}{{has - float64(hydro.SuctionReserve) - 1e-6, 0, 0}, {has - float64(hydro.SuctionReserve) + 1e-6, trace.Caution, 1}, {has + 1e-6, trace.Danger, 1}} {
		_, r := changed(t, dry(unit.Head(c.required)))
		f := coded(r, FindNPSH)
		if len(f) != c.told || c.told > 0 && f[0].Severity != c.severity {
			t.Errorf("required %g of %g: %+v", c.required, has, f)
		}
	}
	_, unknown := changed(t, dry(0))
	if len(coded(unknown, FindNoNPSH)) != 1 {
		t.Error("that the suction head required is not given is not told")
	}
	_, high := changed(t, func(j *job.Job, p *job.Pump) {
		dry(2)(j, p)
		j.Site.Altitude = entry("x", unit.Length(2000))
	})
	if low := figureOf(t, high, "pump.npsh.available"); low > has-2 || assumed(high, AssumeAltitude) {
		t.Errorf("2000 m up %g is available, at the sea %g", low, has)
	}
}

func changedLevel(t *testing.T) (unit.Length, bool) {
	t.Helper()
	_, j := read(t, "hillside-cascade")
	r, _ := j.Elevations()
	return r.Level(j.Pond.Water)
}

func TestSuctionAtFault(t *testing.T) {
	_, r := changed(t, func(j *job.Job, p *job.Pump) {
		dry(2)(j, p)
		p.Outside.Pipe.Size = "77"
	})
	if r.Delivery != nil || len(r.Faults) == 0 {
		t.Error("unknown suction pipe, and still a flow")
	}
	// of a pump that is not in use it is no matter
	book, j := read(t, "hillside-cascade")
	dry(2)(j, &j.Pumps[1])
	j.Pumps[1].Outside.Pipe.Size = "77"
	r = Solve(book, j)
	if r.Delivery == nil {
		t.Error("the suction pipe of a pump not in use voids the flow")
	}
	for _, o := range r.Options {
		if o.Pump == j.Pumps[1].Name {
			t.Error("a pump whose suction pipe is at fault is an option")
		}
	}
}
