package app

import (
	"context"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"
)

// byHand runs work when it is told to, so that a test sees a page before, amid
// and after it.
type byHand struct {
	work map[string]Work
	runs map[string]Run
	full bool
	stop map[string]bool
}

func newByHand() *byHand {
	return &byHand{work: map[string]Work{}, runs: map[string]Run{}, stop: map[string]bool{}}
}

func (b *byHand) Start(key, of string, w Work) bool {
	if b.full {
		return false
	}
	b.work[key], b.runs[key] = w, Run{Of: of, Progress: "begun"}
	return true
}

func (b *byHand) Look(key string) (Run, bool) { r, ok := b.runs[key]; return r, ok }
func (b *byHand) Stop(key string)             { b.stop[key] = true }

// all does what was begun.
func (b *byHand) all() {
	for key, w := range b.work {
		ctx, stop := context.WithCancel(context.Background())
		if b.stop[key] {
			stop()
		}
		b.runs[key] = Run{Of: b.runs[key].Of, Done: true, Result: w(ctx, func(string) {})}
		stop()
		delete(b.work, key)
	}
}

// withRuns gives the desk a runner.
func withRuns(t testing.TB) (*desk, *byHand) {
	d, b := newDesk(t), newByHand()
	d.given.Runs = b
	d.Handler = New(d.given)
	return d, b
}

// Layouts are looked for beside the pages; one that is kept becomes the assembly.
func TestLayoutsFoundAndKept(t *testing.T) {
	d, runs := withRuns(t)
	const id = "example-terrace-spout"
	const at = "/jobs/" + id
	sound(t, "before", d.get(at+"/layouts"))
	if code, page := d.post(at+"/layouts/keep", "layout", "1"); code != http.StatusUnprocessableEntity || !strings.Contains(page, "not at hand") {
		t.Error("kept what nobody found", code)
	}
	_, page := d.post(at+"/layouts/find", "elbows", "2")
	if !strings.Contains(page, "data-beside") || !strings.Contains(page, "begun") || !strings.Contains(page, `href="`+at+`/layouts">See how far`) {
		t.Error("the page does not show that it runs")
	}
	sound(t, "amid", page)
	runs.all()
	page = d.get(at + "/layouts")
	sound(t, "after", page)
	if strings.Contains(page, "data-beside") || strings.Count(page, "Keep this one") < 2 || !strings.Contains(page, "Pull the plug") {
		t.Fatal("no layouts side by side")
	}
	if code, page := d.post(at+"/layouts/keep", "layout", "2", "here", "vault"); code != http.StatusSeeOther || !strings.Contains(page, "Pieces of pipe") {
		t.Fatal(code, page)
	}
	rev := d.newest(id)
	if rev.Number != 2 || !strings.Contains(string(rev.Data), `"kept"`) {
		t.Error("the layout is not in the job", rev.What)
	}
	page = d.get(at + "/layouts")
	if !strings.Contains(page, "worked out from state 1") || strings.Contains(page, "Keep this one") {
		t.Error("what was found for the state before is not said to be stale")
	}
	if code, _ := d.post(at+"/layouts/keep", "layout", "1"); code != http.StatusConflict {
		t.Error("a stale layout was kept", code)
	}
	d.post(at+"/layouts/find", "elbows", "2")
	runs.all()
	for _, n := range []string{"0", "99", "x"} {
		if code, _ := d.post(at+"/layouts/keep", "layout", n); code != http.StatusUnprocessableEntity {
			t.Errorf("layout %s: %d", n, code)
		}
	}
	if code, _ := d.post(at+"/layouts/drawn", "here", "vault"); code != http.StatusSeeOther {
		t.Error("the drawn one is not kept", code)
	}
}

// Layouts without a union stand side by side too: where a depth would stand it says
// that there is none, and nothing is broken.
func TestLayoutsWithoutUnion(t *testing.T) {
	d, runs := withRuns(t)
	const id = "example-terrace-spout"
	const at = "/jobs/" + id
	if code, page := d.post(at+"/set", "here", "vault", "/assembly/search/noUnion", "true"); code != http.StatusSeeOther {
		t.Fatal(code, page)
	}
	d.post(at+"/layouts/find", "elbows", "2")
	runs.all()
	page := d.get(at + "/layouts")
	sound(t, "without a union", page)
	if strings.Count(page, "Keep this one") < 1 || !strings.Contains(page, "no union") {
		t.Error("no layouts without a union side by side")
	}
}

