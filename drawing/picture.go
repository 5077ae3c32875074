package drawing

import (
	"strings"

	"plashet/engine/geom"
	"plashet/engine/layout"
)

// made tells what a part is: fitting and size, whether it has an arrow cast on it,
// and whether that points against the flow.
type made struct {
	name           string
	arrow, reverse bool
}

// corners over which each wall is a far one, so that the hole in it is seen.
var seenFrom = map[layout.Wall]Corner{layout.Right: FrontLeft, layout.Back: FrontLeft, layout.Left: FrontRight, layout.Front: BackLeft}

// Small pictures stand two in a row.
const (
	cells    = 2
	cellWide = (wide - 2*margin - cellGap) / cells
	cellGap  = 4.0
)

// picture is one small view of the vault in a row of them.
type picture struct {
	*iso
	caption []string // its first line bold
	arrow   *[2]geom.Vec3
}

// newPicture makes a picture of a laid assembly on a page.
func newPicture(p *page, laid *layout.Assembly, parts []made, corner Corner) *picture {
	a := &iso{page: p, laid: laid, view: newView(corner), made: parts}
	a.gather()
	return &picture{iso: a}
}

// extent gives every point that the picture must show.
func (c *picture) extent() []geom.Vec3 {
	var all []geom.Vec3
	for _, ring := range c.box().rings() {
		all = append(all, ring...)
	}
	for _, t := range c.things {
		for _, s := range t.shapes {
			all = append(all, s.corners()...)
		}
	}
	if from, to, ok := c.wayOut(); ok {
		all = append(all, from, to)
	}
	return all
}

// row sets the pictures two in a row at one scale, none taller than tall, each
// with its caption below, and draws them.
func (p *page) row(pictures []*picture, tall float64) {
	var all []geom.Vec3
	for _, c := range pictures {
		all = append(all, c.extent()...)
	}
	for from := 0; from < len(pictures); from += cells {
		foot, lines := p.y, 0
		var wrapped [cells][]string
		now := pictures[from:min(from+cells, len(pictures))]
		for k, c := range now {
			x := margin + float64(k)*(cellWide+cellGap)
			foot = c.view.fitTo(all, x+1, p.y+1, x+cellWide-1, p.y+1+tall)
			for i, s := range c.caption {
				wrapped[k] = append(wrapped[k], wrap(s, i == 0, cellWide-2)...)
			}
			lines = max(lines, len(wrapped[k]))
		}
		for k, c := range now {
			c.show(foot)
			x := margin + float64(k)*(cellWide+cellGap) + 1
			for i, s := range wrapped[k] {
				first := len(wrap(c.caption[0], true, cellWide-2))
				p.text(Text{At: Point{x, foot + 3 + float64(i)*row + small}, Size: small, Bold: i < first, Text: s})
			}
		}
		p.y = foot + 3 + float64(lines)*row + 4
	}
}

// show draws vault, plumbing and pump.
func (c *picture) show(foot float64) {
	c.foot = foot
	c.group("vault", c.vault)
	for _, t := range painted(c.things, c.view.toward) {
		c.group(t.name, t.draw)
	}
	if c.arrow != nil { // over what it passes
		c.group("move", func() { c.drawArrow(c.arrow[0], c.arrow[1], Pen{Ink: Water, Wide: 0.9}) })
	}
}

// told puts the captions of pictures into words for who cannot see them.
func told(pictures []*picture) []string {
	var out []string
	for _, c := range pictures {
		out = append(out, strings.Join(c.caption, ", ")+".")
	}
	return out
}
