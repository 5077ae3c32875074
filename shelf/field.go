package shelf

import (
	"slices"
	"strings"
	"unicode"

	"plashet/engine/unit"
)

// Field is one of ours that a column of a file may be for.
type Field struct {
	Name    string
	Must    bool
	Example string
	Kind    unit.Kind // of a quantity: its bare numbers take a unit
	Heads   []string  // titles by which such a column goes, in small letters
}

// PriceFields are those of a price.
func PriceFields() []Field { return slices.Clone(priceFields) }

func exampleOf(list []Field, name string) string {
	for _, f := range list {
		if f.Name == name {
			return f.Example
		}
	}
	return ""
}

// Mapping says which column each of our fields is taken from, and how the cells
// are read.
type Mapping struct {
	Column   map[string]int    // by name of the field, from 0; a field that is missing has none
	Unit     map[string]string // what a bare number of a field is in, "gpm"; "" the usual one of System
	System   unit.System       // of bare numbers without a unit
	Comma    bool              // decimals have a comma
	Currency string            // of amounts without one
	Titled   bool
}

// Guess offers a mapping: a column whose title is one of a field's, and with
// it the unit in brackets behind the title ("Head (ft)", "Flow [l/h]",
// "Price EUR"). Nothing of it is more than a guess.
func Guess(t *Table, fields []Field) Mapping {
	m := Mapping{Column: map[string]int{}, Unit: map[string]string{}, Titled: t.Titled, Comma: t.comma()}
	if !t.Titled {
		return m
	}
	used := map[int]bool{}
	// Whole titles first, so that "unit price" is no unit.
	for _, whole := range []bool{true, false} {
		for _, f := range fields {
			if _, has := m.Column[f.Name]; has {
				continue
			}
			best, length := -1, 0
			for i, title := range t.Rows[0].Cells {
				name, in := parted(title)
				for _, h := range f.Heads {
					fits := name == h
					if !whole {
						fits = slices.Contains(strings.Fields(name), h)
					}
					if fits && !used[i] && (f.Kind == unit.KindNone || in == "" || fitsUnit(in, f.Kind)) && len(h) > length {
						best, length = i, len(h)
					}
				}
			}
			if best < 0 {
				continue
			}
			m.Column[f.Name], used[best] = best, true
			_, in := parted(t.Rows[0].Cells[best])
			switch {
			case f.Kind != unit.KindNone && in != "":
				m.Unit[f.Name] = in
			case f.Name == FieldPrice && m.Currency == "":
				if code := strings.ToUpper(in); listed(code) {
					m.Currency = code
				}
			}
		}
	}
	return m
}

// listed tells that a word is the code of a currency that we know of.
func listed(code string) bool {
	_, ok := unit.MinorUnit(code)
	return ok
}

// parted splits a title into its name in small letters and the unit in brackets
// behind it, or its last word where that is a currency or a known unit.
func parted(title string) (name, in string) {
	s := strings.TrimSpace(title)
	if i := strings.LastIndexAny(s, "([{"); i > 0 && strings.ContainsAny(s[i:], ")]}") {
		name, in = s[:i], strings.Trim(s[i:], "()[]{} ")
	} else if before, after, ok := strings.Cut(s, " in "); ok {
		name, in = before, after
	} else if i := strings.LastIndexByte(s, ' '); i > 0 && (listed(s[i+1:]) || someUnit(s[i+1:])) {
		name, in = s[:i], s[i+1:]
	} else {
		name = s
	}
	name = strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '#' && r != '.'
	}), " ")
	return name, strings.TrimSpace(in)
}

// someUnit tells that a word is a unit of what a pump's columns may hold.
func someUnit(word string) bool {
	for _, k := range []unit.Kind{unit.KindFlow, unit.KindHead, unit.KindPower, unit.KindVoltage, unit.KindCurrent} {
		if fitsUnit(word, k) {
			return true
		}
	}
	return false
}

// fitsUnit tells that a word is a unit of a kind.
func fitsUnit(word string, k unit.Kind) bool {
	r, err := unit.Parse("1 "+word, k, unit.US)
	return err == nil && !r.Bare
}

// comma guesses that the decimals have a comma: more cells like 3,15 than like
// 3.15, or none of either in a file that is parted by semicolons.
func (t *Table) comma() bool {
	commas, points := 0, 0
	for _, r := range t.Body() {
		for _, c := range r.Cells {
			if !looksNumber(c) {
				continue
			}
			i := strings.LastIndexAny(c, ",.")
			if i < 0 || t.Comma == ',' && c[i] == ',' && len(digits(c[i+1:])) == 3 {
				continue
			}
			switch n := len(digits(c[i+1:])); {
			case n == 0 || n == 3: // the end of a sentence, or thousands
			case c[i] == ',':
				commas++
			default:
				points++
			}
		}
	}
	return commas > points
}

// number makes a cell's number one with a decimal point, by what the decimals
// are said to have: with a comma, points and blanks between groups of three go
// and the comma becomes a point; with a point, commas and blanks between groups
// of three go. Three decimals get a fourth, lest they be taken for thousands
// further on. False where a mark is left that stands for neither.
func number(cell string, comma bool) (string, bool) {
	group, mark := byte(','), byte('.')
	if comma {
		group, mark = '.', ','
	}
	var b strings.Builder
	s := strings.NewReplacer("\u00a0", " ", "\u202f", " ", "’", "'").Replace(cell)
	ok := true
	for i := 0; i < len(s); i++ {
		c := s[i]
		before := i > 0 && isDigit(s[i-1])
		after := digits(s[i+1:])
		switch {
		case (c == group || c == ' ') && before && len(after) == 3 && !strings.HasPrefix(s[i+1+3:], "/") && !pastMark(s[:i], mark):
			continue
		case c == mark && (before || after != ""):
			b.WriteByte('.')
			if len(after) == 3 { // a fourth, or it would be read as thousands
				b.WriteString(after + "0")
				i += 3
			}
			continue
		case c == group && before && after != "":
			ok = false
		}
		b.WriteByte(c)
	}
	return b.String(), ok
}

// pastMark tells that the number that a text ends with has its decimal mark
// already.
func pastMark(s string, mark byte) bool {
	for i := len(s) - 1; i >= 0 && (isDigit(s[i]) || s[i] == mark); i-- {
		if s[i] == mark {
			return true
		}
	}
	return false
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }
