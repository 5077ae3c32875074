package shelf

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"plashet/engine/trace"
)

// The most that is read of a file.
const (
	MostBytes   = 4 << 20
	MostRows    = 5000
	MostColumns = 100
	MostCell    = 2000 // bytes
)

// Letters is how the bytes of a file were read as letters.
type Letters string

// The letters. All but UTF8 without a mark at its start are told on the screen;
// Western is a guess.
const (
	UTF8    Letters = "utf-8"
	UTF16   Letters = "utf-16"
	Western Letters = "western" // Windows-1252, the usual one of office programs in the West
)

// Table is a file of rows as read, with what was guessed to read it.
type Table struct {
	Rows    []Row
	Comma   rune // what parts the cells: comma, semicolon, tab or bar
	Letters Letters
	Titled  bool // a guess: the first row names the columns
}

// Row is one row and its line in the file, counted from 1.
type Row struct {
	Line  int
	Cells []string
}

// Titles gives the names of the columns; without a row of titles their numbers.
func (t *Table) Titles() []string {
	titles := make([]string, t.Columns())
	for i := range titles {
		titles[i] = strconv.Itoa(i + 1)
		if t.Titled && i < len(t.Rows[0].Cells) && t.Rows[0].Cells[i] != "" {
			titles[i] = t.Rows[0].Cells[i]
		}
	}
	return titles
}

// Columns is the number of the widest row's cells.
func (t *Table) Columns() int {
	n := 0
	for _, r := range t.Rows {
		n = max(n, len(r.Cells))
	}
	return n
}

// Body gives the rows behind the titles.
func (t *Table) Body() []Row {
	if t.Titled && len(t.Rows) > 0 {
		return t.Rows[1:]
	}
	return t.Rows
}

// ReadTable reads a file of comma-separated values (RFC 4180, with any of four
// separators): cells lose the blanks at their ends and the apostrophe that
// guards a formula, rows without a value are passed over. The separator is the
// one by which the first rows fall into the same number of cells, most of them.
// A fault means that nothing was read.
func ReadTable(data []byte) (*Table, *trace.Fault) {
	if len(data) > MostBytes {
		f := fault(FaultLarge, 0, "limit", strconv.Itoa(MostBytes>>20)+" MB")
		return nil, &f
	}
	text, letters, f := decode(data)
	if f != nil {
		return nil, f
	}
	t := &Table{Letters: letters, Comma: separator(text)}
	if f := t.read(text); f != nil {
		return nil, f
	}
	if len(t.Rows) == 0 {
		f := fault(FaultEmpty, 0)
		return nil, &f
	}
	t.Titled = titled(t.Rows[0].Cells)
	return t, nil
}

// read takes the rows.
func (t *Table) read(text string) *trace.Fault {
	r := csv.NewReader(strings.NewReader(text))
	r.Comma, r.FieldsPerRecord, r.ReuseRecord = t.Comma, -1, true
	r.LazyQuotes = lazy(text, t.Comma) // 7-1/2" is no quotation
	for {
		record, err := r.Read()
		if errors.Is(err, io.EOF) {
			return nil
		}
		var bad *csv.ParseError
		if errors.As(err, &bad) {
			f := fault(FaultQuote, bad.StartLine, "line", strconv.Itoa(bad.StartLine))
			return &f
		}
		line, _ := r.FieldPos(0)
		if len(record) > MostColumns {
			f := fault(FaultColumns, line, "line", strconv.Itoa(line), "limit", strconv.Itoa(MostColumns))
			return &f
		}
		row := Row{Line: line, Cells: make([]string, len(record))}
		filled := false
		for i, cell := range record {
			if len(cell) > MostCell {
				f := fault(FaultCell, line, "line", strconv.Itoa(line), "limit", strconv.Itoa(MostCell))
				return &f
			}
			row.Cells[i] = unguarded(strings.TrimSpace(cell))
			filled = filled || row.Cells[i] != ""
		}
		if !filled {
			continue
		}
		if len(t.Rows) > MostRows {
			f := fault(FaultRows, line, "limit", strconv.Itoa(MostRows))
			return &f
		}
		t.Rows = append(t.Rows, row)
	}
}

// lazy tells that quotation marks stand inside cells that are not quoted, as
// inch marks do; the strict reading is tried first.
func lazy(text string, comma rune) bool {
	r := csv.NewReader(strings.NewReader(text))
	r.Comma, r.FieldsPerRecord, r.ReuseRecord = comma, -1, true
	for {
		if _, err := r.Read(); errors.Is(err, io.EOF) {
			return false
		} else if err != nil {
			return errors.Is(err, csv.ErrBareQuote)
		}
	}
}

