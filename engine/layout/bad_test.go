package layout

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

func TestBadInput(t *testing.T) {
	nan := unit.Length(math.NaN())
	inf := unit.Length(math.Inf(1))
	for _, c := range []struct {
		name  string
		spoil func(*Input)
		fault string
		laid  bool
	}{
		{"no parts", func(i *Input) { i.Parts = nil }, FaultNoParts, false},
		{"no pump body", func(i *Input) { i.Pump.Blocks = nil }, FaultNoPump, false},
		{"no port direction", func(i *Input) { i.Pump.Points = geom.Vec3{} }, FaultNoPump, false},
		{"pump without height", func(i *Input) { i.Pump.Blocks = []geom.Box{block(0, 0, 0, 10, 5, 0)} }, FaultRange, false},
		{"pump inside out", func(i *Input) { i.Pump.Blocks = []geom.Box{block(0, 0, 9, 10, 5, 0)} }, FaultRange, false},
		{"pump's place not a number", func(i *Input) { i.Pose.At.X = math.NaN() }, FaultFinite, false},
		{"endless turn", func(i *Input) { i.Pose.Turn = unit.Angle(inf) }, FaultFinite, false},
		{"no vault", func(i *Input) { i.Vault = Vault{Path: "/vault"} }, FaultNoVault, true},
		{"vault without depth", func(i *Input) { i.Vault.Depth = 0 }, FaultNoVault, true},
		{"negative vault", func(i *Input) { i.Vault.Width = -1 }, FaultRange, true},
		{"vault of a mile", func(i *Input) { i.Vault.Length = 1609 }, FaultRange, true},
		{"vault not a number", func(i *Input) { i.Vault.Length = nan }, FaultFinite, true},
		{"vault smaller than the pump", func(i *Input) { i.Vault.Width = 7 * in; i.Vault.Outlet.Along = 3 * in }, FaultPumpLarger, true},
		{"hole over the lid", func(i *Input) { i.Vault.Outlet.Height = 27 * in }, FaultHole, true},
		{"hole beyond the wall", func(i *Input) { i.Vault.Outlet.Along = 19 * in }, FaultHole, true},
		{"hole in no wall", func(i *Input) { i.Vault.Outlet.Wall = "ceiling" }, FaultHole, true},
		{"hole not a number", func(i *Input) { i.Vault.Outlet.Along = nan }, FaultHole, true},
		{"obstacle inside out", func(i *Input) {
			i.Vault.Obstacles = []Obstacle{{"rack", geom.Box{Min: geom.Vec3{X: 1}}}}
		}, FaultRange, true},
		{"obstacle not a number", func(i *Input) {
			i.Vault.Obstacles = []Obstacle{{"rack", geom.Box{Min: geom.Vec3{X: math.NaN()}}}}
		}, FaultFinite, true},
		{"hatch inside out", func(i *Input) { i.Vault.Opening = Opening{FromX: 1, ToX: 0.5, ToY: 1} }, FaultRange, true},
		{"unknown fitting", func(i *Input) { i.Parts[1].Kind = "wye" }, FaultKind, false},
		{"elbow without its centre to stop", func(i *Input) { i.Parts[2].In.TakeOff = Measure{} }, FaultMissing, false},
		{"elbow without its socket", func(i *Input) { i.Parts[2].Out.Depth = Measure{} }, FaultMissing, false},
		{"elbow without its hub", func(i *Input) { i.Parts[2].In.Hub, i.Parts[2].Out.Hub = Measure{}, Measure{} }, FaultMissing, true},
		{"negative socket", func(i *Input) { i.Parts[2].Out.Depth = by(-in) }, FaultRange, false},
		{"take-off not a number", func(i *Input) { i.Parts[2].Out.TakeOff = by(nan) }, FaultFinite, false},
		{"roll not a number", func(i *Input) { i.Parts[2].Roll = unit.Angle(nan) }, FaultFinite, false},
		{"distance not a number", func(i *Input) { i.Parts[0].Next = Join{By: Faces, Distance: nan} }, FaultFinite, false},
		{"endless distance", func(i *Input) { i.Parts[0].Next = Join{By: Faces, Distance: inf} }, FaultFinite, false},
		{"negative gap", func(i *Input) { i.Parts[0].Next = Join{By: Faces, Distance: -in} }, FaultShort, true},
		{"bulkhead fitting in the middle", func(i *Input) { i.Parts[1].Part = bulkhead(0) }, FaultBulkhead, false},
		{"make-up not a number", func(i *Input) { i.Settings.MakeUp = Is(nan) }, FaultFinite, false},
		{"make-up of an inch", func(i *Input) { i.Settings.MakeUp = Is(in) }, FaultRange, false},
		{"negative clearance", func(i *Input) { i.Settings.Hand = Is(-in) }, FaultRange, false},
		{"no pipe", func(i *Input) { i.Pipes = nil }, FaultPipe, true},
		{"bore wider than the pipe", func(i *Input) { i.Pipes = []Pipe{{Size: "2", OD: 2 * in, Bore: 3 * in}} }, FaultRange, false},
	} {
		input := levelCheck()
		c.spoil(&input)
		a, _, faults := Lay(input)
		f := faultOf(t, faults, c.fault)
		if f.Path == "" {
			t.Errorf("%s: the fault has no path", c.name)
		}
		if a.Laid != c.laid {
			t.Errorf("%s: laid %v, want %v (%s)", c.name, a.Laid, c.laid, codes(nil, faults))
		}
	}
}

