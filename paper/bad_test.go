package paper

import (
	"encoding/json"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/job"
)

// spoilt reads an example with some of its document changed, whatever the faults.
func spoilt(t *testing.T, change func(doc map[string]any)) Input {
	t.Helper()
	var doc map[string]any
	if err := json.Unmarshal(demo.Job("hillside-cascade"), &doc); err != nil {
		t.Fatal(err)
	}
	change(doc)
	data, err := json.Marshal(doc)
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(data)
	return inputOf(t, j, Letter, faults)
}

// drop takes the fields of a name out of a document.
func drop(doc any, name string) {
	switch v := doc.(type) {
	case map[string]any:
		delete(v, name)
		for _, x := range v {
			drop(x, name)
		}
	case []any:
		for _, x := range v {
			drop(x, name)
		}
	}
}

// TestSpoilt: with prices missing, below zero or in another currency, with names
// too long, written from the right or of emoji put together, and with next to
// nothing in it, every sheet of a job is whole and says what is missing.
func TestSpoilt(t *testing.T) {
	site := func(doc map[string]any) map[string]any { return doc["site"].(map[string]any) }
	stick := func(doc map[string]any) map[string]any {
		return doc["stock"].(map[string]any)["sticks"].([]any)[0].(map[string]any)
	}
	for _, c := range []struct {
		name   string
		change func(doc map[string]any)
		says   map[string]string // of a sheet: what must stand on it
	}{
		{"no prices", func(doc map[string]any) {
			drop(doc["stock"], "price")
			drop(doc["pumps"], "price")
			delete(doc, "prices")
		}, map[string]string{"material": "no item has a price", "quote": "DRAFT, not for the client"}},
		{"below zero", func(doc map[string]any) { stick(doc)["price"] = "-18.40" }, map[string]string{"water": "a price cannot be below zero"}},
		{"another currency", func(doc map[string]any) { stick(doc)["price"] = "18.40 EUR" }, map[string]string{"water": "not the job's currency"}},
		{"no currency", func(doc map[string]any) { delete(site(doc), "currency") }, map[string]string{"quote": "The job names no currency"}},
		{"5000 letters", func(doc map[string]any) { doc["name"] = strings.Repeat("N", 5000) }, map[string]string{"cut": "(job without a name)", "water": "5000 characters"}},
		{"as long as may be", func(doc map[string]any) { doc["name"] = strings.Repeat("N", 60) }, nil},

		{"from the right", func(doc map[string]any) {
			doc["name"], doc["client"] = "בריכה ליד הבית مرحبا", "משפחת לוי"
		}, map[string]string{"cut": "U+05D1"}},

		{"emoji", func(doc map[string]any) {
			doc["name"], doc["note"] = "👨‍👩‍👧‍👦 pond ❤️", "crew 😀"
		}, map[string]string{"cut": "U+1F468", "site": "U+1F600"}},
		{"empty", func(doc map[string]any) {
			for k := range doc {
				if k != "format" && k != "version" && k != "name" && k != "units" {
					delete(doc, k)
				}
			}
		}, map[string]string{
			"site": "No outline of the pond is given", "water": "The flow could not be worked out", "assembly": "no assembly that could be laid",
			"cut": "no assembly with pieces", "rolls": "no assembly that could be laid", "glue": "no assembly to glue", "material": "nothing to list",
			"quote": "DRAFT, not for the client", "start": "The flow could not be worked out",
		}},
	} {
		in := spoilt(t, c.change)
		for _, s := range sheetsOf(t, in) {
			holds(t, c.name, in, s)
			text := strings.Join(strings.Fields(written(s)), " ")
			if want := c.says[s.Name]; !strings.Contains(text, want) {
				t.Errorf("%s, %s does not say %q:\n%s", c.name, s.Name, want, text)
			}
			if strings.ContainsRune(text, '\ufffd') || strings.Contains(text, "NaN") || strings.Contains(text, "Inf ") {
				t.Errorf("%s, %s shows what is no letter or no figure:\n%s", c.name, s.Name, text)
			}
		}
	}
}
