package paper

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"plashet/demo"
	"plashet/drawing"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/offer"
	"plashet/render/pdf"
	"plashet/words"
)

var stamp = Stamp{Revision: 3, Digest: strings.Repeat("0123456789abcdef", 4), Date: "2026-11-28"}

// solved keeps what was worked out for a job: sheets change nothing of it.
var solved = map[string]struct {
	result *design.Result
	offer  offer.Document
	curves design.Curves
}{}

// input designs a job for its sheets.
func input(t testing.TB, j *job.Job, p Paper) Input {
	t.Helper()
	return inputOf(t, j, p, nil)
}

// inputOf likewise, of a job that could not be read in all.
func inputOf(t testing.TB, j *job.Job, p Paper, unread []trace.Fault) Input {
	t.Helper()
	data, err := job.Encode(j)
	if err != nil {
		t.Fatal(err)
	}
	key := fmt.Sprint(string(data), unread)
	s, done := solved[key]
	if !done {
		book, err := catalog.New()
		if err != nil {
			t.Fatal(err)
		}
		s.result = design.Solve(book, j, unread...)
		s.offer = offer.Of(book, j, unread...)
		s.curves = design.CurvesOf(book, j, s.result, 121)
		solved[key] = s
	}
	return Input{
		Input: drawing.Input{Job: j, Result: s.result, Curves: s.curves, Say: words.English()},
		Offer: &s.offer, Unread: unread, Paper: p, Stamp: stamp,
	}
}

func example(t testing.TB, name string) *job.Job {
	t.Helper()
	j, faults := job.Read(demo.Job(name))
	if len(faults) > 0 {
		t.Fatalf("%s: %v", name, faults)
	}
	return j
}

