package glue

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"testing"

	"plashet/engine/catalog"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"

	"pgregory.net/rapid"
)

const in = unit.Inch

var book = func() *catalog.Book {
	b, err := catalog.New()
	if err != nil {
		panic(err)
	}
	return b
}()

func fahrenheit(f float64) unit.Temperature { return unit.Temperature((f - 32) / 1.8) }

func by(v unit.Length) layout.Measure {
	return layout.Measure{Length: v, Source: trace.Source{Title: "measured", Basis: trace.BasisMeasured}}
}

func inline(k layout.Kind, mark string, stops unit.Length) layout.Part {
	p := layout.Inline(k, "2", by(stops), by(1.5*in), by(2.875*in))
	p.Mark = mark
	return p
}

func elbow(mark string) layout.Part {
	p := layout.SocketElbow(layout.Elbow90, "2", by(1.15*in), by(1.5*in), by(2.875*in))
	p.Mark = mark
	return p
}

func adapter() layout.Part {
	p := layout.ThreadedInlet("2", layout.NPT, by(0.1*in), layout.Measure{}, by(1.5*in), by(2.875*in))
	p.Mark = "A1"
	return p
}

func bulkhead() layout.Part {
	p := layout.WallFitting("2", by(-0.8*in), by(1.5*in), by(3*in))
	p.Mark = "B1"
	return p
}

// twoInch is 2 in Sch 40 PVC pipe (ASTM D1785, reference pipe.csv).
var twoInch = layout.Pipe{Kind: "PVC Sch 40", Size: "2", OD: 2.375 * in, Bore: 2.067 * in}

// chain lays parts in a big vault: what counts here is the order, not the fit.
func chain(parts ...layout.Laid) Input {
	a, _, _ := layout.Lay(layout.Input{
		Vault: layout.Vault{
			Length: 10, Width: 10, Depth: 10, Path: "/vault",
			Outlet: layout.Outlet{Wall: layout.Right, Along: 5, Height: 2},
		},
		Pump: layout.Pump{
			Name: "M", Path: "/pumps/0", Blocks: []geom.Box{{Max: geom.Vec3{X: 0.4, Y: 0.2, Z: 0.25}}},
			Port: geom.Vec3{X: 0.2, Y: 0.1, Z: 0.25}, Points: geom.Vec3{Z: 1},
			Outlet: layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, Size: "2"},
		},
		Pose: layout.Pose{At: geom.Vec3{X: 4, Y: 5}}, Parts: parts, Pipes: []layout.Pipe{twoInch}, Path: "/assembly",
	})
	return Input{Parts: parts, Assembly: a, Book: book, Temperature: fahrenheit(70), Pressure: 30 * unit.PSI, Path: "/assembly"}
}

func laid(p layout.Part) layout.Laid { return layout.Laid{Part: p} }
func closing(p layout.Part) layout.Laid {
	return layout.Laid{Part: p, Next: layout.Join{Closing: true}}
}

// hillside is the demo's chain that fits: valve in the level leg (invented).
func hillside() Input {
	e := laid(elbow("E1"))
	e.Roll = 270 * unit.Degree
	return chain(laid(adapter()), closing(inline(layout.Union, "U1", 0.9*in)), e, closing(inline(layout.CheckSwing, "V1", 3.2*in)), laid(bulkhead()))
}

func order(t *testing.T, in Input) Plan {
	t.Helper()
	p, _, faults := Order(in)
	for _, f := range faults {
		t.Errorf("fault %s at %s: %+v", f.Code, f.Path, f.Args)
	}
	return p
}

// made gives the index of the step that makes each joint, or tells what is wrong.
func made(t interface{ Fatalf(string, ...any) }, p Plan) []int {
	at := make([]int, len(p.Joints))
	for i := range at {
		at[i] = -1
	}
	for i, s := range p.Steps {
		if s.Number != i+1 {
			t.Fatalf("step %d is numbered %d", i+1, s.Number)
		}
		for _, n := range s.Joints {
			if n < 1 || n > len(at) || at[n-1] >= 0 {
				t.Fatalf("joint %d is made twice or is none", n)
			}
			at[n-1] = i
		}
	}
	for i, a := range at {
		if a < 0 {
			t.Fatalf("joint %d (%s) is never made", i+1, p.Joints[i].Kind)
		}
	}
	return at
}

