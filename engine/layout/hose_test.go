package layout

import (
	"math"
	"testing"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

// flexible is a hose of invented sizes as thick as 2 in pipe, bent to 8 in.
func flexible(turn unit.Angle, in1, out1 unit.Length) Part {
	return Part{
		Kind: Hose, Mark: "H1", Size: "2", In: HoseEnd(in1, 1.5*in, by(2.375*in)), Out: HoseEnd(out1, 1.5*in, by(2.375*in)),
		Curve: Curve{Turn: turn, Radius: 8 * in, Least: by(8 * in), Straight: 1 * in, Longest: 40 * in},
	}
}

// hosed is a hose from the pump's adapter straight up, round to the right and into
// the hole's fitting.
func hosed(turn unit.Angle, up, along unit.Length) Input {
	h := Laid{Part: flexible(turn, up, along), Roll: 270 * unit.Degree}
	i := Input{
		Path: "/assembly", Pipes: []Pipe{twoInch},
		Vault: Vault{Length: 40 * in, Width: 30 * in, Depth: 40 * in, Path: "/vault", Outlet: Outlet{Wall: Right, Along: 10 * in, Height: 20 * in}},
		Pump: Pump{
			Name: "M", Path: "/pumps/0", Blocks: []geom.Box{block(0, 0, 0, 12, 8, 8)}, Port: at(6, 4, 8), Points: geom.Vec3{Z: 1},
			Outlet: End{Kind: FemaleThread, Thread: NPT, Size: "2"},
		},
		Pose: Pose{At: at(4, 4, 0)},
	}
	a := ThreadedInlet("2", NPT, by(0.1*in), Measure{}, by(1.5*in), by(2.875*in))
	u := inline(Union, "U1", 0.9*in, 4*in)
	i.Parts = []Laid{{Part: a}, {Part: u, Next: Join{By: Faces, Distance: 1 * in}}, h, {Part: inline(Coupling, "C1", 0.2*in, 3*in)}}
	return i
}

// A hose as worked by hand from the circle (plane geometry): with R = 8 in its
// bend begins R tan(turn/2) from where the axes meet, 8 in for a quarter turn and
// 3.3137 in for half of one, and its length is both ends less twice that and more
// by the arc R turn, 12.5664 in and 6.2832 in.
func TestHoseByHand(t *testing.T) {
	for _, c := range []struct {
		turn                  unit.Angle
		up, along             unit.Length
		off, arc, exact, s, e float64
	}{
		{90 * unit.Degree, 11 * in, 12 * in, 8, 12.5664, 11 + 12 - 16 + 12.5664, 1.5, 2.5},
		{45 * unit.Degree, 6 * in, 7 * in, 3.3137, 6.2832, 6 + 7 - 6.6274 + 6.2832, 1.1863, 2.1863},
		{0, 5 * in, 6 * in, 0, 0, 11, 3.5, 4.5},
	} {
		a, fs, faults := Lay(hosed(c.turn, c.up, c.along))
		noFaults(t, faults)
		if len(a.Hoses) != 1 {
			t.Fatalf("%d hoses: %s", len(a.Hoses), codes(fs, nil))
		}
		h := &a.Hoses[0]
		wantIn(t, "bend begins", h.Curve.TakeOff(), c.off, 1e-4)
		wantIn(t, "arc", h.Curve.Arc(), c.arc, 1e-4)
		wantIn(t, "length", h.Exact, c.exact, 2e-4)
		wantIn(t, "cut", h.Cut, c.exact, 1.0/32+1e-4)
		wantIn(t, "straight before", h.Straights[0], c.s, 1e-3)
		wantIn(t, "straight behind", h.Straights[1], c.e, 1e-3)
		if h.From != "U1" || h.To != "C1" || h.Sockets != [2]unit.Length{1.5 * in, 1.5 * in} {
			t.Errorf("%+v", h)
		}
		finding(t, fs, FindHose)
		// The line's length in chords of at most 5 degrees: short of the arc by
		// turn² / 24 at most.
		sum := 0.0
		for k := range h.Line[1:] {
			sum += h.Line[k].Sub(h.Line[k+1]).Norm()
		}
		wantIn(t, "line", unit.Length(sum), c.exact, 0.005)
	}
}

// By hand: the circle of a quarter turn from straight up to the right has its
// middle 8 in to the right of where the bend begins; the point half way round lies
// 8 (1 - cos 45) = 2.3431 in to the right of there and 8 sin 45 = 5.6569 in above.
func TestHoseMiddle(t *testing.T) {
	a, _, _ := Lay(hosed(90*unit.Degree, 11*in, 12*in))
	h, centre := &a.Hoses[0], a.Places[2].Centre
	begin := centre.Sub(geom.Vec3{Z: float64(8 * in)})
	want := begin.Add(at(2.3431, 0, 5.6569))
	least := math.Inf(1)
	for _, p := range h.Line {
		least = math.Min(least, p.Sub(want).Norm())
	}
	if least > 1e-5 {
		t.Errorf("the line passes the point half way round by %g m", least)
	}
	wantVec(t, "outlet", a.Places[2].Outlet, centre.Add(at(12, 0, 0)), 1e-9)
}

// What a hose must not be is told: bent too tight, too short beyond a socket, too
// long, through the wall.
func TestHoseRefused(t *testing.T) {
	for code, change := range map[string]func(*Input){
		FindHoseTight:    func(i *Input) { i.Parts[2].Curve.Least = by(8.1 * in) },
		FindHoseStraight: func(i *Input) { i.Parts[2].In = HoseEnd(10.4*in, 1.5*in, by(2.375*in)) },
		FindHoseLong:     func(i *Input) { i.Parts[2].Curve.Longest = 19.5 * in },
		FindHoseWall:     func(i *Input) { i.Parts = i.Parts[:3] },
	} {
		i := hosed(90*unit.Degree, 11*in, 12*in)
		if _, fs, _ := Lay(i); len(findings(fs, code)) > 0 {
			t.Errorf("%s told of a good hose", code)
		}
		change(&i)
		_, fs, _ := Lay(i)
		finding(t, fs, code)
	}
	i := hosed(90*unit.Degree, 11*in, 12*in)
	i.Parts[2].In.Kind = Socket
	_, _, faults := Lay(i)
	faultOf(t, faults, FaultHose)
	i = hosed(unit.Angle(math.NaN()), 11*in, 12*in)
	_, _, faults = Lay(i)
	faultOf(t, faults, FaultFinite)
	i = hosed(150*unit.Degree, 40*in, 40*in)
	_, _, faults = Lay(i)
	faultOf(t, faults, FaultRange)
	i = hosed(90*unit.Degree, 11*in, 12*in)
	i.Parts[2].Curve.Radius = 1 * in
	_, _, faults = Lay(i)
	faultOf(t, faults, FaultRange)
}

// Every point of the tube, drawn by hand as a ring of radius r round a circle of
// radius R, lies in one of the cylinders, for any turn; and none of these stands
// out over it by more than half a sagitta.
func TestHoseHeld(t *testing.T) {
	for deg := 5.0; deg <= 135; deg += 2.5 {
		turn := unit.Angle(deg) * unit.Degree
		p := Laid{Part: flexible(turn, 30*in, 30*in)}
		pl := Place{InDir: geom.Vec3{Z: 1}, Side: geom.Vec3{X: 1}}
		s, c := math.Sincos(float64(turn))
		pl.OutDir = geom.Vec3{X: s, Z: c}
		solids := hoseSolids(&p, pl, 0)
		r, tube := float64(8*in), float64(2.375*in)/2
		start := -r * math.Tan(float64(turn)/2)
		for k := range 91 {
			f := float64(turn) * float64(k) / 90
			s, c := math.Sincos(f)
			at := geom.Vec3{X: r - r*c, Z: start + r*s}
			for m := range 36 {
				u, w := math.Sincos(float64(m) * math.Pi / 18)
				q := at.Add(geom.Vec3{X: -c * u * tube, Z: s * u * tube, Y: w * tube})
				held := false
				for _, sol := range solids {
					d := sol.To.Sub(sol.From)
					axis := d.Unit()
					along := q.Sub(sol.From).Dot(axis)
					off := q.Sub(sol.From).Sub(axis.Scale(along)).Norm()
					held = held || along >= -1e-9 && along <= d.Norm()+1e-9 && off <= float64(sol.Radius)+1e-9
				}
				if !held {
					t.Fatalf("turn %g: a point of the tube at %g degrees stands out", deg, f*180/math.Pi)
				}
			}
		}
		for _, sol := range solids {
			if over := float64(sol.Radius) - tube; over > r*(1-math.Cos(11.25*math.Pi/180))/2+1e-12 {
				t.Errorf("turn %g: a cylinder is wider by %g", deg, over)
			}
		}
	}
}
