package app

import (
	"context"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/store"
	"plashet/store/memory"
	"plashet/words"
)

// desk is the pages with a store in memory, a clock that ticks by hand and the
// examples put in.
type desk struct {
	http.Handler
	t     testing.TB
	store store.Store
	given Given
	logs  []string
}

func newDesk(t testing.TB) *desk {
	t.Helper()
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	d := &desk{t: t, store: memory.New()}
	ids, ticks := 0, 0
	d.given = Given{
		Store: d.store, Book: book, Languages: words.Languages(),
		Now: func() time.Time {
			ticks++
			return time.Date(2026, 5, 14, 8, 0, ticks, 0, time.UTC)
		},
		NewID:    func() string { ids++; return "id" + strconv.Itoa(ids) },
		Device:   func(r *http.Request) Device { return Device{Who: r.Header.Get("Test-Who")} },
		Remember: func(w http.ResponseWriter, x Device) { w.Header().Set("Test-Who", x.Who+" "+x.Mode) },
		Log:      func(ref string, err error) { d.logs = append(d.logs, ref+": "+err.Error()) },
	}
	if err := Seed(context.Background(), d.given); err != nil {
		t.Fatal(err)
	}
	d.Handler = New(d.given)
	return d
}

// ask sends one request and reads the answer.
func (d *desk) ask(method, path string, form url.Values) (int, string, http.Header) {
	d.t.Helper()
	r := httptest.NewRequest(method, path, strings.NewReader(form.Encode()))
	r.Header.Set("Test-Who", "Ann")
	if method == http.MethodPost {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	w := httptest.NewRecorder()
	d.ServeHTTP(w, r)
	return w.Code, w.Body.String(), w.Header()
}

func (d *desk) get(path string) string {
	d.t.Helper()
	code, body, _ := d.ask(http.MethodGet, path, nil)
	if code != http.StatusOK {
		d.t.Fatalf("%s: %d %v", path, code, d.logs)
	}
	return body
}

// post sends a form upon the newest revision and follows the way on.
func (d *desk) post(path string, pairs ...string) (int, string) {
	d.t.Helper()
	form := url.Values{}
	if id, _, ok := strings.Cut(strings.TrimPrefix(path, "/jobs/"), "/"); ok && id != "" {
		form.Set("base", strconv.Itoa(d.newest(id).Number))
	}
	for i := 0; i+1 < len(pairs); i += 2 {
		form.Set(pairs[i], pairs[i+1])
	}
	code, body, h := d.ask(http.MethodPost, path, form)
	if code == http.StatusSeeOther {
		at, _, _ := strings.Cut(h.Get("Location"), "#")
		return code, d.get(at)
	}
	return code, body
}

func (d *desk) newest(id string) store.Revision {
	d.t.Helper()
	rev, err := d.store.Get(context.Background(), id)
	if err != nil {
		d.t.Fatal(id, err)
	}
	return rev
}

// broken looks for text that only a programmer should see.
var broken = regexp.MustCompile(`%!|\{[a-z]+\}|ZgotmplZ|&lt;nil&gt;|\bNaN\b|app\.[a-z]+\.|panic`)

// sound holds a page against the rules of every page: well-formed, one title,
// one first heading, names that stand once, and a label for each input.
func sound(t testing.TB, path, page string) {
	t.Helper()
	if m := broken.FindString(page); m != "" {
		t.Errorf("%s: shows %q", path, m)
	}
	dec := xml.NewDecoder(strings.NewReader(strings.Replace(page, "<!DOCTYPE html>", "", 1)))
	dec.Entity = xml.HTMLEntity
	ids, labels, needs := map[string]bool{}, map[string]bool{}, []string{}
	count := map[string]int{}
	level := 0
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%s: not well-formed: %v", path, err)
		}
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		at := map[string]string{}
		for _, a := range e.Attr {
			at[a.Name.Local] = a.Value
		}
		name := e.Name.Local
		count[name]++
		if id, ok := at["id"]; ok {
			if ids[id] || id == "" {
				t.Errorf("%s: the id %q stands twice or is empty", path, id)
			}
			ids[id] = true
		}
		if name == "label" {
			labels[at["for"]] = true
		}
		if at["style"] != "" || (name == "script" && at["src"] == "") || name == "style" {
			t.Errorf("%s: <%s> has a style or script of its own, which the policy forbids", path, name)
		}
		for a := range at {
			if strings.HasPrefix(a, "on") {
				t.Errorf("%s: <%s %s>", path, name, a)
			}
		}
		if (name == "input" || name == "select" || name == "textarea") && at["type"] != "hidden" {
			needs = append(needs, at["id"])
		}
		if name == "button" && at["type"] == "" {
			t.Errorf("%s: a button without a type", path)
		}
		if len(name) == 2 && name[0] == 'h' && name[1] >= '1' && name[1] <= '6' {
			if n := int(name[1] - '0'); n > level+1 {
				t.Errorf("%s: <%s> follows <h%d>", path, name, level)
			} else {
				level = n
			}
		}
	}
	for _, id := range needs {
		if id == "" || !labels[id] {
			t.Errorf("%s: the input %q has no label", path, id)
		}
	}
	for _, name := range []string{"title", "h1", "main", "html"} {
		if count[name] == 0 || name == "h1" && count[name] != 1 {
			t.Errorf("%s: %d times <%s>", path, count[name], name)
		}
	}
}

