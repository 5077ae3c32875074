package verify

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// flexible is a hose of invented sizes, as thick as 2 in pipe.
func flexible(turn unit.Angle, inLeg, outLeg unit.Length) layout.Part {
	return layout.Part{
		Kind: layout.Hose, Mark: "H1", Size: "2",
		In: layout.HoseEnd(inLeg, 1.5*in, by(2.375*in)), Out: layout.HoseEnd(outLeg, 1.5*in, by(2.375*in)),
		Curve: layout.Curve{Turn: turn, Radius: 7 * in, Least: by(7 * in), Straight: 1 * in, Longest: 30 * in},
	}
}

// hosed are assemblies with a hose: from a pump that looks to the right straight
// through the union, round by 90 or 45 degrees and out through another wall; and
// one with a hose and no bend in it.
func hosed() []layout.Input {
	base := func(parts ...layout.Laid) layout.Input {
		i := vault(parts...)
		i.Pump.Port, i.Pump.Points = at(15.5, 3.75, 5), geom.Vec3{X: 1}
		i.Vault.Length, i.Vault.Width, i.Vault.Depth = 50*in, 40*in, 26*in
		i.Pose.At = at(2, 5, 0)
		return i
	}
	// The port lies 17.5 in from the left wall and 8.75 in from the front one. From
	// there to the hose's centre: 0.1 + 1.5 + 1.5 (adapter and union touch), 0.9,
	// and the hose's leg from the union's stop.
	quarter := base(
		touching(adapter()), touching(inline(layout.Union, "U1", 0.9*in, 4.125*in)),
		rolled(flexible(90*unit.Degree, 10*in, 11*in)),
		layout.Laid{Part: inline(layout.Coupling, "C1", 0.25*in, 3*in), Next: layout.Join{Closing: true}},
		touching(bulkhead(0)),
	)
	quarter.Vault.Outlet = layout.Outlet{Wall: layout.Back, Along: (17.5 + 0.1 + 3 + 0.9 + 10) * in, Height: 5 * in}
	half := base(
		touching(adapter()), touching(inline(layout.Union, "U1", 0.9*in, 4.125*in)),
		rolled(flexible(45*unit.Degree, 6*in, 6*in)),
		layout.Laid{Part: elbow(layout.Elbow45, "E1", 1*in), Roll: 270 * unit.Degree, Next: layout.Join{Closing: true}},
		touching(bulkhead(0)),
	)
	half.Vault.Outlet = layout.Outlet{Wall: layout.Back, Along: (17.5 + 0.1 + 3 + 0.9 + 6 + 7*math.Sqrt2/2) * in, Height: 5 * in}
	straight := base(
		touching(adapter()), touching(inline(layout.Union, "U1", 0.9*in, 4.125*in)),
		touching(flexible(0, 5*in, 5*in)),
		layout.Laid{Part: inline(layout.Coupling, "C1", 0.25*in, 3*in), Next: layout.Join{Closing: true}},
		touching(bulkhead(0)),
	)
	straight.Vault.Outlet = layout.Outlet{Wall: layout.Right, Along: 8.75 * in, Height: 5 * in}
	return []layout.Input{quarter, half, straight}
}

// Each passes, and what layout tells of it is no more than its sheet and what is
// to be measured.
func TestHosed(t *testing.T) {
	for k, i := range hosed() {
		a, fs, faults := layout.Lay(i)
		for _, f := range faults {
			t.Errorf("%d: fault %s %v", k, f.Code, f.Args)
		}
		report := Prove(i, a)
		show(t, report.Failed())
		if len(report.Failed()) > 0 {
			t.Errorf("%d does not pass: %v", k, fs)
		}
		asked := 0
		for _, c := range report.Checks {
			switch c.Code {
			case CheckHoseRadius, CheckHoseStraight, CheckHoseLong, CheckHoseWall, CheckHoseCut, CheckHoseLine, CheckHoseHeld:
				asked++
			}
		}
		if asked < 8 {
			t.Errorf("%d: only %d checks of its hose", k, asked)
		}
	}
}

// aHose picks a hose of an assembly, and what is told of it.
func aHose(b *built) (*layout.Laid, *layout.HoseCut, int) {
	k := b.find(func(l *layout.Laid) bool { return l.Kind == layout.Hose })
	if k < 0 || len(b.a.Hoses) == 0 {
		return nil, nil, -1
	}
	return &b.in.Parts[k], &b.a.Hoses[0], k
}

