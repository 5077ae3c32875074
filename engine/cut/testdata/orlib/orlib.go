// Package orlib reads the bin packing problems in this folder (see README.md):
// problems of others with answers of others, to test and time against.
package orlib

import (
	_ "embed"
	"fmt"
	"math"
	"strconv"
	"strings"
)

//go:embed binpack1.txt
var u120 string

//go:embed binpack5.txt
var t60 string

// Source of the problems and of the best known numbers of bins.
const Source = "E. Falkenauer, Journal of Heuristics 2 (1996), as carried by J. E. Beasley's OR-Library"

// Instance is one problem: pieces into the fewest bins. Lengths are in tenths
// of the file's unit, because t60 has one decimal.
type Instance struct {
	Name     string
	Capacity int
	Pieces   []int
	Best     int // bins, the best known when the file was made
}

// lower holds what is known today where the files' number is not the least: the
// OR-Library's own page on these files leaves both out of those it calls proven
// optimal.
var lower = map[string]int{"u120_08": 50, "u120_19": 49}

// lowerSource of those numbers.
const lowerSource = "M. Delorme, M. Iori and S. Martello, BPPLIB, Optimization Letters 12 (2018), solved"

// Least gives the least number of bins by others, and who says so.
func (in Instance) Least() (bins int, source string) {
	if n, ok := lower[in.Name]; ok {
		return n, fmt.Sprintf("%s; the file has %d, not proven", lowerSource, in.Best)
	}
	return in.Best, Source
}

// U120 gives the 20 problems of 120 pieces, T60 the 20 of 60 pieces in triplets.
func U120() ([]Instance, error) { return read("binpack1", u120) }

// T60 gives the 20 problems of 60 pieces.
func T60() ([]Instance, error) { return read("binpack5", t60) }

func read(file, text string) ([]Instance, error) {
	r := reader{file: file, fields: strings.Fields(text)}
	all := make([]Instance, r.whole())
	for i := range all {
		all[i].Name = r.next()
		all[i].Capacity = r.tenths()
		all[i].Pieces = make([]int, r.whole())
		all[i].Best = r.whole()
		for k := range all[i].Pieces {
			all[i].Pieces[k] = r.tenths()
		}
	}
	if r.err == nil && len(r.fields) > 0 {
		r.err = fmt.Errorf("%s: %d fields too many", file, len(r.fields))
	}
	return all, r.err
}

// reader takes fields one by one; after an error it gives zeros.
type reader struct {
	file   string
	fields []string
	err    error
}

func (r *reader) next() string {
	if len(r.fields) == 0 {
		r.fail("ends early")
		return ""
	}
	f := r.fields[0]
	r.fields = r.fields[1:]
	return f
}

func (r *reader) whole() int {
	n, err := strconv.Atoi(r.next())
	if err != nil || n < 0 || n > 10000 {
		r.fail("count expected")
		return 0
	}
	return n
}

func (r *reader) tenths() int {
	x, err := strconv.ParseFloat(r.next(), 64)
	if err != nil {
		r.fail("length expected")
	}
	return int(math.Round(10 * x))
}

func (r *reader) fail(what string) {
	if r.err == nil {
		r.err = fmt.Errorf("%s: %s, %d fields before the end", r.file, what, len(r.fields))
	}
}
