package app

import (
	"net/http"
	"strings"
	"testing"
)

// A fault that is found in working out stands on the page of its part, which then
// does not say that nothing is amiss, and on the tab of that part.
func TestFaultOnItsPart(t *testing.T) {
	d := newDesk(t)
	const at, told = "/jobs/example-hillside-cascade", "no stick or offcut of it is given"
	if strings.Contains(d.get(at+"/part/cuts"), told) {
		t.Fatal("the example has the fault already")
	}
	if code, page := d.post(at+"/set", "here", "cuts", "/stock/pieces/0/pipe/size", "4"); code != http.StatusSeeOther {
		t.Fatal(code, page)
	}
	page := d.get(at + "/part/cuts")
	sound(t, "cuts", page)
	if !strings.Contains(page, told) || strings.Contains(page, "Nothing was found amiss") {
		t.Error("the part does not tell its fault")
	}
	if page := d.get(at + "/part/pond"); strings.Contains(page, told) || !strings.Contains(page, `Cuts<span class="count stop">`) {
		t.Error("another part tells it, or the tab does not count it")
	}
}
