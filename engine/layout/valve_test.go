package layout

import (
	"math"
	"slices"
	"testing"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Attitudes by hand: swing valves take flow level or rising, spring valves any;
// a valve's own data beat that. From the design notes; no standard.
func TestCheckValveAttitude(t *testing.T) {
	for _, c := range []struct {
		name    string
		kind    Kind
		allowed Allowed
		flow    geom.Vec3
		bad     bool
	}{
		{"swing up", CheckSwing, AllowedUnknown, geom.Vec3{Z: 1}, false},
		{"swing level", CheckSwing, AllowedUnknown, geom.Vec3{X: 1}, false},
		{"swing rising", CheckSwing, AllowedUnknown, geom.Vec3{X: 1, Z: 1}.Unit(), false},
		{"swing down", CheckSwing, AllowedUnknown, geom.Vec3{Z: -1}, true},
		{"swing falling", CheckSwing, AllowedUnknown, geom.Vec3{X: 1, Z: -1}.Unit(), true},
		{"spring down", CheckSpring, AllowedUnknown, geom.Vec3{Z: -1}, false},
		{"spring for upright only, level", CheckSpring, AllowedUp, geom.Vec3{X: 1}, true},
		{"spring for upright only, up", CheckSpring, AllowedUp, geom.Vec3{Z: 1}, false},
		{"spring for level or up, down", CheckSpring, AllowedLevelOrUp, geom.Vec3{Z: -1}, true},
		{"swing whose sheet says any, down", CheckSwing, AllowedAny, geom.Vec3{Z: -1}, false},
	} {
		p := inline(c.kind, "V1", 3.2*in, 4*in)
		p.Allowed = c.allowed
		input := hillside(touching(adapter()), touching(p))
		input.Pump.Points = c.flow
		a, fs, _ := Lay(input)
		got := findings(fs, FindAttitude)
		if (len(got) == 1) != c.bad {
			t.Errorf("%s: told %d times", c.name, len(got))
		}
		if c.bad && len(got) == 1 && got[0].Severity != trace.Danger {
			t.Errorf("%s: a valve that cannot shut is a danger", c.name)
		}
		assumed := false
		for _, as := range a.Assumptions {
			assumed = assumed || as.Code == AssumeAttitude
		}
		if assumed != (c.allowed == AllowedUnknown) {
			t.Errorf("%s: assumed %v", c.name, assumed)
		}
	}
}

func TestCheckValveReversedAndHinge(t *testing.T) {
	input := levelCheck()
	_, fs, _ := Lay(input)
	if f := finding(t, fs, FindHinge); f.Severity != trace.Info || f.Limit != (unit.Value{}) || f.Found != (unit.Value{}) {
		t.Errorf("a level swing valve: hinge on top is a reminder, held against nothing: %+v", f)
	}
	input.Parts[3].Reverse = true
	_, fs, _ = Lay(input)
	if f := finding(t, fs, FindReversed); f.Severity != trace.Danger {
		t.Error("a reversed valve is a danger")
	}
	input.Parts[3].Body.Reach, input.Parts[3].Body.Width = by(3*in), by(2*in)
	input.Parts[3].Roll = 90 * unit.Degree
	_, fs, _ = Lay(input)
	if f := finding(t, fs, FindHinge); f.Severity != trace.Caution || math.Abs(f.Found.SI-math.Pi/2) > 1e-9 {
		t.Errorf("a cover turned to the side: %+v", f)
	}
	input.Parts[3].Roll = 0
	_, fs, _ = Lay(input)
	if n := findings(fs, FindHinge); len(n) != 0 {
		t.Errorf("its cover is on top already: %+v", n[0])
	}
	input.Parts = input.Parts[:3]
	_, fs, _ = Lay(input)
	finding(t, fs, FindNoCheck)
}

// Water by hand: bore area of 2 in Sch 40 pi/4 x 2.067^2 = 3.3556 in2; the axis
// from the valve's middle (x 17.75) to the wall (x 24) is 6.25 in.
func TestWater(t *testing.T) {
	area := math.Pi / 4 * 2.067 * 2.067 // in2
	const in3 = 231                     // in3 to the US gallon
	gal := func(v unit.Volume) float64 { return float64(v / unit.USGallon) }
	input := levelCheck()
	input.Beyond.Volume = Is(10 * unit.USGallon)
	a, fs, _ := Lay(input)
	w := a.Water
	if w.Order != UnionFirst || !w.Known || !w.RunKnown {
		t.Fatalf("%+v", w)
	}
	if want := 10 + area*6.25/in3; math.Abs(gal(w.Standing)-want) > 1e-9 {
		t.Errorf("standing %v gal, want %v", gal(w.Standing), want)
	}
	// From the union's middle (z 13.05) up to the elbow and on to the valve.
	if want := area * (18 - 13.05 + 5.75) / in3; math.Abs(gal(w.Released)-want) > 1e-9 {
		t.Errorf("released %v gal, want %v", gal(w.Released), want)
	}
	if f := finding(t, fs, FindStands); f.Severity != trace.Info {
		t.Error("standing water is a reminder where there is no frost")
	}
	if len(findings(fs, FindReleased)) != 0 {
		t.Error("with the valve beyond the union nothing much comes down")
	}
	input.Beyond.Frost = true
	_, fs, _ = Lay(input)
	if f := finding(t, fs, FindFreezes); f.Severity != trace.Caution {
		t.Error("where there is frost it is a caution")
	}

	// Valve on the pump's side: opening the union lets the column down.
	input.Parts[1].Part, input.Parts[3].Part = inline(CheckSwing, "V1", 0.9*in, 4*in), inline(Union, "U1", 3.2*in, 4*in)
	a, fs, _ = Lay(input)
	if a.Water.Order != ValveFirst {
		t.Fatalf("%+v", a.Water)
	}
	if want := 10 + area*6.25/in3; math.Abs(gal(a.Water.Released)-want) > 1e-9 {
		t.Errorf("released %v gal, want %v", gal(a.Water.Released), want)
	}
	finding(t, fs, FindReleased)

	// Without a valve all of it has run back at the stop: from the adapter's
	// thread (z 9.5) up to z 18 and on to the wall (x 12 to 24).
	input.Parts[1].Part = inline(Coupling, "C1", 0.9*in, 3*in)
	a, fs, _ = Lay(input)
	back := unit.Volume(10+area*(8.5+12)/in3) * unit.USGallon
	if w := a.Water; w.Order != NoValve || w.Standing != 0 || w.Released != 0 || math.Abs(float64(w.Returns/back)-1) > 1e-9 {
		t.Errorf("%+v, want %v back", w, back)
	}
	f := finding(t, fs, FindReturns)
	if f.Severity != trace.Caution || arg(t, f.Message, "union").Text != "U1" {
		t.Errorf("%+v", f)
	}
	input = levelCheck()
	input.Pipes = []Pipe{{Size: "2", OD: 2.375 * in}}
	a, fs, _ = Lay(input)
	if a.Water.Known || a.Water.Standing != 0 || len(findings(fs, FindStands)) != 0 {
		t.Errorf("%+v", a.Water)
	}
}

// What lies beyond the wall, by hand: the run that starts at the pump holds
// the chain itself (8.5 in up, 12 in along), so that of its 48 in 27.5 in lie
// beyond the wall. Boxes at the top siphon back only where nothing holds them.
func TestWaterBeyondTheWall(t *testing.T) {
	area := math.Pi / 4 * 2.067 * 2.067 // in2
	const in3 = 231
	gal := func(v unit.Volume) float64 { return float64(v / unit.USGallon) }
	beyond := Beyond{
		First:  Stretch{Length: 48 * in, Volume: unit.Volume(area*48/in3) * unit.USGallon},
		Volume: Is(10 * unit.USGallon), Boxes: 75 * unit.USGallon,
	}
	run := 10 + area*27.5/in3

	unionFirst := levelCheck()
	unionFirst.Beyond = beyond
	valveFirst := levelCheck()
	valveFirst.Beyond = beyond
	valveFirst.Parts[1].Part, valveFirst.Parts[3].Part = inline(CheckSwing, "V1", 0.9*in, 4*in), inline(Union, "U1", 3.2*in, 4*in)
	// The union's middle at x 17.75, the valve's at z 13.05.
	for _, c := range []struct {
		name                      string
		input                     Input
		standing, released, boxes float64
	}{
		{"union first", unionFirst, run + area*6.25/in3, area * 10.7 / in3, 0},
		{"valve first", valveFirst, run + area*(4.95+12)/in3, run + 75 + area*6.25/in3, 75},
	} {
		a, fs, _ := Lay(c.input)
		w := a.Water
		if math.Abs(gal(w.Standing)-c.standing) > 1e-9 || math.Abs(gal(w.Released)-c.released) > 1e-9 || math.Abs(gal(w.Boxes)-c.boxes) > 1e-9 {
			t.Errorf("%s: standing %v, released %v, boxes %v; want %v, %v, %v", c.name,
				gal(w.Standing), gal(w.Released), gal(w.Boxes), c.standing, c.released, c.boxes)
		}
		if n := len(findings(fs, FindReleased)); (n == 1) != (c.boxes > 0) {
			t.Errorf("%s: the release is told %d times", c.name, n)
		}
	}

	// A first run that ends in the vault adds nothing, and takes nothing away.
	unionFirst.Beyond.First.Length = 12 * in
	a, _, _ := Lay(unionFirst)
	if want := 10 + area*6.25/in3; math.Abs(gal(a.Water.Standing)-want) > 1e-9 {
		t.Errorf("standing %v, want %v", gal(a.Water.Standing), want)
	}

	// Runs that are not known are told as not counted, and no sum with them.
	valveFirst.Beyond = Beyond{}
	a, fs, _ := Lay(valveFirst)
	f := finding(t, fs, FindReleased)
	if got := arg(t, f.Message, "inside").Value.SI; math.Abs(got-float64(a.Water.Released)) > 1e-12 ||
		slices.ContainsFunc(f.Args, func(x trace.Arg) bool { return x.Name == "released" }) {
		t.Errorf("%+v", f)
	}

	// Nothing stands on a valve that lets no water up, and nothing comes back.
	valveFirst.Beyond = beyond
	valveFirst.Parts[1].Reverse = true
	a, fs, _ = Lay(valveFirst)
	if a.Water.Order != Reversed || a.Water.Standing != 0 || len(findings(fs, FindReleased))+len(findings(fs, FindStands))+len(findings(fs, FindReturns)) != 0 {
		t.Errorf("%+v", a.Water)
	}
}

// A union-ended valve opens on both sides: on the pump's side the union comes
// first and the column stands.
func TestUnionEndedValve(t *testing.T) {
	ended := inline(CheckSpring, "V1", 2.4*in, 4*in)
	ended.Splits = []Split{{Offset: 1.4 * in}, {Offset: -1.4 * in}} // in any order
	input := levelCheck()
	input.Parts[1].Part = inline(Coupling, "C1", 0.9*in, 3*in)
	input.Parts[3].Part = ended
	a, fs, _ := Lay(input)
	if len(findings(fs, FindNoUnion)) != 0 {
		t.Error("the valve's own unions open the chain")
	}
	if a.Water.Order != UnionFirst {
		t.Errorf("%+v", a.Water)
	}
	openings := make([]int, 0, 3)
	for _, s := range a.Places[3].Solids {
		openings = append(openings, s.Opening)
	}
	if len(openings) != 3 || openings[0] != 0 || openings[1] != 1 || openings[2] != 2 {
		t.Errorf("the valve comes apart in three: %v", openings)
	}
}

func TestNoUnion(t *testing.T) {
	input := levelCheck()
	input.Parts[1].Part = inline(Coupling, "C1", 0.9*in, 3*in)
	a, fs, _ := Lay(input)
	if f := finding(t, fs, FindNoUnion); f.Severity != trace.Danger {
		t.Error("a pump that is cemented in is a danger to the job")
	}
	if a.Water.Order != NoUnion || a.LiftOut.Checked {
		t.Errorf("%+v %+v", a.Water, a.LiftOut)
	}
}

// A hand needs 3/4 in round the nut (starting value). The nut is 4-1/8 in thick
// at y 9: its side at y 11.0625.
func TestHandRoom(t *testing.T) {
	input := levelCheck()
	input.Vault.Obstacles = []Obstacle{{"conduit", block(0, 11.5, 12, 24, 12.5, 13)}}
	_, fs, _ := Lay(input)
	f := finding(t, fs, FindHand)
	wantIn(t, "beside the conduit", unit.Length(f.Found.SI), 11.5-11.0625, 1e-5)
	if arg(t, f.Message, "against").Text != "conduit" || arg(t, f.Message, "part").Text != "U1" {
		t.Errorf("%+v", f)
	}
	if arg(t, f.Message, "thing").Text != "conduit" {
		t.Errorf("%+v", f)
	}
	input.Settings.Hand = Is(0.4 * in)
	_, fs, _ = Lay(input)
	if len(findings(fs, FindHand)) != 0 {
		t.Error("a slim hand has room")
	}
	// A union that stands in a wall is told as that, not as room for a hand.
	input = levelCheck()
	input.Vault.Outlet.Along = 1.5 * in
	input.Pose.At = at(4.25, -2.25, 0)
	_, fs, _ = Lay(input)
	if len(findings(fs, FindHand)) != 0 || len(findings(fs, FindWall)) == 0 {
		t.Error("no hand reaches round what is not there")
	}
}

// A street elbow straight in the union: the envelope of its other leg reaches
// into the nut. Joined parts have no clearance to tell, so that the hand's room
// is told as none.
func TestHandAtStreetElbow(t *testing.T) {
	input := sideways()
	street := StreetElbow(Street90, "2", by(2.6*in), by(1.5*in), by(2.375*in), by(1.15*in), by(1.5*in), by(2.875*in))
	street.Mark = "S1"
	input.Parts = []Laid{input.Parts[0], touching(input.Parts[1].Part), rolled(street, 0)}
	_, fs, _ := Lay(input)
	f := finding(t, fs, FindHand)
	wantIn(t, "room", length(t, f.Message, "found"), 0, 1e-9)
	if arg(t, f.Message, "against").Text != "S1" {
		t.Errorf("%+v", f)
	}
}
