package answer

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/words"
)

func printed(t *testing.T, r *design.Result) (string, Document) {
	t.Helper()
	var text, data bytes.Buffer
	if err := Text(&text, r, nil, words.English()); err != nil {
		t.Fatal(err)
	}
	if err := JSON(&data, r, nil, words.English()); err != nil {
		t.Fatal(err)
	}
	var d Document
	if err := json.Unmarshal(data.Bytes(), &d); err != nil {
		t.Fatal(err)
	}
	return text.String(), d
}

// TestHeldBack: of an assembly that cannot be built no step is printed, and its
// pieces and the cutting plan with them are headed as not to be cut; of one
// that can, all of it is printed as it is.
func TestHeldBack(t *testing.T) {
	const head, held = "NOT TO BE CUT", "HELD BACK"
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	unfit := answers(t)
	for _, name := range []string{"orchard-ring", "terrace-spout"} {
		delete(unfit, name) // it can be built
	}
	j, _ := job.Read(demo.Job("hillside-cascade"))
	j.Assembly.At.Y = job.Length{Text: "5-1/4", SI: 5.25 * unit.Inch}
	j.Vault.Outlet.Along = job.Length{Text: "9 in", SI: 9 * unit.Inch}
	unfit["hillside-cascade"] = design.Solve(book, j) // in the middle the pump does not come out
	for name, r := range unfit {
		text, d := printed(t, r)
		if strings.Count(text, head) != 2 || !strings.Contains(text, held) || strings.Contains(text, "step by step") {
			t.Errorf("%s: the text cuts or glues what cannot be built", name)
		}
		if !d.NotToCut || !d.Withheld || len(d.Glue) != 0 || len(d.Cutting) != 1 || !d.Cutting[0].NotToCut {
			t.Errorf("%s: the JSON does", name)
		}
	}

	// As drawn, 3/4 in off the middle, it comes out.
	j, _ = job.Read(demo.Job("hillside-cascade"))
	text, d := printed(t, design.Solve(book, j))
	if strings.Contains(text, head) || strings.Contains(text, held) || d.NotToCut || d.Withheld || len(d.Glue) == 0 || d.Cutting[0].NotToCut {
		t.Error("what can be built is held back")
	}
	for _, want := range []string{
		"No way back after this.\n",
		// 2 in pipe is 7.461 in round (OD 2.375 in, ASTM D1785): 270 degrees are
		// 5.596 in of it, the other 90 are 1.865 in.
		"270° clockwise: 5-5/8\" clockwise round the pipe's outside, or 1-7/8\" the other way",
		"270° clockwise along the flow from the side that faces the back wall; that is 5-5/8\" clockwise round the pipe, or 1-7/8\" the other way.",
		"the pump's way out, unplugged and with U1 opened:\n  1. move it to the back, 5-15/16\"\n  2. lift it straight up, 2' 2\"\n",
		"shift it 5-15/16\" toward the back, lift it straight up.",
		"A1 into pump, 2 NPT",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not told", want)
		}
	}
	for _, spoilt := range []string{"moves:", "sideways", "-1-7/8", "right of the vault", "counted: "} {
		if strings.Contains(text, spoilt) {
			t.Errorf("%q is told", spoilt)
		}
	}
	if d.Rolls[0].Other.Text != "1-7/8\"" || d.Rolls[0].Arc.Text != "5-5/8\"" {
		t.Errorf("%+v", d.Rolls[0])
	}
}
