package verify

import (
	"math/rand/v2"
	"slices"
	"testing"

	"plashet/engine/geom"
	"plashet/engine/layout"
)

// built is an assembly that passes every check.
type built struct {
	in layout.Input
	a  layout.Assembly
}

// copied makes what mutations change anew.
func (b built) copied() built {
	b.in.Parts = slices.Clone(b.in.Parts)
	for i := range b.in.Parts {
		b.in.Parts[i].Splits = slices.Clone(b.in.Parts[i].Splits)
	}
	b.in.Vault.Obstacles = slices.Clone(b.in.Vault.Obstacles)
	b.in.Pump.Blocks, b.in.Pump.Cylinders = slices.Clone(b.in.Pump.Blocks), slices.Clone(b.in.Pump.Cylinders)
	b.a.Body, b.a.Rounds = slices.Clone(b.a.Body), slices.Clone(b.a.Rounds)
	b.a.Places = slices.Clone(b.a.Places)
	for i := range b.a.Places {
		b.a.Places[i].Solids = slices.Clone(b.a.Places[i].Solids)
	}
	b.a.Pieces, b.a.Rolls = slices.Clone(b.a.Pieces), slices.Clone(b.a.Rolls)
	b.a.LiftOut.Moves = slices.Clone(b.a.LiftOut.Moves)
	b.a.Hoses = slices.Clone(b.a.Hoses)
	for i := range b.a.Hoses {
		b.a.Hoses[i].Line = slices.Clone(b.a.Hoses[i].Line)
	}
	b.a.Stubs, b.a.Room.Shorter = slices.Clone(b.a.Stubs), slices.Clone(b.a.Room.Shorter)
	b.a.Assumptions = slices.Clone(b.a.Assumptions)
	if b.a.Tail != nil {
		t := *b.a.Tail
		b.a.Tail = &t
	}
	return b
}

func (b *built) shiftPart(i int, v geom.Vec3) {
	p := &b.a.Places[i]
	for _, q := range []*geom.Vec3{&p.Centre, &p.Inlet, &p.Outlet, &p.InFace, &p.OutFace} {
		*q = q.Add(v)
	}
	for k := range p.Solids {
		p.Solids[k].From, p.Solids[k].To = p.Solids[k].From.Add(v), p.Solids[k].To.Add(v)
	}
}

func (b *built) find(test func(*layout.Laid) bool) int {
	return slices.IndexFunc(b.in.Parts, func(l layout.Laid) bool { return test(&l) })
}

// opensTwice tells that the part that opens has two nuts: by the other one the
// pump may come out with fewer moves.
func (b *built) opensTwice() bool {
	return b.find(func(l *layout.Laid) bool { return l.Mark == b.a.LiftOut.Union && len(l.Splits) > 1 }) >= 0
}

// many tells that the way out is none of a slide off the lip, a shift and a lift.
func (b *built) many() bool {
	moves := b.a.LiftOut.Moves
	return slices.ContainsFunc(moves[:len(moves)-1], func(m layout.Move) bool { return m.Turn != 0 || m.Along.Z > 0.5 })
}

func (b *built) verifier() *verifier {
	v := &verifier{in: &b.in, a: &b.a}
	v.resolve()
	v.placePump()
	v.placeHole()
	v.join()
	v.walk()
	v.solids()
	return v
}

func geomOf(v vec) geom.Vec3 { return geom.Vec3{X: v.x, Y: v.y, Z: v.z} }

// either sign, from least to most.
func amount(r *rand.Rand, least, most float64) float64 {
	return pick(r, -1.0, 1) * (least + (most-least)*r.Float64())
}

// mutation makes one fault; it gives the codes of which one must then fail, none
// where it does not apply.
type mutation struct {
	name string
	make func(r *rand.Rand, b *built) []string
}

// mutations are all of them.
var mutations = slices.Concat(chainMutations, vaultMutations, toldMutations)

// buildable draws assemblies that pass every check and lift out.
func buildable(t *testing.T, r *rand.Rand, n int) []built {
	t.Helper()
	out := []built{}
	for _, i := range []layout.Input{lifts(), sideways(), round30(), bushed()} {
		a, _, _ := layout.Lay(i)
		out = append(out, built{i, a})
	}
	for len(out) < n {
		i, ok := anyChain(r)
		if !ok {
			continue
		}
		a, _, faults := layout.Lay(i)
		if !a.Laid || len(faults) > 0 {
			continue
		}
		if report := Prove(i, a); len(report.Failed()) == 0 {
			out = append(out, built{i, a})
		}
	}
	return out
}

// Ten thousand faults, each by more than what is allowed for rounding: every
// one is caught by the check that is there for it.
func TestMutations(t *testing.T) {
	const seed = 88
	r := rand.New(rand.NewPCG(seed, 2))
	wanted := 10000
	if testing.Short() {
		wanted = 1000
	}
	bases, mutations := buildable(t, r, 60), slices.Concat(mutations, aside)
	for i, b := range bases {
		if report := Prove(b.in, b.a); len(report.Failed()) > 0 {
			t.Errorf("base %d does not pass", i)
			show(t, report.Failed())
		}
	}
	made := map[string]int{}
	missed := 0
	for n := 0; n < wanted; {
		m := mutations[r.IntN(len(mutations))]
		k := r.IntN(len(bases))
		b := bases[k].copied()
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
				t.Errorf("seed %d: %q of base %d passes %v", seed, m.name, k, codes)
				show(t, failed)
			}
		}
	}
	t.Logf("%d mutations of %d assemblies, %d missed: %v", wanted, len(bases), missed, made)
	for _, m := range mutations {
		if made[m.name] < wanted/1000 {
			t.Errorf("%q was made only %d times", m.name, made[m.name])
		}
	}
}
