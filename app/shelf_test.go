package app

import (
	"bytes"
	"context"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"plashet/job"
	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/store"
)

// upload sends a file as a browser does.
func (d *desk) upload(path, name, data string) (int, string) {
	d.t.Helper()
	var b bytes.Buffer
	m := multipart.NewWriter(&b)
	f, err := m.CreateFormFile("file", name)
	if err != nil {
		d.t.Fatal(err)
	}
	if _, err := f.Write([]byte(data)); err != nil {
		d.t.Fatal(err)
	}
	if err := m.Close(); err != nil {
		d.t.Fatal(err)
	}
	r := httptest.NewRequest(http.MethodPost, path, &b)
	r.Header.Set("Content-Type", m.FormDataContentType())
	r.Header.Set("Test-Who", "Ann")
	w := httptest.NewRecorder()
	d.ServeHTTP(w, r)
	return w.Code, w.Body.String()
}

// hidden reads the inputs of a page's form that a person does not see, and the
// choices that stand.
func choices(page string) url.Values {
	form := url.Values{}
	for _, m := range regexp.MustCompile(`<input type="(?:hidden|text)"[^>]*name="([^"]+)"[^>]*value="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		form.Set(m[1], m[2])
	}
	for _, m := range regexp.MustCompile(`(?s)<select id="[^"]+" name="([^"]+)"[^>]*>(.*?)</select>`).FindAllStringSubmatch(page, -1) {
		if s := regexp.MustCompile(`value="([^"]*)" selected`).FindStringSubmatch(m[2]); s != nil {
			form.Set(m[1], s[1])
		}
	}
	if strings.Contains(page, `name="titled" value="1" checked`) {
		form.Set("titled", "1")
	}
	return form
}

func (d *desk) onShelf() []keep.Pump {
	d.t.Helper()
	list, _, _, err := keep.Pumps(context.Background(), d.store, "", false, 100)
	if err != nil {
		d.t.Fatal(err)
	}
	return list
}

func (d *desk) priceList() []shelf.Price {
	d.t.Helper()
	list, _, err := keep.Prices(context.Background(), d.store)
	if err != nil {
		d.t.Fatal(err)
	}
	return list.List
}

const csvPumps = "Name;Flow (gpm);Head (ft);Watts;Price USD\nweir 60;0;24,5;;189,00\nweir 60;30;18;;\nweir 60;60;0;;\nbrook 9;0;5;;\nbrook 9;9;;;\n"

