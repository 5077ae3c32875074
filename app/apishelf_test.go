package app

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"plashet/shelf/keep"
)

// rows takes rows of CSV onto a shelf.
func (c *caller) rows(path, rows string) {
	c.t.Helper()
	if x := reads[apiImported](c, c.call(http.MethodPost, path+"?yes=true", rows, http.StatusOK, "Content-Type", "text/csv")); !x.Taken {
		c.t.Fatalf("%+v", x)
	}
}

// shelfOnes reads, changes and takes off single pumps and prices, each upon the
// state that it names.
func (c *caller) shelfOnes() {
	c.t.Helper()
	c.onePump()
	c.onePrice()
}

func (c *caller) onePump() {
	t := c.t
	t.Helper()
	c.rows("/api/v1/pumps", "Name,Flow (gpm),Head (ft),Watts (W)\nLone 1/2 V,0,20,90\nLone 1/2 V,30,12,\nLone 1/2 V,60,0,\n")
	const named = "/api/v1/pumps/lone%201%2F2%20v" // by name, whatever its letters' size
	c.get(named)
	list, _, _, err := keep.Pumps(t.Context(), c.store, "Lone", false, 2)
	if err != nil || len(list) != 1 {
		t.Fatal(len(list), err)
	}
	at := "/api/v1/pumps/" + list[0].Rev.ID
	w := c.call(http.MethodGet, at, "", http.StatusOK)
	var got struct {
		apiShelfPump
		Job json.RawMessage `json:"job"`
	}
	if err := json.Unmarshal(w.Body.Bytes(), &got); err != nil || got.ID != list[0].Rev.ID || got.Name != "Lone 1/2 V" || got.Aside || !strings.Contains(string(got.Job), `"90 W"`) || w.Header().Get("ETag") != `"1"` {
		t.Errorf("%+v %s %v", got.apiShelfPump, got.Job, err)
	}
	set := func(match string, want int, pairs ...string) *httptest.ResponseRecorder {
		t.Helper()
		return c.set(at+"?who=Ann", match, want, pairs...)
	}
	x := reads[apiShelved](c, set(`"1"`, http.StatusOK, "/pumps/0/watts", "95 W", "/pumps/0/curve/1/head", "13 ft"))
	now, err := keep.Of(t.Context(), c.store, got.ID)
	if err != nil || x.Revision != 2 || !strings.Contains(x.What, "95 W") || now.Job.Pumps[0].Watts.Text != "95 W" || len(now.Job.Pumps[0].Curve) != 3 || now.Job.Pumps[0].Curve[1].Head.Text != "13 ft" || now.Rev.Who != "Ann" {
		t.Errorf("%+v %+v %v", x, now.Job.Pumps[0], err)
	}
	if x := reads[apiShelved](c, set(`"2"`, http.StatusOK, "/pumps/0/watts", "95 W")); x.Revision != 2 || x.What != "" {
		t.Errorf("a state without a change was kept: %+v", x)
	}
	if p := reads[Problem](c, set(`"1"`, http.StatusPreconditionFailed, "/pumps/0/watts", "99 W")); p.Code != "app.api.shelfstale" || p.Revision != 2 {
		t.Errorf("%+v", p)
	}
	c.call(http.MethodPatch, at, `{"set": [{"path": "/pumps/0/note", "value": "x"}]}`, http.StatusPreconditionRequired)
	for path, value := range map[string]string{
		"/pumps/0/watts": "much", "/pumps/0/name": "", "/pumps/0/wear": "5 %", "/pumps/1/name": "more", "/pumps/-": "", "/name": "other", "/runs/0/length": "5 ft", "": "", "/pumps/0/": "x", "/pumps/0/curve/9/head": "x",
	} {
		if p := reads[Problem](c, set(`"2"`, http.StatusUnprocessableEntity, path, value)); p.Detail == "" {
			t.Errorf("%s: %+v", path, p)
		}
	}
	c.call(http.MethodPatch, at, `{"set": []}`, http.StatusUnprocessableEntity, "If-Match", `"2"`)
	c.call(http.MethodPatch, at+"?who="+strings.Repeat("x", 61), `{"set": [{"path": "/pumps/0/note", "value": "x"}]}`, http.StatusBadRequest, "If-Match", `"2"`)
	if now, err := keep.Of(t.Context(), c.store, got.ID); err != nil || now.Rev.Number != 2 {
		t.Error("something refused was kept", now.Rev.Number, err)
	}
	// Off the shelf, and back onto it.
	c.call(http.MethodDelete, at, "", http.StatusPreconditionRequired)
	c.call(http.MethodDelete, at, "", http.StatusPreconditionFailed, "If-Match", `"1"`)
	for range 2 { // once more it stays as it is
		if x := reads[apiShelved](c, c.call(http.MethodDelete, at, "", http.StatusOK, "If-Match", c.etagOf(at))); x.Revision != 3 || strings.Contains(c.get("/api/v1/pumps"), "Lone 1/2 V") {
			t.Errorf("%+v", x)
		}
	}
	if body := c.get(named); !strings.Contains(body, `"aside":true`) {
		t.Error("a pump put aside is not found by its name", body)
	}
	if x := reads[apiShelved](c, c.call(http.MethodDelete, at+"/aside", "", http.StatusOK, "If-Match", `"3"`)); x.Revision != 4 || !strings.Contains(c.get("/api/v1/pumps"), "Lone 1/2 V") {
		t.Errorf("%+v", x)
	}
	// Two of one name are told apart by their identities.
	set(`"4"`, http.StatusOK, "/pumps/0/name", "Twin")
	c.rows("/api/v1/pumps", "Name,Flow (gpm),Head (ft)\nTwin 2,0,20\nTwin 2,30,12\nTwin 2,60,0\n")
	c.set("/api/v1/pumps/Twin%202", `"1"`, http.StatusOK, "/pumps/0/name", "twin")
	if p := reads[Problem](c, c.call(http.MethodGet, "/api/v1/pumps/Twin", "", http.StatusConflict)); !strings.Contains(p.Expected, got.ID) || !strings.Contains(p.Expected, ", ") {
		t.Errorf("%+v", p)
	}
	c.set(at, `"5"`, http.StatusOK, "/pumps/0/name", "Lone V")
	for _, path := range []string{"none", "prices", "example-old-pond", "%00", strings.Repeat("x", 5000)} {
		for _, method := range []string{http.MethodGet, http.MethodDelete} {
			if p := reads[Problem](c, c.call(method, "/api/v1/pumps/"+path, "", http.StatusNotFound, "Accept-Language", "es")); !strings.Contains(p.Detail, "bomba") {
				t.Errorf("%+v", p)
			}
		}
	}
	c.call(http.MethodPut, at, "{}", http.StatusMethodNotAllowed)
}

