package app

import (
	"encoding/xml"
	"net/http"
	"regexp"
	"strings"
	"testing"

	"plashet/export"
)

var exported = regexp.MustCompile(`href="(/jobs/[^"]*/export/[^"]*)"`)

// Every file that the page names is there, to be kept, with its type; what is
// not named is not.
func TestExportPage(t *testing.T) {
	d := newDesk(t)
	page := d.get("/jobs/example-hillside-cascade/export")
	links := exported.FindAllStringSubmatch(page, -1)
	if len(links) != len(export.Names())-2 { // no drawings in one file, and no workbook without its library
		t.Errorf("%d files are named", len(links))
	}
	for _, l := range links {
		code, body, h := d.ask(http.MethodGet, l[1], nil)
		if code != http.StatusOK || body == "" || h.Get("Content-Type") == "" || !strings.HasPrefix(h.Get("Content-Disposition"), "attachment;") {
			t.Errorf("%s: %d, %d bytes, %v", l[1], code, len(body), h)
		}
	}
	for _, path := range []string{"/jobs/none/export", "/jobs/none/model", "/jobs/example-old-pond/export/workbook.xlsx", "/jobs/example-old-pond/export/cuts", "/jobs/example-old-pond/export/.csv"} {
		if code, _, _ := d.ask(http.MethodGet, path, nil); code != http.StatusNotFound {
			t.Errorf("%s: %d", path, code)
		}
	}
}

// The page of the model is whole XML, names every part, loads only what this
// server has, and shows the drawing where there is no script.
func TestModelPage(t *testing.T) {
	d := newDesk(t)
	page := d.get("/jobs/example-terrace-spout/model")
	dec := xml.NewDecoder(strings.NewReader(page))
	dec.Entity = xml.HTMLEntity
	for {
		if _, err := dec.Token(); err != nil {
			if err.Error() != "EOF" {
				t.Fatal(err)
			}
			break
		}
	}
	for _, want := range []string{`data-model="/jobs/example-terrace-spout/export/model.glb"`, `data-name="E1"`, `data-name="basket rack"`, `id="flat"`, "<svg"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	for _, l := range regexp.MustCompile(`(?:src|href|data-model)="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		if !strings.HasPrefix(l[1], "/") && !strings.HasPrefix(l[1], "#") || strings.HasPrefix(l[1], "//") {
			t.Errorf("the page asks elsewhere: %s", l[1])
		}
	}
	code, script, _ := d.ask(http.MethodGet, "/static/model.js", nil)
	if code != http.StatusOK || regexp.MustCompile(`https?://|eval\(|new Function|import\(`).MatchString(script) {
		t.Error("the script asks elsewhere, or makes code", code)
	}
}
