package paper

import (
	"net/url"
	"strconv"
	"strings"

	qrcode "github.com/skip2/go-qrcode"

	"plashet/drawing"
)

// Stamp tells which state of the job a sheet was made from.
type Stamp struct {
	ID       string // of the job in a store; empty: it is a file
	Revision int    // 0: the job is a file that keeps none
	Digest   string // SHA-256 of the job's bytes, hexadecimal; may be empty
	Date     string // the day the sheet is made, year-month-day
	URL      string // where the job is shown; empty without a public address
}

// digits of the digest that a sheet shows and its code carries: enough that no
// two states of a job are taken for one another.
const digits = 16

// scheme begins a code that has no address.
const scheme = "plashet:job"

// Code is what the QR code of a page says.
type Code struct {
	ID       string // of the job in the store it was printed from; empty: none
	Job      string // its name, cut short
	Revision int    // 0: none
	Digest   string // its first digits
}

// text gives the code's text: the address with revision and digest, or where
// there is none the job's name with them.
func (s Stamp) text(name string) string {
	const most = 40 // letters of the name: a code of many letters is hard to read
	if r := []rune(name); len(r) > most {
		name = string(r[:most])
	}
	q := url.Values{}
	q.Set("r", strconv.Itoa(s.Revision))
	q.Set("d", s.short())
	if s.URL != "" {
		sep := "?"
		if strings.Contains(s.URL, "?") {
			sep = "&"
		}
		return s.URL + sep + q.Encode()
	}
	q.Set("n", name)
	if s.ID != "" {
		q.Set("j", s.ID)
	}
	return scheme + "?" + q.Encode()
}

func (s Stamp) short() string { return s.Digest[:min(digits, len(s.Digest))] }

// mostCode is how long a code may be: an address of the longest with what it
// carries.
const mostCode = 1000

// leastDigits is how much of a digest must be typed to tell two states apart.
const leastDigits = 8

// ReadCode reads what a page's code says, of either form, or the digits of the
// state as they stand at the foot of a page, typed with or without blanks; false
// where it is none of ours.
func ReadCode(text string) (Code, bool) {
	text = strings.TrimSpace(text)
	if len(text) > mostCode {
		return Code{}, false
	}
	if d := typedDigest(text); d != "" {
		return Code{Digest: d}, true
	}
	address, query, found := strings.Cut(text, "?")
	if !found {
		return Code{}, false
	}
	q, err := url.ParseQuery(query)
	if err != nil || !q.Has("r") || !q.Has("d") {
		return Code{}, false
	}
	r, err := strconv.Atoi(q.Get("r"))
	d := typedDigest(q.Get("d"))
	if err != nil || r < 0 || r > 1<<30 || d == "" && q.Get("d") != "" {
		return Code{}, false
	}
	c := Code{ID: q.Get("j"), Job: q.Get("n"), Revision: r, Digest: d}
	if _, id, of := strings.Cut(address, "/jobs/"); of && c.ID == "" {
		c.ID, _, _ = strings.Cut(id, "/")
	}
	return c, true
}

// typedDigest reads the digits of a digest; empty where it is none.
func typedDigest(text string) string {
	d := strings.Map(func(r rune) rune {
		if r == ' ' || r == '-' {
			return -1
		}
		return r
	}, strings.ToLower(text))
	if len(d) < leastDigits || len(d) > 64 || strings.Trim(d, "0123456789abcdef") != "" {
		return ""
	}
	return d
}

// codeWide is how wide a QR code is printed with the paper round it, codeTop
// where it begins, mm.
const (
	codeWide = 22.0
	codeTop  = 8.5 // from the page's upper edge
)

// qr draws the code of a page, its upper left corner at a point. A text too long
// for a code gives none.
func qr(text string, at drawing.Point) ([]drawing.Item, bool) {
	code, err := qrcode.New(text, qrcode.Medium)
	if err != nil {
		return nil, false
	}
	bits := code.Bitmap() // with the empty border of four modules that the standard asks for
	each := codeWide / float64(len(bits))
	var out []drawing.Item
	for y, row := range bits {
		for x := 0; x < len(row); x++ {
			if !row[x] {
				continue
			}
			from := x
			for x < len(row) && row[x] {
				x++
			}
			x0, x1 := at.X+each*float64(from), at.X+each*float64(x)
			y0 := at.Y + each*float64(y)
			out = append(out, drawing.Polygon{Points: []drawing.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y0 + each}, {X: x0, Y: y0 + each}}, Fill: drawing.Black})
		}
	}
	return out, true
}