// The order is common practice, no source.
func TestHillside(t *testing.T) {
	p := order(t, hillside())
	at := made(t, p)
	// A1 in the port; P1, P2, P3, P4 with two joints each; the union's face; the wall's gasket.
	if len(at) != 1+8+1+1 {
		t.Fatalf("%d joints: %+v", len(at), p.Joints)
	}
	var codes []string
	for _, s := range p.Steps {
		if c := s.Code; len(codes) == 0 || codes[len(codes)-1] != c {
			codes = append(codes, c)
		}
	}
	want := []string{
		StepPrepare, StepDryFit, StepMarkInsertion, StepMarkRollUpright, StepMarkArrow, StepMarkCover, StepMarkLines, StepApart, StepThread, StepWall,
		StepCementValve, StepCement, StepNut, StepCement, StepPump,
		StepStand, StepMeasure, StepTakeOut, StepCementValve, StepFlap, StepBack, StepCement,
		StepStand, StepMeasure, StepTakeOut, StepCement, StepBack, StepCement, StepUnion, StepCure, StepTest,
	}
	if !slices.Equal(codes, want) {
		t.Errorf("got  %v\nwant %v", codes, want)
	}
	for _, s := range p.Steps {
		cement := s.Code == StepCement || s.Code == StepCementValve
		// 2 in is no small size: up to 3 min (two how-to pages, reference solventweld.csv).
		if cement != s.NoReturn || cement && s.Hold != 180*unit.Second {
			t.Errorf("step %d %s: no return %v, hold %v", s.Number, s.Code, s.NoReturn, s.Hold)
		}
		if s.Code == StepCementValve && (s.Tilt != TiltBelow || s.Where != Bench) {
			t.Errorf("step %d: the valve is not tilted: %+v", s.Number, s)
		}
		if vapour := slices.Contains(s.Cautions, CautionVapour); cement && vapour != (s.Where == Vault) {
			t.Errorf("step %d: vapour %v in %s", s.Number, vapour, s.Where)
		}
		if s.Where == Vault && !slices.Contains(s.Cautions, CautionUnplug) {
			t.Errorf("step %d %s: nobody unplugs the pump", s.Number, s.Code)
		}
		if saw := slices.Contains(s.Cautions, CautionSaw); saw != (s.Code == StepPrepare || s.Code == StepMeasure) {
			t.Errorf("step %d %s: eyes guarded at the saw: %v", s.Number, s.Code, saw)
		}
		if s.Code == StepTest && !slices.Contains(s.Cautions, CautionWaterOnly) {
			t.Error("the test does not say water only")
		}
	}
	th := p.Joints[0].Thread
	// Tape clockwise, three or four turns: common practice, no source.
	if th == nil || !th.Tape || !th.Clockwise || th.Wraps.Low != 3 || th.Wraps.High != 4 || th.Turns.High != 2 {
		t.Errorf("thread: %+v", th)
	}
}

// The roll mark is told both ways round: 2 in pipe is 2.375 in thick (ASTM
// D1785), 7.461 in round; three quarters of it are 5.596 in, a quarter 1.865 in,
// 5-5/8 and 1-7/8 to the sixteenth. From the top, or on an upright pipe from
// the side of the back wall; a mark on that line itself has no way round.
func TestRollMarks(t *testing.T) {
	marks := func(input Input) (out []Step) {
		for _, s := range order(t, input).Steps {
			if s.Code == StepMarkRoll || s.Code == StepMarkRollUpright {
				out = append(out, s)
			}
		}
		return out
	}
	got := marks(hillside())
	if len(got) != 1 || got[0].Code != StepMarkRollUpright {
		t.Fatalf("%+v", got)
	}
	for name, want := range map[string]unit.Length{"arc": 5.625 * in, "other": 1.875 * in} {
		i := slices.IndexFunc(got[0].Args, func(a trace.Arg) bool { return a.Name == name })
		if i < 0 || math.Abs(got[0].Args[i].Value.SI-float64(want)) > 1e-9 {
			t.Errorf("%s of %+v, want %v", name, got[0].Args, want)
		}
	}
	level := laid(elbow("E2"))
	got = marks(chain(laid(adapter()), laid(elbow("E1")), level, laid(bulkhead())))
	if len(got) != 2 || got[0].Code != StepMarkRollUpright || got[1].Code != StepMarkRoll {
		t.Fatalf("%+v", got)
	}
	for _, s := range got {
		if slices.ContainsFunc(s.Args, func(a trace.Arg) bool { return a.Name == "arc" || a.Name == "other" }) {
			t.Errorf("an elbow turned by nothing: %+v", s.Args)
		}
	}
}