// hoseFaults are faults in an assembly with a hose.
var hoseFaults = []mutation{
	{"a stiffer hose", func(r *rand.Rand, b *built) []string {
		p, h, _ := aHose(b)
		if p == nil || p.Curve.Turn == 0 {
			return nil
		}
		p.Curve.Least.Length = p.Curve.Radius + unit.Length(1e-5+0.05*r.Float64())
		h.Curve = p.Curve
		return []string{CheckHoseRadius}
	}},
	{"a hose bent tighter in its data alone", func(r *rand.Rand, b *built) []string {
		p, h, _ := aHose(b)
		if p == nil || p.Curve.Turn == 0 {
			return nil
		}
		p.Curve.Radius -= unit.Length(0.001 + 0.05*r.Float64())
		h.Curve = p.Curve
		return []string{CheckHoseRadius, CheckHoseCut, CheckEnvelope}
	}},
	{"a hose cut otherwise", func(r *rand.Rand, b *built) []string {
		_, h, _ := aHose(b)
		if h == nil {
			return nil
		}
		h.Cut += unit.Length(amount(r, 0.0021, 0.05))
		return []string{CheckHoseCut}
	}},
	{"a hose as long as its legs", func(_ *rand.Rand, b *built) []string {
		p, h, _ := aHose(b)
		if p == nil || p.Curve.Turn == 0 {
			return nil
		}
		h.Exact = p.In.TakeOff.Length + p.Out.TakeOff.Length
		return []string{CheckHoseCut}
	}},
	{"less hose at hand", func(r *rand.Rand, b *built) []string {
		p, h, _ := aHose(b)
		if p == nil {
			return nil
		}
		p.Curve.Longest = h.Exact - unit.Length(1e-5+0.1*r.Float64())
		h.Curve = p.Curve
		return []string{CheckHoseLong}
	}},
	{"more to stay straight", func(r *rand.Rand, b *built) []string {
		p, h, _ := aHose(b)
		if p == nil {
			return nil
		}
		p.Curve.Straight = min(h.Straights[0], h.Straights[1]) + unit.Length(1e-5+0.05*r.Float64())
		h.Curve = p.Curve
		return []string{CheckHoseStraight}
	}},
	{"a socket forgotten in a hose's straight end", func(_ *rand.Rand, b *built) []string {
		_, h, _ := aHose(b)
		if h == nil {
			return nil
		}
		h.Straights[0] += h.Sockets[0]
		return []string{CheckHoseCut}
	}},
	{"a hose's line drawn elsewhere", func(r *rand.Rand, b *built) []string {
		_, h, _ := aHose(b)
		if h == nil {
			return nil
		}
		k := r.IntN(len(h.Line))
		h.Line[k] = h.Line[k].Add(geomOf(anyDirection(r).times(amount(r, 2e-3, 0.05))))
		return []string{CheckHoseLine}
	}},
	{"a hose's bend drawn as a corner", func(_ *rand.Rand, b *built) []string {
		p, h, _ := aHose(b)
		if p == nil || p.Curve.Turn == 0 {
			return nil
		}
		h.Line = append(h.Line[:2:2], h.Line[len(h.Line)-2:]...)
		return []string{CheckHoseLine}
	}},
	{"a hose's bend left open", func(r *rand.Rand, b *built) []string {
		p, _, k := aHose(b)
		if p == nil || p.Curve.Turn == 0 {
			return nil
		}
		s := b.a.Places[k].Solids
		m := 1 + r.IntN(len(s)-2)
		b.a.Places[k].Solids = append(s[:m:m], s[m+1:]...)
		return []string{CheckHoseHeld}
	}},
	{"a hose's bend drawn along its chords", func(_ *rand.Rand, b *built) []string {
		p, _, k := aHose(b)
		if p == nil || p.Curve.Turn == 0 {
			return nil
		}
		for m := range b.a.Places[k].Solids {
			b.a.Places[k].Solids[m].Radius = p.In.Hub.Length / 2
		}
		return []string{CheckHoseHeld}
	}},
	{"a hose forgotten", func(_ *rand.Rand, b *built) []string {
		if len(b.a.Hoses) == 0 {
			return nil
		}
		b.a.Hoses = nil
		return []string{CheckHoseCut}
	}},
}

// The faults of a hose, and of all that any chain has, put into assemblies with a
// hose: every one is caught.
func TestHoseMutations(t *testing.T) {
	const seed = 89
	r := rand.New(rand.NewPCG(seed, 3))
	var bases []built
	for _, i := range hosed() {
		a, _, _ := layout.Lay(i)
		bases = append(bases, built{i, a})
	}
	made, missed := map[string]int{}, 0
	for n := 0; n < 3000; {
		m := hoseFaults[r.IntN(len(hoseFaults))]
		if r.IntN(2) == 0 {
			m = mutations[r.IntN(len(mutations))]
		}
		b := bases[r.IntN(len(bases))].copied()
		codes := m.make(r, &b)
		if len(codes) == 0 {
			continue
		}
		n++
		made[m.name]++
		report := Prove(b.in, b.a)
		failed := report.Failed()
		if !slices.ContainsFunc(failed, func(c Check) bool { return slices.Contains(codes, c.Code) }) {
			if missed++; missed < 10 {
				t.Errorf("seed %d: %q passes %v", seed, m.name, codes)
				show(t, failed)
			}
		}
	}
	t.Logf("%d kinds of fault, %d missed: %v", len(made), missed, made)
	for _, m := range hoseFaults {
		if made[m.name] < 20 {
			t.Errorf("%q was made only %d times", m.name, made[m.name])
		}
	}
}
