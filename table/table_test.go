package table

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"plashet/answer"
	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/words"
)

// answered is an example job with its answer as values.
func answered(t *testing.T, name string) (Input, answer.Document) {
	t.Helper()
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(demo.Job(name))
	r := design.Solve(book, j, faults...)
	return Input{Job: j, Result: r, Faults: faults, Say: words.English(), Digest: "d"}, answer.Build(r, faults, words.English())
}

// holder holds cells against quantities of the answer.
type holder struct {
	t    *testing.T
	in   Input
	now  Table
	held int
}

func (h *holder) make(name string) {
	h.now, _ = Make(h.in, name)
	for i, row := range h.now.Rows {
		if len(row) != len(h.now.Head) {
			h.t.Errorf("%s row %d has %d cells under %d heads", name, i, len(row), len(h.now.Head))
		}
	}
}

// number holds a cell against a quantity: read back to SI by the package that
// reads what people type, it is the quantity.
func (h *holder) number(row, col int, q answer.Quantity, k unit.Kind) {
	h.t.Helper()
	c := h.now.Rows[row][col]
	if q.Text == "" {
		if c.Is {
			h.t.Errorf("%s row %d, %q: %v, and the answer has nothing", h.now.Name, row, h.now.Head[col], c.Number)
		}
		return
	}
	h.held++
	si := c.Number
	if k != unit.KindCount {
		plain := unit.US // spelt with a point here, whatever mark the job says
		if h.in.Result.Units.Is(unit.Metric) {
			plain = unit.Metric
		}
		typed := strconv.FormatFloat(c.Number, 'f', -1, 64) + " " + k.UnitName(plain)
		v, err := unit.Parse(typed, k, plain)
		if err != nil {
			h.t.Fatal(typed, err)
		}
		si = v.SI
	}
	if !c.Is || math.Abs(si-q.SI) > 1e-9*math.Max(1e-3, math.Abs(q.SI)) {
		h.t.Errorf("%s row %d, %q: %v is %v in SI, the answer says %v (%s)", h.now.Name, row, h.now.Head[col], c.Number, si, q.SI, q.Text)
	}
}

func (h *holder) text(row, col int, want string) {
	h.t.Helper()
	h.held++
	if got := h.now.Rows[row][col].Text; got != want {
		h.t.Errorf("%s row %d, %q: %q, the answer says %q", h.now.Name, row, h.now.Head[col], got, want)
	}
}

func (h *holder) rows(n int) {
	h.t.Helper()
	if len(h.now.Rows) != n {
		h.t.Fatalf("%s has %d rows, the answer %d", h.now.Name, len(h.now.Rows), n)
	}
}

// Every table says what the answer's JSON says, value by value; that is made
// by other code (package answer).
func TestTablesSayWhatTheAnswerSays(t *testing.T) {
	held := 0
	for _, name := range demo.Names() {
		in, doc := answered(t, name)
		h := &holder{t: t, in: in}
		h.make(Materials)
		h.rows(len(doc.Materials))
		for i, m := range doc.Materials {
			item := in.Result.Materials[i]
			h.text(i, 0, m.Text)
			h.number(i, 1, m.Low, item.Buy.Kind)
			h.number(i, 2, m.High, item.Buy.Kind)
			if m.Total != nil {
				for k, want := range []answer.Money{m.Total.Low, m.Total.High} {
					if got := strconv.FormatFloat(h.now.Rows[i][9+k].Number, 'f', 2, 64); got != fixed(t, want.Amount) {
						t.Errorf("%s %s: sum %s, the answer says %s", name, m.ID, got, want.Amount)
					}
				}
				h.text(i, 11, m.Total.Low.Currency)
			}
			h.text(i, 14, m.ID)
		}
		h.cuts(&doc)
		h.levels(&doc)
		h.make(Basis)
		for _, want := range sentences(&doc) {
			found := false
			for _, row := range h.now.Rows {
				found = found || strings.HasPrefix(row[1].Text, want)
			}
			if !found {
				t.Errorf("%s: the basis does not tell %q", name, want)
			}
		}
		held += h.held
	}
	if held < 1000 {
		t.Errorf("only %d cells were held against the answer", held)
	}
	t.Logf("%d cells held against the answer", held)
}

func fixed(t *testing.T, amount string) string {
	t.Helper()
	f, err := strconv.ParseFloat(amount, 64)
	if err != nil {
		t.Fatal(err)
	}
	return strconv.FormatFloat(f, 'f', 2, 64)
}

