package app

import (
	"net/http"
	"strings"
	"testing"
)

// The answer comes without its bands; they are worked out beside it, and tell
// what to measure again.
func TestDoubtBands(t *testing.T) {
	d, runs := withRuns(t)
	const at = "/jobs/example-hillside-cascade"
	page := d.get(at)
	sound(t, "before", page)
	if !strings.Contains(page, `id="sure" data-beside`) || strings.Contains(page, `class="doubt"`) {
		t.Fatal("the page does not say that the bands are on their way")
	}
	d.get(at) // asked again, it is not begun again
	if len(runs.work) != 1 {
		t.Fatalf("%d runs", len(runs.work))
	}
	runs.all()
	page = d.get(at)
	sound(t, "after", page)
	for _, want := range []string{`class="doubt"`, "% of the doubt about"} {
		if !strings.Contains(page, want) {
			t.Errorf("the answer lacks %q", want)
		}
	}
	page = d.get(at + "/doubt")
	sound(t, "doubt", page)
	if !strings.Contains(page, "Worth measuring again") || strings.Count(page, `class="doubtline"`) < 5 || strings.Count(page, `class="shares"`) < 5 {
		t.Error("the page of doubts lacks lines or shares")
	}
	d.post(at+"/set", "here", "pipe", "/runs/1/length", "90 ft")
	if page := d.get(at); !strings.Contains(page, `id="sure" data-beside`) || strings.Contains(page, `class="doubt"`) {
		t.Error("bands of the state before stand beside the new answer")
	}
	sound(t, "no runs", newDesk(t).get(at+"/doubt"))
}

// Every case of start and stop can be looked at moment by moment.
func TestPlay(t *testing.T) {
	d := newDesk(t)
	const at = "/jobs/example-terrace-spout"
	n := 0
	for _, x := range strings.Split(d.get(at+"/part/levels"), `href="`+at+`/play/`)[1:] {
		which, _, _ := strings.Cut(x, `"`)
		for _, k := range []string{"", "?at=0", "?at=2", "?at=99999", "?at=-1", "?at=x"} {
			page := d.get(at + "/play/" + which + k)
			sound(t, which+k, page)
			if !strings.Contains(page, `id="frame"`) || !strings.Contains(page, "All moments in a table") {
				t.Errorf("%s%s shows nothing", which, k)
			}
		}
		n++
	}
	if n < 5 {
		t.Errorf("only %d cases", n)
	}
	for _, which := range []string{"none", "", "x%2fy"} {
		if code, _, _ := d.ask(http.MethodGet, at+"/play/"+which, nil); code != http.StatusNotFound {
			t.Error(which, code)
		}
	}
	if a, b := d.get(at+"/play/first?at=0"), d.get(at+"/play/first?at=9"); a == b {
		t.Error("the moments are alike")
	}
}
