// Command cutting times engine/cut beside a general-purpose solver on the 20
// bin packing problems u120 of the OR-Library, one after the other in one run.
// The solver is GLPK's glpsol (Debian package glpk-utils) on the arc-flow model;
// see README.md one folder up. It prints a table and fails where both prove an
// answer and the answers differ.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"time"

	"plashet/engine/cut"
	"plashet/engine/cut/testdata/orlib"
	"plashet/engine/unit"
)

const ourRuns = 5 // the median of so many counts

func main() {
	limit := flag.Int("limit", 60, "seconds for each solve by glpsol")
	flag.Parse()
	if err := run(*limit); err != nil {
		fmt.Fprintln(os.Stderr, "cutting:", err)
		os.Exit(1)
	}
}

func run(limit int) error {
	all, err := orlib.U120()
	if err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "cutting")
	if err != nil {
		return err
	}
	defer func() { _ = os.RemoveAll(dir) }() // scratch: what stays is the system's to clear
	fmt.Println("| problem | bins | ours, ms | arcs | glpsol | glpsol, s | ratio |")
	fmt.Println("|---|---:|---:|---:|---|---:|---:|")
	var ratios []float64
	var oursAll time.Duration
	for _, in := range all {
		bins, ours, err := solveOurs(in)
		if err != nil {
			return err
		}
		oursAll += ours
		m := arcFlow(in)
		g, err := solveGLPK(m, dir, limit)
		if err != nil {
			return err
		}
		says, ratio := "no proof in time", ">"
		if g.optimal {
			if g.bins != bins {
				return fmt.Errorf("%s: glpsol proves %d bins, we %d", in.Name, g.bins, bins)
			}
			r := g.took.Seconds() / ours.Seconds()
			ratios = append(ratios, r)
			says, ratio = fmt.Sprintf("%d, optimal", g.bins), ""
		}
		ratio += strconv.FormatFloat(g.took.Seconds()/ours.Seconds(), 'f', 0, 64)
		fmt.Printf("| %s | %d | %.2f | %d | %s | %.2f | %s |\n",
			in.Name, bins, ours.Seconds()*1000, len(m.arcs), says, g.took.Seconds(), ratio)
	}
	fmt.Printf("\nOurs: all %d proven, %.0f ms together.\n", len(all), oursAll.Seconds()*1000)
	if len(ratios) == 0 {
		return errors.New("glpsol proved nothing within its limit: no comparison")
	}
	slices.Sort(ratios)
	fmt.Printf("glpsol: %d of %d proven within %d s; on these it takes %.0f times as long at least, %.0f times in the median.\n",
		len(ratios), len(all), limit, ratios[0], ratios[len(ratios)/2])
	return nil
}

// solveOurs gives our number of bins, proven, and the median time.
func solveOurs(in orlib.Instance) (int, time.Duration, error) {
	p := cut.Problem{
		Grid: unit.Millimetre, Basis: cut.ByCount, Keep: unit.Length(in.Capacity) * unit.Millimetre,
		Sticks: []cut.Stick{{Length: unit.Length(in.Capacity) * unit.Millimetre}},
	}
	for _, l := range in.Pieces {
		p.Pieces = append(p.Pieces, cut.Piece{Length: unit.Length(l) * unit.Millimetre, Count: 1})
	}
	var times []time.Duration
	bins := 0
	for range ourRuns {
		start := time.Now()
		plan, err := cut.Solve(context.Background(), p)
		times = append(times, time.Since(start))
		if err != nil {
			return 0, 0, err
		}
		if !plan.Proof.Proven() {
			return 0, 0, fmt.Errorf("%s: not proven by us", in.Name)
		}
		bins = plan.NewSticks
	}
	slices.Sort(times)
	return bins, times[ourRuns/2], nil
}

// outcome of glpsol.
type outcome struct {
	optimal bool
	bins    int
	took    time.Duration
}

var (
	optimalLine   = regexp.MustCompile(`(?m)^Status:\s+INTEGER OPTIMAL`)
	objectiveLine = regexp.MustCompile(`(?m)^Objective:\s+bins = (\d+)`)
)

// solveGLPK writes the model and runs glpsol on it with its usual settings. The
// time is that of the whole command.
func solveGLPK(m model, dir string, limit int) (outcome, error) {
	lp, report := filepath.Join(dir, "model.lp"), filepath.Join(dir, "report.txt")
	f, err := os.Create(lp)
	if err != nil {
		return outcome{}, err
	}
	if err := errors.Join(m.write(f), f.Close()); err != nil {
		return outcome{}, err
	}
	if err := os.RemoveAll(report); err != nil {
		return outcome{}, err
	}
	start := time.Now()
	said, err := exec.Command("glpsol", "--lp", lp, "--tmlim", strconv.Itoa(limit), "-o", report).CombinedOutput()
	took := time.Since(start)
	if err != nil {
		return outcome{}, fmt.Errorf("glpsol: %w\n%s", err, said)
	}
	text, err := os.ReadFile(report)
	if err != nil {
		return outcome{}, err
	}
	o := outcome{optimal: optimalLine.Match(text), took: took}
	if !o.optimal {
		return o, nil
	}
	found := objectiveLine.FindSubmatch(text)
	if found == nil {
		return outcome{}, errors.New("glpsol's report has no objective")
	}
	o.bins, err = strconv.Atoi(string(found[1]))
	return o, err
}
