package drawing

import (
	"math"
	"slices"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/job"
)

// draw designs a job and draws its answer.
func draw(t testing.TB, j *job.Job) (Input, []Sheet) {
	t.Helper()
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	r := design.Solve(book, j)
	in := Input{Job: j, Result: r, Curves: design.CurvesOf(book, j, r, 61)}
	return in, Sheets(in)
}

func example(t testing.TB, name string) *job.Job {
	t.Helper()
	j, faults := job.Read(demo.Job(name))
	if len(faults) > 0 {
		t.Fatalf("%s: %v", name, faults)
	}
	return j
}

// texts gives every text of a sheet.
func texts(s *Sheet) []Text {
	var out []Text
	s.Each(func(it Item) {
		if x, ok := it.(Text); ok {
			out = append(out, x)
		}
	})
	return out
}

// points gives every point of an item.
func points(it Item) []Point {
	switch v := it.(type) {
	case Line:
		return []Point{v.From, v.To}
	case Polyline:
		return v.Points
	case Polygon:
		return v.Points
	case Arc:
		return []Point{v.Centre, {v.RX, v.RY}, {v.Turn, v.From}, {v.Sweep, 0}}
	case Text:
		c := v.Corners()
		return c[:]
	}
	return nil
}

// legible is the least size of letters: 10 px high where a sheet is 320 px wide.
const legible = 10.0 / 320 * wide * 0.99

// holds checks what every sheet promises.
func holds(t testing.TB, s *Sheet) {
	t.Helper()
	if s.Title == "" || s.Desc == "" || s.Name == "" {
		t.Errorf("%s: title %q, description %q", s.Name, s.Title, s.Desc)
	}
	if len(s.Data) == 0 {
		t.Errorf("%s has no rows for who cannot see it", s.Name)
	}
	for _, d := range s.Data {
		if d.Title == "" || len(d.Rows) == 0 {
			t.Errorf("%s: rows %q of %d", s.Name, d.Title, len(d.Rows))
		}
	}
	across := wide
	if strings.HasPrefix(s.Name, "glue-") {
		across = narrow
	}
	if s.Width != across || !(s.Height > 50) || s.Height > 500 {
		t.Errorf("%s: %g by %g mm", s.Name, s.Width, s.Height)
	}
	n := 0
	s.Each(func(it Item) {
		n++
		for _, p := range points(it) {
			if math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) {
				t.Errorf("%s: %#v is not finite", s.Name, it)
				return
			}
		}
	})
	if n < 10 {
		t.Errorf("%s holds %d items only", s.Name, n)
	}
	all := texts(s)
	for i, a := range all {
		if a.Text == "" || a.Size < legible || a.Ink != Black {
			t.Errorf("%s: %#v cannot be read", s.Name, a)
		}
		for _, c := range a.Corners() {
			if c.X < 0 || c.Y < 0 || c.X > s.Width || c.Y > s.Height {
				t.Errorf("%s: %q runs off the sheet at %.1f, %.1f", s.Name, a.Text, c.X, c.Y)
				break
			}
		}
		for _, b := range all[:i] {
			if Overlap(a, b) {
				t.Errorf("%s: %q and %q stand on each other", s.Name, a.Text, b.Text)
			}
		}
	}
}

func TestExamples(t *testing.T) {
	for _, name := range demo.Names() {
		_, sheets := draw(t, example(t, name))
		for _, want := range []string{"plan", "curve", "levels", "course-first", "course-stop", "sticks", "assembly-front-left", "assembly-back-right"} {
			sheet(t, sheets, want)
		}
		for i := range sheets {
			holds(t, &sheets[i])
		}
	}
}

func TestOverlapCatches(t *testing.T) {
	a := Text{At: Point{10, 10}, Size: 5, Text: "pump"}
	for _, c := range []struct {
		b    Text
		want bool
	}{
		{Text{At: Point{12, 12}, Size: 5, Text: "pump"}, true},
		{Text{At: Point{10, 16}, Size: 5, Text: "pump"}, false}, // the next line
		{Text{At: Point{40, 10}, Size: 5, Text: "pump"}, false},
		{Text{At: Point{40, 10}, Size: 5, Text: "a pump of some length", Anchor: End}, true},
		{Text{At: Point{16, 24}, Size: 5, Text: "pump", Turn: -90}, true},
		{Text{At: Point{6, 24}, Size: 5, Text: "pump", Turn: -90}, false},
	} {
		if got := Overlap(a, c.b); got != c.want || Overlap(c.b, a) != got {
			t.Errorf("%+v: %v", c.b, got)
		}
	}
}

