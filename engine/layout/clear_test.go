package layout

import (
	"math"
	"testing"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// who lists findings of a code as "part/against" with the distance found.
func who(t *testing.T, fs []trace.Finding, code, other string) map[string]float64 {
	t.Helper()
	out := map[string]float64{}
	for _, f := range findings(fs, code) {
		key := ""
		for _, a := range f.Args {
			if a.Name == "part" || a.Name == "parts" {
				key = a.Text
			}
		}
		if other != "" {
			key += "/" + arg(t, f.Message, other).Text
		}
		if _, twice := out[key]; twice {
			t.Errorf("%s told twice for %s", code, key)
		}
		out[key] = f.Found.SI / 0.0254
		if math.Abs(f.Limit.SI-f.Found.SI-float64(length(t, f.Message, "short"))) > 1e-12 {
			t.Errorf("%s: short is not limit less found", key)
		}
		name, want := "room", f.Found.SI
		if f.Severity == trace.Danger {
			name, want = "into", -want
		}
		if got := float64(length(t, f.Message, name)); got < 0 || math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: %s is told as %v", key, name, got)
		}
	}
	return out
}

func wantNear(t *testing.T, got map[string]float64, key string, want float64) {
	t.Helper()
	if d, ok := got[key]; !ok || math.Abs(d-want) > 1e-4 {
		t.Errorf("%s: got %v, want %.4f (all: %v)", key, d, want, got)
	}
}

// Distances worked out by hand on the level-valve layout of the demo: port at
// x 12, y 9; elbow's centre at z 18; the valve, 4 in thick, from x 14.65 to
// 20.85 at z 18; the union, 4-1/8 in thick, from z 11.1 to 15.
func TestClearances(t *testing.T) {
	_, fs, _ := Lay(levelCheck())
	for _, code := range []string{FindWall, FindPump, FindObstacle, FindParts, FindPumpWall, FindPumpObstacle, FindHand} {
		if n := findings(fs, code); len(n) > 0 {
			t.Errorf("a layout with room all round is told %s: %+v", code, n[0])
		}
	}

	// A lid at 20.1 in: the valve's back reaches 20, the elbow's 19.4375.
	input := levelCheck()
	input.Vault.Depth = 20.1 * in
	_, fs, _ = Lay(input)
	got := who(t, fs, FindWall, "wall")
	wantNear(t, got, "V1/lid", 0.1)
	if len(got) != 1 {
		t.Errorf("others too: %v", got)
	}
	// A lid at 19: the last pipe (2.375 thick) and the bulkhead fitting (3) stand
	// through it too, and all are told once, by the worst. The same where they
	// lack room: with 0.7 to keep from a lid at 20.1 the pipe's 0.9125 are enough.
	input.Vault.Depth = 19 * in
	_, fs, _ = Lay(input)
	got = who(t, fs, FindWall, "wall")
	wantNear(t, got, "E1, V1, P4, B1/lid", -1)
	f := finding(t, fs, FindWall)
	if f.Severity != trace.Danger || arg(t, f.Message, "worst").Text != "V1" || arg(t, f.Message, "plane").Text != "lid" || f.Path != "/assembly/parts/3" {
		t.Errorf("standing through the lid is a danger, the valve's above all: %+v", f)
	}
	input.Vault.Depth = 20.1 * in
	input.Settings.WallClear = Is(0.7 * in)
	_, fs, _ = Lay(input)
	wantNear(t, who(t, fs, FindWall, "wall"), "E1, V1, B1/lid", 0.1)
	// What stands in the lid is told apart from what only lacks room.
	input.Vault.Depth = 19.5 * in
	_, fs, _ = Lay(input)
	got = who(t, fs, FindWall, "wall")
	wantNear(t, got, "V1/lid", -0.5)
	wantNear(t, got, "E1, P4, B1/lid", 0)
	if len(got) != 2 {
		t.Errorf("others too: %v", got)
	}

	// A rack whose underside is 0.2 over the valve, and one through it.
	input = levelCheck()
	input.Vault.Obstacles = []Obstacle{{"rack", block(0, 0, 20.2, 24, 18, 21)}, {"float", block(16, 10.5, 17, 18, 13, 19)}}
	_, fs, _ = Lay(input)
	got = who(t, fs, FindObstacle, "obstacle")
	wantNear(t, got, "V1/rack", 0.2)
	wantNear(t, got, "V1/float", -0.5) // the valve reaches to y 11, the float begins at 10.5
	if len(got) != 2 {
		t.Errorf("others too: %v", got)
	}

	// A higher pump body under the valve: its top at 15.9, valve's belly at 16;
	// the union (x 9.94 to 14.06) and the elbow's hub stand clear of it.
	input = levelCheck()
	input.Pump.Blocks = append(input.Pump.Blocks, block(11, 0, 9, 15.5, 7.5, 15.9))
	_, fs, _ = Lay(input)
	got = who(t, fs, FindPump, "")
	wantNear(t, got, "V1", 0.1)
}

