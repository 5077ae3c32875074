package main

import (
	"fmt"
	"io"
	"strings"
)

// shelves are how many pumps stand on the shelf in the rows of the table.
var shelves = []string{"10", "100", "1000", "10000"}

// writeSize makes the table of how the search over a shelf grows, from what
// go test -bench prints for engine/size.
func writeSize(out io.Writer, rows map[string]*row) error {
	var b strings.Builder
	b.WriteString("| pumps on the shelf | single pumps | floor | over floor | any two pumps too | floor | over floor |\n|---:|---:|---:|---:|---:|---:|---:|\n")
	for _, n := range shelves {
		var ns [4]float64
		for i, name := range []string{"Growth single", "Floor single", "Growth pairs", "Floor pairs"} {
			if r := rows[name]; r != nil {
				ns[i] = r.ns[n]
			}
			if ns[i] == 0 {
				return fmt.Errorf("%s has no row for %s pumps", name, n)
			}
		}
		pairs := ns[1] + ns[3]
		fmt.Fprintf(&b, "| %s | %s | %s | %.0f | %s | %s | %.0f |\n", n, took(ns[0]), took(ns[1]), ns[0]/ns[1], took(ns[2]), took(pairs), ns[2]/pairs)
	}
	_, err := io.WriteString(out, b.String())
	return err
}
