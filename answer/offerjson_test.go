package answer

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/offer"
	"plashet/words"
)

func sumOf(t *testing.T, m *Money) decimal.Decimal {
	t.Helper()
	if m == nil {
		return decimal.Zero
	}
	d, err := decimal.NewFromString(m.Amount)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// The offer as JSON adds up: parts of the work to net, net and taxes to the total,
// deposit and stages and rest to it too; and the client is told nothing of cost.
func TestOfferJSON(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	priced := 0
	for _, name := range demo.Names() {
		j, faults := job.Read(demo.Job(name))
		d := offer.Of(book, j, faults...)
		firm, client := BuildOffer(j, &d, false, faults, words.English()), BuildOffer(j, &d, true, faults, words.English())
		if len(firm.Designs) != len(d.Designs) || len(client.Designs) != len(d.Designs) {
			t.Fatal(name, len(firm.Designs))
		}
		for i := range firm.Designs {
			x := &firm.Designs[i]
			if x.Total == nil {
				continue
			}
			priced++
			net, total, due := decimal.Zero, sumOf(t, x.Net).Add(sumOf(t, x.Rounding)), sumOf(t, x.Deposit).Add(sumOf(t, x.Rest))
			for _, s := range x.Scopes {
				net = net.Add(sumOf(t, s.Amount))
			}
			for _, s := range x.Taxes {
				total = total.Add(sumOf(t, s.Amount))
			}
			for _, s := range x.Stages {
				due = due.Add(sumOf(t, s.Amount))
			}
			if !net.Equal(sumOf(t, x.Net)) || !total.Equal(sumOf(t, x.Total)) || x.Rest != nil && !due.Equal(total) {
				t.Errorf("%s %q: scopes %s of %+v, total %s of %+v, due %s", name, x.Name, net, x.Net, total, x.Total, due)
			}
			lines := decimal.Zero
			for _, l := range x.Lines {
				if l.Counts {
					lines = lines.Add(sumOf(t, l.Amount))
				}
			}
			groups := decimal.Zero
			for _, g := range x.Groups {
				groups = groups.Add(sumOf(t, g.Lines))
			}
			if len(x.Lines) == 0 || !lines.Equal(groups) {
				t.Errorf("%s %q: lines come to %s, their groups to %s", name, x.Name, lines, groups)
			}
		}
		data, err := json.Marshal(client)
		if err != nil {
			t.Fatal(err)
		}
		for _, word := range []string{`"lines"`, `"groups"`, `"cost"`, `"profit"`, `"low"`, `"findings"`, `"assumed"`} {
			if strings.Contains(string(data), word) {
				t.Errorf("%s: the client is told %s", name, word)
			}
		}
		if j.Note != "" && j.Note != j.ClientNote && strings.Contains(string(data), j.Note) {
			t.Errorf("%s: the client is told the crew's note", name)
		}
	}
	if priced < 3 {
		t.Errorf("%d designs with a price", priced)
	}
}

// A fault tells what would be right and how it is written, where the message
// knows it; a list that is always told is never null.
func TestFaultOf(t *testing.T) {
	_, faults := job.Read([]byte(`{"format": "plashet job", "version": 1, "name": "x", "units": "us", "site": {"currency": "dollars"}, "pond": {"depth": "5000 ft", "shape": "squarre"}}`))
	got := map[string]Fault{}
	for _, f := range faults {
		x := FaultOf(f, unit.US, words.English())
		got[x.Path] = x
		if x.Code != f.Code || x.Text == "" || strings.Contains(x.Text+x.Expected+x.Example, "{") {
			t.Errorf("%+v", x)
		}
	}
	if f := got["/site/currency"]; f.Example == "" {
		t.Errorf("%+v", f)
	}
	if len(got) < 2 {
		t.Fatal(got)
	}
	bounds := FaultOf(trace.Fault{Message: trace.Message{Code: job.CodeRange, Args: []trace.Arg{trace.Num("low", unit.Length(1), unit.KindDistance), trace.Num("high", unit.Length(2), unit.KindDistance)}}}, unit.Metric, words.English())
	if !strings.Contains(bounds.Expected, "1") || !strings.Contains(bounds.Expected, "2") || !strings.Contains(bounds.Expected, " to ") {
		t.Errorf("%+v", bounds)
	}
	type inner struct {
		Always []int `json:"always"`
		Maybe  []int `json:"maybe,omitempty"`
	}
	x := whole(struct {
		In   []inner `json:"in"`
		None []inner `json:"none"`
		At   *inner  `json:"at"`
	}{In: []inner{{}}, At: &inner{}})
	data, err := json.Marshal(x)
	if err != nil || string(data) != `{"in":[{"always":[]}],"none":[],"at":{"always":[]}}` {
		t.Errorf("%s %v", data, err)
	}
}

// Where the sheet for the client is a draft, text and JSON for the client are
// drafts too, and name as much: payments of more than the total, a price that
// could not be read, lines without a price.
func TestOfferDraft(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, demo, old, now, want string }{
		{"whole", "hillside-cascade", "", "", ""},
		{"payments past the total", "hillside-cascade", `"deposit": "30 %"`, `"deposit": "90 %"`, "more than the total"},
		{"negative price", "hillside-cascade", `"3.15", "unit": "each"`, `"-3.15", "unit": "each"`, "below zero"},
		{"unread price", "hillside-cascade", `"3.15", "unit": "each"`, `"plenty", "unit": "each"`, "plenty"},
		{"lines without a price", "courtyard-rill", "", "", "Without a price"},
	} {
		data := string(demo.Job(c.demo))
		if c.old != "" {
			if data = strings.Replace(data, c.old, c.now, 1); data == string(demo.Job(c.demo)) {
				t.Fatalf("%s: nothing was changed", c.name)
			}
		}
		j, faults := job.Read([]byte(data))
		d := offer.Of(book, j, faults...)
		var text strings.Builder
		if err := OfferedTo(&text, j, &d, 0, words.English()); err != nil {
			t.Fatal(err)
		}
		x := BuildOffer(j, &d, true, faults, words.English())
		if draft := c.want != ""; draft != x.Draft || draft != strings.Contains(text.String(), "DRAFT") || draft != (len(x.Faults)+len(x.Lacks) > 0) {
			t.Errorf("%s: draft %v, lacks %q, faults %+v\n%s", c.name, x.Draft, x.Lacks, x.Faults, text.String())
		}
		if !strings.Contains(text.String(), c.want) {
			t.Errorf("%s: %q is not told:\n%s", c.name, c.want, text.String())
		}
		if firm := BuildOffer(j, &d, false, faults, words.English()); firm.Draft != x.Draft {
			t.Errorf("%s: a draft for one, not for the other", c.name)
		}
	}
}
