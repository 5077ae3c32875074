// Package table sets a job's answer out as rows that other programs can reckon
// with: materials, pieces to cut, sticks, levels, start and stop through time,
// and what the figures rest on. It computes nothing and writes no bytes
// (render/csv, render/xlsx). Numbers stand bare in the job's units, which their
// column or the column beside them names, and are not rounded beyond twelve
// digits; a number that is not known leaves its cell empty.
package table

import (
	"math"
	"strconv"

	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/words"
)

// Cell is a text or a number.
type Cell struct {
	Text   string
	Number float64
	Is     bool // it is a number; otherwise a text, or empty
}

// Table is rows under a head.
type Table struct {
	Name  string // for a file: "materials"
	Title string // for a person
	Head  []string
	Rows  [][]Cell
}

// Names of the tables.
const (
	Materials = "materials"
	Cuts      = "cuts"
	Sticks    = "sticks"
	Levels    = "levels"
	Times     = "start-and-stop"
	Basis     = "basis"
)

// Names lists the tables in their order.
func Names() []string { return []string{Materials, Cuts, Sticks, Levels, Times, Basis} }

// Input is what is set out.
type Input struct {
	Job    *job.Job
	Result *design.Result
	Faults []trace.Fault // of reading the job
	Say    *words.Language
	Digest string // of the job's bytes
}

// Make gives a table; one that the answer has nothing for has no rows. An
// unknown name gives none.
func Make(in Input, name string) (Table, bool) {
	fill, ok := map[string]func(*maker){
		Materials: (*maker).materials, Cuts: (*maker).cuts, Sticks: (*maker).sticks,
		Levels: (*maker).levels, Times: (*maker).times, Basis: (*maker).basis,
	}[name]
	if !ok {
		return Table{}, false
	}
	m := &maker{Input: in, t: Table{Name: name, Title: in.Say.Word("table.title." + name)}}
	fill(m)
	return m.t, true
}

// maker fills one table.
type maker struct {
	Input
	t Table
}

func (m *maker) units() unit.System { return m.Result.Units }

// plain are the units for a cell that holds one figure: with a decimal point
// whatever the job says, for programs read it too. Sentences have the job's marks.
func (m *maker) plain() unit.System { return m.units().Base() }

// head sets the columns by their words; a column of numbers of one kind has its
// unit behind.
func (m *maker) head(columns ...column) {
	for _, c := range columns {
		text := m.Say.Word("table." + c.word)
		if c.unit != "" {
			text += ", " + c.unit
		}
		m.t.Head = append(m.t.Head, text)
	}
}

type column struct{ word, unit string }

func (m *maker) of(word string, k unit.Kind) column { return column{word, k.UnitName(m.units())} }

func (m *maker) row(cells ...Cell) { m.t.Rows = append(m.t.Rows, cells) }

func text(s string) Cell { return Cell{Text: words.Plain(s)} }

func (m *maker) word(code string) Cell { return text(m.Say.Word(code)) }

// yes writes a word where something is so, and nothing where it is not.
func (m *maker) yes(so bool) Cell {
	if !so {
		return Cell{}
	}
	return m.word("table.yes")
}

// number is a bare number; what is not finite leaves the cell empty.
func number(x float64) Cell {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return Cell{}
	}
	return Cell{Number: tidy(x), Is: true}
}

func count(n int) Cell { return number(float64(n)) }

// tidy takes the dust of reckoning off: twelve digits are far more than any
// figure of a job has.
func tidy(x float64) float64 {
	t, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 12, 64), 64)
	if err != nil {
		return x
	}
	if t == 0 {
		return 0 // without sign
	}
	return t
}

// value is a value in the job's units; a bound is no figure and leaves the cell
// empty.
func (m *maker) value(v unit.Value) Cell {
	if v.Kind == unit.KindNone || v.Bound != unit.Exact {
		return Cell{}
	}
	return number(v.In(m.units()))
}

func of[Q unit.Quantity](m *maker, q Q, k unit.Kind) Cell { return m.value(unit.Of(q, k)) }

// when is of where something holds, and empty otherwise.
func when[Q unit.Quantity](m *maker, holds bool, q Q, k unit.Kind) Cell {
	if !holds {
		return Cell{}
	}
	return of(m, q, k)
}
