// Package face holds the letters that paper and pictures are written in: DejaVu
// Sans, plain and bold, a free family (font/LICENCE), cut down to Latin, Greek,
// Cyrillic, fractions, primes and the signs of the drawings (font/README.md). It
// knows which characters they have and draws none. Scripts that join their
// letters or run from right to left need shaping that the back ends do not do,
// so none of them is kept.
package face

import (
	_ "embed" // the font files
	"sync"

	"golang.org/x/image/font/sfnt"
)

//go:embed font/DejaVuSans.ttf
var plain []byte

//go:embed font/DejaVuSans-Bold.ttf
var bold []byte

// Missing stands where the letters lack a character: a box with a cross in it.
const Missing = '☒'

// File gives the bytes of the font file, as a copy of its own.
func File(isBold bool) []byte {
	if isBold {
		return append([]byte(nil), bold...)
	}
	return append([]byte(nil), plain...)
}

// parsed reads the two fonts once. Both are embedded and tested, so that an
// error is a programmer's mistake.
var parsed = sync.OnceValue(func() [2]*sfnt.Font {
	var out [2]*sfnt.Font
	for i, data := range [...][]byte{plain, bold} {
		f, err := sfnt.Parse(data)
		if err != nil {
			panic(err)
		}
		out[i] = f
	}
	return out
})

// Font gives the font as it is drawn from.
func Font(isBold bool) *sfnt.Font {
	if isBold {
		return parsed()[1]
	}
	return parsed()[0]
}

// common is below which characters are looked up in a table made once.
const common = 0x2800

var hasCommon = sync.OnceValue(func() *[common]bool {
	var out [common]bool
	for r := range rune(common) {
		out[r] = has(r)
	}
	return &out
})

// Has tells that both the plain and the bold letters have a character.
func Has(r rune) bool {
	if r >= 0 && r < common {
		return hasCommon()[r]
	}
	return has(r)
}

func has(r rune) bool {
	var b sfnt.Buffer
	for _, f := range parsed() {
		if i, err := f.GlyphIndex(&b, r); err != nil || i == 0 {
			return false
		}
	}
	return true
}

// Shown gives a text as it can be written: what the letters lack, and what is no
// character, becomes Missing. The second result lists what they lack, each once,
// in the order met.
func Shown(s string) (string, []rune) {
	ready := true
	for i := 0; i < len(s) && ready; i++ {
		ready = s[i] >= ' ' && s[i] < 0x7f
	}
	if ready {
		return s, nil
	}
	var lacks []rune
	out := make([]rune, 0, len(s))
	seen := map[rune]bool{}
	for _, r := range s {
		if !Has(r) {
			if !seen[r] {
				seen[r] = true
				lacks = append(lacks, r)
			}
			r = Missing
		}
		out = append(out, r)
	}
	return string(out), lacks
}
