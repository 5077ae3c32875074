package chart

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/jpeg"
	"image/png"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// sheet is a constructed picture: the true way from values to pixels.
type sheet struct {
	name       string
	x0, y0     float64 // pixel of flow 0 and head 0
	ux, uy     float64 // for one unit of flow
	vx, vy     float64 // for one unit of head
	wide, high int
}

func (s sheet) at(flow, head float64) Pixel {
	return Pixel{s.x0 + flow*s.ux + head*s.vx, s.y0 + flow*s.uy + head*s.vy}
}

// The curve drawn: H = 24 - 0.0024 Q².
func curve(flow float64) float64 { return 24 - 0.0024*flow*flow }

var sheets = []sheet{
	{"scan", 80, 700, 8, 0, 0, -25, 960, 760},
	{"turned", 150, 640, 7, 1, 3, -21, 960, 800},
	{"slanted", 60, 720, 7, -1, 4, -24, 960, 800},
	{"upside down", 900, 60, -8, 0, 0, 25, 960, 760},
}

// The inks of the picture, red, green and blue.
var (
	inkAxis  = [3]byte{0, 0, 0}
	inkCurve = [3]byte{200, 0, 0}
)

// draw makes the PNG: axes with ticks at 0 and 100, at 0 and 24, and the curve.
func draw(t *testing.T, s sheet) []byte {
	t.Helper()
	m := image.NewRGBA(image.Rect(0, 0, s.wide, s.high))
	for i := range m.Pix {
		m.Pix[i] = 255
	}
	dot := func(p Pixel, ink [3]byte) {
		copy(m.Pix[m.PixOffset(int(math.Round(p.X)), int(math.Round(p.Y))):], ink[:])
	}
	for i := range 2001 {
		part := float64(i) / 2000
		dot(s.at(100*part, 0), inkAxis)
		dot(s.at(0, 24*part), inkAxis)
		dot(s.at(100*part, curve(100*part)), inkCurve)
	}
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// A known curve drawn into a picture is read back within a pixel, on a straight
// sheet as on one that is turned or slanted.
func TestKnownCurveWithinAPixel(t *testing.T) {
	for _, s := range sheets {
		m, err := png.Decode(bytes.NewReader(draw(t, s)))
		if err != nil {
			t.Fatal(err)
		}
		// The marks are whole pixels, as a finger sets them.
		mark := func(flow, head, value float64) Mark {
			p := s.at(flow, head)
			return Mark{Pixel{math.Round(p.X), math.Round(p.Y)}, value}
		}
		a, err := NewAxes([2]Mark{mark(0, 0, 0), mark(100, 0, 100)}, [2]Mark{mark(0, 0, 0), mark(0, 24, 24)})
		if err != nil {
			t.Fatal(s.name, err)
		}
		points, worst := 0, 0.0
		for y := range s.high {
			for x := range s.wide {
				if r, g, _, _ := m.At(x, y).RGBA(); r>>8 != 200 || g != 0 {
					continue
				}
				points++
				flow, head := a.At(Pixel{float64(x), float64(y)})
				// The nearest point of the true curve, in pixels of the picture.
				near := math.Inf(1)
				for i := -40; i <= 40; i++ {
					q := flow + float64(i)*0.02
					near = min(near, s.at(flow, head).minus(s.at(q, curve(q))).length())
				}
				worst = max(worst, near)
			}
		}
		if points < 500 || worst > 1 {
			t.Errorf("%s: %d points, the worst off by %.2f pixels", s.name, points, worst)
		}
	}
}

// There and back is where one was, whatever the marks.
func TestThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pixel := func(name string) Pixel {
			return Pixel{rapid.Float64Range(0, 4000).Draw(t, name+".x"), rapid.Float64Range(0, 4000).Draw(t, name+".y")}
		}
		value := rapid.Float64Range(-50, 500)
		a, err := NewAxes([2]Mark{{pixel("f1"), value.Draw(t, "f1")}, {pixel("f2"), value.Draw(t, "f2")}}, [2]Mark{{pixel("h1"), value.Draw(t, "h1")}, {pixel("h2"), value.Draw(t, "h2")}})
		if err != nil {
			return
		}
		for i, m := range a.flow {
			if f, _ := a.At(m.Pixel); math.Abs(f-m.Value) > 1e-6*(1+math.Abs(m.Value)) {
				t.Fatalf("the flow mark %d reads %g, not %g", i, f, m.Value)
			}
		}
		for i, m := range a.head {
			if _, h := a.At(m.Pixel); math.Abs(h-m.Value) > 1e-6*(1+math.Abs(m.Value)) {
				t.Fatalf("the head mark %d reads %g, not %g", i, h, m.Value)
			}
		}
		if math.Abs(a.flow[1].Value-a.flow[0].Value) < 1e-3 || math.Abs(a.head[1].Value-a.head[0].Value) < 1e-3 {
			return // what stands within a thousandth cannot be told apart to a pixel
		}
		p := pixel("p")
		f, h := a.At(p)
		if d := a.Back(f, h).minus(p).length(); d > 1e-4 {
			t.Fatalf("%v came back %g pixels off", p, d)
		}
	})
}

