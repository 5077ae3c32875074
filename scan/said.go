package scan

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// reader hands out the bits of the data.
type reader struct {
	data []byte
	at   int
}

func (r *reader) left() int { return 8*len(r.data) - r.at }

func (r *reader) take(n int) int {
	v := 0
	for range n {
		v = v<<1 | int(r.data[r.at/8]>>(7-r.at%8)&1)
		r.at++
	}
	return v
}

// letters are those that have a short form.
const letters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"

// said puts the segments of the data together; false where one is of a kind that
// is not read, or is cut short.
func said(data []byte, version int) (string, bool) {
	r := &reader{data: data}
	size := func(small, middle int) int { // bits of a count
		if version < 10 {
			return small
		}
		return middle
	}
	var b strings.Builder
	for r.left() >= 4 {
		switch r.take(4) {
		case 0:
			return b.String(), b.Len() > 0 && utf8.ValidString(b.String())
		case 1:
			if !r.figures(&b, size(10, 12)) {
				return "", false
			}
		case 2:
			if !r.short(&b, size(9, 11)) {
				return "", false
			}
		case 4:
			n := size(8, 16)
			if r.left() < n {
				return "", false
			}
			count := r.take(n)
			if r.left() < 8*count {
				return "", false
			}
			for range count {
				b.WriteByte(byte(r.take(8))) //nolint:gosec // eight bits
			}
		case 7: // which letters are meant: they are taken as UTF-8
			if r.left() < 8 || r.take(8) > 127 {
				return "", false
			}
		default:
			return "", false
		}
	}
	return b.String(), b.Len() > 0 && utf8.ValidString(b.String())
}

// figures reads a segment of figures, three in ten bits.
func (r *reader) figures(b *strings.Builder, bits int) bool {
	if r.left() < bits {
		return false
	}
	for n := r.take(bits); n > 0; n -= 3 {
		k := min(n, 3)
		if r.left() < 3*k+1 {
			return false
		}
		v := strconv.Itoa(r.take(3*k + 1))
		if len(v) > k {
			return false
		}
		b.WriteString(strings.Repeat("0", k-len(v)) + v)
	}
	return true
}

// short reads a segment of letters that have a short form, two in eleven bits.
func (r *reader) short(b *strings.Builder, bits int) bool {
	if r.left() < bits {
		return false
	}
	for n := r.take(bits); n > 0; n -= 2 {
		if n == 1 {
			if r.left() < 6 {
				return false
			}
			v := r.take(6)
			if v >= len(letters) {
				return false
			}
			b.WriteByte(letters[v])
			break
		}
		if r.left() < 11 {
			return false
		}
		v := r.take(11)
		if v >= len(letters)*len(letters) {
			return false
		}
		b.WriteByte(letters[v/len(letters)])
		b.WriteByte(letters[v%len(letters)])
	}
	return true
}
