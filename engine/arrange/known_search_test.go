package arrange_test

import (
	"fmt"
	"strings"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/layout"
)

// described writes a chain down for a message.
func described(c *layout.Input) string {
	var b strings.Builder
	fmt.Fprintf(&b, "pump at %.3f %.3f in, turned %.0f", c.Pose.At.X/in, c.Pose.At.Y/in, float64(c.Pose.Turn)*57.29577951)
	for _, p := range c.Parts {
		fmt.Fprintf(&b, "; %s roll %.0f", p.Kind, float64(p.Roll)*57.29577951)
		switch {
		case p.Next.Closing:
			b.WriteString(" then closing")
		case p.Next.Distance != 0:
			fmt.Fprintf(&b, " then %.3f in", float64(p.Next.Distance)/in)
		}
	}
	return b.String()
}

// The standing set: where a vault was built round a known assembly, the search
// has one that is as good; where it was made impossible, the search has none and
// says at which stage it fails.
func TestStandingSet(t *testing.T) {
	t.Parallel()
	book := newBook(t)
	all := standing(t)
	every := ifFar(14, 1)
	found, none, capped, outside, three := 0, 0, 0, 0, 0
	for k, d := range all {
		if k%every != 0 {
			continue
		}
		v, ok := d.vault(t, book)
		if !ok {
			continue // TestDrawn tells
		}
		v.input.Rules.Best = 1000 // all of the front: the known one may be the sixth
		out := searched(t, v.input)
		if undecided(&out) {
			capped++
			t.Logf("%s: claim %d, %d orders at a limit", d, out.Proof.Claim, out.Proof.Caps)
		}
		if !d.whole() {
			none++
			if len(out.Layouts) > 0 {
				t.Errorf("%s: %d layouts in a vault that has none", d, len(out.Layouts))
			}
			if out.Stage != spoils[d.spoilt] && !undecided(&out) {
				t.Errorf("%s: stage %q, want %q", d, out.Stage, spoils[d.spoilt])
			}
			continue
		}
		if least := fewest(out.Layouts); least >= 3 {
			three++
		}
		if !within18(&v.laid) {
			outside++
			continue
		}
		own := price(&v.input, &v.chain, &v.laid)
		if found++; !covered(out.Layouts, own) && !undecided(&out) {
			t.Errorf("%s: %+v is known, nothing as good in the search's %d (claim %d)\n%s", d, own, len(out.Layouts), out.Proof.Claim, described(&v.chain))
		}
	}
	t.Logf("%d known, %d impossible, %d known ones run outside the search's directions, %d undecided, %d need three elbows", found, none, outside, capped, three)
}

// fewest gives the least number of elbows of a front; 0 for none.
func fewest(front []arrange.Layout) (n int) {
	for k := range front {
		if e := front[k].Worth.Elbows; k == 0 || e < n {
			n = e
		}
	}
	return n
}