// The pump against walls and obstacles.
func TestPumpStands(t *testing.T) {
	input := levelCheck()
	input.Pose.At = at(-0.5, 5.25, 0)
	_, fs, _ := Lay(input)
	f := finding(t, fs, FindPumpWall)
	wantIn(t, "through the left wall", unit.Length(f.Found.SI), -0.5, 1e-9)
	if arg(t, f.Message, "wall").Text != "left" || f.Severity != trace.Danger {
		t.Errorf("%+v", f)
	}
	if len(findings(fs, FindBlocked)) > 0 {
		t.Error("no word on the way out of a pump that is not in")
	}
	input = levelCheck()
	input.Vault.Obstacles = []Obstacle{{"screen", block(0, 0, 0, 4.15, 18, 5)}}
	_, fs, _ = Lay(input)
	wantIn(t, "beside the screen", unit.Length(finding(t, fs, FindPumpObstacle).Found.SI), 0.1, 1e-6)

	// Larger than the vault in two directions.
	input = levelCheck()
	input.Vault.Length, input.Vault.Depth = 15*in, 9*in
	input.Vault.Outlet.Height = 8 * in
	_, _, faults := Lay(input)
	n := 0
	for _, f := range faults {
		if f.Code == FaultPumpLarger {
			n++
		}
	}
	if n != 2 {
		t.Errorf("want two faults for length and height, got %d", n)
	}
}

// The pump's room on the floor: to the walls, or to what stands before them;
// and the play it must give (likely error 0.148 in along y, see TestStack).
func TestRoom(t *testing.T) {
	input := levelCheck()
	a, fs, _ := Lay(input)
	for i, c := range []struct {
		got  unit.Length
		want float64
	}{{a.Room.Left, 4.25}, {a.Room.Right, 4.25}, {a.Room.Front, 5.25}, {a.Room.Back, 5.25}} {
		wantIn(t, [...]string{"left", "right", "front", "back"}[i], c.got, c.want, 1e-3)
	}
	if len(findings(fs, FindPlay)) != 0 {
		t.Error("there is play enough")
	}
	input.Vault.Obstacles = []Obstacle{{"screen", block(0, 0, 0, 24, 5.15, 4)}, {"low step", block(20, 0, 0, 24, 18, 1)}}
	input.Settings.ObstacleClear = Is[unit.Length](0)
	a, fs, _ = Lay(input)
	wantIn(t, "to the screen", a.Room.Front, 0.1, 1e-3)
	wantIn(t, "to the step", a.Room.Right, 0.25, 1e-3)
	f := finding(t, fs, FindPlay)
	if arg(t, f.Message, "axis").Text != "width" {
		t.Errorf("%+v", f)
	}
	wantIn(t, "needs", length(t, f.Message, "limit"), 8.5*math.Pi/180, 1e-3)
}

// A chain that turns back over itself: four elbows bring the pipe back to the
// first leg.
func TestChainCrossesItself(t *testing.T) {
	e := func(mark string, roll unit.Angle, next Join) Laid {
		return Laid{Part: elbow(Elbow90, mark, 1.15*in), Roll: roll, Next: next}
	}
	// Up 20, to the back 8, down 8, to the front: crosses the first leg.
	input := hillside(
		Laid{Part: adapter(), Next: Join{By: Faces, Distance: 20 * in}},
		e("E1", 0, Join{By: Centres, Distance: 8 * in}),
		e("E2", 180*unit.Degree, Join{By: Centres, Distance: 8 * in}),
		e("E3", 180*unit.Degree, Join{By: Centres, Distance: 14 * in}),
		touching(inline(Coupling, "C1", 0.2*in, 2.875*in)),
	)
	input.Vault.Length, input.Vault.Width, input.Vault.Depth = 60*in, 60*in, 60*in
	input.Pose.At = at(20, 30, 0)
	a, fs, _ := Lay(input)
	got := who(t, fs, FindParts, "other")
	// Both pipes 2.375 in thick, axes meet: apart by a move of 2.375.
	wantNear(t, got, "P4/P1", -2.375)
	if len(got) != 1 {
		t.Errorf("others too: %v", got)
	}
	if !a.Laid {
		t.Error("laid all the same")
	}
}

// A bulkhead fitting and the pipe into it pass through their wall; a valve does not.
func TestExitWall(t *testing.T) {
	input := levelCheck()
	input.Parts[3].Part = inline(CheckSwing, "V1", 6.2*in, 4*in) // ends at x 23.85
	_, fs, _ := Lay(input)
	got := who(t, fs, FindWall, "wall")
	wantNear(t, got, "V1/right", 0.15)
	if len(got) != 1 {
		t.Errorf("others too: %v", got)
	}
}