func (h *holder) cuts(doc *answer.Document) {
	h.make(Cuts)
	row := 0
	pieces := map[string]answer.Piece{}
	for _, p := range doc.Pieces {
		pieces[p.Mark] = p
	}
	for _, c := range doc.Cutting {
		for k, b := range c.Bars {
			for _, x := range b.Cuts {
				h.text(row, 0, x.Mark)
				h.number(row, 2, x.Length, unit.KindTape)
				h.text(row, 3, x.Length.Text)
				if n := h.now.Rows[row][4].Number; int(n) != k+1 {
					h.t.Errorf("%s is cut from stick %v, the answer says %d", x.Mark, n, k+1)
				}
				if p, ok := pieces[x.Mark]; ok {
					h.text(row, 6, p.From)
					h.number(row, 7, p.Marks[0], unit.KindTape)
					h.text(row, 8, p.To)
					h.number(row, 9, p.Marks[1], unit.KindTape)
					if p.Stub != nil {
						h.number(row, 12, *p.Stub, unit.KindTape)
					}
				}
				delete(pieces, x.Mark)
				row++
			}
		}
	}
	h.rows(row + len(pieces))
	h.make(Sticks)
	row = 0
	for _, c := range doc.Cutting {
		for _, b := range c.Bars {
			h.number(row, 3, b.Length, unit.KindTape)
			h.number(row, 5, b.Remnant, unit.KindTape)
			row++
		}
	}
	h.rows(row)
}

func (h *holder) levels(doc *answer.Document) {
	h.make(Levels)
	h.rows(len(doc.Levels))
	for i, s := range doc.Levels {
		h.number(i, 2, s.Pond, unit.KindElevation)
		h.number(i, 3, s.Vault, unit.KindElevation)
		for k, q := range []answer.Quantity{s.Change, s.Freeboard, s.OverSill, s.NeedsSill, s.OverPump, s.NeedsPump} {
			h.number(i, 4+k, q, unit.KindDepth)
		}
	}
	h.make(Times)
	row := 0
	for _, c := range doc.Motion {
		for _, s := range c.Series {
			for k, q := range []float64{s.At, s.Pond, s.Vault, s.Drawn, s.Back, s.Returns, s.Stored, s.Over} {
				kind := []unit.Kind{unit.KindNone, unit.KindElevation, unit.KindElevation, unit.KindFlow, unit.KindFlow, unit.KindFlow, unit.KindWater, unit.KindWater}[k]
				if kind == unit.KindNone {
					if got := h.now.Rows[row][1].Number; math.Abs(got-q) > 1e-9*math.Max(1, q) {
						h.t.Errorf("time %v, the answer says %v", got, q)
					}
					continue
				}
				h.number(row, 1+k, answer.Quantity{SI: q, Text: "told"}, kind)
			}
			row++
		}
	}
	h.rows(row)
}

// sentences are all that the answer tells of faults, findings and assumptions.
func sentences(doc *answer.Document) []string {
	var out []string
	for _, f := range doc.Faults {
		out = append(out, f.Text)
	}
	for _, f := range doc.Findings {
		out = append(out, f.Text)
	}
	for _, a := range doc.Assumptions {
		out = append(out, a.Text)
	}
	return out
}

// An assembly that cannot be built says so on every line that could be cut.
func TestNotToCutStandsOnEveryLine(t *testing.T) {
	in, _ := answered(t, demo.Names()[1])
	in.Result.NotToCut = true
	for i := range in.Result.Cutting {
		in.Result.Cutting[i].NotToCut = true
	}
	for _, name := range []string{Cuts, Sticks} {
		x, _ := Make(in, name)
		if len(x.Rows) == 0 {
			t.Fatal("nothing to cut in the example")
		}
		for i, row := range x.Rows {
			if !strings.HasPrefix(row[len(row)-1].Text, "NOT TO BE CUT") {
				t.Errorf("%s row %d does not say that it is not to be cut", name, i)
			}
		}
	}
}

func TestNumbersThatAreNone(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if number(x).Is {
			t.Error(x)
		}
	}
	if c := number(0.05715 / 0.0254); c.Number != 2.25 {
		t.Error("dust is left", c.Number)
	}
	m := &maker{Input: Input{Result: &design.Result{}}}
	if m.value(unit.Bounded(unit.Length(1), unit.KindTape, unit.MoreThan)).Is {
		t.Error("a bound stands as a figure")
	}
}