// A pump goes onto the shelf by hand, is changed, undone, put aside.
func TestPumpShelf(t *testing.T) {
	d := newDesk(t)
	sound(t, "empty", d.get("/pumps"))
	sound(t, "new", d.get("/pumps/new"))
	code, page, _ := d.ask(http.MethodPost, "/pumps/new", url.Values{"units": {"us"}, "/pumps/0/name": {""}, "/pumps/0/price": {"189"}, "/pumps/0/curve/0/flow": {"deep"}})
	if code != http.StatusUnprocessableEntity || !strings.Contains(page, `value="deep"`) || len(d.onShelf()) != 0 {
		t.Fatal(code)
	}
	sound(t, "wrong", page)
	code, _, h := d.ask(http.MethodPost, "/pumps/new", url.Values{
		"units": {"us"}, "/pumps/0/name": {"weir 60"}, "/pumps/0/price": {"189"}, "/site/currency": {"USD"},
		"/pumps/0/curve/0/flow": {"0"}, "/pumps/0/curve/0/head": {"24 ft"}, "/pumps/0/curve/2/flow": {"30"}, "/pumps/0/curve/2/head": {"18"}, "/pumps/0/curve/3/flow": {"60"}, "/pumps/0/curve/3/head": {"0"},
	})
	if code != http.StatusSeeOther {
		t.Fatal(code, d.logs)
	}
	at := h.Get("Location")
	page = d.get(at)
	sound(t, "pump", page)
	for _, want := range []string{"<svg", "weir 60", `value="18"`, "189"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	p := d.onShelf()[0]
	if len(p.Job.Pumps[0].Curve) != 3 || p.Rev.Who != "Ann" {
		t.Fatalf("%+v", p.Job.Pumps[0].Curve)
	}
	set := func(base int, pairs ...string) (int, string) {
		form := url.Values{"base": {strconv.Itoa(base)}}
		for i := 0; i < len(pairs); i += 2 {
			form.Set(pairs[i], pairs[i+1])
		}
		code, page, _ := d.ask(http.MethodPost, at+"/set", form)
		return code, page
	}
	if code, _ := set(1, "/pumps/0/volts", "120 V"); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	// Upon an old state: another field is put upon the newest, the same field is shown.
	if code, _ := set(1, "/pumps/0/weight", "22 lb", "/pumps/0/volts", ""); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	code, page = set(1, "/pumps/0/volts", "230 V")
	if code != http.StatusConflict || !strings.Contains(page, "it is now “120 V”") || !strings.Contains(page, `value="230 V"`) {
		t.Error(code)
	}
	sound(t, "clash", page)
	now := d.onShelf()[0]
	if v := now.Job.Pumps[0]; now.Rev.Number != 3 || v.Volts.Text != "120 V" || v.Weight.Text != "22 lb" {
		t.Errorf("%d %+v", now.Rev.Number, v)
	}
	// A row emptied goes, and the others keep their order.
	if code, _ := set(3, "/pumps/0/curve/0/flow", "0", "/pumps/0/curve/0/head", "24 ft", "/pumps/0/curve/1/flow", "", "/pumps/0/curve/1/head", "", "/pumps/0/curve/2/flow", "60", "/pumps/0/curve/2/head", "0"); code != http.StatusSeeOther || len(d.onShelf()[0].Job.Pumps[0].Curve) != 2 {
		t.Error(code, d.onShelf()[0].Job.Pumps[0].Curve)
	}
	if code, _, _ := d.ask(http.MethodPost, at+"/undo", url.Values{"base": {"4"}}); code != http.StatusSeeOther || len(d.onShelf()[0].Job.Pumps[0].Curve) != 3 {
		t.Error("not undone", code)
	}
	page = d.get(at + "/history")
	sound(t, "history", page)
	if !strings.Contains(page, "Undone, back to state 3") || !strings.Contains(page, "120 V") {
		t.Error("the history does not tell")
	}
	if code, _, _ := d.ask(http.MethodPost, at+"/return", url.Values{"base": {"5"}, "number": {"1"}}); code != http.StatusSeeOther || d.onShelf()[0].Job.Pumps[0].Volts.Text != "" {
		t.Error("not returned", code)
	}
	if code, _, _ := d.ask(http.MethodPost, at+"/archive", url.Values{"base": {"6"}}); code != http.StatusSeeOther || len(d.onShelf()) != 0 {
		t.Error(code)
	}
	if page := d.get("/pumps?aside=1"); !strings.Contains(page, "weir 60") {
		t.Error("not among those put aside")
	}
	for path, status := range map[string]int{"/pumps/none": 404, "/pumps/example-old-pond": 404, "/pumps/none/history": 404, "/prices/7": 404, "/prices/x": 404, "/prices/history": 404} {
		if code, page, _ := d.ask(http.MethodGet, path, nil); code != status {
			t.Error(path, code)
		} else {
			sound(t, path, page)
		}
	}
}

// A file of pumps: looked at, mapped, faults by row, taken only when told to.
func TestPumpsFromCSV(t *testing.T) {
	d := newDesk(t)
	sound(t, "form", d.get("/pumps/import"))
	code, page := d.upload("/pumps/import", "pumps.csv", csvPumps)
	if code != http.StatusOK || len(d.onShelf()) != 0 {
		t.Fatal(code, d.logs)
	}
	sound(t, "look", page)
	for _, want := range []string{"1 new, 0 changed, 0 as they are, 1 rows", "Row 6:", "cells parted by semicolons", "a point of the curve needs a flow and a head", "Take in 1 new"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	form := choices(page)
	form.Set("do", "take")
	if code, _, h := d.ask(http.MethodPost, "/pumps/import", form); code != http.StatusSeeOther || h.Get("Location") != "/pumps" {
		t.Fatal(code)
	}
	list := d.onShelf()
	if len(list) != 1 || list[0].Job.Pumps[0].Price.Text != "189.00" || list[0].Job.Pumps[0].Curve[0].Head.Text != "24.5 ft" || list[0].Rev.What != "From pumps.csv" {
		t.Fatalf("%+v", list)
	}
	// Out again, and in: nothing is new.
	out := d.get("/pumps/csv")
	_, page = d.upload("/pumps/import", "again.csv", out)
	if !strings.Contains(page, "0 new, 0 changed, 1 as they are, 0 rows") {
		t.Error("what went out does not come back the same")
	}
	// A pump that is there is changed, and the page says how.
	_, page = d.upload("/pumps/import", "dearer.csv", "Name,Price,Currency\nWeir 60,199,USD\n")
	if !strings.Contains(page, "189.00 USD to 199 USD") {
		t.Error("the change is not told")
	}
	form = choices(page)
	form.Set("do", "take")
	if code, _, _ := d.ask(http.MethodPost, "/pumps/import", form); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	if p := d.onShelf()[0]; p.Rev.Number != 2 || p.Job.Pumps[0].Price.Text != "199" || len(p.Job.Pumps[0].Curve) != 3 {
		t.Errorf("%+v", p.Job.Pumps[0])
	}
	if code, _, _ := d.ask(http.MethodPost, "/pumps/import", form); code != http.StatusUnprocessableEntity {
		t.Error("there was nothing to take", code)
	}
}

// A file of prices, with another mapping than the one guessed; one undo takes it
// back.
func TestPricesFromCSV(t *testing.T) {
	d := newDesk(t)
	_, page := d.upload("/prices/import", "list.csv", "What;List;Trade;Per\nelbow 90, 2;4,00;3,15;each\n=cmd;1,00;0,90;each\nunion, 2;20,00;14,20;bushel\n")
	sound(t, "look", page)
	if !strings.Contains(page, "No column is chosen for “Item”") {
		t.Error("what lacks is not told")
	}
	form := choices(page)
	form.Set("column-item", "0")
	form.Set("column-price", "2")
	form.Set("currency", "usd")
	form.Set("do", "look")
	code, page, _ := d.ask(http.MethodPost, "/prices/import", form)
	if code != http.StatusOK || !strings.Contains(page, "2 new, 0 changed, 0 as they are, 1 rows") || !strings.Contains(page, "Row 4:") || !strings.Contains(page, "“bushel” is nothing that a price can be for") {
		t.Fatal(code)
	}
	sound(t, "mapped", page)
	if len(d.priceList()) != 0 {
		t.Fatal("taken before the person said so")
	}
	form = choices(page)
	form.Set("do", "take")
	if code, _, _ := d.ask(http.MethodPost, "/prices/import", form); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	if list := d.priceList(); len(list) != 2 || list[0].Amount != "3.15" || list[0].Currency != "USD" {
		t.Fatalf("%+v", list)
	}
	out := d.get("/prices/csv")
	if !strings.Contains(out, "'=cmd") || strings.Contains(out, "\n=cmd") || !strings.Contains(out, `"elbow 90, 2",3.15,USD,each`) {
		t.Error(out)
	}
	_, page = d.upload("/prices/import", "dearer.csv", "Item,Price,Currency\n\"elbow 90, 2\",3.40,USD\n'=cmd,0.90,USD\n")
	if !strings.Contains(page, "0 new, 1 changed, 1 as they are, 0 rows") || !strings.Contains(page, "3.15 USD becomes elbow 90, 2: 3.40 USD") {
		t.Error("what moves is not told")
	}
	form = choices(page)
	form.Set("do", "take")
	d.ask(http.MethodPost, "/prices/import", form)
	if code, _, _ := d.ask(http.MethodPost, "/prices/undo", url.Values{"base": {"2"}}); code != http.StatusSeeOther || d.priceList()[0].Amount != "3.15" {
		t.Error("not undone", code)
	}
	sound(t, "history", d.get("/prices/history"))
}

// Files that are no such file get one clear sentence, and change nothing.
func TestWrongCSV(t *testing.T) {
	d := newDesk(t)
	for name, data := range map[string]string{
		"sheet.xlsx": "PK\x03\x04rest", "picture.png": "\x89PNG\r\n\x1a\n", "bytes.csv": "a,b\n\x00\x01", "cut.csv": "a,b\n\"c", "blank.csv": "\n;;\n",
		"wide.csv": strings.Repeat("a,", 200), "long.csv": strings.Repeat("a,1\n", shelf.MostRows+2), "huge.csv": strings.Repeat("a,1\n", shelf.MostBytes/4+1), "empty.csv": "",
	} {
		for _, at := range []string{"/prices/import", "/pumps/import"} {
			code, page := d.upload(at, name, data)
			if code/100 != 4 {
				t.Errorf("%s: %d", name, code)
			}
			sound(t, name, page)
		}
	}
	for _, form := range []url.Values{{}, {"data": {"%"}}, {"data": {"YQ"}, "do": {"take"}}, {"data": {"YSxi"}, "column-item": {"99"}, "column-price": {"-1"}, "do": {"take"}}} {
		if code, page, _ := d.ask(http.MethodPost, "/prices/import", form); code/100 != 4 {
			t.Errorf("%v: %d", form, code)
		} else {
			sound(t, "form", page)
		}
	}
	if len(d.priceList())+len(d.onShelf()) != 0 || len(d.logs) > 0 {
		t.Error("something was taken", d.logs)
	}
}

func TestPriceByHand(t *testing.T) {
	d := newDesk(t)
	sound(t, "empty", d.get("/prices"))
	put := func(base int, pairs ...string) (int, string) {
		form := url.Values{"base": {strconv.Itoa(base)}}
		for i := 0; i < len(pairs); i += 2 {
			form.Set(pairs[i], pairs[i+1])
		}
		code, page, _ := d.ask(http.MethodPost, "/prices/set", form)
		return code, page
	}
	code, page := put(0, "item", "elbow 90, 2", "price", "about three", "currency", "USD", "order", "first", "date", "3/1/26")
	if code != http.StatusUnprocessableEntity || !strings.Contains(page, `value="about three"`) || !strings.Contains(page, "“about three” is not an amount") || !strings.Contains(page, "no day that can be read") {
		t.Error(code)
	}
	sound(t, "wrong", page)
	for i, item := range []string{"elbow 90, 2", "union, 2"} {
		if code, _ := put(i, "item", item, "price", "3.15", "currency", "usd", "unit", "box of 25", "date", "2026-03-01", "counter", "pipe counter", "order", "2"); code != http.StatusSeeOther {
			t.Fatal(code)
		}
	}
	if code, page := put(2, "item", "Elbow 90,  2", "price", "4", "currency", "USD", "unit", "box of 25", "counter", "pipe counter"); code != http.StatusUnprocessableEntity || !strings.Contains(page, "stands on the shelf already") {
		t.Error("one price stands twice", code)
	}
	sound(t, "list", d.get("/prices"))
	sound(t, "price", d.get("/prices/0"))
	// Two people, two prices: neither is in the way. Two people, one price: shown.
	if code, _ := put(2, "index", "0", "item", "elbow 90, 2", "price", "3.40", "currency", "USD", "unit", "box of 25", "counter", "pipe counter"); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	if code, _ := put(2, "index", "1", "item", "union, 2", "price", "14.20", "currency", "USD"); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	code, page = put(2, "index", "0", "item", "elbow 90, 2", "price", "3.55", "currency", "USD")
	if code != http.StatusUnprocessableEntity || !strings.Contains(page, "Somebody else changed this price") || !strings.Contains(page, "3.40 USD / box of 25") {
		t.Error(code)
	}
	sound(t, "clash", page)
	if code, _ := put(4, "index", "1", "item", "union, 2", "price", "14.20", "currency", "USD", "aside", "1"); code != http.StatusSeeOther {
		t.Error(code)
	}
	if page := d.get("/prices"); strings.Contains(page, ">union, 2</a>") || !strings.Contains(page, ">elbow 90, 2</a>") {
		t.Error("the one put aside is still offered")
	}
	if page := d.get("/prices?aside=1"); !strings.Contains(page, "union, 2") {
		t.Error("the one put aside is nowhere")
	}
}

// A pump is taken into a job; the job tells when the shelf's has changed, and
// takes that only when told to.
func TestPumpIntoJob(t *testing.T) {
	d := newDesk(t)
	const id, at = "example-old-pond", "/jobs/example-old-pond"
	_, page := d.upload("/pumps/import", "pumps.csv", csvPumps)
	form := choices(page)
	form.Set("do", "take")
	d.ask(http.MethodPost, "/pumps/import", form)
	pump := d.onShelf()[0].Rev.ID
	page = d.get(at + "/shelf")
	sound(t, "before", page)
	if !strings.Contains(page, "weir 60") || !strings.Contains(page, "Not from the shelf") {
		t.Error("the shelf is not shown")
	}
	if code, _ := d.post(at+"/shelf/pump", "pump", pump); code != http.StatusSeeOther {
		t.Fatal(code, d.logs)
	}
	taken := func() job.Pump {
		j, _ := job.Read(d.newest(id).Data)
		return j.Pumps[len(j.Pumps)-1]
	}
	p := taken()
	if p.Name != "weir 60" || p.Taken != (job.Taken{Shelf: pump, State: 1}) || len(p.Curve) != 3 || p.Price.Text != "189.00" {
		t.Fatalf("%+v", p)
	}
	if what := d.newest(id).What; !strings.Contains(what, "Pump weir 60 taken from the shelf, state 1") {
		t.Error(what)
	}
	j, _ := job.Read(d.newest(id).Data)
	index := strconv.Itoa(len(j.Pumps) - 1)
	if code, _, _ := d.ask(http.MethodPost, "/pumps/"+pump+"/set", url.Values{"base": {"1"}, "/pumps/0/price": {"199"}}); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	d.post(at+"/set", "here", "pump", "/pumps/"+index+"/volts", "120 V")
	page = d.get(at + "/shelf")
	sound(t, "changed", page)
	if !strings.Contains(page, "the shelf has changed: Price: 189.00 USD to 199 USD") || !strings.Contains(page, "Changed in this job since: Volts: nothing to 120 V") {
		t.Error(regexp.MustCompile(`Since it was[^<]*|Changed in[^<]*`).FindAllString(page, -1))
	}
	if taken().Price.Text != "189.00" {
		t.Error("the job changed by itself")
	}
	if code, _ := d.post(at+"/shelf/pump", "pump", pump, "index", index); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	if p := taken(); p.Price.Text != "199" || p.Taken.State != 2 || p.Volts.Text != "" {
		t.Errorf("%+v", p)
	}
	// And a pump of the job goes onto the shelf.
	if code, _ := d.post(at+"/shelf/keep", "index", "0"); code != http.StatusSeeOther || len(d.onShelf()) != 2 {
		t.Error(code, len(d.onShelf()))
	}
	for _, form := range []url.Values{{"pump": {"none"}}, {"pump": {pump}, "index": {"99"}}, {"pump": {id}}} {
		form.Set("base", strconv.Itoa(d.newest(id).Number))
		if code, page, _ := d.ask(http.MethodPost, at+"/shelf/pump", form); code/100 != 4 {
			t.Error(form, code)
		} else {
			sound(t, "refused", page)
		}
	}
}

// Prices of the shelf are offered for what the job lists, and only what is ticked
// is taken.
func TestPricesIntoJob(t *testing.T) {
	d := newDesk(t)
	const id, at = "example-hillside-cascade", "/jobs/example-hillside-cascade"
	sound(t, "no prices", d.get(at+"/shelf"))
	list := shelf.NewPrices()
	list.List = []shelf.Price{
		{Item: "elbow 90, 2", Amount: "9.99", Currency: "USD", Counter: "far", Order: 9, Date: "2026-04-01"},
		{Item: "Elbow 90, 2", Amount: "52.00", Currency: "USD", Unit: "box of 25", Counter: "near", Order: 1, Date: "2026-03-01"},
		{Item: "union, 2", Amount: "14.20", Currency: "USD"},
		{Item: "elbow 45, 2", Amount: "1.00", Currency: "EUR"},
		{Item: "elbow 45, 2", Amount: "1.00", Currency: "USD", Aside: true},
	}
	if _, err := keep.SavePrices(context.Background(), d.store, 0, list, store.Change{When: d.given.Now()}); err != nil {
		t.Fatal(err)
	}
	page := d.get(at + "/shelf")
	sound(t, "offered", page)
	if !strings.Contains(page, "52.00 USD / box of 25") || strings.Contains(page, "9.99") || strings.Contains(page, "1.00 USD") || !strings.Contains(page, "1 more on the shelf") || !strings.Contains(page, "as on the shelf") {
		t.Error("the wrong prices are offered")
	}
	if code, _ := d.post(at + "/shelf/prices"); code != http.StatusUnprocessableEntity {
		t.Error("nothing was ticked", code)
	}
	if code, _ := d.post(at+"/shelf/prices", "item", "elbow 90, 2"); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	j, _ := job.Read(d.newest(id).Data)
	for _, p := range j.Prices {
		if p.Item == "elbow 90, 2" && (p.Price.Text != "52.00" || p.Unit != "box of 25" || p.Counter != "near" || p.Date != "2026-03-01") {
			t.Errorf("%+v", p)
		}
	}
	if what := d.newest(id).What; !strings.Contains(what, "From the price shelf") || !strings.Contains(what, "3.15 to 52.00") || !strings.Contains(what, "material") {
		t.Error(what)
	}
	sound(t, "taken", d.get(at+"/part/material"))
}

// A curve marked in a picture is fitted, shown in pixels, and goes onto the
// shelf.
func TestCurveFromPicture(t *testing.T) {
	d := newDesk(t)
	sound(t, "picture", d.get("/pumps/picture"))
	form := url.Values{
		"units": {"us"}, "do": {"fit"}, "at-f1": {"100 500"}, "v-f1": {"0 gpm"}, "at-f2": {"700 500"}, "v-f2": {"60"}, "at-h1": {"100 500"}, "v-h1": {"0"}, "at-h2": {"100 20"}, "v-h2": {"24 ft"},
		"points": {"99 20\n400 140\n300 74\n700 502"}, "at-k": {"400 260"}, "v-kf": {"30 gpm"}, "v-kh": {"12 ft"},
	}
	code, page, _ := d.ask(http.MethodPost, "/pumps/picture", form)
	if code != http.StatusOK {
		t.Fatal(code, d.logs)
	}
	sound(t, "fitted", page)
	// By hand: 10 pixels a gpm, 20 pixels a foot; (400, 140) is 30 gpm at 18 ft.
	for _, want := range []string{"30.0 gpm", "18.00 ft", "0.0 pixels off", `data-drawn="100.0,20.0 `, "One pixel is worth 0.10 gpm and 0.0500 ft"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	form.Set("do", "save")
	if code, page, _ := d.ask(http.MethodPost, "/pumps/picture", form); code != http.StatusUnprocessableEntity || !strings.Contains(page, "name") {
		t.Error("saved without a name", code)
	}
	form.Set("name", "from the sheet")
	if code, _, _ := d.ask(http.MethodPost, "/pumps/picture", form); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	p := d.onShelf()[0].Job.Pumps[0]
	if len(p.Curve) != 4 || p.Curve[2].Flow.Text != "30.0 gpm" || p.Curve[0].Flow.SI != 0 || p.Curve[3].Head.SI != 0 || p.Note == "" {
		t.Errorf("%+v", p.Curve)
	}
	for name, change := range map[string][2]string{
		"a mark missing": {"at-h2", ""}, "no value": {"v-f2", "sixty"}, "no pixel": {"points", "x y"}, "one point": {"points", "400 140"}, "out of the axes": {"points", "10 20\n400 140\n600 200"},
		"alike": {"v-f2", "0"}, "near": {"at-f2", "110 500"}, "rising": {"points", "100 300\n300 200\n500 100\n690 20"}, "twice": {"points", "400 140\n400 160"}, "many": {"points", strings.Repeat("400 140\n", 70)},
	} {
		f := url.Values{}
		for k, v := range form {
			f[k] = v
		}
		f.Set(change[0], change[1])
		code, page, _ := d.ask(http.MethodPost, "/pumps/picture", f)
		if code != http.StatusUnprocessableEntity || !strings.Contains(page, `<p class="error">`) {
			t.Errorf("%s: %d", name, code)
		}
		sound(t, name, page)
	}
	if len(d.onShelf()) != 1 {
		t.Error("one that could not be fitted was kept")
	}
}

// Only a PNG or JPEG of sane size is let into the page.
func TestPictureCheck(t *testing.T) {
	d := newDesk(t)
	ask := func(data string, size string) (int, string, http.Header) {
		r := httptest.NewRequest(http.MethodPost, "/pumps/picture/check?size="+size, strings.NewReader(data))
		r.Header.Set("Content-Type", "application/octet-stream")
		w := httptest.NewRecorder()
		d.ServeHTTP(w, r)
		return w.Code, w.Body.String(), w.Header()
	}
	png := "\x89PNG\r\n\x1a\n\x00\x00\x00\x0dIHDR\x00\x00\x03\xc0\x00\x00\x02\xf8\x08\x02\x00\x00\x00\x98\x36\xdc\xb4"
	for name, c := range map[string]struct {
		data, size string
		status     int
	}{
		"svg":  {`<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>`, "60", 422},
		"html": {"<html>", "6", 422}, "bomb": {strings.Replace(png, "\x00\x00\x03\xc0", "\x00\x0f\x00\x00", 1), "60", 422}, "large": {png, "99999999999", 422}, "no size": {png, "x", 400}, "nothing": {"", "0", 422},
	} {
		code, body, h := ask(c.data, c.size)
		if code != c.status || c.status == 422 && (!strings.Contains(body, `"error"`) || h.Get("X-Content-Type-Options") != "nosniff") {
			t.Errorf("%s: %d %s", name, code, body)
		}
	}
}
