package scan

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	tint "image/color" //nolint:misspell // the name of the package
	"image/jpeg"
	"image/png"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	qrcode "github.com/skip2/go-qrcode"
)

// The codes are made by another program (skip2/go-qrcode), of each level and
// version, so that the standard's tables are held against someone else's.

func made(t testing.TB, text string, level qrcode.RecoveryLevel) [][]bool {
	t.Helper()
	c, err := qrcode.New(text, level)
	if err != nil {
		t.Fatal(err)
	}
	return c.Bitmap()
}

// photo draws a code as a camera sees it: turned, slanted, in uneven light, with
// noise.
type photo struct {
	side         int     // of the picture, dots
	module       float64 // dots
	turn, slant  float64
	shade, noise float64
	blur         int
}

func (p photo) take(modules [][]bool, rnd *rand.Rand) *image.Gray {
	n := float64(len(modules))
	img := image.NewGray(image.Rect(0, 0, p.side, p.side))
	s, c := math.Sincos(p.turn)
	half := float64(p.side) / 2
	light := make([]float64, p.side*p.side)
	for y := range p.side {
		for x := range p.side {
			u, v := float64(x)-half, float64(y)-half
			w := 1 + p.slant*v/half // farther rows are smaller
			u, v = u*w, v*w
			u, v = (u*c+v*s)/p.module+n/2, (-u*s+v*c)/p.module+n/2
			l := 0.92
			if i, k := int(math.Floor(v)), int(math.Floor(u)); i >= 0 && k >= 0 && i < len(modules) && k < len(modules) && modules[i][k] {
				l = 0.12
			}
			light[y*p.side+x] = l * (1 - p.shade*float64(x)/float64(p.side))
		}
	}
	for y := range p.side {
		for x := range p.side {
			sum, count := 0.0, 0.0
			for dy := -p.blur; dy <= p.blur; dy++ {
				for dx := -p.blur; dx <= p.blur; dx++ {
					if u, v := x+dx, y+dy; u >= 0 && v >= 0 && u < p.side && v < p.side {
						sum, count = sum+light[v*p.side+u], count+1
					}
				}
			}
			l := sum/count + p.noise*rnd.NormFloat64()
			img.SetGray(x, y, tint.Gray{Y: uint8(255 * min(1, max(0, l)))})
		}
	}
	return img
}

func TestEveryVersionAndLevel(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	n := 0
	for v := 1; v <= mostVersion; v++ {
		for _, l := range []qrcode.RecoveryLevel{qrcode.Low, qrcode.Medium, qrcode.High, qrcode.Highest} {
			text := "HTTP://A.B/" + strings.Repeat("7", v) + strings.Repeat("x", max(0, 2*v-8))
			if v < 3 {
				text = "HTTP://"[:7]
			}
			c, err := qrcode.NewWithForcedVersion(text, v, l)
			if err != nil {
				continue // too long for this one
			}
			p := photo{side: 6 * (4*v + 40), module: 5}
			if got, err := In(p.take(c.Bitmap(), rnd)); err != nil || got != text {
				t.Errorf("version %d level %d: %q, %v, want %q", v, l, got, err, text)
			}
			n++
		}
	}
	if n < 70 {
		t.Fatalf("only %d codes", n)
	}
}

// TestFilled: codes filled to the brim, so that every block is read and mended.
func TestFilled(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	for _, size := range []int{17, 60, 106, 180, 250, 330, 410, 600} {
		var b strings.Builder
		for range size {
			b.WriteByte("abcdefghijklmnopqrstuvwxyz/?=&%ABCDEF0123456789"[rnd.IntN(47)])
		}
		for _, l := range []qrcode.RecoveryLevel{qrcode.Low, qrcode.Medium} {
			m := made(t, b.String(), l)
			if (len(m)-8-17)/4 > mostVersion {
				continue
			}
			p := photo{side: 6 * len(m), module: 5}
			if got, err := In(p.take(m, rnd)); err != nil || got != b.String() {
				t.Errorf("%d letters, level %d: %v", size, l, err)
			}
		}
	}
}

// TestPhotos: turned by any angle, slanted, shaded, blurred and noisy, as a phone
// sees the code on a page.
func TestPhotos(t *testing.T) {
	const seed = 7
	rnd := rand.New(rand.NewPCG(seed, seed))
	read, n := 0, 0
	for range 60 {
		text := fmt.Sprintf("https://ponds.example/jobs/%x?d=%016x&r=%d", rnd.Uint64(), rnd.Uint64(), rnd.IntN(500))
		p := photo{side: 700, module: 5 + 5*rnd.Float64(), turn: 2 * math.Pi * rnd.Float64(), slant: 0.25 * (rnd.Float64() - 0.5), shade: 0.6 * rnd.Float64(), noise: 0.04 * rnd.Float64(), blur: rnd.IntN(3)}
		got, err := In(p.take(made(t, text, qrcode.Medium), rnd))
		n++
		switch {
		case err == nil && got != text:
			t.Errorf("%+v is misread: %q, want %q", p, got, text)
		case err == nil:
			read++
		}
	}
	t.Logf("seed %d: %d of %d photos are read", seed, read, n)
	if read < n*95/100 {
		t.Errorf("seed %d: only %d of %d photos are read", seed, read, n)
	}
}

