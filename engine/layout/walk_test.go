package layout

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

// The clock by its definition (job document, Laid.Roll): 0 is up, or the back
// wall (+y) when the inlet is upright; clockwise looking along the flow.
func TestRollClock(t *testing.T) {
	x, y, z := geom.Vec3{X: 1}, geom.Vec3{Y: 1}, geom.Vec3{Z: 1}
	neg := func(v geom.Vec3) geom.Vec3 { return v.Scale(-1) }
	for _, c := range []struct {
		name string
		flow geom.Vec3
		roll unit.Angle
		want geom.Vec3
	}{
		// Looking to the right wall (+x) with the top up, the front wall (-y) is on the right hand.
		{"to the right, 12", x, 0, z},
		{"to the right, 3", x, 90, neg(y)},
		{"to the right, 6", x, 180, neg(z)},
		{"to the right, 9", x, 270, y},
		{"to the left, 3", neg(x), 90, y},
		{"to the back, 3", y, 90, x},
		{"to the front, 3", neg(y), 90, neg(x)},
		// Looking up with the back wall on top, the left wall is on the right hand.
		{"up, 12", z, 0, y},
		{"up, 3", z, 90, neg(x)},
		{"up, 9", z, -90, x},
		// Looking down with the back wall on top, the right wall is on the right hand.
		{"down, 12", neg(z), 0, y},
		{"down, 3", neg(z), 90, x},
	} {
		input := hillside(rolled(elbow(Elbow90, "E1", 1.15*in), c.roll*unit.Degree))
		input.Pump.Points = c.flow
		input.Pump.Outlet = End{Kind: Socket, Size: "2", Depth: by(1 * in), TakeOff: by(-1 * in)}
		a, _, faults := Lay(input)
		noFaults(t, faults)
		wantVec(t, c.name, a.Places[0].OutDir, c.want, 1e-12)
		turn := math.Mod(float64(c.roll)+360, 360)
		if got := float64(a.Rolls[0].Angle / unit.Degree); math.Abs(got-turn) > 1e-9 {
			t.Errorf("%s: marked at %v", c.name, got)
		}
	}
}

// Arc along the outside of a 2 in pipe: a quarter turn of a circle of 2.375 in
// is 2.375 pi / 4 = 1.8653 in, to the sixteenth 1-7/8 (plane geometry).
func TestRollMark(t *testing.T) {
	wantIn(t, "quarter turn", Arc(2.375*in, 90*unit.Degree, in/16), 1.875, 1e-9)
	wantIn(t, "exact", Arc(2.375*in, 90*unit.Degree, 0), 1.86532, 1e-5)
	if got := Arc(0.05, 60*unit.Degree, 0.001); math.Abs(float64(got)-0.026) > 1e-12 { // 50 pi / 6 = 26.18 mm
		t.Errorf("metric: %v", got)
	}
	// Two elbows in one plane: out and on (an offset) is half a turn apart, out
	// and back (a U) none.
	for _, c := range []struct {
		name  string
		roll  unit.Angle
		twist float64
	}{{"on", 0, 180}, {"back", 180, 0}, {"to the right", 90, 270}, {"to the left", 270, 90}} {
		// Up, then to the back wall; then by c.roll.
		input := hillside(touching(adapter()), rolled(elbow(Elbow90, "E1", 1.15*in), 0), rolled(elbow(Elbow90, "E2", 1.15*in), c.roll*unit.Degree))
		a, _, _ := Lay(input)
		m := a.Rolls[1]
		if !m.HasTwist || m.From != "E1" || math.Abs(float64(m.Twist/unit.Degree)-c.twist) > 1e-9 {
			t.Errorf("%s: twist %v, want %v", c.name, m.Twist/unit.Degree, c.twist)
		}
		wantIn(t, c.name+" arc", m.TwistArc, math.Round(c.twist/360*math.Pi*2.375*16)/16, 1e-9)
	}
}

// The ways to give a distance agree with each other and with the sum of
// take-offs, sockets and gap.
func TestDistances(t *testing.T) {
	for _, c := range []struct {
		name string
		join Join
	}{
		{"faces", Join{By: Faces, Distance: 2 * in}},
		{"stops", Join{By: Stops, Distance: 5 * in}},
		{"centres", Join{By: Centres, Distance: 1.15*2*in + 5*in}},
		{"pipe", Join{By: PipeLength, Distance: 4.75 * in}},
	} {
		first := Laid{Part: elbow(Elbow90, "E1", 1.15*in), Next: c.join}
		a, _, faults := Lay(hillside(touching(adapter()), first, touching(elbow(Elbow90, "E2", 1.15*in))))
		noFaults(t, faults)
		wantIn(t, c.name+" centres", a.Places[2].Spacing, 7.3, 1e-9)
		wantIn(t, c.name+" stops", a.Pieces[1].StopToStop, 5, 1e-9)
		wantIn(t, c.name+" cut", a.Pieces[1].Cut, 4.75, 1e-9)
		wantIn(t, c.name+" gap", a.Pieces[1].FaceGap, 2, 1e-9)
	}
}

