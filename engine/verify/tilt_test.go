package verify

import (
	"math"
	"slices"
	"testing"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// hatched is a pump 15-1/2 in long, with 3-1/2 in of plumbing on it, under a hatch
// of 17-3/4 in: it comes out tilted only.
func hatched() layout.Input {
	pump := layout.Pump{
		Blocks: []geom.Box{box(0, 0, 0, 15.5, 7.5, 9.5)}, Port: at(15.5, 3.75, 5), Points: geom.Vec3{X: 1},
		Outlet: layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, Size: "2"}, Path: "/pumps/0",
	}
	union := inline(layout.Union, "U1", 0.9*in, 4.125*in)
	return layout.Input{
		Vault: layout.Vault{
			Length: 30 * in, Width: 18 * in, Depth: 26 * in, Path: "/vault", Outlet: layout.Outlet{Wall: layout.Right, Along: 9 * in, Height: 5 * in},
			Opening: layout.Opening{FromX: 0.25 * in, ToX: 18 * in, FromY: 1 * in, ToY: 14 * in},
		},
		Pump: pump, Pose: layout.Pose{At: at(0.5, 5.25, 0)},
		Parts: []layout.Laid{touching(adapter()), closing(union), touching(bulkhead(0))}, Pipes: []layout.Pipe{twoInch}, Path: "/assembly",
	}
}

func wayFailed(report *Report) bool {
	return slices.ContainsFunc(report.Failed(), func(c Check) bool {
		return slices.Contains([]string{CheckWay, CheckMove, CheckMoveWall, CheckRim, CheckOut, CheckSlide}, c.Code)
	})
}

// The tilt that layout tells is proved here; what it must not be is refuted: none,
// to the other side, less of it, about another line, over a line that is not level.
func TestTiltProved(t *testing.T) {
	input := hatched()
	a, _, faults := layout.Lay(input)
	k := slices.IndexFunc(a.LiftOut.Moves, func(m layout.Move) bool { return m.Turn != 0 })
	if len(faults) > 0 || k < 0 {
		t.Fatalf("was to be tilted out: %v %+v", faults, a.LiftOut)
	}
	if report := Prove(input, a); wayFailed(&report) {
		show(t, report.Failed())
	}
	for name, spoil := range map[string]func(m *layout.Move){
		"no tilt":           func(m *layout.Move) { m.Turn = 0 },
		"the other way":     func(m *layout.Move) { m.Along = m.Along.Scale(-1) },
		"40 degrees less":   func(m *layout.Move) { m.Turn -= 40 * unit.Degree },
		"about a far line":  func(m *layout.Move) { m.About.Z -= 0.4 },
		"not over a level":  func(m *layout.Move) { m.Along = geom.Vec3{X: m.Along.X, Z: 0.5}.Unit() },
		"not a number":      func(m *layout.Move) { m.Turn = unit.Angle(math.NaN()) },
		"about not a point": func(m *layout.Move) { m.About.X = math.Inf(1) },
		"a turn and a half": func(m *layout.Move) { m.Turn = 540 * unit.Degree },
	} {
		b := a
		b.LiftOut.Moves = slices.Clone(a.LiftOut.Moves)
		spoil(&b.LiftOut.Moves[k])
		if report := Prove(input, b); !wayFailed(&report) {
			t.Errorf("%s: passes", name)
		}
	}
}

// What stands on the arc of a corner half way between two poses is met, though both
// poses are clear of it.
func TestTiltMeetsOnTheWay(t *testing.T) {
	b := block(vec{-0.2, -0.1, -0.1}, vec{0.2, 0.1, 0.1})
	turn := tilt{n: vec{y: 1}, angle: 0.1}
	// The corner 0.2, 0.1 goes from its place by 0.1 rad; half way it is here.
	corner := vec{0.2, 0, 0.1}.about(turn.n, 0.05)
	post := block(corner.plus(vec{-5e-4, -0.01, -5e-4}), corner.plus(vec{5e-4, 0.01, 5e-4}))
	for _, at := range []float64{0, 0.1} {
		if end := turn.of(b, at); !(distance(&end, &post, 0.01) > 2e-3) {
			t.Fatalf("at %v it is met already", at)
		}
	}
	least := func(want float64, post *body) float64 {
		return turn.over(&b, 0, turn.angle, want, func(b *body, out float64) float64 { return distance(b, post, want+out) - out })
	}
	if d := least(1e-3, &post); d > 0 {
		t.Errorf("passes with %v", d)
	}
	// Half a millimetre outside the arc, and no more is asked: it passes.
	out := corner.times(1 + 1.2e-3/corner.length())
	away := block(out.plus(vec{-1e-4, -0.01, -1e-4}), out.plus(vec{1e-4, 0.01, 1e-4}))
	if d := least(5e-4, &away); d < 5e-4 || d > 1.2e-3 {
		t.Errorf("%v of room, just over 1 mm is there", d)
	}
}
