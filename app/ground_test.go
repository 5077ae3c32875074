package app

import (
	"fmt"
	"html"
	"net/http"
	"regexp"
	"strings"
	"testing"

	"plashet/job"
)

const pondPage = "/jobs/example-hillside-cascade/part/pond"

// pressed sends the hidden form of a button as a browser without script does.
func pressed(d *desk, page, button string) string {
	d.t.Helper()
	for _, form := range regexp.MustCompile(`(?s)<form method="post" action="([^"]+)">(.*?)</form>`).FindAllStringSubmatch(page, -1) {
		if !strings.Contains(form[2], button) {
			continue
		}
		var pairs []string
		for _, in := range regexp.MustCompile(`<input type="hidden" name="([^"]+)" value="([^"]*)"/>`).FindAllStringSubmatch(form[2], -1) {
			if in[1] != "base" {
				pairs = append(pairs, in[1], html.UnescapeString(in[2]))
			}
		}
		code, body := d.post(form[1], pairs...)
		if code != http.StatusSeeOther {
			d.t.Fatalf("%s: %d", button, code)
		}
		return body
	}
	d.t.Fatalf("no form with %q", button)
	return ""
}

func surface(t *testing.T, page string) string {
	t.Helper()
	m := regexp.MustCompile(`id="groundarea">([^<]*)<`).FindStringSubmatch(page)
	if m == nil {
		t.Fatal("no surface is told")
	}
	return html.UnescapeString(m[1])
}

func outlineNow(t *testing.T, d *desk, id string) job.Outline {
	t.Helper()
	j, _ := job.Decode(d.newest(id).Data)
	return j.Pond.Outline
}

// A shape by its sizes becomes corners or taped offsets without script, keeps
// its surface, and undo brings the sizes back.
func TestOutlineBegins(t *testing.T) {
	for _, c := range []struct{ shape, length, width, kind, area string }{
		{"rectangle", "12 ft", "8 ft", "points", "96.0 ft²"}, // 12 x 8
		{"rectangle", "12 ft", "8 ft", "offsets", "96.0 ft²"},
	} {
		d := newDesk(t)
		d.post("/jobs/example-hillside-cascade/set", "here", "pond", outlinePath+"/shape", c.shape, outlinePath+"/length", c.length, outlinePath+"/width", c.width)
		page := pressed(d, d.get(pondPage), map[string]string{"points": "corner by corner", "offsets": "from taped offsets"}[c.kind])
		if got := surface(t, page); got != c.area {
			t.Errorf("%v: surface %s", c, got)
		}
		o := outlineNow(t, d, "example-hillside-cascade")
		if o.Shape != c.kind || !o.Length.IsZero() || !o.Width.IsZero() {
			t.Errorf("%v became %+v", c, o)
		}
		d.post("/jobs/example-hillside-cascade/undo", "here", "pond")
		if o := outlineNow(t, d, "example-hillside-cascade"); o.Shape != c.shape || len(o.Points)+len(o.Offsets) != 0 {
			t.Errorf("%v: undo leaves %+v", c, o)
		}
	}
}

// An ellipse turned into eight corners, or five offsets, of a smooth curve keeps
// its surface to two in a hundred: pi/4 x 16 ft x 11 ft = 138.2 ft².
func TestOutlineOfEllipse(t *testing.T) {
	for _, button := range []string{"corner by corner", "from taped offsets"} {
		d := newDesk(t)
		d.post("/jobs/example-hillside-cascade/set", "here", "pond", outlinePath+"/shape", "ellipse", outlinePath+"/length", "16 ft", outlinePath+"/width", "11 ft")
		var got float64
		text := surface(t, pressed(d, d.get(pondPage), button))
		if _, err := fmt.Sscan(text, &got); err != nil || got < 138.2*0.98 || got > 138.2*1.02 {
			t.Errorf("%s: surface %s", button, text)
		}
	}
}

