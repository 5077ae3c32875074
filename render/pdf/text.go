package pdf

import (
	"strings"

	"plashet/drawing"
	"plashet/render/face"
)

// pointsPerMM turns a size of letters into the points that the library takes.
const pointsPerMM = 72 / 25.4

func (p *pages) text(t drawing.Text) {
	if !p.finite(t.At, drawing.Point{X: t.Size, Y: t.Turn}) || t.Text == "" || t.Ink == drawing.Clear || int(t.Ink) >= len(tones) {
		return
	}
	shown, _ := face.Shown(t.Text)
	if t.Bold != p.bold || t.Size != p.size {
		style := ""
		if t.Bold {
			style = "B"
		}
		p.f.SetFont(family, style, t.Size*pointsPerMM)
		p.bold, p.size = t.Bold, t.Size
	}
	x := t.At.X
	switch t.Anchor {
	case drawing.Middle:
		x -= p.f.GetStringWidth(shown) / 2
	case drawing.End:
		x -= p.f.GetStringWidth(shown)
	case drawing.Start:
	}
	if t.Turn != 0 {
		p.f.TransformBegin()
		p.f.TransformRotate(-t.Turn, t.At.X, t.At.Y)
	}
	if t.Halo { // the letters' own outline in paper first, then the letters
		p.style(drawing.Pen{Ink: drawing.Paper, Wide: 1.2}, drawing.Clear)
		p.f.SetTextRenderingMode(1)
		p.f.Text(x, t.At.Y, shown)
		p.f.SetTextRenderingMode(0)
	}
	if c := tones[t.Ink]; t.Ink != p.ink {
		p.f.SetTextColor(c[0], c[1], c[2])
		p.ink = t.Ink
	}
	p.f.Text(x, t.At.Y, shown)
	if t.Turn != 0 {
		p.f.TransformEnd()
		p.forgetAfterTurn()
	}
}

// forgetAfterTurn is called where a turned text has ended: the file then has the
// colours back that stood before it, the library not.
func (p *pages) forgetAfterTurn() {
	p.pen, p.fill, p.ink = drawing.Pen{Wide: -1}, drawing.Clear, drawing.Clear
	p.size = 0
}

// Lacks lists the characters of the sheets that the letters do not have, each
// once, in the order met.
func Lacks(sheets []drawing.Sheet) []rune {
	var out []rune
	for i := range sheets {
		sheets[i].Each(func(it drawing.Item) {
			if t, ok := it.(drawing.Text); ok {
				_, l := face.Shown(t.Text)
				for _, r := range l {
					if !strings.ContainsRune(string(out), r) {
						out = append(out, r)
					}
				}
			}
		})
	}
	return out
}
