package layout

import (
	"math"
	"strings"
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

func TestThreads(t *testing.T) {
	port := func(k EndKind, th Thread) End { return End{Kind: k, Thread: th, Size: "2"} }
	for _, c := range []struct {
		name  string
		port  End
		male  Thread
		fault string
		find  string
		laid  bool
	}{
		{"NPT in NPT", port(FemaleThread, NPT), NPT, "", "", true},
		{"BSPT in BSPT", port(FemaleThread, BSPT), BSPT, "", "", true},
		{"BSPT in BSPP", port(FemaleThread, BSPP), BSPT, "", FindParallel, true},
		{"NPT in BSPT", port(FemaleThread, BSPT), NPT, FaultThread, "", true},
		{"NPT in BSPP", port(FemaleThread, BSPP), NPT, FaultThread, "", true},
		{"BSPP in BSPT", port(FemaleThread, BSPT), BSPP, FaultThread, "", true},
		{"male on male", port(MaleThread, NPT), NPT, FaultEnds, "", false},
		{"male thread in a socket", End{Kind: Socket, Size: "2", Depth: by(in), TakeOff: by(-in)}, NPT, FaultEnds, "", false},
		{"hose tail", port(HoseTail, NoThread), NPT, FaultEnds, "", false},
	} {
		p := adapter()
		p.In.Thread = c.male
		input := hillside(touching(p))
		input.Pump.Outlet = c.port
		a, fs, faults := Lay(input)
		if got := codes(nil, faults); got != c.fault {
			t.Errorf("%s: faults %q, want %q", c.name, got, c.fault)
		}
		if c.find != "" {
			finding(t, fs, c.find)
		} else if len(findings(fs, FindParallel)) > 0 {
			t.Errorf("%s: told to be parallel", c.name)
		}
		if a.Laid != c.laid {
			t.Errorf("%s: laid %v", c.name, a.Laid)
		}
	}
}

// Thread make-up: the tip goes in by the engagement. ASME B1.20.1, 2 in: hand
// tight 0.436 in and 3 turns of wrench make-up 0.2609 in: 0.6969 in (reference
// threads.csv).
func TestThreadMakeUp(t *testing.T) {
	p := ThreadedInlet("2", NPT, by(1.2*in), by(0.6969*in), by(1.5*in), by(2.875*in))
	a, _, _ := Lay(hillside(touching(p)))
	wantIn(t, "port face to stop", a.Places[0].Spacing, 1.2-0.6969, 1e-12)
	wantIn(t, "face of the hub over the port", unit.Length(a.Places[0].OutFace.Z), 9.5+1.2-0.6969+1.5, 1e-9)
	wantIn(t, "its envelope starts at the port", unit.Length(a.Places[0].InFace.Z), 9.5, 1e-9)
}

// A street elbow's spigot is seated at the stop; where it is shorter than the
// socket its shoulder meets the face first.
func TestStreetElbow(t *testing.T) {
	street := StreetElbow(Street90, "2", by(2.9*in), by(1.5*in), by(2.375*in), by(1.15*in), by(1.5*in), by(2.875*in))
	street.Mark = "S1"
	input := hillside(touching(adapter()), rolled(elbow(Elbow90, "E1", 1.15*in), right), touching(street))
	a, fs, faults := Lay(input)
	noFaults(t, faults)
	wantIn(t, "centre to centre", a.Places[2].Spacing, 1.15+2.9, 1e-9)
	if len(a.Pieces) != 1 {
		t.Errorf("no pipe between them: %d pieces", len(a.Pieces))
	}
	if n := findings(fs, FindParts); len(n) > 0 {
		t.Errorf("the spigot may stand in its socket: %+v", n[0])
	}
	street.In.Depth = by(1.25 * in)
	input.Parts[2].Part = street
	input.Parts[1].Next = Join{By: Faces, Distance: in}
	a, fs, _ = Lay(input)
	wantIn(t, "shoulder on the face", a.Places[2].Spacing, 1.15+2.9+0.25, 1e-9)
	f := finding(t, fs, FindFixed)
	wantIn(t, "fixed", length(t, f.Message, "fixed"), 4.3, 1e-9)
	input.Parts[1].Next = Join{Closing: true}
	_, _, faults = Lay(input)
	faultOf(t, faults, FaultClosingDirect)
}

func TestSizes(t *testing.T) {
	c := Inline(Coupling, "1-1/2", by(0.2*in), by(1.25*in), by(2.3*in))
	input := hillside(touching(adapter()), touching(c))
	_, _, faults := Lay(input)
	f := faultOf(t, faults, FaultSize)
	if arg(t, f.Message, "fromSize").Text != "2" || arg(t, f.Message, "toSize").Text != "1-1/2" || f.Path != "/assembly/parts/0" {
		t.Errorf("%+v", f)
	}
	r := Inline(Reducer, "2", by(0.5*in), by(1.5*in), by(2.875*in))
	r.Out.Size, r.Mark = "1-1/2", "R1"
	input = hillside(touching(adapter()), touching(r), touching(c))
	_, _, faults = Lay(input)
	faultOf(t, faults, FaultPipe) // no 1-1/2 in pipe in the assembly
	input.Pipes = append(input.Pipes, Pipe{Kind: "PVC Sch 40", Size: "1-1/2", OD: 1.9 * in, Bore: 1.61 * in})
	a, fs, faults := Lay(input)
	noFaults(t, faults)
	if f := finding(t, fs, FindReduces); arg(t, f.Message, "part").Text != "R1" {
		t.Errorf("%+v", f)
	}
	if a.Pieces[1].Pipe.Size != "1-1/2" {
		t.Errorf("piece after the reducer is of %s", a.Pieces[1].Pipe.Size)
	}
}

// A piece under two sockets less both gaps: the hubs would stand in each other.
func TestShortPiece(t *testing.T) {
	input := levelCheck()
	input.Parts[0].Next = Join{By: PipeLength, Distance: 2.5 * in} // least 2.75
	_, _, faults := Lay(input)
	f := faultOf(t, faults, FaultShort)
	wantIn(t, "short", length(t, f.Message, "short"), 0.25, 1e-9)
	wantIn(t, "least", length(t, f.Message, "least"), 2.75, 1e-9)
	input.Parts[0].Next.Distance = 2.75 * in
	_, _, faults = Lay(input)
	noFaults(t, faults) // hubs may touch
}

func TestMeasureFirst(t *testing.T) {
	least := func(m Measure) Measure {
		m.Source = trace.Source{Title: "ASTM D2466 minimum laying lengths", Basis: trace.BasisMemory}
		m.Least = true
		return m
	}
	input := levelCheck()
	_, fs, _ := Lay(input)
	if n := findings(fs, FindMeasureFirst); len(n) > 0 {
		t.Errorf("all is measured: %+v", n[0])
	}
	e := elbow(Elbow90, "E1", 1.15*in)
	e.In.TakeOff, e.Out.TakeOff = least(e.In.TakeOff), least(e.Out.TakeOff)
	e2 := e
	e2.Mark = "E2"
	v := inline(CheckSwing, "V1", 3.2*in, 4*in)
	v.In.Depth = least(v.In.Depth)
	input.Parts = []Laid{input.Parts[0], input.Parts[1], rolled(e, right), touching(e2), touching(v)}
	a, fs, _ := Lay(input)
	got := findings(fs, FindMeasureFirst)
	if len(got) != 2 || arg(t, got[0].Message, "parts").Text != "E1, E2" || arg(t, got[1].Message, "parts").Text != "V1" {
		t.Errorf("%+v", got)
	}
	if a.Pieces[3].Ends[1].Sure || !a.Pieces[3].Ends[0].Sure {
		t.Errorf("the valve's socket is not sure: %+v", a.Pieces[3].Ends)
	}
	if e := a.Pieces[3].Ends; e[0].By != ByHand || e[1].By == ByHand || e[1].Source != v.In.Depth.Source {
		t.Errorf("an elbow that was measured and a valve that was not: %+v", e)
	}
	for _, c := range []struct {
		m    Measure
		want KnownBy
	}{
		{Measure{Source: trace.Source{Basis: trace.BasisMeasured}}, ByHand},
		{Measure{Source: trace.Source{Basis: trace.BasisSheet}}, BySheet},
		{Measure{Source: trace.Source{Basis: trace.BasisPublished}}, ByTable},
		{Measure{Source: trace.Source{Basis: trace.BasisPublished}, Least: true}, ByLeast},
		{Measure{Source: trace.Source{Basis: trace.BasisMemory}, Least: true}, ByMemory},
		{Measure{Source: trace.Source{Basis: trace.BasisGuess}}, ByMemory},
	} {
		if got := c.m.By(); got != c.want {
			t.Errorf("%+v is known by %s, want %s", c.m, got, c.want)
		}
	}
}

func TestStubs(t *testing.T) {
	a, _, _ := Lay(levelCheck())
	if len(a.Stubs) != 3 { // P4 has 2.45 in between the faces: tried with the pipe itself
		t.Fatalf("%+v", a.Stubs)
	}
	wantIn(t, "touching hubs", a.Stubs[0].Length, 1, 1e-9)
	wantIn(t, "over a gap of 0.35", a.Stubs[1].Length, 1.375, 1e-9) // 1.35 to the sixteenth
}

func TestDefaultsAreTold(t *testing.T) {
	a, _, _ := Lay(levelCheck())
	told := map[string]bool{}
	for _, as := range a.Assumptions {
		told[as.Code] = true
	}
	all := []string{
		AssumeMakeUp, AssumeClosingMakeUp, AssumeStub, AssumeWallClear, AssumePumpClear, AssumeObstacleClear,
		AssumePartClear, AssumeHand, AssumeLiftClear, AssumeSaw, AssumeTape, AssumeSeat, AssumeRoll, AssumeElbow, AssumeAttitude,
	}
	for _, c := range all {
		if !told[c] {
			t.Errorf("%s is in force and not told", c)
		}
	}
	input := levelCheck()
	input.Settings = Settings{
		MakeUp: Is[unit.Length](0), ClosingMakeUp: Is(in / 16), Stub: Is(in), WallClear: Is(in), PumpClear: Is(in), ObstacleClear: Is(in),
		PartClear: Is(in), Hand: Is(in), LiftClear: Is(in), Saw: Is(in), Tape: Is(in), Seat: Is(in), Roll: Is(unit.Degree), Elbow: Is(unit.Degree),
	}
	input.Parts[3].Allowed = AllowedLevelOrUp
	a, _, _ = Lay(input)
	if len(a.Assumptions) != 0 {
		t.Errorf("all is given, yet assumed: %+v", a.Assumptions)
	}
	wantIn(t, "pushed home", a.Pieces[0].Cut, 3, 1e-9)
	wantIn(t, "mark at the full depth", a.Pieces[0].Ends[0].Mark, 1.5, 1e-9)
}

// The stack by hand: one elbow (T4 of the design notes has one too), port 5 in
// below the elbow's centre on the inlet leg, the outlet leg along x. Roll about
// x by 1 degree moves the port by 8.5 in x pi/180 along y; the elbow's own half
// degree about y by half that along x.
func TestStack(t *testing.T) {
	a, _, _ := Lay(levelCheck())
	lever := 8.5
	deg := math.Pi / 180
	wantIn(t, "worst y", unit.Length(a.Stack.Worst.Y), lever*deg, 1e-9)
	// Level: two pipes by 1/16, four seats by 1/32, the elbow's angle.
	wantIn(t, "worst x", unit.Length(a.Stack.Worst.X), 2.0/16+4.0/32+lever*deg/2, 1e-9)
	wantIn(t, "likely x", unit.Length(a.Stack.Likely.X), math.Sqrt(2/256.0+4/1024.0+lever*deg/2*lever*deg/2), 1e-9)
	wantIn(t, "worst z", unit.Length(a.Stack.Worst.Z), 2.0/16+4.0/32, 1e-9)
	// A measured closing piece: tape 1/16 + cut 1/16 + seats 2/32 = 3/16 (design notes, section 6).
	wantIn(t, "closing", a.Stack.Closing, 3.0/16, 1e-9)
	if got := float64(a.Stack.Tilt / unit.Degree); math.Abs(got-math.Hypot(1, 0.5)) > 1e-9 {
		t.Errorf("tilt %v", got)
	}
	// What is glued already is out by the tape over it, and by no cut and no seat: of
	// the two pieces on the level one is.
	made := levelCheck()
	for i := range made.Parts {
		if made.Parts[i].Kind == CheckSwing {
			made.Parts[i].Next = Join{By: Faces, Distance: 1 * in, Made: true}
		}
	}
	b, _, _ := Lay(made)
	wantIn(t, "worst x, one piece glued", unit.Length(b.Stack.Worst.X), 2.0/16+2.0/32+lever*deg/2, 1e-9)
	// Shares: a source's square over the sum of all, two pipes and four seats
	// each way, level and upright, where no piece is measured in place.
	input := levelCheck()
	for i := range input.Parts {
		input.Parts[i].Next.Closing = false
	}
	a, _, _ = Lay(input)
	lever = (a.Places[2].Centre.Z - a.Port.Z) / 0.0254 // the hubs touch now
	roll, elbow := lever*deg, lever*deg/2
	sum := roll*roll + elbow*elbow + 4/256.0 + 8/1024.0
	if s := a.Stack.Shares[0]; s.Cause != ByRoll || s.Mark != "E1" || math.Abs(float64(s.Of)-roll*roll/sum) > 1e-9 {
		t.Errorf("largest share: %+v", s)
	}
	total, last := 0.0, 1.0
	for _, s := range a.Stack.Shares {
		if total += float64(s.Of); float64(s.Of) > last {
			t.Errorf("not the largest first: %+v", a.Stack.Shares)
		}
		last = float64(s.Of)
	}
	if math.Abs(total-1) > 1e-9 {
		t.Errorf("the shares make %v", total)
	}
	// With a closing piece along x nothing along it is left: the elbow's own
	// angle and the level pieces make no share any more.
	input = levelCheck()
	for i := range input.Parts {
		input.Parts[i].Next.Closing = false
	}
	input.Parts[3].Next = Join{Closing: true}
	a, _, _ = Lay(input)
	sum = roll*roll + 2/256.0 + 4/1024.0
	if s := a.Stack.Shares[0]; s.Cause != ByRoll || math.Abs(float64(s.Of)-roll*roll/sum) > 1e-9 {
		t.Errorf("with a closing piece: %+v", a.Stack.Shares)
	}
	// The play along the closing piece need be no more than that may be off by.
	if p := a.Room.Plays; len(p) != 2 || p[0].Axis != "length" || p[0].Needed > a.Stack.Closing || math.Abs(float64(p[1].Needed/in)-roll) > 1e-9 || p[1].Available != min(a.Room.Front, a.Room.Back) {
		t.Errorf("%+v", p)
	}
}

func TestCodesAreDistinct(t *testing.T) {
	all := []string{
		FaultFinite, FaultRange, FaultNoParts, FaultKind, FaultMissing, FaultNoPump, FaultPumpLarger, FaultNoVault, FaultHole,
		FaultSize, FaultEnds, FaultThread, FaultPipe, FaultShort, FaultClosingShort, FaultClosingIdle, FaultClosingDirect, FaultBulkhead,
		FindClosure, FindTurned, FindWorked, FindTyped, FindFixed, FindParallel, FindReduces, FindMeasureFirst, FindTail, FindLean, FindAskew,
		FindWall, FindPump, FindObstacle, FindParts, FindPumpWall, FindPumpObstacle, FindClosingSpare, FindPlay, FindUpright,
		FindNoCheck, FindReversed, FindAttitude, FindHinge, FindNoUnion, FindHand, FindReleased, FindReturns, FindStands, FindFreezes,
		FindLifts, FindBlocked, FindLip,
	}
	seen := map[string]bool{}
	for _, c := range all {
		if seen[c] || !strings.HasPrefix(c, "layout.") {
			t.Errorf("code %q", c)
		}
		seen[c] = true
	}
}
