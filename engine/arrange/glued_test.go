package arrange_test

import (
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/unit"
	"plashet/engine/verify"
)

// gluedOf takes a layout's first and last parts as glued already.
func gluedOf(i arrange.Input, l *arrange.Layout, port, wall int) arrange.Input {
	parts := slices.Clone(l.Chain.Parts)
	for k := range parts {
		if parts[k].Next.Closing { // it is as long as it came out
			parts[k].Next = layout.Join{By: layout.Faces, Distance: gap(l, k)}
		}
	}
	g := arrange.Glued{FromPort: parts[:port:port], Standing: l.Standing, Turn: l.Chain.Pose.Turn, Start: l.Chain.Start}
	if wall > 0 {
		g.FromWall = parts[len(parts)-wall:]
		g.Into = l.Laid.Places[len(parts)-wall].InDir
	}
	i.Glued = g
	i.Rules.Elbows = 2
	i.Rules.Brief = true
	return i
}

// gap gives what lies between the hub faces after a part, of a laid chain.
func gap(l *arrange.Layout, after int) unit.Length {
	for _, p := range l.Laid.Pieces {
		if p.After == after {
			return p.FaceGap
		}
	}
	return 0
}

// Rows of a known assembly, glued: the search keeps each part with its mark and
// its distance, and has an assembly with no more elbows than the known one.
func TestGlued(t *testing.T) {
	book := newBook(t)
	held := 0
	for _, v := range family(t) {
		if v.Name != "easy" && v.Name != "rack" && v.Name != "lying" && v.Name != "taper" {
			continue
		}
		in := v.input(t, book)
		in.Rules.Brief = true
		whole := arrange.Search(t.Context(), in, nil)
		if len(whole.Layouts) == 0 {
			t.Fatalf("%s: nothing found", v.Name)
		}
		known := &whole.Layouts[0]
		n := len(known.Chain.Parts)
		for port := 0; port <= n-2; port++ {
			for wall := 0; wall <= min(2, n-1-port); wall++ {
				if port+wall == 0 {
					continue
				}
				held++
				out := arrange.Search(t.Context(), gluedOf(in, known, port, wall), nil)
				if len(out.Layouts) == 0 {
					if known.Worth.Elbows <= 2 || elbowsLeft(known, port, wall) <= 2 {
						t.Errorf("%s, %d and %d glued: nothing found, stage %s, faults %v", v.Name, port, wall, out.Stage, out.Faults)
					}
					continue
				}
				for k := range out.Layouts {
					keeps(t, known, &out.Layouts[k], port, wall)
				}
				if least := fewest(out.Layouts); least > known.Worth.Elbows {
					t.Errorf("%s, %d and %d glued: %d elbows, %d are known", v.Name, port, wall, least, known.Worth.Elbows)
				}
			}
		}
	}
	if held == 0 {
		t.Fatal("nothing was glued")
	}
}

func elbowsLeft(l *arrange.Layout, port, wall int) (n int) {
	for _, p := range l.Chain.Parts[port : len(l.Chain.Parts)-wall] {
		if turn, _ := p.Turn(); turn != 0 {
			n++
		}
	}
	return n
}

// keeps holds a layout against what was glued.
func keeps(t *testing.T, known, l *arrange.Layout, port, wall int) {
	t.Helper()
	const same = 1e-6
	was, is := len(known.Chain.Parts), len(l.Chain.Parts)
	one := func(k, m int, joined bool) {
		p, q := &known.Chain.Parts[k], &l.Chain.Parts[m]
		if p.Kind != q.Kind || p.Mark != q.Mark {
			t.Errorf("%s %s is glued, not %s %s", p.Mark, p.Kind, q.Mark, q.Kind)
		}
		if joined && float64(gap(known, k)-gap(l, m)) > same || joined && float64(gap(l, m)-gap(known, k)) > same {
			t.Errorf("the gap after %s is %.6f in, %.6f in was glued", p.Mark, float64(gap(l, m))/in, float64(gap(known, k))/in)
		}
	}
	for k := range port {
		one(k, k, k < port-1)
	}
	for k := range wall {
		one(was-1-k, is-1-k, k > 0)
	}
	a, _, faults := layout.Lay(l.Chain)
	report := verify.Prove(l.Chain, a)
	if wrong := refused(&report, arrange.Rules{Union: true, Out: true, Check: true}); len(faults)+len(wrong) > 0 {
		t.Errorf("not laid or not proved: %v %v", faults, wrong)
	}
	marks := map[string]bool{}
	for _, p := range l.Chain.Parts {
		if marks[p.Mark] {
			t.Errorf("mark %s comes twice", p.Mark)
		}
		marks[p.Mark] = true
	}
}

// What is glued at the wall with an elbow in it cannot be used while nobody
// tells how it runs.
func TestGluedUntold(t *testing.T) {
	in := family(t)[0].input(t, newBook(t))
	var elbow layout.Part
	for _, f := range in.Fittings {
		if f.Part.Kind == layout.Elbow90 {
			elbow = f.Part
		}
	}
	end := in.Fittings[len(in.Fittings)-1].Part
	for _, f := range in.Fittings {
		if f.Part.Kind == layout.Bulkhead {
			end = f.Part
		}
	}
	in.Glued.FromWall = []layout.Laid{{Part: elbow}, {Part: end}}
	out := arrange.Search(t.Context(), in, nil)
	if len(out.Faults) != 1 || out.Faults[0].Code != arrange.FaultGluedInto {
		t.Errorf("faults %v", out.Faults)
	}
}
