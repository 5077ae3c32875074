package drawing

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/job"
)

// TestWayOut: every move of the answer is a picture with its number and its
// distance, what hangs on the pump goes with it and the rest stays.
func TestWayOut(t *testing.T) {
	drawn := 0
	for _, name := range demo.Names() {
		in, all := draw(t, example(t, name))
		a := in.Result.Assembly
		if a == nil || !a.LiftOut.Possible {
			if slices.ContainsFunc(all, func(s Sheet) bool { return s.Name == "way-out" }) {
				t.Errorf("%s: a way out is drawn that there is not", name)
			}
			continue
		}
		drawn++
		s := sheet(t, all, "way-out")
		holds(t, s)
		var said []string
		for _, x := range texts(s) {
			said = append(said, x.Text)
		}
		all1 := strings.Join(said, " ")
		for i, m := range a.LiftOut.Moves {
			if far := unit.Of(m.Distance, unit.KindTape).Format(in.Result.Units); !strings.Contains(all1, far) || !strings.Contains(all1, string(rune('2'+i))+". ") {
				t.Errorf("%s: move %d by %s is not told: %s", name, i+1, far, all1)
			}
		}
		if !strings.Contains(all1, "unplug the pump") || !strings.Contains(all1, "never by its cord") {
			t.Errorf("%s: what can hurt is not told: %s", name, all1)
		}
		opened := slices.IndexFunc(in.Job.Assembly.Parts, func(l job.Laid) bool { return l.Mark == a.LiftOut.Union })
		by := a.LiftOut.Moves[0].Along.Scale(float64(a.LiftOut.Moves[0].Distance))
		moved := shifted(a, opened, by)
		for i, p := range moved.Places {
			d := p.Centre.Sub(a.Places[i].Centre).Sub(by).Norm()
			if i < opened && d > 1e-12 || i > opened && p.Centre != a.Places[i].Centre {
				t.Errorf("%s: part %d is moved by %v", name, i, p.Centre.Sub(a.Places[i].Centre))
			}
		}
		u := &moved.Places[opened]
		if math.Abs(u.InFace.Sub(a.Places[opened].InFace).Norm()-by.Norm()) > 1e-12 || u.OutFace != a.Places[opened].OutFace {
			t.Errorf("%s: the opened union does not part", name)
		}
	}
	if drawn == 0 {
		t.Fatal("no demo has a way out: this test looks at nothing")
	}
}

// TestLayouts: every layout that is to be shown has its picture with what it
// costs, none more.
func TestLayouts(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j := example(t, "hillside-cascade")
	a := design.Arrange(context.Background(), book, j, design.ArrangeWant{Elbows: 2}, nil)
	s, ok := Layouts(j, a, nil)
	if !ok || len(a.Outcome.Layouts) < 2 {
		t.Fatalf("%v, %d layouts", ok, len(a.Outcome.Layouts))
	}
	holds(t, &s)
	count := func(s *Sheet) int {
		n := 0
		for _, x := range texts(s) {
			if x.Bold && strings.HasPrefix(x.Text, "Layout ") && strings.Contains(x.Text, "head") {
				n++
			}
		}
		return n
	}
	if n := count(&s); n != min(a.Shown, len(a.Outcome.Layouts)) {
		t.Errorf("%d pictures of %d layouts", n, len(a.Outcome.Layouts))
	}
	a.Shown = 1
	if s, _ = Layouts(j, a, nil); count(&s) != 1 || !strings.Contains(texts(&s)[len(texts(&s))-1].Text, "not drawn") {
		t.Errorf("%d pictures where one is to be shown", count(&s))
	}
	a.Outcome.Layouts = nil
	if _, ok = Layouts(j, a, nil); ok {
		t.Error("a sheet without a layout")
	}
}
