package band

import (
	"fmt"
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, abs float64) {
	t.Helper()
	if !(math.Abs(got-want) <= abs) {
		t.Errorf("%s: %.12g, want %.12g within %g", what, got, want, abs)
	}
}

// TestSobolPoints: points of scipy 1.10.1 (stats.qmc.Sobol, no scrambling),
// which reads the set of Joe and Kuo from a file of its own, in 1024ths.
func TestSobolPoints(t *testing.T) {
	dimensions := [...]int{0, 1, 2, 9, 39, 99}
	for _, c := range []struct {
		point int
		want  [len(dimensions)]float64
	}{
		{1, [...]float64{512, 512, 512, 512, 512, 512}},
		{2, [...]float64{768, 256, 256, 768, 256, 768}},
		{3, [...]float64{256, 768, 768, 256, 768, 256}},
		{5, [...]float64{896, 896, 128, 128, 384, 384}},
		{17, [...]float64{608, 992, 992, 672, 416, 544}},
		{100, [...]float64{424, 264, 792, 712, 136, 904}},
		{511, [...]float64{2, 514, 418, 206, 242, 434}},
		{1023, [...]float64{1, 771, 627, 871, 715, 543}},
	} {
		column := make([]float64, c.point+1)
		for k, d := range dimensions {
			sobol(column, d, 0)
			near(t, "point", math.Floor(1024*column[c.point]), c.want[k], 0)
		}
	}
}

// TestStrata: whatever the seed, each input has one draw in each of n strata,
// those with Sobol points and those without.
func TestStrata(t *testing.T) {
	const n = 256
	for _, seed := range []uint64{0, 1, 1 << 63} {
		s := Draw(make([]Shape, sobolDimensions+3), n, seed)
		for j, c := range s.columns {
			met := [n]bool{}
			for _, v := range c {
				p := 0.5 * math.Erfc(-v*normal95/math.Sqrt2) // back from the bell
				i := int(p * n)
				if met[i] {
					t.Fatalf("seed %d, input %d: two draws in stratum %d", seed, j, i)
				}
				met[i] = true
			}
		}
	}
}

// TestUncorrelated: no two of the first 64 inputs go together by more than 0.1
// (draws by chance do by 0.031 as a rule, and among 2,016 pairs one by 0.1).
func TestUncorrelated(t *testing.T) {
	const d = 64
	s := Draw(make([]Shape, d), Usual, 1)
	g := newRegression(s)
	worst, square := 0.0, 0.0
	for j := range d {
		for k := range j {
			r := (dot(s.columns[j], s.columns[k])/Usual - g.mean[j]*g.mean[k]) / (g.sd[j] * g.sd[k])
			worst, square = max(worst, math.Abs(r)), square+r*r
		}
	}
	t.Logf("greatest %.3f, root mean square %.4f", worst, math.Sqrt(square/(d*(d-1)/2)))
	if worst > 0.1 || math.Sqrt(square/(d*(d-1)/2)) > 0.02 {
		t.Errorf("greatest %.3f, root mean square %.4f", worst, math.Sqrt(square/(d*(d-1)/2)))
	}
}

// TestShapes: points of the standard normal distribution (any table: 1.644854
// at 95, 1.959964 at 97.5 percent) and of the even one, and the deviations.
func TestShapes(t *testing.T) {
	near(t, "normal 95", Normal.at(0.95), 1.644853626951/1.959963984540, 1e-11)
	near(t, "normal 97.5", Normal.at(0.975), 1, 1e-11)
	near(t, "normal middle", Normal.at(0.5), 0, 1e-15)
	near(t, "even 95", Even.at(0.95), 0.9, 1e-15)
	for _, shape := range []Shape{Normal, Even} {
		b := Draw([]Shape{shape}, 1<<14, 3)
		near(t, "deviation", math.Sqrt(dot(b.columns[0], b.columns[0])/float64(b.n)), shape.Deviation(), 2e-3)
	}
}

// TestLinear: the band of a sum of normal inputs is that of the normal
// distribution, and the shares are those of the variances, 16, 4 and 1 of 21.
func TestLinear(t *testing.T) {
	s := Draw([]Shape{Normal, Normal, Normal, Normal}, Usual, 7)
	row, y := make([]float64, 4), make([]float64, s.Len())
	for i := range y {
		s.Row(i, row)
		y[i] = 10 + 4*row[0] - 2*row[1] + row[3]
	}
	b := s.Study([][]float64{y})[0]
	sd := math.Sqrt(21) / normal95
	near(t, "mean", b.Mean, 10, 0.01)
	near(t, "deviation", b.Deviation, sd, 0.02)
	near(t, "low", b.Low, 10-1.644854*sd, 0.1)
	near(t, "high", b.High, 10+1.644854*sd, 0.1)
	for j, want := range []float64{16.0 / 21, 4.0 / 21, 0, 1.0 / 21} {
		near(t, "share", b.Shares[j], want, 0.01)
	}
	near(t, "together", b.Together, 0, 1e-9)
}