// sorts are beginnings of files that are no text, and their names.
var sorts = []struct{ begins, name string }{
	{"PK\x03\x04", "spreadsheet or zip"},
	{"\xd0\xcf\x11\xe0", "spreadsheet"},
	{"%PDF", "PDF"},
	{"\x89PNG", "picture"},
	{"\xff\xd8\xff", "picture"},
	{"GIF8", "picture"},
	{"\x1f\x8b", "zip"},
	{"SQLite format 3", "database"},
}

// decode turns bytes into text.
func decode(data []byte) (string, Letters, *trace.Fault) {
	binary := func(sort string) (string, Letters, *trace.Fault) {
		f := fault(FaultBinary, 0, "sort", sort)
		return "", "", &f
	}
	for _, s := range sorts {
		if bytes.HasPrefix(data, []byte(s.begins)) {
			return binary(s.name)
		}
	}
	var text string
	letters := UTF8
	switch {
	case bytes.HasPrefix(data, []byte("\xff\xfe")), bytes.HasPrefix(data, []byte("\xfe\xff")):
		letters, text = UTF16, wide(data)
	case utf8.Valid(data):
		text = strings.TrimPrefix(string(data), "\ufeff")
	default:
		letters, text = Western, western(data)
	}
	for _, r := range text {
		if r < ' ' && r != '\t' && r != '\n' && r != '\r' || r == 0x7f {
			return binary("other")
		}
	}
	// A line that ends with CR alone, as old programs wrote it, ends here too.
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
	return text, letters, nil
}

// wide reads UTF-16 with its mark.
func wide(data []byte) string {
	little := data[0] == 0xff
	units := make([]uint16, 0, len(data)/2)
	for i := 2; i+1 < len(data); i += 2 {
		if little {
			units = append(units, uint16(data[i])|uint16(data[i+1])<<8)
		} else {
			units = append(units, uint16(data[i])<<8|uint16(data[i+1]))
		}
	}
	return string(utf16.Decode(units))
}

// high are the letters of Windows-1252 from 0x80 to 0x9f; the rest of it is
// Latin-1 (Unicode Consortium, mapping table CP1252; from memory). The five
// that it does not have become the sign for what cannot be read.
var high = [32]rune{
	'€', 0xfffd, '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', 0xfffd, 'Ž', 0xfffd,
	0xfffd, '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', 0xfffd, 'ž', 'Ÿ',
}

func western(data []byte) string {
	var b strings.Builder
	b.Grow(len(data) + len(data)/8)
	for _, c := range data {
		r := rune(c)
		if c >= 0x80 && c < 0xa0 {
			r = high[c-0x80]
		}
		b.WriteRune(r)
	}
	return b.String()
}

// separators in the order in which they win when they part alike.
var separators = []rune{'\t', ';', ',', '|'}

// sampled is how many rows the separator is guessed from.
const sampled = 20

// separator guesses what parts the cells: of those by which most of the first
// rows have the same number of cells, two or more, the one with most cells.
func separator(text string) rune {
	best, score := ',', 0
	for _, sep := range separators {
		r := csv.NewReader(strings.NewReader(text))
		r.Comma, r.FieldsPerRecord, r.LazyQuotes, r.ReuseRecord = sep, -1, true, true
		counts := map[int]int{}
		rows := 0
		for range sampled {
			record, err := r.Read()
			if err != nil {
				break
			}
			counts[len(record)]++
			rows++
		}
		for cells, n := range counts {
			if s := n*1000/max(rows, 1)*100 + cells; cells > 1 && s > score {
				best, score = sep, s
			}
		}
	}
	return best
}

// titled guesses that the first row names the columns: no cell of it is a
// number, and none stands twice.
func titled(cells []string) bool {
	seen := map[string]bool{}
	for _, c := range cells {
		if c == "" {
			continue
		}
		if looksNumber(c) || seen[c] {
			return false
		}
		seen[c] = true
	}
	return true
}

// looksNumber tells that a cell begins like a number: a digit, perhaps behind a
// sign or a currency's.
func looksNumber(s string) bool {
	s = strings.TrimLeft(s, "+-$€£ .,")
	return s != "" && s[0] >= '0' && s[0] <= '9'
}
