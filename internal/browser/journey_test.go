package browser

import (
	"fmt"
	"strings"
	"testing"
)

// hillside opens an example of its own for a test to change: every test has a
// program and a database to itself.
func hillside(b *Tab) string {
	b.t.Helper()
	at := examples(b)["Hillside cascade"]
	if at == "" {
		b.t.Fatal("the example is not in the list")
	}
	return at
}

// field is the selector of the field of a path of the job.
func field(path string) string { return `[name="` + path + `"]:not([type=hidden])` }

// value is what stands in a field.
func (b *Tab) value(path string) string {
	b.t.Helper()
	return Eval[string](b, `document.querySelector(`+quote(field(path))+`).value`)
}

// edit types into a field and leaves it, as a person does, and waits for the
// page to say what was changed.
func (b *Tab) edit(path, text string) {
	b.t.Helper()
	Eval[bool](b, `(document.querySelectorAll("details").forEach(d => d.open = true), document.getElementById("last").classList.remove("fresh"), true)`)
	b.Fill(field(path), text)
	b.Keys("\t")
	b.Until("the change of "+path+" is told", `document.querySelector("#last.fresh")`)
}

// someField is a quantity of each part of the job and something else to type
// into it.
var someField = []struct{ part, path, text string }{
	{"site", "/survey/setups/0/reading", "4.63 ft"},
	{"pond", "/pond/outline/length", "16' 7\""},
	{"falls", "/watercourses/0/parts/0/lip/width", "19-1/2\""},
	{"pump", "/pumps/0/boxFlow", "6121 gph"},
	{"pipe", "/runs/0/length", "7' 6\""},
	{"vault", "/vault/depth", "26-1/2 in"},
}

// TestEditAndUndo changes a field in each part, loads the page anew, and takes
// the change back, at each size.
func TestEditAndUndo(t *testing.T) {
	chrome := Open(t)
	for _, size := range Sizes {
		t.Run(size.Name, func(t *testing.T) {
			b := NewTab(t, chrome, site(t), size)
			at := hillside(b)
			for _, s := range someField {
				b.Go(at + "/part/" + s.part)
				if !Eval[bool](b, `!!document.querySelector(`+quote(field(s.path))+`)`) {
					t.Errorf("the part %s has no field %s", s.part, s.path)
					continue
				}
				was := b.value(s.path)
				b.edit(s.path, s.text)
				b.Go(at + "/part/" + s.part)
				if got := b.value(s.path); got != s.text {
					t.Errorf("%s: %q was typed, %q stands there after loading anew", s.path, s.text, got)
				}
				b.Follow(`#last form button`)
				b.Go(at + "/part/" + s.part)
				if got := b.value(s.path); got != was {
					t.Errorf("%s: undo leaves %q, before the change %q stood there", s.path, got, was)
				}
			}
			b.Quiet()
		})
	}
}

// TestWrongLengths types what is no length into every field for a quantity that
// stands on the pages of a job: each says what was read, and nothing is changed.
func TestWrongLengths(t *testing.T) {
	chrome := Open(t)
	b := NewTab(t, chrome, site(t), Phone)
	at := hillside(b)
	count := 0
	for _, s := range someField {
		b.Go(at + "/part/" + s.part)
		paths := Eval[[]string](b, `(document.querySelectorAll("details").forEach(d => d.open = true), [...document.querySelectorAll("form[data-edit] input[type=text]")].filter(i => i.closest(".field").querySelector(".unit") && i.checkVisibility()).map(i => i.name))`)
		for _, path := range paths {
			count++
			wrong := Eval[string](b, fmt.Sprintf(`(async () => {
				const q = %s, i = document.querySelector(q), was = i.value;
				i.value = "4 ft 99x"; i.dispatchEvent(new Event("change", {bubbles: true}));
				for (let n = 0; n < 500; n++) { await new Promise(r => setTimeout(r, 20)); const f = document.querySelector(q).closest(".field"); const e = f.querySelector(".error"); if (e) { const said = e.innerText; const now = document.querySelector(q); now.value = was; now.dispatchEvent(new Event("change", {bubbles: true})); for (let m = 0; m < 500; m++) { await new Promise(r => setTimeout(r, 20)); if (!document.querySelector(q).closest(".field").querySelector(".error")) return said } return "the sentence stays: " + said } }
				return "" })()`, quote(field(path))))
			if !strings.Contains(wrong, "4 ft 99x") {
				t.Errorf("%s: a wrong length gets %q, which does not tell what was read", path, wrong)
			}
		}
	}
	if count < 30 {
		t.Errorf("only %d fields were tried", count)
	}
	b.Go(at + "/history")
	if n := Eval[int](b, `document.querySelectorAll("ol.history > li").length`); n != 1 {
		t.Errorf("wrong lengths made %d revisions", n-1)
	}
	b.Quiet()
}

