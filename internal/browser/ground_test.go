package browser

import (
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// where gives the place on the screen of a place on the ground, feet across and
// up the page.
func (b *Tab) where(x, y float64) (float64, float64) {
	b.t.Helper()
	p := Eval[[]float64](b, `(() => { const s = document.querySelector("#stage svg"); s.scrollIntoView({block: "end", behavior: "instant"}); const p = new DOMPoint(`+num(x*30.48)+`, `+num(-y*30.48)+`).matrixTransform(s.getScreenCTM()); return [p.x, p.y] })()`) //nolint:misspell // the word of the standard
	return p[0], p[1]
}

func (b *Tab) marks(n string) {
	b.t.Helper()
	b.Until(n+" corners are drawn", `document.querySelectorAll("#stage .mark").length === `+n)
}

// TestOutline draws a triangle of 10 by 6 ft: by finger on a phone, by keys
// alone at a desk. The surface is answered, the fields hold the corners, a
// corner is moved and removed, and undo brings it back.
func TestOutline(t *testing.T) {
	chrome := Open(t)
	for _, size := range []Size{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			b := NewTab(t, chrome, site(t), size)
			at := hillside(b) + "/part/pond"
			b.Go(at)
			b.Fill(field("/pond/outline/length"), "")
			b.Keys("\t")
			b.Until("the length is gone", `document.querySelector("#last.fresh")`)
			b.Go(at)
			b.Follow(`.starts form:first-of-type button`)
			b.Until("the ground can be drawn on", `!document.getElementById("groundtools").hidden`)
			if size.Mobile {
				for i, c := range [][2]float64{{2, 2}, {12, 2}, {12, 8}} {
					x, y := b.where(c[0], c[1])
					b.do(chromedp.TapXY(x, y))
					b.marks(num(float64(i + 1)))
				}
			} else {
				Eval[bool](b, `(document.getElementById("stage").focus(), true)`)
				b.Keys("\r") // the cross
				for i, way := range []string{"", keys(right, 40), keys(up, 24)} {
					if way != "" {
						b.Keys(way)
					}
					b.Keys("\r")
					b.marks(num(float64(i + 1)))
				}
			}
			b.Until("the surface is answered", `document.getElementById("groundarea")?.innerText === "30.0 ft²"`)
			b.Until("the fields hold three corners", `document.querySelectorAll('[name^="/pond/outline/points/"][name$="/x"]:not([name*="-"])').length === 3`)
			b.Picture("outline")
			first := b.value("/pond/outline/points/2/y")
			if size.Mobile {
				x, y := b.where(12, 8)
				x2, y2 := b.where(12, 10)
				b.do(chromedp.DragAndDropXY(x, y, x2, y2))
			} else {
				b.Keys("nnn" + keys(up, 8))
			}
			b.Until("the surface follows the corner", `document.getElementById("groundarea")?.innerText === "40.0 ft²"`)
			if b.value("/pond/outline/points/2/y") == first {
				t.Error("the field does not follow the corner")
			}
			if size.Mobile {
				b.Tap(`[data-do="next"]`) // the first again
				b.Tap(`[data-do="remove"]`)
			} else {
				Eval[bool](b, `(document.getElementById("stage").focus(), true)`)
				b.Keys("n" + remove)
			}
			b.marks("2")
			b.Follow(`#last form button`)
			b.Go(at)
			b.marks("3")
			if small := Eval[[]string](b, `[...document.querySelectorAll(".ground button, .ground a")].filter(e => { const r = e.getBoundingClientRect(); return r.width < 44 || r.height < 44 }).map(e => e.outerHTML)`); len(small) > 0 {
				t.Errorf("less than 44 px: %v", small)
			}
			b.Quiet()
		})
	}
}

// Keys that print nothing.
const (
	right  = kb.ArrowRight
	up     = kb.ArrowUp
	remove = kb.Delete
)

func keys(key string, n int) string { return strings.Repeat(key, n) }

func num(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
