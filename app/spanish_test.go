package app

import (
	"bytes"
	"html"
	"net/http"
	"net/http/httptest"
	"regexp"
	"testing"

	"plashet/demo"
	"plashet/words"
)

// Pages in Spanish have nothing of the catalogue in English, but what the job
// and the history were given in it.
func TestSpanishPages(t *testing.T) {
	d := newDesk(t)
	d.given.Device = func(*http.Request) Device { return Device{Language: "es"} }
	d.Handler = New(d.given)
	kept := regexp.MustCompile(`(?s)<div class="last".*?</div>`) // what was done, told in the language of who did it
	for _, name := range demo.Names() {
		paths := []string{"", "/assumed"}
		for _, p := range parts {
			paths = append(paths, "/part/"+p.Key)
		}
		for _, path := range paths {
			w := httptest.NewRecorder()
			d.ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/jobs/example-"+name+path, nil))
			page := html.UnescapeString(kept.ReplaceAllString(w.Body.String(), ""))
			if w.Code != http.StatusOK || len(page) < 2000 {
				t.Fatalf("%s%s: %d", name, path, w.Code)
			}
			for _, left := range words.EnglishIn(page, 14) {
				if !bytes.Contains(demo.Job(name), []byte(left)) { // the job's own words stay
					t.Errorf("%s%s: %q is English", name, path, left)
				}
			}
		}
	}
}

// A person's choice goes before what the browser asks for, and that before the
// first language.
func TestLanguageChosen(t *testing.T) {
	g := &Given{Languages: words.Languages()}
	for _, c := range []struct{ chosen, asked, want string }{
		{"", "", "en"}, {"es", "en-US", "es"}, {"", "es-MX,es;q=0.9,en;q=0.8", "es"}, {"", "de-DE, ES;q=0.5", "es"}, {"fr", "fr", "en"}, {"en", "es", "en"},
	} {
		g.Device = func(*http.Request) Device { return Device{Language: c.chosen} }
		r := httptest.NewRequest(http.MethodGet, "/", nil)
		r.Header.Set("Accept-Language", c.asked)
		if got := g.language(r).Tag; got != c.want {
			t.Errorf("%+v gives %s", c, got)
		}
	}
}
