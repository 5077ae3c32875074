package browser

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"image"
	"image/color" //nolint:misspell // the library's word
	"image/png"
	"strings"
	"testing"

	qrcode "github.com/skip2/go-qrcode"
)

// TestSheetPhotographed: a fitter photographs the code on a sheet, after the job
// was changed at the desk: the page says not to cut from it, and which piece would
// be cut otherwise. The address that a phone's own camera opens leads there too.
func TestSheetPhotographed(t *testing.T) {
	b := NewTab(t, Open(t), site(t), Phone)
	at := hillside(b)
	b.Go(at + "/history")
	digest := Eval[string](b, `(async () => { const data = await (await fetch("`+at+`/file")).arrayBuffer(); const sum = await crypto.subtle.digest("SHA-256", data); return [...new Uint8Array(sum)].map(x => x.toString(16).padStart(2, "0")).join("") })()`)
	code := "plashet:job?d=" + digest[:16] + "&j=" + strings.TrimPrefix(at, "/jobs/") + "&n=x&r=1"
	b.Go(at + "/part/vault")
	Eval[bool](b, `(document.querySelectorAll("details").forEach(d => d.open = true), true)`)
	b.edit("/assembly/makeUp", "1/16")

	b.Go("/sheet")
	file, err := json.Marshal(base64.StdEncoding.EncodeToString(pageWith(t, code)))
	if err != nil {
		t.Fatal(err)
	}
	Eval[bool](b, `(async () => { const data = Uint8Array.from(atob(`+string(file)+`), c => c.charCodeAt(0)); const list = new DataTransfer(); list.items.add(new File([data], "page.png", {type: "image/png"})); document.querySelector("#photo").files = list.files; return true })()`)
	b.Follow(`form[action="/sheet"] button.main`)
	for _, want := range []string{"do not cut, mark or glue from this sheet", "the job is now at revision 2", "would now be cut"} {
		if text := b.Text("main"); !strings.Contains(text, want) {
			t.Errorf("by photo %q is not told: %s", want, text)
		}
	}
	b.Picture("sheet-old")

	b.Go(at + "?r=1&d=" + digest[:16])
	if text := b.Text("main"); !strings.HasPrefix(b.At(), "/sheet") || !strings.Contains(text, "would now be cut") {
		t.Errorf("the address leads to %s: %s", b.At(), text)
	}
	b.Go("/sheet")
	b.Fill("#code", "what is this")
	b.Follow(`form[method="get"][action="/sheet"] button`)
	if text := b.Text("main"); !strings.Contains(text, "not the code of one of our sheets") {
		t.Error(text)
	}
}

// pageWith draws a page that has a code.
func pageWith(t *testing.T, text string) []byte {
	t.Helper()
	c, err := qrcode.New(text, qrcode.Medium)
	if err != nil {
		t.Fatal(err)
	}
	page := image.NewGray(image.Rect(0, 0, 800, 600))
	for i := range page.Pix {
		page.Pix[i] = 225
	}
	code := c.Image(300)
	for y := range 300 {
		for x := range 300 {
			if r, _, _, _ := code.At(x, y).RGBA(); r == 0 {
				page.SetGray(440+x, 50+y, color.Gray{Y: 20}) //nolint:misspell // the library's word
			}
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, page); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
