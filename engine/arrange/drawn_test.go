package arrange_test

import (
	"context"
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

var redraw = flag.Bool("redraw", false, "draw testdata/drawn.txt anew")

// drawn is one vault of the standing set of 200: a line of testdata/drawn.txt.
type drawn struct {
	seed   uint64
	elbows int    // of the assembly it was built round
	spoilt string // how it was made impossible; "no" where it was not, "three" where it moreover has no layout of two elbows along the compass
}

// whole tells that a vault was not made impossible.
func (d drawn) whole() bool { return d.spoilt == "no" || d.spoilt == "three" }

// needsThree tells that no layout of two elbows along the compass fits a vault: the
// search says so of all of them. At odd angles one of two may still fit.
func needsThree(k *known) bool {
	i := k.input
	i.Rules.Elbows, i.Rules.Brief = 2, true
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	out := arrange.Search(ctx, i, nil)
	along := slices.ContainsFunc(out.Layouts, func(l arrange.Layout) bool { return !l.Odd })
	return !along && out.Proof.Elbows == 2 && !undecided(&out)
}

// spoils are ways to make a vault impossible beyond doubt, with the stage at
// which a search must find that it is.
var spoils = map[string]arrange.Stage{
	"slab":  arrange.StageClear, // a slab from wall to wall between port and hole: no run of elbows passes it
	"lid":   arrange.StageWalls, // the hole so near the lid that no fitting goes under it
	"low":   arrange.StageBody,  // the pump is taller than the vault
	"hatch": arrange.StageOut,   // a hatch narrower than the pump every way
}

// spoil makes the vault of a known assembly impossible; false where this way
// does not lend itself to it.
func (k *known) spoil(how string) bool {
	v := &k.input.Vault
	p := &k.input.Standings[0].Pump
	size := p.Blocks[0].Size()
	hub := k.laid.Places[len(k.laid.Places)-1].Solids[0].Radius
	top, under := unit.Length(size.Z)+inches(0.5), v.Outlet.Height-hub-inches(0.5)
	switch how {
	case "slab":
		if under-top < inches(1) || float64(p.Port.Z) > float64(top) {
			return false
		}
		far := geom.Vec3{X: 20, Y: 20, Z: float64(top + inches(0.75))}
		v.Obstacles = []layout.Obstacle{{Name: "slab", Box: geom.Box{Min: geom.Vec3{X: -1, Y: -1, Z: float64(top)}, Max: far}}}
	case "lid":
		low := v.Outlet.Height + hub - inches(0.25)
		if v.FloorLength > 0 || low < top {
			return false
		}
		v.Depth = low
		v.Obstacles = nil
	case "low":
		if v.FloorLength > 0 || v.Outlet.Height > unit.Length(size.Z)-inches(0.5) {
			return false
		}
		v.Depth = unit.Length(size.Z) - inches(0.25)
	case "hatch":
		if !k.input.Rules.Out {
			return false
		}
		w := unit.Length(min(size.X, size.Y)) - inches(0.25)
		v.Opening = layout.Opening{FromX: inches(1), ToX: inches(1) + w, FromY: inches(1), ToY: inches(1) + w}
	default:
		return false
	}
	k.tags["infeasible"] = true
	return true
}

// vault makes the vault of a line.
func (d drawn) vault(t testing.TB, book *catalog.Book) (*known, bool) {
	k, ok := backwards(t, book, d.seed, d.elbows)
	if !ok || d.whole() {
		return k, ok
	}
	return k, k.spoil(d.spoilt)
}

func (d drawn) String() string { return fmt.Sprintf("%d %d %s", d.seed, d.elbows, d.spoilt) }

// standing reads the standing set.
func standing(t testing.TB) []drawn {
	t.Helper()
	return rowsOf(t, "testdata/drawn.txt", func(d *drawn) []any { return []any{&d.seed, &d.elbows, &d.spoilt} })
}

// rowsOf reads the fields of each line of a file that is no comment.
func rowsOf[T any](t testing.TB, path string, fields func(*T) []any) (out []T) {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		var row T
		if _, err := fmt.Sscan(line, fields(&row)...); err != nil {
			t.Fatalf("%s: %q: %v", path, line, err)
		}
		out = append(out, row)
	}
	if len(out) == 0 {
		t.Fatalf("%s has no line", path)
	}
	return out
}

