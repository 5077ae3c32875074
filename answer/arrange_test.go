package answer

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/geom"
	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/words"
)

// arrangement is a search's answer with one layout, made of the hillside's own
// assembly.
func arrangement(t *testing.T) *design.Arranging {
	t.Helper()
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(demo.Job("hillside-cascade"))
	r := design.Solve(book, j, faults...)
	if r.Assembly == nil || r.Second == nil {
		t.Fatal(faults, r.Faults)
	}
	kinds := []layout.Kind{layout.MaleAdapter, layout.Union, layout.Elbow90, layout.CheckSwing, layout.Bulkhead}
	var l arrange.Layout
	for _, k := range kinds {
		l.Chain.Parts = append(l.Chain.Parts, layout.Laid{Part: layout.Part{Kind: k, Size: "2"}})
	}
	l.Chain.Parts[2].Roll = 270 * unit.Degree
	l.Laid, l.Proved, l.Way = *r.Assembly, *r.Second, r.Assembly.LiftOut.Moves
	l.Worth = arrange.Worth{Head: unit.Foot / 2, Joints: 9, Cost: 57.95, Priced: true, Slide: 3 * unit.Inch, Deep: 9 * unit.Inch, Released: unit.USGallon, Elbows: 1}
	return &design.Arranging{
		Name: r.Name, Units: r.Units, Currency: "USD", Pump: "M", Flow: 60 * unit.USGallonPerMinute, Shown: 5, Attitudes: []string{"on its feet"},
		Outcome: &arrange.Outcome{Layouts: []arrange.Layout{l}, Proof: arrange.Proof{Claim: arrange.Family, Elbows: 3}},
	}
}

func arrangedText(t *testing.T, a *design.Arranging) string {
	t.Helper()
	var b bytes.Buffer
	if err := Arranged(&b, a, nil, words.English(), false); err != nil {
		t.Fatal(err)
	}
	if s := b.String(); strings.ContainsAny(s, "{}") || strings.Contains(s, "found.") {
		t.Errorf("something has no sentence:\n%s", s)
	}
	return b.String()
}

// TestArrangedText: the layouts stand side by side, each with its parts, cuts,
// rolls and the pump's moves by number; the claim says how far it reaches.
func TestArrangedText(t *testing.T) {
	a := arrangement(t)
	text := arrangedText(t, a)
	for _, want := range []string{
		"57.95 USD", "up to 3 elbows", "There is one layout", "elbow 90 2", "roll 270°", "then P1, cut ", "measure the gap in place first", "unplugged", "  1. ",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not told:\n%s", want, text)
		}
	}
	for claim, want := range map[arrange.Claim]string{
		arrange.Everything: "any number of elbows", arrange.Capped: "Not proven: a limit was met at 2 orders", arrange.Stopped: "Not proven: the search was stopped",
	} {
		a.Outcome.Proof = arrange.Proof{Claim: claim, Elbows: 3, Caps: 2}
		if text = arrangedText(t, a); !strings.Contains(text, want) {
			t.Errorf("claim %d: %q is not told:\n%s", claim, want, text)
		}
	}
}

// TestArrangedLeaned: a layout with which the pump comes out leaned over says so, in
// the table, in its moves and as JSON; others have no lean.
func TestArrangedLeaned(t *testing.T) {
	a := arrangement(t)
	if text, d := arrangedText(t, a), BuildArranged(a, nil, words.English()); strings.Contains(text, "lean") || d.Layouts[0].Lean != nil || d.Leaned {
		t.Errorf("nothing leans:\n%s", text)
	}
	l := &a.Outcome.Layouts[0]
	a.Outcome.Leaned, l.Worth.Lean = true, 35*unit.Degree
	l.Way = []layout.Move{{Along: geom.Vec3{Z: 1}, Distance: unit.Foot / 2}, {Along: geom.Vec3{X: -1}, Turn: 35 * unit.Degree}, {Along: geom.Vec3{Z: 1}, Distance: unit.Foot}}
	text, d := arrangedText(t, a), BuildArranged(a, nil, words.English())
	for _, want := range []string{"leaned 35°", "few were looked at", "1. lift it straight up, 6\"", "2. lean it over to the left by 35°, about its middle", "3. lift it straight up, leaning as it is, 1'"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not told:\n%s", want, text)
		}
	}
	if w := d.Layouts[0].Way; !d.Leaned || d.Layouts[0].Lean == nil || len(w) != 3 || w[0].Turn != nil || w[1].Turn == nil || w[1].About == nil {
		t.Errorf("%+v", d.Layouts[0])
	}
}

