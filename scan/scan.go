// Package scan reads the code that stands on a printed sheet (QR Code, ISO/IEC
// 18004) out of a photo of it: a page held at a slant, in uneven light, somewhat
// blurred. It is pure: bytes in, text out; nothing of a picture is kept. Codes up
// to version 20 are read, in figures, letters and bytes; kanji and codes in
// several parts are not. The method is the standard's reference decoding: finder
// patterns, a projective grid, Reed-Solomon.
package scan

import (
	"bytes"
	"errors"
	"image"
	_ "image/jpeg" // what a camera makes
	_ "image/png"  // what a screen shot is
)

// The errors.
var (
	ErrPicture = errors.New("the file is no picture that can be read")
	ErrLarge   = errors.New("the picture has too many dots")
	ErrNone    = errors.New("no code was found in the picture")
)

// mostDots is how many a picture may have: twice what a good camera makes.
const mostDots = 50_000_000

// sides are how long the longest side is made, in dots, one after the other until
// the code is read: a smaller picture has less noise, a larger one more of a small
// code.
var sides = []int{1200, 2400, 800, 4000}

// Read gives the text of the code in a PNG or JPEG picture. The errors are
// ErrPicture, ErrLarge and ErrNone.
func Read(data []byte) (string, error) {
	c, kind, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil || kind != "png" && kind != "jpeg" || c.Width < 1 || c.Height < 1 {
		return "", ErrPicture
	}
	if c.Width > mostDots/c.Height {
		return "", ErrLarge
	}
	img, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return "", ErrPicture
	}
	return In(img)
}

// In gives the text of the code in a picture. The error is ErrNone.
func In(img image.Image) (string, error) {
	whole := greyOf(img)
	done := map[int]bool{}
	for _, side := range sides {
		g := whole.shrunk(side)
		if done[g.w] {
			continue
		}
		done[g.w] = true
		for _, b := range []*field{g.local(g.longest() / 12), g.local(g.longest() / 40), g.split()} {
			if text, ok := b.read(); ok {
				return text, nil
			}
		}
	}
	return "", ErrNone
}