// TestTwoTabs has two tabs on one job: changes of different fields both stand;
// of one field, the second is asked which is to stand, and both are shown.
func TestTwoTabs(t *testing.T) {
	chrome, base := Open(t), site(t)
	one, two := NewTab(t, chrome, base, Phone), NewTab(t, chrome, base, Desk)
	at := hillside(one) + "/part/pond"
	one.Go(at)
	two.Go(at)
	one.edit("/pond/outline/length", "16' 7\"")
	Eval[bool](two, `(document.querySelectorAll("details").forEach(d => d.open = true), true)`)
	two.Fill(field("/pond/outline/length"), "16' 9\"")
	two.Keys("\t")
	two.Until("both sides are shown", `document.querySelector("fieldset input[type=radio]")`)
	text := two.Text("main")
	for _, side := range []string{"16' 7\"", "16' 9\""} {
		if !strings.Contains(text, side) {
			t.Errorf("%q is not among what is shown: %s", side, text)
		}
	}
	two.Picture("stale")
	two.Tap(`#mine-0`)
	two.Follow(`main form button.main`)
	two.Go(at)
	if got := two.value("/pond/outline/length"); got != "16' 9\"" {
		t.Errorf("mine was chosen, %q stands there", got)
	}
	one.Quiet()
}

// TestBack goes forth and back and finds each page as it was.
func TestBack(t *testing.T) {
	b := NewTab(t, Open(t), site(t), Phone)
	at := hillside(b)
	b.Follow(`a[href="` + at + `"]`)
	b.Go(at + "/part/pond")
	b.edit("/pond/outline/length", "16' 8\"")
	b.Go(at + "/part/pump")
	Eval[bool](b, "window.before = true")
	Eval[bool](b, "(history.back(), true)")
	b.Until("the pond's page comes back", `location.pathname.endsWith("/part/pond") && document.readyState === "complete"`)
	if got := b.value("/pond/outline/length"); got != "16' 8\"" {
		t.Errorf("after going back the old %q stands in the field", got)
	}
	b.edit("/pond/outline/length", "16' 9\"")
	b.Quiet()
}

// TestKeysAlone walks over a page with the tab key: everything that can be used
// is reached, in the order of the page, with a mark that is seen; and a field is
// changed without a mouse.
func TestKeysAlone(t *testing.T) {
	b := NewTab(t, Open(t), site(t), Desk)
	at := hillside(b)
	for _, part := range []string{"", "/part/pond", "/part/vault", "/history"} {
		b.Go(at + part)
		all := Eval[int](b, `[...document.querySelectorAll("a[href], button, input:not([type=hidden]), select, textarea, summary")].filter(e => e.tabIndex >= 0 && !e.disabled && e.checkVisibility({visibilityProperty: true})).length`)
		Eval[bool](b, `(window.reached = new Set(), window.unseen = [], document.addEventListener("focusin", e => { reached.add(e.target); const s = getComputedStyle(e.target); if (s.outlineStyle === "none" && s.boxShadow === "none") unseen.push(e.target.outerHTML.slice(0, 120)) }), document.body.focus(), true)`)
		for range all + 3 {
			b.Keys("\t")
		}
		if n := Eval[int](b, `reached.size`); n < all {
			t.Errorf("%s: %d of %d are reached with the tab key", part, n, all)
		}
		if unseen := Eval[[]string](b, `unseen`); len(unseen) > 0 {
			t.Errorf("%s: no mark shows where the focus is at %d, the first %q", part, len(unseen), unseen[0])
		}
	}
	b.Go(at + "/part/pond")
	Eval[bool](b, `(document.querySelector(`+quote(field("/pond/outline/length"))+`).focus(), true)`)
	b.edit("/pond/outline/length", "16' 8\"")
	b.Quiet()
}

// TestReload loads the page anew while something stands typed and not sent:
// nothing of it is half saved.
func TestReload(t *testing.T) {
	b := NewTab(t, Open(t), site(t), Phone)
	at := hillside(b) + "/part/pond"
	b.Go(at)
	was := b.value("/pond/outline/length")
	b.Fill(field("/pond/outline/length"), "16' 1")
	b.Go(at)
	if got := b.value("/pond/outline/length"); got != was {
		t.Errorf("%q stands there, before %q", got, was)
	}
	b.edit("/pond/outline/length", "16' 10\"")
	Eval[bool](b, "(location.reload(), true)")
	b.Until("the page is there again", `document.readyState === "complete" && document.querySelector("#last:not(.fresh)")`)
	if got := b.value("/pond/outline/length"); got != "16' 10\"" {
		t.Errorf("%q stands there after loading anew", got)
	}
	b.Quiet()
}
