package paper

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"plashet/drawing"
	"plashet/takeoff"
)

// largest is how many pieces and lines of material the sheets are tried with.
const largest = 400

// grown is an example's answer with its pieces, stubs, rolls and materials over and
// over, each under a mark of its own: what the sheets are asked for, without the
// engine's time. Wide names, right-to-left letters and emoji are among them.
func grown(t testing.TB, p Paper) Input {
	t.Helper()
	in := input(t, example(t, "hillside-cascade"), p)
	r := *in.Result
	a := *r.Assembly
	old, stubs, rolls, items := a.Pieces, a.Stubs, a.Rolls, r.Materials
	a.Pieces, a.Stubs, a.Rolls, r.Materials = nil, nil, nil, nil
	for i := range largest {
		piece := old[i%len(old)]
		piece.Mark, piece.Closing = "Q"+strconv.Itoa(i+1), false
		a.Pieces = append(a.Pieces, piece)
		stub := stubs[i%len(stubs)]
		stub.Piece = piece.Mark
		a.Stubs = append(a.Stubs, stub)
		if i%4 == 0 {
			roll := rolls[i%len(rolls)]
			roll.Mark, roll.Piece = "L"+strconv.Itoa(i+1), piece.Mark
			a.Rolls = append(a.Rolls, roll)
		}
		it := items[i%len(items)]
		it.Code, it.Size = takeoff.CodeFitting, ""
		it.Name = fmt.Sprintf("item%03d %s", i, []string{"plain", "with a long name that asks for two lines or three of its column", "סגור", "😀🐟", strings.Repeat("W", 60)}[i%5])
		r.Materials = append(r.Materials, it)
	}
	r.Assembly, r.Glue = &a, nil
	in.Result = &r
	return in
}

// TestLarge: with 400 pieces and 400 lines of material nothing is lost, nothing
// stands on another, every page of a table has its heads and all but the last are
// full; the processor time is told.
func TestLarge(t *testing.T) {
	for _, p := range []Paper{Letter, A4} {
		in := grown(t, p)
		begun := processor(t)
		all := sheetsOf(t, in, "assembly", "cut", "rolls", "material")
		t.Logf("%d pieces and %d lines: %.0f ms of processor", largest, largest, processor(t)-begun)
		for _, s := range all {
			holds(t, "large", in, s)
			text := "\n" + written(s)
			var want []string
			switch s.Name {
			case "cut", "assembly":
				for i := range in.Result.Assembly.Pieces {
					want = append(want, "\n"+in.Result.Assembly.Pieces[i].Mark+"\n")
				}
			case "rolls":
				for i := range in.Result.Assembly.Rolls {
					want = append(want, in.Result.Assembly.Rolls[i].Mark)
				}
			case "material":
				for i := range in.Result.Materials {
					want = append(want, fmt.Sprintf("item%03d", i))
				}
			}
			from := 0 // and in their order
			for _, w := range want {
				k := strings.Index(text[from:], w)
				if k < 0 {
					t.Errorf("%s: %q is lost, or out of order", s.Name, w)
					break
				}
				from += k
			}
			if len(s.Pages) < 8 {
				t.Errorf("%s: only %d pages", s.Name, len(s.Pages))
			}
			for i := range s.Pages[:len(s.Pages)-1] {
				low := 0.0
				for _, x := range texts(&s.Pages[i]) {
					if x.At.Y < s.Pages[i].Height-bottom {
						low = max(low, x.At.Y)
					}
				}
				if low < s.Pages[i].Height*0.55 {
					t.Errorf("%s page %d of %d ends at %.0f mm", s.Name, i+1, len(s.Pages), low)
				}
				if head := in.Say.Word("paper.item"); s.Name == "material" && i > 1 && i < len(s.Pages)-3 && !slices.ContainsFunc(texts(&s.Pages[i]), func(x drawing.Text) bool { return x.Text == head }) {
					t.Errorf("page %d of the material has no heads", i+1)
				}
			}
		}
	}
}