// A level swing valve with its cover anywhere but on top does not fall shut
// (common practice, no source), so it is turned and marked before any cement is
// at it. Upright, or of another kind, it has no top.
func TestCoverOnTop(t *testing.T) {
	swing := laid(inline(layout.CheckSwing, "V1", 3.2*in))
	level := []layout.Laid{laid(adapter()), laid(elbow("E1")), swing, laid(bulkhead())}
	for _, c := range []struct {
		name  string
		parts []layout.Laid
		want  bool
	}{
		{"level", level, true},
		{"upright", []layout.Laid{laid(adapter()), swing, laid(elbow("E1")), laid(bulkhead())}, false},
		{"ball", []layout.Laid{laid(adapter()), laid(elbow("E1")), laid(inline(layout.BallValve, "V1", 3.2*in)), laid(bulkhead())}, false},
	} {
		p := order(t, chain(c.parts...))
		cover := slices.IndexFunc(p.Steps, func(s Step) bool { return s.Code == StepMarkCover })
		if (cover >= 0) != c.want {
			t.Errorf("%s: cover step at %d", c.name, cover)
			continue
		}
		if c.want && (!slices.Equal(p.Steps[cover].Parts, []string{"V1", "P2", "P3"}) || p.Steps[cover].Where != Vault) {
			t.Errorf("%s: %+v", c.name, p.Steps[cover])
		}
	}
}

// Set, cure and quantity as the tables print them: 2 in, 60-100 F: set 30 min
// (manual A) and 5 min (B), cure 2 h (A) and 30 min (B); 40-60 F: 2 h set;
// damp adds 50 percent; 60 joints of 2 in to a quart; primer serves twice as
// many (reference solventweld.csv, plastics technical manual, joint curing page).
func TestTimesAndQuantity(t *testing.T) {
	for _, c := range []struct {
		f           float64
		damp        bool
		set, cure   unit.Duration
		fast        unit.Duration
		jointsQuart float64
	}{
		{70, false, 30 * unit.Minute, 2 * unit.Hour, 5 * unit.Minute, 60},
		{70, true, 45 * unit.Minute, 3 * unit.Hour, 5 * unit.Minute, 60},
		{50, false, 2 * unit.Hour, 4 * unit.Hour, 10 * unit.Minute, 60},
	} {
		input := hillside()
		input.Temperature, input.Damp = fahrenheit(c.f), c.damp
		p := order(t, input)
		if p.Handle != c.set || p.Ready != c.cure || !p.Known {
			t.Errorf("%g F, damp %v: set %v, cure %v", c.f, c.damp, p.Handle, p.Ready)
		}
		for _, j := range p.Joints {
			if j.Kind == Cement && (len(j.Times.Sets) != 2 || j.Times.Sets[1].Duration != c.fast) {
				t.Errorf("both manuals are not shown: %+v", j.Times.Sets)
			}
		}
		quart := unit.Volume(0.000946352946) // 231 in³ / 4
		if want := quart * 8 / unit.Volume(c.jointsQuart); math.Abs(float64(p.Cement/want-1)) > 1e-9 || math.Abs(float64(p.Primer*2/want-1)) > 1e-9 {
			t.Errorf("cement %v, primer %v, want %v and half of it", p.Cement, p.Primer, want)
		}
	}
}

