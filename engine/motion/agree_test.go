package motion

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/geom"
	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/unit"
)

// agreed is how near the levels at the end of a motion must come to package
// level's, in metres; what stillness leaves and parts that are not followed may
// add to it.
const agreed = 0.0005

// twin is one feature for both packages.
type twin struct {
	in    Inputs
	level level.Inputs
	rim   unit.Length
	holds bool  // a reach keeps water
	boxes []int // of each feed, its box among the stores
	aside int   // boxes that run into lower ones
}

func drawTwin(t *rapid.T) twin {
	num := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	must := func(err error) {
		if err != nil {
			t.Fatal(err)
		}
	}
	yes := rapid.Bool()
	q := num("flow", 1e-3, 4e-3)
	o, err := geom.Rectangle(unit.Length(num("length", 1, 6)), unit.Length(num("width", 1, 4)))
	must(err)
	pond, err := level.NewPond(level.Pond{Outline: o, Section: []level.Step{{Depth: 0.2}, {Depth: 0.2, In: unit.Length(num("shelf", 0, 0.2))}, {Depth: unit.Length(num("depth", 0.4, 1)), In: 0.3}}, Void: 1})
	must(err)
	w := twin{rim: unit.Length(num("rim", 0.02, 0.2))}
	low := unit.Length(-0.35)
	w.in = Inputs{Pond: pond, NoRim: true, Flow: unit.Flow(q)}
	w.level = level.Inputs{Pond: pond, NoRim: true, Flow: unit.Flow(q), Valve: yes.Draw(t, "valve"), Stand: level.Stand{MinWater: low - pond.Floor(), MinKnown: true}}
	if yes.Draw(t, "vault") {
		body, err := level.NewBox(0.5, 0.5, unit.Length(num("vault length", 0.4, 0.7)), 0.5, 0.6, -0.5)
		must(err)
		v := &level.Vault{Body: body, ScreenLoss: unit.Length(num("screen", 0, 0.03))}
		if yes.Draw(t, "sill") {
			v.Sill = &level.Sill{Crest: -unit.Length(num("sill", 0.02, 0.12)), Width: unit.Length(num("weir", 0.15, 0.6)), C: 1.7}
		}
		w.in.Vault, w.level.Vault = v, v
		w.level.Stand = level.Stand{Floor: -0.5, MinWater: 0.15, MinKnown: true}
	}
	w.in.Low = low
	feeds := rapid.SampledFrom([]int{1, 2, 2, 3}).Draw(t, "feeds")
	supply := Constant{}
	for range feeds {
		w.feed(t, q/float64(feeds))
		supply = append(supply, unit.Flow(q/float64(feeds)))
	}
	w.in.Supply = supply
	if w.level.Valve {
		w.join(t)
	}
	return w
}

// join lets some of the boxes be joined by pipe beyond the valve, some by way of
// a valve of their own, which lets water come but not go.
func (w *twin) join(t *rapid.T) {
	n := len(w.in.Feeds)
	j := level.Joined{Places: n + 1}
	for i := range w.in.Feeds {
		f := &w.in.Feeds[i]
		j.Vessels = append(j.Vessels, level.Vessel{Crest: f.Crest, Depth: f.Depth, Inlet: f.Inlet})
		if rapid.SampledFrom([]bool{true, true, true, false}).Draw(t, "joined") {
			j.Ways = append(j.Ways, level.Way{From: n, To: i, OneWay: rapid.SampledFrom([]bool{false, false, true}).Draw(t, "own valve")})
		}
	}
	w.in.Places = j.Places
	for _, way := range j.Ways {
		w.in.Ways = append(w.in.Ways, Way{way, rapid.Float64Range(0.1, 1).Draw(t, "aside") * w.in.Feeds[0].Back})
	}
	falls := make([]level.Below, n)
	j.Settle(falls)
	for i := range w.in.Feeds {
		f, store := &w.in.Feeds[i], &w.level.Stores[w.boxes[i]]
		if falls[i].To < 0 {
			continue
		}
		b, err := level.Box("box", "", level.BoxSize{Volume: store.Running, Depth: f.Depth, Inlet: f.Inlet, Fall: falls[i].Fall})
		if err != nil {
			t.Fatal(err)
		}
		*store, f.Parts[0].Held = b, b.Held
		if b.Joined {
			w.aside++
		}
	}
}