// TestArrangedFull: in full a layout comes with what makes its play and the steps of
// gluing it up, what can hurt with them; else with the play it needs alone.
func TestArrangedFull(t *testing.T) {
	a := arrangement(t)
	a.Told = []design.LaidOut{{Glue: glue.Plan{Steps: []glue.Step{{
		Number: 1, Message: trace.Message{Code: "glue.step.dry"}, Where: "bench", Cautions: []string{"glue.caution.saw"},
	}}}}}
	short := arrangedText(t, a)
	var b bytes.Buffer
	if err := Arranged(&b, a, nil, words.English(), true); err != nil {
		t.Fatal(err)
	}
	full := b.String()
	for _, x := range []struct {
		want string
		both bool
	}{{"play in length: ", true}, {"gluing it up, in this order:", false}, {"Wear eye protection", false}, {" 1. [", false}} {
		if !strings.Contains(full, x.want) || strings.Contains(short, x.want) != x.both {
			t.Errorf("%q: in full %v, else %v", x.want, strings.Contains(full, x.want), strings.Contains(short, x.want))
		}
	}
}

// TestArrangedNone: where nothing fits the text tells what failed, and what is
// short, rounded up to what a tape reads: 0.99 in short is not mended by 15/16.
func TestArrangedNone(t *testing.T) {
	a := arrangement(t)
	fits := a.Outcome.Layouts[0]
	mend := func(by unit.Length, sure bool) arrange.Change {
		return arrange.Change{What: trace.Message{Code: arrange.ChangeLength}, By: by, Layout: fits, Sure: sure}
	}
	for claim, want := range map[arrange.Claim]string{
		arrange.Everything: "Proven: no chain", arrange.Family: "Proven for up to 3", arrange.Capped: "proves nothing", arrange.Stopped: "proves nothing",
	} {
		a.Outcome = &arrange.Outcome{Stage: arrange.StageOut, Proof: arrange.Proof{Claim: claim, Elbows: 3}, Short: []arrange.Change{mend(0.94*unit.Inch, true), mend(0.3*unit.Inch, false)}}
		text := arrangedText(t, a)
		for _, want := range []string{want, "can the pump be lifted out", `take a longer vault, by 1": a layout with 1 elbow then fits; a hundredth`, `longer vault, by 5/16": `, "is not proven"} {
			if !strings.Contains(text, want) {
				t.Errorf("claim %d: %q is not told:\n%s", claim, want, text)
			}
		}
	}
	a.Outcome, a.Stopped = &arrange.Outcome{Stage: arrange.StageWalls, Proof: arrange.Proof{Claim: arrange.Family}}, true
	if text := arrangedText(t, a); strings.Contains(text, "Nothing single was found") || !strings.Contains(text, "not sought to the end") {
		t.Error(text)
	}
	a.Stopped = false
	// What has no size is told without one, in words and as JSON.
	a.Outcome.Short = []arrange.Change{{What: trace.Message{Code: design.ChangeLeft, Args: []trace.Arg{trace.Num("left", 3*unit.Inch, unit.KindTape)}}, Layout: fits, Instead: 1}}
	text, d := arrangedText(t, a), BuildArranged(a, nil, words.English())
	if want := `a quarter to the left, seen from above, with the corner of its box 3" from the left wall: a layout with 1 elbow then fits`; !strings.Contains(text, want) || strings.Contains(text, "hundredth") {
		t.Error(text)
	}
	if data, err := json.Marshal(d.Short); err != nil || strings.Contains(string(data), `"by"`) || d.Short[0].Code != design.ChangeLeft {
		t.Errorf("%v %s", err, data)
	}
	// Fittings that do only together, with whether all are needed, in both languages.
	for sure, want := range map[bool][2]string{
		true:  {"get all of these fittings (elbow 90 2: 1, union 2: 3): a layout with 1 elbow then fits; if one of these kinds is left out", "consiga todas estas conexiones (codo 90 2: 1, tuerca unión 2: 3): entonces cabe un trazo con 1 codo; si falta una de estas clases"},
		false: {"is not proven", "no está probado"},
	} {
		several := trace.Message{Code: design.ChangeSeveral, Args: []trace.Arg{trace.Str("fittings", "elbow 90 2: 1, union 2: 3")}}
		a.Outcome.Short = []arrange.Change{{What: several, Layout: fits, Instead: 1, Besides: []int{2}, Sure: sure}}
		for i, l := range []*words.Language{words.English(), words.Spanish()} {
			var b strings.Builder
			if err := Arranged(&b, a, nil, l, false); err != nil || !strings.Contains(b.String(), want[i]) {
				t.Errorf("%v: %q is not told:\n%s", err, want[i], b.String())
			}
		}
		if d := BuildArranged(a, nil, words.English()); d.Short[0].Sure != sure || d.Short[0].By.Text != "" {
			t.Errorf("%+v", d.Short)
		}
	}
	for _, stage := range []arrange.Stage{arrange.StageBody, arrange.StageWalls, arrange.StageClear, arrange.StageValve, arrange.StageOut} {
		a.Outcome = &arrange.Outcome{Stage: stage, Proof: arrange.Proof{Claim: arrange.Family}}
		if text := arrangedText(t, a); !strings.Contains(text, "Nothing single was found") {
			t.Error(text)
		}
	}
}