// A valve with two nuts: its body is out while its tails are cemented, and no
// cement can run into it.
func TestUnionEndedValve(t *testing.T) {
	v := inline(layout.CheckSpring, "V1", 5*in)
	v.Splits = []layout.Split{{Offset: -1.4 * in}, {Offset: 1.4 * in}}
	p := order(t, chain(laid(adapter()), laid(v), closing(elbow("E1")), laid(bulkhead())))
	made(t, p)
	for _, j := range p.Joints {
		if j.Valve {
			t.Errorf("cement at the valve: %+v", j)
		}
	}
	count := map[string]int{}
	for _, s := range p.Steps {
		count[s.Code]++
	}
	if count[StepBodyOut] != 1 || count[StepNut] != 2 || count[StepUnion] != 2 || count[StepFlap] != 1 {
		t.Errorf("steps: %v", count)
	}
	if len(p.Assumptions) != 0 {
		t.Errorf("its nuts are where they are: %+v", p.Assumptions)
	}
}

func TestValveFixedBothSides(t *testing.T) {
	_, fs, _ := Order(chain(laid(adapter()), laid(inline(layout.Union, "U1", 0.9*in)), closing(elbow("E1")), laid(inline(layout.CheckSwing, "V1", 3.2*in)), laid(bulkhead())))
	if !slices.ContainsFunc(fs, func(f trace.Finding) bool { return f.Code == FindValveInVault }) {
		t.Errorf("the valve's last joint cannot be tilted, and nobody says so: %+v", fs)
	}
}

// Of a closing piece the side that comes out is cemented on the bench: the
// union's half rather than the pump, a valve rather than either.
func TestClosingSides(t *testing.T) {
	for _, c := range []struct {
		name         string
		parts        []layout.Laid
		bench, vault string
	}{
		{"union", []layout.Laid{closing(adapter()), laid(inline(layout.Union, "U1", 0.9*in)), laid(bulkhead())}, "U1", "A1"},
		{"valve beyond", []layout.Laid{closing(adapter()), laid(inline(layout.CheckSwing, "V1", 3.2*in)), laid(inline(layout.Union, "U1", 0.9*in)), laid(bulkhead())}, "V1", "A1"},
		{"valve before", []layout.Laid{laid(adapter()), closing(inline(layout.CheckSwing, "V1", 3.2*in)), laid(inline(layout.Union, "U1", 0.9*in)), laid(bulkhead())}, "V1", "U1"},
		{"no union", []layout.Laid{closing(adapter()), laid(elbow("E1")), laid(bulkhead())}, "A1", "E1"},
	} {
		p := order(t, chain(c.parts...))
		at := made(t, p)
		got := map[Where]string{}
		for i, j := range p.Joints {
			if j.Closing {
				got[p.Steps[at[i]].Where] = j.Ends[0].Mark
			}
		}
		if got[Bench] != c.bench || got[Vault] != c.vault {
			t.Errorf("%s: got %v, want %s on the bench, %s in the vault", c.name, got, c.bench, c.vault)
		}
	}
}

// Once a closing piece has tied it to the wall, a valve comes out no more: its
// second joint is made in the vault, and that is said.
func TestTiedToWall(t *testing.T) {
	measured := layout.Join{Closing: true, Measured: layout.Is(2 * in)}
	a, v := laid(adapter()), laid(inline(layout.CheckSwing, "V1", 3.2*in))
	a.Next, v.Next = measured, measured
	p, fs, _ := Order(chain(a, v, laid(bulkhead())))
	at := made(t, p)
	for i, j := range p.Joints {
		if j.Piece != "" && !j.Closing {
			t.Fatalf("%s is no closing piece", j.Piece)
		}
		if s := p.Steps[at[i]]; j.Piece == "P1" && j.Valve && (s.Where != Vault || s.Code != StepCementValveInPlace || s.Tilt != TiltNone) {
			t.Errorf("V1 is taken out though it is cemented to the wall: %+v", p.Steps[at[i]])
		}
	}
	if !slices.ContainsFunc(fs, func(f trace.Finding) bool { return f.Code == FindValveInVault }) {
		t.Errorf("nobody says so: %+v", fs)
	}
}

