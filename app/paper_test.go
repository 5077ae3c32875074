package app

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"plashet/paper"
)

// Every sheet comes as a PDF file, in both sizes; by itself and with the others.
func TestPaperFromThePages(t *testing.T) {
	d := newDesk(t)
	const at = "/jobs/example-terrace-spout"
	page := d.get(at + "/paper")
	sound(t, "paper", page)
	size := map[string]int{}
	for _, name := range append(paper.Names(), "all") {
		for _, p := range []string{"letter", "a4"} {
			code, body, h := d.ask(http.MethodGet, at+"/paper/"+name+".pdf?paper="+p, nil)
			if code != http.StatusOK || !strings.HasPrefix(body, "%PDF-") || h.Get("Content-Type") != "application/pdf" {
				t.Errorf("%s on %s: %d %.20q", name, p, code, body)
			}
			box := map[string]string{"letter": "612.00 792.00", "a4": "595.28 841.89"}[p]
			if !strings.Contains(body, box) {
				t.Errorf("%s is not on %s", name, p)
			}
			size[name+p] = len(body)
		}
		if name != "all" && !strings.Contains(page, "/paper/"+name+".pdf?paper=letter") {
			t.Errorf("%s is not on the page", name)
		}
	}
	if size["allletter"] < size["cutletter"] {
		t.Error("all is less than one")
	}
	for _, file := range []string{"none.pdf", "cut", ".pdf", "cut.pdf.exe"} {
		if code, _, _ := d.ask(http.MethodGet, at+"/paper/"+file, nil); code != http.StatusNotFound {
			t.Error(file, code)
		}
	}
	if page := d.get("/jobs/example-courtyard-rill/paper"); !strings.Contains(page, "cut.pdf?paper=a4") {
		t.Error("a metric job does not begin on A4")
	}
}

// The client sees the price and nothing of what it costs; the firm sees how it
// comes about.
func TestOfferPages(t *testing.T) {
	d := newDesk(t)
	seen := 0
	for _, name := range []string{"hillside-cascade", "terrace-spout", "courtyard-rill", "old-pond", "orchard-ring"} {
		at := "/jobs/example-" + name + "/offer"
		client, firm := d.get(at), d.get(at+"?for=firm&option=1")
		sound(t, at, client)
		sound(t, at+" firm", firm)
		sound(t, at+" x", d.get(at+"?option=99"))
		for _, secret := range []string{"What it costs the firm", "From cost to price", "profit", "markup"} {
			if strings.Contains(client, secret) {
				t.Errorf("%s: the client sees %q", name, secret)
			}
		}
		if strings.Contains(firm, "What it costs the firm") && strings.Contains(firm, "From cost to price") {
			seen++
		}
	}
	if seen < 5 {
		t.Errorf("%d of 5 show how the price comes about", seen)
	}
}

// What a person has shown in other units is shown so; the job's fields stay as
// they were typed.
func TestUnitsOfAPerson(t *testing.T) {
	d := newDesk(t)
	d.given.Device = func(r *http.Request) Device {
		return Device{Units: r.Header.Get("Test-Units"), Paper: r.Header.Get("Test-Paper")}
	}
	d.Handler = New(d.given)
	ask := func(path, units string) string {
		r := httptest.NewRequest(http.MethodGet, path, nil)
		r.Header.Set("Test-Units", units)
		r.Header.Set("Test-Paper", "a4")
		w := httptest.NewRecorder()
		d.ServeHTTP(w, r)
		return w.Body.String()
	}
	const at = "/jobs/example-hillside-cascade"
	for units, want := range map[string]string{"": "46.3 gpm", "us": "46.3 gpm", "metric": "10,510 L/h"} {
		if page := ask(at, units); !strings.Contains(page, ">"+want+"</a>") {
			t.Errorf("units %q: no %s", units, want)
		}
	}
	page := ask(at+"/part/pipe", "metric")
	sound(t, "metric", page)
	if !strings.Contains(page, `value="56 ft"`) {
		t.Error("the field is not as it was typed")
	}
	if page := ask(at+"/paper", ""); !strings.Contains(page, "cut.pdf?paper=a4") {
		t.Error("the person's paper does not count")
	}
}