// TestArrangedGap: what stayed undecided is told with what it takes at least, and
// only where something did.
func TestArrangedGap(t *testing.T) {
	a := arrangement(t)
	a.Outcome.Proof = arrange.Proof{Claim: arrange.Capped, Elbows: 3}
	if text := arrangedText(t, a); strings.Contains(text, "stayed undecided") || BuildArranged(a, nil, words.English()).Gap != nil {
		t.Errorf("a gap where nothing is undecided:\n%s", text)
	}
	a.Outcome.Proof.Caps, a.Outcome.Proof.Open = 2, arrange.Gap{Head: 0.5, Joints: 7, Cost: 12.5}
	text, gap := arrangedText(t, a), BuildArranged(a, nil, words.English()).Gap
	if !strings.Contains(text, "fewer than 7 joints") {
		t.Errorf("the gap is not told:\n%s", text)
	}
	if gap == nil || gap.Head.SI != 0.5 || gap.Joints != 7 || gap.Cost == nil || *gap.Cost != 12.5 {
		t.Errorf("%+v", gap)
	}
}

// TestArrangedUncut: where only pipe is short, the pieces of one that would fit
// are told, and no other vault.
func TestArrangedUncut(t *testing.T) {
	a := arrangement(t)
	fits := a.Outcome.Layouts[0]
	a.Outcome = &arrange.Outcome{Stage: arrange.StageStock, Uncut: &fits, Proof: arrange.Proof{Claim: arrange.Family, Elbows: 4}}
	if text := arrangedText(t, a); !strings.Contains(text, "takes these pieces: ") || strings.Contains(text, "Nothing single was found") {
		t.Error(text)
	}
	if d := BuildArranged(a, nil, words.English()); d.Stage != "stock" || len(d.Uncut) != len(fits.Laid.Pieces) || len(d.Uncut) == 0 {
		t.Errorf("stage %q, %d pieces", d.Stage, len(d.Uncut))
	}
}

