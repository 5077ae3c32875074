// Package xlsx writes tables of package table as one spreadsheet file (Office
// Open XML, ISO/IEC 29500), a sheet for each table, by the library excelize.
// Texts are written as texts, never as formulas; one that a program could take
// for a formula when it is edited is marked so that it stays a text. The same
// tables always give the same bytes.
package xlsx

import (
	"archive/zip"
	"bytes"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"plashet/table"
)

// Widths of columns, in characters.
const (
	narrow = 11.0
	broad  = 60.0
)

// styles are the IDs of the cell styles used.
type styles struct{ head, plain, quoted int }

// Write writes the tables. The errors are the library's and the writer's.
func Write(w io.Writer, tables []table.Table) (err error) {
	f := excelize.NewFile()
	defer func() {
		if shut := f.Close(); err == nil {
			err = shut
		}
	}()
	if err := f.SetDocProps(&excelize.DocProperties{Creator: "Plashet", LastModifiedBy: "Plashet", Created: "2000-01-01T00:00:00Z", Modified: "2000-01-01T00:00:00Z"}); err != nil {
		return err
	}
	s, err := newStyles(f)
	if err != nil {
		return err
	}
	for i := range tables {
		name := tables[i].Title
		if i == 0 {
			err = f.SetSheetName("Sheet1", name)
		} else {
			_, err = f.NewSheet(name)
		}
		if err != nil {
			return err
		}
		if err := sheet(f, name, &tables[i], s); err != nil {
			return err
		}
	}
	b, err := f.WriteToBuffer()
	if err != nil {
		return err
	}
	return sorted(w, b.Bytes())
}

// sorted writes the parts of a file anew in the order of their names, which the
// library leaves to chance.
func sorted(w io.Writer, data []byte) error {
	r, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return err
	}
	slices.SortFunc(r.File, func(a, b *zip.File) int { return strings.Compare(a.Name, b.Name) })
	z := zip.NewWriter(w)
	for _, f := range r.File {
		if err := z.Copy(f); err != nil {
			return err
		}
	}
	return z.Close()
}

func newStyles(f *excelize.File) (s styles, err error) {
	if s.head, err = f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}, Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}}); err != nil {
		return s, err
	}
	top := &excelize.Alignment{Vertical: "top", WrapText: true}
	if s.plain, err = f.NewStyle(&excelize.Style{Alignment: top}); err != nil {
		return s, err
	}
	// The same with another alignment, so that it is a style of its own to mark.
	s.quoted, err = f.NewStyle(&excelize.Style{Alignment: &excelize.Alignment{Vertical: "top", WrapText: true, Horizontal: "left"}})
	if err == nil {
		f.Styles.CellXfs.Xf[s.quoted].QuotePrefix = new(true)
	}
	return s, err
}

// sheet writes one table: its head stays in sight when rows are scrolled.
func sheet(f *excelize.File, name string, t *table.Table, s styles) error {
	w, err := f.NewStreamWriter(name)
	if err != nil {
		return err
	}
	for i := range t.Head {
		if err := w.SetColWidth(i+1, i+1, width(t, i)); err != nil {
			return err
		}
	}
	if err := w.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}); err != nil {
		return err
	}
	line := make([]any, 0, len(t.Head))
	for _, h := range t.Head {
		line = append(line, excelize.Cell{StyleID: s.head, Value: h})
	}
	if err := w.SetRow("A1", line); err != nil {
		return err
	}
	for i, row := range t.Rows {
		line = line[:0]
		for _, c := range row {
			line = append(line, cell(c, s))
		}
		at, err := excelize.CoordinatesToCellName(1, i+2)
		if err != nil {
			return err
		}
		if err := w.SetRow(at, line); err != nil {
			return err
		}
	}
	return w.Flush()
}

// cell gives what the library writes; nil is an empty cell.
func cell(c table.Cell, s styles) any {
	switch {
	case c.Is:
		return excelize.Cell{StyleID: s.plain, Value: c.Number}
	case c.Text == "":
		return nil
	case table.Risky(c.Text):
		return excelize.Cell{StyleID: s.quoted, Value: c.Text}
	}
	return excelize.Cell{StyleID: s.plain, Value: c.Text}
}

// width fits a column to its words, within bounds.
func width(t *table.Table, i int) float64 {
	most := 0
	for word := range strings.FieldsSeq(t.Head[i]) {
		most = max(most, utf8.RuneCountInString(word))
	}
	for _, row := range t.Rows {
		most = max(most, utf8.RuneCountInString(row[i].Text))
	}
	return min(max(narrow, float64(most)+2), broad)
}