// TestTogether: of x1 x2 no straight line tells anything, and of x1 + x1² with
// an even x1 the line tells 1/3 of 1/3 + 4/45 (by hand: variances of x and x²).
func TestTogether(t *testing.T) {
	s := Draw([]Shape{Even, Even}, Usual, 2)
	row, product, bend := make([]float64, 2), make([]float64, s.Len()), make([]float64, s.Len())
	for i := range product {
		s.Row(i, row)
		product[i], bend[i] = row[0]*row[1], row[0]+row[0]*row[0]
	}
	b := s.Study([][]float64{product, bend})
	near(t, "product", b[0].Together, 1, 0.01)
	near(t, "bend", b[1].Together, (4.0/45)/(1.0/3+4.0/45), 0.01)
	near(t, "sum", b[1].Shares[0]+b[1].Shares[1]+b[1].Together, 1, 1e-12)
}

// TestStill: outputs that do not vary, that are partly or never numbers, and
// more inputs than draws.
func TestStill(t *testing.T) {
	nan := math.NaN()
	s := Draw([]Shape{Normal, Even}, 4, 1)
	b := s.Study([][]float64{{3, 3, 3, 3}, {nan, nan, math.Inf(1), 1}, {nan, 1, 2, 3}})
	if b[0].Low != 3 || b[0].High != 3 || b[0].Shares[0] != 0 || b[0].Together != 0 {
		t.Errorf("still: %+v", b[0])
	}
	if !math.IsNaN(b[1].Low) || b[1].Shares != nil {
		t.Errorf("no numbers: %+v", b[1])
	}
	if b[2].Middle != 2 {
		t.Errorf("three numbers: %+v", b[2])
	}
	many := Draw(make([]Shape, 150), 16, 1)
	y := make([]float64, 16)
	many.Row(0, make([]float64, 150))
	for i := range y {
		y[i] = float64(i * i)
	}
	for _, v := range many.Study([][]float64{y})[0].Shares {
		if !(v >= 0 && v <= 1) {
			t.Fatalf("share %v", v)
		}
	}
}

// TestQuantile: by hand, five numbers stand at 0.1, 0.3, 0.5, 0.7 and 0.9.
func TestQuantile(t *testing.T) {
	v := []float64{1, 2, 4, 8, 16}
	for _, c := range [][2]float64{{0.05, 1}, {0.1, 1}, {0.2, 1.5}, {0.5, 4}, {0.8, 12}, {0.95, 16}} {
		near(t, "quantile", quantile(v, c[0]), c[1], 1e-12)
	}
}

// BenchmarkGrowth tells how drawing and reading (bands of 30 figures, with the
// shares) grow with the draws and with the inputs; beside it, as a floor, as many
// bare evaluations of the cheapest function that all inputs move, a weighted sum.
func BenchmarkGrowth(b *testing.B) {
	const figures = 30
	grow := func(name string, inputs, draws int) {
		weight, row := make([]float64, inputs), make([]float64, inputs)
		for j := range weight {
			weight[j] = 1 / float64(j+1)
		}
		y := make([][]float64, figures)
		for k := range y {
			y[k] = make([]float64, draws)
		}
		b.Run(name+"/all", func(b *testing.B) {
			for b.Loop() {
				s := Draw(make([]Shape, inputs), draws, 1)
				for i := range s.Len() {
					s.Row(i, row)
					v := dot(weight, row)
					for k := range y {
						y[k][i] = v + row[k%inputs]
					}
				}
				s.Study(y)
			}
		})
		b.Run(name+"/floor", func(b *testing.B) {
			for b.Loop() {
				for i := range draws {
					y[0][i] = dot(weight, row)
				}
			}
		})
	}
	for _, n := range []int{10, 100, 1000, 10000} {
		grow(fmt.Sprintf("inputs=64/draws=%d", n), 64, n)
	}
	for _, d := range []int{10, 30, 100, 300} {
		grow(fmt.Sprintf("draws=1024/inputs=%d", d), d, 1024)
	}
}
