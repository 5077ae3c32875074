package app

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"plashet/job"
)

// answered is what a person gives at each step, in the order of the work.
var answered = []struct {
	step   string
	fields []string
}{
	{"pond", []string{"/pond/outline/shape", "circle", "/pond/outline/length", "9 ft", "/pond/outline/width", "7 ft", "/pond/depth", "30 in", "/pond/rim", "3 in"}},
	{"fall", []string{"/watercourses/0/parts/0/lip/width", "18 in", "/watercourses/0/parts/0/lip/crest", "2' 6\"", "/watercourses/0/parts/0/lip/wanted", "50 gpm"}},
	{"pipe", []string{"/runs/0/pipe/kind", "PVC Sch 40", "/runs/0/pipe/size", "2", "/runs/0/length", "20 ft"}},
	{"pump", []string{"/pumps/0/curve/0/flow", "0", "/pumps/0/curve/0/head", "20", "/pumps/0/curve/1/flow", "54 gpm", "/pumps/0/curve/1/head", "10 ft", "/pumps/0/curve/2/flow", "80 gpm", "/pumps/0/curve/2/head", "2 ft"}},
	{"vault", []string{"/vault/shape", "box", "/vault/length", "24 in", "/vault/width", "18 in", "/vault/depth", "30 in", "/vault/floor", "26 in", "/vault/sill", "3 in", "/vault/weirWidth", "12 in"}},
	{"hole", []string{"/vault/outlet/wall", "back", "/vault/outlet/along", "12 in", "/vault/outlet/height", "22 in"}},
	{"stands", []string{
		"/pumps/0/port/size", "2", "/pumps/0/port/thread", "NPT female", "/pumps/0/attitudes/0/length", "12 in", "/pumps/0/attitudes/0/width", "7 in", "/pumps/0/attitudes/0/height", "8 in",
		"/pumps/0/attitudes/0/points", "up", "/pumps/0/attitudes/0/port/x", "6 in", "/pumps/0/attitudes/0/port/y", "3.5 in", "/pumps/0/attitudes/0/port/z", "8 in",
	}},
}

// begun makes a job of nothing but a name, and gives its address.
func begun(t *testing.T, d *desk) string {
	t.Helper()
	code, page := d.post("/new", "units", "us", "name", "Back garden")
	if code != http.StatusSeeOther {
		t.Fatal(code, page)
	}
	return "/jobs/id1"
}

// The steps lead from a name to layouts for the vault; each asks for what it
// needs, and the pages tell which is next.
func TestGuide(t *testing.T) {
	d := newDesk(t)
	at := begun(t, d)
	for i, s := range answered {
		page := d.get(at)
		if !strings.Contains(page, `href="`+at+`/next/`+s.step+`"`) {
			t.Fatalf("the answer does not tell that %s is next", s.step)
		}
		page = d.get(at + "/next/" + s.step)
		sound(t, s.step, page)
		if !strings.Contains(page, "Step "+itoa(i+1)+" of "+itoa(len(guideSteps))) {
			t.Errorf("%s is not step %d", s.step, i+1)
		}
		if code, page := d.post(at+"/next/"+s.step, s.fields[0], s.fields[1]); code != http.StatusUnprocessableEntity || !strings.Contains(page, "still needed") {
			t.Errorf("%s by half: %d", s.step, code)
		}
		code, page := d.post(at+"/next/"+s.step, s.fields...)
		if code != http.StatusSeeOther {
			t.Fatal(s.step, code, page)
		}
	}
	j, faults := job.Read(d.newest("id1").Data)
	if len(faults) > 0 || j.Vault.Floor.Text != "@water - 26 in" || j.Pond.Rim.Text != "@water + 3 in" || !j.Pond.Outline.Width.IsZero() || len(j.Pumps[0].Curve) != 3 {
		t.Errorf("%v, floor %q, rim %q, width %q", faults, j.Vault.Floor.Text, j.Pond.Rim.Text, j.Pond.Outline.Width.Text)
	}
	if page := d.get(at + "/next/vault"); !strings.Contains(page, `name="/vault/floor" value="26 in"`) {
		t.Error("the height from the water line does not stand as it was said")
	}
	_, page := d.post(at+"/next/sticks", "/stock/sticks/0/pipe/kind", "PVC Sch 40", "/stock/sticks/0/pipe/size", "2", "/stock/sticks/0/length", "10 ft")
	if !strings.Contains(page, "/next/layout") {
		t.Error("the layout is not asked for again")
	}
	if code, _ := d.post(at+"/next/none", "/name", "x"); code != http.StatusNotFound {
		t.Error(code)
	}
}

// A step is not asked for where the job has it otherwise, and examples are whole.
func TestGuideOfExamples(t *testing.T) {
	d := newDesk(t)
	for _, path := range everyPage() {
		if page := d.get(path); strings.Contains(page, `class="onward"`) {
			t.Errorf("%s asks for more", path)
		}
	}
}