// chain is a random chain of elbows and straight parts with random distances.
func chain(t *rapid.T) Input {
	parts := make([]Laid, 0, 7)
	parts = append(parts, touching(adapter()))
	for range rapid.IntRange(1, 6).Draw(t, "parts") {
		gap := unit.Length(rapid.Float64Range(0, 8).Draw(t, "gap")) * in
		parts[len(parts)-1].Next = Join{By: Faces, Distance: gap}
		k := rapid.SampledFrom([]Kind{Elbow90, Elbow45, Coupling, Union, CheckSpring}).Draw(t, "kind")
		l := Laid{Part: inline(k, "", 1*in, 3*in)}
		if turn, _ := k.Turn(); turn != 0 {
			l.Part = elbow(k, "", unit.Length(rapid.Float64Range(0.5, 2).Draw(t, "toStop"))*in)
			l.Roll = unit.Angle(rapid.Float64Range(-360, 360).Draw(t, "roll")) * unit.Degree
		}
		parts = append(parts, l)
	}
	return hillside(parts...)
}

// Sums: centre to centre is both take-offs plus stop to stop, also between the
// points in space; and a piece lies between its stops.
func TestSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		input := chain(t)
		a, _, faults := Lay(input)
		if len(faults) > 0 {
			t.Fatalf("faults: %+v", faults)
		}
		for _, p := range a.Pieces {
			from, to := input.Parts[p.After], input.Parts[p.After+1]
			sum := from.Out.TakeOff.Length + p.StopToStop + to.In.TakeOff.Length
			got := a.Places[p.After+1].Centre.Sub(a.Places[p.After].Centre).Norm()
			if math.Abs(float64(sum)-got) > 1e-9 || math.Abs(float64(sum-a.Places[p.After+1].Spacing)) > 1e-9 {
				t.Fatalf("%s: sum %v, between centres %v", p.Mark, sum, got)
			}
			if d := p.End.Sub(p.Start).Norm(); math.Abs(d-float64(p.Exact)) > 1e-9 {
				t.Fatalf("%s: drawn %v long, exact %v", p.Mark, d, p.Exact)
			}
			if p.Ends[0].Mark+p.Ends[0].Gap != p.Ends[0].Socket {
				t.Fatalf("%s: mark %v + gap %v is not the socket", p.Mark, p.Ends[0].Mark, p.Ends[0].Gap)
			}
		}
		for i, pl := range a.Places {
			turn, _ := input.Parts[i].Turn()
			got := math.Atan2(pl.InDir.Cross(pl.OutDir).Norm(), pl.InDir.Dot(pl.OutDir))
			if math.Abs(got-float64(turn)) > 1e-9 || math.Abs(pl.OutDir.Norm()-1) > 1e-12 {
				t.Fatalf("part %d turns by %v", i, got)
			}
		}
	})
}

// A pump moved, or turned by quarters with every roll's meaning kept, takes all
// pieces along and changes no length.
func TestRigidMotion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		input := chain(t)
		input.Pose.At = at(60, 60, 0)
		a, _, _ := Lay(input)
		moved := input
		v := geom.Vec3{X: 0.31, Y: -0.22, Z: 0.17}
		moved.Pose.At = input.Pose.At.Add(v)
		b, _, _ := Lay(moved)
		same(t, "moved", a, b, func(p geom.Vec3) geom.Vec3 { return p.Add(v) })

		// Turned about the upright, clocks that start from the back wall must be
		// turned along: roll + turn where the inlet is upright (seen along an
		// upward flow a turn to the left runs with the clock).
		quarters := rapid.IntRange(1, 3).Draw(t, "quarters")
		turn := unit.Angle(quarters) * 90 * unit.Degree
		turned := input
		turned.Parts = slices.Clone(input.Parts)
		turned.Pose.Turn = turn
		for i, pl := range a.Places {
			if upright(pl.InDir) {
				turned.Parts[i].Roll += turn * unit.Angle(math.Copysign(1, pl.InDir.Z))
			}
		}
		c, _, _ := Lay(turned)
		up := geom.Vec3{Z: 1}
		shift := c.Port.Sub(a.Port.RotateAbout(up, turn))
		same(t, "turned", a, c, func(p geom.Vec3) geom.Vec3 { return p.RotateAbout(up, turn).Add(shift) })
	})
}

func same(t *rapid.T, how string, a, b Assembly, move func(geom.Vec3) geom.Vec3) {
	for i := range a.Places {
		for _, p := range [3][2]geom.Vec3{
			{a.Places[i].Centre, b.Places[i].Centre},
			{a.Places[i].InFace, b.Places[i].InFace},
			{a.Places[i].OutFace, b.Places[i].OutFace},
		} {
			if d := move(p[0]).Sub(p[1]).Norm(); d > 1e-7 {
				t.Fatalf("%s: part %d is off by %v", how, i, d)
			}
		}
	}
	for i := range a.Pieces {
		p, q := a.Pieces[i], b.Pieces[i]
		if p.Cut != q.Cut || math.Abs(float64(p.Exact-q.Exact)) > 1e-12 {
			t.Fatalf("%s: piece %s is %v, was %v", how, p.Mark, q.Cut, p.Cut)
		}
	}
}

// All rolls reversed give the mirror image in the plane through the port, the
// upright and the flow (for an upright port: the plane x = const, whose clock
// starts from the back wall).
func TestMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		input := chain(t)
		input.Pose.At = at(60, 60, 0)
		a, _, _ := Lay(input)
		mirror := input
		mirror.Parts = slices.Clone(input.Parts)
		for i := range mirror.Parts {
			mirror.Parts[i].Roll *= -1
		}
		b, _, _ := Lay(mirror)
		for i := range a.Places {
			p, q := a.Places[i].Centre, b.Places[i].Centre
			p.X = 2*a.Port.X - p.X
			if d := p.Sub(q).Norm(); d > 1e-7 {
				t.Fatalf("part %d is off the mirror image by %v", i, d)
			}
		}
	})
}
