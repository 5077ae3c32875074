package drawing

import "math"

// Letters are measured with the advance widths of DejaVu Sans (read from the
// free font's own tables, in thousandths of its size), from the space to the
// tilde. It is a wide face: where a reader's machine takes a narrower one, the
// letters only leave more paper.
var (
	plainWidths = [...]uint16{
		318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337,
		636, 636, 636, 636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531,
		1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863, 748, 787,
		603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500,
		500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612,
		635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838,
	}
	boldWidths = [...]uint16{
		348, 456, 521, 838, 696, 1002, 872, 306, 457, 457, 523, 838, 380, 415, 380, 365,
		696, 696, 696, 696, 696, 696, 696, 696, 696, 696, 400, 400, 838, 838, 838, 580,
		1000, 774, 762, 734, 830, 683, 683, 821, 837, 372, 372, 775, 637, 995, 837, 850,
		733, 850, 770, 720, 682, 812, 774, 1103, 771, 724, 725, 457, 365, 457, 838, 500,
		500, 675, 716, 593, 716, 678, 435, 716, 712, 343, 343, 665, 343, 1042, 712, 687,
		716, 716, 493, 595, 478, 712, 652, 924, 645, 652, 582, 712, 365, 712, 838,
	}
)

// otherWidth is taken for letters beyond the tables: as wide as they come.
const otherWidth = 1000

// How far letters reach above and below the line they stand on, in sizes.
const (
	ascent  = 0.76
	descent = 0.24
)

// Width gives how long the text is, in mm.
func (t Text) Width() float64 {
	table := &plainWidths
	if t.Bold {
		table = &boldWidths
	}
	sum := 0
	for _, r := range t.Text {
		if i := int(r) - ' '; i >= 0 && i < len(table) {
			sum += int(table[i])
		} else {
			sum += widthOf(r, t.Bold)
		}
	}
	return float64(sum) / 1000 * t.Size
}

// widthOf gives the advance width of a letter beyond ASCII.
func widthOf(r rune, bold bool) int {
	for i := range furtherWidths {
		f := &furtherWidths[i]
		if k := int(r - f.first); k >= 0 && k < len(f.plain) {
			if bold {
				return int(f.bold[k])
			}
			return int(f.plain[k])
		}
	}
	return otherWidth
}

// Corners gives the corners of the box round the text, turned with it, in
// order round it.
func (t Text) Corners() [4]Point {
	w := t.Width()
	x := 0.0
	switch t.Anchor {
	case Middle:
		x = -w / 2
	case End:
		x = -w
	}
	s, c := math.Sincos(t.Turn * math.Pi / 180)
	at := func(x, y float64) Point { return t.At.Add(Point{x*c - y*s, x*s + y*c}) }
	up, down := -ascent*t.Size, descent*t.Size
	return [4]Point{at(x, up), at(x+w, up), at(x+w, down), at(x, down)}
}

// Overlap tells that two texts stand on each other.
func Overlap(a, b Text) bool {
	p, q := a.Corners(), b.Corners()
	return meet(p[:], q[:])
}

// meet tells that two convex polygons share more than their edges: no edge of
// either parts them (separating axes).
func meet(p, q []Point) bool {
	for _, poly := range [2][]Point{p, q} {
		for i, a := range poly {
			b := poly[(i+1)%len(poly)]
			n := Point{b.Y - a.Y, a.X - b.X}
			if n.Norm() == 0 {
				continue
			}
			pLow, pHigh := span(p, n)
			qLow, qHigh := span(q, n)
			if pHigh <= qLow || qHigh <= pLow {
				return false
			}
		}
	}
	return true
}

// span gives the least and greatest extent of points along n.
func span(points []Point, n Point) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range points {
		d := p.X*n.X + p.Y*n.Y
		low, high = min(low, d), max(high, d)
	}
	return low, high
}
