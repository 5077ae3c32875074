package layout

import "testing"

func BenchmarkLayBlocked(b *testing.B) { benchmark(b, levelCheck()) }

func BenchmarkLayLifts(b *testing.B) {
	input := levelCheck()
	input.Pose.At, input.Vault.Outlet.Along = at(4.25, 4.5, 0), 8.25*in
	benchmark(b, input)
}

func BenchmarkLayRound(b *testing.B) {
	input := levelCheck()
	input.Vault.Round, input.Vault.Length, input.Vault.FloorLength = true, 30*in, 28*in
	input.Vault.Outlet.Along = 15 * in
	input.Pose.At = at(7.25, 11.25, 0)
	benchmark(b, input)
}

func BenchmarkDistance(b *testing.B) {
	p := solidOf(Cylinder{From: at(0, 0, 0), To: at(0, 0, 5), Radius: 2 * in})
	q := solidOf(Cylinder{From: at(4, 1, 2), To: at(9, 3, 7), Radius: 1 * in})
	b.ReportAllocs()
	for b.Loop() {
		distance(&p, &q, 1)
	}
}

func benchmark(b *testing.B, input Input) {
	b.ReportAllocs()
	for b.Loop() {
		Lay(input)
	}
}
