package verify

import (
	"testing"

	"plashet/engine/layout"
)

func BenchmarkProveHillside(b *testing.B) { benchmark(b, hillside()) }
func BenchmarkProveLifts(b *testing.B)    { benchmark(b, lifts()) }
func BenchmarkProveRound(b *testing.B)    { benchmark(b, round30()) }

func benchmark(b *testing.B, input layout.Input) {
	a, _, _ := layout.Lay(input)
	b.ReportAllocs()
	for b.Loop() {
		Prove(input, a)
	}
}