// What is screwed to the wall's own fitting is screwed in in the vault, after
// that fitting is set. Between two threads something else must let one turn.
func TestThreadedWall(t *testing.T) {
	wall := bulkhead()
	wall.In = layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, TakeOff: by(in), Hub: by(3 * in)}
	male := adapter().Swapped()
	male.Mark = "A2"
	input := chain(laid(adapter()), closing(elbow("E1")), laid(male), laid(wall))
	p := order(t, input)
	at := made(t, p)
	n := len(p.Joints)
	if thread := p.Steps[at[n-2]]; p.Joints[n-2].Kind != Thread || thread.Where != Vault || at[n-2] < at[n-1] {
		t.Errorf("the thread at the wall: %+v", thread)
	}
	nipple := adapter()
	nipple.Kind, nipple.Out = layout.Straight, male.Out
	input = chain(laid(nipple), laid(wall))
	p, fs, _ := Order(input)
	if !slices.ContainsFunc(fs, func(f trace.Finding) bool { return f.Code == FindCaptive && f.Severity == trace.Danger }) {
		t.Errorf("two threads and nothing to turn: %+v", fs)
	}
	if !p.Withheld || len(p.Steps) != 0 || len(p.Joints) != 3 {
		t.Errorf("what cannot be made has no steps: %+v", p)
	}
}

// Of a chain that cannot be built no step is told; joints, times and what it
// takes are told all the same.
func TestUnfit(t *testing.T) {
	fit := order(t, hillside())
	input := hillside()
	input.Unfit = true
	p := order(t, input)
	if !p.Withheld || len(p.Steps) != 0 || fit.Withheld || len(fit.Steps) == 0 {
		t.Errorf("withheld %v with %d steps, and %v with %d", p.Withheld, len(p.Steps), fit.Withheld, len(fit.Steps))
	}
	if len(p.Joints) != len(fit.Joints) || p.Cement != fit.Cement || p.Ready != fit.Ready || !p.Known {
		t.Errorf("%+v", p)
	}
}

// The male thread goes into the female one, whichever way the water goes.
func TestMaleIntoFemale(t *testing.T) {
	fromTo := func(p Plan) (from, to string) {
		s := p.Steps[slices.IndexFunc(p.Steps, func(s Step) bool { return s.Code == StepThread })]
		return s.Args[0].Text, s.Args[1].Text
	}
	if from, to := fromTo(order(t, hillside())); from != "A1" || to != "pump" {
		t.Errorf("the adapter goes into the port, not %s into %s", from, to)
	}
	input := hillside()
	input.Parts[0].In.Kind = layout.FemaleThread // on a port with a male thread
	if from, to := fromTo(order(t, input)); from != "pump" || to != "A1" {
		t.Errorf("the port goes into the adapter, not %s into %s", from, to)
	}
}

// A parallel thread takes no tape: it seals on its ring (ISO 228-1: pressure-tight
// joints are not made on the thread).
func TestParallelThread(t *testing.T) {
	a := adapter()
	a.In.Thread = layout.BSPP
	p := order(t, chain(laid(a), laid(bulkhead())))
	if th := p.Joints[0].Thread; th.Tape || th.Clockwise || p.Steps[made(t, p)[0]].Code != StepThreadRing {
		t.Errorf("tape on a parallel thread: %+v", th)
	}
}

func TestColdAndFrost(t *testing.T) {
	input := hillside()
	input.Temperature, input.Frost = fahrenheit(35), true
	p, fs, _ := Order(input)
	if !slices.ContainsFunc(fs, func(f trace.Finding) bool { return f.Code == FindCold }) {
		t.Errorf("no word of the cold: %+v", fs)
	}
	if last := p.Steps[len(p.Steps)-1]; !slices.Contains(last.Cautions, CautionFrost) {
		t.Errorf("the last step: %+v", last)
	}
	if ids := []string{p.Figures[0].ID, p.Figures[1].ID, p.Figures[2].ID}; !slices.Contains(ids, "glue.ready") || !slices.Contains(ids, "glue.cement") || !slices.Contains(ids, "glue.primer") {
		t.Errorf("figures: %v", ids)
	}
}

