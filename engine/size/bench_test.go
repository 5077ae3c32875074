package size

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// threeFalls is an invented job of three falls on five segments (the main, a
// second main and three branches) over an invented shelf, with six sizes of
// three kinds of pipe.
func threeFalls(tb testing.TB, pumps int, uniform bool, pairs Pairs) *Problem {
	tb.Helper()
	r := rand.New(rand.NewPCG(7, uint64(pumps)))
	p := &Problem{
		Uniform: uniform, Pairs: pairs, Reserves: []unit.Ratio{1.05, 1.1, 1.15, 1.2, 1.25}, MostSpeed: 8 * unit.FootPerSecond,
		Energy: Energy{PerYear: 365 * 24 * unit.Hour, Tariff: 18 * Whole / 100, Worth: 4.4518},
	}
	for i, s := range []struct {
		parent    int
		length, k float64
	}{{-1, 14, 6.3}, {0, 5, 1.5}, {0, 4, 4}, {1, 6, 4}, {1, 9, 5}} {
		seg := Segment{Name: strconv.Itoa(i), Parent: s.parent}
		for kind := range kinds {
			for _, b := range bores {
				seg.Choices = append(seg.Choices, randomChoice(tb, kind, b, s.length, s.k))
			}
		}
		p.Segments = append(p.Segments, seg)
	}
	for i, w := range []float64{0.6, 0.75, 0.5} {
		lip, err := hydro.LipLaw{Width: unit.Length(w), C: 1.7}.Prepare()
		if err != nil {
			tb.Fatal(err)
		}
		p.Outlets = append(p.Outlets, Outlet{Name: strconv.Itoa(i), Segment: 2 + i, Wanted: unit.Flow(0.0028 * w), Level: unit.Length(2.8 - 0.7*float64(i)), Lip: lip})
	}
	for i := range pumps {
		head := 2.5 + 12*r.Float64()
		p.Pumps = append(p.Pumps, randomPump(tb, r, strconv.Itoa(i), head, 0.002+0.01*r.Float64()))
		// dearer with what it can do, so that the shelf is like one
		c := &p.Pumps[i]
		_, end, _, _ := c.Curve.Range()
		c.Price = Cost(60+4000*float64(end)*head+120*r.Float64()) * Whole
	}
	return p
}

func findAll(b *testing.B, p *Problem) {
	b.Helper()
	var last *Result
	for b.Loop() {
		r, faults := toEnd(p)
		if len(faults) > 0 || len(r.Front) == 0 {
			b.Fatal("no front", faults)
		}
		last = r
	}
	b.ReportMetric(float64(len(last.Front)), "front")
	b.ReportMetric(last.Covered, "designs")
	b.ReportMetric(float64(last.Solved), "pairs-solved")
}

// BenchmarkUniform is the goal: one size throughout, 500 pumps x 6 sizes x 3
// kinds. BenchmarkEnumeration is the same by trying every design.
func BenchmarkUniform(b *testing.B) {
	for _, n := range []int{10, 100, 500, 1000, 10000} {
		b.Run(strconv.Itoa(n), func(b *testing.B) { findAll(b, threeFalls(b, n, true, PairsNone)) })
	}
}

func BenchmarkEnumeration(b *testing.B) {
	for _, n := range []int{10, 100, 500} {
		p := threeFalls(b, n, true, PairsNone)
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			for b.Loop() {
				for k := range p.Segments[0].Choices {
					bruteDesigns(p, []int{k, k, k, k, k})
				}
			}
		})
	}
}

func BenchmarkPerSegment(b *testing.B) {
	for _, n := range []int{10, 100, 500, 1000, 10000} {
		b.Run(strconv.Itoa(n), func(b *testing.B) { findAll(b, threeFalls(b, n, false, PairsNone)) })
	}
}

func BenchmarkPairs(b *testing.B) {
	for _, uniform := range []bool{true, false} {
		for _, n := range []int{10, 100, 500, 1000} {
			b.Run(map[bool]string{true: "uniform", false: "segments"}[uniform]+"/"+strconv.Itoa(n), func(b *testing.B) { findAll(b, threeFalls(b, n, uniform, PairsAny)) })
		}
	}
}

// BenchmarkGrowth is how the search grows with the shelf, a size for each
// segment; BenchmarkFloor is the bare evaluations behind it.
func BenchmarkGrowth(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 10000} {
		for _, pairs := range []Pairs{PairsNone, PairsAny} {
			name := map[Pairs]string{PairsNone: "single", PairsAny: "pairs"}[pairs]
			b.Run(name+"/"+strconv.Itoa(n), func(b *testing.B) { findAll(b, threeFalls(b, n, false, pairs)) })
		}
	}
}

// BenchmarkFloor evaluates, for the single pumps, each law and curve that no
// search over the shelf can do without: for every step of reserve the loss of
// every choice of pipe and the head of every pump, and the watts of each. For
// pairs, the first cost of each.
func BenchmarkFloor(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 10000} {
		p := threeFalls(b, n, false, PairsNone)
		t, faults := plant(p)
		if len(faults) > 0 {
			b.Fatal(faults)
		}
		b.Run("single/"+strconv.Itoa(n), func(b *testing.B) {
			for b.Loop() {
				for _, y := range append([]unit.Ratio{1}, p.Reserves...) {
					for i := range p.Segments {
						for k := range p.Segments[i].Choices {
							sink += p.Segments[i].Choices[k].loss(unit.Flow(y) * t.flow[i])
						}
					}
					for i := range p.Pumps {
						h, _, _ := p.Pumps[i].Curve.Head(unit.Flow(y) * t.total)
						sink += float64(h)
					}
				}
				for i := range p.Pumps {
					w, _, _ := p.Pumps[i].Curve.Power(t.total)
					sink += float64(w)
				}
			}
		})
		b.Run("pairs/"+strconv.Itoa(n), func(b *testing.B) {
			for b.Loop() {
				for i := range p.Pumps {
					for j := i; j < len(p.Pumps); j++ {
						sink += float64(p.Pumps[i].Price + p.Pumps[j].Price)
					}
				}
			}
		})
	}
}

var sink float64
