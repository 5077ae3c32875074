package drawing

import (
	"slices"
	"testing"

	"plashet/job"
)

// The arrow cast on a check valve that is opened at its own nut is drawn where it
// stands whole, not between its halves once the pump is lifted.
func TestWayOutEnded(t *testing.T) {
	j := example(t, "hillside-cascade")
	in, _ := draw(t, j)
	a := in.Result.Assembly
	valve := slices.IndexFunc(j.Assembly.Parts, func(p job.Laid) bool { return isCheck(p.Fitting) })
	if valve < 0 {
		t.Fatal("no check valve")
	}
	arrows := func() (n int) {
		s := sheet(t, Sheets(in), "way-out")
		s.Each(func(it Item) {
			if l, ok := it.(Line); ok && l.Pen == (Pen{Ink: Black, Wide: 0.6}) {
				n++
			}
		})
		return n
	}
	pictures := len(a.LiftOut.Moves) + 1
	if n := arrows(); n != pictures {
		t.Fatalf("%d arrows in %d pictures", n, pictures)
	}
	a.LiftOut.Union = a.Places[valve].Mark // as if it were the valve that is opened
	if n := arrows(); n != 1 {
		t.Errorf("%d arrows with the valve opened, not one in the first picture", n)
	}
}
