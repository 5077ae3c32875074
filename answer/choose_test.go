package answer

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/size"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/words"
)

func choice(t *testing.T, change func(j *job.Job)) *design.Choice {
	t.Helper()
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(demo.Job("hillside-cascade"))
	shelf, ill, more := job.ReadShelf(demo.Shelf(), j)
	if len(faults)+len(more) > 0 {
		t.Fatal(faults, more)
	}
	change(j)
	return design.Choose(t.Context(), book, j, shelf, ill, design.Want{Years: 10, Discount: 0.04, Rated: true, Pairs: design.PairsAny}, nil)
}

// TestChosenJSON: the JSON reads back and tells what the choice does; the pumps
// of a design give what is wanted.
func TestChosenJSON(t *testing.T) {
	c := choice(t, func(*job.Job) {})
	var b bytes.Buffer
	if err := ChosenJSON(&b, c, nil, words.English()); err != nil {
		t.Fatal(err)
	}
	var d ChosenDocument
	dec := json.NewDecoder(&b)
	dec.DisallowUnknownFields()
	if err := dec.Decode(&d); err != nil {
		t.Fatal(err)
	}
	if len(d.Front) != len(c.Result.Front) || len(d.Front) < 5 || len(d.Lost) != len(c.Result.Lost) || len(d.Out) != len(c.Result.Out) || d.Best == nil {
		t.Fatalf("%d designs of %d, %d lost, %d out", len(d.Front), len(c.Result.Front), len(d.Lost), len(d.Out))
	}
	for i, x := range d.Front {
		if len(x.Pipe) != 3 || x.Head.SI < x.Need.SI || x.Open < 1 || !strings.HasPrefix(x.Years, "$") {
			t.Errorf("design %d: %+v", i, x)
		}
	}
}

// TestPipeNames: the kind once where it is one throughout, also where a size has
// its unit behind it.
func TestPipeNames(t *testing.T) {
	p := &choosing{printer{say: words.English()}, &design.Choice{Problem: &size.Problem{Segments: []size.Segment{
		{Name: "a", Choices: []size.Choice{{Name: "ribbed hose 50 mm"}, {Name: "PVC Sch 40 2"}}}, {Name: "b", Choices: []size.Choice{{Name: "ribbed hose 1-1/4"}}},
	}}}}
	if got := p.pipe([]int{0, 0}); got != "a 50 mm, b 1-1/4 in ribbed hose" {
		t.Error(got)
	}
	if got := p.pipe([]int{1, 0}); got != "a PVC Sch 40 2, b ribbed hose 1-1/4" {
		t.Error(got)
	}
}

// TestChosenText: every pump of the shelf is told of, and nothing that has no
// sentence.
func TestChosenText(t *testing.T) {
	c := choice(t, func(*job.Job) {})
	var b bytes.Buffer
	if err := Chosen(&b, c, nil, words.English()); err != nil {
		t.Fatal(err)
	}
	text := b.String()
	for _, p := range c.Problem.Pumps {
		if !strings.Contains(text, p.Name) {
			t.Errorf("pump %s is not told of", p.Name)
		}
	}
	for _, bad := range []string{"{", "design.choose.", "size.", "NaN", "+Inf", "%!"} {
		if strings.Contains(text, bad) {
			t.Errorf("the text holds %q:\n%s", bad, text)
		}
	}
}

// TestChosenMetric: in metric the head's price is for each metre.
func TestChosenMetric(t *testing.T) {
	c := choice(t, func(j *job.Job) { j.Units = "metric" })
	if !c.Units.Is(unit.Metric) {
		t.Fatal("not metric")
	}
	var b bytes.Buffer
	if err := Chosen(&b, c, nil, words.English()); err != nil {
		t.Fatal(err)
	}
	if s := b.String(); !strings.Contains(s, " for each m)") || strings.Contains(s, "for each ft") {
		t.Errorf("%s", s)
	}
}

// TestChosenNothing: where nothing serves, that is said, and why.
func TestChosenNothing(t *testing.T) {
	c := choice(t, func(j *job.Job) { j.Watercourses[1].Parts[0].Lip.Wanted.SI = 1 })
	var b bytes.Buffer
	if err := Chosen(&b, c, nil, words.English()); err != nil {
		t.Fatal(err)
	}
	if len(c.Faults) == 0 && !strings.Contains(b.String(), "No pump of the shelf serves") {
		t.Errorf("%s", b.String())
	}
}