func sheetsOf(t testing.TB, in Input, names ...string) []Sheet {
	t.Helper()
	all, err := Make(in, names...)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func texts(s *drawing.Sheet) []drawing.Text {
	var out []drawing.Text
	s.Each(func(it drawing.Item) {
		if x, ok := it.(drawing.Text); ok {
			out = append(out, x)
		}
	})
	return out
}

// holds checks what every page promises: its size, letters that can be read, in
// the margins and not on each other, job, date, revision, state, page n of m, a
// code.
func holds(t *testing.T, what string, in Input, s Sheet) {
	t.Helper()
	wide, tall := in.Paper.Size()
	if len(s.Pages) == 0 || s.Title == "" {
		t.Fatalf("%s %s: no page", what, s.Name)
	}
	for n := range s.Pages {
		p := &s.Pages[n]
		where := fmt.Sprintf("%s %s page %d", what, s.Name, n+1)
		if p.Width != wide || p.Height != tall {
			t.Errorf("%s: %g by %g", where, p.Width, p.Height)
		}
		all := texts(p)
		whole := ""
		for i, a := range all {
			whole += a.Text + "\n"
			if a.Size < 2.82 || // 8 points
				a.Ink != drawing.Black || a.Text == "" {
				t.Errorf("%s: %+v cannot be read", where, a)
			}
			if a.At.Y > tall-bottom && strings.HasSuffix(a.Text, "…") {
				t.Errorf("%s: the foot is cut short: %q", where, a.Text)
			}
			for _, c := range a.Corners() {
				if c.X < holes-0.6 || c.Y < 5 || c.X > wide-5 || c.Y > tall-5 {
					t.Errorf("%s: %q runs into a margin at %.1f, %.1f", where, a.Text, c.X, c.Y)
					break
				}
			}
			for _, b := range all[:i] {
				if drawing.Overlap(a, b) {
					t.Errorf("%s: %q and %q stand on each other", where, a.Text, b.Text)
				}
			}
		}
		for _, want := range []string{s.Title, "revision 3", "printed 2026-11-28", "state 0123456789abcdef", fmt.Sprintf("page %d of %d", n+1, len(s.Pages)), " in force"} {
			if !strings.Contains(whole, want) {
				t.Errorf("%s: %q is not on it", where, want)
			}
		}
		code := false
		p.Each(func(it drawing.Item) {
			if q, ok := it.(drawing.Polygon); ok && q.Fill == drawing.Black && q.Points[0].X > wide-side-codeWide-0.1 && q.Points[0].Y < 8.5+codeWide {
				code = true
			}
		})
		if !code {
			t.Errorf("%s has no code", where)
		}
	}
}

func TestExamples(t *testing.T) {
	for _, name := range demo.Names() {
		for _, p := range []Paper{Letter, A4} {
			in := input(t, example(t, name), p)
			all := sheetsOf(t, in)
			want := len(Names())
			if in.Job.Offer.Agreed.Total.IsZero() {
				want-- // nothing was agreed that could be changed
			}
			if len(all) != want {
				t.Fatalf("%s: %d sheets", name, len(all))
			}
			for _, s := range all {
				holds(t, name, in, s)
			}
		}
	}
}

func TestNames(t *testing.T) {
	in := input(t, example(t, "hillside-cascade"), Letter)
	if got := sheetsOf(t, in, "glue", "cut"); len(got) != 2 || got[0].Name != "cut" || got[1].Name != "glue" {
		t.Errorf("%d sheets, not cut and glue", len(got))
	}
	if _, err := Make(in, "cut", "quilt"); !errors.Is(err, ErrNoSheet) {
		t.Error(err)
	}
}

// TestHard: sheets stay whole, whatever a job holds or lacks.
func TestHard(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*job.Job)
	}{
		{"nothing", func(j *job.Job) { *j = job.Job{Units: "us"} }},
		{"long name", func(j *job.Job) {
			j.Name, j.Client, j.Place, j.Note = strings.Repeat("W", 5000), strings.Repeat("i", 5000), strings.Repeat("pond ", 1000), strings.Repeat("n", 5000)
		}},
		{"other letters", func(j *job.Job) {
			j.Name, j.Client, j.Place = "מים 😀 Пруд", "الماء", "水\u202e庭"
			j.Pumps[0].Name, j.Use = "П 😀 סגור", "П 😀 סגור"
		}},
		{"long offer", func(j *job.Job) {
			long := strings.Repeat("مים 😀 stone ", 300)
			j.ClientNote = long
			j.Offer.Terms = append(j.Offer.Terms, job.Clause{Text: long})
			j.Offer.Labour[0].Scope, j.Offer.Options[0].Name, j.Offer.Stages[0].Name, j.Offer.Taxes[0].Name = long, strings.Repeat("W", 5000), long, strings.Repeat("T", 5000)
			j.Offer.Labour[1].Rate.Text = "999999999999"
		}},
		{"no assembly", func(j *job.Job) { j.Assembly = job.Assembly{} }},
		{"no pond", func(j *job.Job) { j.Pond = job.Pond{} }},
		{"no pumps", func(j *job.Job) { j.Pumps = nil }},
		{"only a vault", func(j *job.Job) { j.Runs, j.Watercourses, j.Stock = nil, nil, job.Stock{} }},
		{"long marks", func(j *job.Job) {
			for i := range j.Assembly.Parts {
				j.Assembly.Parts[i].Mark = strings.Repeat("M", 30) + fmt.Sprint(i)
			}
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := example(t, "hillside-cascade")
			c.spoil(j)
			in := input(t, j, Letter)
			for _, s := range append(sheetsOf(t, in), one(t, in, "change")) {
				holds(t, c.name, in, s)
				var b bytes.Buffer
				if err := pdf.Write(&b, s.Pages, pdf.Info{Title: j.Name, Date: time.Unix(0, 0)}); err != nil {
					t.Errorf("%s: %v", s.Name, err)
				}
			}
		})
	}
}

// TestLacking: what the letters lack is listed by its number.
func TestLacking(t *testing.T) {
	j := example(t, "hillside-cascade")
	j.Name = "水 pond 😀"
	for _, s := range sheetsOf(t, input(t, j, A4)) {
		said := ""
		for i := range s.Pages {
			for _, x := range texts(&s.Pages[i]) {
				said += x.Text + " "
			}
		}
		if !strings.Contains(said, "U+6C34") || !strings.Contains(said, "U+1F600") {
			t.Errorf("%s does not list what it cannot show", s.Name)
		}
	}
}

