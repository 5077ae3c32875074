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
	"plashet/engine/geom"
	"plashet/engine/layout"
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
		moved := shifted(a, opened, a.LiftOut.Moves[0])
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
	// Water that is not all known is told as such, and not as what little is known.
	w := &a.Outcome.Layouts[0].Laid.Water
	for _, c := range []struct {
		order layout.Order
		known bool
		want  string
	}{{layout.ValveFirst, false, "all the water above"}, {layout.NoValve, true, "at every stop"}, {layout.ValveFirst, true, "lets down " + unit.Of(a.Outcome.Layouts[0].Worth.Released, unit.KindWater).Format(a.Units)}} {
		w.Order, w.RunKnown = c.order, c.known
		s, _ = Layouts(j, a, nil)
		var said []string
		for _, x := range texts(&s) {
			said = append(said, x.Text)
		}
		if !strings.Contains(strings.Join(said, " "), c.want) {
			t.Errorf("%q is not told", c.want)
		}
	}
	a.Outcome.Layouts = nil
	if _, ok = Layouts(j, a, nil); ok {
		t.Error("a sheet without a layout")
	}
}

// A way out with a tilt is drawn as it leans: the pump over its middle by the angle
// told, what stays where it was; the last lift says that it leans.
func TestWayOutTilted(t *testing.T) {
	j := example(t, "hillside-cascade")
	in, _ := draw(t, j)
	a := in.Result.Assembly
	middle := a.Body[0].Centre.Add(geom.Vec3{Z: 0.1})
	a.LiftOut.Moves = []layout.Move{ // of the drawing's making: whether it is free is not asked here
		{Along: geom.Vec3{Z: 1}, Distance: 0.1},
		{Along: geom.Vec3{X: -1}, Turn: 40 * unit.Degree, About: middle},
		{Along: geom.Vec3{Z: 1}, Distance: 0.5},
	}
	const k = 1
	sheets := Sheets(in)
	s := sheet(t, sheets, "way-out")
	holds(t, s)
	var said []string
	for _, x := range texts(s) {
		said = append(said, x.Text)
	}
	if text := strings.Join(said, " "); !strings.Contains(text, "Lean it over to the") || !strings.Contains(text, "leaning as it is") {
		t.Error(text)
	}
	opened := slices.IndexFunc(a.Places, func(p layout.Place) bool { return p.Mark == a.LiftOut.Union })
	m := a.LiftOut.Moves[k]
	moved := shifted(a, opened, m)
	up, leaned := a.Body[0].W.Unit(), moved.Body[0].W.Unit()
	if got := math.Acos(up.Dot(leaned)); math.Abs(got-float64(m.Turn)) > 1e-9 || leaned.Dot(m.Along) < 0.01 {
		t.Errorf("leans by %v towards %v, told %v towards %v", got, leaned, m.Turn, m.Along)
	}
	// The opened union is no elbow between its halves.
	if u := &moved.Places[opened]; u.InDir != u.OutDir {
		t.Error("the opened union is drawn as an elbow")
	}
	for i := opened + 1; i < len(a.Places); i++ {
		if moved.Places[i].Centre != a.Places[i].Centre {
			t.Errorf("part %d stays", i)
		}
	}
}
