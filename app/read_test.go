package app

import (
	"net/http"
	"regexp"
	"strings"
	"testing"
)

// TestRead opens every text that can be read, and every picture and text that
// one leads to.
func TestRead(t *testing.T) {
	d := newDesk(t)
	list := d.get("/read")
	links := regexp.MustCompile(`(?:href|src)="(/?(?:read/)?[a-z0-9-]+(?:/[a-z0-9-]+\.(?:png|svg))?)(?:#[^"]*)?"`)
	seen := 0
	for _, m := range regexp.MustCompile(`href="(/read/[^"]+)"`).FindAllStringSubmatch(list, -1) {
		page := d.get(m[1])
		seen++
		main := page[strings.Index(page, "<main"):strings.Index(page, "</main>")]
		if strings.Contains(main, `.md"`) || strings.Contains(main, `="http`) {
			t.Errorf("%s leads out of the program", m[1])
		}
		for _, l := range links.FindAllStringSubmatch(main, -1) {
			at := l[1]
			if !strings.HasPrefix(at, "/") {
				at = "/read/" + at
			}
			if code, _, _ := d.ask(http.MethodGet, at, nil); code != http.StatusOK {
				t.Errorf("%s leads to %s, which answers %d", m[1], at, code)
			}
		}
	}
	if seen < 10 {
		t.Errorf("only %d texts can be read", seen)
	}
	if code, _, _ := d.ask(http.MethodGet, "/read/..%2fgo.mod", nil); code != http.StatusNotFound {
		t.Errorf("a text that is none answers %d", code)
	}
}
