package drawing

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/geom"
	"plashet/engine/unit"
	"plashet/words"
)

func vec(x, y, z float64) geom.Vec3 { return geom.Vec3{X: x, Y: y, Z: z} }

func TestSpread(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.SliceOfN(rapid.Float64Range(0, 100), 1, 12).Draw(t, "at")
		gap := rapid.Float64Range(0, 8).Draw(t, "gap")
		slices.Sort(at)
		got := spread(at, gap, -1000, 1000)
		moved := false
		for i := range got {
			if i > 0 && got[i]-got[i-1] < gap-1e-9 {
				t.Fatalf("%v stand closer than %g", got, gap)
			}
			moved = moved || math.Abs(got[i]-at[i]) > 1e-9
		}
		roomy := true
		for i := 1; i < len(at); i++ {
			roomy = roomy && at[i]-at[i-1] >= gap
		}
		if roomy && moved {
			t.Fatalf("%v had room and became %v", at, got)
		}
	})
	if got := spread([]float64{1, 1}, 4, 0, 100); got[0] != 0 || got[1] != 4 { // -1 and 3, kept off the edge
		t.Errorf("%v", got)
	}
}

func TestTicks(t *testing.T) {
	for _, c := range []struct {
		most, one float64
		n         int
		want      string
	}{
		{118, 1, 6, "0 20 40 60 80 100 120"},
		{34, 1, 7, "0 5 10 15 20 25 30 35"},
		{7020, 1, 6, "0 2,000 4,000 6,000 8,000"},
		{0.9, 1, 5, "0.0 0.2 0.4 0.6 0.8 1.0"},
		{3 * 0.3048, 0.3048, 3, "0 1 2 3"},
	} {
		a := newAxis(unit.US, 0, 100, c.most, c.one, "", c.n)
		si, written := a.ticks()
		if got := strings.Join(written, " "); got != c.want {
			t.Errorf("%g: %s, not %s", c.most, got, c.want)
		}
		if last := si[len(si)-1]; math.Abs(a.at(last)-100) > 1e-9 || last < c.most*(1-1e-9) {
			t.Errorf("%g: the last tick %g stands at %g", c.most, last, a.at(last))
		}
	}
}

func TestWrapAndFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringOfN(rapid.RuneFrom([]rune("abc WIM äß水 ")), 0, 60, -1).Draw(t, "s")
		width := rapid.Float64Range(8, 90).Draw(t, "width")
		bold := rapid.Bool().Draw(t, "bold")
		for _, l := range append(wrap(s, bold, width), fitted(s, bold, width)) {
			if w := (Text{Size: small, Bold: bold, Text: l}).Width(); w > width+1e-9 {
				t.Fatalf("%q is %g wide, not %g", l, w, width)
			}
		}
	})
	if got := strings.Join(wrap("one two three", false, 26), "|"); got != "one two|three" {
		t.Error(got)
	}
}

// Letters are as wide as the font's own tables say: "M" 863, "i" 278, "0" 636
// thousandths, bold "0" 696 (DejaVu Sans, read with a font viewer).
func TestWidth(t *testing.T) {
	if w := (Text{Size: 10, Text: "Mi0"}).Width(); math.Abs(w-17.77) > 1e-9 {
		t.Error(w)
	}
	if w := (Text{Size: 10, Bold: true, Text: "0123456789"}).Width(); math.Abs(w-69.6) > 1e-9 {
		t.Error(w)
	}
}

// TestPainted: of boxes on a grid none is drawn before one that it hides.
func TestPainted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := newView(rapid.SampledFrom(Corners()).Draw(t, "corner"))
		cells := rapid.SliceOfNDistinct(rapid.IntRange(0, 26), 2, 12, rapid.ID[int]).Draw(t, "cells")
		var things []*thing
		for _, c := range cells {
			at := vec(float64(c%3), float64(c/3%3), float64(c/9))
			things = append(things, &thing{shapes: []shape{blockOf(geom.BoxOf(at, at.Add(vec(1, 1, 1))))}})
		}
		order := painted(things, v.toward)
		if len(order) != len(things) {
			t.Fatalf("%d of %d things are drawn", len(order), len(things))
		}
		for i, a := range order {
			for _, b := range order[:i] {
				// a comes after b: it must not stand on the far side of b along every
				// axis on which they keep apart.
				if hides(b, a, v) {
					t.Fatalf("what stands behind is drawn later: %v over %v", a.shapes, b.shapes)
				}
			}
		}
	})
}

