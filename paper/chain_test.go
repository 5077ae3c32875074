package paper

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/drawing"
	"plashet/engine/unit"
	"plashet/job"
)

// chainParts is how many parts the long chain has, one piece of pipe fewer.
const chainParts = 399

// longChain is a job whose assembly is a chain of couplings in eight legs to and
// fro on the floor of a vault, as many as go into one: no crew builds it, but the
// job's format takes it, so every sheet must.
func longChain(t testing.TB) *job.Job {
	t.Helper()
	var doc map[string]any
	if err := json.Unmarshal(demo.Job("terrace-spout"), &doc); err != nil {
		t.Fatal(err)
	}
	part := func(fitting, mark, next string, more ...string) map[string]any {
		p := map[string]any{"fitting": fitting, "mark": mark}
		if next != "" {
			p["next"], p["nextBy"] = next, "pipe"
		}
		for i := 0; i+1 < len(more); i += 2 {
			p[more[i]] = more[i+1]
		}
		return p
	}
	first := part("male adapter", "F1", "")
	first["closes"] = true
	parts := []map[string]any{first, part("union", "U1", "3 in"), part("check valve spring", "V1", "3 in")}
	const legs, each = 8, 50
	turns := [2]string{"270 deg", "90 deg"}
	couplings, elbows := 0, 0
	for leg := range legs {
		for len(parts) < each*(leg+1)-2 {
			couplings++
			cut := 2.5 + float64(couplings*7%33)/32
			parts = append(parts, part("coupling", fmt.Sprint("C", couplings), fmt.Sprintf("%.4f in", cut)))
		}
		for range 2 {
			if leg < legs-1 {
				elbows++
				parts = append(parts, part("elbow 90", fmt.Sprint("E", elbows), "6 in", "roll", turns[leg%2]))
			}
		}
	}
	parts[len(parts)-1]["next"] = "16 in"
	parts = append(parts, part("bulkhead fitting", "B1", ""))
	pipe := doc["assembly"].(map[string]any)["pipe"]
	doc["assembly"] = map[string]any{"attitude": "standing", "at": map[string]any{"x": "4 in", "y": "4 in", "z": "0 in"}, "pipe": pipe, "parts": parts}
	vault := doc["vault"].(map[string]any)
	vault["length"], vault["width"], vault["obstacles"] = "206.375 in", "100 in", []any{}
	vault["outlet"] = map[string]any{"wall": "left", "along": "65-15/16 in", "height": "2-1/2 in"}
	data, err := json.Marshal(doc)
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(data)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return j
}

// TestLongChain: an assembly of 400 pieces is laid, cut, glued and printed by the
// engine itself; nothing of it is lost on any sheet, nothing stands on another, and
// it takes seconds of the processor, not minutes: with every step's picture drawn
// whole it took more than ten of those.
func TestLongChain(t *testing.T) {
	begun := processor(t)
	in := input(t, longChain(t), Letter)
	a, g := in.Result.Assembly, in.Result.Glue
	if len(a.Places) != chainParts || len(a.Pieces) != chainParts-1 || in.Result.NotToCut || g == nil || len(g.Joints) < 2*len(a.Pieces) {
		t.Fatalf("%d parts, %d pieces, not to be cut: %v", len(a.Places), len(a.Pieces), in.Result.NotToCut)
	}
	designed := processor(t)
	all := sheetsOf(t, in)
	laid := processor(t)
	t.Logf("%d pieces, %d steps: %.0f ms of processor to design, %.0f ms to lay out", len(a.Pieces), len(g.Steps), designed-begun, laid-designed)
	const most = 60_000 // ms: far above what it takes, far below what it took
	if laid-designed > most {
		t.Errorf("%.0f ms of processor", laid-designed)
	}
	for _, s := range all {
		if s.Name != "glue" { // its 270 pages are held by their steps below: each against each other takes long
			holds(t, "chain", in, s)
		}
		text := "\n" + written(s)
		var want []string
		switch s.Name {
		case "assembly", "cut":
			for i := range a.Pieces {
				want = append(want, "\n"+a.Pieces[i].Mark)
			}
		case "glue":
			for i := range g.Steps {
				want = append(want, "\n"+unit.Of(unit.Ratio(g.Steps[i].Number), unit.KindCount).Format(in.Result.Units)+". ")
			}
		}
		from := 0
		for _, w := range want {
			k := strings.Index(text[from:], w)
			if k < 0 {
				t.Errorf("%s: %q is lost, or out of order", s.Name, w)
				break
			}
			from += k
		}
		for i := range s.Pages[:len(s.Pages)-1] {
			if used := usedOf(&s.Pages[i]); len(s.Pages) > 8 && used < 0.45*(s.Pages[i].Height-top-bottom) {
				t.Errorf("%s page %d of %d ends %.0f mm below its head", s.Name, i+1, len(s.Pages), used)
			}
		}
	}
}

