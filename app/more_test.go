package app

import (
	"bytes"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"plashet/demo"
)

// Taking a remedy of a finding brings the flow that it told.
func TestTakeARemedy(t *testing.T) {
	d := newDesk(t)
	const at, id = "/jobs/example-hillside-cascade", "example-hillside-cascade"
	_, page := d.post(at+"/take", "code", "design.flow.short", "path", "/watercourses/0", "remedy", "0")
	if !strings.Contains(page, "0 to stop for") || !strings.Contains(d.newest(id).What, "cascade: was 46.3 gpm, now 6") {
		t.Errorf("taken: %q", d.newest(id).What)
	}
	sound(t, "taken", page)
	for _, index := range []string{"9", "-1", "x", ""} {
		if code, _ := d.post(at+"/take", "code", "design.flow.short", "path", "/watercourses/0", "remedy", index); code != http.StatusUnprocessableEntity {
			t.Errorf("remedy %q: %d", index, code)
		}
	}
}

// Gluing goes one step a screen, remembers where it stopped, and forgets its
// ticks when the card says something else.
func TestGlueRemembers(t *testing.T) {
	d := newDesk(t)
	const at = "/jobs/example-hillside-cascade"
	for _, step := range []string{"1", "2"} {
		sound(t, "glue "+step, d.get(at+"/glue/"+step))
		if code, page := d.post(at + "/glue/" + step); code != http.StatusSeeOther || !strings.Contains(page, "Step ") {
			t.Fatal(code)
		}
	}
	d.Handler = New(d.given) // the program was started anew
	page := d.get(at + "/part/glue")
	if !strings.Contains(page, at+`/glue/3">Go on`) || strings.Count(page, `stamp done`) != 2 {
		t.Error("it does not remember where it stopped")
	}
	if _, page := d.post(at+"/glue/2", "open", "1"); strings.Contains(page, "stamp done") {
		t.Error("the tick was not taken back")
	}
	d.post(at+"/set", "here", "vault", "/assembly/makeUp", "1/16")
	if page := d.get(at + "/part/glue"); strings.Contains(page, "stamp done") {
		t.Error("ticks of another card stand")
	}
	for _, step := range []string{"0", "999", "x"} {
		if code, _, _ := d.ask(http.MethodGet, at+"/glue/"+step, nil); code != http.StatusNotFound {
			t.Error(step, code)
		}
	}
}

// send uploads a file.
func (d *desk) send(path, name string, data []byte) (int, string) {
	d.t.Helper()
	return d.sendAs(path, "file", name, data)
}

// sendAs uploads a file in a field.
func (d *desk) sendAs(path, field, name string, data []byte) (int, string) {
	d.t.Helper()
	var b bytes.Buffer
	m := multipart.NewWriter(&b)
	part, err := m.CreateFormFile(field, name)
	if err != nil {
		d.t.Fatal(err)
	}
	_, _ = part.Write(data)
	_ = m.Close()
	r := httptest.NewRequest(http.MethodPost, path, &b)
	r.Header.Set("Content-Type", m.FormDataContentType())
	w := httptest.NewRecorder()
	d.ServeHTTP(w, r)
	return w.Code, w.Body.String()
}

// Every upload that a stranger could send gets one clear sentence.
func TestUploads(t *testing.T) {
	d := newDesk(t)
	whole := demo.Job("old-pond")
	if code, _ := d.send("/import", "job.json", whole); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	page := d.get("/jobs/id1")
	sound(t, "taken in", page)
	if !bytes.Contains(d.newest("id1").Data, []byte("Old pond")) {
		t.Error("the job is not what was sent")
	}
	if code, body, _ := d.ask(http.MethodGet, "/jobs/id1/file", nil); code != http.StatusOK || body != string(d.newest("id1").Data) {
		t.Error("the file is not the job")
	}
	for name, c := range map[string]struct {
		data []byte
		code int
	}{
		"cut off":   {whole[:len(whole)/2], 422},
		"a picture": {[]byte("\x89PNG\r\n\x1a\n\x00\x00"), 422},
		"a script":  {[]byte(`<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>`), 422},
		"empty":     {nil, 422},
		"no job":    {[]byte(`{"a": 1}`), 422},
		"deep":      {[]byte(strings.Repeat("[", 100000)), 422},
		"huge":      {bytes.Repeat([]byte("x"), 18<<20), 413},
		"newer":     {[]byte(`{"format":"plashet job","version":99}`), 422},
	} {
		code, page := d.send("/import", "x.json", c.data)
		if code != c.code || strings.Contains(page, "<script>alert") {
			t.Errorf("%s: %d", name, code)
		}
		sound(t, name, page)
	}
	r := httptest.NewRequest(http.MethodPost, "/import", strings.NewReader("nonsense"))
	r.Header.Set("Content-Type", "multipart/form-data; boundary=x")
	w := httptest.NewRecorder()
	d.ServeHTTP(w, r)
	if w.Code != http.StatusBadRequest {
		t.Error(w.Code)
	}
	if len(d.logs) > 0 {
		t.Error(d.logs)
	}
}

