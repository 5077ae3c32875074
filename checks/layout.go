package checks

import (
	"math"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// layoutChecks lays chains of fittings and holds pieces, marks and positions
// against trade facts, published tables and the rolling-offset examples. The
// examples are reached here by laying two elbows in space and letting the
// closing pieces find their length, not by the offset's formula.
func layoutChecks() ([]Check, error) {
	const in = unit.Inch
	practice := "common practice, no source"
	touch, gap := socketPair(1.375*in, in/8)
	checks := []Check{{
		ID: "layout.piece", What: "piece between two sockets 1-3/8 in deep, fittings face to face, 1/8 in off each side",
		Want: 2.5, Got: inches(touch.Cut), Source: practice, Basis: trace.BasisPractice,
	}, {
		ID: "layout.closing", What: "closing piece for a gap of 2-1/4 in measured in place between the same sockets, make-up 0",
		Want: 5, Got: inches(gap.Cut), Source: practice, Basis: trace.BasisPractice,
	}}
	home, err := pushedHome()
	if err != nil {
		return nil, err
	}
	checks = append(checks, home...)
	offsets, err := laidOffsets()
	if err != nil {
		return nil, err
	}
	checks = append(checks, offsets...)
	checks = append(checks, Check{
		ID: "layout.arc.inch", What: "arc of a quarter turn on the outside of 2 in pipe, OD 2.375 in",
		Want: 1.8653, Got: inches(layout.Arc(2.375*in, 90*unit.Degree, 0)), Abs: 5e-5,
		Source: "plane geometry, direct evaluation of pi x 2.375 / 4", Basis: trace.BasisLibrary,
	}, Check{
		ID: "layout.arc.metric", What: "arc of 45 degrees on the outside of 63 mm pipe, to the millimetre", Unit: "mm",
		Want: 25, Got: float64(layout.Arc(63*unit.Millimetre, 45*unit.Degree, unit.Millimetre) / unit.Millimetre),
		Source: "plane geometry, direct evaluation of pi x 63 / 8 = 24.74", Basis: trace.BasisLibrary,
	})
	for i := range checks {
		checks[i].Group = "layout"
		if checks[i].Unit == "" {
			checks[i].Unit = "in"
		}
		if checks[i].Abs == 0 {
			checks[i].Abs = 1e-9
		}
	}
	return checks, nil
}

func inches(v unit.Length) float64 { return float64(v / unit.Inch) }

func sized(v unit.Length) layout.Measure {
	return layout.Measure{Length: v, Source: trace.Source{Title: "given by the check", Basis: trace.BasisMeasured}}
}

// socketPair lays three couplings on a socket port: the first pair with the hubs
// touching and the make-up given, the second around a gap of 2-1/4 in measured
// in place and made up without a gap.
func socketPair(socket, makeUp unit.Length) (touching, closing layout.Piece) {
	const in = unit.Inch
	c := layout.Laid{Part: layout.Inline(layout.Coupling, "2", sized(in/8), sized(socket), sized(3*in))}
	input := bench(socket)
	input.Settings.MakeUp = layout.Is(makeUp)
	input.Settings.ClosingMakeUp = layout.Is[unit.Length](0)
	input.Parts = []layout.Laid{c, c, c}
	input.Parts[1].Next = layout.Join{Closing: true, Measured: layout.Is(2.25 * in)}
	a, _, _ := layout.Lay(input)
	if len(a.Pieces) != 3 {
		return layout.Piece{}, layout.Piece{}
	}
	return a.Pieces[1], a.Pieces[2]
}

// bench is a roomy vault with a pump whose port, a socket, looks along x.
func bench(socket unit.Length) layout.Input {
	return layout.Input{
		Vault: layout.Vault{Length: 4, Width: 3, Depth: 3, Outlet: layout.Outlet{Wall: layout.Right, Along: 1, Height: 1}},
		Pump: layout.Pump{
			Blocks: []geom.Box{{Max: geom.Vec3{X: 0.3, Y: 0.3, Z: 0.3}}},
			Port:   geom.Vec3{X: 0.3, Y: 0.15, Z: 0.15}, Points: geom.Vec3{X: 1},
			Outlet: layout.End{Kind: layout.Socket, Size: "2", Depth: sized(socket), TakeOff: sized(-socket)},
		},
		Pose:  layout.Pose{At: geom.Vec3{X: 0.05, Y: 0.3}},
		Pipes: []layout.Pipe{{Kind: "PVC Sch 40", Size: "2", OD: 2.375 * unit.Inch, Bore: 2.067 * unit.Inch}},
	}
}

// pushedHome lays two sockets face to face and pushes the pipe home to both
// stops: the piece is as long as both sockets are deep, and the insertion mark
// stands at the full depth.
func pushedHome() ([]Check, error) {
	rows, err := Table("sockets")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range rows {
		if r["basis"] != string(trace.BasisPublished) || !slices.Contains([]string{"1-1/4", "1-1/2", "2", "3"}, r["size"]) {
			continue
		}
		depth, err := r.Num("socket_length_min_in")
		if err != nil {
			return nil, err
		}
		piece, _ := socketPair(unit.Length(depth)*unit.Inch, 0)
		out = append(out, Check{
			ID: "layout.home." + r["size"], What: "piece pushed home (make-up 0) between two " + r["size"] + " in sockets face to face: both socket depths",
			Want: 2 * depth, Got: inches(piece.Exact), Source: r["source"], Basis: trace.BasisPublished,
			Note: "the depth is the table's; pushed home to the stop is ASTM D2855's way",
		}, Check{
			ID: "layout.mark." + r["size"], What: "insertion mark of that piece: the full socket depth",
			Want: depth, Got: inches(piece.Ends[0].Mark), Source: r["source"], Basis: trace.BasisPublished,
		})
	}
	return out, nil
}

// laidOffsets lays the rolling offsets of the examples.
func laidOffsets() ([]Check, error) {
	rows, err := Table("examples")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, c := range []struct {
		id         string
		rise, roll float64
		travel     bool
	}{{"E17", 47.5 - 16.875, 50 - 32.375, false}, {"E20", 8, 12, false}, {"E21", 12, 16, true}} {
		r, err := Find(rows, c.id)
		if err != nil {
			return nil, err
		}
		want, err := r.Num("published_answer")
		if err != nil {
			return nil, err
		}
		tolerance, _, err := rowTolerance(r)
		if err != nil {
			return nil, err
		}
		between := laidOffset(c.rise, c.roll)
		check := Check{
			ID: "layout." + c.id, What: "two 45 degree elbows laid in space, " + r["inputs"] + ": true offset between the level legs",
			Want: want, Got: math.Hypot(between.Y, between.Z) / float64(unit.Inch),
			Abs: tolerance, Source: r["source"], Basis: trace.Basis(r["basis"]), Note: r["note"],
		}
		if c.travel {
			check.What = "two 45 degree elbows laid in space, " + r["inputs"] + ": length of the slanting leg that the chain finds, centre to centre"
			check.Got = between.Norm() / float64(unit.Inch)
		}
		out = append(out, check)
	}
	return out, nil
}

// laidOffset gives the way from the first elbow's centre to the second's, after
// the slanting piece and the last one have found their lengths to the hole. The
// second elbow's roll is the one that levels the pipe again: towards +x, seen
// along the slant.
func laidOffset(rise, roll float64) geom.Vec3 {
	const in = unit.Inch
	socket := 1.5 * in
	elbow := layout.SocketElbow(layout.Elbow45, "2", sized(0.625*in), sized(socket), sized(3*in))
	first := unit.Angle(-math.Atan2(roll, rise)) // to the back is anticlockwise looking along +x
	closing := layout.Join{Closing: true}
	input := bench(socket)
	input.Parts = []layout.Laid{
		{Part: elbow, Roll: first, Next: closing},
		{Part: elbow, Roll: levelling(rise, roll), Next: closing},
		{Part: layout.WallFitting("2", sized(0), sized(socket), sized(3*in))},
	}
	input.Vault.Outlet.Along = 0.45 + unit.Length(roll)*in
	input.Vault.Outlet.Height = 0.15 + unit.Length(rise)*in
	a, _, _ := layout.Lay(input)
	if !a.Laid || a.Closure.Across > 1e-9 {
		return geom.Vec3{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}
	}
	return a.Places[1].Centre.Sub(a.Places[0].Centre)
}

// levelling gives the second elbow's clock by spherical trigonometry. The slant
// s = (1, sin p, cos p)/sqrt 2, p the angle of the roll from upright, is turned
// back to x = (1, 0, 0). Square to s, up is u = z - (z.s)s and the way to go
// w = x - (x.s)s; the clock is the angle from u to w about s.
func levelling(rise, roll float64) unit.Angle {
	sin, cos := math.Sincos(math.Atan2(roll, rise))
	s := geom.Vec3{X: 1, Y: sin, Z: cos}.Scale(math.Sqrt2 / 2)
	square := func(v geom.Vec3) geom.Vec3 { return v.Sub(s.Scale(v.Dot(s))) }
	u, w := square(geom.Vec3{Z: 1}), square(geom.Vec3{X: 1})
	return unit.Angle(math.Atan2(u.Cross(w).Dot(s), u.Dot(w)))
}
