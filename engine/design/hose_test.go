package design

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"plashet/engine/catalog"
	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// skew reads the vault whose pump stands turned against its walls.
func skew(t *testing.T) (*catalog.Book, *job.Job) {
	t.Helper()
	data, err := os.ReadFile("testdata/skew-sump.json")
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(data)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	return book, j
}

// Where nothing rigid fits and the job allows no hose, one is told as a mend, and
// written into the job it is one.
func TestHoseMends(t *testing.T) {
	book, j := skew(t)
	if f := j.Set("/assembly/search/hose", ""); f != nil {
		t.Fatal(f)
	}
	want := ArrangeWant{Elbows: 3}
	a := Arrange(t.Context(), book, j, want, nil)
	if a.Outcome == nil || len(a.Outcome.Layouts) > 0 {
		t.Fatalf("was to have nothing that fits: %v", a.Faults)
	}
	n := -1
	for k := range a.Outcome.Short {
		if a.Outcome.Short[k].What.Code == ChangeHose {
			n = k
		}
	}
	if n < 0 {
		t.Fatalf("no hose is told: %+v", a.Outcome.Short)
	}
	for _, x := range a.Assumptions {
		if strings.HasPrefix(x.Code, "assume.hose.") {
			t.Errorf("%s is told where no hose is allowed", x.Code)
		}
	}
	for _, e := range a.Mend(j, n) {
		if f := j.Set(e.Path, e.Text); f != nil {
			t.Fatal(f)
		}
	}
	if b := Arrange(t.Context(), book, j, want, nil); b.Outcome == nil || len(b.Outcome.Layouts) == 0 {
		t.Errorf("with a hose nothing fits: %v", b.Faults)
	}
}

// A layout with a hose, kept: it is laid again, proved, glued and bought, and stands
// on the card.
func TestHoseKept(t *testing.T) {
	book, j := skew(t)
	a := Arrange(t.Context(), book, j, ArrangeWant{Elbows: 2}, nil)
	if a.Outcome == nil || len(a.Outcome.Layouts) != 1 {
		t.Fatalf("one layout was to fit: %v", a.Faults)
	}
	next, faults := a.Keep(book, j, 0)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	r := Solve(book, next)
	if r.Assembly == nil || len(r.Assembly.Hoses) != 1 || len(r.Second.Failed()) > 0 {
		t.Fatalf("%v", r.Faults)
	}
	h := &r.Assembly.Hoses[0]
	// By hand: an arc of 7 in radius over 30 degrees is 7 pi / 6 = 3.665 in, and the
	// bend begins 7 tan 15 = 1.876 in from where the axes meet.
	if d := float64(h.Curve.Arc()/unit.Inch) - 7*math.Pi/6; math.Abs(d) > 1e-3 {
		t.Errorf("arc off by %g in", d)
	}
	p := &next.Assembly.Parts[h.Part]
	if want := p.Before.SI + p.Behind.SI - 2*7*unit.Inch*unit.Length(math.Tan(math.Pi/12)) + 7*math.Pi/6*unit.Inch; math.Abs(float64(want-h.Exact)) > 1e-5 {
		t.Errorf("hose %v long, by hand %v", h.Exact, want)
	}
	if !slices.ContainsFunc(next.Assembly.Kept.Pieces, func(p job.KeptPiece) bool { return p.Mark == h.Mark }) {
		t.Errorf("the hose is not on the card: %+v", next.Assembly.Kept.Pieces)
	}
	cut, cement := -1, -1
	for k, s := range r.Glue.Steps {
		if s.Code == glue.StepHose {
			cut = k
			if !slices.Contains(s.Cautions, glue.CautionHose) {
				t.Error("the hose is cut without a word of its sheet")
			}
		}
		if slices.Contains(s.Parts, h.Mark) && strings.HasPrefix(s.Code, "glue.step.cement") && cement < 0 {
			cement = k
		}
	}
	if cut < 0 || cement < cut {
		t.Errorf("the hose is cut at step %d, cemented at %d", cut, cement)
	}
	if slices.ContainsFunc(r.Findings, func(f trace.Finding) bool { return f.Code == glue.FindNoClosing }) {
		t.Error("it is told that nothing is measured in place")
	}
	bought := false
	for _, x := range r.Materials {
		if x.Name == "flexible PVC" {
			bought = math.Abs(x.Need.Low-float64(h.Cut)) < 1e-9
		}
		if x.Name == hoseName {
			t.Errorf("%s is bought as a fitting", x.Name)
		}
	}
	if !bought {
		t.Error("the hose is not bought by its length")
	}

	// Drawn stiffer than its sheet it is refused.
	if f := next.Set("/assembly/parts/2/bend", "100"); f != nil {
		t.Fatal(f)
	}
	if r := Solve(book, next); !slices.ContainsFunc(r.Findings, func(f trace.Finding) bool { return f.Severity == trace.Danger }) && len(r.Faults) == 0 {
		t.Error("a hose that misses the hole passes")
	}
}

// A hose that is no thicker or thinner than the pipe, and only that, is glued into
// its sockets.
func TestHoseThick(t *testing.T) {
	book, j := skew(t)
	if f := j.Set("/assembly/hose/kind", "smooth hose"); f != nil {
		t.Fatal(f)
	}
	a := Arrange(t.Context(), book, j, ArrangeWant{Elbows: 1}, nil)
	if !slices.ContainsFunc(a.Faults, func(f trace.Fault) bool { return f.Code == CodeHoseThick }) {
		t.Errorf("%v", a.Faults)
	}
}

// Rigid pipe is as thick as the pipe, for it is pipe; what is wrong with it is that it
// does not bend, and that is what is said.
func TestHoseRigid(t *testing.T) {
	book, j := skew(t)
	if f := j.Set("/assembly/hose/kind", "PVC Sch 40"); f != nil {
		t.Fatal(f)
	}
	a := Arrange(t.Context(), book, j, ArrangeWant{Elbows: 1}, nil)
	told := func(code string) bool {
		return slices.ContainsFunc(a.Faults, func(f trace.Fault) bool { return f.Code == code })
	}
	if !told(CodeHoseRigid) || told(CodeHoseThick) {
		t.Errorf("%v", a.Faults)
	}
}

// What the job leaves open is assumed, and said.
func TestHoseAssumed(t *testing.T) {
	book, j := skew(t)
	j.Assembly.Hose = job.Hose{}
	a := Arrange(t.Context(), book, j, ArrangeWant{Elbows: 1}, nil)
	for _, code := range []string{AssumeHoseKind, AssumeHoseRadius, AssumeHoseStraight, AssumeHoseLongest, AssumeHoseBend} {
		if !slices.ContainsFunc(a.Assumptions, func(x trace.Assumption) bool { return x.Code == code }) {
			t.Errorf("%s is not told", code)
		}
	}
	// 1-1/2 in flexible PVC is 1.900 in thick (ASTM D1785): five times that.
	if h := a.Input.Hose; h == nil || math.Abs(float64(h.Part.Curve.Radius/unit.Inch)-9.5) > 1e-3 || h.Part.Kind != layout.Hose {
		t.Errorf("%+v", h)
	}
}
