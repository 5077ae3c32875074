// Package svg writes a sheet of package drawing as an SVG file (SVG 1.1 with
// paint-order of SVG 2). It knows colours and letters and nothing of what is
// drawn. The same sheet always gives the same bytes; no file, font or script
// from elsewhere is asked for.
package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"

	"plashet/drawing"
)

// ErrNotFinite tells that a coordinate is not a number, or infinite.
var ErrNotFinite = errors.New("the sheet holds a coordinate that is not a number")

// colours of the inks. Black on paper has a contrast of 14 to 1; Pencil and
// Water are for lines only.
var colours = [...]string{
	drawing.Clear: "none", drawing.Black: "#1c2a35", drawing.Pencil: "#84909a",
	drawing.Water: "#4f8fa3", drawing.Wash: "#d8e8ec", drawing.Paper: "#fffefb",
}

// letters asks the reader's machine for its own plain face, figures all as wide.
const letters = `font-family="ui-sans-serif, system-ui, sans-serif" style="font-variant-numeric:tabular-nums"`

// Write writes the sheet. The errors are ErrNotFinite, with nothing written,
// and those of the writer.
func Write(w io.Writer, s *drawing.Sheet) error { return write(w, s, &encoder{}) }

// Inline writes the sheet to stand in a page: as wide as the page lets it, with
// the class "sheet" in place of letters and style of its own. Errors as of Write.
func Inline(w io.Writer, s *drawing.Sheet) error { return write(w, s, &encoder{inline: true}) }

// Linked is Inline with each part and piece that has a mark a link, to where href
// says of its mark; "" is no link. Errors as of Write.
func Linked(w io.Writer, s *drawing.Sheet, href func(mark string) string) error {
	return write(w, s, &encoder{inline: true, href: href})
}

func write(w io.Writer, s *drawing.Sheet, e *encoder) error {
	e.open(s)
	e.items(s.Items, "\n")
	e.b.WriteString("\n</svg>\n")
	if e.bad {
		return ErrNotFinite
	}
	_, err := w.Write(e.b.Bytes())
	return err
}

type encoder struct {
	b      bytes.Buffer
	bad    bool
	inline bool // it stands in a page
	href   func(mark string) string
}

func (e *encoder) open(s *drawing.Sheet) {
	id := name(s.Name)
	size, face, role := fmt.Sprintf(` width="%smm" height="%smm"`, e.num(s.Width), e.num(s.Height)), letters, "img"
	if e.inline {
		size, face = "", `class="sheet"`
	}
	if e.href != nil { // what is in a picture of one piece cannot be reached
		role = "group"
	}
	fmt.Fprintf(&e.b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %s %s"%s role="%s" aria-labelledby="%s-title %s-desc" stroke-linecap="round" stroke-linejoin="round" %s>`,
		e.num(s.Width), e.num(s.Height), size, role, id, id, face)
	fmt.Fprintf(&e.b, "\n<title id=\"%s-title\">%s</title>\n<desc id=\"%s-desc\">%s</desc>\n", id, escaped(s.Title), id, escaped(s.Desc))
	fmt.Fprintf(&e.b, `<rect width="%s" height="%s" fill="%s"/>`, e.num(s.Width), e.num(s.Height), colours[drawing.Paper])
}

// items writes the items, each on a line of its own.
func (e *encoder) items(items []drawing.Item, indent string) {
	for _, it := range items {
		e.b.WriteString(indent)
		switch v := it.(type) {
		case drawing.Line:
			fmt.Fprintf(&e.b, `<path d="M%sL%s"%s/>`, e.point(v.From), e.point(v.To), e.pen(v.Pen, drawing.Clear))
		case drawing.Polyline:
			e.chain(v.Points, "", v.Pen, drawing.Clear)
		case drawing.Polygon:
			e.chain(v.Points, "Z", v.Pen, v.Fill)
		case drawing.Arc:
			e.arc(v)
		case drawing.Text:
			e.text(v)
		case drawing.Group:
			e.group(v, indent)
		}
	}
}

// group writes items that belong together, as a link where their mark leads
// somewhere.
func (e *encoder) group(v drawing.Group, indent string) {
	href := ""
	if e.href != nil && v.Mark != "" {
		href = e.href(v.Mark)
	}
	if href != "" {
		label := v.Title
		if label == "" {
			label = v.Mark
		}
		fmt.Fprintf(&e.b, `<a href="%s" aria-label="%s">`, escaped(href), escaped(label))
	}
	fmt.Fprintf(&e.b, `<g data-part="%s"`, escaped(v.Name))
	if v.Mark != "" {
		fmt.Fprintf(&e.b, ` data-mark="%s"`, escaped(v.Mark))
	}
	e.b.WriteByte('>')
	if v.Title != "" {
		fmt.Fprintf(&e.b, "<title>%s</title>", escaped(v.Title))
	}
	e.items(v.Items, indent+" ")
	e.b.WriteString(indent + "</g>")
	if href != "" {
		e.b.WriteString("</a>")
	}
}