// TestMovingAndGluing: every step's picture and every moment's section of the
// examples hold what a sheet promises; the sections are all of one size.
func TestMovingAndGluing(t *testing.T) {
	stepsDrawn := 0
	for _, name := range demo.Names() {
		in, _ := draw(t, example(t, name))
		steps := GlueSteps(in)
		stepsDrawn += len(steps)
		for i := range steps {
			holds(t, &steps[i])
		}
		frames := 0
		for _, c := range in.Result.Motion.Cases {
			tall := 0.0
			for k := range Frames(in, c.Case) {
				s, ok := Frame(in, c.Case, k)
				if !ok || tall != 0 && s.Height != tall {
					t.Fatalf("%s: moment %d of %s: %v, %g mm high after %g", name, k, c.Case, ok, s.Height, tall)
				}
				tall = s.Height
				if frames++; k%7 == 0 || k == Frames(in, c.Case)-1 {
					holds(t, &s)
				}
			}
		}
		if frames < 40 {
			t.Errorf("%s: only %d moments were drawn", name, frames)
		}
		if _, ok := Frame(in, "stop", -1); ok {
			t.Error("a moment before the first")
		}
		if _, ok := Frame(in, "no such", 0); ok {
			t.Error("a moment of no case")
		}
	}
	if stepsDrawn < 20 {
		t.Errorf("only %d steps were drawn", stepsDrawn)
	}
}

// TestCompare: two pumps' curves and figures side by side; not one with itself.
func TestCompare(t *testing.T) {
	for _, name := range demo.Names() {
		in, _ := draw(t, example(t, name))
		if len(in.Curves.Pumps) < 2 {
			continue
		}
		a, b := in.Curves.Pumps[0].Name, in.Curves.Pumps[1].Name
		s, ok := Compare(in, a, b)
		if !ok {
			t.Fatalf("%s: %s and %s are not compared", name, a, b)
		}
		holds(t, &s)
		if _, ok := Compare(in, a, a); ok {
			t.Error("a pump beside itself")
		}
	}
}

// TestPartOfAnAnswer: what is missing leaves its sheet out, and nothing else.
func TestPartOfAnAnswer(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*job.Job)
		want  string // the kinds of sheets: their names up to a hyphen
	}{
		{"nothing", func(j *job.Job) { *j = job.Job{} }, ""},
		{"no pump", func(j *job.Job) { j.Pumps = nil }, "plan sticks"},
		{"no curve", func(j *job.Job) {
			for i := range j.Pumps {
				j.Pumps[i].Curve, j.Pumps[i].BoxFlow = nil, job.Flow{}
			}
		}, "plan sticks assembly way"},
		{"no runs", func(j *job.Job) { j.Runs = nil }, "plan curve sticks assembly way"},
		{"no pond", func(j *job.Job) { j.Pond = job.Pond{} }, "curve sticks assembly way"},
		{"no vault", func(j *job.Job) { j.Vault = job.Vault{} }, "plan curve front levels course sticks assembly"},
		{"no assembly", func(j *job.Job) { j.Assembly = job.Assembly{} }, "plan curve front levels course sticks"},
		{"one part", func(j *job.Job) { j.Assembly.Parts = j.Assembly.Parts[:1] }, "plan curve front levels course sticks assembly"},
		{"no valve", func(j *job.Job) { j.Runs[0].Fittings = nil }, "all"},
		{"no sill", func(j *job.Job) { j.Vault.Sill = job.Level{} }, "all"},
		{"no date", func(j *job.Job) { j.Date = "" }, "all"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := example(t, "hillside-cascade")
			c.spoil(j)
			_, sheets := draw(t, j)
			var kinds []string
			for i := range sheets {
				kind, _, _ := strings.Cut(sheets[i].Name, "-")
				if !slices.Contains(kinds, kind) {
					kinds = append(kinds, kind)
				}
			}
			want := c.want
			if want == "all" {
				want = "plan curve front levels course sticks assembly way"
			}
			if got := strings.Join(kinds, " "); got != want {
				t.Errorf("%s, not %s", got, want)
			}
			for i := range sheets {
				holds(t, &sheets[i])
			}
		})
	}
	if s := Sheets(Input{}); len(s) != 0 {
		t.Error("sheets of nothing")
	}
}

func BenchmarkSheets(b *testing.B) {
	in, _ := draw(b, example(b, "hillside-cascade"))
	b.ReportAllocs()
	for b.Loop() {
		if len(Sheets(in)) < 10 {
			b.Fatal("not all sheets")
		}
	}
}