// TestManyPieces: 400 pieces are all on the cut card, with their lengths, and
// each in a drawing of its stick.
func TestManyPieces(t *testing.T) {
	j := example(t, "hillside-cascade")
	j.Stock.Pieces = nil
	for i := range 400 {
		l := unit.Length(i%37+5) * unit.Inch
		j.Stock.Pieces = append(j.Stock.Pieces, job.Piece{Mark: fmt.Sprintf("X%d", i+1), Pipe: j.Assembly.Pipe, Length: job.Length{Text: fmt.Sprint(i%37 + 5), SI: l}})
	}
	in := input(t, j, Letter)
	s := sheetsOf(t, in, "cut")[0]
	holds(t, "400 pieces", in, s)
	listed, drawn := map[string]bool{}, map[string]bool{}
	for i := range s.Pages {
		for _, x := range texts(&s.Pages[i]) {
			listed[x.Text] = true
		}
		var groups func([]drawing.Item)
		groups = func(items []drawing.Item) {
			for _, it := range items {
				if g, ok := it.(drawing.Group); ok {
					drawn[g.Mark] = true
					groups(g.Items)
				}
			}
		}
		groups(s.Pages[i].Items)
	}
	for i := range 400 {
		m := fmt.Sprintf("X%d", i+1)
		if !listed[m] || !drawn[m] {
			t.Errorf("%s: listed %v, drawn %v", m, listed[m], drawn[m])
		}
	}
}

// TestSticksAgree: every piece of the cutting plan stands by its number of stick.
func TestSticksAgree(t *testing.T) {
	n := 0
	for _, name := range demo.Names() {
		in := input(t, example(t, name), Letter)
		f := newFlow(&in, nil, "cut", setting{loose: 1})
		for i := range in.Result.Cutting {
			c := &in.Result.Cutting[i]
			for k, b := range c.Plan.Bars {
				for _, p := range b.Cuts {
					n++
					if got := f.fromStick(c.Pieces[p.Piece].Mark); !slices.ContainsFunc(strings.Split(got, ", "), func(s string) bool { return strings.Fields(s)[0] == fmt.Sprint(k+1) }) {
						t.Errorf("%s: piece %s is cut from bar %d, the card says %q", name, c.Pieces[p.Piece].Mark, k+1, got)
					}
				}
			}
		}
	}
	if n < 10 {
		t.Fatalf("only %d pieces", n)
	}
}

func TestWrapAndFit(t *testing.T) {
	for _, s := range []string{"", "one two three", strings.Repeat("W", 300), "水水水水水水水水 a"} {
		for _, l := range append(wrap(s, body, true, 40), fit(s, body, true, 40)) {
			if w := width(l, body, true); w > 40+1e-9 {
				t.Errorf("%q is %g wide", l, w)
			}
		}
		if got := strings.Join(wrap(s, body, false, 40), ""); strings.ReplaceAll(got, " ", "") != strings.ReplaceAll(s, " ", "") {
			t.Errorf("%q became %q", s, got)
		}
	}
}

func TestCode(t *testing.T) {
	for _, c := range []struct {
		s    Stamp
		name string
		want Code
	}{
		{Stamp{Revision: 3, Digest: "0123456789abcdefff"}, "Pond & fall", Code{Job: "Pond & fall", Revision: 3, Digest: "0123456789abcdef"}},
		{Stamp{Digest: "ab12cd34", ID: "k7"}, "Пруд", Code{ID: "k7", Job: "Пруд", Digest: "ab12cd34"}},
		{Stamp{Revision: 7, Digest: "cd00cd00", URL: "https://ponds.example/jobs/7?x=1"}, "Pond", Code{ID: "7", Revision: 7, Digest: "cd00cd00"}},
	} {
		got, ok := ReadCode(c.s.text(c.name))
		if !ok || got != c.want {
			t.Errorf("%q: %+v, %v", c.s.text(c.name), got, ok)
		}
	}
	for _, s := range []string{"", "https://elsewhere.example", "plashet:job?r=x&d=1", "plashet:job?r=-1&d=1", "?%zz", "a?d=1", "plashet:job?r=1&d=xyz", "plashet:job?r=1&d=ab", "0123456", "0123456g", strings.Repeat("a", 5000), "plashet:job?r=99999999999&d=01234567"} {
		if c, ok := ReadCode(s); ok {
			t.Errorf("%q was read as %+v", s, c)
		}
	}
	for _, s := range []string{"DF28 1675 b3f9-154b", " df281675b3f9154b "} { // as it is typed off the foot of a page
		if c, ok := ReadCode(s); !ok || c != (Code{Digest: "df281675b3f9154b"}) {
			t.Errorf("%q: %+v, %v", s, c, ok)
		}
	}
}