func TestBadInput(t *testing.T) {
	has := func(fs []trace.Fault, code string) bool {
		return slices.ContainsFunc(fs, func(f trace.Fault) bool { return f.Code == code })
	}
	for _, c := range []struct {
		name string
		bend func(*Input)
		code string
	}{
		{"nothing", func(in *Input) { *in = Input{} }, FaultNotLaid},
		{"no parts", func(in *Input) { in.Parts = nil }, FaultNotLaid},
		{"other parts", func(in *Input) { in.Parts = in.Parts[:2] }, FaultMismatch},
		{"piece after the last", func(in *Input) { in.Assembly.Pieces[0].After = 99 }, FaultMismatch},
		{"roll of no part", func(in *Input) { in.Assembly.Rolls[0].Part = -3 }, FaultMismatch},
		{"no pieces", func(in *Input) { in.Assembly.Pieces = nil }, FaultEnds},
		{"hose", func(in *Input) { in.Parts[2].In.Kind = layout.HoseTail }, FaultEnds},
		{"no book", func(in *Input) { in.Book = nil }, FaultNoBook},
		{"NaN", func(in *Input) { in.Temperature = unit.Temperature(math.NaN()) }, FaultFinite},
		{"negative pressure", func(in *Input) { in.Pressure = -1 }, FaultFinite},
		{"infinite pressure", func(in *Input) { in.Pressure = unit.Pressure(math.Inf(1)) }, FaultFinite},
		{"too cold", func(in *Input) { in.Temperature = -40 }, FaultTimes},
		{"no size", func(in *Input) { in.Assembly.Pieces[0].Pipe.Size = "x" }, FaultQuantity},
	} {
		input := hillside()
		input.Parts = slices.Clone(input.Parts)
		c.bend(&input)
		p, _, faults := Order(input)
		if !has(faults, c.code) {
			t.Errorf("%s: want %s, got %+v", c.name, c.code, faults)
		}
		if p.Known {
			t.Errorf("%s: the plan claims to know its times", c.name)
		}
		if c.code == FaultNoBook || c.code == FaultFinite || c.code == FaultTimes {
			made(t, p) // the order stands without the times
		}
	}
}

// random draws a chain of any parts whose ends go together.
func random(t *rapid.T) Input {
	parts := []layout.Laid{laid(adapter())}
	for i := range rapid.IntRange(0, 8).Draw(t, "parts") {
		mark := string(rune('a' + i))
		var p layout.Part
		switch rapid.IntRange(0, 8).Draw(t, "kind") {
		case 0, 1:
			p = inline(layout.Union, mark, 0.9*in)
		case 2:
			p = inline(layout.CheckSwing, mark, 3.2*in)
		case 3:
			p = inline(layout.CheckSpring, mark, 5*in)
			p.Splits = []layout.Split{{Offset: -1.4 * in}, {Offset: 1.4 * in}}
		case 4:
			p = layout.StreetElbow(layout.Street90, "2", by(2*in), by(1.5*in), by(2.375*in), by(1.15*in), by(1.5*in), by(2.875*in))
		case 5: // a threaded pair: socket, female; male, socket
			f := inline(layout.FemaleAdapter, mark+"f", in)
			f.Out = layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, TakeOff: by(in), Hub: by(3 * in)}
			parts = append(parts, laid(f))
			p = adapter()
		case 6: // a union threaded on one side
			u := inline(layout.Union, mark+"u", in)
			u.Out = layout.End{Kind: layout.FemaleThread, Thread: layout.BSPT, TakeOff: by(in), Hub: by(3 * in)}
			parts = append(parts, laid(u))
			p = adapter()
			p.In.Thread = layout.BSPT
		case 7:
			p = inline(layout.BallValve, mark, 3*in)
		default:
			p = elbow(mark)
		}
		p.Mark = mark
		l := laid(p)
		l.Roll = unit.Angle(rapid.IntRange(0, 3).Draw(t, "roll")) * 90 * unit.Degree
		if rapid.Bool().Draw(t, "measured") {
			l.Next = layout.Join{Closing: true, Measured: layout.Is(2 * in)}
		}
		parts = append(parts, l)
	}
	if rapid.Bool().Draw(t, "bulkhead") {
		parts = append(parts, laid(bulkhead()))
	}
	for i := range parts[:len(parts)-1] { // a spigot's or thread's joint has nothing to measure
		if parts[i+1].In.Kind != layout.Socket || parts[i].Out.Kind != layout.Socket {
			parts[i].Next = layout.Join{}
		}
	}
	return chain(parts...)
}