// What cannot be read stays as typed; nothing is saved.
func TestGuideRefuses(t *testing.T) {
	d := newDesk(t)
	at := begun(t, d)
	code, page := d.post(at+"/next/pond", "/pond/outline/shape", "ellipse", "/pond/outline/length", "nine", "/pond/outline/width", "7 ft", "/pond/depth", "2 ft", "/pond/rim", "3 in")
	if code != http.StatusUnprocessableEntity || !strings.Contains(page, `value="nine"`) || !strings.Contains(page, `value="3 in"`) || d.newest("id1").Number != 1 {
		t.Error(code, page)
	}
	sound(t, "refused", page)
}

// The only line of the room under the rim says what it is of.
func TestRimAlone(t *testing.T) {
	d := newDesk(t)
	at := begun(t, d)
	for _, s := range answered[:5] {
		d.post(at+"/next/"+s.step, s.fields...)
	}
	page := d.get(at)
	if strings.Contains(page, "The same with") || !strings.Contains(page, "Room under the rim after a stop, the water run back") {
		t.Error("a line tells of the same as none before it")
	}
}

// What a step took and working it out refuses stays before the eyes on that step;
// a row left empty among the points of a curve is no fault.
func TestGuideUnfit(t *testing.T) {
	d := newDesk(t)
	at := begun(t, d)
	for _, s := range answered {
		if s.step == "pipe" {
			break
		}
		d.post(at+"/next/"+s.step, s.fields...)
	}
	give := func(step string, fields ...string) string {
		t.Helper()
		form := url.Values{"base": {itoa(d.newest("id1").Number)}}
		for i := 0; i < len(fields); i += 2 {
			form.Set(fields[i], fields[i+1])
		}
		code, _, h := d.ask(http.MethodPost, at+"/next/"+step, form)
		if code != http.StatusSeeOther {
			t.Fatal(step, code)
		}
		return h.Get("Location")
	}
	pipe := func(size string) string {
		return give("pipe", "/runs/0/pipe/kind", "PVC Sch 40", "/runs/0/pipe/size", size, "/runs/0/length", "20 ft")
	}
	if to := pipe("99"); to != at+"/next/pump" { // no pump yet, so nothing has looked at the pipe
		t.Errorf("goes on to %q", to)
	}
	to := give("pump", "/pumps/0/curve/0/flow", "0", "/pumps/0/curve/0/head", "20", "/pumps/0/curve/2/flow", "40", "/pumps/0/curve/2/head", "10", "/pumps/0/curve/5/flow", "60", "/pumps/0/curve/5/head", "1")
	if to != at+"/next/pipe" {
		t.Errorf("goes on to %q with a size that there is not", to)
	}
	if j, _ := job.Read(d.newest("id1").Data); len(j.Pumps[0].Curve) != 3 || j.Pumps[0].Curve[2].Flow.Text != "60" {
		t.Errorf("%+v", j.Pumps[0].Curve)
	}
	page := d.get(at + "/next/pipe")
	sound(t, "pipe", page)
	if !strings.Contains(page, "does not fit or is not known") || !strings.Contains(page, `aria-invalid="true"`) {
		t.Error("the step does not tell it")
	}
	if to := pipe("2"); to != at+"/next/vault" {
		t.Errorf("goes on to %q", to)
	}
	vault := []string{"/vault/shape", "box", "/vault/length", "24 in", "/vault/width", "18 in", "/vault/depth", "30 in", "/vault/floor", "26 in", "/vault/sill", "30 in", "/vault/weirWidth", "12 in"}
	if to := give("pond", "/pond/outline/shape", "circle", "/pond/outline/length", "9 ft", "/pond/depth", "30 in", "/pond/rim", "-3 in"); to != at+"/next/pond" {
		t.Errorf("goes on to %q with the rim under water", to)
	}
	if j, _ := job.Read(d.newest("id1").Data); j.Pond.Rim.Text != "@water - 3 in" {
		t.Errorf("the rim stands at %q", j.Pond.Rim.Text)
	}
	if page := d.get(at + "/next/pond"); !strings.Contains(page, "in when no unit is typed") {
		t.Error("the unit of a bare depth is not told")
	}
	give("pond", "/pond/outline/shape", "circle", "/pond/outline/length", "9", "/pond/depth", "30", "/pond/rim", "3")
	if j, _ := job.Read(d.newest("id1").Data); j.Pond.Depth.Text != "30 in" || j.Pond.Rim.Text != "@water + 3 in" || j.Pond.Outline.Length.Text != "9" {
		t.Errorf("bare figures stand at %q, %q, %q", j.Pond.Depth.Text, j.Pond.Rim.Text, j.Pond.Outline.Length.Text)
	}
	d.post(at+"/set", "here", "pond", "/pond/depth", "3")
	if page := d.get(at + "/next/pond"); !strings.Contains(page, `name="/pond/depth" value="3 ft"`) {
		t.Error("a depth typed as 3 (feet) on its page stands without its unit")
	}
	for range 2 { // and again, unmended
		if to := give("vault", vault...); to != at+"/next/vault" {
			t.Errorf("goes on to %q with the floor over the sill", to)
		}
	}
}
