package app

import (
	"bytes"
	"context"
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"plashet/store"
)

// addresses lists what is served, with the methods that each takes.
func addresses(d *desk) map[string][]string {
	all := map[string][]string{}
	(&app{Given: d.given, Language: d.given.Languages[0], cache: newCache()}).serves(all)
	return all
}

// cursor is the state of the whole store.
func (d *desk) cursor() (last int64) {
	d.t.Helper()
	list, err := d.store.Since(context.Background(), 0, 0)
	if err != nil {
		d.t.Fatal(err)
	}
	for _, e := range list {
		last = max(last, e.Cursor)
	}
	return last
}

// odd are words of an address that name nothing.
var odd = []string{"none", strings.Repeat("x", 10_000), "..%2F..%2Fetc%2Fpasswd", "%2e%2e", "%00", "%ff%fe", "-1", "99999999999999999999", "%F0%9F%8C%8A", "%3Cscript%3Ealert(1)%3C%2Fscript%3E", "a%0d%0aSet-Cookie:x=1"}

var wildcard = regexp.MustCompile(`\{[a-z]+\}`)

// strange sends a request and holds the answer against what every answer keeps
// to: it says whose fault it was, and that it was not ours; it is a page or a
// problem; nothing of our inside is shown, nothing is logged.
func (d *desk) strange(r *http.Request) int {
	d.t.Helper()
	w := httptest.NewRecorder()
	d.ServeHTTP(w, r)
	at := r.Method + " " + short(r.URL.String())
	if w.Code >= 500 && w.Code != http.StatusServiceUnavailable || len(d.logs) > 0 {
		d.t.Errorf("%s: %d %v", at, w.Code, d.logs)
		d.logs = nil
	}
	body := w.Body.String()
	for _, word := range []string{"<script>alert", "goroutine", ".go:", "sql:", "runtime error"} {
		own := strings.Contains(r.URL.Path, "/read") || strings.Contains(r.URL.Path, "/static")
		file := word == "<script>alert" && w.Header().Get("Content-Disposition") != "" && !strings.HasPrefix(w.Header().Get("Content-Type"), "text/html")
		if strings.Contains(body, word) && !own && !file { // a file holds what was typed, and no browser runs it
			d.t.Errorf("%s: the answer shows %q", at, word)
		}
	}
	if w.Header().Get("Set-Cookie") != "" {
		d.t.Errorf("%s: a header came from the address", at)
	}
	if w.Code >= 400 && r.Method != http.MethodHead {
		switch kind := w.Header().Get("Content-Type"); {
		case strings.HasPrefix(kind, "text/html"):
			sound(d.t, at, body)
			if !strings.Contains(body, ".") {
				d.t.Errorf("%s: no sentence", at)
			}
		case kind == "application/problem+json", strings.HasPrefix(kind, "application/json") && strings.Contains(body, `"error"`):
		default:
			d.t.Errorf("%s: %d as %q: %.100s", at, w.Code, kind, body)
		}
	}
	return w.Code
}

// Every address is asked with odd words in it, by every method. What only shows
// changes nothing, and an address tells which methods it takes.
func TestStrangersAddresses(t *testing.T) {
	d, _ := withRuns(t)
	paths := addresses(d)
	if len(paths) < 60 {
		t.Fatal(len(paths))
	}
	for path, methods := range paths {
		path = strings.Replace(path, "{$}", "", 1)
		var tries []string
		for _, word := range odd {
			tries = append(tries, wildcard.ReplaceAllString(path, word))
			if strings.HasPrefix(path, "/jobs/{id}/") { // a job that there is
				tries = append(tries, wildcard.ReplaceAllString(strings.Replace(path, "{id}", "example-terrace-spout", 1), word))
			}
		}
		slices.Sort(tries)
		for _, at := range slices.Compact(tries) {
			before := d.cursor()
			for _, method := range []string{http.MethodGet, http.MethodHead} {
				if code := d.strange(httptest.NewRequest(method, at, nil)); code < 400 && strings.Contains(at, "none") && wildcard.MatchString(path) && slices.Contains(methods, method) {
					t.Errorf("%s %s: %d for what there is not", method, at, code)
				}
			}
			if d.cursor() != before {
				t.Errorf("%s changes something by being looked at", short(at))
			}
		}
		at := wildcard.ReplaceAllString(path, "none")
		for _, method := range []string{http.MethodPost, http.MethodPut, http.MethodDelete, http.MethodPatch, http.MethodTrace, http.MethodOptions, http.MethodConnect, "PROPFIND"} {
			r := httptest.NewRequest(method, "/", nil)
			r.URL.Path = at
			code := d.strange(r)
			if !slices.Contains(methods, method) && code != http.StatusMethodNotAllowed {
				t.Errorf("%s %s: %d", method, at, code)
			}
		}
	}
}

