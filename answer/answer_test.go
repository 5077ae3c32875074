package answer

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/job"
	"plashet/words"
)

var update = flag.Bool("update", false, "write docs/answer.md")

func answers(t *testing.T) map[string]*design.Result {
	t.Helper()
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]*design.Result{}
	for _, name := range demo.Names() {
		j, faults := job.Read(demo.Job(name))
		if len(faults) > 0 {
			t.Fatalf("%s: %v", name, faults)
		}
		out[name] = design.Solve(book, j)
	}
	return out
}

// TestJSON: the JSON reads back, balances, and every figure's terms lead to
// something that exists.
func TestJSON(t *testing.T) {
	for name, r := range answers(t) {
		var b bytes.Buffer
		if err := JSON(&b, r, nil, words.English()); err != nil {
			t.Fatal(err)
		}
		var d Document
		dec := json.NewDecoder(&b)
		dec.DisallowUnknownFields()
		if err := dec.Decode(&d); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		sum := 0.0
		for _, f := range d.Feeds {
			sum += f.Flow.SI
		}
		if math.Abs(sum-d.Pump.Drawn.SI) > 1e-8 {
			t.Errorf("%s: the feeds get %g, the pumps draw %g m³/s", name, sum, d.Pump.Drawn.SI)
		}
		ids := map[string]bool{}
		for _, f := range d.Figures {
			if ids[f.ID] {
				t.Errorf("%s: figure %s stands twice", name, f.ID)
			}
			ids[f.ID] = true
			if f.Formula == "" || f.Source.Title == "" || f.Source.Basis == "" {
				t.Errorf("%s: figure %s cannot be opened", name, f.ID)
			}
		}
		for _, f := range d.Figures {
			for _, x := range f.Terms {
				if x.From != "" && !strings.HasPrefix(x.From, "/") && !ids[x.From] {
					t.Errorf("%s: figure %s counts on %s, which is none", name, f.ID, x.From)
				}
			}
		}
	}
}

// TestTextHasNoGaps: no sentence of the demo answers shows a code or a hole.
func TestTextHasNoGaps(t *testing.T) {
	for name, r := range answers(t) {
		var b bytes.Buffer
		if err := Text(&b, r, nil, words.English()); err != nil {
			t.Fatal(err)
		}
		for _, line := range strings.Split(b.String(), "\n") {
			if strings.Contains(line, "{") || strings.Contains(line, "layout.") || strings.Contains(line, "assume.") || strings.Contains(line, "moves.") || strings.Contains(line, "takeoff.") || strings.Contains(line, "NaN") {
				t.Errorf("%s: %s", name, line)
			}
		}
	}
}

// TestEffectsAreNamed: what an assumption moves is a figure or a line of the
// list, and has a name in words.
func TestEffectsAreNamed(t *testing.T) {
	for name, r := range answers(t) {
		ids := map[string]bool{}
		for _, f := range r.Figures {
			ids[f.ID] = true
		}
		for _, i := range r.Materials {
			ids[i.ID] = true
		}
		p := &printer{say: words.English(), unit: r.Units}
		effects := 0
		for _, a := range r.Assumptions {
			for _, e := range a.Weight {
				effects++
				if label := p.moved(r, e.Figure); !ids[e.Figure] || strings.Contains(label, "moves.") || strings.Contains(label, "takeoff.") {
					t.Errorf("%s: %s moves %s, called %q", name, a.Code, e.Figure, label)
				}
			}
		}
		if effects == 0 {
			t.Errorf("%s: no effect is seen", name)
		}
	}
}

// TestTotal: the foot of the list is the sum of its lines as printed.
func TestTotal(t *testing.T) {
	r := answers(t)["terrace-spout"]
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
	cents, unpriced := 0, 0
	for _, m := range d.Materials {
		if m.Total == nil {
			unpriced++
			continue
		}
		var whole, part int
		if _, err := fmt.Sscanf(m.Total.Text, "$%d.%d", &whole, &part); err != nil {
			t.Fatalf("%+v: %v", m.Total, err)
		}
		cents += 100*whole + part
	}
	sum := fmt.Sprintf("$%d.%02d", cents/100, cents%100)
	if d.Total == nil || d.Total.Sum == nil || d.Total.Sum.Text != sum || decimal.RequireFromString(d.Total.Sum.Low.Amount).StringFixed(2) != sum[1:] || d.Total.Unpriced != unpriced || unpriced == 0 {
		t.Errorf("%+v, by the lines %s and %d without a price", d.Total, sum, unpriced)
	}
	if want := fmt.Sprintf("%s; %d of %d items have no price", sum, unpriced, len(d.Materials)); !strings.Contains(text.String(), want) {
		t.Errorf("%q is not in the text", want)
	}
}

