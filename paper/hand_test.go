package paper

import (
	"slices"
	"strings"
	"testing"

	"plashet/drawing"
	"plashet/engine/unit"
)

// atArmsLength is the least size of what is read with a saw or a can in the hand,
// mm: 12 points of 1/72 in (common practice, no source).
const atArmsLength = 12 * 25.4 / 72

// TestCutsReadable holds every length that is cut, and the mark of its piece, to be
// written on the cut card large enough for an arm's length.
func TestCutsReadable(t *testing.T) {
	n := 0
	for _, name := range []string{"hillside-cascade", "terrace-spout", "courtyard-rill"} {
		in := input(t, example(t, name), Letter)
		s := sheetsOf(t, in, "cut")[0]
		var list []drawing.Text
		for i := range s.Pages {
			list = append(list, texts(&s.Pages[i])...)
		}
		for i := range in.Result.Assembly.Pieces {
			p := &in.Result.Assembly.Pieces[i]
			if p.Made {
				continue
			}
			n++
			cut := in.Say.Value(unit.Of(p.Cut, unit.KindTape), in.Result.Units)
			if !slices.ContainsFunc(list, func(x drawing.Text) bool { return x.Text == cut && x.Bold && x.Size >= atArmsLength }) {
				t.Errorf("%s: the cut of %s, %s, is nowhere written in %.2f mm", name, p.Mark, cut, atArmsLength)
			}
		}
	}
	if n < 8 {
		t.Fatalf("only %d pieces", n)
	}
}

// TestStepsReadable holds what is done at each step of gluing up to be as large.
func TestStepsReadable(t *testing.T) {
	in := input(t, example(t, "hillside-cascade"), A4)
	s := sheetsOf(t, in, "glue")[0]
	n := 0
	for i := range s.Pages {
		for _, x := range texts(&s.Pages[i]) {
			if x.Size >= atArmsLength && x.Size < large {
				n++
			}
		}
	}
	if want := 2 * len(in.Result.Glue.Steps); n < want { // a head and a line each at least
		t.Errorf("%d lines in %.2f mm for %d steps", n, atArmsLength, len(in.Result.Glue.Steps))
	}
}

// TestLengthsUnbroken holds feet and inches of one length on one line.
func TestLengthsUnbroken(t *testing.T) {
	const s = `P1 2-11/16" · left 9' 0-15/16", keep it, 10' 0" too; the pond's 3 lips`
	n := 0
	for most := 20.0; most < 120; most++ {
		for _, l := range wrap(s, body, false, most) {
			n++
			if l[len(l)-1] == '\'' {
				t.Errorf("at %g mm a line ends in feet without its inches: %q", most, l)
			}
		}
	}
	if n < 200 {
		t.Fatalf("only %d lines", n)
	}
}

// TestCounters: what has a counter of the price shelf is fetched there, counter
// after counter in the order of the round; the rest as before.
func TestCounters(t *testing.T) {
	j := example(t, "hillside-cascade")
	for i := range j.Prices {
		switch p := &j.Prices[i]; p.Item {
		case "liner", "underlayment":
			p.Counter, p.Order = "Back yard", 2
		case "elbow 90, 2":
			p.Counter, p.Order = "Pipe desk", 1
		case "union, 2":
			p.Counter = "pipe  DESK"
		case "gravel":
			p.Counter = "Far quarry"
		}
	}
	in := input(t, j, Letter)
	text := written(one(t, in, "material"))
	at := -1
	for _, want := range []string{"pipe DESK\n", "union, 2", "elbow 90, 2", "Back yard\n", "liner, pond", "Far quarry\n", "gravel, pond", "Pipe and fittings\n", "male adapter, 2", "Stone\n", "boulders, pond"} {
		k := strings.Index(text[at+1:], want)
		if k < 0 {
			t.Fatalf("%q is not where it should be: %s", want, text)
		}
		at += 1 + k
	}
	if strings.Contains(text, "Liner\n") || strings.Count(text, "elbow 90, 2") != 1 {
		t.Error("a counter without anything, or an item twice:", text)
	}
}
