package face

import (
	"math"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"plashet/drawing"
)

// TestHas: what a job's paper must show is there, and scripts that would come
// out wrong are not.
func TestHas(t *testing.T) {
	for _, r := range "abcXYZ0123456789½¼¾⅛⅜⅝⅞⅓′″’“”–—…·×°²³−+≤≥→↑↓☐☒éñäßÅŁčžαβγΩАБВгдж¿¡€£" {
		if !Has(r) {
			t.Errorf("%q (%U) is not in the letters", r, r)
		}
	}
	for _, r := range "אبहकก水한😀\u200f\n\x00" {
		if r != '\u200f' && Has(r) {
			t.Errorf("%q (%U) is in the letters and would need shaping", r, r)
		}
	}
}

func TestShown(t *testing.T) {
	for _, c := range []struct{ in, out, lacks string }{
		{"4' 7-1/2\"", "4' 7-1/2\"", ""},
		{"½ señor", "½ señor", ""},
		{"水 pond 水😀", "☒ pond ☒☒", "水😀"},
		{"a\nb\xff", "a☒b\uFFFD", "\n"},
	} {
		out, lacks := Shown(c.in)
		if out != c.out || string(lacks) != c.lacks {
			t.Errorf("%q: %q, lacks %q", c.in, out, string(lacks))
		}
	}
}

// TestWidths: no text is wider in these letters than package drawing takes it
// to be, and plain Latin is just as wide.
func TestWidths(t *testing.T) {
	var b sfnt.Buffer
	for _, isBold := range []bool{false, true} {
		f := Font(isBold)
		for r := rune(' '); r < 0x2700; r++ {
			i, err := f.GlyphIndex(&b, r)
			if err != nil || i == 0 {
				continue
			}
			a, err := f.GlyphAdvance(&b, i, fixed.I(1000), font.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			real, taken := float64(a)/64/1000, drawing.Text{Size: 1, Bold: isBold, Text: string(r)}.Width()
			if r <= '~' && math.Abs(real-taken) > 1.5e-3 {
				t.Errorf("%q is %.4f wide, not %.4f", r, real, taken)
			}
			if limit := 1e-3 + taken; r < 0x530 && real > limit || real > 1.9*taken {
				t.Errorf("%q (%U) is %.3f wide and taken for %.3f", r, r, real, taken)
			}
		}
	}
}