// wild draws numbers that people and programs get wrong.
func wild(t *rapid.T, name string) float64 {
	return rapid.SampledFrom([]float64{
		0, 0.02, 0.05, 0.1, 0.3, 0.6, 1, -0.05, -1, 1e-300, 1e-9, 1e9, 1e300, math.Pi, math.Inf(1), math.Inf(-1), math.NaN(),
	}).Draw(t, name)
}

// Whatever the input, Lay returns, leaves the input alone, and puts no number
// that is none into positions or findings; and the same input gives the same
// answer.
func TestNeverPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		input := levelCheck()
		if rapid.Bool().Draw(t, "other") {
			input = chain(t)
		}
		l := func(name string) unit.Length { return unit.Length(wild(t, name)) }
		m := func(name string) Measure {
			return rapid.SampledFrom([]Measure{{}, by(l(name))}).Draw(t, name+" known")
		}
		for range rapid.IntRange(0, 4).Draw(t, "slips") {
			p := &input.Parts[rapid.IntRange(0, len(input.Parts)-1).Draw(t, "part")]
			switch rapid.IntRange(0, 13).Draw(t, "slip") {
			case 0:
				input.Vault.Length, input.Vault.Depth = l("length"), l("depth")
			case 1:
				input.Vault.Round, input.Vault.FloorLength = true, l("floor")
			case 2:
				input.Vault.Outlet = Outlet{Wall: rapid.SampledFrom([]Wall{Left, Right, Front, Back, "", Floor}).Draw(t, "wall"), Along: l("along"), Height: l("height")}
			case 3:
				input.Pose = Pose{At: geom.Vec3{X: wild(t, "x"), Y: wild(t, "y"), Z: wild(t, "z")}, Turn: unit.Angle(wild(t, "turn"))}
			case 4:
				input.Pump.Blocks = []geom.Box{{Max: geom.Vec3{X: wild(t, "px"), Y: wild(t, "py"), Z: wild(t, "pz")}}}
			case 5:
				input.Pump.Cylinders = []Cylinder{{To: geom.Vec3{Z: wild(t, "h")}, Radius: l("r")}}
			case 6:
				p.In.TakeOff, p.Out.TakeOff = m("in"), m("out")
			case 7:
				p.In.Depth, p.Out.Depth, p.In.Hub = m("socket in"), m("socket out"), m("hub")
			case 8:
				p.In.Kind, p.Out.Kind = EndKind(rapid.IntRange(0, 7).Draw(t, "in kind")), EndKind(rapid.IntRange(0, 7).Draw(t, "out kind"))
			case 9:
				p.Roll = unit.Angle(wild(t, "roll"))
			case 10:
				p.Next = Join{By: By(rapid.IntRange(0, 6).Draw(t, "by")), Distance: l("next"), Closing: rapid.Bool().Draw(t, "closing")}
				p.Next.Measured = rapid.SampledFrom([]Set[unit.Length]{{}, Is(l("gap"))}).Draw(t, "measured")
			case 11:
				p.Splits = []Split{{Offset: l("split"), Lip: l("lip")}, {Offset: l("split 2")}}
				p.Body = Body{Diameter: m("body"), Length: m("body length"), Reach: m("reach"), Offset: l("offset")}
			case 12:
				input.Vault.Obstacles = []Obstacle{{"o", geom.Box{Max: geom.Vec3{X: wild(t, "ox"), Y: wild(t, "oy"), Z: wild(t, "oz")}}}}
				input.Vault.Opening = Opening{ToX: l("ox"), ToY: l("oy")}
			case 13:
				input.Settings.MakeUp, input.Settings.LiftClear = Is(l("make-up")), Is(l("lift"))
				input.Beyond.Volume = Is(unit.Volume(wild(t, "volume")))
				input.Pipes = []Pipe{{Size: "2", OD: l("od"), Bore: l("bore")}}
			}
		}
		before := slices.Clone(input.Parts)
		a, fs, faults := Lay(input)
		for i := range before {
			if math.IsNaN(float64(before[i].Roll)) {
				continue
			}
			if before[i].Mark != input.Parts[i].Mark || before[i].Roll != input.Parts[i].Roll {
				t.Fatal("the input was changed")
			}
		}
		if a.Laid {
			for _, pl := range a.Places {
				if !pl.Centre.IsFinite() || !pl.OutDir.IsFinite() {
					t.Fatalf("a part at %v", pl.Centre)
				}
			}
		} else if len(faults) == 0 {
			t.Fatal("not laid, and no fault says why")
		}
		for _, f := range fs {
			if math.IsNaN(f.Found.SI) || math.IsNaN(f.Limit.SI) {
				t.Fatalf("%s carries no number: %+v", f.Code, f)
			}
		}
		b, gs, gaults := Lay(input)
		if len(gs) != len(fs) || len(gaults) != len(faults) || a.Laid != b.Laid || codes(gs, gaults) != codes(fs, faults) {
			t.Fatal("another answer the second time")
		}
	})
}
