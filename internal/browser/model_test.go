package browser

import (
	"bytes"
	"testing"
	"time"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// drawn waits for the picture to be drawn again after something was done.
func (b *Tab) drawn(what string, do func()) {
	b.t.Helper()
	n := Eval[string](b, `document.querySelector("#model canvas").dataset.drawn`)
	do()
	b.Until("the model is drawn again after "+what, `document.querySelector("#model canvas").dataset.drawn !== "`+n+`"`)
}

// canvas is the picture of the model as it stands.
func (b *Tab) canvas() []byte {
	b.t.Helper()
	r := Eval[[]float64](b, `(() => { scrollTo({top: 0, behavior: "instant"}); const r = document.querySelector("#model canvas").getBoundingClientRect(); return [r.x + scrollX, r.y + scrollY, r.width, r.height] })()`) //nolint:misspell // the word of the standard
	beyond := true
	got, err := chromedp.Call(b.ctx, page.CaptureScreenshot, page.CaptureScreenshotParams{
		Clip: &page.Viewport{X: r[0], Y: r[1], Width: r[2], Height: r[3], Scale: 1}, CaptureBeyondViewport: &beyond,
	})
	if err != nil {
		b.t.Fatal(err)
	}
	return got.Data
}

// TestModel turns the model, comes nearer and picks a part: by taps on a phone,
// by keys at a desk. What is picked is told in words, and all of it stands in a
// list of words beside the picture.
func TestModel(t *testing.T) {
	chrome := Open(t, chromedp.Flag("disable-gpu", false), chromedp.Flag("use-angle", "swiftshader"), chromedp.Flag("enable-unsafe-swiftshader", true), chromedp.Flag("ignore-gpu-blocklist", true))
	for _, size := range []Size{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			b := NewTab(t, chrome, site(t), size)
			b.Go(hillside(b) + "/model")
			b.Until("the model is drawn", `document.querySelector("#model canvas").dataset.drawn && !document.getElementById("model").hidden && document.getElementById("flat").hidden`)
			hint := b.Text("#told")
			first := b.canvas()
			press := func(key string) { // of the keyboard, or the button that does the same
				b.drawn(key, func() {
					if size.Mobile {
						b.Tap(`#model [data-key="` + key + `"]`)
						return
					}
					Eval[bool](b, `(document.querySelector("#model canvas").focus(), true)`)
					b.Keys(map[string]string{"ArrowLeft": kb.ArrowLeft, "ArrowUp": kb.ArrowUp, "+": "+", "-": "-", "Home": kb.Home, "Escape": kb.Escape}[key])
				})
			}
			last := first
			for _, key := range []string{"ArrowLeft", "ArrowUp", "+"} {
				press(key)
				now := b.canvas()
				if bytes.Equal(now, last) {
					t.Errorf("%s changes nothing in the picture", key)
				}
				last = now
			}
			press("Home")
			back := false
			for i := 0; i < 20 && !back; i++ { // what is drawn comes to the screen a little later
				time.Sleep(50 * time.Millisecond)
				back = bytes.Equal(b.canvas(), first)
			}
			if !back {
				t.Error("the first view does not come back")
			}
			picked := ""
			for i := 0; i < 81 && picked == ""; i++ { // somewhere in the picture is a part
				r := Eval[[]float64](b, `(() => { const c = document.querySelector("#model canvas"); c.scrollIntoView({block: "center", behavior: "instant"}); const r = c.getBoundingClientRect(); return [r.x, r.y, r.width, r.height] })()`) //nolint:misspell // the word of the standard
				x, y := r[0]+r[2]*(0.1+0.1*float64(i%9)), r[1]+r[3]*(0.1+0.1*float64(i/9))
				if size.Mobile {
					b.do(chromedp.TapXY(x, y))
				} else {
					b.do(chromedp.MouseClickXY(x, y))
				}
				if told := b.Text("#told"); told != hint {
					picked = told
				}
			}
			pressed := Eval[[]string](b, `[...document.querySelectorAll('#model [data-name][aria-pressed="true"]')].map(e => e.dataset.name)`)
			if picked == "" || len(pressed) != 1 {
				t.Errorf("taps all over the picture pick %q, pressed %v", picked, pressed)
			}
			b.Picture("model")
			names := Eval[[]string](b, `[...document.querySelectorAll("#model [data-name]")].map(e => e.dataset.name)`)
			if len(names) < 5 {
				t.Fatalf("the list names %v", names)
			}
			for _, name := range names {
				Eval[bool](b, `(() => { const e = document.querySelector('#model [data-name="`+name+`"]'); if (e.getAttribute("aria-pressed") !== "true") e.click(); return true })()`)
				if b.Text("#told") == hint || Eval[string](b, `document.querySelector('#model [data-name="`+name+`"]').closest("li").innerText.trim()`) == name {
					t.Errorf("%s is not told in words", name)
				}
			}
			if size.Mobile {
				b.Tap(`#model [aria-pressed="true"]`)
			} else {
				press("Escape")
			}
			if told := b.Text("#told"); told != hint {
				t.Errorf("the part is not let go: %q", told)
			}
			if label := Eval[string](b, `document.querySelector("#model canvas").getAttribute("aria-label")`); label == "" {
				t.Error("the picture has no text in its place")
			}
			b.Quiet()
		})
	}
}