// everyPage lists the pages of the examples.
func everyPage() []string {
	list := []string{"/", "/?aside=1", "/?text=nothing+such", "/new", "/device"}
	for _, name := range demo.Names() {
		at := "/jobs/example-" + name
		list = append(list, at, at+"/history", at+"/history/1", at+"/assumed", at+"/why/pump.flow", at+"/why/feed.0.flow", at+"/choose", at+"/choose?shelf=invented")
		for _, p := range parts {
			list = append(list, at+"/part/"+p.Key)
		}
	}
	return list
}

func TestEveryPage(t *testing.T) {
	d := newDesk(t)
	for _, path := range everyPage() {
		sound(t, path, d.get(path))
	}
	if len(d.logs) > 0 {
		t.Error(d.logs)
	}
}

// What is not there is told, with its status, on a page of the same kind.
func TestNoSuchPage(t *testing.T) {
	d := newDesk(t)
	for path, status := range map[string]int{
		"/nothing": 404, "/jobs/none": 404, "/jobs/none/part/pond": 404, "/jobs/example-old-pond/part/none": 404, "/jobs/example-old-pond/history/99": 404,
		"/jobs/example-old-pond/history/x": 404, "/jobs/example-old-pond/why/none": 404, "/static/none.css": 404, "/jobs/example-old-pond/draw/none.svg": 404, "/?before=none": 404,
	} {
		code, page, _ := d.ask(http.MethodGet, path, nil)
		if code != status {
			t.Errorf("%s: %d", path, code)
		}
		sound(t, path, page)
	}
}

func TestList(t *testing.T) {
	page := newDesk(t).get("/")
	for _, want := range []string{"Courtyard rill", "Hillside cascade", "Old pond, swapped pump", "ready to cut", ">stop<"} {
		if !strings.Contains(page, want) {
			t.Errorf("the list does not show %q", want)
		}
	}
}

// flows reads the flows off a page's answer.
func flows(page string) string {
	return fmt.Sprint(regexp.MustCompile(`<b class="num">([^<]+gpm)</b>`).FindAllStringSubmatch(page, -1))
}

// An edit moves the answer, is told in plain words, and can be undone.
func TestEditMovesTheAnswer(t *testing.T) {
	d := newDesk(t)
	const at = "/jobs/example-hillside-cascade"
	before := d.get(at + "/part/pipe")
	code, after := d.post(at+"/set", "here", "pipe", "/runs/1/length", "90 ft")
	if code != http.StatusSeeOther || flows(before) == flows(after) {
		t.Fatal(code, flows(before), flows(after))
	}
	rev := d.newest("example-hillside-cascade")
	if rev.Number != 2 || rev.Who != "Ann" || !strings.Contains(rev.What, "56 ft to 90 ft") || !strings.Contains(rev.What, " gpm, now ") || rev.When.IsZero() {
		t.Errorf("told wrongly: %d %q by %q", rev.Number, rev.What, rev.Who)
	}
	if _, page := d.post(at + "/undo"); !strings.Contains(page, "Undone") {
		t.Error("nothing tells that it was undone")
	}
	if got := d.get(at + "/part/pipe"); flows(got) != flows(before) || d.newest("example-hillside-cascade").Digest == rev.Digest {
		t.Error("undo did not bring back what was")
	}
	if code, _ := d.post(at + "/undo"); code != http.StatusConflict {
		t.Error("there was nothing more to undo", code)
	}
	if _, page := d.post(at+"/return", "number", "2"); !strings.Contains(page, "Returned to state 2") {
		t.Error("the state did not come back")
	}
	sound(t, "history", d.get(at+"/history"))
}

