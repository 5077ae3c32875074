package arrange_test

import (
	"math"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// Rolling offsets of the trade's pages, with the pump fixed so that only one roll
// closes: the travel between the elbows, the true offset, and the mark at which the
// first elbow is turned, by angle and along the pipe's outside.
//
//	true offset = sqrt(set^2 + roll^2), travel = true offset x sqrt 2, angle = atan(roll / set)
//	arc = outside diameter x pi x angle / 360 (plane geometry), read to 1/16 in
func TestOffsetRows(t *testing.T) {
	const same = 1e-6 // m
	book := newBook(t)
	for _, c := range []struct {
		name         string
		set, roll    float64 // in
		travel, true float64 // in
	}{
		// E17 and the exact figure in the note of E18: page "Rolling Offsets" (apprentice
		// notes, plumbers and pipefitters local 602), 30-5/8 and 17-5/8 in.
		{"E17", 30.625, 17.625, 49.9706, 35.3346},
		// E20: page "How to Figure a Rolling Offset in Piping".
		{"E20", 8, 12, 14.4222 * math.Sqrt2, 14.4222},
		// E21: page on the 45 degree rolling offset (inputs), direct evaluation.
		{"E21", 12, 16, 28.2843, 20},
	} {
		i := arrange.Input{Path: "/assembly", Rules: arrange.Rules{Elbows: 2, Best: 1000}}
		port := [3]float64{12, 20, 6} // in the vault
		i.Vault = layout.Vault{Length: inches(90), Width: inches(60), Depth: inches(60), Path: "/vault"}
		i.Vault.Outlet = layout.Outlet{Wall: layout.Right, Along: inches(port[1] + c.roll), Height: inches(port[2] + c.set)}
		i.Standings = []arrange.Standing{{
			Pump: layout.Pump{
				Name: "lying", Path: "/pumps/0", Blocks: []geom.Box{geom.BoxOf(geom.Vec3{}, point([3]float64{10, 8, 8}))},
				Port: point([3]float64{10, 4, 6}), Points: geom.Vec3{X: 1},
				Outlet: layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, Size: "1-1/2"},
			},
			Fixed: true, Pose: layout.Pose{At: point([3]float64{port[0] - 10, port[1] - 4, 0})},
		}}
		i.Pipes, i.Fittings = stock(t, book, "1-1/2", 35, []string{"male adapter", "elbow 45", "bulkhead fitting"})
		out := searched(t, i)
		if len(out.Layouts) == 0 {
			t.Errorf("%s: no layout, stage %q", c.name, out.Stage)
			continue
		}
		l := &out.Layouts[0]
		var elbows []int
		for k, p := range l.Chain.Parts {
			if turn, _ := p.Turn(); turn != 0 {
				elbows = append(elbows, k)
			}
		}
		if len(elbows) != 2 {
			t.Errorf("%s: %d elbows", c.name, len(elbows))
			continue
		}
		a, b := l.Laid.Places[elbows[0]], l.Laid.Places[elbows[1]]
		run := b.Centre.Sub(a.Centre)
		if d := run.Norm() - c.travel*in; math.Abs(d) > 1e-4*in+same {
			t.Errorf("%s: travel %.4f in, want %.4f", c.name, run.Norm()/in, c.travel)
		}
		if d := math.Hypot(run.Y, run.Z) - c.true*in; math.Abs(d) > 1e-4*in+same {
			t.Errorf("%s: true offset %.4f in, want %.4f", c.name, math.Hypot(run.Y, run.Z)/in, c.true)
		}
		// Looking along the flow, to the right, the back wall lies to the left: the
		// outlet is turned there from the top, which is anticlockwise.
		want := 360 - math.Atan2(c.roll, c.set)*180/math.Pi
		m := l.Laid.Rolls[0]
		if d := float64(m.Angle/unit.Degree) - want; math.Abs(d) > 1e-6 {
			t.Errorf("%s: rolled by %.6f degrees, want %.6f", c.name, float64(m.Angle/unit.Degree), want)
		}
		if arc := math.Round(1.9*math.Pi*(want-360)/360*16) / 16; math.Abs(float64(m.ArcShort)/in-arc) > 1e-9 {
			t.Errorf("%s: the mark lies %.4f in round the pipe, want %.4f", c.name, float64(m.ArcShort)/in, arc)
		}
	}
}
