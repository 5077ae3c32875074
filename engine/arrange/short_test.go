package arrange_test

import (
	"context"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// Where nothing fits, each change that is told makes an assembly fit, and a
// hundredth of an inch less does not: both searched again here.
func TestShort(t *testing.T) {
	book := newBook(t)
	for _, v := range family(t) {
		if v.Name != "narrow" {
			continue
		}
		in := v.input(t, book)
		in.Rules.Cores = 2
		out := arrange.Search(context.Background(), in, nil)
		if len(out.Layouts) > 0 || out.Stage != arrange.StageWalls || len(out.Short) == 0 {
			t.Fatalf("%d layouts, stage %q, %d changes", len(out.Layouts), out.Stage, len(out.Short))
		}
		for _, c := range out.Short {
			if !c.Sure {
				t.Errorf("%s is not sure", c.What.Code)
			}
			for _, less := range []unit.Length{0, 0.01 * unit.Inch} {
				again := in
				again.Rules.Brief = true
				switch by := c.By - less; c.What.Code {
				case arrange.ChangeWidth: // the hole is in the right wall, the far wall gives way
					again.Vault.Width += by
				case arrange.ChangeLength: // all but the hole stands where it did from the left: nothing else is in this vault
					again.Vault.Length += by
				default:
					t.Fatalf("%s: this test does not know it", c.What.Code)
				}
				if got := len(arrange.Search(context.Background(), again, nil).Layouts); (got > 0) != (less == 0) {
					t.Errorf("%s by %.3f in: %d layouts", c.What.Code, float64((c.By-less)/unit.Inch), got)
				}
			}
			if a, _, faults := layout.Lay(c.Layout.Chain); !a.Laid || len(faults) > 0 {
				t.Errorf("%s: its layout is not laid", c.What.Code)
			}
		}
	}
}

// The outcome is the same on one core and on three, and when it is asked for
// again.
func TestSame(t *testing.T) {
	book := newBook(t)
	for _, v := range family(t) {
		if v.Name != "rack" && v.Name != "round" {
			continue
		}
		in := v.input(t, book)
		one := arrange.Search(context.Background(), in, nil)
		in.Rules.Cores = 3
		three := arrange.Search(context.Background(), in, nil)
		if len(one.Layouts) == 0 || len(one.Layouts) != len(three.Layouts) {
			t.Fatalf("%s: %d layouts on one core, %d on three", v.Name, len(one.Layouts), len(three.Layouts))
		}
		for i := range one.Layouts {
			a, b := &one.Layouts[i], &three.Layouts[i]
			if a.Worth != b.Worth || len(a.Chain.Parts) != len(b.Chain.Parts) || a.Chain.Pose != b.Chain.Pose {
				t.Errorf("%s: layout %d differs: %+v, %+v", v.Name, i+1, a.Worth, b.Worth)
			}
		}
		if one.Proof != three.Proof || one.Tally.Nodes != three.Tally.Nodes {
			t.Errorf("%s: %+v on one core, %+v on three", v.Name, one.Tally, three.Tally)
		}
	}
}

// A search that is stopped says so and gives what it has.
func TestStopped(t *testing.T) {
	book := newBook(t)
	for _, v := range family(t) {
		if v.Name != "nasty" {
			continue
		}
		ctx, stop := context.WithCancel(context.Background())
		asked := 0
		out := arrange.Search(ctx, v.input(t, book), func(p arrange.Progress) {
			if asked++; p.Elbows >= 2 {
				stop()
			}
		})
		stop()
		if out.Proof.Claim != arrange.Stopped || asked == 0 {
			t.Fatalf("claim %d after %d tellings", out.Proof.Claim, asked)
		}
	}
}
