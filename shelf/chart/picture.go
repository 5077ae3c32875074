package chart

import (
	"bytes"
	"errors"
	"image"
	_ "image/jpeg" // a picture's header
	_ "image/png"
	"io"
	"strconv"
)

// Limits of a picture.
const (
	MostBytes  = 20 << 20
	MostPixels = 50_000_000 // a phone's finest photograph; more is a trap for memory
	MostSide   = 16_384
	LeastSide  = 64
	HeadBytes  = 1 << 20 // in which the header must stand
)

// Picture is what the header of a file says.
type Picture struct {
	Type          string // its media type
	Width, Height int    // in pixels as stored, before a camera's note how it was held
}

// begins are beginnings of files that people choose by mistake, at an offset.
var begins = []struct {
	at         int
	text, name string
}{
	{0, "GIF8", "GIF"}, {8, "WEBP", "WebP"}, {4, "ftyp", "HEIC"}, {0, "%PDF", "PDF"}, {0, "<svg", "SVG"}, {0, "<?xml", "SVG"}, {0, "BM", "BMP"}, {0, "II*\x00", "TIFF"}, {0, "MM\x00*", "TIFF"},
}

// Check reads the header of a file from its first HeadBytes and holds it against
// the limits, so that nothing is decoded whole that is too large. size is that of
// the whole file in bytes. The error is an *Error.
func Check(head []byte, size int64) (Picture, error) {
	if size > MostBytes {
		return Picture{}, fail(FaultBytes, "found", mega(size), "limit", mega(MostBytes))
	}
	config, sort, err := image.DecodeConfig(bytes.NewReader(head))
	switch {
	case errors.Is(err, image.ErrFormat):
		return Picture{}, fail(FaultSort, "sort", sortOf(head))
	case errors.Is(err, io.ErrUnexpectedEOF), err != nil:
		return Picture{}, fail(FaultHeader)
	case sort != "png" && sort != "jpeg": // another decoder that somebody links in
		return Picture{}, fail(FaultSort, "sort", sort)
	}
	p := Picture{"image/" + sort, config.Width, config.Height}
	found := strconv.Itoa(p.Width) + " x " + strconv.Itoa(p.Height)
	switch {
	case p.Width > MostSide || p.Height > MostSide || p.Width*p.Height > MostPixels:
		return Picture{}, fail(FaultPixels, "found", found, "limit", strconv.Itoa(MostPixels/1_000_000))
	case p.Width < LeastSide || p.Height < LeastSide:
		return Picture{}, fail(FaultSmall, "found", found, "least", strconv.Itoa(LeastSide)+" x "+strconv.Itoa(LeastSide))
	}
	return p, nil
}

// sortOf names what a file is, "" where that is not known.
func sortOf(head []byte) string {
	text := bytes.TrimPrefix(head, []byte("\ufeff"))
	for _, b := range begins {
		if len(text) >= b.at+len(b.text) && string(text[b.at:b.at+len(b.text)]) == b.text {
			return b.name
		}
	}
	return ""
}

func mega(n int64) string { return strconv.FormatInt((n+1<<20-1)>>20, 10) + " MB" }