// The standing set is what its file says: 200 vaults whose seeds still give
// them, enough of every kind.
func TestDrawn(t *testing.T) {
	book := newBook(t)
	if *redraw {
		if err := os.WriteFile("testdata/drawn.txt", []byte(drawAnew(t, book)), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	all, tags := standing(t), map[string]int{}
	for _, d := range all {
		k, ok := d.vault(t, book)
		if !ok {
			t.Errorf("%s gives no vault any more: go test ./engine/arrange -run Drawn -redraw", d)
			continue
		}
		for tag := range k.tags {
			tags[tag]++
		}
		tags[fmt.Sprintf("%d elbows", d.elbows)]++
		if d.spoilt == "three" {
			if tags["three"]++; (*far || tags["three"]%8 == 1) && !needsThree(k) {
				t.Errorf("%s does not need three elbows", d)
			}
		}
		if (spoils[d.spoilt] != "") != k.tags["infeasible"] {
			t.Errorf("%s: spoilt in no known way", d)
		}
		if _, ok := k.input.Vault.Hole(); !ok {
			t.Errorf("%s: the hole lies off its wall", d)
		}
	}
	t.Logf("%d vaults: %v", len(all), tags)
	if len(all) != 200 {
		t.Errorf("%d vaults, not 200", len(all))
	}
	for _, tag := range []string{"obstacle", "taper", "round", "lip", "infeasible", "three"} {
		if tags[tag] < 40 {
			t.Errorf("only %d of %d with %s: a fifth is wanted", tags[tag], len(all), tag)
		}
	}
}

// drawAnew tries seeds in order until every kind is full.
func drawAnew(t testing.TB, book *catalog.Book) string {
	want := map[string]int{"1": 20, "2": 30, "3": 28, "4": 28, "three": 44, "slab": 14, "lid": 12, "low": 10, "hatch": 14}
	order := []string{"slab", "lid", "low", "hatch"}
	var b strings.Builder
	b.WriteString("# The standing set of drawn vaults: seed, elbows of the assembly that each was built\n# round, how it was made impossible (three: it was not, and has no layout of two elbows). Invented. Drawn by go test -run Drawn -redraw.\n")
	for seed, turn := uint64(1), 0; seed < 200000; seed++ {
		if left := 0; seed%64 == 0 {
			for _, n := range want {
				left += n
			}
			if left == 0 {
				break
			}
		}
		n := int(seed%4) + 1
		if want["three"] > 0 && want["1"] == 0 && want["2"] == 0 {
			n = 3 + int(seed%2) // only long ones are wanted still
		}
		k, ok := backwards(t, book, seed, n)
		// Half of the known ones taper, are round or have a lip.
		if !ok || !k.tags["taper"] && !k.tags["round"] && !k.tags["lip"] && seed%3 != 0 {
			continue
		}
		turn++
		if how := order[turn/2%len(order)]; turn%2 == 0 && want[how] > 0 && k.spoil(how) {
			want[how]--
			fmt.Fprintln(&b, drawn{seed, n, how})
			continue
		}
		// Of three and four elbows most are wanted that need as many.
		if n >= 3 && !k.tags["infeasible"] && want["three"] > 0 && needsThree(k) {
			want["three"]--
			fmt.Fprintln(&b, drawn{seed, n, "three"})
			continue
		}
		if key := fmt.Sprint(n); !k.tags["infeasible"] && want[key] > 0 {
			want[key]--
			fmt.Fprintln(&b, drawn{seed, n, "no"})
		}
	}
	return b.String()
}
