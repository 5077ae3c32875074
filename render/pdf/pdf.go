// Package pdf writes sheets of package drawing as the pages of one PDF file (ISO
// 32000), lines and letters as such, by codeberg.org/go-pdf/fpdf. A page is as
// large as its sheet, and a millimetre on the sheet is a millimetre on the page.
// The letters of package face are embedded, only those that are used; a
// character that they lack is written as face.Missing. The same sheets with the
// same Info always give the same bytes: the date is given, never read.
package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"plashet/drawing"
	"plashet/render/face"
)

// The errors.
var (
	ErrNotFinite = errors.New("the sheet holds a coordinate that is not a number")
	ErrNoSheets  = errors.New("there are no sheets to write")
)

// Info is what the file says of itself.
type Info struct {
	Title    string
	Language string    // BCP 47, "en"
	Date     time.Time // of making, in UTC
}

// tone is a grey or colour: red, green, blue.
type tone [3]int

// tones of the inks on paper. They are told apart in black and white: lines by
// their width and dash, areas by the lines round them.
var tones = [...]tone{
	drawing.Black: {0, 0, 0}, drawing.Pencil: {110, 118, 126}, drawing.Water: {50, 110, 130},
	drawing.Wash: {216, 232, 236}, drawing.Paper: {255, 255, 255},
}

// dashes are the lengths drawn and left out, mm, as on the screen.
var dashes = [...][]float64{drawing.Whole: {}, drawing.Dashed: {1.6, 1.3}, drawing.Dotted: {0.1, 1.1}}

const family = "letters"

// Write writes the sheets, one a page. The errors are ErrNotFinite and
// ErrNoSheets, with nothing written, and those of the writer.
func Write(w io.Writer, sheets []drawing.Sheet, info Info) error {
	if len(sheets) == 0 {
		return ErrNoSheets
	}
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: sheets[0].Width, Ht: sheets[0].Height}})
	f.SetCatalogSort(true)
	f.SetCreationDate(info.Date.UTC())
	f.SetModificationDate(info.Date.UTC())
	title, _ := face.Shown(info.Title)
	f.SetTitle(title, true)
	f.SetCreator("Plashet", true)
	f.SetProducer("Plashet", true)
	f.SetLang(info.Language)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.AddUTF8FontFromBytes(family, "", face.File(false))
	f.AddUTF8FontFromBytes(family, "B", face.File(true))
	f.SetLineCapStyle("round")
	f.SetLineJoinStyle("round")
	p := &pages{f: f}
	for i := range sheets {
		s := &sheets[i]
		if !(s.Width > 0) || !(s.Height > 0) || math.IsInf(s.Width+s.Height, 0) {
			return ErrNotFinite
		}
		f.AddPageFormat("P", fpdf.SizeType{Wd: s.Width, Ht: s.Height})
		p.forget()
		s.Each(p.item)
		if p.bad {
			return ErrNotFinite
		}
	}
	var b bytes.Buffer
	if err := f.Output(&b); err != nil {
		return fmt.Errorf("make the file: %w", err)
	}
	_, err := w.Write(b.Bytes())
	return err
}

// pages is the file while it is written. It keeps what is set on the page, so
// that nothing is set twice.
type pages struct {
	f    *fpdf.Fpdf
	bad  bool
	pen  drawing.Pen
	fill drawing.Ink
	size float64
	bold bool
	ink  drawing.Ink
}

// forget is called where a new page begins: nothing is set on it.
func (p *pages) forget() { *p = pages{f: p.f, bad: p.bad, pen: drawing.Pen{Wide: -1}} }

func (p *pages) item(it drawing.Item) {
	switch v := it.(type) {
	case drawing.Line:
		p.path([]drawing.Point{v.From, v.To}, false, v.Pen, drawing.Clear)
	case drawing.Polyline:
		p.path(v.Points, false, v.Pen, drawing.Clear)
	case drawing.Polygon:
		p.path(v.Points, true, v.Pen, v.Fill)
	case drawing.Arc:
		p.arc(v)
	case drawing.Text:
		p.text(v)
	}
}

// style sets pen and fill and gives how a path is painted: "D", "F" or "FD", or
// nothing.
func (p *pages) style(pen drawing.Pen, fill drawing.Ink) string {
	how := ""
	if fill != drawing.Clear && int(fill) < len(tones) {
		how = "F"
		if fill != p.fill {
			t := tones[fill]
			p.f.SetFillColor(t[0], t[1], t[2])
			p.fill = fill
		}
	}
	if pen.Ink != drawing.Clear && int(pen.Ink) < len(tones) && pen.Wide > 0 {
		how += "D"
		if pen != p.pen {
			t := tones[pen.Ink]
			p.f.SetDrawColor(t[0], t[1], t[2])
			p.f.SetLineWidth(pen.Wide)
			p.f.SetDashPattern(dashes[min(int(pen.Dash), len(dashes)-1)], 0)
			p.pen = pen
		}
	}
	return how
}

func (p *pages) finite(points ...drawing.Point) bool {
	for _, q := range points {
		if math.IsNaN(q.X+q.Y) || math.IsInf(q.X+q.Y, 0) {
			p.bad = true
			return false
		}
	}
	return true
}

func (p *pages) path(points []drawing.Point, closed bool, pen drawing.Pen, fill drawing.Ink) {
	if len(points) < 2 || !p.finite(points...) {
		return
	}
	how := p.style(pen, fill)
	if how == "" {
		return
	}
	p.f.MoveTo(points[0].X, points[0].Y)
	for _, q := range points[1:] {
		p.f.LineTo(q.X, q.Y)
	}
	if closed {
		p.f.ClosePath()
	}
	p.f.DrawPath(how)
}

// arc draws part of an ellipse as cubic curves of at most an eighth of a turn
// each: off the true curve by less than a hundred-thousandth of its radius.
func (p *pages) arc(a drawing.Arc) {
	if !p.finite(a.Centre, drawing.Point{X: a.RX, Y: a.RY}, drawing.Point{X: a.Turn, Y: a.From}, drawing.Point{X: a.Sweep}) {
		return
	}
	how := p.style(a.Pen, a.Fill)
	sweep := math.Max(-360, math.Min(360, a.Sweep))
	if how == "" || sweep == 0 {
		return
	}
	n := int(math.Ceil(math.Abs(sweep) / 45))
	step := sweep / float64(n)
	k := 4.0 / 3 * math.Tan(step*math.Pi/180/4)
	tangent := func(deg float64) drawing.Point { return a.At(deg + 90).Sub(a.Centre) }
	from := a.At(a.From)
	p.f.MoveTo(from.X, from.Y)
	for i := range n {
		d0 := a.From + step*float64(i)
		d1 := d0 + step
		to := a.At(d1)
		c0, c1 := a.At(d0).Add(tangent(d0).Scale(k)), to.Sub(tangent(d1).Scale(k))
		p.f.CurveBezierCubicTo(c0.X, c0.Y, c1.X, c1.Y, to.X, to.Y)
	}
	if math.Abs(sweep) == 360 {
		p.f.ClosePath()
	}
	p.f.DrawPath(how)
}
