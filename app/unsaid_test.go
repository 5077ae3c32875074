package app

import (
	"net/http"
	"strings"
	"testing"
)

// TestUnsaid: a list of words whose value is assumed shows what is assumed while
// nothing is chosen, and what would be once something is; the marks of numbers are
// asked for in plain words, in both languages.
func TestUnsaid(t *testing.T) {
	d := newDesk(t)
	const at = "/jobs/example-hillside-cascade"
	option := func(page, id string) string {
		t.Helper()
		_, rest, ok := strings.Cut(page, `<select id="`+id+`"`)
		if !ok {
			t.Fatalf("no list %s", id)
		}
		_, rest, _ = strings.Cut(rest, `<option value="">`)
		text, _, _ := strings.Cut(rest, "</option>")
		return unescaped(text)
	}
	want := func(page string, pairs ...string) {
		t.Helper()
		for i := 0; i < len(pairs); i += 2 {
			if got := option(page, pairs[i]); got != pairs[i+1] {
				t.Errorf("%s: %q, want %q", pairs[i], got, pairs[i+1])
			}
		}
	}
	site := d.get(at + "/part/site")
	want(site, "f-numbers-decimal", "not said: $1,234.50 is assumed", "f-numbers-thousands", "not said: $1,234.50 is assumed",
		"f-numbers-money", "not said: $1,234.50 is assumed", "f-numbers-side", "not said: $1,234.50 is assumed", "f-paper", "not said: letter is assumed")
	for _, bare := range []string{">Money<", ">Side<", ">Decimal<", ">Thousands<"} {
		if strings.Contains(site, bare) {
			t.Errorf("%s stands alone", bare)
		}
	}
	for _, label := range []string{"How decimals are written", "What stands between thousands", "What stands beside an amount of money", "Where that sign or code stands"} {
		if !strings.Contains(site, label) {
			t.Errorf("%q is not asked", label)
		}
	}
	d.post(at+"/set", "here", "site", "/numbers/side", "after")
	d.post(at+"/set", "here", "site", "/numbers/money", "code")
	want(d.get(at+"/part/site"), "f-numbers-side", "not said: USD 1,234.50 is assumed", "f-numbers-money", "not said: 1,234.50 $ is assumed")

	// What the answer assumes: the soil, once it is not said.
	d.post(at+"/set", "here", "material", "/works/soil", "")
	if got := option(d.get(at+"/part/material"), "f-works-soil"); !strings.HasPrefix(got, "not said: ") || !strings.HasSuffix(got, " is assumed") {
		t.Errorf("the soil: %q", got)
	}
	d.given.Device = func(*http.Request) Device { return Device{Language: "es"} }
	d.Handler = New(d.given)
	spanish := d.get(at + "/part/site")
	want(spanish, "f-numbers-decimal", "sin decir: se supone 1,234.50 USD", "f-paper", "sin decir: se supone carta")
	if !strings.Contains(spanish, "Cómo se escriben los decimales") {
		t.Error("not asked in Spanish")
	}
}
