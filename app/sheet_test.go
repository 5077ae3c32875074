package app

import (
	"bytes"
	"context"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color" //nolint:misspell // the library's word
	"image/png"
	"net/http"
	"net/url"
	"os/exec"
	"regexp"
	"strings"
	"testing"

	qrcode "github.com/skip2/go-qrcode"

	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/scan"
	"plashet/store"
)

const slope = "/jobs/example-hillside-cascade"

// codeOf is what the code on a sheet of the newest revision says.
func (d *desk) codeOf(id string) string {
	rev := d.newest(id)
	return "plashet:job?d=" + rev.Digest[:16] + "&j=" + id + "&n=x&r=" + itoa(rev.Number)
}

// photographed is a picture of a page's code.
func photographed(t testing.TB, text string) []byte {
	t.Helper()
	c, err := qrcode.New(text, qrcode.Medium)
	if err != nil {
		t.Fatal(err)
	}
	page := image.NewGray(image.Rect(0, 0, 900, 700))
	for i := range page.Pix {
		page.Pix[i] = 230
	}
	code := c.Image(320)
	for y := range 320 {
		for x := range 320 {
			page.SetGray(500+x, 60+y, color.GrayModel.Convert(code.At(x, y)).(color.Gray)) //nolint:forcetypeassert,misspell // the model gives no other
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, page); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func (d *desk) look(code string) (int, string) {
	d.t.Helper()
	status, page, _ := d.ask(http.MethodGet, "/sheet?code="+url.QueryEscape(code), nil)
	sound(d.t, "/sheet "+code, page)
	return status, page
}

// TestSheet: a sheet is good as long as nothing changed; then it tells what did,
// and which pieces would be cut otherwise, by photo, by code, by the digits at its
// foot and by the address that a phone opens.
func TestSheet(t *testing.T) {
	d := newDesk(t)
	sound(t, "/sheet", d.get("/sheet"))
	const id = "example-hillside-cascade"
	code := d.codeOf(id)
	was := d.newest(id)
	if status, page := d.look(code); status != http.StatusOK || !strings.Contains(page, "This sheet is good: it is revision 1") || strings.Contains(page, "Danger") {
		t.Fatal(status, page)
	}
	d.post(slope+"/set", "here", "", "/client", "Somebody")
	if _, page := d.look(code); !strings.Contains(page, "This sheet is revision 1; the job is now at revision 2.") || !strings.Contains(page, "Somebody") ||
		!strings.Contains(page, "Every piece is cut and marked as it was") || strings.Contains(page, "Danger") {
		t.Error("a change of the client's name:", page)
	}
	d.post(slope+"/set", "here", "vault", "/assembly/makeUp", "1/16")
	before, after := d.cuts(was), d.cuts(d.newest(id))
	page := ""
	for how, ask := range map[string]func() (int, string){
		"code":    func() (int, string) { return d.look(code) },
		"digits":  func() (int, string) { return d.look(strings.ToUpper(was.Digest[:4]) + " " + was.Digest[4:12]) },
		"photo":   func() (int, string) { return d.sendAs("/sheet", "photo", "page.png", photographed(t, code)) },
		"address": func() (int, string) { return d.follow(slope + "?r=1&d=" + was.Digest[:16]) },
		"printed": func() (int, string) {
			return d.sendAs("/sheet", "photo", "page.png", photographed(t, "https://ponds.example"+slope+"?d="+was.Digest[:16]+"&r=1"))
		},
	} {
		var status int
		status, page = ask()
		sound(t, how, page)
		if status != http.StatusOK || !strings.Contains(page, "Danger: do not cut, mark or glue from this sheet.") || !strings.Contains(page, "revision 1; the job is now at revision 3") {
			t.Errorf("%s: %d %s", how, status, page)
		}
	}
	n := 0
	for mark, cut := range before { // held against the design itself
		said := mark + " would now be cut " + after[mark] + ", not " + cut + ": do not cut it from this sheet."
		if cut != after[mark] {
			n++
		}
		if strings.Contains(unescaped(page), said) != (cut != after[mark]) {
			t.Errorf("%q stands on the page: %v", said, cut == after[mark])
		}
	}
	if n < 2 {
		t.Fatalf("only %d pieces are cut otherwise", n)
	}
	d.post(slope+"/set", "here", "vault", "/assembly/makeUp", "1/8")
	d.post(slope+"/set", "here", "", "/client", "")
	if _, page := d.look(code); !strings.Contains(page, "This sheet is good") { // all was taken back
		t.Error(page)
	}
}

func unescaped(page string) string {
	return strings.NewReplacer("&#34;", `"`, "&#39;", "'", "&amp;", "&").Replace(page)
}

// cuts are the pieces of a revision's assembly by the engine.
func (d *desk) cuts(rev store.Revision) map[string]string {
	d.t.Helper()
	book, err := catalog.New()
	if err != nil {
		d.t.Fatal(err)
	}
	j, faults := job.Read(rev.Data)
	out := map[string]string{}
	r := design.Solve(book, j, faults...)
	for _, p := range r.Assembly.Pieces {
		out[p.Mark] = textOf(p.Cut, r)
	}
	return out
}

// follow asks for a page and goes where it leads.
func (d *desk) follow(path string) (int, string) {
	d.t.Helper()
	status, page, h := d.ask(http.MethodGet, path, nil)
	if status == http.StatusSeeOther {
		status, page, _ = d.ask(http.MethodGet, h.Get("Location"), nil)
	}
	return status, page
}

// TestSheetForeign: codes of others, of jobs that are not here, that were deleted
// or put aside, torn, typed wrong or endless, pictures that are none.
func TestSheetForeign(t *testing.T) {
	d := newDesk(t)
	for _, c := range []struct {
		code string
		want int
		says string
	}{
		{"hello", 422, "not the code of one of our sheets"},
		{"https://elsewhere.example/x?y=1", 422, "not the code"},
		{"plashet:job?r=1", 422, "not the code"},
		{"plashet:job?r=-4&d=0123456789abcdef", 422, "not the code"},
		{strings.Repeat("a", 20_000), 422, "not the code"},
		{"abc", 422, "not the code"},
		{"<script>alert(1)</script>", 422, "not the code"},
		{"0123456789abcdef", 404, "No job here ever stood"},
		{"plashet:job?d=0123456789abcdef&j=none&r=1", 404, "No job here ever stood"},
		{"plashet:job?d=0123456789abcdef&j=" + strings.Repeat("x", 600) + "&r=1", 404, "No job here ever stood"},
		{"plashet:job?d=0123456789abcdef&j=example-old-pond&r=999", 404, "No job here ever stood"},
		{strings.Replace(d.codeOf("example-old-pond"), "r=1", "r=77", 1), 200, "This sheet is good: it is revision 1"},
		{strings.Replace(d.codeOf("example-old-pond"), "j=example-old-pond", "j=example-terrace-spout", 1), 404, "No job here ever stood"},
	} {
		if status, page := d.look(c.code); status != c.want || !strings.Contains(page, c.says) {
			t.Errorf("%.60q: %d, %s", c.code, status, page)
		}
	}
	for name, c := range map[string]struct {
		data []byte
		want int
		says string
	}{
		"text":     {[]byte("no picture"), 422, "no picture that can be read"},
		"no code":  {blank(t), 422, "No code could be read"},
		"another":  {photographed(t, "https://elsewhere.example"), 422, "not the code"},
		"cut off":  {blank(t)[:60], 422, "no picture"},
		"huge":     {bomb(t), 422, "too large"},
		"too long": {make([]byte, mostBody+1), 413, "large"},
		"empty":    {nil, 422, "file"},
	} {
		if status, page := d.sendAs("/sheet", "photo", "x.png", c.data); status != c.want || !strings.Contains(page, c.says) {
			t.Errorf("%s: %d, %s", name, status, page)
		}
	}
	if status, _, _ := d.ask(http.MethodPost, "/sheet", url.Values{}); status >= 500 {
		t.Error(status)
	}

	// A copy stands as its original does; by the digits both are found.
	rev := d.newest("example-old-pond")
	if _, err := d.store.Put(context.Background(), store.Job, "copy", 0, store.Change{Data: rev.Data, Summary: rev.Summary}); err != nil {
		t.Fatal(err)
	}
	if _, page := d.look(rev.Digest[:12]); strings.Count(page, "sheetfound") != 2 {
		t.Error("the copy is not found beside its original")
	}
	code := d.codeOf("copy")
	if _, err := d.store.Archive(context.Background(), "copy", 1, true, store.Change{Data: rev.Data}); err != nil {
		t.Fatal(err)
	}
	if _, page := d.look(code); !strings.Contains(page, "put aside") {
		t.Error(page)
	}
	if _, err := d.store.Delete(context.Background(), "copy", 2, store.Change{}); err != nil {
		t.Fatal(err)
	}
	if _, page := d.look(code); !strings.Contains(page, "was deleted. Do not work from it") {
		t.Error(page)
	}
	if len(d.logs) > 0 {
		t.Error(d.logs)
	}
}

// TestOldestSheet: the sheet of the job saved first of many, printed from a file
// without the job's identity, is found by its digits; of a state that the job came
// back to, the revision that the sheet names.
func TestOldestSheet(t *testing.T) {
	d := newDesk(t)
	ctx := context.Background()
	rev := d.newest("example-old-pond")
	save := func(id string, base int, data []byte) store.Revision {
		t.Helper()
		r, err := d.store.Put(ctx, store.Job, id, base, store.Change{Data: data, When: rev.When, Summary: store.Summary{Name: "Job " + id}})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	own := bytes.Replace(rev.Data, []byte(`"name": "`), []byte(`"name": "The oldest, `), 1)
	oldest := save("oldest", 0, own)
	for i := range 1200 {
		save("later "+itoa(i), 0, []byte(itoa(i)))
	}
	save("oldest", save("oldest", 1, rev.Data).Number, own)
	for i := range 1200 {
		save("latest "+itoa(i), 0, []byte(itoa(i)+"b"))
	}
	for code, want := range map[string]string{
		oldest.Digest[:8]: "it is revision 3",
		"plashet:job?d=" + oldest.Digest[:16] + "&n=x&r=1": "it is revision 1",
		"plashet:job?d=" + oldest.Digest[:16] + "&n=x&r=2": "it is revision 3", // another state: the newest alike
		"plashet:job?d=" + oldest.Digest[:16] + "&n=x&r=0": "it is revision 3", // printed from a file
	} {
		if status, page := d.look(code); status != http.StatusOK || !strings.Contains(page, want) || strings.Count(page, "sheetfound") != 1 {
			t.Errorf("%s: %d, want %q: %s", code, status, want, page)
		}
	}
}

// TestSheetInSpanish: the page says all of it in Spanish.
func TestSheetInSpanish(t *testing.T) {
	d := newDesk(t)
	code := d.codeOf("example-hillside-cascade")
	d.post(slope+"/set", "here", "vault", "/assembly/makeUp", "1/16")
	d.given.Device = func(*http.Request) Device { return Device{Language: "es"} }
	d.Handler = New(d.given)
	if _, page := d.look(code); !strings.Contains(page, "Peligro: no corte, marque ni pegue con esta hoja") || !strings.Contains(page, "se cortaría ahora a") {
		t.Error(page)
	}
	if _, page := d.look("hello"); !strings.Contains(page, "no es el código de una de nuestras hojas") {
		t.Error(page)
	}
}

// TestPrintedCode: sheets from the pages carry the job's own identity, or the
// public address where there is one.
func TestPrintedCode(t *testing.T) {
	d := newDesk(t)
	for public, want := range map[string]string{"": "plashet:job?", "https://ponds.example": "https://ponds.example" + slope + "?"} {
		d.given.Public = public
		d.Handler = New(d.given)
		if got := d.printedCode(slope); !strings.HasPrefix(got, want) {
			t.Errorf("%q: %q", public, got)
		} else if status, page := d.look(got); status != http.StatusOK || !strings.Contains(page, "This sheet is good") {
			t.Errorf("%q: %d %s", got, status, page)
		}
	}
}

// printedCode reads the code off the cut card that the pages give.
func (d *desk) printedCode(at string) string {
	d.t.Helper()
	tool, err := exec.LookPath("pdftoppm")
	if err != nil {
		d.t.Skip("pdftoppm is not installed: ./check installs it (Debian: poppler-utils)")
	}
	cmd := exec.CommandContext(d.t.Context(), tool, "-r", "150", "-gray", "-png", "-singlefile", "-") //nolint:gosec // a tool of the system's
	cmd.Stdin = strings.NewReader(d.get(at + "/paper/cut.pdf"))
	picture, err := cmd.Output()
	if err != nil {
		d.t.Fatal(err)
	}
	text, err := scan.Read(picture)
	if err != nil {
		d.t.Fatal(err)
	}
	return text
}

func blank(t testing.TB) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, 300, 200))); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// bomb is a small file that says it is a picture of 65,000 dots either way.
func bomb(t testing.TB) []byte {
	t.Helper()
	data := blank(t)
	binary.BigEndian.PutUint32(data[16:], 65_000)
	binary.BigEndian.PutUint32(data[20:], 65_000)
	binary.BigEndian.PutUint32(data[29:], crc32.ChecksumIEEE(data[12:29]))
	return data
}

func textOf(l unit.Length, r *design.Result) string {
	return unit.Of(l, unit.KindTape).Format(r.Units)
}

// TestMovedReads: a price that is a range before and after is told so that it can
// be read, on the page of an old sheet.
func TestMovedReads(t *testing.T) {
	d := newDesk(t)
	code := d.codeOf("example-hillside-cascade")
	d.post(slope+"/set", "here", "material", "/prices/3/price", "63.15")
	_, page := d.look(code)
	page = unescaped(page)
	if is := regexp.MustCompile(`material: was \$[0-9.,]+ to \$[0-9.,]+, now \$[0-9.,]+ to \$[0-9.,]+`); !is.MatchString(page) {
		t.Error(page)
	}
}
