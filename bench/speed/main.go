// Command speed makes a table of docs/speed.md from what go test -bench prints
// for engine/network, or with the word size for engine/size, the least of all counts. The script bench/speed/run runs
// both.
package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
)

func main() {
	rows, order, err := read(os.Stdin)
	switch {
	case err != nil:
	case len(os.Args) > 1 && os.Args[1] == "size":
		err = writeSize(os.Stdout, rows)
	default:
		err = write(os.Stdout, rows, order)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "speed:", err)
		os.Exit(1)
	}
}

// row is what is measured of one network: nanoseconds by the sub-benchmark's
// name, and the steps of a fresh solve.
type row struct {
	ns    map[string]float64
	steps float64
}

// read takes lines such as
//
//	BenchmarkMesh/300/solve-2   788   701523 ns/op   10.00 steps   0 B/op   0 allocs/op
func read(in io.Reader) (rows map[string]*row, order []string, err error) {
	rows = map[string]*row{}
	lines := bufio.NewScanner(in)
	for lines.Scan() {
		f := strings.Fields(lines.Text())
		if len(f) < 4 || !strings.HasPrefix(f[0], "Benchmark") {
			continue
		}
		path := strings.Split(strings.TrimPrefix(f[0], "Benchmark"), "/")
		what, _, _ := strings.Cut(path[len(path)-1], "-")
		name := strings.Join(path[:len(path)-1], " ")
		r := rows[name]
		if r == nil {
			r = &row{ns: map[string]float64{}}
			rows[name] = r
			order = append(order, name)
		}
		for i := 2; i+1 < len(f); i += 2 {
			v, err := strconv.ParseFloat(f[i], 64)
			if err != nil {
				return nil, nil, fmt.Errorf("%q: %w", lines.Text(), err)
			}
			switch f[i+1] {
			case "ns/op":
				if was, ok := r.ns[what]; !ok || v < was {
					r.ns[what] = v
				}
			case "steps":
				r.steps = v
			case "allocs/op":
				if v != 0 && what != "make" && what != "balance" {
					return nil, nil, fmt.Errorf("%s allocates", f[0])
				}
			}
		}
	}
	return rows, order, lines.Err()
}

var columns = []string{"solve", "near", "laws", "make"}

func write(out io.Writer, rows map[string]*row, order []string) error {
	if len(order) == 0 {
		return fmt.Errorf("no benchmark among the lines read")
	}
	var b strings.Builder
	b.WriteString("| network | steps | solve afresh | after a level moved 1 cm | floor: the laws alone | solve over floor | make the solver |\n|---|---:|---:|---:|---:|---:|---:|\n")
	for _, name := range order {
		r := rows[name]
		if i := slices.IndexFunc(columns, func(c string) bool { return r.ns[c] == 0 }); i >= 0 {
			return fmt.Errorf("%s has no %s", name, columns[i])
		}
		fmt.Fprintf(&b, "| %s | %.0f | %s | %s | %s | %.1f | %s |\n", name, r.steps, took(r.ns["solve"]), took(r.ns["near"]), took(r.ns["laws"]), r.ns["solve"]/r.ns["laws"], took(r.ns["make"]))
	}
	_, err := io.WriteString(out, b.String())
	return err
}

// took prints nanoseconds to three figures in ns, us or ms.
func took(ns float64) string {
	unit := "ns"
	for _, u := range []string{"µs", "ms", "s"} {
		if ns < 999.5 {
			break
		}
		ns, unit = ns/1000, u
	}
	return strings.TrimSuffix(strconv.FormatFloat(ns, 'f', max(0, 2-digits(ns)), 64), ".") + " " + unit
}

// digits is one less than the figures before the point.
func digits(x float64) (n int) {
	for ; x >= 9.995; x /= 10 {
		n++
	}
	return n
}
