package paper

import (
	"bytes"
	"fmt"
	"image"
	_ "image/png" // pages are read as pictures
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"plashet/demo"
	"plashet/drawing"
	"plashet/engine/unit"
	"plashet/render/pdf"
	"plashet/scan"
)

// These tests read the paper back with programs of their own: Poppler for the
// PDF, ZBar for the codes.

const perMM = 20 // dots, of the pages turned to pictures

func tool(t *testing.T, name, pkg string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("%s is not installed: ./check installs it (Debian: %s)", name, pkg)
	}
	return path
}

func run(t *testing.T, folder, path string, args ...string) string {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), path, args...)
	cmd.Dir = folder
	var out, stderr bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &stderr
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s: %v: %s", path, err, stderr.String())
	}
	return out.String()
}

// printed writes a sheet of an example as a PDF file and gives its folder.
func printed(t *testing.T, in Input, name string) string {
	t.Helper()
	var b bytes.Buffer
	if err := pdf.Write(&b, sheetsOf(t, in, name)[0].Pages, pdf.Info{Title: name, Date: time.Unix(0, 0)}); err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "in.pdf"), b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return folder
}

// TestCutLengths: the text of the cut card, read out of the PDF, holds every
// piece with its cut length and both insertion marks, on one line.
func TestCutLengths(t *testing.T) {
	pdftotext := tool(t, "pdftotext", "poppler-utils")
	n := 0
	for _, name := range demo.Names() {
		in := input(t, example(t, name), Letter)
		text := run(t, printed(t, in, "cut"), pdftotext, "-layout", "in.pdf", "-")
		var lines [][]string
		for _, l := range strings.Split(text, "\n") {
			lines = append(lines, strings.Fields(l))
		}
		show := func(l unit.Length) string { return unit.Of(l, unit.KindTape).Format(in.Result.Units) }
		holds := func(mark string, lengths ...unit.Length) bool {
			return slices.ContainsFunc(lines, func(l []string) bool {
				at := slices.Index(l, mark)
				if at < 0 {
					return false
				}
				rest := " " + strings.Join(l[at:], " ") + " "
				for _, x := range lengths {
					if !strings.Contains(rest, " "+show(x)+" ") && !strings.Contains(rest, " "+show(x)+",") {
						return false
					}
				}
				return true
			})
		}
		for _, p := range in.Result.Assembly.Pieces {
			n++
			if !holds(p.Mark, p.Cut, p.Ends[0].Mark, p.Ends[1].Mark) {
				t.Errorf("%s: %s, %s, %s, %s is not on the card:\n%s", name, p.Mark, show(p.Cut), show(p.Ends[0].Mark), show(p.Ends[1].Mark), text)
			}
		}
		for _, p := range in.Job.Stock.Pieces {
			n++
			if !holds(p.Mark, p.Length.SI) {
				t.Errorf("%s: %s, %s is not on the card:\n%s", name, p.Mark, show(p.Length.SI), text)
			}
		}
	}
	if n < 10 {
		t.Fatalf("only %d pieces", n)
	}
}

