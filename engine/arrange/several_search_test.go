package arrange_test

import (
	"context"
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/trace"
)

// short is an input whose stock lacks fittings, each of which is looked at where
// nothing fits.
type short struct {
	arrange.Input
	lacks []arrange.Fitting
}

// shortOf takes all elbows out of an input but for one, and lets these be looked at.
func shortOf(i arrange.Input, one arrange.Fitting, lacks []arrange.Fitting) *short {
	i.Fittings = slices.DeleteFunc(slices.Clone(i.Fittings), func(f arrange.Fitting) bool { turn, _ := f.Part.Turn(); return turn != 0 })
	i.Fittings = append(i.Fittings, one)
	s := &short{i, lacks}
	for _, f := range lacks {
		s.Instead = append(s.Instead, arrange.Instead{
			What: trace.Message{Code: string(f.Part.Kind)}, Fittings: append(slices.Clone(i.Fittings), f),
		})
	}
	return s
}

// single is one of a fitting.
func single(f arrange.Fitting) arrange.Fitting {
	f.AtHand = 1
	return f
}

// elbow gives one of an input's fittings.
func elbow(i *arrange.Input, k layout.Kind) (arrange.Fitting, bool) {
	at := slices.IndexFunc(i.Fittings, func(f arrange.Fitting) bool { return f.Part.Kind == k })
	if at < 0 {
		return arrange.Fitting{}, false
	}
	return i.Fittings[at], true
}

// setOf gives what a change takes of what is lacking, counted from 0.
func setOf(c *arrange.Change) (out []int) {
	for _, n := range c.Numbers() {
		out = append(out, n-1)
	}
	return out
}

// with gives the input with some of what it lacks.
func (s *short) with(set []int) arrange.Input {
	i := s.Input
	i.Instead, i.Fittings = nil, slices.Clone(i.Fittings)
	for _, k := range set {
		i.Fittings = append(i.Fittings, s.lacks[k])
	}
	return i
}

// suffices tells that an input has as many elbows of each kind as a chain takes.
func suffices(i *arrange.Input, c *layout.Input) bool {
	for _, p := range c.Parts {
		if turn, _ := p.Turn(); turn == 0 {
			continue
		}
		have, take := 0, 0
		for _, f := range i.Fittings {
			switch {
			case f.Part.Kind != p.Kind:
			case f.AtHand < 0:
				have += len(c.Parts)
			default:
				have += f.AtHand
			}
		}
		for _, q := range c.Parts {
			if q.Kind == p.Kind {
				take++
			}
		}
		if take > have {
			return false
		}
	}
	return true
}

// holds holds a set that is told against layout and verifier: its layout is sound, and
// takes what is there with the set and would not do with one of it less.
func (s *short) holds(t *testing.T, name any, c *arrange.Change) {
	t.Helper()
	set := setOf(c)
	i := s.with(set)
	if _, ok := sound(c.Layout.Chain, i.Rules); !ok || !suffices(&i, &c.Layout.Chain) {
		t.Errorf("%v: with %v: not laid, not proved or not to be had: %s", name, set, described(&c.Layout.Chain))
	}
	for k := range set {
		if less := s.with(slices.Delete(slices.Clone(set), k, k+1)); suffices(&less, &c.Layout.Chain) {
			t.Errorf("%v: %d of %v is not in %s", name, k, set, described(&c.Layout.Chain))
		}
	}
}

// Where a known assembly stands in a vault and each of its elbows is lacking, something
// is told with which a layout fits: what does alone, or else two together, or else more.
func TestSeveralKnown(t *testing.T) {
	t.Parallel()
	book := newBook(t)
	alone, together, open := 0, map[int]int{}, 0
	for k, d := range standing(t) {
		if !d.whole() || d.elbows > 3 || k%ifFar(5, 1) != 0 {
			continue
		}
		v, ok := d.vault(t, book)
		if !ok || !within18(&v.laid) {
			continue
		}
		v.input.Rules.Elbows = d.elbows
		_, spare := stock(t, book, v.input.Pipes[0].Size, 30, []string{"street elbow 45"})
		var lacks []arrange.Fitting
		for _, p := range v.chain.Parts {
			if turn, _ := p.Turn(); turn != 0 {
				f, _ := elbow(&v.input, p.Kind)
				lacks = append(lacks, single(f))
			}
		}
		s := shortOf(v.input, single(spare[0]), lacks)
		bare := s.with(nil)
		bare.Rules.Brief = true
		base := arrange.Search(context.Background(), bare, nil)
		if undecided(&base) {
			open++
		}
		if len(base.Layouts) > 0 || undecided(&base) {
			continue
		}
		list := arrange.Lacking(context.Background(), s.Input)
		if len(list) == 0 {
			t.Errorf("%s: nothing is told, though %s is known", d, described(&v.chain))
		}
		for k := range list {
			s.holds(t, d, &list[k])
			if n := 1 + len(list[k].Besides); n > 1 {
				together[n]++
			} else {
				alone++
			}
		}
	}
	t.Logf("%d that do alone, %v together, %d undecided", alone, together, open)
	if alone == 0 || together[2] == 0 || together[3] == 0 {
		t.Error("too little was told: nothing is shown")
	}
}

// Sets against the lattice, in vaults with one elbow of 45 degrees and one of each other
// that is lacking: with any one of a set that is told left out, nothing is laid and
// proved there; and with what is not told, no two have anything there.
func TestSeveralLattice(t *testing.T) {
	t.Parallel()
	book := newBook(t)
	told, missed, laid := 0, 0, 0
	for seed := uint64(1); seed <= uint64(ifFar(4, 200)); seed++ {
		whole := smallVault(t, book, seed)
		_, f := stock(t, book, "1-1/2", 35, []string{"elbow 45", "elbow 90", "street elbow 90"})
		s := shortOf(whole, single(f[0]), []arrange.Fitting{single(f[1]), single(f[1]), single(f[0]), single(f[2])})
		list := arrange.Lacking(context.Background(), s.Input)
		fits := func(set []int) bool {
			in := s.with(set)
			found := false
			laid += overLattice(t, &in, func(c layout.Input, a layout.Assembly) {
				if !found && within18(&a) && suffices(&in, &c) {
					_, found = sound(c, in.Rules)
				}
			})
			return found
		}
		bare := s.with(nil)
		bare.Rules.Brief = true
		if base := arrange.Search(context.Background(), bare, nil); len(base.Layouts) > 0 {
			continue // nothing is lacking
		}
		for k := range list {
			s.holds(t, seed, &list[k])
			if set := setOf(&list[k]); len(set) > 1 {
				told++
				for n := range set {
					if less := slices.Delete(slices.Clone(set), n, n+1); list[k].Sure && fits(less) {
						t.Errorf("seed %d: %v is told, but the lattice has a layout with %v", seed, set, less)
					}
				}
			}
		}
		alone := slices.ContainsFunc(list, func(c arrange.Change) bool { return len(c.Besides) == 0 })
		for a := range s.lacks {
			for b := a + 1; b < len(s.lacks) && !alone; b++ {
				if set := []int{a, b}; !slices.ContainsFunc(list, func(c arrange.Change) bool { return slices.Equal(setOf(&c), set) }) {
					if missed++; fits(set) {
						t.Errorf("seed %d: %v is not told, but the lattice has a layout with them", seed, set)
					}
				}
			}
		}
	}
	t.Logf("%d sets told, %d pairs not told, %d laid", told, missed, laid)
	if told == 0 || missed == 0 || laid == 0 {
		t.Error("too little was told: nothing is shown")
	}
}