// Where nothing fits, what would mend it is offered, each with what it changes;
// taking it searches again.
func TestLayoutsShort(t *testing.T) {
	d, runs := withRuns(t)
	const id = "example-courtyard-rill"
	const at = "/jobs/" + id
	d.post(at+"/layouts/find", "elbows", "3")
	runs.all()
	page := d.get(at + "/layouts")
	sound(t, "short", page)
	// The vault is 360 mm long; what is offered is longer, and that it is enough
	// the search tells that follows.
	longer := regexp.MustCompile(`360 mm</span> to <span class="num">(3[6-9][1-9]|3[7-9]0|[4-7]\d\d) mm`)
	if !strings.Contains(page, "Nothing fits") || !longer.MatchString(page) {
		t.Fatal("nothing is offered")
	}
	code, page := d.post(at+"/layouts/mend", "mend", "0")
	if code != http.StatusSeeOther || !strings.Contains(page, "data-beside") {
		t.Fatal("it does not look again", code)
	}
	runs.all()
	if page = d.get(at + "/layouts"); !strings.Contains(page, "Keep this one") {
		t.Error("nothing fits after what was to mend it")
	}
	if code, _ := d.post(at+"/layouts/mend", "mend", "0"); code != http.StatusUnprocessableEntity {
		t.Error("mended what fits", code)
	}
}

// A search that is stopped, one for which there is no room, and a device that
// can do none.
func TestLayoutsStopped(t *testing.T) {
	d, runs := withRuns(t)
	const at = "/jobs/example-terrace-spout"
	d.post(at + "/layouts/find")
	d.post(at + "/layouts/stop")
	runs.all()
	page := d.get(at + "/layouts")
	if !strings.Contains(page, "Not proven: the search was stopped") && !strings.Contains(page, "proves nothing") {
		t.Error("what was stopped is not told as such")
	}
	sound(t, "stopped", page)
	runs.full = true
	if code, _ := d.post(at + "/layouts/find"); code != http.StatusServiceUnavailable {
		t.Error(code)
	}
	plain := newDesk(t)
	sound(t, "no runs", plain.get(at+"/layouts"))
	if code, _ := plain.post(at + "/layouts/find"); code != http.StatusServiceUnavailable {
		t.Error(code)
	}
}

// Every part and piece of the drawing leads to a page of its own.
func TestTouchedPieces(t *testing.T) {
	d := newDesk(t)
	const at = "/jobs/example-terrace-spout"
	for _, corner := range []string{"", "?corner=back-left", "?corner=nowhere"} {
		page := d.get(at + "/part/vault" + corner)
		sound(t, corner, page)
		n := 0
		for _, x := range strings.Split(page, `<a href="`+at+`/piece/`)[1:] {
			mark, _, _ := strings.Cut(x, `"`)
			p := d.get(at + "/piece/" + mark)
			sound(t, mark, p)
			if strings.Contains(p, "class=\"cutline\"") && (!strings.Contains(p, "End toward the wall") || strings.Count(p, "mark it at") != 2) {
				t.Errorf("%s: a piece without its two ends", mark)
			}
			n++
		}
		if n < 8 {
			t.Errorf("%q: %d things can be touched", corner, n)
		}
	}
	if code, _, _ := d.ask(http.MethodGet, at+"/piece/none", nil); code != http.StatusNotFound {
		t.Error(code)
	}
	code, _, h := d.ask(http.MethodPost, at+"/set?corner=back-left", url.Values{"base": {"1"}, "here": {"vault"}, "/vault/depth": {"27 in"}})
	if code != http.StatusSeeOther || !strings.Contains(h.Get("Location"), "/part/vault?corner=back-left") {
		t.Error("the corner is lost by an edit", code, h.Get("Location"))
	}
}
