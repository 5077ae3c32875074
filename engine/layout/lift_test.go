package layout

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/geom"
	"plashet/engine/trace"
)

// sideways is a pump whose port looks to the right, with a union on the level
// leg: the pump lifts straight out.
func sideways() Input {
	input := hillside(
		touching(adapter()),
		Laid{Part: inline(Union, "U1", 0.9*in, 4.125*in), Next: Join{Closing: true}},
		touching(bulkhead(0)),
	)
	input.Pump.Port, input.Pump.Points = at(15.5, 3.75, 5), geom.Vec3{X: 1}
	input.Pose.At = at(0.5, 5.25, 0)
	input.Vault.Length = 30 * in
	input.Vault.Outlet.Height = 5 * in
	return input
}

func TestLiftStraight(t *testing.T) {
	a, fs, faults := Lay(sideways())
	noFaults(t, faults)
	if f := finding(t, fs, FindLifts); len(f.Args) != 1 {
		t.Errorf("straight up needs no word of a shift: %+v", f.Args)
	}
	o := a.LiftOut
	if !o.Possible || len(o.Moves) != 1 || o.Moves[0].Along != (geom.Vec3{Z: 1}) {
		t.Fatalf("%+v", o)
	}
}

// A rack over part of the pump: shift from under it, by hand. The rack covers
// y from 10 to 18 over the whole length; the pump's far side is at y 12.75, so
// with 1/8 in to keep it must go 2.875 to the front; it has 5.25.
func TestLiftShift(t *testing.T) {
	input := sideways()
	input.Vault.Obstacles = []Obstacle{{"rack", block(0, 10, 20, 30, 18, 22)}}
	a, fs, _ := Lay(input)
	o := a.LiftOut
	if !o.Possible || len(o.Moves) != 2 || o.Blocker != "rack" {
		t.Fatalf("%+v", o)
	}
	wantVec(t, "to the front", o.Moves[0].Along, geom.Vec3{Y: -1}, 1e-12)
	wantIn(t, "by", o.Moves[0].Distance, 2.875, 1e-4)
	told := finding(t, fs, FindLifts).Message
	wantIn(t, "told", length(t, told, "shift"), 2.875, 1e-4)
	if arg(t, told, "toward").Text != "front" {
		t.Errorf("%+v", told)
	}

	// Rack from y 7.4: 5.475 needed, 5.25 there.
	input.Vault.Obstacles[0].Box.Min.Y = 7.4 * 0.0254
	a, fs, _ = Lay(input)
	f := finding(t, fs, FindBlocked)
	if f.Severity != trace.Danger || arg(t, f.Message, "toward").Text != "front" || arg(t, f.Message, "stop").Text != "front" {
		t.Errorf("%+v", f)
	}
	wantIn(t, "needs", length(t, f.Message, "needed"), 5.475, 1e-4)
	wantIn(t, "has", length(t, f.Message, "available"), 5.25, 1e-4)
	wantIn(t, "short", length(t, f.Message, "short"), 0.225, 3e-4)
	if a.LiftOut.Possible {
		t.Error("blocked")
	}

	// The shift itself is stopped by a conduit beside the pump.
	input.Vault.Obstacles[0].Box.Min.Y = 10 * 0.0254
	input.Vault.Obstacles = append(input.Vault.Obstacles, Obstacle{"conduit", block(2, 3, 0, 4, 4, 18)})
	a, _, _ = Lay(input)
	if a.LiftOut.Possible {
		t.Fatalf("the conduit is in the way: %+v", a.LiftOut)
	}
	best, _ := a.LiftOut.nearest()
	wantIn(t, "until the conduit, 1/8 in kept", best.Available, 5.25-4-0.125, 1e-4)
	if best.Blocker != "conduit" {
		t.Errorf("stopped by %s", best.Blocker)
	}
}

// A lip of 1/8 in: slide back first; without room behind the pump it is told.
func TestLiftLip(t *testing.T) {
	input := sideways()
	input.Parts[1].Splits = []Split{{Lip: in / 8}}
	a, fs, _ := Lay(input)
	o := a.LiftOut
	if !o.Possible || len(o.Moves) != 2 {
		t.Fatalf("%+v", o)
	}
	if f := finding(t, fs, FindLifts); len(f.Args) != 2 || math.Abs(float64(length(t, f.Message, "slide"))-0.125*0.0254) > 1e-12 {
		t.Errorf("%+v", f.Args)
	}
	wantVec(t, "back", o.Moves[0].Along, geom.Vec3{X: -1}, 1e-12)
	wantIn(t, "by the lip", o.Moves[0].Distance, 0.125, 1e-9)
	input.Pose.At = at(0.05, 5.25, 0)
	a, fs, _ = Lay(input)
	f := finding(t, fs, FindLip)
	wantIn(t, "has", length(t, f.Message, "available"), 0.05, 1e-4)
	if a.LiftOut.Possible {
		t.Error("the faces hold it")
	}
}