// TestStrips: a strip is as long as the pipe is round, and the elbow's line
// stands where the answer tapes it, to half the step of a tape.
func TestStrips(t *testing.T) {
	n := 0
	for _, name := range demo.Names() {
		for _, p := range []Paper{Letter, A4} {
			in := input(t, example(t, name), p)
			a := in.Result.Assembly
			for i := range a.Rolls {
				r := &a.Rolls[i]
				od := odOf(a, r)
				if od == 0 {
					continue
				}
				n++
				round, line := measureStrip(sheetsOf(t, in, "rolls")[0], r.Mark)
				if math.Abs(round-math.Pi*float64(od)*1000) > 0.01 {
					t.Errorf("%s %s: the strip is %.2f mm long, the pipe %.2f round", name, r.Mark, round, math.Pi*float64(od)*1000)
				}
				if math.Abs(line-float64(r.Arc)*1000) > 25.4/32+0.01 {
					t.Errorf("%s %s: the line stands at %.2f mm, the answer tapes %.2f", name, r.Mark, line, float64(r.Arc)*1000)
				}
			}
		}
	}
	if n == 0 {
		t.Fatal("no elbow has a strip")
	}
}

// measureStrip reads the whole length and the place of the heavy line.
func measureStrip(s Sheet, mark string) (round, line float64) {
	line = -1
	for i := range s.Pages {
		for _, it := range s.Pages[i].Items {
			g, ok := it.(drawing.Group)
			if !ok || g.Mark != mark {
				continue
			}
			frame := g.Items[0].(drawing.Polygon)
			left := frame.Points[0].X + frame.Pen.Wide/2
			for _, x := range g.Items[1:] {
				if l := x.(drawing.Line); l.Pen == heavy {
					line = round + l.From.X - left
				}
			}
			round += frame.Points[1].X - frame.Pen.Wide/2 - left
		}
	}
	return round, line
}

// processor gives the processor time used so far, ms: on a machine that is shared
// it tells more than the clock.
func processor(b testing.TB) float64 {
	b.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e6
}

func BenchmarkAllSheets(b *testing.B) {
	in := input(b, example(b, "hillside-cascade"), Letter)
	b.ReportAllocs()
	size, begun := 0, processor(b)
	for b.Loop() {
		size = 0
		for _, s := range sheetsOf(b, in) {
			var out bytes.Buffer
			if err := pdf.Write(&out, s.Pages, pdf.Info{}); err != nil {
				b.Fatal(err)
			}
			size += out.Len()
		}
	}
	b.ReportMetric((processor(b)-begun)/float64(b.N), "cpu-ms/op")
	b.ReportMetric(float64(size), "bytes")
}

func BenchmarkSheet(b *testing.B) {
	in := input(b, example(b, "hillside-cascade"), Letter)
	for _, n := range Names() {
		b.Run(n, func(b *testing.B) {
			size, begun := 0, processor(b)
			for b.Loop() {
				var out bytes.Buffer
				if err := pdf.Write(&out, sheetsOf(b, in, n)[0].Pages, pdf.Info{}); err != nil {
					b.Fatal(err)
				}
				size = out.Len()
			}
			b.ReportMetric((processor(b)-begun)/float64(b.N), "cpu-ms/op")
			b.ReportMetric(float64(size), "bytes")
		})
	}
}
