package browser

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

var take = flag.Bool("tour", false, "take the pictures of docs/tour.md anew")

// stops of the tour: the picture's name, the page of the example, what to bring
// into sight.
var stops = []struct{ name, at, sight string }{
	{"list", "", ""},
	{"answer", "/", ""},
	{"pond", "/part/pond", ""},
	{"pump", "/part/pump", ""},
	{"levels", "/part/levels", "figure.drawing:nth-of-type(2)"},
	{"doubt", "/doubt", ""},
	{"vault", "/part/vault", "figure.drawing"},
	{"cuts", "/part/cuts", ""},
	{"glue", "/glue/1", ""},
	{"material", "/part/material", ""},
}

// TestTour goes to every stop of the tour in the docs: each page is there, has
// what its picture shows, and each picture is there and of a phone's size.
func TestTour(t *testing.T) {
	text, err := os.ReadFile("../../docs/tour.md")
	if err != nil {
		t.Fatal(err)
	}
	if n := len(regexp.MustCompile(`\]\(tour/\w+\.png\)`).FindAll(text, -1)); n != len(stops) {
		t.Errorf("the tour shows %d pictures, %d are taken", n, len(stops))
	}
	b := NewTab(t, Open(t), site(t), Phone)
	job := hillside(b)
	for _, s := range stops {
		at := job + s.at
		switch s.name {
		case "list":
			at = "/"
		case "answer":
			at = job
		}
		b.Go(at)
		if s.sight != "" {
			b.Until(s.sight+" is there", `document.querySelector(`+quote(s.sight)+`)`)
			Eval[bool](b, `(document.querySelector(`+quote(s.sight)+`).scrollIntoView({block: "center", behavior: "instant"}), true)`) //nolint:misspell // the word of the standard
		}
		if !bytes.Contains(text, []byte("](tour/"+s.name+".png)")) {
			t.Errorf("the tour does not show %s", s.name)
		}
		file := filepath.Join("../../docs/tour", s.name+".png")
		if *take {
			shot, err := chromedp.Call(b.ctx, page.CaptureScreenshot, page.CaptureScreenshotParams{})
			if err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(file, shot.Data, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		raw, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.HasPrefix(raw, []byte("\x89PNG")) {
			t.Errorf("%s is no picture", file)
		}
	}
	b.Quiet()
}
