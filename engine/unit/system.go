package unit

// System is the set of units a job speaks, and with them the marks that its
// numbers are written with, so that both go everywhere together. Ask it with
// Is: a plain == sees the marks too.
type System uint16

// The two systems, with a decimal point and commas between thousands. US means
// US customary units and US gallons.
const (
	US System = iota
	Metric
)

// The bits of a System above its units.
const (
	baseBits   System = 1
	commaBit   System = 1 << 1 // a decimal comma
	saidBit    System = 1 << 2 // the job says its decimal mark
	groupShift        = 3      // the place of the mark between thousands in groups
)

// Marks are how a number is written: the mark before its decimals, and the one
// between its thousands.
type Marks struct {
	Decimal rune // Point or Comma
	Group   rune // NoGroup, or one of the marks; never the same as Decimal
	Said    bool // the job says so: what is typed is read by it
}

// The marks. The space between thousands is narrow and does not break, as CLDR
// has it.
const (
	NoGroup    rune = 0
	Point      rune = '.'
	Comma      rune = ','
	Space      rune = '\u202f'
	Apostrophe rune = '\''
)

// groups are the marks between thousands by their bits. The first one is a comma
// beside a decimal point and a point beside a decimal comma.
var groups = [...]rune{Comma, NoGroup, Space, Apostrophe, Point}

// Is tells whether these are the units of base, whatever the marks.
func (s System) Is(base System) bool { return s&baseBits == base&baseBits }

// Base gives the units alone.
func (s System) Base() System { return s & baseBits }

// In gives the units of base with the marks of s.
func (s System) In(base System) System { return s&^baseBits | base&baseBits }

// Typed is the system as a text has to be written in it that is to be read again:
// where the job does not say its marks, only a decimal point is safe.
func (s System) Typed() System {
	if s&saidBit == 0 {
		return s.Base()
	}
	return s
}

// Valid tells that s is a system with marks, and no other number.
func (s System) Valid() bool { return s == s.With(s.Marks()) }

// With gives the units with other marks. A mark between thousands that would be
// the decimal mark too is left out.
func (s System) With(m Marks) System {
	s = s.Base()
	if m.Decimal == Comma {
		s |= commaBit
	}
	if m.Said {
		s |= saidBit
	}
	group := m.Group
	switch {
	case group == m.Decimal || group == Point && m.Decimal != Comma:
		group = NoGroup
	case group == Point && m.Decimal == Comma, group == Comma:
		return s // the usual one
	}
	for i, g := range groups {
		if g == group {
			s |= System(i) << groupShift
		}
	}
	return s
}

// Marks gives the marks that numbers are written with.
func (s System) Marks() Marks {
	m := Marks{Decimal: Point, Group: Comma, Said: s&saidBit != 0}
	if i := int(s >> groupShift); i < len(groups) {
		m.Group = groups[i]
	}
	if s&commaBit != 0 {
		m.Decimal = Comma
		if m.Group == Comma {
			m.Group = Point
		}
	}
	return m
}

// usual tells that a number as this package makes it is written already.
func (m Marks) usual() bool { return m.Decimal != Comma && m.Group == Comma }

// Write puts the marks into a number with a decimal point and commas between
// thousands. Marks that do not stand between two digits stay.
func (m Marks) Write(number string) string { return string(m.append(nil, []byte(number))) }

func (m Marks) append(dst, number []byte) []byte {
	if m.usual() {
		return append(dst, number...)
	}
	for i, c := range number {
		inside := i > 0 && i+1 < len(number) && isDigit(number[i-1]) && isDigit(number[i+1])
		switch {
		case c == '.' && inside:
			if m.Decimal == Comma {
				c = ','
			}
			dst = append(dst, c)
		case c == ',' && inside:
			if m.Group != NoGroup {
				dst = append(dst, string(m.Group)...)
			}
		default:
			dst = append(dst, c)
		}
	}
	return dst
}

// plain turns a text as people of these marks type it into one with a decimal
// point, of the same length, so that places in it stay: a decimal comma and a
// point change places where the job says its marks, an apostrophe between
// thousands becomes a space.
func (m Marks) plain(text string) string {
	b := []byte(text)
	if m.Said && m.Decimal == Comma {
		for i, c := range b {
			if c != '.' && c != ',' || i+1 == len(b) || !isDigit(b[i+1]) {
				continue
			}
			if i > 0 && !isDigit(b[i-1]) && !isLead(b[i-1]) {
				continue
			}
			b[i] = '.' + ',' - c
		}
	}
	if m.Group == Apostrophe {
		return spaced(string(b))
	}
	return string(b)
}

// isLead tells that a decimal mark may be the first of a number behind this.
func isLead(c byte) bool { return c == ' ' || c == '-' || c == '+' || c == '\t' }

// spaced makes spaces of apostrophes between thousands, of the same length: a
// thin one of the typographer's.
func spaced(text string) string {
	b := []byte(text)
	for i := 1; i < len(b); i++ {
		var n int
		switch {
		case b[i] == '\'':
			n = 1
		case i+3 <= len(b) && string(b[i:i+3]) == "’":
			n = 3
		default:
			continue
		}
		digits := 0
		for i+n+digits < len(b) && isDigit(b[i+n+digits]) {
			digits++
		}
		if !isDigit(b[i-1]) || digits != 3 {
			continue
		}
		if n == 1 {
			b[i] = ' '
		} else {
			copy(b[i:], "\u2009")
		}
	}
	return string(b)
}
