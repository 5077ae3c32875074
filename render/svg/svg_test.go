package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/drawing"
)

func encode(t *testing.T, s *drawing.Sheet) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, s); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// elements reads XML and gives its elements by name with their attributes and
// the text in them. It fails on XML that is not well formed.
func elements(t *testing.T, doc string) map[string][]element {
	t.Helper()
	out := map[string][]element{}
	var open []*element
	d := xml.NewDecoder(strings.NewReader(doc))
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatal(err)
		}
		switch v := tok.(type) {
		case xml.StartElement:
			e := &element{name: v.Name.Local, attr: map[string]string{}}
			for _, a := range v.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			open = append(open, e)
		case xml.CharData:
			if len(open) > 0 {
				open[len(open)-1].text += string(v)
			}
		case xml.EndElement:
			e := open[len(open)-1]
			open = open[:len(open)-1]
			out[e.name] = append(out[e.name], *e)
		}
	}
}

type element struct {
	name, text string
	attr       map[string]string
}

// TestOfItsOwn: a picture asks for nothing from elsewhere, carries its title and
// description, and is the same each time.
func TestOfItsOwn(t *testing.T) {
	outside := regexp.MustCompile(`(?i)href|url\(|@import|<script|<image|<foreignObject|\bsrc=|https?:`)
	for _, name := range demo.Names() {
		again := sheets(t, name)
		for i, s := range sheets(t, name) {
			doc := encode(t, &s)
			if doc != encode(t, &again[i]) {
				t.Errorf("%s %s comes out differently the second time", name, s.Name)
			}
			rest := strings.Replace(doc, `xmlns="http://www.w3.org/2000/svg"`, "", 1)
			if found := outside.FindString(rest); found != "" {
				t.Errorf("%s %s: %q", name, s.Name, found)
			}
			e := elements(t, doc)
			root := e["svg"][0]
			ids := strings.Fields(root.attr["aria-labelledby"])
			if root.attr["role"] != "img" || len(ids) != 2 || e["title"][0].attr["id"] != ids[0] || e["desc"][0].attr["id"] != ids[1] {
				t.Errorf("%s %s: %v", name, s.Name, root.attr)
			}
			if e["title"][0].text != s.Title || e["desc"][0].text != s.Desc || s.Desc == "" {
				t.Errorf("%s %s: title %q, description %q", name, s.Name, e["title"][0].text, e["desc"][0].text)
			}
			if strings.Contains(doc, "NaN") || strings.Contains(doc, "Inf") {
				t.Errorf("%s %s holds a number that is none", name, s.Name)
			}
			n := 0
			s.Each(func(it drawing.Item) {
				if _, ok := it.(drawing.Text); ok {
					n++
				}
			})
			if n == 0 || n != len(e["text"]) {
				t.Errorf("%s %s: %d texts of %d", name, s.Name, len(e["text"]), n)
			}
		}
	}
}

func TestEscapes(t *testing.T) {
	nasty := "<script>alert('x')</script> & \"y\" \x00\x0b \xff ]]> 水"
	s := &drawing.Sheet{
		Name: `a" onload="b`, Title: nasty, Desc: nasty, Width: 10, Height: 10,
		Items: []drawing.Item{drawing.Group{Name: nasty, Items: []drawing.Item{drawing.Text{Ink: drawing.Black, Size: 3, Text: nasty}}}},
	}
	doc := encode(t, s)
	e := elements(t, doc)
	// What XML 1.0 cannot hold becomes U+FFFD.
	want := "<script>alert('x')</script> & \"y\" \uFFFD\uFFFD \uFFFD ]]> 水"
	for _, name := range []string{"title", "desc", "text"} {
		if len(e[name]) != 1 || e[name][0].text != want {
			t.Errorf("%s: %+v", name, e[name])
		}
	}
	if len(e["script"]) > 0 || e["g"][0].attr["data-part"] != want {
		t.Errorf("%v", e["g"])
	}
	if root := e["svg"][0].attr; root["onload"] != "" || root["aria-labelledby"] != "sheet-aonloadb-title sheet-aonloadb-desc" {
		t.Errorf("%v", root)
	}
}

