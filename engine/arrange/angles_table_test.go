//go:build unix

package arrange_test

import (
	"testing"
	"time"
)

// Measured when asked (-table odd): how long the search takes in the vaults of
// TestOddAngles, for the line in docs/layouts.md.
func TestOddTable(t *testing.T) {
	if *table != "odd" {
		t.Skip("measured with -table odd")
	}
	const each = 6
	book := newBook(t)
	var times []float64
	found := 0
	for _, c := range oddKinds {
		n := 0
		for seed := uint64(1); n < each && seed < 1500; seed++ {
			v, ok := oddly(t, book, seed, c.elbows, c.yaw)
			if !ok || straightOn(&v.laid, v.chain.Pose.Turn) {
				continue
			}
			v.input.Rules.Brief = true
			out, s := timed(t, v.input, time.Minute)
			if len(out.Layouts) > 0 && straightOn(&out.Layouts[0].Laid, out.Layouts[0].Chain.Pose.Turn) {
				continue
			}
			if n++; len(out.Layouts) > 0 {
				found++
			}
			times = append(times, s)
		}
	}
	t.Logf("%d vaults that only odd angles fit, %d with a layout: %s", len(times), found, spread(times))
}