// TestStarved: the courtyard's pump gasps, and both answers say so; the other
// examples have water enough.
func TestStarved(t *testing.T) {
	for name, r := range answers(t) {
		var b bytes.Buffer
		if err := Text(&b, r, nil, words.English()); err != nil {
			t.Fatal(err)
		}
		want := name == "courtyard-rill"
		if got := strings.Contains(b.String(), "does not last"); got != want {
			t.Errorf("%s: told that a flow does not last: %v", name, got)
		}
		b.Reset()
		if err := JSON(&b, r, nil, words.English()); err != nil {
			t.Fatal(err)
		}
		var d Document
		if err := json.Unmarshal(b.Bytes(), &d); err != nil {
			t.Fatal(err)
		}
		starved := 0
		for _, s := range d.Levels {
			if s.Starved {
				starved++
				if s.Missing.SI <= 0 || s.Passes.SI >= d.Pump.Flow.SI {
					t.Errorf("%s %s %s: missing %g, passes %g", name, s.Course, s.Moment, s.Missing.SI, s.Passes.SI)
				}
			}
		}
		if (starved > 0) != want {
			t.Errorf("%s: %d states are starved", name, starved)
		}
	}
}

// TestNoRim: where the rim is not known, no room under it is told.
func TestNoRim(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j, _ := job.Read(demo.Job("old-pond"))
	j.Pond.Rim = job.Level{}
	r := design.Solve(book, j)
	var b bytes.Buffer
	if err := Text(&b, r, nil, words.English()); err != nil || strings.Contains(b.String(), "under the rim") {
		t.Errorf("%v\n%s", err, b.String())
	}
}

// TestDocs holds docs/answer.md to the fields.
func TestDocs(t *testing.T) {
	var b strings.Builder
	b.WriteString("# The answer as JSON\n\nGenerated by `go test ./answer -update`. `plashet design JOB --json` prints it. Names are stable within a version.\n")
	seen := map[reflect.Type]bool{}
	table(&b, reflect.TypeFor[Document](), seen)
	b.WriteString("\n# The choice as JSON\n\n`plashet choose JOB --json` prints it.\n")
	table(&b, reflect.TypeFor[ChosenDocument](), seen)
	b.WriteString("\n# The layouts as JSON\n\n`plashet arrange JOB --json` prints them.\n")
	table(&b, reflect.TypeFor[ArrangedDocument](), seen)
	b.WriteString("\n# The offer as JSON\n\n`plashet quote JOB --json` prints it, with `--client` as the client sees it.\n")
	table(&b, reflect.TypeFor[OfferDocument](), seen)
	path := filepath.Join("..", "docs", "answer.md")
	if *update {
		if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	have, err := os.ReadFile(path)
	if err != nil || string(have) != b.String() {
		t.Errorf("docs/answer.md differs from the fields: go test ./answer -update (%v)", err)
	}
}

func table(b *strings.Builder, t reflect.Type, seen map[reflect.Type]bool) {
	if seen[t] {
		return
	}
	seen[t] = true
	fmt.Fprintf(b, "\n## %s\n\n| field | type | meaning |\n|---|---|---|\n", t.Name())
	var next []reflect.Type
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		kind, list := f.Type, ""
		for kind.Kind() == reflect.Slice || kind.Kind() == reflect.Pointer || kind.Kind() == reflect.Array {
			if kind.Kind() != reflect.Pointer {
				list = "list of "
			}
			kind = kind.Elem()
		}
		fmt.Fprintf(b, "| %s | %s%s | %s |\n", name, list, kind.Name(), f.Tag.Get("doc"))
		if kind.Kind() == reflect.Struct {
			next = append(next, kind)
		}
	}
	for _, n := range next {
		table(b, n, seen)
	}
}