// Round and tapered vaults: the level leg's end at the wall, by hand.
func TestRoundVault(t *testing.T) {
	input := levelCheck()
	input.Vault = Vault{Round: true, Length: 24 * in, Depth: 26 * in, Path: "/vault", Outlet: Outlet{Wall: Right, Along: 12 * in, Height: 18 * in}}
	input.Pose.At = at(4.25, 8.25, 0)
	a, fs, faults := Lay(input)
	noFaults(t, faults)
	wantVec(t, "hole", a.Hole.At, at(24, 12, 18), 1e-12)
	if len(findings(fs, FindWall)) > 0 {
		t.Errorf("no wall is near: %+v", findings(fs, FindWall))
	}
	// Half a diagonal of the pump: hypot(7.75, 3.75) = 8.609 of 12 in.
	wantIn(t, "pump can go left until its corner meets the wall", a.Room.Left, math.Sqrt(12*12-3.75*3.75)-7.75, 1e-3)
	wantIn(t, "and back", a.Room.Back, math.Sqrt(12*12-7.75*7.75)-3.75, 1e-3)

	// A hole off the middle leaves along the radius.
	v := input.Vault
	v.Outlet.Along = 12*in + 6*in
	h, ok := v.Hole()
	if !ok {
		t.Fatal("the hole is on the wall")
	}
	wantVec(t, "at", h.At, at(12+math.Sqrt(144-36), 18, 18), 1e-9)
	wantVec(t, "axis", h.Axis, geom.Vec3{X: math.Sqrt(0.75), Y: 0.5}, 1e-12)
	v.Outlet.Along = 24.5 * in
	if _, ok = v.Hole(); ok {
		t.Error("a hole beyond the wall is refused")
	}
}

func TestTaperedHole(t *testing.T) {
	// Rim 20 wide, floor 17, 27 deep: at 19 up the back wall stands in by 1.5 x 8/27.
	v := Vault{Length: 16 * in, Width: 20 * in, Depth: 27 * in, FloorLength: 13 * in, FloorWidth: 17 * in, Outlet: Outlet{Wall: Back, Along: 8 * in, Height: 19 * in}}
	h, ok := v.Hole()
	if !ok {
		t.Fatal("the hole is on the wall")
	}
	wantVec(t, "at", h.At, at(8, 20-1.5*8/27, 19), 1e-12)
	wantVec(t, "axis", h.Axis, geom.Vec3{Y: 1}, 1e-12)
	if got := math.Tan(float64(h.Lean)); math.Abs(got-1.5/27) > 1e-12 {
		t.Errorf("lean %v", got)
	}
	// Along must lie between the side walls at that height.
	v.Outlet.Along = 0.4 * in
	if _, ok = v.Hole(); ok {
		t.Error("a hole in the tapered corner is refused")
	}
}

// Without a bulkhead fitting the last pipe leaves through the wall.
func TestTail(t *testing.T) {
	input := levelCheck()
	input.Parts = input.Parts[:4]
	input.Parts[3].Next = Join{}
	a, fs, faults := Lay(input)
	noFaults(t, faults)
	if a.Tail == nil || len(a.Pieces) != 3 {
		t.Fatalf("want three pieces and a tail, got %d", len(a.Pieces))
	}
	wantIn(t, "from the valve's stop to the wall", a.Tail.StopToStop, 24-19.35, 1e-9)
	finding(t, fs, FindTail)
	if len(findings(fs, FindWall)) > 0 || len(findings(fs, FindClosure)) > 0 {
		t.Errorf("the pipe may leave: %s", codes(fs, faults))
	}
	// Across the hole's axis it must still meet it.
	input.Vault.Outlet.Along = 9.5 * in
	a, fs, _ = Lay(input)
	wantIn(t, "off to the front", unit.Length(a.Closure.Off.Y), -0.5, 1e-9)
	if f := finding(t, fs, FindClosure); f.Severity != trace.Danger {
		t.Error("half an inch off is a danger")
	}
}

// The chain's end beside the hole, and turned.
func TestClosure(t *testing.T) {
	input := levelCheck()
	input.Vault.Outlet.Along, input.Vault.Outlet.Height = 9.1*in, 18*in
	a, fs, _ := Lay(input)
	f := finding(t, fs, FindClosure)
	wantIn(t, "dy", length(t, f.Message, "dy"), -0.1, 1e-9)
	wantIn(t, "dx", length(t, f.Message, "dx"), 0, 1e-9)
	wantIn(t, "across", a.Closure.Across, 0.1, 1e-9)
	if f.Severity != trace.Caution {
		t.Error("a tenth of an inch may be taken up by moving the pump: a caution")
	}
	input.Parts[2].Roll = right - 5*unit.Degree
	_, fs, _ = Lay(input)
	if f := finding(t, fs, FindTurned); math.Abs(f.Found.SI/float64(unit.Degree)-5) > 1e-9 {
		t.Errorf("turned by %v", f.Found.SI)
	}
}