// Every address that is looked at is asked with odd values behind the question
// mark, and every one that changes something with odd forms.
func TestStrangersForms(t *testing.T) {
	d, _ := withRuns(t)
	values := []string{"", "-1", "0", "99999999999999999999", "1e999", "nan", "\x00", "\xff", "../../etc", "<script>alert(1)</script>", strings.Repeat("9", 20_000), "%zz"}
	names := []string{"base", "number", "index", "pump", "state", "layout", "mend", "step", "by", "path", "list", "kind", "name", "code", "remedy", "reason", "item", "price", "units", "who", "mode", "back", "here", "at", "nudge", "elbows", "data", "do", "points", "to", "/name", "/runs/0/length", "/pumps/0/curve/0/flow", "/pumps/0/curve/99999999/head", "/", "//", "/runs/-1/length", "/runs/99999999999999999999/length"}
	for path, methods := range addresses(d) {
		path = strings.Replace(path, "{$}", "", 1)
		at := wildcard.ReplaceAllString(strings.Replace(path, "{id}", "example-terrace-spout", 1), "1")
		for _, v := range values {
			q, form := url.Values{}, url.Values{}
			for _, n := range []string{"text", "before", "from", "corner", "ground", "shelf", "pumps", "paper", "units", "for", "option", "aside", "back", "size", "t"} {
				q.Set(n, v)
			}
			for _, n := range names {
				form.Set(n, v)
			}
			if slices.Contains(methods, http.MethodGet) {
				r := httptest.NewRequest(http.MethodGet, "/", nil)
				r.URL.Path, r.URL.RawQuery = at, q.Encode()
				d.strange(r)
				r = httptest.NewRequest(http.MethodGet, "/", nil)
				r.URL.Path, r.URL.RawQuery = at, "a=%zz&before=%&;=;"
				d.strange(r)
			}
			if !slices.Contains(methods, http.MethodPost) {
				continue
			}
			for _, base := range []string{v, strconv.Itoa(d.newest("example-terrace-spout").Number)} {
				form.Set("base", base)
				r := httptest.NewRequest(http.MethodPost, at, strings.NewReader(form.Encode()))
				r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
				d.strange(r)
			}
		}
		if slices.Contains(methods, http.MethodPost) {
			for kind, body := range map[string]string{
				"": "x=1", "application/x-www-form-urlencoded": "%zz=%&a;b", "multipart/form-data": "--x", "multipart/form-data; boundary=x": "--x\r\nContent-Disposition: form-data; name=\"file\"; filename=\"../../etc/x\"\r\n\r\nabc",
				"multipart/form-data; boundary=\"": "", "application/json": `{"a": 1`, "text/plain; charset=utf-16": "\xff\xfe", "image/svg+xml": "<svg onload='alert(1)'/>", "application/zip": "PK\x03\x04",
			} {
				r := httptest.NewRequest(http.MethodPost, at, strings.NewReader(body))
				r.Header.Set("Content-Type", kind)
				r.Header.Set("Content-Encoding", "gzip")
				d.strange(r)
			}
		}
	}
}

// A form with more fields than any page has is refused, and not taken in part.
func TestStrangersManyFields(t *testing.T) {
	d := newDesk(t)
	form := url.Values{"base": {"1"}, "/note": {"taken"}}
	for i := range mostEdits {
		form.Set("/runs/"+strconv.Itoa(i)+"/length", "1 ft")
	}
	code, page, _ := d.ask(http.MethodPost, "/jobs/example-old-pond/set", form)
	if code != http.StatusRequestEntityTooLarge || d.newest("example-old-pond").Number != 1 {
		t.Error(code)
	}
	sound(t, "many fields", page)
}

// Files that are made to be too much: each is refused with a sentence, and none
// takes long or much room.
func TestStrangersFiles(t *testing.T) {
	d := newDesk(t)
	wide := strings.Repeat("a,", 1_000_000)
	files := map[string]string{
		"a million columns": wide, "a million columns below titles": "Item,Price\n" + wide, "a million rows": "a,b\n" + strings.Repeat("1,2\n", 1_000_000), "one long cell": "a,b\n" + strings.Repeat("x", 3<<20) + ",2\n",
		"NUL": "Item,Price\nelbow\x00,3\n", "NULs": strings.Repeat("\x00", 1<<20), "UTF-16 cut": "\xff\xfea\x00,", "UTF-16 alone": "\xfe\xff\xd8\x00", "quotes": strings.Repeat(`"`, 1<<20), "carriage returns": strings.Repeat("\r", 1<<20),
		"zip": "PK\x03\x04" + strings.Repeat("\x00", 1000), "gzip": "\x1f\x8b\x08\x00rest", "pdf": "%PDF-1.7", "svg": `<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>`,
		"entities": `<!DOCTYPE x [<!ENTITY a "aa"><!ENTITY b "&a;&a;">]><x>&b;</x>`, "formula": "Item,Price\n=cmd|' /C calc'!A0,oops\n",
		"deep JSON": strings.Repeat(`{"a":`, 200_000), "many values": "[" + strings.Repeat("1,", 3_000_000) + "1]", "long number": `{"format":"plashet job","version":1,"name":"x","units":"us","site":{"altitude":` + strings.Repeat("9", 1_000_000) + `}}`,
		"long name": `{"format":"plashet job","version":1,"units":"us","name":"` + strings.Repeat("x", 1<<20) + `"}`, "twice": `{"format":"plashet job","format":"plashet job"}`, "large": strings.Repeat("x", 17<<20),
	}
	before := d.cursor()
	for name, data := range files {
		for _, at := range []string{"/import", "/prices/import", "/pumps/import"} {
			if at == "/import" && name == "long name" {
				continue // a job with a fault is kept: see below
			}
			if at == "/import" && name == "long number" {
				continue
			}
			code, page := d.upload(at, "../../"+name, data)
			if code/100 != 4 && (code != http.StatusOK || at == "/import") {
				t.Errorf("%s to %s: %d", name, at, code)
			}
			if code != http.StatusOK {
				sound(t, name, page)
			}
		}
	}
	if d.cursor() != before {
		t.Error("something was kept")
	}
	for _, name := range []string{"long name", "long number"} {
		code, _ := d.upload("/import", name, files[name])
		list, _, err := d.store.List(context.Background(), store.Query{Kind: store.Job, Limit: 1})
		if err != nil || code != http.StatusSeeOther && code/100 != 4 {
			t.Error(name, code, err)
		}
		if code == http.StatusSeeOther {
			page := d.get("/jobs/" + list[0].ID)
			sound(t, name, page)
			if len(page) > 200_000 {
				t.Errorf("%s: a page of %d bytes", name, len(page))
			}
		}
	}
	if len(d.logs) > 0 {
		t.Error(d.logs)
	}
	// A body that is longer than it says, or shorter.
	r := httptest.NewRequest(http.MethodPost, "/import", bytes.NewReader([]byte("--x\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a\"\r\n\r\n{")))
	r.Header.Set("Content-Type", "multipart/form-data; boundary=x")
	r.ContentLength = 1 << 40
	d.strange(r)
}

// FuzzInterface: whatever a program sends, the answer is as the interface says:
// never our fault, and what goes wrong in its one shape.
func FuzzInterface(f *testing.F) {
	for _, seed := range []struct{ path, body string }{
		{"/jobs?limit=5&before=3", ""},
		{"/jobs/example-old-pond/choose?shelf=shared&pumps=any&speed=5+ft/s&years=3", ""},
		{"/check", `{"format":"plashet job","version":1,"name":"x","units":"us","runs":[{"length":"60 ft"}]}`},
		{"/jobs/example-old-pond", `{"set":[{"path":"/runs/0/length","value":"62 ft"}]}`},
		{"/jobs/example-old-pond/explain/pump.flow", ""},
		{"/tables/pipe", ""},
		{"/arrange/00", ""},
		{"/quote?for=client", "[]"},
		{"/jobs/%2e%2e/draw/x", "\xff"},
	} {
		f.Add(seed.path, seed.body)
	}
	d := newDesk(f)
	f.Fuzz(func(t *testing.T, path, body string) {
		d.t = t
		at, query, _ := strings.Cut(path, "?")
		for _, method := range []string{http.MethodGet, http.MethodPost, http.MethodPatch, http.MethodPut, http.MethodDelete} {
			r := httptest.NewRequest(method, "/", strings.NewReader(body))
			r.URL.Path, r.URL.RawQuery = underInterface+"/"+strings.TrimPrefix(at, "/"), query
			if method != http.MethodGet {
				r.Header.Set("Content-Type", "application/json")
				r.Header.Set("If-Match", etag(d.newest("example-old-pond").Number))
			}
			d.strange(r)
		}
	})
}
