package unit

import "testing"

// sink keeps results alive, so that their memory is counted.
var sink string

func BenchmarkParse(b *testing.B) {
	for _, c := range []struct {
		name, text string
		kind       Kind
	}{
		{"tape", `4' 7-1/2"`, KindTape},
		{"bare", "55", KindFlow},
		{"flow", "3300 gph", KindFlow},
		{"composed", "2 quarts per second", KindFlow},
		{"thousands", "4,740 l/h", KindFlow},
		{"typo", "55 gpn", KindFlow},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, _ = Parse(c.text, c.kind, US)
			}
		})
	}
}

func BenchmarkFormat(b *testing.B) {
	for _, c := range []struct {
		name string
		v    Value
		s    System
	}{
		{"tape", Value{SI: 1.4097, Kind: KindTape}, US},
		{"flow", Value{SI: 55 * gpm, Kind: KindFlow}, US},
		{"grouped", Value{SI: 55 * gpm, Kind: KindFlow}, Metric},
		{"duration", Value{SI: 5400, Kind: KindDuration}, US},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				sink = c.v.Format(c.s)
			}
		})
	}
}