func (e *encoder) chain(points []drawing.Point, end string, pen drawing.Pen, fill drawing.Ink) {
	e.b.WriteString(`<path d="`)
	for i, p := range points {
		e.b.WriteByte("ML"[min(i, 1)])
		e.b.WriteString(e.point(p))
	}
	fmt.Fprintf(&e.b, `%s"%s/>`, end, e.pen(pen, fill))
}

func (e *encoder) arc(a drawing.Arc) {
	turn := ""
	if math.Abs(a.Sweep) >= 360 {
		if a.Turn != 0 {
			turn = fmt.Sprintf(` transform="rotate(%s %s)"`, e.num(a.Turn), e.point(a.Centre))
		}
		fmt.Fprintf(&e.b, `<ellipse cx="%s" cy="%s" rx="%s" ry="%s"%s%s/>`, e.num(a.Centre.X), e.num(a.Centre.Y), e.num(a.RX), e.num(a.RY), turn, e.pen(a.Pen, a.Fill))
		return
	}
	large, clockwise := 0, 0
	if math.Abs(a.Sweep) > 180 {
		large = 1
	}
	if a.Sweep > 0 {
		clockwise = 1
	}
	fmt.Fprintf(&e.b, `<path d="M%sA%s %s %s %d %d %s"%s/>`, e.point(a.At(a.From)), e.num(a.RX), e.num(a.RY), e.num(a.Turn), large, clockwise,
		e.point(a.At(a.From+a.Sweep)), e.pen(a.Pen, a.Fill))
}

func (e *encoder) text(t drawing.Text) {
	fmt.Fprintf(&e.b, `<text x="%s" y="%s" font-size="%s" fill="%s"`, e.num(t.At.X), e.num(t.At.Y), e.num(t.Size), colour(t.Ink))
	switch t.Anchor {
	case drawing.Middle:
		e.b.WriteString(` text-anchor="middle"`)
	case drawing.End:
		e.b.WriteString(` text-anchor="end"`)
	}
	if t.Bold {
		e.b.WriteString(` font-weight="700"`)
	}
	if t.Turn != 0 {
		fmt.Fprintf(&e.b, ` transform="rotate(%s %s)"`, e.num(t.Turn), e.point(t.At))
	}
	if t.Halo {
		fmt.Fprintf(&e.b, ` stroke="%s" stroke-width="1.2" paint-order="stroke"`, colours[drawing.Paper])
	}
	fmt.Fprintf(&e.b, `>%s</text>`, escaped(t.Text))
}

// pen gives the attributes of a line and of what it encloses.
func (e *encoder) pen(p drawing.Pen, fill drawing.Ink) string {
	out := fmt.Sprintf(` fill="%s"`, colour(fill))
	if p.Ink == drawing.Clear || p.Wide <= 0 {
		return out
	}
	out += fmt.Sprintf(` stroke="%s" stroke-width="%s"`, colour(p.Ink), e.num(p.Wide))
	switch p.Dash {
	case drawing.Dashed:
		out += ` stroke-dasharray="1.6 1.3"`
	case drawing.Dotted:
		out += ` stroke-dasharray="0.1 1.1"`
	}
	return out
}

func colour(i drawing.Ink) string {
	if int(i) >= len(colours) {
		i = drawing.Black
	}
	return colours[i]
}

func (e *encoder) point(p drawing.Point) string { return e.num(p.X) + " " + e.num(p.Y) }

// num writes a number to hundredths. What lies within a millionth of a half is
// taken for the half, so that the last digit does not hang on the processor.
func (e *encoder) num(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		e.bad = true
		return "0"
	}
	r := math.Floor(v*100+0.5+1e-6) / 100
	if r == 0 {
		return "0" // without sign
	}
	return strconv.FormatFloat(r, 'f', -1, 64)
}

// escaped makes text safe inside XML; what XML cannot hold becomes U+FFFD.
func escaped(s string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(s)) // a buffer takes everything
	return b.String()
}

// name makes an identifier of a sheet's name: letters, digits, hyphens.
func name(s string) string {
	out := []byte("sheet-")
	for _, r := range s {
		if r == '-' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' {
			out = append(out, byte(r))
		}
	}
	return string(out)
}
