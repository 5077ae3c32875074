package arrange_test

import (
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/unit"
)

// limit lets a search take pipe from so many lengths alone.
func limit(i arrange.Input, lengths ...unit.Length) arrange.Input {
	pipes := append([]arrange.Pipe(nil), i.Pipes...)
	for k := range pipes {
		pipes[k].AtHand = 0
		for _, l := range lengths {
			pipes[k].AtHand = max(pipes[k].AtHand, l)
		}
		pipes[k].Stock = &arrange.Stock{Lengths: lengths, Kerf: unit.Inch / 16, Grid: unit.Inch / 64}
	}
	i.Pipes = pipes
	return i
}

// Where only odd angles fit, pipe enough in stock finds what pipe without end does;
// with too little the stock is what fails; and a vault where nothing fits at any angle
// names its own reason, however little pipe there is.
func TestOddAnglesFromStock(t *testing.T) {
	book := newBook(t)
	odd := askew(t, book)
	odd.Rules.Elbows, odd.Rules.Brief = 3, true
	free := arrange.Search(t.Context(), odd, nil)
	if len(free.Layouts) == 0 || slices.ContainsFunc(free.Layouts, func(l arrange.Layout) bool { return straightOn(&l.Laid, 0) }) {
		t.Fatalf("%d layouts, not at odd angles alone", len(free.Layouts))
	}
	ample := arrange.Search(t.Context(), limit(odd, 20*unit.Foot, 20*unit.Foot), nil)
	if len(ample.Layouts) != len(free.Layouts) || ample.Stage != "" || ample.Uncut != nil {
		t.Errorf("%d layouts with ample pipe, stage %q; %d with pipe without end", len(ample.Layouts), ample.Stage, len(free.Layouts))
	}
	scarce := arrange.Search(t.Context(), limit(odd, unit.Inch), nil)
	if len(scarce.Layouts) > 0 || scarce.Stage != arrange.StageStock || scarce.Uncut == nil || len(scarce.Short) > 0 {
		t.Errorf("%d layouts from an inch of pipe, stage %q", len(scarce.Layouts), scarce.Stage)
	}
	spoilt := 0
	for _, d := range standing(t) {
		want := spoils[d.spoilt]
		if want == "" || spoilt >= 6 {
			continue
		}
		k, ok := d.vault(t, book)
		if !ok {
			t.Fatalf("%s gives no vault", d)
		}
		k.input.Rules.Brief = true
		spoilt++
		for _, lengths := range [][]unit.Length{{20 * unit.Foot}, {unit.Inch}} {
			if out := arrange.Search(t.Context(), limit(k.input, lengths...), nil); out.Stage != want || out.Uncut != nil {
				t.Errorf("%s from %v: stage %q, not %q", d, lengths, out.Stage, want)
			}
		}
	}
	if spoilt == 0 {
		t.Fatal("no vault where nothing fits")
	}
}