// etagOf gives the revision that an address tells.
func (c *caller) etagOf(path string) string {
	c.t.Helper()
	return c.call(http.MethodGet, path, "", http.StatusOK).Header().Get("ETag")
}

func (c *caller) onePrice() {
	t := c.t
	t.Helper()
	c.rows("/api/v1/prices", "Item,Unit,Price,Currency,Counter\nlone tee 2,each,3.10,USD,\nlone tee 2,box of 25,60.00,USD,\nlone tee 2,each,3.40,USD,far counter\nlone cap 2,each,1.10,USD,\n")
	const tee, cap = "/api/v1/prices/items/lone%20tee%202", "/api/v1/prices/items/Lone%20cap%202"
	match := c.etagOf(cap)
	x := reads[apiShelfPrice](c, c.call(http.MethodGet, tee+"?unit=Each&counter=far+counter&currency=usd", "", http.StatusOK))
	if x.Amount != "3.40" || x.Counter != "far counter" {
		t.Errorf("%+v", x)
	}
	if x := reads[apiShelfPrice](c, c.call(http.MethodGet, tee+"?unit=box+of+25", "", http.StatusOK)); x.Amount != "60.00" {
		t.Errorf("%+v", x)
	}
	for _, query := range []string{"", "?unit=each"} {
		if p := reads[Problem](c, c.call(http.MethodGet, tee+query, "", http.StatusConflict)); !strings.Contains(p.Expected, "3.40") {
			t.Errorf("%+v", p)
		}
	}
	c.call(http.MethodGet, tee+"?item=x", "", http.StatusBadRequest)
	y := reads[apiShelved](c, c.set(cap+"?who=Ann", match, http.StatusOK, "/price", "1.25", "/date", "2026-03-01", "/order", "2"))
	if x := reads[apiShelfPrice](c, c.call(http.MethodGet, cap, "", http.StatusOK)); x.Amount != "1.25" || x.Date != "2026-03-01" || x.Order != 2 || x.Item != "lone cap 2" || !strings.Contains(y.What, "1.25") || c.newest(keep.PricesID).Who != "Ann" {
		t.Errorf("%+v %+v", x, y)
	}
	if p := reads[Problem](c, c.set(cap, match, http.StatusPreconditionFailed, "/price", "1.30")); p.Code != "app.api.shelfstale" || p.Revision != y.Revision {
		t.Errorf("%+v", p)
	}
	match = c.etagOf(cap)
	for path, value := range map[string]string{
		"/price": "dear", "/currency": "dollars", "/unit": "handful", "/date": "3/1/26", "/order": "1000", "/item": "", "/aside": "perhaps", "/number": "1", "price": "1", "": "",
	} {
		if p := reads[Problem](c, c.set(cap, match, http.StatusUnprocessableEntity, path, value)); p.Where == "" && path != "" {
			t.Errorf("%s: %+v", path, p)
		}
	}
	if p := reads[Problem](c, c.set(tee+"?unit=box+of+25", match, http.StatusUnprocessableEntity, "/unit", "each")); p.Code != "app.prices.twice" {
		t.Errorf("%+v", p)
	}
	if x := reads[apiShelved](c, c.set(cap, match, http.StatusOK, "/price", "1.25")); x.What != "" || c.etagOf(cap) != match {
		t.Errorf("a state without a change was kept: %+v", x)
	}
	// Off the shelf, and back onto it.
	c.call(http.MethodDelete, cap, "", http.StatusPreconditionRequired)
	c.call(http.MethodDelete, cap, "", http.StatusOK, "If-Match", match)
	if x := reads[apiShelfPrice](c, c.call(http.MethodGet, cap, "", http.StatusOK)); !x.Aside || strings.Contains(c.get("/api/v1/prices"), "lone cap 2") {
		t.Errorf("%+v", x)
	}
	c.call(http.MethodDelete, cap, "", http.StatusPreconditionFailed, "If-Match", match)
	c.set(cap, c.etagOf(cap), http.StatusOK, "/aside", "false")
	if x := reads[apiShelfPrice](c, c.call(http.MethodGet, cap, "", http.StatusOK)); x.Aside || !strings.Contains(c.get("/api/v1/prices"), "lone cap 2") {
		t.Errorf("%+v", x)
	}
	for _, item := range []string{"none", "0", "%00", "lone%20cap%202?currency=EUR"} {
		if p := reads[Problem](c, c.call(http.MethodGet, "/api/v1/prices/items/"+item, "", http.StatusNotFound, "Accept-Language", "es")); !strings.Contains(p.Detail, "precio") {
			t.Errorf("%+v", p)
		}
	}
}