// TestOneToOne: on the printed page the bar is 150 mm and 6 in long and the strip
// as long as the pipe is round, to 0.1 mm, measured in the dots of a picture.
func TestOneToOne(t *testing.T) {
	pdftoppm := tool(t, "pdftoppm", "poppler-utils")
	for _, p := range []Paper{Letter, A4} {
		in := input(t, example(t, "hillside-cascade"), p)
		sheet := sheetsOf(t, in, "rolls")[0]
		folder := printed(t, in, "rolls")
		run(t, folder, pdftoppm, "-r", fmt.Sprint(perMM*25.4), "-gray", "-png", "-f", "1", "-l", "1", "-singlefile", "in.pdf", "page")
		img := picture(t, filepath.Join(folder, "page.png"))
		dark := func(x, y float64) bool {
			r, _, _, _ := img.At(int(math.Round(x*perMM)), int(math.Round(y*perMM))).RGBA()
			return r < 0x8000
		}
		bars := 0
		for _, it := range sheet.Pages[0].Items {
			g, ok := it.(drawing.Group)
			if !ok {
				continue
			}
			var want float64
			switch g.Name {
			case "bar 150 mm":
				want = 150
			case "bar 6 in":
				want = 152.4
			default:
				continue
			}
			bars++
			y := g.Items[0].(drawing.Polygon).Points[0].Y + 1.2
			if got := longest(dark, y, sheet.Pages[0].Width); math.Abs(got-want) > 0.1 {
				t.Errorf("%v: %s is %.2f mm long", p, g.Name, got)
			}
		}
		if bars != 2 {
			t.Fatalf("%d bars", bars)
		}
		round := 0.0
		for _, it := range sheet.Pages[0].Items {
			if g, ok := it.(drawing.Group); ok && g.Mark == "E1" {
				frame := g.Items[0].(drawing.Polygon)
				left, right := edges(dark, frame.Points[0].Y+20.7, sheet.Pages[0].Width)
				// The frame's own lines lie outside what they bound.
				round += right - left - 2*frame.Pen.Wide
			}
		}
		// 2 in pipe is 2.375 in outside (ASTM D1785, table 1).
		if want := math.Pi * 2.375 * 25.4; math.Abs(round-want) > 0.1*2 {
			t.Errorf("%v: the strip is %.2f mm long in its parts, the pipe %.2f round", p, round, want)
		}
	}
}

func picture(t *testing.T, path string) image.Image {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	img, _, err := image.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// longest gives the longest dark stretch along a row, mm.
func longest(dark func(x, y float64) bool, y, wide float64) float64 {
	best, now := 0, 0
	for i := range int(wide * perMM) {
		if dark(float64(i)/perMM, y) {
			now++
			best = max(best, now)
		} else {
			now = 0
		}
	}
	return float64(best) / perMM
}

// edges gives the first and the last dark place along a row, mm.
func edges(dark func(x, y float64) bool, y, wide float64) (left, right float64) {
	left = -1
	for i := range int(wide * perMM) {
		if dark(float64(i)/perMM, y) {
			if left < 0 {
				left = float64(i) / perMM
			}
			right = float64(i+1) / perMM
		}
	}
	return left, right
}

// TestCodeIsRead: the code of a printed page, read by another program and by ours,
// says job,
// revision and state, with an address and without.
func TestCodeIsRead(t *testing.T) {
	pdftoppm, zbarimg := tool(t, "pdftoppm", "poppler-utils"), tool(t, "zbarimg", "zbar-tools")
	for _, c := range []struct {
		url  string
		want Code
	}{
		{"", Code{Job: "Hillside cascade", Revision: 3, Digest: "0123456789abcdef"}},
		{"https://ponds.example/jobs/17", Code{ID: "17", Revision: 3, Digest: "0123456789abcdef"}},
	} {
		for _, p := range []Paper{Letter, A4} {
			for _, sheet := range []string{"care", "quote"} {
				in := input(t, example(t, "hillside-cascade"), p)
				in.Stamp.URL = c.url
				folder := printed(t, in, sheet)
				run(t, folder, pdftoppm, "-r", "150", "-gray", "-png", "-f", "1", "-l", "1", "-singlefile", "in.pdf", "page")
				said := strings.TrimSpace(run(t, folder, zbarimg, "-q", "--raw", "page.png"))
				got, ok := ReadCode(said)
				if !ok || got != c.want || !strings.HasPrefix(said, c.url) {
					t.Errorf("%v %s %q: %+v, %v", p, sheet, said, got, ok)
				}
				page, err := os.ReadFile(filepath.Join(folder, "page.png"))
				if err != nil {
					t.Fatal(err)
				}
				if ours, err := scan.Read(page); err != nil || ours != said {
					t.Errorf("%v %s: our reading is %q, %v, another program's %q", p, sheet, ours, err, said)
				}
			}
		}
	}
}