// A hatch smaller than the rim: x 0 to 18 takes the pump's 15.5 in and the
// adapter with its half of the union only after a shift, or not at all.
func TestLiftHatch(t *testing.T) {
	input := sideways()
	// The pump with adapter and half the union reaches from x 0.5 to 19.55.
	input.Vault.Opening = Opening{FromX: 0.25 * in, ToX: 20 * in, FromY: 1 * in, ToY: 10 * in}
	a, _, _ := Lay(input)
	o := a.LiftOut
	if !o.Possible || len(o.Moves) != 2 || o.Blocker != "rim" {
		t.Fatalf("%+v", o)
	}
	// Far side at y 12.75, hatch ends at 10.
	wantIn(t, "to the front", o.Moves[0].Distance, 2.75, 1e-3)
	input.Vault.Opening.ToX = 18 * in
	a, fs, _ := Lay(input)
	if a.LiftOut.Possible {
		t.Error("19 in do not pass through 17.75")
	}
	finding(t, fs, FindBlocked)
}

// The way out told is walked in small steps, each pose tested by the second
// method (alternating projections) and by plain coordinates: nothing is met.
// Where a straight lift is refused, some step of it meets something.
func TestLiftWalked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		input := sideways()
		if rapid.Bool().Draw(t, "upright") {
			input = levelCheck()
			input.Pose.At = at(4.25, 4.5, 0)
			input.Vault.Outlet.Along = 8.25 * in
		}
		f := func(lo, hi float64, name string) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		x, y, z := f(0, 20, "x"), f(0, 15, "y"), f(9.7, 24, "z")
		input.Vault.Obstacles = []Obstacle{{"thing", block(x, y, z, x+f(0.5, 6, "l"), y+f(0.5, 6, "w"), z+f(0.5, 4, "h"))}}
		input.Settings.LiftClear = Is(in / 8)
		l := judged(input)
		o := l.a.LiftOut
		if !o.Checked {
			return
		}
		m := l.newMover(l.splits[0])
		meets := func(off geom.Vec3) float64 {
			least := math.Inf(1)
			for i := range m.moving {
				for k := range m.static {
					s := m.moving[i].shift(off)
					if apart(m.moving[i].box.Shift(off), m.static[k].box) > 0.01 {
						continue
					}
					least = math.Min(least, alternating(&s, &m.static[k].solid, 100))
				}
			}
			return least
		}
		if !o.Possible {
			least := math.Inf(1)
			for s := 0.0; s <= m.up.Z; s += 0.004 {
				least = math.Min(least, meets(geom.Vec3{Z: s}))
			}
			if least > 0.125*0.0254+0.004 {
				t.Fatalf("refused, but nothing comes nearer than %v", least)
			}
			return
		}
		off := geom.Vec3{}
		for _, mv := range o.Moves {
			n := int(float64(mv.Distance)/0.005) + 1
			for i := 1; i <= n; i++ {
				p := off.Add(mv.Along.Scale(float64(mv.Distance) * float64(i) / float64(n)))
				if d := meets(p); d < contactInset/2 {
					t.Fatalf("at %v something is met (%v)", p, d)
				}
			}
			off = off.Add(mv.Along.Scale(float64(mv.Distance)))
		}
	})
}

// judged runs Lay and keeps the work for a look inside.
func judged(input Input) *laying {
	l := &laying{in: input}
	l.judge()
	return l
}

// What stands in the pump before it moves leaves the way out without a verdict;
// the clearances tell it.
func TestLiftStuck(t *testing.T) {
	input := sideways()
	input.Vault.Obstacles = []Obstacle{{"float", block(5, 7, 8, 7, 9, 12)}}
	a, fs, _ := Lay(input)
	if a.LiftOut.Checked || a.LiftOut.Possible {
		t.Errorf("%+v", a.LiftOut)
	}
	if f := finding(t, fs, FindPumpObstacle); f.Severity != trace.Danger {
		t.Errorf("%+v", f)
	}
	// Just touching is no hindrance.
	input.Vault.Obstacles[0].Box = block(0, 3, 0, 30, 5.25, 3)
	input.Settings.ObstacleClear = Is(0 * in)
	a, _, _ = Lay(input)
	if !a.LiftOut.Possible {
		t.Errorf("%+v", a.LiftOut)
	}
}

// A hatch that begins at y 6-1/2 in asks the pump, which stands from 5-1/4 to
// 12-3/4, for 1-1/4 to the back; a rack from y 13-1/2 to the wall, clear of it
// where it stands, is over it then: there is no way out.
func TestLiftHatchPutsRackOver(t *testing.T) {
	input := sideways()
	input.Vault.Opening = Opening{ToX: 30 * in, FromY: 6.5 * in, ToY: 18 * in}
	a, _, faults := Lay(input)
	noFaults(t, faults)
	if !a.LiftOut.Possible {
		t.Fatalf("without the rack it comes out: %+v", a.LiftOut)
	}
	wantIn(t, "to the back", a.LiftOut.Moves[0].Distance, 1.25, 1e-4)
	input.Vault.Obstacles = []Obstacle{{"rack", block(0, 13.5, 20, 30, 18, 22)}}
	a, fs, _ := Lay(input)
	if a.LiftOut.Possible {
		t.Errorf("it would rise into the rack: %+v", a.LiftOut)
	}
	finding(t, fs, FindBlocked)

	// A rack that ends at y 13-3/4 leaves off again: 13-3/4 + 1/8 less 5-1/4.
	input.Vault.Width, input.Vault.Opening.ToY = 30*in, 30*in
	input.Vault.Obstacles[0].Box.Max.Y = 13.75 * 0.0254
	a, _, _ = Lay(input)
	if !a.LiftOut.Possible {
		t.Fatalf("past the rack: %+v", a.LiftOut)
	}
	wantIn(t, "past the rack", a.LiftOut.Moves[0].Distance, 8.625, 1e-4)
}
