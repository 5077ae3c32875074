package layout

import (
	"math"
	"testing"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// hatched is a pump with 19 in of body and plumbing under a hatch of 17-3/4 in.
func hatched() Input {
	input := sideways()
	input.Vault.Opening = Opening{FromX: 0.25 * in, ToX: 18 * in, FromY: 1 * in, ToY: 14 * in}
	return input
}

// tilts lists the tilts of a way.
func tilts(a *Assembly) (out []Move) {
	for _, m := range a.LiftOut.Moves {
		if m.Turn != 0 {
			out = append(out, m)
		}
	}
	return out
}

// Plane geometry: tilted by w to the left, the corners of the body and the end of
// the plumbing must lie within 17-3/4 in of plan. Less than the least multiple of 5
// degrees at which they do, 50, is no way out; a little more may be told, because
// the way with the fewest moves is.
func TestTiltHatch(t *testing.T) {
	a, fs, faults := Lay(hatched())
	noFaults(t, faults)
	list := tilts(&a)
	if !a.LiftOut.Possible || len(list) != 1 {
		t.Fatalf("%+v", a.LiftOut)
	}
	// By hand: body x 0 to 15.5, z 0 to 9.5; plumbing about z 5, its last solid the
	// pump's half of the union.
	pl := a.Places[1]
	tip, r := 0.0, 0.0
	for _, s := range pl.Solids {
		if s.Opening == 0 {
			tip, r = math.Max(tip, s.To.X-0.5*0.0254), math.Max(r, float64(s.Radius))
		}
	}
	const inch = 0.0254
	points := [][2]float64{{0, 0}, {15.5 * inch, 0}, {0, 9.5 * inch}, {15.5 * inch, 9.5 * inch}, {tip, 5*inch + r}, {tip, 5*inch - r}}
	least := 0.0
	for w := 5.0; w <= 90 && least == 0; w += 5 {
		for _, way := range [2]float64{1, -1} {
			s, c := math.Sincos(way * w * math.Pi / 180)
			lo, hi := math.Inf(1), math.Inf(-1)
			for _, p := range points {
				x := p[0]*c + p[1]*s
				lo, hi = math.Min(lo, x), math.Max(hi, x)
			}
			if hi-lo <= 17.75*inch {
				least = w
			}
		}
	}
	if got := float64(list[0].Turn / unit.Degree); least != 50 || got < least-1e-6 || got > 70 {
		t.Errorf("tilted by %v degrees; the corners pass from %v on", got, least)
	}
	f := finding(t, fs, FindMoves)
	if f.Severity != trace.Caution || len(f.Args) != 4 {
		t.Errorf("%+v", f)
	}
}

// A lift over what stands beside the pump and a shift there lets it out without a
// tilt: that is told, and no tilt.
func TestLiftShiftLift(t *testing.T) {
	input := sideways()
	// A rack over the front half of the pump from 20 in up; a curb on the floor behind
	// it, 3 in high and 1/8 in away, over which it must be lifted first.
	input.Vault.Obstacles = []Obstacle{{"rack", block(0, 0, 20, 30, 7, 22)}, {"curb", block(0, 13, 0, 17, 14, 3)}}
	a, fs, faults := Lay(input)
	noFaults(t, faults)
	if !a.LiftOut.Possible || len(tilts(&a)) > 0 || len(a.LiftOut.Moves) != 3 {
		t.Fatalf("%+v", a.LiftOut)
	}
	if f := finding(t, fs, FindMoves); len(f.Args) != 2 {
		t.Errorf("%+v", f)
	}
}

// The way told is walked in small steps, every pose tested by the second method
// (alternating projections) against what stays, and corner by corner against floor,
// walls and hatch: nothing is met.
func TestTiltWalked(t *testing.T) {
	input := hatched()
	input.Vault.Obstacles = []Obstacle{{"shelf", block(24, 0, 14, 30, 18, 16)}}
	l := judged(input)
	if !l.a.LiftOut.Possible || len(tilts(&l.a)) == 0 {
		t.Fatalf("%+v", l.a.LiftOut)
	}
	m, steps := l.newMover(l.splits[0]), 0
	see := func() {
		steps++
		for i := range m.moving {
			s := &m.moving[i].solid
			for k := range m.static {
				if d := alternating(s, &m.static[k].solid, 200); d < m.limits[i][k]-1e-5 {
					t.Fatalf("step %d: %v from %s, %v is to be kept", steps, d, m.names[k], m.limits[i][k])
				}
			}
			top := s.reach(geom.Vec3{Z: 1})
			for _, w := range []struct {
				n geom.Vec3
				b float64
			}{{geom.Vec3{Z: -1}, 0}, {geom.Vec3{X: -1}, 0}, {geom.Vec3{X: 1}, 30 * 0.0254}, {geom.Vec3{Y: -1}, 0}, {geom.Vec3{Y: 1}, 18 * 0.0254}} {
				if s.reach(w.n) > w.b+1e-6 {
					t.Fatalf("step %d: through the wall %v", steps, w.n)
				}
			}
			if top > 26*0.0254+1e-6 && (s.reach(geom.Vec3{X: -1}) > -0.25*0.0254+1e-6 || s.reach(geom.Vec3{X: 1}) > 18*0.0254+1e-6) {
				t.Fatalf("step %d: through the deck beside the hatch", steps)
			}
		}
	}
	for _, mv := range l.a.LiftOut.Moves {
		n := int(float64(mv.Distance)/0.002+float64(mv.Turn/unit.Degree)/0.25) + 1
		for range n {
			for i := range m.moving {
				s := &m.moving[i]
				if mv.Turn != 0 {
					s.solid = s.turned(mv.About, mv.Axis(), mv.Turn/unit.Angle(n))
				} else {
					s.solid = s.shift(mv.Along.Scale(float64(mv.Distance) / float64(n)))
				}
			}
			see()
		}
	}
	low := math.Inf(1)
	for i := range m.moving {
		low = math.Min(low, -m.moving[i].reach(geom.Vec3{Z: -1}))
	}
	if steps < 300 || low < 26*0.0254-1e-6 {
		t.Errorf("after %d steps its lowest is at %v", steps, low)
	}
}

// What stands in the arc of a corner between two poses of the grid is met, though
// both poses are clear of it.
func TestTiltMeetsBetween(t *testing.T) {
	l := judged(hatched())
	m := l.newMover(l.splits[0])
	s := m.tilter(geom.Vec3{X: 1})
	up := geom.Vec3{Z: 6 * 0.0254}
	if !s.turns(up, 0, tiltStep) {
		t.Fatal("nothing is in the way")
	}
	// The body's corner left and on top, half way.
	body := m.moving[0].solid
	corner := body.c.Sub(body.u).Add(body.w).Sub(s.pivot).RotateAbout(s.axis, tiltStep/2).Add(s.pivot).Add(up)
	post := boxOf(geom.BoxOf(corner.Sub(geom.Vec3{X: 2e-4, Y: 0.3, Z: 2e-4}), corner.Add(geom.Vec3{X: 2e-4, Y: 0.3, Z: 2e-4})))
	m.static, m.names = append(m.static, shape{solid: post, box: post.bounds()}), append(m.names, "post")
	for i := range m.limits {
		m.limits[i] = append(m.limits[i], float64(in)/8)
	}
	for _, tilt := range [2]int{0, 1} {
		p := s.m.tilted(s.pivot, s.axis, unit.Angle(tilt)*tiltStep)
		for i := range p.moving {
			if !p.clear(i, len(p.static)-1, up, geom.Vec3{}) {
				t.Fatalf("tilted by %d steps it is met already", tilt)
			}
		}
	}
	if s.turns(up, 0, tiltStep) {
		t.Error("passes through what stands on its arc")
	}
}

// Where no way is found the pump stays blocked, and that is told as before.
func TestTiltNone(t *testing.T) {
	input := hatched()
	input.Vault.Opening.ToX, input.Vault.Opening.ToY = 8*in, 8*in // smaller than its least face
	a, fs, _ := Lay(input)
	if a.LiftOut.Possible || len(a.LiftOut.Moves) > 0 {
		t.Fatalf("%+v", a.LiftOut)
	}
	finding(t, fs, FindBlocked)
}

func BenchmarkTilt(b *testing.B) {
	none := hatched()
	none.Vault.Opening.ToX, none.Vault.Opening.ToY = 8*in, 8*in
	for name, input := range map[string]Input{"found": hatched(), "none": none} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				Lay(input)
			}
		})
	}
}
