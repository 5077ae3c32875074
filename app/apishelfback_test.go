package app

import (
	"net/http"
	"strconv"
	"strings"
	"testing"
)

// shelfBack undoes changes of a pump and of the list of prices, and returns to
// earlier states.
func (c *caller) shelfBack() {
	t := c.t
	t.Helper()
	c.rows("/api/v1/pumps", "Name,Flow (gpm),Head (ft),Watts (W)\nBack W,0,20,90\nBack W,30,12,\nBack W,60,0,\n")
	c.rows("/api/v1/prices", "Item,Unit,Price,Currency\nback tee 2,each,3.10,USD\n")
	const pump, price = "/api/v1/pumps/Back%20W", "/api/v1/prices/items/back%20tee%202"
	c.upon(http.MethodPost, pump+"/undo", `"1"`, http.StatusConflict) // it is the first state
	first, _ := strconv.Atoi(strings.Trim(c.etagOf(price), `"`))
	for _, x := range []struct {
		one, all, path   string
		began            int
		zero, two, three string
	}{
		{pump, pump, "/pumps/0/watts", 1, `"90 W"`, `"92 W"`, `"93 W"`},
		{price, "/api/v1/prices", "/price", first, `"3.10"`, `"3.20"`, `"3.30"`},
	} {
		tag := func(more int) string { return etag(x.began + more) }
		stands := func(want string, more int) {
			t.Helper()
			if body := c.get(x.one); !strings.Contains(body, want) || c.etagOf(x.one) != tag(more) {
				t.Errorf("%s: %s, want %s at %s, not %s", x.one, body, want, tag(more), c.etagOf(x.one))
			}
		}
		value := func(s string) string { return strings.Trim(s, `"`) }
		c.set(x.one, tag(0), http.StatusOK, x.path, value(x.two))
		c.set(x.one, tag(1), http.StatusOK, x.path, value(x.three))
		c.call(http.MethodPost, x.all+"/undo", "", http.StatusPreconditionRequired)
		c.upon(http.MethodPost, x.all+"/undo", tag(1), http.StatusPreconditionFailed)
		c.upon(http.MethodPost, x.all+"/undo", "*", http.StatusBadRequest)
		c.upon(http.MethodPost, x.all+"/undo?who="+strings.Repeat("x", 61), tag(2), http.StatusBadRequest)
		stands(x.three, 2)
		y := c.upon(http.MethodPost, x.all+"/undo?who=Ann", tag(2), http.StatusOK)
		if stands(x.two, 3); y.Revision != x.began+3 || y.What == "" || c.newest(y.ID).Who != "Ann" {
			t.Errorf("%+v", y)
		}
		c.upon(http.MethodPost, x.all+"/undo", tag(3), http.StatusOK) // again goes further back
		stands(x.zero, 4)
		c.upon(http.MethodPost, x.all+"/return?revision="+strconv.Itoa(x.began+2), tag(4), http.StatusOK)
		stands(x.three, 5)
		if y := c.upon(http.MethodPost, x.all+"/return?revision="+strconv.Itoa(x.began+2), tag(5), http.StatusOK); y.What != "" {
			t.Errorf("a state without a change was kept: %+v", y)
		}
		c.upon(http.MethodPost, x.all+"/return?revision=1", tag(4), http.StatusPreconditionFailed)
		c.upon(http.MethodPost, x.all+"/return?revision=999", tag(5), http.StatusUnprocessableEntity)
		c.upon(http.MethodPost, x.all+"/return", tag(5), http.StatusUnprocessableEntity)
		c.upon(http.MethodPost, x.all+"/return?revision=0", tag(5), http.StatusBadRequest)
		stands(x.three, 5)
		states := reads[apiStates](c, c.call(http.MethodGet, x.all+"/history?limit=2", "", http.StatusOK))
		if len(states.States) != 2 || states.States[0].Revision != x.began+5 || states.Next == "" {
			t.Errorf("%+v", states)
		}
	}
	// Putting aside is passed over: the fields go back, and it stays aside.
	c.call(http.MethodDelete, pump, "", http.StatusOK, "If-Match", `"6"`)
	c.upon(http.MethodPost, pump+"/undo", `"7"`, http.StatusOK)
	if body := c.get(pump); !strings.Contains(body, `"90 W"`) || !strings.Contains(body, `"aside":true`) {
		t.Error(body)
	}
	// One undo takes back a whole import.
	c.rows("/api/v1/prices", "Item,Unit,Price,Currency\nback cap 2,each,1.10,USD\nback tee 2,each,9.00,USD\n")
	c.upon(http.MethodPost, "/api/v1/prices/undo", etag(first+6), http.StatusOK)
	if list := c.get("/api/v1/prices"); strings.Contains(list, "back cap 2") || strings.Contains(list, "9.00") {
		t.Error(list)
	}
	for _, path := range []string{"/api/v1/pumps/none/undo", "/api/v1/pumps/none/return?revision=1"} {
		c.upon(http.MethodPost, path, `"1"`, http.StatusNotFound)
	}
	c.call(http.MethodGet, "/api/v1/pumps/none/history", "", http.StatusNotFound)
}

func TestInterfaceShelfBack(t *testing.T) {
	c, _ := newCaller(t)
	for _, path := range []string{"undo", "return?revision=1"} { // there are no prices yet
		c.upon(http.MethodPost, "/api/v1/prices/"+path, `"1"`, http.StatusNotFound)
	}
	c.call(http.MethodGet, "/api/v1/prices/history", "", http.StatusNotFound)
	c.shelfBack()
	if len(c.logs) > 0 {
		t.Error(c.logs)
	}
}