func TestAnyChain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		input := random(t)
		if !input.Assembly.Laid {
			t.Fatal("the chain was not laid")
		}
		p, fs, faults := Order(input)
		if len(faults) > 0 {
			t.Fatalf("faults: %+v", faults)
		}
		at := made(t, p)
		pieces, cemented := map[string]int{}, 0
		for i, j := range p.Joints {
			s := p.Steps[at[i]]
			if j.Piece != "" {
				pieces[j.Piece]++
			}
			if (j.Kind == Cement) != s.NoReturn {
				t.Fatalf("joint %d is %s, no return %v", i+1, j.Kind, s.NoReturn)
			}
			for _, e := range j.Ends {
				if j.Kind == Cement && e.Part >= 0 && layout.CoverUp(input.Parts[e.Part].Kind, input.Assembly.Places[e.Part].InDir) &&
					!slices.ContainsFunc(p.Steps[:at[i]], func(s Step) bool { return s.Code == StepMarkCover && s.Parts[0] == e.Mark }) {
					t.Fatalf("joint %d is cemented before the cover of %s is marked", i+1, e.Mark)
				}
			}
			if j.Valve && j.Kind == Cement && s.Tilt == TiltNone && !slices.ContainsFunc(fs, func(f trace.Finding) bool { return f.Code == FindValveInVault }) {
				t.Fatalf("joint %d at a valve is neither tilted nor told", i+1)
			}
			for _, e := range j.Ends {
				if j.Kind == Cement && e.Part >= 0 {
					splits := len(input.Parts[e.Part].Splits)
					end := input.Parts[e.Part].In.Kind
					if e.Out {
						end = input.Parts[e.Part].Out.Kind
					}
					if e.Opening != 0 && e.Opening != splits || end != layout.Socket && end != layout.Spigot {
						t.Fatalf("joint %d cements a face: %+v", i+1, e)
					}
				}
			}
			if j.Kind != Cement {
				continue
			}
			cemented++
			for k, o := range p.Joints {
				switch {
				case o.Kind == Thread && at[k] > at[i] && share(j, o):
					t.Fatalf("joint %d is cemented before thread %d on the same part", i+1, k+1)
				case o.Kind == Face && at[k] < at[i]:
					t.Fatalf("union face %d is made up before joint %d", k+1, i+1)
				case o.Kind == Cement && !o.Closing && j.Closing && at[k] > at[i]:
					t.Fatalf("closing joint %d comes before joint %d", i+1, k+1)
				}
			}
		}
		for _, piece := range input.Assembly.Pieces {
			if pieces[piece.Mark] != 2 {
				t.Fatalf("piece %s has %d joints", piece.Mark, pieces[piece.Mark])
			}
		}
		nutsFirst(t, p)
		followed(t, input, p)
		cold := input
		cold.Temperature = fahrenheit(rapid.Float64Range(0, 70).Draw(t, "cold"))
		if q, _, _ := Order(cold); q.Handle < p.Handle || q.Ready < p.Ready || cemented > 0 && q.Handle == 0 {
			t.Fatalf("colder, but set %v and cure %v against %v and %v", q.Handle, q.Ready, p.Handle, p.Ready)
		}
	})
}

