package answer

import (
	"math"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/words"
)

func solved(t *testing.T, change func(*job.Job)) *design.Result {
	t.Helper()
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(demo.Job("hillside-cascade"))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if change != nil {
		change(j)
	}
	return design.Solve(book, j)
}

// TestSockets: how the depth of each socket is known stands with its piece, and
// changes once the fitting is not measured.
func TestSockets(t *testing.T) {
	for _, c := range []struct {
		change func(*job.Job)
		known  string
		word   string
	}{
		{nil, "measured", "(measured)"},
		{func(j *job.Job) { j.Measured = nil }, "memory", "(table, from memory)"},
	} {
		r := solved(t, c.change)
		text, d := printed(t, r)
		if len(d.Pieces) == 0 {
			t.Fatal("no pieces")
		}
		for _, p := range d.Pieces {
			if p.To == "B1" {
				continue // the bulkhead's is measured in both or neither
			}
			for _, s := range p.Sockets {
				if s.Known != c.known || s.Source.Title == "" || s.Depth.SI <= 0 {
					t.Errorf("%s: %+v, want %s", p.Mark, s, c.known)
				}
			}
		}
		if !strings.Contains(text, c.word) {
			t.Errorf("%s is not printed", c.word)
		}
	}
}

// TestStands holds the places, errors and ways of the JSON against each other:
// spacing along the axis from part to part is the pieces' with their stops, the
// chain's last stop is the hole's, the play is what the vault leaves.
func TestStands(t *testing.T) {
	text, d := printed(t, solved(t, nil))
	a := d.Assembly
	if a == nil || len(a.Parts) != 5 {
		t.Fatalf("%+v", a)
	}
	at := map[string]Part{}
	for _, p := range a.Parts {
		at[p.Mark] = p
		if p.CoverUp != (p.Mark == "V1") {
			t.Errorf("%s: cover on top %v", p.Mark, p.CoverUp)
		}
	}
	for _, p := range d.Pieces {
		from, to := at[p.From].Outlet, at[p.To].Inlet
		stops := math.Hypot(math.Hypot(to.X.SI-from.X.SI, to.Y.SI-from.Y.SI), to.Z.SI-from.Z.SI)
		want := 0.0
		for k := range p.Sockets {
			want += p.Sockets[k].Depth.SI - p.Marks[k].SI
		}
		if gaps := stops - p.Cut.SI; math.Abs(gaps-want) > float64(unit.Inch)/32+1e-9 {
			t.Errorf("%s: cut %g between stops %g apart, gaps %g", p.Mark, p.Cut.SI, stops, want)
		}
		if (p.Stub == nil) != p.Closing {
			t.Errorf("%s: stub %v", p.Mark, p.Stub)
		}
	}
	if a.Play == nil || a.Play.Left.SI <= 0 || !a.WayOut.Possible || len(a.WayOut.Moves) != 2 || a.WayOut.Moves[1].Way != [3]float64{0, 0, 1} {
		t.Errorf("play %+v, way out %+v", a.Play, a.WayOut)
	}
	if w := a.Water; w.Order != "unionFirst" || w.Standing == nil || w.Released == nil || w.Released.SI <= 0 || w.Returns != nil {
		t.Errorf("water %+v", w)
	}
	if a.Likely.X.SI <= 0 || a.Worst.X.SI < a.Likely.X.SI || a.Closing.SI <= 0 || len(a.Shorter) != 1 || a.Shorter[0].Piece != "P4" {
		t.Errorf("errors %+v %+v, spare %+v", a.Likely, a.Worst, a.Shorter)
	}
	for _, want := range []string{
		"stub for the dry fit in place of P1: 1\"\n", "cover on top\n", "as drawn the chain's end misses the hole by 0\"",
		"closing piece P4 can be cut shorter by 2-1/2\"", "the pump can be moved 4-1/4\" to the left",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not printed", want)
		}
	}
	text, d = printed(t, solved(t, func(j *job.Job) { j.Assembly.At.X = job.Length{Text: "-2 in", SI: -2 * unit.Inch} }))
	if d.Assembly.Play != nil || !strings.Contains(text, "the pump stands in something") {
		t.Errorf("a pump that stands in a wall has play: %+v", d.Assembly.Play)
	}
}

// TestBothManuals: set and cure of both manuals stand beside what is in force,
// the slower: 2 in at 59 F, manual A 2 h and 4 h, B 10 and 45 min (reference
// solventweld.csv, 40-60 F, to 180 psi).
func TestBothManuals(t *testing.T) {
	text, d := printed(t, solved(t, nil))
	if len(d.GlueTimes) != 1 {
		t.Fatalf("%+v", d.GlueTimes)
	}
	g := d.GlueTimes[0]
	if len(g.Sets) != 2 || g.Sets[0].Time.Text != "2 h" || g.Sets[1].Time.Text != "10 min" || g.Set.Text != "2 h" || g.Hold.Text != "3 min" ||
		len(g.Cures) != 2 || g.Cures[0].Time.Text != "4 h" || g.Cures[1].Time.Text != "45 min" || g.Cure.Text != "4 h" {
		t.Errorf("%+v", g)
	}
	for _, want := range []string{"set by manual A 2 h, manual B 10 min, dry; in force, the slower: 2 h", "cure by manual A 4 h, manual B 45 min, dry; in force, the slower: 4 h", "the can's label decides"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not printed", want)
		}
	}
	text, d = printed(t, solved(t, func(j *job.Job) { j.Site.Damp = true }))
	if d.GlueTimes[0].Set.Text != "3 h" || !strings.Contains(text, "the slower and longer because it is damp: 3 h") {
		t.Errorf("damp: %+v", d.GlueTimes[0].Set)
	}
}

// TestPlanNamesItsMethod: the printed cutting plan says how it was found.
func TestPlanNamesItsMethod(t *testing.T) {
	text, d := printed(t, solved(t, nil))
	if !strings.Contains(text, "\nexact search, bounded by Gilmore and Gomory") || !strings.Contains(d.Cutting[0].Method, "Gilmore and Gomory") {
		t.Errorf("%+v", d.Cutting[0].Method)
	}
}

// A closing piece is to be measured in place until its gap is given; then it is
// cut like any other.
func TestClosingUntilMeasured(t *testing.T) {
	doc := string(demo.Job("hillside-cascade"))
	head := `"assembly": {`
	for _, c := range []struct {
		with    string
		closing bool
	}{{head, true}, {head + `"closing": {"gap": "2-1/2"},`, false}} {
		j, _ := job.Read([]byte(strings.Replace(doc, head, c.with, 1)))
		book, err := catalog.New()
		if err != nil {
			t.Fatal(err)
		}
		d := Build(design.Solve(book, j), nil, words.English())
		if n := len(d.Pieces); n == 0 || d.Pieces[n-1].Closing != c.closing {
			t.Errorf("with %s: %+v", c.with, d.Pieces)
		}
	}
}
