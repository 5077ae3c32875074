package layout

import (
	"math"
	"strings"
	"testing"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

const in = unit.Inch

// by is a size as the fitter measured it.
func by(v unit.Length) Measure {
	return Measure{Length: v, Source: trace.Source{Title: "measured", Basis: trace.BasisMeasured}}
}

func at(x, y, z float64) geom.Vec3 { return geom.Vec3{X: x * 0.0254, Y: y * 0.0254, Z: z * 0.0254} }

func block(x0, y0, z0, x1, y1, z1 float64) geom.Box {
	return geom.Box{Min: at(x0, y0, z0), Max: at(x1, y1, z1)}
}

// near1 holds a length in inches against what is wanted.
func wantIn(t *testing.T, what string, got unit.Length, want, tol float64) {
	t.Helper()
	if d := math.Abs(float64(got/in) - want); !(d <= tol) {
		t.Errorf("%s: got %.4f in, want %.4f in (within %g)", what, float64(got/in), want, tol)
	}
}

func wantVec(t *testing.T, what string, got, want geom.Vec3, tol float64) {
	t.Helper()
	if d := got.Sub(want).Norm(); !(d <= tol) {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

func codes(fs []trace.Finding, faults []trace.Fault) string {
	s := make([]string, 0, len(fs)+len(faults))
	for _, f := range fs {
		s = append(s, f.Code)
	}
	for _, f := range faults {
		s = append(s, f.Code)
	}
	return strings.Join(s, " ")
}

func findings(fs []trace.Finding, code string) []trace.Finding {
	var out []trace.Finding
	for _, f := range fs {
		if f.Code == code {
			out = append(out, f)
		}
	}
	return out
}

func finding(t *testing.T, fs []trace.Finding, code string) trace.Finding {
	t.Helper()
	out := findings(fs, code)
	if len(out) != 1 {
		t.Fatalf("want one finding %s, got %d among: %s", code, len(out), codes(fs, nil))
	}
	return out[0]
}

func faultOf(t *testing.T, fs []trace.Fault, code string) trace.Fault {
	t.Helper()
	for _, f := range fs {
		if f.Code == code {
			return f
		}
	}
	t.Fatalf("want fault %s, got: %s", code, codes(nil, fs))
	return trace.Fault{}
}

func arg(t *testing.T, m trace.Message, name string) trace.Arg {
	t.Helper()
	for _, a := range m.Args {
		if a.Name == name {
			return a
		}
	}
	t.Fatalf("%s has no argument %q: %+v", m.Code, name, m.Args)
	return trace.Arg{}
}

func length(t *testing.T, m trace.Message, name string) unit.Length {
	t.Helper()
	return unit.Length(arg(t, m, name).Value.SI)
}

func noFaults(t *testing.T, fs []trace.Fault) {
	t.Helper()
	for _, f := range fs {
		t.Errorf("fault %s at %s: %+v", f.Code, f.Path, f.Args)
	}
}

// twoInch is 2 in Sch 40 PVC pipe: outside diameter 2.375 in, bore 2.067 in
// (ASTM D1785, reference pipe.csv).
var twoInch = Pipe{Kind: "PVC Sch 40", Size: "2", OD: 2.375 * in, Bore: 2.067 * in}

// The fittings of the hillside demo: invented sizes, sockets 1-1/2 in deep.
func elbow(k Kind, mark string, toStop unit.Length) Part {
	p := SocketElbow(k, "2", by(toStop), by(1.5*in), by(2.875*in))
	p.Mark = mark
	return p
}

func inline(k Kind, mark string, stops, hub unit.Length) Part {
	p := Inline(k, "2", by(stops), by(1.5*in), by(hub))
	p.Mark = mark
	return p
}

func adapter() Part {
	// Measured made up in the port: port face to stop 0.10 in.
	p := ThreadedInlet("2", NPT, by(0.10*in), Measure{}, by(1.5*in), by(2.875*in))
	p.Mark = "A1"
	return p
}

func bulkhead(faceToStop unit.Length) Part {
	p := WallFitting("2", by(faceToStop), by(1.5*in), by(3*in))
	p.Mark = "B1"
	return p
}

// hillside is the pump and vault of the hillside demo (invented): vault 24 x
// 18 x 26 in, hole 18 in up in the middle of the right wall, pump 15-1/2 x 7-1/2
// x 9-1/2 in with its port up in the middle, standing in the middle.
func hillside(parts ...Laid) Input {
	return Input{
		Vault: Vault{
			Length: 24 * in, Width: 18 * in, Depth: 26 * in, Path: "/vault",
			Outlet: Outlet{Wall: Right, Along: 9 * in, Height: 18 * in},
		},
		Pump: Pump{
			Name: "M", Path: "/pumps/0", Blocks: []geom.Box{block(0, 0, 0, 15.5, 7.5, 9.5)},
			Port: at(7.75, 3.75, 9.5), Points: geom.Vec3{Z: 1},
			Outlet: End{Kind: FemaleThread, Thread: NPT, Size: "2"},
		},
		Pose:  Pose{At: at(4.25, 5.25, 0)},
		Parts: parts, Pipes: []Pipe{twoInch}, Path: "/assembly",
	}
}

func touching(p Part) Laid { return Laid{Part: p} }

func closing(p Part) Laid { return Laid{Part: p, Next: Join{Closing: true}} }

// right is the roll that turns an upright flow to the right wall: clockwise
// looking up, with the back wall at 12 o'clock, the right wall is at 9.
const right = 270 * unit.Degree

func rolled(p Part, roll unit.Angle) Laid { return Laid{Part: p, Roll: roll} }

// levelCheck is the demo's layout that fits: valve in the level leg.
func levelCheck() Input {
	return hillside(
		touching(adapter()),
		closing(inline(Union, "U1", 0.9*in, 4.125*in)),
		rolled(elbow(Elbow90, "E1", 1.15*in), right),
		closing(inline(CheckSwing, "V1", 3.2*in, 4*in)),
		touching(bulkhead(-0.8*in)),
	)
}