// Axes that do not cross at nought read as well: the head's axis stands at 20.
func TestAxesAwayFromNought(t *testing.T) {
	s := sheets[0]
	a, err := NewAxes([2]Mark{{s.at(20, 4), 20}, {s.at(80, 4), 80}}, [2]Mark{{s.at(20, 4), 4}, {s.at(20, 20), 20}})
	if err != nil {
		t.Fatal(err)
	}
	if f, h := a.At(s.at(50, 12)); math.Abs(f-50) > 1e-9 || math.Abs(h-12) > 1e-9 {
		t.Error(f, h)
	}
	if f, h := a.Fine(); math.Abs(f-0.125) > 1e-9 || math.Abs(h-0.04) > 1e-9 { // 8 and 25 pixels a unit
		t.Error(f, h)
	}
	if a.Slant() > 1e-6 || a.Off(s.at(80, 4), 80, 4) > 1e-9 {
		t.Error(a.Slant())
	}
	// The slanted sheet by hand: its axes lean towards each other by atan(1/7) = 8.13
	// and atan(4/24) = 9.46 degrees.
	l := sheets[2]
	b, err := NewAxes([2]Mark{{l.at(0, 0), 0}, {l.at(100, 0), 100}}, [2]Mark{{l.at(0, 0), 0}, {l.at(0, 24), 24}})
	if err != nil || math.Abs(b.Slant()-17.59) > 0.01 {
		t.Error(err, b.Slant())
	}
}

func TestMarksThatCannotBe(t *testing.T) {
	at := func(x, y, v float64) Mark { return Mark{Pixel{x, y}, v} }
	good := [2]Mark{at(0, 100, 0), at(0, 0, 24)}
	for code, flow := range map[string][2]Mark{
		FaultNear: {at(0, 100, 0), at(10, 100, 50)}, FaultAlike: {at(0, 100, 0), at(100, 100, 0)}, FaultParallel: {at(0, 100, 0), at(5, 0, 50)},
		FaultNumber: {at(math.NaN(), 100, 0), at(100, 100, 50)},
	} {
		_, err := NewAxes(flow, good)
		var e *Error
		if !errors.As(err, &e) || e.Code != code {
			t.Errorf("%v, want %s", err, code)
		}
	}
	if _, err := NewAxes(good, [2]Mark{at(0, 0, math.Inf(1)), at(1, 1, 0)}); err == nil {
		t.Error("an infinite value was taken")
	}
}

// bomb is a PNG that says it is larger than it is.
func bomb(wide, high uint32) []byte {
	b := []byte("\x89PNG\r\n\x1a\n\x00\x00\x00\x0dIHDR")
	b = binary.BigEndian.AppendUint32(b, wide)
	b = binary.BigEndian.AppendUint32(b, high)
	b = append(b, 8, 2, 0, 0, 0)
	return binary.BigEndian.AppendUint32(b, crc32.ChecksumIEEE(b[12:]))
}

func TestPictures(t *testing.T) {
	var j bytes.Buffer
	if err := jpeg.Encode(&j, image.NewGray(image.Rect(0, 0, 300, 200)), nil); err != nil {
		t.Fatal(err)
	}
	p := draw(t, sheets[0])
	for name, c := range map[string]struct {
		data []byte
		size int64
		code string
		want Picture
	}{
		"png":         {p, int64(len(p)), "", Picture{"image/png", 960, 760}},
		"jpeg":        {j.Bytes(), int64(j.Len()), "", Picture{"image/jpeg", 300, 200}},
		"svg":         {[]byte(`<svg xmlns="http://www.w3.org/2000/svg"><script>1</script></svg>`), 90, FaultSort, Picture{}},
		"xml":         {[]byte(`<?xml version="1.0"?><svg/>`), 90, FaultSort, Picture{}},
		"heic":        {[]byte("\x00\x00\x00\x18ftypheic"), 90, FaultSort, Picture{}},
		"nothing":     {nil, 0, FaultSort, Picture{}},
		"text":        {[]byte("flow,head\n"), 10, FaultSort, Picture{}},
		"cut off":     {p[:20], 20, FaultHeader, Picture{}},
		"cut jpeg":    {j.Bytes()[:10], 10, FaultHeader, Picture{}},
		"bomb":        {bomb(60_000, 60_000), 4000, FaultPixels, Picture{}},
		"long":        {bomb(20_000, 100), 4000, FaultPixels, Picture{}},
		"many pixels": {bomb(10_000, 6_000), 4000, FaultPixels, Picture{}},
		"tiny":        {bomb(20, 2_000), 4000, FaultSmall, Picture{}},
		"large":       {p, MostBytes + 1, FaultBytes, Picture{}},
		"script png":  {[]byte("\x89PNG\r\n\x1a\n<script>"), 20, FaultHeader, Picture{}},
	} {
		got, err := Check(c.data, c.size)
		var e *Error
		if c.code == "" && (err != nil || got != c.want) || c.code != "" && (!errors.As(err, &e) || e.Code != c.code) {
			t.Errorf("%s: %+v %v", name, got, err)
		}
	}
	if got := sortOf([]byte("<svg>")); got != "SVG" || strings.Contains(sortOf(nil), "x") {
		t.Error(got)
	}
}
