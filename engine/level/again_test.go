package level

import (
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

// TestAgain: over random basins, some starved, some without vault, sill or
// valve, one Again gives to the last digit what Solve gives, whatever it solved
// before.
func TestAgain(t *testing.T) {
	var again Again
	starved, states := 0, 0
	rapid.Check(t, func(r *rapid.T) {
		in := drawInputs(r)
		want, err := Solve(in)
		if err != nil {
			t.Fatal(err)
		}
		vault, err := again.Running(in)
		if err != nil {
			t.Fatal(err)
		}
		if st, ok := want.Find(want.Everyday(), MomentRun); !ok || st.Vault != vault {
			r.Fatalf("the vault runs at %v, want %v", vault, st.Vault)
		}
		have, err := again.Solve(in)
		if err != nil {
			t.Fatal(err)
		}
		if have.Draw != want.Draw || have.DrawOpen != want.DrawOpen || have.HeadNeeded != want.HeadNeeded || have.Everyday() != want.Everyday() {
			r.Fatalf("draws %v %v, want %v %v", have.Draw, have.DrawOpen, want.Draw, want.DrawOpen)
		}
		for i := range have.States {
			a := &have.States[i]
			b, ok := want.Find(a.Course, a.Moment)
			if !ok {
				r.Fatalf("%s %s is told by Again only", a.Course, a.Moment)
			}
			states++
			if b.Starved {
				starved++
			}
			if a.Pond != b.Pond || a.Vault != b.Vault || a.Change != b.Change || a.Starved != b.Starved || a.Passes != b.Passes ||
				a.Missing != b.Missing || a.Sill.Over != b.Sill.Over || a.Pump.Over != b.Pump.Over || a.Edge.Freeboard != b.Edge.Freeboard || a.Edge.Spill != b.Edge.Spill {
				r.Fatalf("%s %s: %+v, want %+v", a.Course, a.Moment, a, b)
			}
		}
		for _, c := range []Course{CourseFirst, want.Everyday()} {
			for _, m := range []Moment{MomentRun, MomentHeld, MomentOpen} {
				_, there := want.Find(c, m)
				if _, told := have.Find(c, m); there != told {
					r.Fatalf("%s %s: told %v, want %v", c, m, told, there)
				}
			}
		}
	})
	if states == 0 || starved == 0 {
		t.Fatalf("%d states, %d starved: the cases do not reach what they should", states, starved)
	}
}

// TestAgainAllocates: nothing, after the first time.
func TestAgainAllocates(t *testing.T) {
	in := courtyard()
	var again Again
	if _, err := again.Solve(in); err != nil {
		t.Fatal(err)
	}
	if n := testing.AllocsPerRun(10, func() {
		if _, err := again.Solve(in); err != nil {
			t.Fatal(err)
		}
	}); n > 0 {
		t.Errorf("%v allocations", n)
	}
}

// TestChangedVessel: twice the area holds twice the water at every level, a
// raised one the same as much higher; and levels come back.
func TestChangedVessel(t *testing.T) {
	a := must(NewPond(Pond{Outline: must(geom.Ellipse(5, 3.5)), Section: []Step{{0.3, 0.2}, {0.3, 0.5}, {0.9, 1}}, Void: 0.4}))
	b := a.Changed(2, 3)
	for _, z := range []unit.Length{-1, -0.9, -0.5, -0.3, -0.1, 0, 0.2} {
		near(t, "volume", float64(b.Volume(z+3)), 2*float64(a.Volume(z)), 1e-12)
		near(t, "plan", float64(b.Plan(z+3)), 2*float64(a.Plan(z)), 1e-12)
		if v := b.Volume(z + 3); v > 0 {
			back, ok := b.Level(v)
			if !ok {
				t.Errorf("empty at %v", z)
			}
			near(t, "level", float64(back), float64(z)+3, 1e-9)
		}
	}
	near(t, "floor", float64(b.Floor()-a.Floor()), 3, 1e-12)
	near(t, "top", float64(b.Top()-a.Top()), 3, 1e-12)
}

func BenchmarkAgain(b *testing.B) {
	in := courtyard()
	var again Again
	b.ReportAllocs()
	for b.Loop() {
		if _, err := again.Solve(in); err != nil {
			b.Fatal(err)
		}
	}
}
