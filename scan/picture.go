package scan

import (
	"image"
	"image/color" //nolint:misspell // the library's word
)

// grey is a picture by how light its dots are.
type grey struct {
	w, h int
	at   []uint8
}

func greyOf(img image.Image) *grey {
	r := img.Bounds()
	g := &grey{w: r.Dx(), h: r.Dy(), at: make([]uint8, r.Dx()*r.Dy())}
	switch p := img.(type) {
	case *image.Gray:
		for y := range g.h {
			copy(g.at[y*g.w:(y+1)*g.w], p.Pix[y*p.Stride:])
		}
	case *image.YCbCr: // what a camera's JPEG is
		for y := range g.h {
			copy(g.at[y*g.w:(y+1)*g.w], p.Y[p.YOffset(r.Min.X, r.Min.Y+y):])
		}
	default:
		for y := range g.h {
			for x := range g.w {
				c, ok := color.GrayModel.Convert(over(img.At(r.Min.X+x, r.Min.Y+y))).(color.Gray) //nolint:misspell // the library's word
				if ok {
					g.at[y*g.w+x] = c.Y
				}
			}
		}
	}
	return g
}

// over lays a colour that is seen through on white paper.
func over(c color.Color) color.Color { //nolint:misspell // the library's word
	r, g, b, a := c.RGBA()
	if a == 0xffff {
		return c
	}
	white := 0xffff - a
	return color.RGBA64{R: uint16(r + white), G: uint16(g + white), B: uint16(b + white), A: 0xffff} //nolint:gosec,misspell // both parts together are at most 0xffff
}

func (g *grey) longest() int { return max(g.w, g.h) }

// shrunk gives the picture with its longest side so long, each dot the mean of
// those it stands for; the picture itself where it is not longer.
func (g *grey) shrunk(side int) *grey {
	if g.longest() <= side {
		return g
	}
	k := float64(g.longest()) / float64(side)
	s := &grey{w: max(1, int(float64(g.w)/k)), h: max(1, int(float64(g.h)/k))}
	s.at = make([]uint8, s.w*s.h)
	for y := range s.h {
		y0, y1 := int(float64(y)*k), min(g.h, int(float64(y+1)*k))
		for x := range s.w {
			x0, x1 := int(float64(x)*k), min(g.w, int(float64(x+1)*k))
			sum, n := 0, 0
			for v := y0; v < max(y1, y0+1); v++ {
				for u := x0; u < max(x1, x0+1); u++ {
					sum, n = sum+int(g.at[v*g.w+u]), n+1
				}
			}
			s.at[y*s.w+x] = uint8(sum / n) //nolint:gosec // a mean of bytes is a byte
		}
	}
	return s
}

// field is a picture in black and white.
type field struct {
	w, h int
	dark []bool
}

func (b *field) is(x, y int) bool {
	return x >= 0 && y >= 0 && x < b.w && y < b.h && b.dark[y*b.w+x]
}

// local calls dark what is darker than what lies round it, up to so many dots
// away: light may fall unevenly (D. Bradley and G. Roth, Adaptive thresholding
// using the integral image, Journal of Graphics Tools 12, 2007).
func (g *grey) local(radius int) *field {
	const darker = 0.88
	radius = max(radius, 4)
	sums := make([]int, (g.w+1)*(g.h+1))
	for y := range g.h {
		row := 0
		for x := range g.w {
			row += int(g.at[y*g.w+x])
			sums[(y+1)*(g.w+1)+x+1] = sums[y*(g.w+1)+x+1] + row
		}
	}
	b := &field{w: g.w, h: g.h, dark: make([]bool, g.w*g.h)}
	for y := range g.h {
		y0, y1 := max(0, y-radius), min(g.h, y+radius+1)
		for x := range g.w {
			x0, x1 := max(0, x-radius), min(g.w, x+radius+1)
			sum := sums[y1*(g.w+1)+x1] - sums[y0*(g.w+1)+x1] - sums[y1*(g.w+1)+x0] + sums[y0*(g.w+1)+x0]
			b.dark[y*g.w+x] = float64(int(g.at[y*g.w+x])*(y1-y0)*(x1-x0)) < darker*float64(sum)
		}
	}
	return b
}

// split calls dark what lies below the one level that parts the picture best (N.
// Otsu, A threshold selection method from gray-level histograms, IEEE Trans.
// Systems, Man, and Cybernetics 9, 1979).
func (g *grey) split() *field {
	var count [256]int
	total := 0
	for _, v := range g.at {
		count[v]++
		total += int(v)
	}
	best, level := -1.0, 0
	n, sum := 0, 0
	for t, c := range count {
		n, sum = n+c, sum+t*c
		rest := len(g.at) - n
		if n == 0 || rest == 0 {
			continue
		}
		d := float64(sum)/float64(n) - float64(total-sum)/float64(rest)
		if v := float64(n) * float64(rest) * d * d; v > best {
			best, level = v, t
		}
	}
	b := &field{w: g.w, h: g.h, dark: make([]bool, g.w*g.h)}
	for i, v := range g.at {
		b.dark[i] = int(v) <= level
	}
	return b
}
