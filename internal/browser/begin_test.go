package browser

import (
	"regexp"
	"strings"
	"testing"
)

// given is what a person brings to a new job: the steps of the way to its cut
// list, and what is typed or chosen at each, in the order of the page.
var given = []struct {
	step   string
	fields [][2]string
}{
	{"pond", [][2]string{{"/pond/outline/shape", "ellipse"}, {"/pond/outline/length", "10 ft"}, {"/pond/outline/width", "7 ft"}, {"/pond/depth", "2 ft"}, {"/pond/rim", "3 in"}}},
	{"fall", [][2]string{{"/watercourses/0/parts/0/lip/width", "18 in"}, {"/watercourses/0/parts/0/lip/crest", "2' 6\""}, {"/watercourses/0/parts/0/lip/wanted", "55 gpm"}}},
	{"pipe", [][2]string{{"/runs/0/pipe/kind", "PVC Sch 40"}, {"/runs/0/pipe/size", "2"}, {"/runs/0/length", "20 ft"}}},
	{"pump", [][2]string{
		{"/pumps/0/name", "M"},
		{"/pumps/0/curve/0/flow", "0"},
		{"/pumps/0/curve/0/head", "20"},
		{"/pumps/0/curve/1/flow", "30"},
		{"/pumps/0/curve/1/head", "16"},
		{"/pumps/0/curve/2/flow", "54"},
		{"/pumps/0/curve/2/head", "10"},
		{"/pumps/0/curve/3/flow", "80"},
		{"/pumps/0/curve/3/head", "2"},
	}},
	{"vault", [][2]string{
		{"/vault/shape", "box"}, {"/vault/length", "24"}, {"/vault/width", "18"}, {"/vault/depth", "30"}, {"/vault/floor", "26 in"}, {"/vault/sill", "3 in"}, {"/vault/weirWidth", "12"},
	}},
	{"hole", [][2]string{{"/vault/outlet/wall", "back"}, {"/vault/outlet/along", "12"}, {"/vault/outlet/height", "22"}}},
	{"stands", [][2]string{
		{"/pumps/0/port/size", "2"},
		{"/pumps/0/port/thread", "NPT female"},
		{"/pumps/0/attitudes/0/length", "12"},
		{"/pumps/0/attitudes/0/width", "7"},
		{"/pumps/0/attitudes/0/height", "8"},
		{"/pumps/0/attitudes/0/points", "up"},
		{"/pumps/0/attitudes/0/port/x", "6"},
		{"/pumps/0/attitudes/0/port/y", "3-1/2"},
		{"/pumps/0/attitudes/0/port/z", "8"},
	}},
	{"layout", nil},
	{"sticks", [][2]string{{"/stock/sticks/0/length", "10 ft"}}},
}

// hand does what a person does with a field or a button: on a phone a thumb,
// at a desk the keys alone, with the tab key from one to the next.
type hand struct{ *Tab }

// to brings the focus to a selector by the tab key.
func (h hand) to(selector string) {
	h.t.Helper()
	for range 200 {
		if Eval[bool](h.Tab, `document.activeElement === document.querySelector(`+quote(selector)+`)`) {
			return
		}
		h.Keys("\t")
	}
	h.t.Fatalf("at %s: the tab key does not come to %s", h.At(), selector)
}

// give fills a field.
func (h hand) give(path, text string) {
	h.t.Helper()
	at := field(path)
	choice := Eval[bool](h.Tab, `document.querySelector(`+quote(at)+`).tagName === "SELECT"`)
	switch {
	case !h.size.Mobile:
		h.to(at)
		h.Keys(text)
	case choice: // the phone's own wheel stands outside the page
		Eval[bool](h.Tab, `(() => { const s = document.querySelector(`+quote(at)+`); s.focus(); s.value = `+quote(text)+`; s.dispatchEvent(new Event("change", {bubbles: true})); return true })()`)
	default:
		h.Tap(at)
		h.Keys(text)
	}
	if got := h.value(path); got != text {
		h.t.Fatalf("at %s: %q was given to %s, %q stands there", h.At(), text, path, got)
	}
}

// press follows a link or button to the next page.
func (h hand) press(selector string) {
	h.t.Helper()
	if h.size.Mobile {
		h.Follow(selector)
		return
	}
	Eval[bool](h.Tab, "window.before = true")
	h.to(selector)
	h.Keys("\r")
	h.arrived(selector)
}

// TestBeginToCut takes a job from nothing to its cut list, at each size, by touch
// on a phone and by keys alone at a desk. Every page on the way tells which step
// is next, is no wider than the screen, and has targets that a thumb hits.
func TestBeginToCut(t *testing.T) {
	chrome := Open(t)
	for _, size := range Sizes {
		t.Run(size.Name, func(t *testing.T) {
			h := hand{NewTab(t, chrome, site(t), size)}
			pages := 0
			look := func(name string) {
				pages++
				if wide := Eval[float64](h.Tab, `document.documentElement.scrollWidth - innerWidth`); wide > 0 {
					t.Errorf("%s is %.0f px wider than the screen: %s", h.At(), wide, Eval[string](h.Tab, widest))
				}
				if small := Eval[[]string](h.Tab, smallTargets); len(small) > 0 && size.Mobile {
					t.Errorf("%s has targets too small for a thumb: %q", h.At(), small)
				}
				h.Picture("begin-" + name)
			}
			h.Go("/")
			h.press(`a[href="/new"]`)
			look("new")
			if size.Mobile {
				h.Tap(`[name="name"]`)
			} else {
				h.to(`[name="name"]`)
			}
			h.Keys("Back yard")
			h.press(`form[action="/new"] button.main`)
			for i, s := range given {
				if at := h.At(); !strings.HasSuffix(at, "/next/"+s.step) {
					t.Fatalf("step %d is at %s: %s", i+1, at, h.Text("main"))
				}
				look(s.step)
				if s.step == "layout" {
					h.press(`form[action$="/layouts/find"] button.main`)
					h.Until("layouts are found", `document.querySelector('form[action$="/layouts/keep"] button')`)
					look("layouts")
					h.press(`#plan-1 form[action$="/layouts/keep"] button`)
					if !strings.HasSuffix(h.At(), "/part/vault") {
						t.Fatalf("the layout kept leads to %s: %s", h.At(), h.Text("main"))
					}
					look("kept")
					h.press(`#onward a`)
					continue
				}
				for _, f := range s.fields {
					h.give(f[0], f[1])
				}
				h.press(`form[action$="/next/` + s.step + `"] button.main`)
			}
			if !strings.HasSuffix(h.At(), "/part/cuts") {
				t.Fatalf("the last step leads to %s", h.At())
			}
			look("cuts")
			text := h.Text("#tables")
			if n := len(regexp.MustCompile(`\bP\d+ \d`).FindAllString(text, -1)); n < 3 {
				t.Errorf("the cut list names %d pieces: %s", n, text)
			}
			if text := h.Text("#onward"); strings.TrimSpace(text) != "" {
				t.Errorf("all is given, and the page asks for more: %s", text)
			}
			if strip := h.Text("#strip"); !regexp.MustCompile(`\d+\.\d gpm`).MatchString(strip) {
				t.Errorf("no flow is told: %s", strip)
			}
			if pages < len(given)+3 {
				t.Errorf("only %d pages were looked at", pages)
			}
			h.Quiet()
		})
	}
}
