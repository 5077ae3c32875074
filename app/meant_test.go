package app

import (
	"net/http"
	"strings"
	"testing"
)

// TestMeant: what can be read in two ways is asked back with the readings that the
// field takes as buttons; a tap on one is the answer.
func TestMeant(t *testing.T) {
	d := newDesk(t)
	const id, at = "example-terrace-spout", "/jobs/example-terrace-spout"
	number := d.newest(id).Number
	status, page := d.post(at+"/set", "here", "pond", "/pond/depth", "1.410 mm")
	if status != http.StatusUnprocessableEntity || d.newest(id).Number != number {
		t.Fatalf("%d: it was taken", status)
	}
	sound(t, "asked", page)
	holds := func(page string, texts ...string) {
		t.Helper()
		for _, want := range texts {
			if !strings.Contains(page, want) {
				t.Errorf("%s is not on the page:\n%s", want, page)
			}
		}
	}
	holds(page, `name="nudge" value="=1410%20mm /pond/depth">I mean 1410 mm</button>`, `“1410 mm” is the likely one`)
	if strings.Contains(page, "1.4100") {
		t.Error("a depth of 1.41 mm is offered")
	}
	_, both := d.post(at+"/set", "here", "pond", "/pond/water", "1.410 mm")
	holds(both, `name="nudge" value="=1410%20mm /pond/water">I mean 1410 mm</button>`, `name="nudge" value="=1.4100%20mm /pond/water">I mean 1.4100 mm</button>`)
	if status, page := d.post(at+"/set", "here", "pond", "/pond/depth", "1.410 mm", "nudge", "=1410%20mm /pond/depth"); status >= 400 || strings.Contains(page, "two ways") {
		t.Errorf("the answer was not taken: %d", status)
	}
	if data := string(d.newest(id).Data); !strings.Contains(data, `"depth": "1410 mm"`) || d.newest(id).Number != number+1 {
		t.Error(data)
	}
	for _, press := range []string{"=", "= /", "=%zz /pond/depth", "=1", "=1 pond", "=%00 /pond/depth", "=x /no/such"} { // made up: told, or nothing, never ours
		if status, _ := d.post(at+"/set", "here", "pond", "nudge", press); status >= 500 {
			t.Errorf("%q: %d", press, status)
		}
	}
}
