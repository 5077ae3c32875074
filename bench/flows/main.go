// Command flows draws random jobs, solves them with this engine and writes
// jobs and flows as JSON, for compare.py to solve a second time. The script
// run runs both.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"plashet/engine/network"
	"plashet/engine/unit"
)

// output is what compare.py reads.
type output struct {
	Seed  uint64 `json:"seed"`
	Jobs  []*job `json:"jobs"`
	Timed *job   `json:"timed"`
}

// timing is what a solve of the line of twelve elements takes.
type timing struct {
	FreshNs float64 `json:"freshNs"` // from no knowledge of the flow
	NearNs  float64 `json:"nearNs"`  // from the answer for a level 1 cm off
}

func main() {
	seed := flag.Uint64("seed", 1, "seed of the jobs")
	count := flag.Int("n", 200, "number of jobs")
	pace := flag.Bool("time", false, "write what one solve of the line of twelve elements takes instead")
	testing.Init()
	flag.Parse()
	do := func() error { return write(*seed, *count) }
	if *pace {
		do = measure
	}
	if err := do(); err != nil {
		fmt.Fprintln(os.Stderr, "flows:", err)
		os.Exit(1)
	}
}

func write(seed uint64, count int) error {
	out := output{Seed: seed, Timed: line()}
	r := rand.New(rand.NewPCG(seed, 0)) //nolint:gosec // jobs are to be drawn again from the seed
	for i := range count {
		j := draw(r, kindNames[i%len(kindNames)])
		if err := j.solve(); err != nil {
			return fmt.Errorf("job %d (%s): %w", i, j.Kind, err)
		}
		out.Jobs = append(out.Jobs, j)
	}
	if err := out.Timed.solve(); err != nil {
		return err
	}
	return json.NewEncoder(os.Stdout).Encode(out)
}

// line is that of the network's own benchmark: vault, pump, check valve, pipes
// and fittings to one fall.
func line() *job {
	const bore, rough = 0.052, 1.5e-6
	pipe := func(length float64) part {
		return part{Kind: partPipe, Bore: bore, Length: length, Roughness: rough}
	}
	fitting := func(k float64) part { return part{Kind: partFitting, Bore: bore, K: k} }
	check := part{Kind: partCheck, Bore: bore, K: 3.5}
	pump := part{Kind: partPump, Curve: [][2]float64{{0, 8}, {1e-3, 7.8}, {2e-3, 7.2}, {3e-3, 6}, {4e-3, 4}, {5e-3, 1}}}
	return &job{
		Kind: "timed line", Celsius: 20,
		Nodes: []node{{Kind: kindLevel}, {Kind: kindLip, Level: 1.5, Width: 0.6, C: 1.705}},
		Links: []link{{0, 1, []part{
			pump, fitting(0.5), check, fitting(0.2), pipe(4), fitting(0.4), pipe(8),
			fitting(0.4), fitting(0.2), pipe(3), fitting(1), fitting(0.3),
		}}},
	}
}

// measure times a solve of the line.
func measure() error {
	n, err := line().build()
	if err != nil {
		return err
	}
	s, faults := network.NewSolver(n)
	if len(faults) > 0 {
		return fmt.Errorf("faults: %v", faults)
	}
	if err := flag.Set("test.benchtime", "3ms"); err != nil {
		return err
	}
	st := s.NewState()
	nanoseconds := func(before func()) float64 { // the least of some: other work on the machine only adds
		best := math.Inf(1)
		for range 30 {
			r := testing.Benchmark(func(b *testing.B) {
				for b.Loop() {
					before()
					s.Solve(st)
				}
			})
			best = min(best, float64(r.T.Nanoseconds())/float64(r.N))
		}
		return best
	}
	t := timing{FreshNs: nanoseconds(st.Reset)}
	level := unit.Length(0)
	t.NearNs = nanoseconds(func() {
		level = 1*unit.Centimetre - level
		s.SetLevel(0, level)
	})
	return json.NewEncoder(os.Stdout).Encode(t)
}
