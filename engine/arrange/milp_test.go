package arrange_test

import (
	"fmt"
	"maps"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// program is a mixed integer program, written out for GLPK's glpsol.
type program struct {
	objective []string
	rows      []string
	bounds    []string
	binaries  []string
}

// sum is a linear expression with a constant.
type sum struct {
	terms map[string]float64
	c     float64
}

func lin(c float64) sum { return sum{map[string]float64{}, c} }

func variable(name string) sum { return sum{map[string]float64{name: 1}, 0} }

// plus gives s + k o.
func (s sum) plus(k float64, o sum) sum {
	out := sum{map[string]float64{}, s.c + k*o.c}
	for n, v := range s.terms {
		out.terms[n] += v
	}
	for n, v := range o.terms {
		out.terms[n] += k * v
	}
	return out
}

func (s sum) text(names []string) string {
	var b strings.Builder
	for _, n := range names {
		if v := s.terms[n]; v != 0 {
			fmt.Fprintf(&b, " %+.12g %s", v, n)
		}
	}
	return b.String()
}

func (s sum) names() []string { return slices.Sorted(maps.Keys(s.terms)) }

// atLeast0 adds the row s >= 0, equal0 the row s = 0.
func (p *program) atLeast0(s sum) { p.row(s, ">=") }
func (p *program) equal0(s sum)   { p.row(s, "=") }

func (p *program) row(s sum, sense string) {
	text := s.text(s.names())
	if text == "" {
		text, s.c = " +1 one", s.c-1 // a row of constants: it holds, or nothing does
	}
	p.rows = append(p.rows, fmt.Sprintf("%s %s %.12g", text, sense, -s.c))
}

func (p *program) free(name string)  { p.bounds = append(p.bounds, " -1000 <= "+name+" <= 1000") }
func (p *program) whole(name string) { p.binaries = append(p.binaries, name) }

// write gives the program in the LP format.
func (p *program) write() string {
	var b strings.Builder
	b.WriteString("min\n obj:" + strings.Join(p.objective, "") + "\nSubject To\n")
	for i, r := range p.rows {
		fmt.Fprintf(&b, " r%d:%s\n", i, r)
	}
	b.WriteString("Bounds\n 1 <= one <= 1\n")
	for _, r := range p.bounds {
		b.WriteString(r + "\n")
	}
	b.WriteString("Binaries\n")
	for _, n := range p.binaries {
		b.WriteString(" " + n + "\n")
	}
	b.WriteString("End\n")
	return b.String()
}

// solve gives the least value; ok is false where nothing fulfils the rows.
// glpsol takes a binary within 1e-5 of a whole number for whole, which a row
// with a large constant turns into a length: with the binaries fixed to what was
// found it is solved once more.
func (p *program) solve(t testing.TB) (least float64, ok bool) {
	t.Helper()
	if _, values, ok := p.once(t); ok && len(p.binaries) > 0 {
		fixed := *p
		fixed.bounds, fixed.binaries = slices.Clone(p.bounds), nil
		for _, n := range p.binaries {
			fixed.bounds = append(fixed.bounds, fmt.Sprintf(" %s = %g", n, math.Round(values[n])))
		}
		least, _, ok := fixed.once(t)
		if !ok {
			t.Fatal("glpsol: what was found does not hold with its binaries fixed")
		}
		return least, true
	} else if !ok {
		return 0, false
	}
	least, _, ok = p.once(t)
	return least, ok
}

// once runs glpsol and reads its report.
func (p *program) once(t testing.TB) (least float64, values map[string]float64, ok bool) {
	t.Helper()
	dir := t.TempDir()
	lp, report := filepath.Join(dir, "m.lp"), filepath.Join(dir, "m.txt")
	if err := os.WriteFile(lp, []byte(p.write()), 0o600); err != nil {
		t.Fatal(err)
	}
	said, err := exec.Command("glpsol", "--lp", lp, "--tmlim", "120", "-w", report).CombinedOutput()
	if err != nil {
		t.Fatalf("glpsol: %v\n%s", err, said)
	}
	text, err := os.ReadFile(report)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(said), "TIME LIMIT") {
		t.Fatalf("glpsol ran out of time:\n%s", said)
	}
	return p.read(t, string(text))
}

// read takes a report apart: the line s has status and value, the lines j the
// columns in the order in which the program names them first.
func (p *program) read(t testing.TB, text string) (least float64, values map[string]float64, ok bool) {
	t.Helper()
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatalf("glpsol's report: %v", err)
		}
		return v
	}
	columns, values := p.columns(), map[string]float64{}
	for line := range strings.Lines(text) {
		f := strings.Fields(line)
		switch {
		case len(f) == 0:
		case f[0] == "s" && f[1] == "mip":
			ok, least = f[4] == "o", number(f[5])
		case f[0] == "s" && f[1] == "bas":
			ok, least = f[4] == "f" && f[5] == "f", number(f[6])
		case f[0] == "j":
			i, err := strconv.Atoi(f[1])
			if err != nil || i < 1 || i > len(columns) {
				t.Fatalf("glpsol's report has column %q of %d", f[1], len(columns))
			}
			at := 2
			if _, err := strconv.ParseFloat(f[2], 64); err != nil {
				at = 3 // a basic solution gives the column's state first
			}
			values[columns[i-1]] = number(f[at])
		}
	}
	return least, values, ok
}

// columns lists the variables as glpsol counts them: as they are first named.
func (p *program) columns() (out []string) {
	seen := map[string]bool{}
	for f := range strings.FieldsSeq(strings.Join(p.objective, " ") + " " + strings.Join(p.rows, " ") + " one") {
		if f[0] >= 'a' && !seen[f] || f[0] >= 'A' && f[0] <= 'Z' && !seen[f] {
			seen[f] = true
			out = append(out, f)
		}
	}
	return out
}

// needGLPK skips where glpsol is missing; ./check installs it and then a
// missing one fails.
func needGLPK(t testing.TB) {
	t.Helper()
	if _, err := exec.LookPath("glpsol"); err != nil {
		if os.Getenv("NEED_GLPSOL") != "" {
			t.Fatal("glpsol is missing: install Debian's glpk-utils")
		}
		t.Skip("glpsol is missing: install Debian's glpk-utils")
	}
}

// The reading of glpsol's answers, on programs solved by hand.
func TestGLPK(t *testing.T) {
	needGLPK(t)
	p := &program{objective: []string{" +1 x +2 b"}}
	p.whole("b")
	// x + 3 b >= 2.5: b costs 2 and saves 2.5 of x.
	p.atLeast0(variable("x").plus(3, variable("b")).plus(1, lin(-2.5)))
	if v, ok := p.solve(t); !ok || v != 2 {
		t.Errorf("got %g %v, want 2", v, ok)
	}
	p.atLeast0(variable("x").plus(-1, lin(1)))
	if v, ok := p.solve(t); !ok || v != 2.5 {
		t.Errorf("got %g %v, want 2.5", v, ok)
	}
	p.atLeast0(lin(-1))
	if v, ok := p.solve(t); ok {
		t.Errorf("got %g of rows that contradict each other", v)
	}
}
