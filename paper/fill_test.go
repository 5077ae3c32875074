package paper

import (
	"strings"
	"testing"

	"plashet/demo"
	"plashet/drawing"
	"plashet/words"
)

// TestSheetsWhole: on the sheets of the demo jobs, in both languages and on both
// papers, no text is cut short, and no last page holds only a line or two.
func TestSheetsWhole(t *testing.T) {
	seen, several := 0, 0
	for _, name := range demo.Names() {
		for _, p := range []Paper{Letter, A4} {
			for _, say := range []*words.Language{words.English(), words.Spanish()} {
				in := input(t, example(t, name), p)
				in.Say = say
				for _, s := range sheetsOf(t, in) {
					for i := range s.Pages {
						for _, x := range texts(&s.Pages[i]) {
							seen++
							if strings.Contains(x.Text, "…") {
								t.Errorf("%s, %s %d of %d on %s: %q is cut short", name, s.Name, i+1, len(s.Pages), p.Name(), x.Text)
							}
						}
					}
					if n := len(s.Pages); n > 1 {
						several++
						if used := usedOf(&s.Pages[n-1]); used < 25 {
							t.Errorf("%s, %s on %s: the last of %d pages holds %.0f mm", name, s.Name, p.Name(), n, used)
						}
					}
				}
			}
		}
	}
	if seen < 10000 || several < 100 {
		t.Fatalf("only %d texts and %d sheets of several pages", seen, several)
	}
}

// usedOf gives how far down a page is filled with letters below its head, mm.
func usedOf(s *drawing.Sheet) float64 {
	low := top
	for _, x := range texts(s) {
		if x.At.Y < s.Height-bottom {
			low = max(low, x.At.Y)
		}
	}
	return low - top
}

// TestTogether: of a paragraph no line stands alone on a page.
func TestTogether(t *testing.T) {
	in := input(t, example(t, demo.Names()[0]), Letter)
	for lines := 1; lines < 9; lines++ {
		for used := 150.0; used < 220; used += 0.5 {
			f := newFlow(&in, nil, "care", setting{loose: 1})
			f.write(f.x0, top, body, false, "above")
			f.y = used
			f.paragraph(strings.Repeat(strings.Repeat("m", 45)+" ", lines), false)
			n := 0
			for _, it := range f.pages[0] {
				if x, ok := it.(drawing.Text); ok && x.Text != "above" {
					n++
				}
			}
			if over := lines - n; lines > 1 && (n == 1 || over == 1) || lines <= 3 && n > 0 && over > 0 {
				t.Fatalf("%d of %d lines stand on the first page from %.1f mm on", n, lines, used)
			}
		}
	}
}

// A heading goes along with what does not fit under it: it never ends a page, be
// the table below ever so little too tall.
func TestHeadingNotAlone(t *testing.T) {
	in := input(t, example(t, "orchard-ring"), Letter)
	for tall := range 240 {
		f := newFlow(&in, &art{}, "material", setting{loose: 1, page: -1})
		f.paragraph("above", false)
		f.y += float64(tall)
		f.heading("Heading")
		f.table([]column{{head: "item", wide: rest}}, [][]string{{"one"}, {"two"}, {"three"}, {"four"}, {"five"}, {"six"}, {"seven"}, {"eight"}})
		for n, p := range f.pages {
			if len(p) == 0 {
				t.Fatalf("%d mm above: page %d is empty", tall, n+1)
			}
			for i := range p {
				if s, ok := p[i].(drawing.Text); ok && s.Text == "Heading" && i+2 >= len(p) {
					t.Fatalf("%d mm above: page %d ends with its heading", tall, n+1)
				}
			}
		}
	}
}