// TestEnough: a length is rounded up to the step, one that is a whole step
// stays.
func TestEnough(t *testing.T) {
	for _, c := range [][3]float64{{1.0 / 16, 1.0 / 16, 0}, {0.063, 2.0 / 16, 0}, {-0.99, 1, 0}, {3, 3, 0}} {
		if got := float64(layout.Enough(unit.Length(c[0])*unit.Inch, unit.US) / unit.Inch); got < c[1]-1e-9 || got > c[1]+1e-9 {
			t.Errorf("%v in: %v, want %v", c[0], got, c[1])
		}
	}
	if got := layout.Enough(25.2*unit.Millimetre, unit.Metric) / unit.Millimetre; got < 26-1e-9 || got > 26+1e-9 {
		t.Errorf("%v mm", got)
	}
}

// TestArrangedJSON: the JSON reads back and tells what the search found.
func TestArrangedJSON(t *testing.T) {
	a := arrangement(t)
	var b bytes.Buffer
	if err := ArrangedJSON(&b, a, []trace.Fault{{Message: trace.Message{Code: "job.missing"}, Path: "/vault"}}, words.English()); err != nil {
		t.Fatal(err)
	}
	var d ArrangedDocument
	dec := json.NewDecoder(&b)
	dec.DisallowUnknownFields()
	if err := dec.Decode(&d); err != nil {
		t.Fatal(err)
	}
	if d.Claim != "family" || d.Elbows != 3 || len(d.Layouts) != 1 || len(d.Faults) != 1 || d.Proof == "" {
		t.Fatalf("%+v", d)
	}
	l := d.Layouts[0]
	if l.Cost == nil || *l.Cost != 57.95 || len(l.Chain) != 5 || l.Chain[2].Fitting != "elbow 90" || len(l.Pieces) == 0 || len(l.Way) == 0 || l.Stands == nil || l.Attitude != "on its feet" {
		t.Errorf("%+v", l)
	}
	a.Outcome.Layouts[0].Worth.Priced = false
	b.Reset()
	if err := ArrangedJSON(&b, a, nil, words.English()); err != nil || strings.Contains(b.String(), `"cost"`) {
		t.Errorf("%v: a cost that is not known is told", err)
	}
}

// TestNoMend: where nothing single mends it and the vault has an opening smaller
// than itself, that is named among what is left to try, and only then.
func TestNoMend(t *testing.T) {
	a := arrangement(t)
	a.Outcome = &arrange.Outcome{Stage: arrange.StageOut, Proof: arrange.Proof{Claim: arrange.Family, Elbows: 4}}
	const opening = "have the opening over the vault cut larger both ways"
	if text := arrangedText(t, a); strings.Contains(text, opening) || !strings.Contains(text, "Nothing single was found") {
		t.Error(text)
	}
	a.Input.Vault.Opening = layout.Opening{FromX: 0.1, ToX: 0.3, FromY: 0.1, ToY: 0.3}
	if text := arrangedText(t, a); !strings.Contains(text, opening) {
		t.Error(text)
	}
}

// TestArrangedTight: chains left open for want of anything to spare are told, and
// only where there are any.
func TestArrangedTight(t *testing.T) {
	a := arrangement(t)
	if text := arrangedText(t, a); strings.Contains(text, "ended open") {
		t.Errorf("open looks where there are none:\n%s", text)
	}
	a.Outcome.Tally.Tight = 3
	if text := arrangedText(t, a); !strings.Contains(text, "3 looks at chains ended open") {
		t.Errorf("the open looks are not told:\n%s", text)
	}
	if got := BuildArranged(a, nil, words.English()).Tight; got != 3 {
		t.Errorf("%d", got)
	}
}