// followed does the steps with the parts in hand and holds each against where
// they are: a gap is measured right after the whole chain was stood in the
// vault with every union made up, a joint on the bench is of parts that are out,
// one in the vault of parts that are in, and what was put in comes out only by
// the step that takes it out.
func followed(t interface{ Fatalf(string, ...any) }, input Input, p Plan) {
	in := map[string]bool{} // in the vault
	whole := map[string]bool{}
	measured := 0
	for i := range input.Parts {
		m := mark(input.Parts, i)
		whole[m] = len(input.Parts[i].Splits) == 0 // a part that opens can be in two places at once
	}
	for i, s := range p.Steps {
		switch s.Code {
		case StepWall, StepIn, StepPump, StepBack, StepStand:
			for _, m := range s.Parts {
				in[m] = true
			}
		case StepTakeOut:
			for _, m := range s.Parts {
				if whole[m] && !in[m] {
					t.Fatalf("step %d takes out %s, which is not in", s.Number, m)
				}
				in[m] = false
			}
		case StepThread, StepThreadRing:
			if s.Where == Vault {
				in[s.Parts[0]], in[s.Parts[1]] = true, true
			}
		case StepMeasure:
			measured++
			stood := p.Steps[i-1]
			if stood.Code != StepStand || stood.Where != Vault {
				t.Fatalf("step %d measures after %s", s.Number, stood.Code)
			}
			for m := range whole {
				if whole[m] && !in[m] {
					t.Fatalf("step %d measures while %s is out", s.Number, m)
				}
				if !whole[m] && !slices.Contains(stood.Parts, m) {
					t.Fatalf("step %d measures while %s is not made up", s.Number, m)
				}
			}
		case StepCement, StepCementValve, StepCementValveInPlace:
			turned := slices.ContainsFunc(s.Args, func(a trace.Arg) bool { return a.Name == "twist" })
			if want := s.Where == Bench && p.Joints[s.Joints[0]-1].Times.Twist > 0; turned != want {
				t.Fatalf("step %d in the %s is turned while it is pushed home: %v", s.Number, s.Where, turned)
			}
			for _, n := range s.Joints {
				for _, e := range p.Joints[n-1].Ends {
					if e.Part >= 0 && whole[e.Mark] && in[e.Mark] != (s.Where == Vault) {
						t.Fatalf("step %d cements %s in the %s, in the vault: %v", s.Number, e.Mark, s.Where, in[e.Mark])
					}
				}
			}
			if j := p.Joints[s.Joints[0]-1]; j.Closing && s.Where == Bench {
				out := p.Steps[i-1]
				if out.Code == StepNut {
					out = p.Steps[i-2]
				}
				if out.Code != StepTakeOut || !slices.Contains(out.Parts, j.Ends[0].Mark) {
					t.Fatalf("step %d cements %s on the bench after %s", s.Number, j.Ends[0].Mark, out.Code)
				}
			}
		}
	}
	closing := map[string]bool{}
	for _, j := range p.Joints {
		if j.Closing {
			closing[j.Piece] = true
		}
	}
	if measured != len(closing) {
		t.Fatalf("%d closing pieces, %d measured", len(closing), measured)
	}
	for m := range whole {
		if whole[m] && !in[m] {
			t.Fatalf("%s never gets into the vault", m)
		}
	}
}

func mark(parts []layout.Laid, i int) string { return cmp.Or(parts[i].Mark, strconv.Itoa(i+1)) }

func share(a, b Joint) bool {
	return slices.ContainsFunc(a.Ends, func(e End) bool {
		return e.Part >= 0 && slices.ContainsFunc(b.Ends, func(f End) bool { return e.Part == f.Part })
	})
}

// nutsFirst holds each nut step against the joint of its tail: the very next
// joint made is that one, and each union has one nut on before its face.
func nutsFirst(t *rapid.T, p Plan) {
	nuts := 0
	for i, s := range p.Steps {
		if s.Code != StepNut {
			continue
		}
		nuts++
		next := slices.IndexFunc(p.Steps[i:], func(s Step) bool { return len(s.Joints) > 0 })
		j := p.Joints[p.Steps[i+next].Joints[0]-1]
		if j.Kind == Face || !slices.ContainsFunc(j.Ends, func(e End) bool { return e.Mark == s.Args[0].Text }) {
			t.Fatalf("the nut of step %d is not on before its tail: %+v", s.Number, j)
		}
	}
	faces := 0
	for _, j := range p.Joints {
		if j.Kind == Face {
			faces++
		}
	}
	if nuts != faces {
		t.Fatalf("%d nuts for %d faces", nuts, faces)
	}
}

func BenchmarkOrder(b *testing.B) {
	input := hillside()
	b.ReportAllocs()
	for b.Loop() {
		Order(input)
	}
}
