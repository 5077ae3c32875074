package verify

import (
	"fmt"
	"math"
	"math/rand/v2"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// pick gives one of several.
func pick[T any](r *rand.Rand, of ...T) T { return of[r.IntN(len(of))] }

func inches(r *rand.Rand, lo, hi float64) unit.Length {
	return unit.Length(lo+(hi-lo)*r.Float64()) * in
}

// anyJoin draws how a joint's distance is typed, with a gap of 0 to 8 in
// between the faces.
func anyJoin(r *rand.Rand) layout.Join {
	if r.IntN(3) == 0 {
		return layout.Join{}
	}
	return layout.Join{By: layout.Faces, Distance: inches(r, 0, 8)}
}

// anyParts draws a chain: adapter, elbows with union and valve between them in
// any order, bulkhead fitting or a pipe through the wall.
func anyParts(r *rand.Rand) []layout.Laid {
	free := r.IntN(5) == 0 // rolls at any angle
	var middle []layout.Laid
	for i := range r.IntN(5) {
		p := elbow(pick(r, layout.Elbow90, layout.Elbow90, layout.Elbow45), "", 1.15*in)
		if r.IntN(5) == 0 {
			p = street(pick(r, layout.Street90, layout.Street45), "", inches(r, 2.5, 3.2), 1.15*in)
		}
		p.Mark = fmt.Sprintf("E%d", i+1)
		roll := unit.Angle(r.IntN(8)) * 45 * unit.Degree
		if free {
			roll = unit.Angle(r.Float64() * 2 * math.Pi)
		}
		middle = append(middle, layout.Laid{Part: p, Roll: roll, Next: anyJoin(r)})
	}
	add := func(p layout.Part) *layout.Laid {
		k := r.IntN(len(middle) + 1)
		middle = append(middle[:k], append([]layout.Laid{{Part: p, Next: anyJoin(r)}}, middle[k:]...)...)
		return &middle[k]
	}
	if r.IntN(8) != 0 {
		u := inline(layout.Union, "U1", 0.9*in, 4.125*in)
		if r.IntN(4) == 0 {
			u.Splits[0].Lip = inches(r, 0.05, 0.3)
		}
		if r.IntN(4) == 0 { // a union-ended valve
			u = inline(layout.BallValve, "U1", 5*in, 4.125*in)
			u.Splits = []layout.Split{{Offset: -1.5 * in}, {Offset: 1.5 * in}}
		}
		u.Body.Length = by(inches(r, 0.5, 2))
		u.Body.Diameter, u.In.Hub, u.Out.Hub = by(4.125*in), by(3*in), by(3*in)
		add(u)
	}
	if r.IntN(4) != 0 {
		p := inline(pick(r, layout.CheckSwing, layout.CheckSpring), "V1", 3.2*in, 4*in)
		p.Allowed = pick(r, layout.AllowedUnknown, layout.AllowedUnknown, layout.AllowedAny, layout.AllowedUp, layout.AllowedLevelOrUp)
		if r.IntN(2) == 0 {
			p.Body.Reach, p.Body.Width = by(inches(r, 2, 4)), by(2*in)
		}
		v := add(p)
		v.Reverse = r.IntN(10) == 0
		v.Roll = pick(r, 0, 0, 0, unit.Angle(r.Float64()))
	}
	parts := append([]layout.Laid{{Part: adapter(), Next: anyJoin(r)}}, middle...)
	if r.IntN(4) != 0 {
		parts = append(parts, touching(bulkhead(inches(r, -1, 0.5))))
	}
	return parts
}

// anyChain draws an assembly and builds a vault round it, so that a good share
// can be built: the hole is where the chain ends, walls, lid and obstacles stand
// anywhere about the chain. Settings are drawn too. ok is false for a chain that
// does not end level along a wall's normal.
func anyChain(r *rand.Rand) (input layout.Input, ok bool) {
	l, w, h := 4+12*r.Float64(), 4+8*r.Float64(), 4+8*r.Float64()
	input = layout.Input{
		Path: "/assembly", Parts: anyParts(r), Pipes: []layout.Pipe{twoInch},
		Pump: layout.Pump{
			Name: "M", Path: "/pumps/0", Outlet: layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, Size: "2"},
			Port: at(l/2, w/2, h), Points: geom.Vec3{Z: 1}, Blocks: []geom.Box{box(0, 0, 0, l, w, h)},
		},
		Vault: layout.Vault{Length: 10, Width: 10, Depth: 10, Path: "/vault", Outlet: layout.Outlet{Wall: layout.Right, Along: 5, Height: 5}},
	}
	if r.IntN(4) == 0 {
		input.Pump.Blocks, input.Pump.Cylinders = nil, []layout.Cylinder{{From: at(w/2, w/2, 0), To: at(w/2, w/2, h), Radius: unit.Length(w/2) * in}}
		input.Pump.Port = at(w/2, w/2, h)
	}
	if r.IntN(3) == 0 {
		input.Pump.Port, input.Pump.Points = at(l, w/2, h/2), geom.Vec3{X: 1}
		if input.Pump.Blocks == nil {
			input.Pump.Port = at(w, w/2, h/2)
		}
	}
	input.Pose = layout.Pose{At: geom.Vec3{X: 5, Y: 5}, Turn: unit.Angle(r.IntN(4)) * 90 * unit.Degree}
	if r.IntN(6) == 0 {
		input.Pose.Turn = unit.Angle(r.Float64() * 2 * math.Pi)
	}
	if r.IntN(3) == 0 {
		input.Settings.Units = unit.Metric
	}
	if r.IntN(3) == 0 {
		input.Settings.MakeUp = layout.Is(pick(r, 0, 1.5*unit.Millimetre, in/16))
		input.Settings.PartClear = layout.Is(inches(r, 0, 0.5))
		input.Settings.WallClear = layout.Is(inches(r, 0, 0.5))
	}
	a, _, _ := layout.Lay(input)
	if !a.Laid {
		return input, false
	}
	last := a.Places[len(a.Places)-1]
	end := last.Outlet
	if input.Parts[len(input.Parts)-1].Kind == layout.Bulkhead {
		end = last.Centre
	} else {
		end = end.Add(last.OutDir.Scale(float64(inches(r, 2, 6))))
	}
	box := geom.Box{Min: a.Port, Max: a.Port}
	for _, b := range a.Body {
		for _, e := range []geom.Vec3{b.U.Add(b.V).Add(b.W), b.U.Sub(b.V).Add(b.W), b.U.Sub(b.V).Sub(b.W), b.U.Add(b.V).Sub(b.W)} {
			box = box.Join(geom.BoxOf(b.Centre.Add(e), b.Centre.Sub(e)))
		}
	}
	for _, c := range a.Rounds {
		box = box.Join(geom.BoxOf(c.From, c.To).Grow(float64(c.Radius)))
	}
	for _, p := range a.Places {
		box = box.Join(geom.BoxOf(p.InFace, p.OutFace).Grow(0.0254 * 2.1))
	}
	margin := func() float64 { return float64(inches(r, -0.3, 6)) }
	box.Min, box.Max = box.Min.Sub(geom.Vec3{X: margin(), Y: margin()}), box.Max.Add(geom.Vec3{X: margin(), Y: margin(), Z: margin()})
	o := &input.Vault.Outlet
	switch d := last.OutDir; {
	case d.X > 0.9999:
		o.Wall, box.Max.X = layout.Right, end.X
	case d.X < -0.9999:
		o.Wall, box.Min.X = layout.Left, end.X
	case d.Y > 0.9999:
		o.Wall, box.Max.Y = layout.Back, end.Y
	case d.Y < -0.9999:
		o.Wall, box.Min.Y = layout.Front, end.Y
	default:
		return input, false
	}
	v := &input.Vault
	v.Length, v.Width, v.Depth = unit.Length(box.Size().X), unit.Length(box.Size().Y), unit.Length(box.Max.Z)
	input.Pose.At = input.Pose.At.Sub(geom.Vec3{X: box.Min.X, Y: box.Min.Y})
	end = end.Sub(geom.Vec3{X: box.Min.X, Y: box.Min.Y})
	o.Height, o.Along = unit.Length(end.Z), unit.Length(end.Y)
	if o.Wall == layout.Front || o.Wall == layout.Back {
		o.Along = unit.Length(end.X)
	}
	if r.IntN(3) == 0 { // close it by a worked piece, the hole moved along it
		k := r.IntN(len(input.Parts))
		input.Parts[k].Next = layout.Join{Closing: true}
	}
	anyVault(r, v)
	return input, true
}

// anyVault tapers or rounds the vault, hatches its lid, puts obstacles in.
func anyVault(r *rand.Rand, v *layout.Vault) {
	switch r.IntN(5) {
	case 0:
		v.FloorLength = v.Length + inches(r, -1, 1)
	case 1:
		d := max(v.Length, v.Width) * unit.Length(1+0.4*r.Float64())
		v.Round, v.Length = true, d
		if r.IntN(2) == 0 {
			v.FloorLength = d - inches(r, 0, 1)
		}
	}
	for i := range r.IntN(3) {
		p := at(r.Float64()*float64(v.Length/in), r.Float64()*float64(v.Length/in), r.Float64()*float64(v.Depth/in))
		v.Obstacles = append(v.Obstacles, layout.Obstacle{
			Name: fmt.Sprintf("rack %d", i+1), Box: geom.BoxOf(p, p.Add(at(1+6*r.Float64(), 1+6*r.Float64(), 0.5+2*r.Float64()))),
		})
	}
	if r.IntN(5) == 0 {
		v.Opening = layout.Opening{FromX: inches(r, 0, 2), ToX: v.Length - inches(r, 0, 2), FromY: inches(r, 0, 2), ToY: v.Length - inches(r, 0, 2)}
	}
}