func TestInterfaceShelf(t *testing.T) {
	c, _ := newCaller(t)
	c.shelfOnes()
	if len(c.logs) > 0 {
		t.Error(c.logs)
	}
}

// choices says of a file which column is which, and in what its bare numbers are.
func (c *caller) choices() {
	t := c.t
	t.Helper()
	const rows = "Sort,Q,H\nChosen X,0,6\nChosen X,6000,3\nChosen X,9000,0\n"
	send := func(path, query, body string, want int) *httptest.ResponseRecorder {
		t.Helper()
		return c.call(http.MethodPost, path+"?"+query, body, want, "Content-Type", "text/csv", "Accept-Language", "es")
	}
	x := reads[apiImported](c, send("/api/v1/pumps", "yes=true&column=name=sort&column=curve/head=3&unit=curve/flow=l/h&unit=curve%2Fhead=m", rows, http.StatusOK))
	told := map[string]apiColumns{}
	for _, col := range x.Columns {
		told[col.Field] = col
	}
	if !x.Taken || x.New != 1 || told["name"] != (apiColumns{"name", 1, ""}) || told["curve/flow"] != (apiColumns{"curve/flow", 2, "l/h"}) || told["curve/head"] != (apiColumns{"curve/head", 3, "m"}) {
		t.Errorf("%+v", x)
	}
	if body := c.get("/api/v1/pumps/Chosen%20X"); !strings.Contains(body, `"6000 l/h"`) || !strings.Contains(body, `"3 m"`) {
		t.Error(body)
	}
	const list = "chosen cap,1.10,1.20\nchosen tee,2.10,2.20\n"
	y := reads[apiImported](c, send("/api/v1/prices", "titles=false&column=item=1&column=price=3&currency=USD", list, http.StatusOK))
	if y.New != 2 || y.Taken || !strings.Contains(strings.Join(y.Told, " "), "1.20") {
		t.Errorf("%+v", y)
	}
	if z := reads[apiImported](c, send("/api/v1/prices", "titles=true&column=item=1&column=price=3&currency=USD", list, http.StatusOK)); z.New != 1 {
		t.Errorf("%+v", z)
	}
	for query, code := range map[string]string{
		"column=name": "shelf.choice.form", "column=nome=Sort": "shelf.choice.field", "column=name=Kind": "shelf.choice.column", "column=name=4": "shelf.choice.column",
		"unit=curve/flow": "shelf.choice.form", "unit=flow=gpm": "shelf.choice.field", "unit=curve/flow=m": "shelf.choice.unit", "unit=name=m": "shelf.choice.unitless", "unit=curve/flow=%00": "shelf.choice.unit",
		"yes=true&column=name=1&column=name=9": "shelf.choice.column",
	} {
		p := reads[Problem](c, send("/api/v1/pumps", query, rows, http.StatusUnprocessableEntity))
		if p.Code != code || !strings.Contains(query, p.Where+"=") || p.Where == "" || p.Expected+p.Example == "" && code != "shelf.choice.unitless" || strings.Contains(p.Detail, "There is") {
			t.Errorf("%s: %+v", query, p)
		}
	}
	send("/api/v1/pumps", "titles=perhaps", rows, http.StatusBadRequest)
}