func TestItems(t *testing.T) {
	pen := drawing.Pen{Ink: drawing.Black, Wide: 0.5}
	for _, c := range []struct {
		it   drawing.Item
		want string
	}{
		{drawing.Line{From: drawing.Point{X: 1, Y: 2.005}, To: drawing.Point{X: -0.001, Y: 4}, Pen: pen}, `<path d="M1 2.01L0 4" fill="none" stroke="#1c2a35" stroke-width="0.5"/>`},
		{drawing.Polyline{Points: []drawing.Point{{X: 0, Y: 0}, {X: 1, Y: 1}}, Pen: drawing.Pen{Ink: drawing.Water, Wide: 1, Dash: drawing.Dashed}}, `<path d="M0 0L1 1" fill="none" stroke="#4f8fa3" stroke-width="1" stroke-dasharray="1.6 1.3"/>`},
		{drawing.Polygon{Points: []drawing.Point{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 1, Y: 1}}, Fill: drawing.Wash}, `<path d="M0 0L1 0L1 1Z" fill="#d8e8ec"/>`},
		{drawing.Arc{Centre: drawing.Point{X: 5, Y: 5}, RX: 2, RY: 1, Turn: 30, Sweep: 360, Fill: drawing.Paper}, `<ellipse cx="5" cy="5" rx="2" ry="1" transform="rotate(30 5 5)" fill="#fffefb"/>`},
		// A quarter of a circle, clockwise on the sheet from the right to below.
		{drawing.Arc{Centre: drawing.Point{X: 5, Y: 5}, RX: 2, RY: 2, Sweep: 90, Pen: pen}, `<path d="M7 5A2 2 0 0 1 5 7" fill="none" stroke="#1c2a35" stroke-width="0.5"/>`},
		{drawing.Arc{Centre: drawing.Point{X: 5, Y: 5}, RX: 2, RY: 2, Sweep: -270, Pen: pen}, `<path d="M7 5A2 2 0 1 0 5 7" fill="none" stroke="#1c2a35" stroke-width="0.5"/>`},
		{
			drawing.Text{At: drawing.Point{X: 1, Y: 2}, Size: 4, Anchor: drawing.End, Bold: true, Turn: -30, Ink: drawing.Black, Text: "a"},
			`<text x="1" y="2" font-size="4" fill="#1c2a35" text-anchor="end" font-weight="700" transform="rotate(-30 1 2)">a</text>`,
		},
	} {
		doc := encode(t, &drawing.Sheet{Name: "x", Width: 10, Height: 10, Items: []drawing.Item{c.it}})
		if !strings.Contains(doc, "\n"+c.want+"\n") {
			t.Errorf("%#v:\n%s\nnot\n%s", c.it, doc, c.want)
		}
	}
}

func TestNotFinite(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		var b bytes.Buffer
		s := &drawing.Sheet{Name: "x", Width: 10, Height: 10, Items: []drawing.Item{drawing.Line{To: drawing.Point{X: v}, Pen: drawing.Pen{Ink: drawing.Black, Wide: 1}}}}
		if err := Write(&b, s); !errors.Is(err, ErrNotFinite) || b.Len() > 0 {
			t.Errorf("%g: %v, %d bytes", v, err, b.Len())
		}
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no room") }

func TestWriterFails(t *testing.T) {
	if err := Write(fullDisk{}, &drawing.Sheet{Name: "x", Width: 10, Height: 10}); err == nil {
		t.Error("a writer that fails is not told")
	}
}

// Letters keep a contrast of 7 to 1 on paper and on the wash (WCAG 2.2, 1.4.6,
// with its formula of relative luminance).
func TestContrast(t *testing.T) {
	luminance := func(hex string) float64 {
		sum := 0.0
		for i, w := range []float64{0.2126, 0.7152, 0.0722} {
			v := 0
			for _, c := range hex[1+2*i : 3+2*i] {
				v = v*16 + strings.IndexRune("0123456789abcdef", c)
			}
			c := float64(v) / 255
			if c <= 0.04045 {
				c /= 12.92
			} else {
				c = math.Pow((c+0.055)/1.055, 2.4)
			}
			sum += w * c
		}
		return sum
	}
	for _, ground := range []drawing.Ink{drawing.Paper, drawing.Wash} {
		a, b := luminance(colours[ground]), luminance(colours[drawing.Black])
		if r := (a + 0.05) / (b + 0.05); r < 7 {
			t.Errorf("letters on %s: %.1f to 1", colours[ground], r)
		}
	}
}
