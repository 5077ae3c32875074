package design

import (
	"math"
	"os"
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// skewWith is the vault whose pump stands askew, with entries set anew.
func skewWith(t *testing.T, entries ...Entry) (*catalog.Book, *job.Job) {
	t.Helper()
	book, j := skew(t)
	for _, e := range entries {
		if f := j.Set(e.Path, e.Text); f != nil {
			t.Fatal(f)
		}
	}
	return book, j
}

// finding gives the one finding of a code; nil where there is none.
func finding(t *testing.T, list []trace.Finding, code string) (out *trace.Finding) {
	t.Helper()
	for i := range list {
		if list[i].Code != code {
			continue
		}
		if out != nil {
			t.Errorf("%s is told twice", code)
		}
		out = &list[i]
	}
	return out
}

func lengthIn(t *testing.T, args []trace.Arg, name string) float64 {
	t.Helper()
	for _, x := range args {
		if x.Name == name {
			return x.Value.SI
		}
	}
	t.Fatalf("no %s in %v", name, args)
	return 0
}

// A hose 1.9 in thick (ASTM D 1785, table 1: the outside diameter of 1-1/2 pipe, which
// flexible pipe that goes into its sockets has too) folds at a radius of half of that,
// and is told as bending tighter than any below three times it.
func TestHoseRadius(t *testing.T) {
	for _, c := range []struct {
		radius       string
		folds, tight bool
	}{{"0.95 in", true, false}, {"1 in", false, true}, {"5.6 in", false, true}, {"5.75 in", false, false}, {"7 in", false, false}} {
		book, j := skewWith(t, Entry{"/assembly/hose/leastRadius", c.radius})
		a := Arrange(t.Context(), book, j, ArrangeWant{Elbows: 1}, nil)
		folds := slices.ContainsFunc(a.Faults, func(f trace.Fault) bool {
			return f.Code == CodeHoseFolds && f.Path == "/assembly/hose/leastRadius"
		})
		if folds != c.folds || folds && len(a.Faults) != 1 {
			t.Errorf("%s: refused %v: %v", c.radius, folds, a.Faults)
		}
		if tight := finding(t, a.Findings, FindHoseTighter) != nil; tight != c.tight {
			t.Errorf("%s: told as too tight %v", c.radius, tight)
		}
	}
}

// The same of a hose that the assembly has.
func TestHoseRadiusDrawn(t *testing.T) {
	book, j := skew(t)
	a := Arrange(t.Context(), book, j, ArrangeWant{Elbows: 1}, nil)
	next, faults := a.Keep(book, j, 0)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for radius, code := range map[string]string{"0.9 in": CodeHoseFolds, "5 in": FindHoseTighter} {
		if f := next.Set("/assembly/hose/leastRadius", radius); f != nil {
			t.Fatal(f)
		}
		r := Solve(book, next)
		if !slices.ContainsFunc(r.Faults, func(f trace.Fault) bool { return f.Code == code }) && finding(t, r.Findings, code) == nil {
			t.Errorf("%s: %v", radius, r.Faults)
		}
	}
}

// Where the longest piece reaches round no turn, that is said with figures, and a
// longer one is told as a mend. By hand: the pump stands at 30 degrees, directions
// lie 45 apart, so the least turn is 15 degrees: 7 in radius make an arc of
// 7 pi / 12 = 1.833 in; two straight ends of 2 in, and two sockets.
func TestHoseTooShort(t *testing.T) {
	book, j := skewWith(t, Entry{"/assembly/hose/longest", "4 in"})
	a := Arrange(t.Context(), book, j, ArrangeWant{Elbows: 1}, nil)
	f := finding(t, a.Findings, FindHoseShort)
	if f == nil || len(a.Outcome.Layouts) > 0 || a.Outcome.Stage != arrange.StageWalls {
		t.Fatalf("%d layouts, stage %q, told %v", len(a.Outcome.Layouts), a.Outcome.Stage, f)
	}
	if d := lengthIn(t, f.Args, "turn") - math.Pi/12; math.Abs(d) > 1e-9 {
		t.Errorf("least turn off by %g rad", d)
	}
	found := lengthIn(t, f.Args, "found") / float64(unit.Inch)
	if socket := (found - 7*math.Pi/12 - 4) / 2; socket < 0.6 || socket > 1.2 { // ASTM D 2466: 1-1/2 sockets are about 1-1/16 in deep
		t.Errorf("found %g in: sockets %g in deep", found, socket)
	}
	n := slices.IndexFunc(a.Outcome.Short, func(c arrange.Change) bool { return c.What.Code == ChangeHoseLonger })
	if n < 0 {
		t.Fatalf("no longer hose is told: %+v", a.Outcome.Short)
	}
	mended(t, book, j, a, n)
}

// mended writes a change and searches again: a layout with a hose is there.
func mended(t *testing.T, book *catalog.Book, j *job.Job, a *Arranging, n int) {
	t.Helper()
	for _, e := range a.Mend(j, n) {
		if f := j.Set(e.Path, e.Text); f != nil {
			t.Fatal(f)
		}
	}
	b := Arrange(t.Context(), book, j, ArrangeWant{Elbows: 1}, nil)
	if b.Outcome == nil || len(b.Outcome.Layouts) == 0 || b.Outcome.Layouts[0].Worth.Hoses != 1 || b.Outcome.Layouts[0].Worth.Elbows != 0 {
		t.Errorf("written, it does not help: %v", b.Faults)
	}
	for _, code := range []string{FindHoseShort, FindHoseNone} {
		if finding(t, b.Findings, code) != nil {
			t.Errorf("%s is told though there is a layout with a hose", code)
		}
	}
}

// A radius that no vault has room for is named with what its bends take, and a hose
// that bends tighter is told as a mend. By hand: a quarter turn of 6 ft radius is
// 72 pi / 2 = 113.1 in long, beside its ends.
func TestHoseTooWide(t *testing.T) {
	book, j := skewWith(t, Entry{"/assembly/hose/leastRadius", "6 ft"}, Entry{"/assembly/hose/straight", "2 in"})
	a := Arrange(t.Context(), book, j, ArrangeWant{Elbows: 1}, nil)
	f := finding(t, a.Findings, FindHoseNone)
	if f == nil {
		t.Fatalf("not told: %v", a.Findings)
	}
	quarter := lengthIn(t, f.Args, "quarter") / float64(unit.Inch)
	if rest := quarter - 36*math.Pi; rest < 4+1.2 || rest > 4+2.4 { // straight ends of 2 in and two sockets
		t.Errorf("a quarter turn %g in", quarter)
	}
	n := slices.IndexFunc(a.Outcome.Short, func(c arrange.Change) bool { return c.What.Code == ChangeHoseTighter })
	if n < 0 {
		t.Fatalf("no tighter hose is told: %+v", a.Outcome.Short)
	}
	mended(t, book, j, a, n)
}

// Where no flexible pipe of the size is known, rigid layouts are searched all the same
// and that is told; a kind that is not known at all stays a fault.
func TestHoseUnknownSize(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile("../../demo/jobs/courtyard-rill.json")
	if err != nil {
		t.Fatal(err)
	}
	for kind, refused := range map[string]bool{"": false, "flexible PVC": false, "flexible brass": true} {
		j, faults := job.Read(data)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		for _, e := range []Entry{{"/assembly/search/hose", "true"}, {"/assembly/hose/kind", kind}, {"/vault/length", "400 mm"}} {
			if f := j.Set(e.Path, e.Text); f != nil {
				t.Fatal(f)
			}
		}
		a := Arrange(t.Context(), book, j, ArrangeWant{Elbows: 3}, nil)
		f := finding(t, a.Findings, FindHoseUnknown)
		if refused != (a.Outcome == nil) || refused != (len(a.Faults) > 0) || refused == (f != nil) {
			t.Errorf("%q: searched %v, told %v, faults %v", kind, a.Outcome != nil, f != nil, a.Faults)
			continue
		}
		if !refused && len(a.Outcome.Layouts) == 0 {
			t.Errorf("%q: no rigid layout", kind)
		}
	}
}