// A name that is markup shows as it was typed, and does nothing.
func TestMarkupIsText(t *testing.T) {
	d := newDesk(t)
	_, page := d.post("/new", "units", "us", "name", `<script>alert("1")</script>`, "shape", "circle")
	if strings.Contains(page, "<script>alert") || !strings.Contains(page, "&lt;script&gt;") {
		t.Error("markup got through")
	}
	for _, path := range []string{"/", "/jobs/id1/part/site", "/jobs/id1/part/pond", "/jobs/id1/history"} {
		sound(t, path, d.get(path))
	}
}

func TestDeviceKeepsOnlyWhatItKnows(t *testing.T) {
	d := newDesk(t)
	for back, want := range map[string]string{"/jobs/x": "/jobs/x", "//evil.example": "/", "https://evil.example": "/", "/\\evil": "/", "": "/"} {
		_, _, h := d.ask(http.MethodPost, "/device", url.Values{"who": {" Bo "}, "mode": {"dazzling"}, "back": {back}})
		if h.Get("Location") != want || h.Get("Test-Who") != "Bo " {
			t.Errorf("%q: to %q, %q", back, h.Get("Location"), h.Get("Test-Who"))
		}
	}
	if code, _, _ := d.ask(http.MethodPost, "/device", url.Values{"who": {strings.Repeat("x", 61)}}); code != http.StatusUnprocessableEntity {
		t.Error(code)
	}
}

// FuzzForm: whatever a form holds, the answer is a page with a status that says
// whose fault it was, and never ours.
func FuzzForm(f *testing.F) {
	for _, seed := range []string{
		"%2Fruns%2F0%2Flength=60+ft", "/runs/-/name=x&/runs/99/length=1", "nudge=%2B1+/vault/outlet/along", "/=x&//=y&/runs/0/pipe=z",
		"list=/runs&kind=lip&name=a", "path=/runs/0&by=1", "code=a&path=b&reason=c", "/watercourses/0/parts/0/lip/wanted=%ff", "number=1", "remedy=0&code=design.flow.short&path=/watercourses/0", "nudge=1+/",
	} {
		f.Add(seed)
	}
	d := newDesk(f)
	f.Fuzz(func(t *testing.T, body string) {
		for _, do := range []string{"set", "add", "remove", "move", "accept", "take", "return", "undo", "glue/1"} {
			d.t = t
			base := d.newest("example-orchard-ring").Number
			r := httptest.NewRequest(http.MethodPost, "/jobs/example-orchard-ring/"+do, strings.NewReader(body+"&base="+itoa(base)))
			r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
			w := httptest.NewRecorder()
			d.ServeHTTP(w, r)
			if w.Code >= 500 || len(d.logs) > 0 {
				t.Fatalf("%s: %d %v", do, w.Code, d.logs)
			}
		}
	})
}

// What the buttons of the job keep is not offered to be typed, and fields whose
// own word is too short have names and hints a person understands.
func TestFieldsSpeakPlainly(t *testing.T) {
	d := newDesk(t)
	for _, name := range demo.Names() {
		for _, p := range parts {
			page := d.get("/jobs/example-" + name + "/part/" + p.Key)
			for _, never := range []string{`name="/assembly/kept`, `/taken/`, "digest of", "identity of", "size along", "(x)", "x = 0", "left is -x"} {
				if strings.Contains(page, never) {
					t.Errorf("%s, %s: shows %q", name, p.Key, never)
				}
			}
		}
	}
	page := d.get("/jobs/example-hillside-cascade/part/vault")
	for _, want := range []string{"From the left wall", "to the middle of the hole: from the left wall", "Where the pump stands"} {
		if !strings.Contains(page, want) {
			t.Errorf("the vault's page does not say %q", want)
		}
	}
}
