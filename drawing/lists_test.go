package drawing

import (
	"slices"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/design"
	"plashet/engine/layout"
)

// TestRollList: each elbow has its line, with where its roll counts from and
// both ways round in words; no way round is told by a sign. A level swing valve
// needs its cover on top.
func TestRollList(t *testing.T) {
	rolls, covers := 0, 0
	for _, name := range demo.Names() {
		in, all := draw(t, example(t, name))
		s := sheet(t, all, "assembly-front-left")
		list := lines(s)
		for _, r := range in.Result.Assembly.Rolls {
			rolls++
			zero := "the top"
			if r.Upright {
				zero = "back wall"
			}
			want := []string{r.Mark, zero}
			found := false
			for _, l := range list {
				if len(l) < 4 || l[0] != want[0] || l[1] != want[1] || !strings.HasSuffix(l[2], "°") {
					continue
				}
				p := page{in: in}
				if r.Arc == 0 {
					found = len(l) == 4 && l[3] == "on the line"
				} else {
					found = len(l) == 5 && l[3] == p.tape(r.Arc) && l[4] == p.tape(r.Other)
				}
			}
			if !found {
				t.Errorf("%s: the roll of %s is not told as %v and both ways round", name, r.Mark, want)
			}
		}
		for _, p := range in.Result.Assembly.Pieces {
			for k, mark := range [2]string{p.From, p.To} {
				word := "table"
				if p.Ends[k].By == layout.ByHand {
					word = "measured"
				}
				if !slices.ContainsFunc(list, func(l []string) bool { return len(l) == 3 && l[0] == mark && strings.Contains(l[2], word) }) {
					t.Errorf("%s: the socket of %s that takes %s is not told to be by %s", name, mark, p.Mark, word)
				}
			}
		}
		told := 0
		for _, l := range list {
			for _, cell := range l {
				if strings.Contains(cell, "cover on top") {
					told++
				}
				if strings.Contains(cell, " or −") {
					t.Errorf("%s: %q", name, cell)
				}
			}
		}
		for _, p := range in.Result.Assembly.Places {
			if p.CoverUp {
				covers++
				told--
			}
		}
		if told != 0 {
			t.Errorf("%s: %d more covers told than there are", name, told)
		}
	}
	if rolls == 0 || covers == 0 {
		t.Errorf("%d rolls and %d covers were seen", rolls, covers)
	}
}

// TestLongMarks: where a mark or a fitting's name is too long for its column it
// is the mark that is cut, never a figure.
func TestLongMarks(t *testing.T) {
	cut := 0
	for _, name := range demo.Names() {
		j := example(t, name)
		for i := range j.Assembly.Parts {
			j.Assembly.Parts[i].Mark = "UNION-LONG-MARK-" + strings.Repeat("W", 3*i) + "-0" + string(rune('1'+i))
		}
		in, all := draw(t, j)
		p := page{in: in}
		s := sheet(t, all, "assembly-front-left")
		have := map[string]bool{}
		for _, x := range texts(s) {
			have[x.Text] = true
			if strings.HasSuffix(x.Text, "…") {
				cut++
				if strings.ContainsAny(x.Text[:1], "0123456789−") {
					t.Errorf("%s: the figure %q is cut", name, x.Text)
				}
			}
		}
		for _, c := range in.Result.Assembly.Pieces {
			for _, want := range []string{p.tape(c.Cut), p.tape(c.Ends[0].Mark), p.tape(c.Ends[1].Mark)} {
				if !have[want] {
					t.Errorf("%s: %s of %s is not whole", name, want, c.Mark)
				}
			}
		}
		for _, r := range in.Result.Assembly.Rolls {
			if r.Arc > 0 && (!have[p.tape(r.Arc)] || !have[p.tape(r.Other)]) {
				t.Errorf("%s: the roll of %s is not whole", name, r.Mark)
			}
		}
	}
	if cut == 0 {
		t.Error("no mark was too long: the test tries nothing")
	}
}

// TestStruckWords: no word of the ladder of levels is struck through by the
// level line of a limit.
func TestStruckWords(t *testing.T) {
	words := 0
	for _, name := range demo.Names() {
		_, all := draw(t, example(t, name))
		s := sheet(t, all, "levels")
		for _, x := range texts(s) {
			if x.Text != (&Input{Result: &design.Result{}}).say("levels.starved") {
				continue
			}
			words++
			c := x.Corners()
			s.Each(func(it Item) {
				if l, ok := it.(Line); ok && l.From.Y == l.To.Y && l.Pen.Wide >= 0.4 && onChain(c[:], []Point{l.From, l.To}) {
					t.Errorf("%s: a line strikes %q", name, x.Text)
				}
			})
		}
	}
	if words == 0 {
		t.Error("nothing starves: the test tries nothing")
	}
}

// TestPumpEdges: no text of the marks stands on a seen edge of the pump.
func TestPumpEdges(t *testing.T) {
	for _, name := range demo.Names() {
		_, all := draw(t, example(t, name))
		for i := range all {
			s := &all[i]
			if !strings.HasPrefix(s.Name, "assembly-") {
				continue
			}
			var edges []patch
			for _, it := range group(t, s.Items, "pump") {
				if p, ok := it.(Polygon); ok {
					edges = append(edges, patchOf(append(p.Points, p.Points[0])...))
				}
			}
			for _, it := range group(t, s.Items, "marks") {
				x, ok := it.(Text)
				if !ok {
					continue
				}
				c := x.Corners()
				for _, e := range edges {
					if onChain(c[:], e.points) {
						t.Errorf("%s %s: %q stands on an edge of the pump", name, s.Name, x.Text)
					}
				}
			}
		}
	}
}
