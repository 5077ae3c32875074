package answer

import (
	"bytes"
	"os"
	"regexp"
	"strings"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/job"
	"plashet/words"
)

// skew searches the vault whose pump stands askew, where a short hose is allowed.
func skew(t *testing.T) *design.Arranging {
	t.Helper()
	data, err := os.ReadFile("../engine/design/testdata/skew-sump.json")
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(data)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	a := design.Arrange(t.Context(), book, j, design.ArrangeWant{Elbows: 1}, nil)
	if a.Outcome == nil || len(a.Outcome.Layouts) != 1 {
		t.Fatalf("one layout was to fit: %v", a.Faults)
	}
	return a
}

// A hose is no elbow: the table counts it beside, the claim says that it counts it as
// one, and so does the JSON.
func TestHoseIsNoElbow(t *testing.T) {
	a := skew(t)
	text := arrangedText(t, a)
	if !regexp.MustCompile(`(?m)^layout +head +elbows +hoses +joints`).MatchString(text) || !regexp.MustCompile(`(?m)^ +1 +[0-9.]+ ft +0 +1 +5 `).MatchString(text) {
		t.Error(text)
	}
	if !strings.Contains(text, "a hose is one of the elbows") {
		t.Errorf("the claim does not say how it counts:\n%s", text)
	}
	d := BuildArranged(a, nil, words.English())
	if l := &d.Layouts[0]; l.Elbows != 0 || l.Hoses != 1 || len(l.Rolls) != 1 || !l.Rolls[0].Hose {
		t.Errorf("%d elbows, %d hoses, rolls %+v", l.Elbows, l.Hoses, l.Rolls)
	}
	if !strings.Contains(d.Proof, "a hose is one of the elbows") {
		t.Error(d.Proof)
	}
	if plain := arrangedText(t, arrangement(t)); strings.Contains(plain, "hose") {
		t.Errorf("a hose is told where there is none:\n%s", plain)
	}
}

// What would mend a vault counts a hose beside the elbows too.
func TestHoseInMends(t *testing.T) {
	a := skew(t)
	l := a.Outcome.Layouts[0]
	a.Outcome = &arrange.Outcome{Stage: arrange.StageWalls, Proof: arrange.Proof{Claim: arrange.Family, Elbows: 1}, Short: []arrange.Change{
		{What: a.Input.Instead[0].What, Instead: 1, Layout: l}, {What: a.Input.Instead[0].What, By: 1, Layout: l},
	}}
	if text := arrangedText(t, a); strings.Count(text, "a layout with 0 elbows and 1 hose then fits") != 2 {
		t.Error(text)
	}
	if d := BuildArranged(a, nil, words.English()); d.Short[0].Hoses != 1 || d.Short[0].Elbows != 0 {
		t.Errorf("%+v", d.Short)
	}
}

// The pieces of a layout that cannot be cut hold its hose.
func TestHoseUncut(t *testing.T) {
	a := skew(t)
	l := a.Outcome.Layouts[0]
	a.Outcome = &arrange.Outcome{Stage: arrange.StageStock, Uncut: &l, Proof: arrange.Proof{Claim: arrange.Family, Elbows: 1}}
	if text := arrangedText(t, a); !regexp.MustCompile(`takes these pieces: 2-1/4"; 10-[0-9/]+" 1-1/2 hose\.`).MatchString(text) {
		t.Error(text)
	}
	d := BuildArranged(a, nil, words.English())
	if n := len(d.Uncut); n != 2 || !d.Uncut[1].Hose || d.Uncut[0].Hose {
		t.Errorf("%+v", d.Uncut)
	}
}

// Progress names what is looked for though its figures are not known yet.
func TestProgressOfHose(t *testing.T) {
	for _, code := range []string{design.ChangeHose, design.ChangeHoseTighter, design.ChangeHoseLonger} {
		for _, l := range []*words.Language{words.English(), words.Spanish()} {
			if text := Progress(arrange.Progress{Short: code}, l); strings.ContainsAny(text, "{}[]") || text == "" {
				t.Errorf("%s: %s", code, text)
			}
		}
	}
}

// A kept layout tells its hose's roll as what it is.
func TestHoseRollTold(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile("../engine/design/testdata/skew-sump.json")
	if err != nil {
		t.Fatal(err)
	}
	j, _ := job.Read(data)
	next, faults := skew(t).Keep(book, j, 0)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	var b bytes.Buffer
	if err := Text(&b, design.Solve(book, next), nil, words.English()); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(b.String(), "roll H1, where the hose bends to, 90°") {
		t.Error(b.String())
	}
}