// Corners go in where they are told to, move, and go, by the posts of the script.
func TestOutlineByCorners(t *testing.T) {
	d := newDesk(t)
	d.post("/jobs/example-hillside-cascade/set", "here", "pond", outlinePath+"/shape", "points", outlinePath+"/length", "", outlinePath+"/width", "")
	place := func(x, y, to string) (int, string) {
		return d.post("/jobs/example-hillside-cascade/add", "here", "pond", outlinePath+"/points/-/x", x, outlinePath+"/points/-/y", y, "to", to)
	}
	if page := d.get(pondPage); strings.Contains(page, "groundarea") || !strings.Contains(page, `data-kind="points"`) {
		t.Error("an outline without corners has a surface, or no ground to draw on")
	}
	place("0' 0\"", "0' 0\"", "0")
	place("10' 0\"", "6' 0\"", "1")
	_, page := place("10' 0\"", "0' 0\"", "1") // between the two
	if got := surface(t, page); got != "30.0 ft²" {
		t.Errorf("a triangle of 10 by 6 ft has %s", got)
	}
	if o := outlineNow(t, d, "example-hillside-cascade"); len(o.Points) != 3 || o.Points[1].Y.SI != 0 {
		t.Errorf("the corner put in between stands wrong: %+v", o.Points)
	}
	code, page := d.post("/jobs/example-hillside-cascade/set", "here", "pond", outlinePath+"/points/2/y", "8' 0\"")
	if got := surface(t, page); code != http.StatusSeeOther || got != "40.0 ft²" {
		t.Errorf("moved: %d, %s", code, got)
	}
	if !strings.Contains(html.UnescapeString(page), `value="8' 0""`) {
		t.Error("the field beside does not hold the corner that was moved")
	}
	if code, page = d.post("/jobs/example-hillside-cascade/remove", "here", "pond", "path", outlinePath+"/points/1"); code != http.StatusSeeOther || strings.Contains(page, "groundarea") {
		t.Errorf("two corners have a surface (%d)", code)
	}
	if code, _ = place("ten", "1 ft", "1"); code != http.StatusUnprocessableEntity {
		t.Errorf("a corner that is no length is answered %d", code)
	}
	if code, _ = place("1 ft", "1 ft", "-7"); code != http.StatusSeeOther {
		t.Errorf("a place before the first: %d", code)
	}
	if len(d.logs) > 0 {
		t.Error(d.logs)
	}
}

// An offset goes in by its distance along the tape.
func TestOutlineByOffsets(t *testing.T) {
	d := newDesk(t)
	d.post("/jobs/example-hillside-cascade/set", "here", "pond", outlinePath+"/shape", "offsets", outlinePath+"/length", "", outlinePath+"/width", "")
	at := outlinePath + "/offsets/-/"
	for _, x := range [][4]string{{"0 ft", "2 ft", "1 ft", "0"}, {"10 ft", "2 ft", "1 ft", "1"}, {"5 ft", "4 ft", "1 ft", "1"}} {
		d.post("/jobs/example-hillside-cascade/add", "here", "pond", at+"at", x[0], at+"left", x[1], at+"right", x[2], "to", x[3])
	}
	page := d.get(pondPage)
	if got := surface(t, page); got != "40.0 ft²" { // two trapezoids, (3 + 5)/2 x 5 ft each
		t.Errorf("surface %s", got)
	}
	if n := strings.Count(page, `class="mark"`); n != 6 {
		t.Errorf("%d marks of three offsets", n)
	}
}

// The ground grows by request, stays in the address after an edit, and a request
// out of its range is brought into it.
func TestGroundAsked(t *testing.T) {
	d := newDesk(t)
	d.post("/jobs/example-hillside-cascade/set", "here", "pond", outlinePath+"/shape", "points", outlinePath+"/length", "", outlinePath+"/width", "")
	seen := map[string]bool{}
	for _, q := range []string{"?ground=-3", "?ground=0", "?ground=3", "?ground=999999", "?ground=x"} {
		seen[regexp.MustCompile(`<svg viewBox="([^"]+)" role="img" aria-label="The outline`).FindStringSubmatch(d.get(pondPage + q))[1]] = true
	}
	if len(seen) != 4 {
		t.Errorf("%d different grounds of four", len(seen))
	}
	form := map[string][]string{"base": {itoa(d.newest("example-hillside-cascade").Number)}, "here": {"pond"}, outlinePath + "/points/-/x": {"1 ft"}, outlinePath + "/points/-/y": {"1 ft"}}
	if _, _, h := d.ask(http.MethodPost, "/jobs/example-hillside-cascade/add?ground=3", form); !strings.Contains(h.Get("Location"), "ground=3") {
		t.Errorf("the way on is %s", h.Get("Location"))
	}
}