// hides tells, by casting lines of sight from the corners and middles of b's
// seen faces, that a stands between the viewer and b.
func hides(a, b *thing, v view) bool {
	low := func(t *thing) geom.Vec3 { return t.shapes[0].(block).Centre.Sub(vec(0.5, 0.5, 0.5)) }
	la, lb := low(a), low(b)
	for i := range 27 {
		p := lb.Add(vec(0.1+0.4*float64(i%3), 0.1+0.4*float64(i/3%3), 0.1+0.4*float64(i/9)))
		for s := 0.05; s < 5; s += 0.05 {
			q := p.Add(v.toward.Scale(s)).Sub(la)
			if q.X > 0 && q.X < 1 && q.Y > 0 && q.Y < 1 && q.Z > 0 && q.Z < 1 {
				return true
			}
		}
	}
	return false
}

func TestOutlineOfATube(t *testing.T) {
	// A tube along the line of sight is a disc, one square to it a rectangle with
	// round ends of no depth.
	v := newView(FrontLeft)
	disc := tube{vec(0, 0, 0), v.toward, 0.5}
	for _, p := range disc.outline(v) {
		if math.Abs(p.Norm()-0.5) > 1e-9 {
			t.Errorf("disc: %v", p)
		}
	}
	flat := tube{vec(0, 0, 0), v.right.Scale(3), 0.5}
	for _, p := range flat.outline(v) {
		if math.Abs(p.Y) > 0.5+1e-9 || p.X < -1e-9 || p.X > 3+1e-9 {
			t.Errorf("rectangle: %v", p)
		}
	}
}

// TestOutlineHolds: a tube's silhouette is convex and holds both its ends.
func TestOutlineHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := newView(rapid.SampledFrom(Corners()).Draw(t, "corner"))
		at := func(name string) geom.Vec3 {
			f := rapid.Float64Range(-1, 1)
			return vec(f.Draw(t, name), f.Draw(t, name), f.Draw(t, name))
		}
		u := tube{at("from"), at("to"), rapid.Float64Range(0.01, 1).Draw(t, "radius")}
		o := u.outline(v)
		for _, r := range []Arc{u.ring(v, u.from), u.ring(v, u.to)} {
			for deg := 0.0; deg < 360; deg += 360.0 / (2 * halfRing) {
				for i, p := range o {
					if leftOf(p, o[(i+1)%len(o)], r.At(deg)) > 1e-9 {
						t.Fatalf("a point of an end lies outside: %v of %v", r.At(deg), u)
					}
				}
			}
		}
	})
}

// TestLabels: every label is used and every label that is used is there.
func TestLabels(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var source strings.Builder
	for _, f := range files {
		if strings.HasSuffix(f, "_test.go") || f == "labels.go" {
			continue
		}
		b, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		source.Write(b)
	}
	code := source.String()
	for _, name := range words.English().Codes() {
		name, ours := strings.CutPrefix(name, "draw.")
		if !ours {
			continue
		}
		stem := name[:strings.LastIndexByte(name, '.')+1]
		if !strings.Contains(code, `"`+name+`"`) && (stem == "" || !strings.Contains(code, `"`+stem+`"`)) {
			t.Errorf("nothing uses the label %s", name)
		}
	}
	said := regexp.MustCompile(`say\("([^"]+)"[,)]`).FindAllStringSubmatch(code, -1)
	if len(said) < 30 {
		t.Fatalf("only %d labels were found in the source", len(said))
	}
	for _, m := range said {
		if !words.English().Has("draw." + m[1]) {
			t.Errorf("the label %s is not there", m[1])
		}
	}
}

func TestSigned(t *testing.T) {
	for _, c := range []struct {
		d    unit.Length
		sys  unit.System
		want string
	}{
		{unit.Inch, unit.US, "+1.00"},
		{-unit.Inch, unit.US, "−1.00"},
		{0, unit.US, "0.00"},
		{1e-9, unit.US, "0.00"},
		{-1e-9, unit.Metric, "0.0"},
		{0.025, unit.Metric, "+25.0"},
		{-1.2, unit.Metric, "−1,200.0"},
	} {
		if got := signed(c.d, c.sys); got != c.want {
			t.Errorf("%g: %s, not %s", float64(c.d), got, c.want)
		}
	}
}
