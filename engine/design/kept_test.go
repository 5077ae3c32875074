package design

import (
	"math"
	"slices"
	"strings"
	"testing"

	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// keptJob is the hillside job with its assembly kept as drawn.
func keptJob(t *testing.T) *job.Job {
	t.Helper()
	book, j := read(t, "hillside-cascade")
	next, faults := KeepDrawn(book, j)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	// What is kept survives the file.
	data, err := job.Encode(next)
	if err != nil {
		t.Fatal(err)
	}
	again, faults := job.Read(data)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return again
}

func keptCodes(r *Result) (out []string) {
	for _, f := range r.Findings {
		if strings.HasPrefix(f.Code, "design.kept.") {
			out = append(out, f.Code)
		}
	}
	return out
}

// TestKeptHolds: what is kept and left alone tells nothing, and neither does an
// entry that is written otherwise, or one that no length stands on.
func TestKeptHolds(t *testing.T) {
	book, _ := read(t, "hillside-cascade")
	j := keptJob(t)
	if len(j.Assembly.Kept.Pieces) == 0 || len(j.Assembly.Kept.Inputs) < 20 || j.Assembly.Kept.Sizes == "" {
		t.Fatalf("%+v", j.Assembly.Kept)
	}
	plain := len(Solve(book, j).Findings)
	for _, c := range [][2]string{
		{"", ""},
		{"/vault/length", "2 ft"},
		{"/pumps/0/attitudes/0/height", "9.5 in"},
		{"/vault/rated", "90 gpm"},
		{"/client", "somebody"},
		{"/assembly/search/noUnion", "true"},
		{"/measured/0/note", "again"},
		{"/pumps/1/attitudes/0/height", "12"},
		{"/vault/depth", "660.4 mm"},
	} {
		k := j.Clone()
		if c[0] != "" {
			if f := k.Set(c[0], c[1]); f != nil {
				t.Fatal(c, f)
			}
		}
		codes := keptCodes(Solve(book, k))
		if len(codes) > 0 {
			t.Errorf("%v: %v", c, codes)
		}
	}
	if r := Solve(book, j); r.NotToCut || len(r.Findings) != plain {
		t.Error("a kept layout that holds is held back")
	}
}

// TestKeptChanges: each change is named with what was and what is, a piece that
// would be cut otherwise is a danger with both lengths, and nothing is then to
// be cut or glued.
func TestKeptChanges(t *testing.T) {
	book, _ := read(t, "hillside-cascade")
	whole := keptJob(t)
	for _, c := range []struct {
		path, text string
		codes      []string // besides that of the change
		what, was  string
	}{
		{"/vault/length", "24-1/2", []string{FindKeptCut}, "vault, length", "24 in"},
		{"/measured/2/toStop", "1-1/4", []string{FindKeptCut}, "measured elbow 90 2, to stop", "1.15 in"},
		{"/assembly/makeUp", "1/16", []string{FindKeptCut}, "assembly, make up", "1/8 in"},
		{"/vault/depth", "16 in", []string{FindKeptFails}, "vault, depth", "26 in"},
		{"/assembly/parts/1/next", "1 in", []string{FindKeptCut, FindKeptFails}, "assembly, part 2, next", "0.35 in"},
		{"/use", "L", []string{FindKeptFails}, "pump M, name", "M"},
	} {
		j := whole.Clone()
		if f := j.Set(c.path, c.text); f != nil {
			t.Fatal(f)
		}
		r := Solve(book, j)
		codes := keptCodes(r)
		for _, want := range append(c.codes, FindKeptChanged) {
			if !slices.Contains(codes, want) {
				t.Errorf("%s %s: no %s among %v", c.path, c.text, want, codes)
			}
		}
		if slices.Contains(codes, FindKeptTables) {
			t.Errorf("%s: the tables did not change", c.path)
		}
		changed := coded(r, FindKeptChanged)
		if c.path != "/use" {
			what, _ := argument(changed[0].Message, "what")
			was, _ := argument(changed[0].Message, "was")
			if what.Text != c.what || was.Text != c.was || len(changed) != 1 {
				t.Errorf("%s: %q was %q, told %d times", c.path, what.Text, was.Text, len(changed))
			}
		}
		for _, f := range coded(r, FindKeptCut) {
			was, _ := argument(f.Message, "was")
			now, _ := argument(f.Message, "now")
			if f.Severity != trace.Danger || !r.NotToCut || len(r.Glue.Steps) > 0 || was.Same(now) {
				t.Errorf("%s: %v, %v to %v, cut %v", c.path, f.Severity, was.Value, now.Value, r.NotToCut)
			}
		}
	}
}

// TestKeptClosing: the closing piece follows the gap measured in place, as the
// card says; without a measure it is held to the card like the others.
func TestKeptClosing(t *testing.T) {
	book, _ := read(t, "hillside-cascade")
	j := keptJob(t)
	pieces := Solve(book, j).Assembly.Pieces
	closing := pieces[slices.IndexFunc(pieces, func(p layout.Piece) bool { return p.Closing })]
	if f := j.Set("/assembly/closing/gap", exactly(closing.FaceGap+unit.Inch/8, unit.US)); f != nil {
		t.Fatal(f)
	}
	r := Solve(book, j)
	if codes := keptCodes(r); len(codes) > 0 {
		t.Errorf("%v", codes)
	}
	for _, p := range r.Assembly.Pieces {
		if p.Mark == closing.Mark && math.Abs(float64(p.Cut-closing.Cut-unit.Inch/8)) > alikeCut {
			t.Errorf("the gap measured is 1/8 in more: cut %v, not %v and that", p.Cut, closing.Cut)
		}
	}
	// A piece more than on the card, and one less.
	j = keptJob(t)
	j.Assembly.Kept.Pieces[0].Mark = "P9"
	codes := keptCodes(Solve(book, j))
	if !slices.Contains(codes, FindKeptMore) || !slices.Contains(codes, FindKeptGone) {
		t.Errorf("%v", codes)
	}
	// The same inputs on other tables.
	j = keptJob(t)
	j.Assembly.Kept.Sizes = "0000000000000000"
	if codes = keptCodes(Solve(book, j)); !slices.Equal(codes, []string{FindKeptTables}) {
		t.Errorf("%v", codes)
	}
	if _, faults := KeepDrawn(book, &job.Job{Units: "us"}); len(faults) == 0 {
		t.Error("nothing laid is kept")
	}
}

// TestKeptMany: many changes are told one by one up to a limit, then counted.
func TestKeptMany(t *testing.T) {
	book, _ := read(t, "hillside-cascade")
	j := keptJob(t)
	for i := range 9 {
		j.Vault.Obstacles = append(j.Vault.Obstacles, job.Obstacle{Name: string(rune('a' + i)), From: xyz(0, 0, 0), To: xyz(0.001, 0.001, 0.001)})
	}
	r := Solve(book, j)
	if n := len(coded(r, FindKeptChanged)); n != mostKept {
		t.Errorf("%d told", n)
	}
	if many := coded(r, FindKeptMany); len(many) != 1 || many[0].Args[0].Value != unit.Of(unit.Ratio(9*7-mostKept), unit.KindCount) {
		t.Errorf("%+v", many)
	}
}

func xyz(x, y, z unit.Length) job.XYZ {
	e := func(v unit.Length) job.Length { return entry(exactly(v, unit.Metric), v) }
	return job.XYZ{X: e(x), Y: e(y), Z: e(z)}
}

// TestKeptDemo: the demo whose layout the search found stands on what it was
// kept with. A change of the tables or of the laying shows here first: the demo
// is then kept anew, and its card with it.
func TestKeptDemo(t *testing.T) {
	book, j := read(t, "terrace-spout")
	r := Solve(book, j)
	if codes := keptCodes(r); len(codes) > 0 || r.NotToCut || len(j.Assembly.Kept.Pieces) == 0 || len(r.Assembly.LiftOut.Moves) != 1 {
		t.Errorf("%v, not to cut %v", codes, r.NotToCut)
	}
}