// Closing pieces: measured ones keep their gap, two along one line cannot both
// close, and one without room says by how much.
func TestClosingPieces(t *testing.T) {
	input := levelCheck()
	input.Parts[1].Next = Join{By: Faces, Distance: 0.35 * in}
	input.Parts[3].Next = Join{Closing: true, Measured: Is(2.5 * in)}
	a, fs, _ := Lay(input)
	wantIn(t, "cut from the gap measured", a.Pieces[3].Cut, 5.5, 1e-9)
	wantIn(t, "the drawn chain is off by the difference", unit.Length(a.Closure.Off.X), 0.05, 1e-6)
	if len(a.Closure.Worked) != 0 || len(findings(fs, FindWorked)) != 0 {
		t.Error("a measured piece is not worked out")
	}

	input = levelCheck()
	input.Parts[2].Next = Join{Closing: true} // elbow to valve, on the valve's own leg
	_, _, faults := Lay(input)
	faultOf(t, faults, FaultClosingIdle)

	input = levelCheck()
	input.Vault.Outlet.Height = 17.5 * in // 0.15 less than the fittings need
	a, _, faults = Lay(input)
	f := faultOf(t, faults, FaultClosingShort)
	wantIn(t, "short by", length(t, f.Message, "short"), 0.15, 1e-6)
	wantIn(t, "and it ends too high", unit.Length(a.Closure.Off.Z), 0.15, 1e-6)
	wantIn(t, "while the other still closes", unit.Length(a.Closure.Off.X), 0, 1e-6)

	input = levelCheck()
	input.Parts[1].Next = Join{Closing: true, By: Faces, Distance: in}
	_, fs, _ = Lay(input)
	wantIn(t, "a typed distance is told", length(t, finding(t, fs, FindTyped).Message, "distance"), 1, 1e-12)

	// A closing piece with little to cut away.
	input = levelCheck()
	input.Vault.Outlet.Height = 17.67 * in // leaves 0.02 in upright
	_, fs, _ = Lay(input)
	wantIn(t, "spare", unit.Length(finding(t, fs, FindClosingSpare).Found.SI), 0.02, 1e-6)
}

// The pump turned about the upright stands with the corner nearest the origin
// where it was put; its port turns along (by hand: a quarter turn to the left
// takes (x, y) to (-y, x)).
func TestPumpTurned(t *testing.T) {
	input := levelCheck()
	input.Pump.Port, input.Pump.Points = at(15.5, 2, 5), geom.Vec3{X: 1}
	input.Pose = Pose{At: at(1, 2, 0.5), Turn: 90 * unit.Degree}
	a, _, _ := Lay(input)
	body := blockOf(a.Body[0])
	got := body.bounds()
	wantVec(t, "near corner", got.Min, at(1, 2, 0.5), 1e-12)
	wantVec(t, "far corner", got.Max, at(8.5, 17.5, 10), 1e-12)
	wantVec(t, "port", a.Port, at(8.5-2, 17.5, 5.5), 1e-12)
	wantVec(t, "looks", a.Points, geom.Vec3{Y: 1}, 1e-12)
	// By 30 degrees the box round it is l cos + w sin by l sin + w cos.
	input.Pose.Turn = 30 * unit.Degree
	a, _, _ = Lay(input)
	body = blockOf(a.Body[0])
	c, s := math.Cos(math.Pi/6), math.Sin(math.Pi/6)
	wantVec(t, "round it", body.bounds().Size(), at(15.5*c+7.5*s, 15.5*s+7.5*c, 9.5), 1e-12)
	wantVec(t, "near corner", body.bounds().Min, at(1, 2, 0.5), 1e-12)
}

// An elbow's outer corner counts up to the mitre: hub 2.875 in thick, its
// corner 1.4375 in left of and over the centre (x 12, z 18).
func TestElbowCorner(t *testing.T) {
	input := levelCheck()
	input.Vault.Obstacles = []Obstacle{{"bracket", block(8, 8, 19.3, 10.7, 10, 21)}}
	_, fs, _ := Lay(input)
	wantNear(t, who(t, fs, FindObstacle, "obstacle"), "E1/bracket", -0.1375)
}

// A bulkhead fitting's envelope ends at the wall's inner face.
func TestBulkheadEnvelope(t *testing.T) {
	a, _, _ := Lay(levelCheck())
	s := a.Places[4].Solids
	if len(s) != 1 {
		t.Fatalf("%+v", s)
	}
	wantVec(t, "from its face", s[0].From, at(24-0.7, 9, 18), 1e-9)
	wantVec(t, "to the wall", s[0].To, at(24, 9, 18), 1e-9)
}
