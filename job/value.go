package job

import (
	"errors"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// text reads a text field. An empty text is a field left empty.
func (d *decoder) text(n *node, fd *field, v reflect.Value) {
	if n.kind != '"' {
		d.add(n.at, wrong(n, CodeWantText), trace.Str("found", d.typed(n)), trace.Str("example", fd.example(d.system)))
		return
	}
	if n.text == "" {
		d.empty(n, fd)
		return
	}
	if m := fd.checkText(n.text); m != nil {
		d.add(n.at, m.Code, m.Args...)
		return
	}
	v.SetString(n.text)
}

// empty notes a fault where a field that must be there was left empty.
func (d *decoder) empty(n *node, fd *field) {
	if fd.must {
		d.lack(n.at, fd)
	}
}

// checkText holds a text against the field's words and limits.
func (f *field) checkText(s string) *trace.Message {
	limit := MaxRunes
	if f.name == "name" {
		limit = MaxName
	}
	if m := checkLength(s, limit); m != nil {
		return m
	}
	found := func() trace.Arg { return trace.Str("found", snippet(s)) }
	switch {
	case len(f.words) > 0 && !slices.Contains(f.words, s):
		known := trace.Str("known", strings.Join(f.words, ", "))
		if near := nearest(s, f.words); near != "" {
			return &trace.Message{Code: CodeWordNear, Args: []trace.Arg{found(), trace.Str("near", near), known}}
		}
		return &trace.Message{Code: CodeWord, Args: []trace.Arg{found(), known}}
	case f.name == "name":
		if strings.TrimSpace(s) != s || !printable(s) {
			return &trace.Message{Code: CodeNameSpace, Args: []trace.Arg{found()}}
		}
	case f.name == "date" && !validDate(s):
		return &trace.Message{Code: CodeDate, Args: []trace.Arg{found(), trace.Str("example", f.eg)}}
	case f.name == "currency" && !validCurrency(s):
		return &trace.Message{Code: CodeCurrency, Args: []trace.Arg{found(), trace.Str("example", f.eg)}}
	}
	return nil
}

// printable tells that a name holds signs that can be seen only: letters, marks,
// figures, pictures, blanks. The joiners that emoji and the letters of some
// languages are put together with stand between two signs beyond ASCII, and the
// tags of a flag behind one: elsewhere they would make two names look alike.
func printable(s string) bool {
	list := []rune(s)
	beyond := func(i int) bool { return i >= 0 && i < len(list) && list[i] > unicode.MaxASCII && !joins(list[i]) }
	for i, r := range list {
		switch {
		case unicode.IsPrint(r):
		case joins(r) && beyond(i-1) && beyond(i+1):
		case tags(r) && i > 0 && (beyond(i-1) || tags(list[i-1])):
		default:
			return false
		}
	}
	return true
}

// joins tells a zero-width joiner or non-joiner.
func joins(r rune) bool { return r == '\u200d' || r == '\u200c' }

// tags tells one of the tags that spell which flag is meant.
func tags(r rune) bool { return r >= 0xe0020 && r <= 0xe007f }

func checkLength(s string, limit int) *trace.Message {
	if n := utf8.RuneCountInString(s); n > limit {
		return &trace.Message{Code: CodeLong, Args: []trace.Arg{
			trace.Str("count", strconv.Itoa(n)), trace.Str("limit", strconv.Itoa(limit)),
		}}
	}
	return nil
}

// validDate tells whether a text is a day of the Gregorian calendar written
// year-month-day (ISO 8601).
func validDate(s string) bool {
	if len(s) != 10 || s[4] != '-' || s[7] != '-' || strings.ContainsRune(s, '+') || strings.Count(s, "-") != 2 {
		return false
	}
	y, errY := strconv.Atoi(s[:4])
	m, errM := strconv.Atoi(s[5:7])
	day, errD := strconv.Atoi(s[8:])
	if errY != nil || errM != nil || errD != nil || y < 1 || m < 1 || m > 12 || day < 1 {
		return false
	}
	days := [...]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}[m-1]
	if m == 2 && y%4 == 0 && (y%100 != 0 || y%400 == 0) {
		days = 29
	}
	return day <= days
}

func validCurrency(s string) bool {
	return len(s) == 3 && !strings.ContainsFunc(s, func(r rune) bool { return r < 'A' || r > 'Z' })
}

// amount reads a sum of money.
func (d *decoder) amount(n *node, fd *field, v reflect.Value) {
	if n.kind != '"' && n.kind != '0' {
		d.add(n.at, wrong(n, CodeWantMoney), trace.Str("found", d.typed(n)), trace.Str("example", fd.example(d.system)))
		return
	}
	if n.text == "" {
		d.empty(n, fd)
		return
	}
	if m := fd.checkMoney(Money{Text: n.text, Bare: n.kind == '0'}, d.style); m != nil {
		d.add(n.at, m.Code, m.Args...)
		return
	}
	v.Set(reflect.ValueOf(Money{Text: n.text, Bare: n.kind == '0'}))
}

// checkMoney tells whether an amount can be read. A job that does not say its
// currency has its prices in whatever the crew reckons in; their figures are
// still checked.
func (f *field) checkMoney(m Money, st unit.Style) *trace.Message {
	if long := checkLength(m.Text, unit.MaxText); long != nil {
		return long
	}
	said := st.Currency != ""
	if !said {
		st.Currency = noCurrency
	}
	sum, err := m.Amount(st)
	pe, ok := errors.AsType[*unit.ParseError](err)
	if ok && !said && pe.Code == unit.CodeCurrency && isCurrency(pe.Found) {
		sum, err = st.Parse(strings.Replace(m.Text, pe.Found, "", 1))
		pe, ok = errors.AsType[*unit.ParseError](err)
	}
	if ok {
		fault := parseFault(pe, m.Text, typedExample(f.eg, st), st.Marks)
		if pe.Code == unit.CodeAmbiguous {
			twoWays(&fault, pe.Found, m.Text, st.Said && st.Decimal == unit.Comma, func(t string) (string, bool) {
				sum, err := st.Parse(t)
				return sum.Amount.String(), err == nil
			})
		}
		return &fault
	}
	if sum.Amount.IsNegative() {
		return &trace.Message{Code: CodeMoneyBelow, Args: []trace.Arg{trace.Str("found", snippet(m.Text)), trace.Str("example", typedExample(f.eg, st))}}
	}
	return nil
}

// typedExample is an amount as it may be typed in a job of that style.
func typedExample(eg string, st unit.Style) string {
	own, err := st.Parse(st.Write(eg))
	plain, bad := unit.ParseMoney(eg, pointCurrency)
	if st.Said || err == nil && bad == nil && own.Amount.Equal(plain.Amount) {
		return st.Write(eg)
	}
	return eg
}

// isCurrency tells whether a text could name a currency, by code or by sign.
func isCurrency(s string) bool {
	return validCurrency(s) || s == "kr" || (s != "" && !strings.ContainsFunc(s, func(r rune) bool { return !unicode.Is(unicode.Sc, r) }))
}