// What cannot be read stays as typed, with a sentence, and nothing is saved.
func TestWrongInputStays(t *testing.T) {
	d := newDesk(t)
	const at = "/jobs/example-hillside-cascade"
	code, page := d.post(at+"/set", "here", "pipe", "/runs/1/length", "sixty feet & more")
	if code != http.StatusUnprocessableEntity || d.newest("example-hillside-cascade").Number != 1 {
		t.Fatal(code)
	}
	for _, want := range []string{`value="sixty feet &amp; more"`, `class="error"`, "46.3 gpm"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	sound(t, "wrong input", page)
}

// A save that started from an older state is refused with both sides shown, and
// each field can be chosen.
func TestStaleSave(t *testing.T) {
	d := newDesk(t)
	const at, id = "/jobs/example-hillside-cascade", "example-hillside-cascade"
	d.post(at+"/set", "here", "pipe", "/runs/1/length", "90 ft", "/runs/0/length", "5 ft")
	code, page := d.post(at+"/set", "base", "1", "here", "pipe", "/runs/1/length", "70 ft", "/runs/2/length", "33 ft")
	if code != http.StatusConflict || d.newest(id).Number != 2 {
		t.Fatal(code, d.newest(id).Number)
	}
	sound(t, "stale", page)
	for _, want := range []string{"yours: 70 ft", "now: 90 ft", "yours: 33 ft", "4 ft to 5 ft", "both changed it"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	if code, _ := d.post(at+"/set", "here", "pipe", "/runs/1/length", "70 ft", "/runs/2/length", "33 ft"); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	if data := string(d.newest(id).Data); !strings.Contains(data, "70 ft") || !strings.Contains(data, "33 ft") || !strings.Contains(data, `"5 ft"`) {
		t.Error("the chosen fields are not all there")
	}
}

func TestNewJob(t *testing.T) {
	d := newDesk(t)
	code, page := d.post("/new", "units", "us", "name", "", "place", "by the barn")
	if code != http.StatusUnprocessableEntity || !strings.Contains(page, `value="by the barn"`) || !strings.Contains(page, `class="error"`) {
		t.Fatal(code, page)
	}
	sound(t, "new", page)
	code, page = d.post("/new", "units", "us", "name", "Only a name")
	if code != http.StatusSeeOther {
		t.Fatal(code)
	}
	sound(t, "only a name", page)
	for _, p := range parts {
		sound(t, p.Key, d.get("/jobs/id1/part/"+p.Key))
	}
}

func TestListsGrowAndShrink(t *testing.T) {
	d := newDesk(t)
	const at, id = "/jobs/example-hillside-cascade", "example-hillside-cascade"
	for _, pairs := range [][]string{
		{"list", "/watercourses/0/parts", "kind", "pool", "name", "last pool"},
		{"/pumps/-/name", "N"},
		{"/runs/0/fittings/-/fitting", "elbow 45"},
		{"/pumps/0/curve/-/flow", "103 gpm", "/pumps/0/curve/-/head", "0 ft"},
	} {
		if code, page := d.post(at+"/add", append(pairs, "here", "falls")...); code != http.StatusSeeOther {
			t.Errorf("%v: %d %s", pairs, code, page)
		}
	}
	data := string(d.newest(id).Data)
	for _, want := range []string{"last pool", `"name": "N"`, "103 gpm"} {
		if !strings.Contains(data, want) {
			t.Errorf("%s was not added", want)
		}
	}
	if code, _ := d.post(at+"/remove", "path", "/pumps/2", "here", "pump"); code != http.StatusSeeOther || strings.Contains(string(d.newest(id).Data), `"name": "N"`) {
		t.Error("not removed", code)
	}
	if code, _ := d.post(at+"/move", "path", "/runs/1", "by", "-1", "here", "pipe"); code != http.StatusSeeOther {
		t.Error(code)
	}
	for _, path := range []string{"", "/", "/runs", "/runs/99", "/runs/-1", "/none/0", "runs"} {
		for _, do := range []string{"remove", "move", "add"} {
			if code, page := d.post(at+"/"+do, "path", path, "list", path, "kind", "x"); code/100 != 4 {
				t.Errorf("%s %q: %d", do, path, code)
			} else {
				sound(t, do+path, page)
			}
		}
	}
}

func TestAcceptWithAReason(t *testing.T) {
	d := newDesk(t)
	const at = "/jobs/example-hillside-cascade"
	_, page := d.post(at+"/accept", "code", "design.flow.short", "path", "/watercourses/0", "reason", "the owner likes it quiet")
	if !strings.Contains(page, "Accepted: the owner likes it quiet") || !strings.Contains(page, "0 to stop for") {
		t.Error("not accepted")
	}
	sound(t, "accepted", page)
	if code, page := d.post(at+"/accept", "code", "design.flow.short", "path", "/watercourses/0", "reason", ""); code != http.StatusUnprocessableEntity {
		t.Error("accepted without a reason", code, page)
	}
	if _, page := d.post(at+"/accept", "code", "design.flow.short", "path", "/watercourses/0", "open", "1"); !strings.Contains(page, "1 to stop for") {
		t.Error("it does not stand again")
	}
}

func TestStepperMovesByASixteenth(t *testing.T) {
	d := newDesk(t)
	const at, id = "/jobs/example-hillside-cascade", "example-hillside-cascade"
	for i, want := range []string{`8-5/16\"`, `8-1/4\"`} {
		d.post(at+"/set", "here", "vault", "nudge", []string{"+1", "-1"}[i]+" /vault/outlet/along")
		if data := string(d.newest(id).Data); !strings.Contains(data, want) {
			t.Errorf("no %s in the job", want)
		}
	}
}

// BenchmarkEdit is an edit as a browser does it: the post, and the page with the
// new answer and its drawings.
func BenchmarkEdit(b *testing.B) {
	d := newDesk(b)
	n := 0
	for b.Loop() {
		n++
		code, page := d.post("/jobs/example-hillside-cascade/set", "here", "pipe", "/runs/1/length", strconv.Itoa(50+n%40)+"."+strconv.Itoa(n)+" ft")
		if code != http.StatusSeeOther || page == "" {
			b.Fatal(code)
		}
	}
}
