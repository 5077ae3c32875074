package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	_ "image/png" // pictures are read
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"plashet/drawing"
)

var day = Info{Title: "A pond", Language: "en", Date: time.Date(2026, 5, 14, 0, 0, 0, 0, time.UTC)}

func write(t testing.TB, sheets ...drawing.Sheet) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, sheets, day); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// poppler runs one of its programs on a file and gives what it writes; an output
// name is handed on where the program wants one. Poppler is a reader of PDF that
// has nothing in common with this package.
func poppler(t testing.TB, data []byte, program string, args ...string) (text, folder string) {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		t.Skipf("%s is not installed: ./check installs it (Debian: poppler-utils)", program)
	}
	folder = t.TempDir()
	file := filepath.Join(folder, "in.pdf")
	if err := os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
	for i, a := range args {
		if a == "FILE" {
			args[i] = file
		}
	}
	cmd := exec.CommandContext(t.Context(), path, args...)
	cmd.Dir = folder
	var out, stderr bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &stderr
	if err := cmd.Run(); err != nil || stderr.Len() > 0 {
		t.Fatalf("%s: %v: %s", program, err, stderr.String())
	}
	return out.String(), folder
}

// TestSizes: a page is as large as its sheet, and a bar of 150 mm on it is
// 150 mm long, both ways, read by another program's pixels to 0.1 mm.
func TestSizes(t *testing.T) {
	const perMM = 20
	s := drawing.Sheet{Width: 215.9, Height: 279.4, Items: []drawing.Item{
		drawing.Polygon{Points: []drawing.Point{{X: 20, Y: 30}, {X: 170, Y: 30}, {X: 170, Y: 34}, {X: 20, Y: 34}}, Fill: drawing.Black},
		drawing.Polygon{Points: []drawing.Point{{X: 20, Y: 60}, {X: 24, Y: 60}, {X: 24, Y: 260}, {X: 20, Y: 260}}, Fill: drawing.Black},
	}}
	data := write(t, s)
	info, _ := poppler(t, data, "pdfinfo", "FILE")
	if !strings.Contains(info, "612 x 792 pts (letter)") {
		t.Errorf("%s", info)
	}
	_, folder := poppler(t, data, "pdftoppm", "-r", fmt.Sprint(perMM*25.4), "-png", "-singlefile", "FILE", "page")
	f, err := os.Open(filepath.Join(folder, "page.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	img, _, err := image.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	dark := func(x, y int) bool { r, _, _, _ := img.At(x, y).RGBA(); return r < 0x8000 }
	x, y := 0, 0
	for i := range img.Bounds().Dx() {
		if dark(i, 32*perMM) {
			x++
		}
	}
	for i := range img.Bounds().Dy() {
		if i > 50*perMM && dark(22*perMM, i) {
			y++
		}
	}
	if math.Abs(float64(x)/perMM-150) > 0.1 || math.Abs(float64(y)/perMM-200) > 0.1 {
		t.Errorf("the bars are %.2f and %.2f mm long", float64(x)/perMM, float64(y)/perMM)
	}
}

// TestLetters: what is written can be read out again, with fractions, primes,
// Latin, Greek and Cyrillic; what the letters lack is a marked box, and listed.
func TestLetters(t *testing.T) {
	lines := []string{"4' 7-1/2\"  ½ ¼ ⅜ 4′ 7½″", "Señor Łukasz Ångström", "Ωμέγα", "Пруд у дома", "水 😀"}
	s := drawing.Sheet{Width: 200, Height: 100}
	for i, l := range lines {
		s.Items = append(s.Items, drawing.Text{At: drawing.Point{X: 10, Y: 10 + 12*float64(i)}, Size: 5, Ink: drawing.Black, Bold: i%2 == 1, Halo: i == 2, Text: l})
	}
	s.Items = append(s.Items, drawing.Text{At: drawing.Point{X: 180, Y: 90}, Size: 5, Ink: drawing.Black, Turn: -90, Text: "upright"})
	data := write(t, s)
	text, _ := poppler(t, data, "pdftotext", "-layout", "FILE", "-")
	for _, want := range append(lines[:4:4], "☒", "upright") {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), strings.Join(strings.Fields(want), " ")) {
			t.Errorf("%q is not in %q", want, text)
		}
	}
	fonts, _ := poppler(t, data, "pdffonts", "FILE")
	if n := strings.Count(fonts, "yes no  yes"); n != 2 { // embedded, without a subset's prefix in the name, with Unicode
		t.Errorf("not two fonts are embedded and readable:\n%s", fonts)
	}
	if got := string(Lacks([]drawing.Sheet{s})); got != "水😀" {
		t.Errorf("lacking: %q", got)
	}
}

// TestStable: the same sheets give the same bytes, each time.
func TestStable(t *testing.T) {
	s := drawing.Sheet{Width: 100, Height: 100, Items: []drawing.Item{
		drawing.Text{At: drawing.Point{X: 5, Y: 20}, Size: 5, Ink: drawing.Black, Text: "a pond, ½"},
		drawing.Text{At: drawing.Point{X: 5, Y: 30}, Size: 5, Ink: drawing.Black, Bold: true, Text: "a fall"},
		drawing.Arc{Centre: drawing.Point{X: 50, Y: 60}, RX: 20, RY: 10, Turn: 30, Sweep: 300, Pen: drawing.Pen{Ink: drawing.Water, Wide: 1, Dash: drawing.Dashed}},
	}}
	first := write(t, s, s)
	for range 5 {
		if !bytes.Equal(first, write(t, s, s)) {
			t.Fatal("the same sheets come out differently")
		}
	}
	info, _ := poppler(t, first, "pdfinfo", "-isodates", "FILE")
	if !strings.Contains(info, "2026-05-14T00:00:00") || !strings.Contains(info, "Pages:           2") || !strings.Contains(info, "A pond") {
		t.Errorf("%s", info)
	}
}

func TestRefuses(t *testing.T) {
	nan := math.NaN()
	pen := drawing.Pen{Ink: drawing.Black, Wide: 1}
	for i, items := range [][]drawing.Item{
		{drawing.Line{From: drawing.Point{X: nan}, Pen: pen}},
		{drawing.Arc{RX: math.Inf(1), RY: 1, Sweep: 360, Pen: pen}},
		{drawing.Text{At: drawing.Point{Y: nan}, Size: 5, Ink: drawing.Black, Text: "a"}},
		{drawing.Group{Items: []drawing.Item{drawing.Polygon{Points: []drawing.Point{{}, {X: nan}}, Fill: drawing.Black}}}},
	} {
		var b bytes.Buffer
		if err := Write(&b, []drawing.Sheet{{Width: 50, Height: 50, Items: items}}, day); !errors.Is(err, ErrNotFinite) || b.Len() > 0 {
			t.Errorf("%d: %v, %d bytes", i, err, b.Len())
		}
	}
	if err := Write(&bytes.Buffer{}, nil, day); !errors.Is(err, ErrNoSheets) {
		t.Error(err)
	}
	if err := Write(&bytes.Buffer{}, []drawing.Sheet{{Width: nan, Height: 5}}, day); !errors.Is(err, ErrNotFinite) {
		t.Error(err)
	}
}