// feed adds a feed to both.
func (w *twin) feed(t *rapid.T, q float64) {
	num := func(name string, lo, hi float64) unit.Length {
		return unit.Length(rapid.Float64Range(lo, hi).Draw(t, name))
	}
	yes := rapid.Bool()
	store := func(s level.Store, err error) level.Store {
		if err != nil {
			t.Fatal(err)
		}
		if !w.level.Valve {
			s.Held = s.HeldOpen
		}
		w.level.Stores = append(w.level.Stores, s)
		return s
	}
	lip := func() (*hydro.Lip, unit.Head) {
		l, err := hydro.LipLaw{Width: num("lip", 0.2, 0.8), C: 1.7}.Prepare()
		if err != nil {
			t.Fatal(err)
		}
		h, _ := l.Head(unit.Flow(q))
		return l, h
	}
	pipe := store(level.Run("pipe", "", unit.Volume(num("pipe", 0.002, 0.05)), yes.Draw(t, "drains")))
	f := Feed{Pipe: pipe.Running, PipeHeld: pipe.Held, PipeOpen: pipe.HeldOpen, Crest: num("crest", 1.5, 3), Valve: w.level.Valve, Back: 0.5 / (q * q), Bore: 1e-3}
	area := unit.Area(num("box", 0.05, 0.5))
	f.Depth, f.Inlet = num("box depth", 0.1, 0.4), num("inlet", 0, 0.5)
	w.boxes = append(w.boxes, len(w.level.Stores))
	box := store(level.Box("box", "", level.BoxSize{Volume: unit.Volume(float64(area) * float64(f.Depth)), Depth: f.Depth, Inlet: f.Inlet}))
	l, h := lip()
	store(level.Lip("lip", "", h, area, 1))
	f.Parts = []Part{{Full: box.Running, Held: box.Held, HeldOpen: box.HeldOpen, Lip: l, Area: area}}
	if yes.Draw(t, "stream") {
		holds := unit.Length(0)
		if yes.Draw(t, "holds") {
			holds, w.holds = 0.01, true
		}
		r := store(level.Reach("stream", "", level.ReachSize{Depth: num("stream depth", 0.01, 0.04), Wetted: num("wetted", 0.2, 0.8), Length: num("stream", 1, 5), Holds: holds}))
		f.Parts = append(f.Parts, Part{Reach: true, Full: r.Running, Held: r.Held, HeldOpen: r.HeldOpen, Flow: unit.Flow(q)})
	}
	if yes.Draw(t, "pool") {
		a := unit.Area(num("pool", 0.2, 2))
		p := store(level.Pool("pool", "", a, num("pool depth", 0.05, 0.3), false))
		l, h := lip()
		store(level.Lip("lower", "", h, a, 1))
		f.Parts = append(f.Parts, Part{Full: p.Running, Held: p.Held, HeldOpen: p.HeldOpen, Lip: l, Area: a})
	}
	w.in.Feeds = append(w.in.Feeds, f)
}

// TestAgreesWithLevel: where a motion comes to rest, or to steady running, is
// where package level says that the water stands: first start, restart, and
// stops with the valve working and open, over random features.
func TestAgreesWithLevel(t *testing.T) {
	compared, aside := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		w := drawTwin(t)
		l, err := level.Solve(w.level)
		if err != nil {
			t.Fatal(err)
		}
		s, err := New(w.in)
		if err != nil {
			t.Fatal(err)
		}
		slack := agreed + float64(s.LeftOut)/float64(w.in.Pond.Water(-0.1))
		run := func(p Program, c level.Course, m level.Moment) (Course, bool) {
			want, ok := l.Find(c, m)
			if !ok {
				return Course{}, false
			}
			p.Until, p.Still = 4*unit.Hour, 1e-8
			got, err := s.Run(p)
			if err != nil {
				t.Fatalf("%s %s: %v", c, m, err)
			}
			if math.Abs(float64(got.Mass)) > 1e-9 {
				t.Fatalf("%s %s: books out by %g", c, m, float64(got.Mass))
			}
			if want.Starved && w.holds {
				return got, true // what a trickle holds in a stream that keeps water is told by two rules
			}
			compared++
			// A stream's last water takes for ever.
			late := math.Abs(float64(got.Stored - want.InStores))
			if late > 0.03*float64(l.Transit)+float64(s.LeftOut) {
				t.Fatalf("%s %s: %.4f m³ in the watercourse, at rest %.4f", c, m, float64(got.Stored), float64(want.InStores))
			}
			slack := slack + late/float64(w.in.Pond.Water(-0.3))
			if math.Abs(float64(got.End.Pond-want.Pond)) > slack {
				t.Fatalf("%s %s: pond ends at %.5f, at rest %.5f; %+v", c, m, float64(got.End.Pond), float64(want.Pond), got.Events)
			}
			// A start that just starves gasps only in the end of all ends, and what
			// is not followed may just save it.
			just := float64(want.Missing) < float64(s.LeftOut)+agreed*float64(w.in.Pond.Water(-0.1))
			if want.Starved != got.Gasping && (got.Gasping || !just) {
				t.Fatalf("%s %s: gasping %v, starved %v", c, m, got.Gasping, want.Starved)
			}
			// Between the sill and the pump's least level the vault's level hangs on
			// the last litres: pond and sill are what tells.
			if bare := m.Running() && (!want.Starved || just && !got.Gasping) && w.in.Vault != nil && w.in.Vault.Sill != nil && want.Sill.Over < 1e-3; !bare && math.Abs(float64(got.End.Vault-want.Vault)) > 2*slack {
				t.Fatalf("%s %s: vault ends at %.5f, at rest %.5f; %+v", c, m, float64(got.End.Vault), float64(want.Vault), got.Events)
			}
			return got, true
		}
		run(Program{From: s.AtRest(Dry), Pump: true, Valve: Works}, level.CourseFirst, level.MomentRun)
		everyday, from := level.CourseKept, Held
		if !w.level.Valve {
			everyday, from = level.CourseOpen, Open
		}
		c, ok := run(Program{From: s.AtRest(from), Pump: true, RunUp: 1, Valve: Works}, everyday, level.MomentRun)
		if !ok {
			t.Fatal("no everyday start")
		}
		if w.level.Valve {
			run(Program{From: c.End, Valve: Works}, everyday, level.MomentHeld)
			aside += w.aside
			run(Program{From: s.AtRest(Open), Pump: true, Valve: Works}, level.CourseOpen, level.MomentRun)
		}
		run(Program{From: c.End, Valve: StuckOpen}, everyday, level.MomentOpen)
	})
	if compared == 0 || aside == 0 {
		t.Error("nothing was compared")
	}
	t.Logf("%d states compared, %d boxes ran into lower ones", compared, aside)
}