// TestLongChainPrinted: the cut card's PDF, read by another program, has every
// piece with its cut length in one line, and the sticks hold them all.
func TestLongChainPrinted(t *testing.T) {
	pdftotext := tool(t, "pdftotext", "poppler-utils")
	in := input(t, longChain(t), A4)
	lines := map[string]bool{}
	for _, l := range strings.Split(run(t, printed(t, in, "cut"), pdftotext, "-layout", "in.pdf", "-"), "\n") {
		if f := strings.Fields(strings.ReplaceAll(l, "*", "")); len(f) > 1 {
			lines[f[0]+" "+f[1]] = true
			if len(f) > 2 {
				lines[f[0]+" "+f[1]+" "+f[2]] = true
			}
		}
	}
	total := 0.0
	for i := range in.Result.Assembly.Pieces {
		p := &in.Result.Assembly.Pieces[i]
		cut := unit.Of(p.Cut, unit.KindTape).Format(in.Result.Units)
		if !lines[p.Mark+" "+cut] {
			t.Errorf("%s, cut at %s, is not on the card", p.Mark, cut)
		}
		total += float64(p.Cut)
	}
	planned, n := 0.0, 0
	for i := range in.Result.Cutting {
		c := &in.Result.Cutting[i]
		for _, b := range c.Plan.Bars {
			for _, k := range b.Cuts {
				planned += float64(c.Pieces[k.Piece].Length)
				n++
			}
		}
	}
	if n < chainParts-1 || math.Abs(planned-total) > 0.002*float64(n) {
		t.Errorf("the sticks hold %d pieces, %.3f m; the assembly has %.3f m", n, planned, total)
	}
}

// TestLongChainNames: of so many parts the pictures name those by which one finds
// one's way, and a step's picture shows what is in hand with its neighbours only.
func TestLongChainNames(t *testing.T) {
	in := input(t, longChain(t), Letter)
	s, ok := drawing.AssemblyPicture(in.Input, drawing.FrontLeft)
	if !ok {
		t.Fatal("no picture")
	}
	named := map[string]bool{}
	for _, x := range texts(&s) {
		named[x.Text] = true
	}
	for _, m := range []string{"F1", "U1", "V1", "E1", "E14", "B1"} {
		if !named[m] {
			t.Errorf("%s is not named", m)
		}
	}
	if named["C7"] {
		t.Error("a coupling in a row of forty is named")
	}
	for _, s := range drawing.GlueSteps(in.Input) {
		marks := map[string]bool{}
		var groups func([]drawing.Item)
		groups = func(items []drawing.Item) {
			for _, it := range items {
				if g, ok := it.(drawing.Group); ok {
					marks[g.Mark] = true
					groups(g.Items)
				}
			}
		}
		groups(s.Items)
		if strings.Contains(s.Desc, "P200,") || strings.HasSuffix(s.Desc, "P200.") {
			if len(s.Data[0].Rows) < 4 && (!marks["P200"] || len(marks) > 40) {
				t.Errorf("%s: P200 drawn %v among %d marks: %s", s.Name, marks["P200"], len(marks), s.Desc)
			}
		}
	}
}
