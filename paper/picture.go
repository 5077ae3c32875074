package paper

import (
	"math"

	"plashet/drawing"
)

// shrink is how much smaller than wished a picture may be drawn so that it goes
// on the page that is begun.
const shrink = 0.72

// leastScale keeps the letters of a picture, 4.6 mm on its sheet, above 8 points.
const leastScale = 0.614

// scaled gives how large a picture is drawn that is wished so wide: smaller where
// that saves a page, or where it would be higher than a page.
func (f *flow) scaled(s *drawing.Sheet, wide float64) float64 {
	k := min(wide/s.Width, (f.foot-f.from)/s.Height)
	if fits := f.room() / s.Height; fits < k && fits >= max(shrink*k, leastScale) {
		return fits
	}
	return k
}

// picture puts a drawing on the page, so wide or somewhat smaller.
func (f *flow) picture(s *drawing.Sheet, wide float64) {
	k := f.scaled(s, wide)
	f.need(s.Height*k - 1e-6)
	f.add(drawing.Placed(s, drawing.Point{X: f.x0, Y: f.y}, k)...)
	f.y += s.Height*k + 1
}

// pictures puts drawings on the page, two side by side.
func (f *flow) pictures(list []drawing.Sheet) {
	for len(list) > 0 {
		row := list[:min(2, len(list))]
		list = list[len(row):]
		f.gap(2)
		tall, k := f.rowOf(row)
		f.need(tall - 1e-6)
		for i := range row {
			f.add(drawing.Placed(&row[i], drawing.Point{X: f.x0 - outside + float64(i)*f.half(), Y: f.y}, k)...)
		}
		f.y += tall + 1
	}
}

// outside is how far a picture's own blank margin may lie outside what a page is
// filled to, mm: so its letters are larger.
const outside = 3.0

// half is the width of each of two pictures side by side.
func (f *flow) half() float64 { return (f.x1 - f.x0 + 2*outside) / 2 }

// rowOf gives how tall two pictures side by side are, and at which scale.
func (f *flow) rowOf(row []drawing.Sheet) (tall, k float64) {
	k = math.Inf(1)
	for i := range row {
		k = min(k, f.scaled(&row[i], f.half()))
	}
	for i := range row {
		tall = max(tall, row[i].Height*k)
	}
	return tall, k
}
