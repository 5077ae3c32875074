package design

import (
	"context"
	"math"
	"slices"
	"testing"

	"plashet/engine/catalog"
	"plashet/engine/hydro"
	"plashet/engine/size"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// chosen chooses for the hillside from its own pumps.
func chosen(t *testing.T, want Want, change func(j *job.Job)) (*catalog.Book, *job.Job, *Choice) {
	t.Helper()
	book, j := read(t, "hillside-cascade")
	change(j)
	return book, j, chooseAll(book, j, j.Pumps, nil, want)
}

func asIs(*job.Job) {}

// TestChosenDesignsDeliver: each design of the front, drawn into the job with
// its valves set, is solved by the network, and gives what is wanted with the
// watts and the head that the choice tells.
func TestChosenDesignsDeliver(t *testing.T) {
	book, j, c := chosen(t, Want{}, asIs)
	if len(c.Faults) > 0 || len(c.Result.Front) < 3 {
		t.Fatal(c.Faults, c.Result)
	}
	for n := range c.Result.Front {
		d := &c.Result.Front[n]
		m := &model{book: book, job: drawnAs(j, c, d), out: &Result{Units: j.System()}, pipes: map[job.PipeName]catalog.Pipe{}, losses: map[job.PipeName]catalog.Loss{}, curves: map[int]*hydro.Curve{}}
		if !m.start() {
			t.Fatal(m.out.Faults)
		}
		got, ok := m.deliver(d.Pumps[0], c.Vault)
		if !ok {
			t.Fatal(n, m.out.Faults)
		}
		const rel = 1e-6
		for i, f := range got.Feeds {
			if want := c.Problem.Outlets[i].Wanted; math.Abs(float64(f.Flow/want-1)) > rel {
				t.Errorf("design %d: %s gets %v of %v", n, f.Name, f.Flow, want)
			}
		}
		if math.Abs(float64(got.Head-d.Head)) > 1e-5 || math.Abs(float64(got.Power-d.Power)) > 1e-3 {
			t.Errorf("design %d: head %v, %v W; the choice says %v, %v", n, got.Head, got.Power, d.Head, d.Power)
		}
	}
}

// drawnAs puts a design into a job: pump, pipe, and each valve as K in its run:
// the feeds' own in the last runs, the main's surplus in the first.
func drawnAs(j *job.Job, c *Choice, d *size.Design) *job.Job {
	out := *j
	out.Runs = slices.Clone(j.Runs)
	k := func(seg int, h unit.Head) unit.Ratio {
		v := float64(d.Speeds[seg])
		return unit.Ratio(float64(h) * 2 * unit.StandardGravity / (v * v))
	}
	for i := range out.Runs {
		choice := &c.Problem.Segments[i].Choices[d.Choices[i]]
		out.Runs[i].Pipe.Size = choice.Name[len("PVC Sch 40 "):]
		burn := unit.Ratio(0)
		if i == 0 {
			burn = k(0, d.Surplus())
		}
		for o := range c.Problem.Outlets {
			if c.Problem.Outlets[o].Segment == i {
				burn += k(i, d.Burns[o])
			}
		}
		out.Runs[i].Throttle = entry("x", burn)
	}
	return &out
}

// TestChosenCosts: the first cost of the pipe as drawn is that of the options,
// and the years are five years of its power.
func TestChosenCosts(t *testing.T) {
	book, j, c := chosen(t, Want{Rated: true}, asIs)
	r := Solve(book, j)
	g := c.Drawn.Given
	var pipe size.Cost
	for i, k := range g.Choices {
		pipe += c.Problem.Segments[i].Choices[k].Cost
	}
	met := false
	for _, o := range r.Options {
		if o.AsIs {
			met = true
			if got := c.Money(pipe + c.Problem.Pumps[g.Pumps[0]].Price); !got.Amount.Equal(o.First.Amount.Round(6)) {
				t.Errorf("first cost %s, of the options %s", got.FormatExact(unit.StyleOf("", unit.US)), o.First.FormatExact(unit.StyleOf("", unit.US)))
			}
		}
	}
	if !met {
		t.Fatal("no option as drawn")
	}
	// 0.640 kW x 24 h x 365 x 0.18 x 5 years = 5045.76 (by hand)
	for _, d := range c.Result.Front {
		if c.Problem.Pumps[d.Pumps[0]].Name == "M" && d.Years-d.First != 5045_760_000 {
			t.Errorf("five years of pump M: %s", c.Money(d.Years-d.First).FormatExact(unit.StyleOf("", unit.US)))
		}
	}
}

func TestChooseTold(t *testing.T) {
	for code, c := range map[string]struct {
		change func(j *job.Job)
		want   Want
	}{
		CodeChooseFurther: {change: func(j *job.Job) { j.FurtherPumps = []job.FurtherPump{{Name: "second", Pump: "M"}} }},
		CodeChooseLoop: {change: func(j *job.Job) {
			j.Runs = append(slices.Clone(j.Runs), job.Run{Name: "again", From: "tee", To: "cascade", Pipe: j.Runs[0].Pipe, Length: j.Runs[0].Length})
		}},
		CodeChooseYears:  {change: asIs, want: Want{Years: 101}},
		CodeChooseKind:   {change: asIs, want: Want{Kinds: []string{"no such kind"}}},
		CodeNoFeed:       {change: func(j *job.Job) { j.Runs = nil }},
		size.CodeTree:    {change: func(j *job.Job) { j.Runs = j.Runs[1:] }},
		size.CodeChoice:  {change: asIs, want: Want{MostSpeed: 0.01}},
		size.CodeWanted:  {change: func(j *job.Job) { j.Watercourses[1].Parts[0].Lip.Wanted = job.Flow{} }},
		size.CodePumps:   {change: func(j *job.Job) { j.Pumps = nil }},
		CodeNoLevel:      {change: func(j *job.Job) { j.Pond.Water = job.Level{} }},
		FindChooseTariff: {change: func(j *job.Job) { j.Site.Tariff = job.Money{} }},
	} {
		_, _, got := chosen(t, c.want, c.change)
		told := slices.ContainsFunc(got.Faults, func(f trace.Fault) bool { return f.Code == code }) ||
			slices.ContainsFunc(got.Findings, func(f trace.Finding) bool { return f.Code == code })
		if !told {
			t.Errorf("%s is not told: %v", code, got.Faults)
		}
		if code != FindChooseTariff && got.Result != nil && len(got.Result.Front) > 0 {
			t.Errorf("%s: and still there is a front", code)
		}
	}
}

// TestShelfAtFault: each pump at fault is left aside with its reason, and the
// front is that of the others.
func TestShelfAtFault(t *testing.T) {
	book, j, before := chosen(t, Want{Pairs: PairsAny}, asIs)
	sound := j.Pumps[0]
	spoilt := func(name string, spoil func(p *job.Pump)) job.Pump {
		p := sound
		p.Name, p.Curve, p.Price = name, slices.Clone(sound.Curve), job.Money{Text: "1"}
		spoil(&p)
		return p
	}
	shelf := append(slices.Clone(j.Pumps),
		spoilt("rises", func(p *job.Pump) { p.Curve[4].Head.SI = 9 }),
		spoilt("twice", func(p *job.Pump) { p.Curve[4].Flow.SI = p.Curve[5].Flow.SI }),
		spoilt("empty", func(p *job.Pump) { p.Curve, p.BoxFlow, p.MaxHead = nil, job.Flow{}, job.Length{} }),
		spoilt("box", func(p *job.Pump) { p.Curve = nil }),
		spoilt("free", func(p *job.Pump) { p.Price = job.Money{} }),
		spoilt("no watts", func(p *job.Pump) { p.Watts = job.Power{} }),
		spoilt("wide", func(p *job.Pump) {
			p.Attitudes = slices.Clone(p.Attitudes)
			p.Attitudes[0].Length = entry("x", 30*unit.Inch)
		}),
		spoilt("deep", func(p *job.Pump) { p.MinWater = entry("x", unit.Length(1)) }),
		spoilt("odd port", func(p *job.Pump) { p.Port.Size = "7-7/8" }),
		spoilt("outside", func(p *job.Pump) { p.Outside.Length = entry("x", unit.Length(2)) }),
		spoilt("thick", func(p *job.Pump) { p.Solids = entry("x", unit.Length(0.1)) }),
		spoilt("half read", func(*job.Pump) {}),
	)
	c := chooseAll(book, j, shelf, map[int]bool{len(shelf) - 1: true}, Want{Pairs: PairsAny})
	want := map[string]string{
		"rises": "hydro.curve.rise", "twice": "hydro.curve.duplicate", "empty": "hydro.curve.none", "box": ReasonBox, "free": ReasonNoPrice, "no watts": size.ReasonWatts,
		"wide": ReasonSpace, "deep": ReasonShallow, "odd port": ReasonPort, "outside": ReasonOutside, "thick": size.ReasonBore, "half read": ReasonIll,
	}
	for _, o := range c.Result.Out {
		name := c.Problem.Pumps[o.Pump].Name
		if want[name] != o.Code {
			t.Errorf("%s is left out for %s, not for %q", name, o.Code, want[name])
		}
		delete(want, name)
	}
	if len(want) > 0 || len(c.Faults) > 0 {
		t.Errorf("not left out: %v; faults %v", want, c.Faults)
	}
	if len(c.Result.Front) != len(before.Result.Front) {
		t.Fatalf("%d designs, without the faulty pumps %d", len(c.Result.Front), len(before.Result.Front))
	}
	for i := range c.Result.Front {
		if a, b := &c.Result.Front[i], &before.Result.Front[i]; a.First != b.First || a.Years != b.Years || a.Step != b.Step {
			t.Errorf("design %d is another one", i)
		}
	}
}

// TestSpeedsOnTheShelf: each speed stands as a pump of its own.
func TestSpeedsOnTheShelf(t *testing.T) {
	book, j, _ := chosen(t, Want{}, asIs)
	p := j.Pumps[1]
	p.Speeds = []job.PumpSpeed{{Name: "low", Part: entry("85 %", unit.Ratio(0.85))}}
	c := chooseAll(book, j, []job.Pump{p}, nil, Want{})
	if len(c.Problem.Pumps) != 2 || c.Problem.Pumps[1].Name != "L, speed low" {
		t.Fatalf("%+v", c.Problem.Pumps)
	}
	full, low := c.Problem.Pumps[0].Curve, c.Problem.Pumps[1].Curve
	h0, _, _ := full.Head(0)
	h1, _, _ := low.Head(0)
	if math.Abs(float64(h1/h0)-0.85*0.85) > 1e-12 {
		t.Errorf("shut-off heads %v and %v", h0, h1)
	}
}

// TestOneSize: one size throughout is never better, and is one size.
func TestOneSize(t *testing.T) {
	_, _, free := chosen(t, Want{}, asIs)
	_, _, one := chosen(t, Want{Uniform: true}, asIs)
	if len(one.Result.Front) == 0 {
		t.Fatal("no design of one size")
	}
	for _, d := range one.Result.Front {
		name := one.Problem.Segments[0].Choices[d.Choices[0]].Name
		for i, k := range d.Choices {
			if one.Problem.Segments[i].Choices[k].Name != name {
				t.Errorf("run %d takes another size than %s", i, name)
			}
		}
		if !slices.ContainsFunc(free.Result.Front, func(f size.Design) bool { return f.First <= d.First && f.Years <= d.Years && f.Step >= d.Step }) {
			t.Errorf("one size is better: %s", one.Money(d.First).Format(unit.StyleOf("", unit.US)))
		}
	}
}

// TestMeasuredPipeStays: pipe in the ground is taken as it is and costs nothing.
func TestMeasuredPipeStays(t *testing.T) {
	_, _, c := chosen(t, Want{}, func(j *job.Job) { j.Runs[1].Bore = entry("x", 2.4*unit.Inch) })
	s := &c.Problem.Segments[1]
	if len(s.Choices) != 1 || s.Choices[0].Cost != 0 || s.Choices[0].Bore != 2.4*unit.Inch {
		t.Errorf("%+v", s.Choices)
	}
}

// TestOrderOfRuns: runs may stand in any order.
func TestOrderOfRuns(t *testing.T) {
	_, _, want := chosen(t, Want{}, asIs)
	_, _, got := chosen(t, Want{}, func(j *job.Job) { slices.Reverse(j.Runs) })
	if len(got.Faults) > 0 || len(got.Result.Front) != len(want.Result.Front) || got.Result.Front[0].Years != want.Result.Front[0].Years {
		t.Errorf("%v: %d designs, in the other order %d", got.Faults, len(got.Result.Front), len(want.Result.Front))
	}
}

// BenchmarkChoose: the whole way from a job and a shelf of many invented pumps
// to the answer, curves and prices with it.
func BenchmarkChoose(b *testing.B) {
	book, j := read(b, "hillside-cascade")
	var shelf []job.Pump
	for i := range 500 {
		p := j.Pumps[i%2]
		p.Name = p.Name + " " + string(rune('a'+i%26)) + string(rune('a'+i/26))
		p.Curve = slices.Clone(p.Curve)
		grow := 0.6 + 0.002*float64(i)
		for k := range p.Curve {
			p.Curve[k].Flow.SI *= unit.Flow(grow)
			p.Curve[k].Head.SI *= unit.Head(1.3 - 0.5*math.Abs(math.Sin(float64(i))))
		}
		p.Watts.SI *= unit.Power(grow * (1 + 0.3*math.Cos(float64(i))))
		shelf = append(shelf, p)
	}
	for name, want := range map[string]Want{"one size": {Uniform: true}, "per run": {}, "per run, any two": {Pairs: PairsAny}} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if c := chooseAll(book, j, shelf, nil, want); len(c.Result.Front) == 0 {
					b.Fatal("no front")
				}
			}
		})
	}
}

// chooseAll is Choose to its end.
func chooseAll(book *catalog.Book, j *job.Job, shelf []job.Pump, ill map[int]bool, want Want) *Choice {
	return Choose(context.Background(), book, j, shelf, ill, want, nil)
}
