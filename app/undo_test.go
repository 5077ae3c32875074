package app

import (
	"net/http"
	"strings"
	"testing"

	"plashet/job"
)

// rimOf reads what stands in a field that the tests of undo change.
func (d *desk) rimOf(id string) string {
	d.t.Helper()
	j, _ := job.Read(d.newest(id).Data)
	return j.Pond.Rim.Text
}

// A change taken back by hand gives a state like the one before it; undo brings
// back what was taken back, and undo again what stood before, each once.
func TestUndoOfLikeStates(t *testing.T) {
	d := newDesk(t)
	const id, at = "example-hillside-cascade", "/jobs/example-hillside-cascade"
	first := d.rimOf(id)
	if code, _ := d.post(at+"/set", "here", "pond", "/pond/rim", "@water + 4 in"); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	set1 := d.newest(id).What
	if code, _ := d.post(at + "/undo"); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	if what := d.newest(id).What; set1 == "" || !strings.Contains(what, set1) {
		t.Errorf("undo tells %q, which does not name the change %q", what, set1)
	}
	set := func(text string) {
		if code, page := d.post(at+"/set", "here", "pond", "/pond/rim", text); code != http.StatusSeeOther {
			t.Fatal(code, page)
		}
	}
	undo := func(want string) {
		t.Helper()
		if code, _ := d.post(at+"/undo", "here", "pond"); code != http.StatusSeeOther {
			t.Fatalf("undo answers %d, want %q", code, want)
		}
		if got := d.rimOf(id); got != want {
			t.Errorf("undo leaves %q, want %q", got, want)
		}
	}
	set("@water + 5 in")
	set("@water + 6 in")
	set("@water + 5 in")
	set("@water + 7 in")
	undo("@water + 5 in")
	undo("@water + 6 in") // not the state before the first like it
	undo("@water + 5 in")
	set("@water + 8 in") // upon what was undone
	undo("@water + 5 in")
	undo(first)
	if code, _ := d.post(at + "/undo"); code != http.StatusConflict {
		t.Error("there was nothing more to undo", code)
	}
	set("@water + 9 in")
	d.post(at + "/archive") // leaves the job as it is
	undo(first)
}
