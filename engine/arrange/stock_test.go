package arrange

import (
	"testing"

	"plashet/engine/unit"
)

// packs tells by going through all placings that pieces can be cut from lengths:
// each cut takes a kerf, but for one that ends with its length.
func packs(pieces, lengths []unit.Length, kerf unit.Length) bool {
	if len(pieces) == 0 {
		return true
	}
	for i, l := range lengths {
		if left := l - pieces[0]; left >= -1e-9 {
			next := append([]unit.Length(nil), lengths...)
			next[i] = max(0, left-kerf)
			if packs(pieces[1:], next, kerf) {
				return true
			}
		}
	}
	return false
}

func piecesOf(l *Layout) (out []unit.Length, sum unit.Length) {
	for _, c := range l.Laid.Pieces {
		out, sum = append(out, c.Cut), sum+c.Cut
	}
	return out, sum
}

// With only the stock in hand every layout found can be cut from it, all pieces
// together; and what can be cut is still found.
func TestStockInHand(t *testing.T) {
	const kerf = unit.Inch / 16
	free := ran(plain(), nil)
	if len(free.Layouts) == 0 {
		t.Fatal("nothing to cut")
	}
	shortest, sum := piecesOf(&free.Layouts[0])
	for i := range free.Layouts {
		if p, s := piecesOf(&free.Layouts[i]); s < sum {
			shortest, sum = p, s
		}
	}
	n := len(shortest)
	if n < 2 {
		t.Fatalf("%d pieces: nothing to part among lengths", n)
	}
	whole := sum + unit.Length(n-1)*kerf // cut flush at the end
	for _, c := range []struct {
		name    string
		lengths []unit.Length
		besides []unit.Length
		fits    bool
	}{
		{"each piece", shortest, nil, true},
		{"one stick, flush", []unit.Length{whole}, nil, true},
		{"one stick, short by a sixteenth", []unit.Length{whole - unit.Inch/16}, nil, false},
		{"the longest piece once", []unit.Length{max(shortest[0], shortest[n-1])}, nil, false},
		{"the whole in two halves", []unit.Length{whole / 2, whole / 2}, nil, packs(shortest, []unit.Length{whole / 2, whole / 2}, kerf)},
		{"taken by another piece", []unit.Length{whole}, []unit.Length{2 * unit.Inch}, false},
		{"with another piece", []unit.Length{whole + kerf + 2*unit.Inch}, []unit.Length{2 * unit.Inch}, true},
		{"nothing", nil, nil, false},
	} {
		in := plain()
		in.Pipes[0].AtHand = 0
		for _, l := range c.lengths {
			in.Pipes[0].AtHand = max(in.Pipes[0].AtHand, l)
		}
		in.Pipes[0].Stock = &Stock{Lengths: c.lengths, Besides: c.besides, Kerf: kerf, Grid: unit.Inch / 64}
		out := ran(in, nil)
		if (len(out.Layouts) > 0) != c.fits {
			t.Errorf("%s: %d layouts, stage %q", c.name, len(out.Layouts), out.Stage)
		}
		for i := range out.Layouts {
			if p, _ := piecesOf(&out.Layouts[i]); !packs(append(p, c.besides...), c.lengths, kerf) {
				t.Errorf("%s: %v cannot be cut from %v", c.name, p, c.lengths)
			}
		}
		if c.fits {
			continue
		}
		if out.Stage != StageStock || out.Uncut == nil || len(out.Short) > 0 {
			t.Errorf("%s: stage %q, a layout to cut %v", c.name, out.Stage, out.Uncut != nil)
		} else if _, s := piecesOf(out.Uncut); s != sum {
			t.Errorf("%s: told %v m of pipe, %v m are enough", c.name, s, sum)
		}
	}
}

// A refusal of the cutting plan where all lengths together would do is no proof:
// the claim falls.
func TestStockRefusedIsNoProof(t *testing.T) {
	in := plain()
	p, sum := piecesOf(&ran(in, nil).Layouts[0])
	longest := max(p[0], p[len(p)-1])
	in.Pipes[0].AtHand = longest + unit.Inch/64
	in.Pipes[0].Stock = &Stock{Lengths: []unit.Length{in.Pipes[0].AtHand, sum - longest - unit.Inch/32, unit.Inch / 2}, Grid: unit.Inch / 64}
	out := ran(in, nil)
	if out.Tally.Refused == 0 {
		t.Fatalf("nothing was refused by the cutting plan: %d layouts", len(out.Layouts))
	}
	if out.Proof.Claim != Capped || out.Proof.Open.Joints == 0 {
		t.Errorf("%d refused, %+v", out.Tally.Refused, out.Proof)
	}
}