// TestMend: as many wrong bytes as the check bytes can mend are mended, wherever
// they stand; of more it is told, or at least nothing panics.
func TestMend(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 6))
	for range 3000 {
		check := 2 + 2*rnd.IntN(15)
		block := make([]byte, 5+rnd.IntN(120)+check)
		for i := range block[:len(block)-check] {
			block[i] = byte(rnd.UintN(256))
		}
		encode(block, check)
		want := bytes.Clone(block)
		wrong := rnd.IntN(check/2 + 1)
		for _, i := range rnd.Perm(len(block))[:wrong] {
			block[i] ^= byte(1 + rnd.UintN(255))
		}
		if !mend(block, check) || !bytes.Equal(block, want) {
			t.Fatalf("%d wrong of %d with %d check bytes are not mended", wrong, len(block), check)
		}
		for _, i := range rnd.Perm(len(block))[:min(len(block), check/2+1+rnd.IntN(4))] {
			block[i] ^= byte(1 + rnd.UintN(255))
		}
		mend(block, check)
	}
}

// encode fills in the check bytes by long division, which shares no code with
// mend but the field.
func encode(block []byte, check int) {
	gen := []byte{1}
	for i := range check {
		next := make([]byte, len(gen)+1)
		for k, g := range gen {
			next[k] ^= g
			next[k+1] ^= times(g, power[i])
		}
		gen = next
	}
	rest := make([]byte, len(block))
	copy(rest, block[:len(block)-check])
	for i := range len(block) - check {
		if k := rest[i]; k != 0 {
			for n, g := range gen {
				rest[i+n] ^= times(g, k)
			}
		}
	}
	copy(block[len(block)-check:], rest[len(block)-check:])
}

// TestNothing: what is no picture, too large, or has no code is told, and a code
// that is torn is not read as another.
func TestNothing(t *testing.T) {
	rnd := rand.New(rand.NewPCG(8, 9))
	for name, data := range map[string][]byte{"empty": nil, "text": []byte("no picture"), "gif": []byte("GIF89a\x01\x00\x01\x00\x00\x00\x00;"), "torn": {0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'}} {
		if _, err := Read(data); !errors.Is(err, ErrPicture) {
			t.Errorf("%s: %v", name, err)
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, 40, 30))); err != nil {
		t.Fatal(err)
	}
	bomb := bytes.Clone(b.Bytes())
	copy(bomb[16:24], []byte{0, 1, 0, 0, 0, 1, 0, 0}) // says that it is 65536 wide and tall
	if _, err := Read(bomb); !errors.Is(err, ErrLarge) && !errors.Is(err, ErrPicture) {
		t.Error(err)
	}
	if _, err := Read(b.Bytes()); !errors.Is(err, ErrNone) {
		t.Error(err)
	}
	for range 20 { // noise
		img := image.NewGray(image.Rect(0, 0, 300, 200))
		for i := range img.Pix {
			img.Pix[i] = byte(rnd.UintN(256))
		}
		if got, err := In(img); err == nil {
			t.Errorf("noise is read as %q", got)
		}
	}
	m := made(t, "https://ponds.example/jobs/7", qrcode.Medium)
	for y := len(m) / 2; y < len(m); y++ { // half of it gone
		clear(m[y])
	}
	if got, err := In(photo{side: 400, module: 8}.take(m, rnd)); err == nil {
		t.Errorf("a torn code is read as %q", got)
	}
}

// TestRead: the same through the files of a camera and of a screen.
func TestRead(t *testing.T) {
	rnd := rand.New(rand.NewPCG(10, 11))
	text := "plashet:job?d=df281675b3f9154b&n=Caf%C3%A9+%F0%9F%90%9F&r=12"
	img := photo{side: 500, module: 7, turn: 0.3}.take(made(t, text, qrcode.Medium), rnd)
	var p, j bytes.Buffer
	if err := errors.Join(png.Encode(&p, img), jpeg.Encode(&j, img, &jpeg.Options{Quality: 60})); err != nil {
		t.Fatal(err)
	}
	colour := image.NewNRGBA(img.Rect)
	for y := range 500 {
		for x := range 500 { // light that is seen through is paper
			colour.SetNRGBA(x, y, tint.NRGBA{A: 255 - img.GrayAt(x, y).Y})
		}
	}
	var q bytes.Buffer
	if err := png.Encode(&q, colour); err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string][]byte{"png": p.Bytes(), "jpeg": j.Bytes(), "colour": q.Bytes()} {
		if got, err := Read(data); err != nil || got != text {
			t.Errorf("%s: %q, %v", name, got, err)
		}
	}
}

func FuzzSaid(f *testing.F) {
	f.Add([]byte{0x40, 0x14, 0x10}, 1)
	f.Add([]byte{0x10, 0x20, 0x30}, 12)
	f.Fuzz(func(_ *testing.T, data []byte, version int) {
		said(data, 1+max(version, -version)%mostVersion) // must not panic
	})
}

func BenchmarkRead(b *testing.B) {
	rnd := rand.New(rand.NewPCG(1, 1))
	img := photo{side: 2400, module: 9, turn: 0.1, shade: 0.3, noise: 0.02}.take(made(b, "https://ponds.example/jobs/7?d=df281675b3f9154b&r=12", qrcode.Medium), rnd)
	for b.Loop() {
		if _, err := In(img); err != nil {
			b.Fatal(err)
		}
	}
}
