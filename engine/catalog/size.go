package catalog

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/trace"
)

// system is the way a size is named.
type system uint8

const (
	bare   system = iota // a number without a unit: what it means is the kind's business
	inch                 // nominal inches
	metric               // outside diameter in mm, or a hose's bore in mm
	dn                   // nominal diameter DN
)

// size is the name of a size as a number: millionths of an inch or of a
// millimetre, so that 1-1/32 and 1.03125 are one size.
type size struct {
	sys    system
	micros int64
}

func (s size) value() float64 { return float64(s.micros) / 1e6 }

// largestInch is the bare number up to which a size counts as inches when the
// kind does not tell: no inch pipe here is larger, no metric one smaller.
const largestInch = 12

// sizeSpelling writes fractions, inch marks and diameter signs in one way.
var sizeSpelling = strings.NewReplacer("½", " 1/2", "¼", " 1/4", "¾", " 3/4", "″", `"`, "”", `"`, "''", `"`, "⌀", "d", "ø", "d")

// parseSize reads "1-1/2", "1 1/2", "1½", "1.5", "1-1/2 in", `1-1/2"`, "d50",
// "50 mm", "DN50" and "50".
func parseSize(text string) (size, bool) {
	s := strings.ToLower(strings.TrimSpace(text))
	if len(s) > 24 {
		return size{}, false
	}
	s = sizeSpelling.Replace(s)
	sys := bare
	for _, p := range []struct {
		prefix string
		sys    system
	}{{"nps", inch}, {"dn", dn}, {"d", metric}} {
		if rest, ok := strings.CutPrefix(s, p.prefix); ok {
			s, sys = rest, p.sys
			break
		}
	}
	for _, p := range []struct {
		suffix string
		sys    system
	}{{"inches", inch}, {"inch", inch}, {"in.", inch}, {"in", inch}, {`"`, inch}, {"mm", metric}} {
		rest, ok := strings.CutSuffix(s, p.suffix)
		if !ok {
			continue
		}
		if sys != bare && sys != p.sys {
			return size{}, false
		}
		s, sys = rest, p.sys
		break
	}
	v, ok := mixedNumber(strings.TrimSpace(s))
	micros := int64(math.Round(v * 1e6))
	if !ok || v > 2000 || micros <= 0 {
		return size{}, false
	}
	return size{sys, micros}, true
}

// mixedNumber reads "2", "1.5", "3/4", "1-1/2" and "1 1/2".
func mixedNumber(s string) (float64, bool) {
	if num, den, ok := strings.Cut(s, "/"); ok {
		whole := 0.0
		if i := strings.LastIndexAny(num, "- "); i >= 0 {
			w, ok := digits(strings.TrimSpace(num[:i]))
			if !ok {
				return 0, false
			}
			whole, num = w, num[i+1:]
		}
		n, okN := digits(num)
		d, okD := digits(den)
		if !okN || !okD || d == 0 || n >= d {
			return 0, false
		}
		return whole + n/d, true
	}
	return digits(s)
}

// digits reads digits with at most one point; no sign, exponent or word.
func digits(s string) (float64, bool) {
	if s == "" || strings.Trim(s, "0123456789.") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil
}

// fraction is a part of an inch as sizes write it.
type fraction struct {
	micros int64
	text   string
}

var fractions = [...]fraction{{125000, "1/8"}, {250000, "1/4"}, {375000, "3/8"}, {500000, "1/2"}, {625000, "5/8"}, {750000, "3/4"}, {875000, "7/8"}}

// String prints the size as the tables do: "1-1/2", "d50", "DN50".
func (s size) String() string {
	plain := strconv.FormatFloat(s.value(), 'f', -1, 64)
	switch s.sys {
	case metric:
		return "d" + plain
	case dn:
		return "DN" + plain
	}
	whole, part := s.micros/1e6, s.micros%1e6
	i := slices.IndexFunc(fractions[:], func(f fraction) bool { return f.micros == part })
	switch {
	case i < 0:
		return plain
	case whole == 0:
		return fractions[i].text
	}
	return strconv.FormatInt(whole, 10) + "-" + fractions[i].text
}

// readSize reads a size where the kind uses the given system (bare: both are
// possible). A DN is turned into inches by the pipe tables; on metric pipe it
// is refused, because DN/OD 50 and DN/ID 50 are two pipes.
func (b *Book) readSize(text string, want system) (size, error) {
	s, ok := parseSize(text)
	if !ok {
		return size{}, fault(CodeSizeUnread, trace.Str("size", text))
	}
	switch s.sys {
	case dn:
		in, known := b.inchOfDN[s.micros]
		if want != inch || !known {
			return size{}, fault(CodeSizeDN, trace.Str("size", text))
		}
		return in, nil
	case bare:
		s.sys = want
		if want == bare {
			s.sys = inch
			if s.value() > largestInch {
				s.sys = metric
			}
		}
	}
	return s, nil
}

// twoSizes splits "2 x 1-1/2" into its two texts.
func twoSizes(text string) (first, second string, ok bool) {
	for _, sep := range []string{"×", "x", "X", " by "} {
		if a, c, cut := strings.Cut(text, sep); cut {
			return strings.TrimSpace(a), strings.TrimSpace(c), true
		}
	}
	return text, "", false
}

// sizeRange reads "1-1/2-3" as the two sizes 1-1/2 and 3: the one cut at which
// both sides are sizes and the first is the smaller.
func sizeRange(text string) (low, high float64, ok bool) {
	for i, r := range text {
		if r != '-' {
			continue
		}
		l, okL := mixedNumber(text[:i])
		h, okH := mixedNumber(text[i+1:])
		if okL && okH && l < h {
			return l, h, true
		}
	}
	v, ok := mixedNumber(text)
	return v, v, ok
}

// readSizes reads one size, or two as "2 x 1-1/2"; one size stands for both.
func (b *Book) readSizes(text string) (sizes [2]size, err error) {
	first, second, two := twoSizes(text)
	if sizes[0], err = b.readSize(first, bare); err != nil {
		return sizes, err
	}
	sizes[1] = sizes[0]
	if two {
		if sizes[1], err = b.readSize(second, bare); err != nil {
			return sizes, err
		}
	}
	if sizes[0].sys != sizes[1].sys {
		return sizes, fault(CodeSizeUnread, trace.Str("size", text))
	}
	return sizes, nil
}

// nominalInches gives the inch size that a size goes by in tables made for
// inch pipe: 1.5 for "1-1/2" and for d50.
func (b *Book) nominalInches(text string) (float64, error) {
	s, err := b.readSize(text, bare)
	if err != nil {
		return 0, err
	}
	return b.nominalOf(s)
}

func (b *Book) nominalOf(s size) (float64, error) {
	if n, ok := b.nominal[s]; ok {
		return n, nil
	}
	if s.sys == inch {
		return s.value(), nil
	}
	return 0, outside("nominal sizes", "size")
}
