package verify

import (
	"testing"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

const in = unit.Inch

func by(v unit.Length) layout.Measure {
	return layout.Measure{Length: v, Source: trace.Source{Title: "measured", Basis: trace.BasisMeasured}}
}

func at(x, y, z float64) geom.Vec3 { return geom.Vec3{X: x * 0.0254, Y: y * 0.0254, Z: z * 0.0254} }

func box(x0, y0, z0, x1, y1, z1 float64) geom.Box {
	return geom.Box{Min: at(x0, y0, z0), Max: at(x1, y1, z1)}
}

// twoInch is 2 in Sch 40 PVC pipe: outside diameter 2.375 in, bore 2.067 in
// (ASTM D1785).
var twoInch = layout.Pipe{Kind: "PVC Sch 40", Size: "2", OD: 2.375 * in, Bore: 2.067 * in}

func elbow(k layout.Kind, mark string, toStop unit.Length) layout.Part {
	p := layout.SocketElbow(k, "2", by(toStop), by(1.5*in), by(2.875*in))
	p.Mark = mark
	return p
}

func street(k layout.Kind, mark string, toEnd, toStop unit.Length) layout.Part {
	p := layout.StreetElbow(k, "2", by(toEnd), by(1.5*in), by(2.375*in), by(toStop), by(1.5*in), by(2.875*in))
	p.Mark = mark
	return p
}

func inline(k layout.Kind, mark string, stops, hub unit.Length) layout.Part {
	p := layout.Inline(k, "2", by(stops), by(1.5*in), by(hub))
	p.Mark = mark
	return p
}

func adapter() layout.Part {
	p := layout.ThreadedInlet("2", layout.NPT, by(0.10*in), layout.Measure{}, by(1.5*in), by(2.875*in))
	p.Mark = "A1"
	return p
}

func bulkhead(toStop unit.Length) layout.Part {
	p := layout.WallFitting("2", by(toStop), by(1.5*in), by(3*in))
	p.Mark = "B1"
	return p
}

func touching(p layout.Part) layout.Laid { return layout.Laid{Part: p} }

func closing(p layout.Part) layout.Laid {
	return layout.Laid{Part: p, Next: layout.Join{Closing: true}}
}

// rolled is a part three quarters round.
func rolled(p layout.Part) layout.Laid { return layout.Laid{Part: p, Roll: 270 * unit.Degree} }

// vault is the hillside demo's vault and pump (invented sizes).
func vault(parts ...layout.Laid) layout.Input {
	return layout.Input{
		Vault: layout.Vault{
			Length: 24 * in, Width: 18 * in, Depth: 26 * in, Path: "/vault",
			Outlet: layout.Outlet{Wall: layout.Right, Along: 9 * in, Height: 18 * in},
		},
		Pump: layout.Pump{
			Name: "M", Path: "/pumps/0", Blocks: []geom.Box{box(0, 0, 0, 15.5, 7.5, 9.5)},
			Port: at(7.75, 3.75, 9.5), Points: geom.Vec3{Z: 1},
			Outlet: layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, Size: "2"},
		},
		Pose:  layout.Pose{At: at(4.25, 5.25, 0)},
		Parts: parts, Pipes: []layout.Pipe{twoInch}, Path: "/assembly",
	}
}

// hillside is the demo's layout that closes: valve in the level leg.
func hillside() layout.Input {
	return vault(
		touching(adapter()),
		closing(inline(layout.Union, "U1", 0.9*in, 4.125*in)),
		rolled(elbow(layout.Elbow90, "E1", 1.15*in)),
		closing(inline(layout.CheckSwing, "V1", 3.2*in, 4*in)),
		touching(bulkhead(-0.8*in)),
	)
}

// lifts is the hillside's with the pump shifted so that it comes out by a shift and a lift.
func lifts() layout.Input {
	i := hillside()
	i.Pose.At, i.Vault.Outlet.Along = at(4.25, 4.5, 0), 8.25*in
	return i
}

// sideways is a pump whose port looks to the right: it lifts straight out.
func sideways() layout.Input {
	i := vault(touching(adapter()), closing(inline(layout.Union, "U1", 0.9*in, 4.125*in)), touching(bulkhead(0)))
	i.Pump.Port, i.Pump.Points = at(15.5, 3.75, 5), geom.Vec3{X: 1}
	i.Pose.At = at(0.5, 5.25, 0)
	i.Vault.Length, i.Vault.Outlet.Height = 30*in, 5*in
	return i
}

// inchAndAHalf is 1-1/2 in Sch 40 PVC pipe: outside diameter 1.900 in, bore 1.610 in
// (ASTM D1785).
var inchAndAHalf = layout.Pipe{Kind: "PVC Sch 40", Size: "1-1/2", OD: 1.9 * in, Bore: 1.61 * in}

// bushed is the hillside's with a bushing glued into its elbow, and all beyond that
// of the smaller size.
func bushed() layout.Input {
	small := func(p layout.Part) layout.Part {
		p.Size = "1-1/2"
		return p
	}
	bushing := layout.Part{
		Mark: "R1", Kind: layout.Reducer, Size: "2 x 1-1/2",
		In:  layout.End{Kind: layout.Spigot, Size: "2", TakeOff: by(0.9 * in), Depth: by(1.5 * in), Hub: by(2.375 * in)},
		Out: layout.End{Kind: layout.Socket, Size: "1-1/2", TakeOff: by(-0.3 * in), Depth: by(1.2 * in), Hub: by(2.375 * in)},
	}
	i := vault(
		touching(adapter()),
		closing(inline(layout.Union, "U1", 0.9*in, 4.125*in)),
		rolled(elbow(layout.Elbow90, "E1", 1.15*in)),
		closing(bushing),
		touching(small(inline(layout.CheckSwing, "V1", 2.2*in, 3.5*in))),
		touching(small(bulkhead(-0.8*in))),
	)
	i.Pipes = append(i.Pipes, inchAndAHalf)
	i.Pose.At, i.Vault.Outlet.Along = at(4.25, 4.5, 0), 8.25*in
	return i
}

func round30() layout.Input {
	i := hillside()
	i.Vault.Round, i.Vault.Length, i.Vault.FloorLength = true, 30*in, 28*in
	i.Vault.Outlet.Along = 15 * in
	i.Pose.At = at(7.25, 11.25, 0)
	return i
}

func show(t *testing.T, checks []Check) {
	t.Helper()
	for _, c := range checks {
		t.Logf("%-24s %-18s found %.7f limit %.7f margin %.7f %v %v", c.Code, c.Path, c.Found.SI, c.Limit.SI, c.Margin.SI, c.Passed, c.Args)
	}
}
