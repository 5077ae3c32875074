package band

import (
	_ "embed" // the direction numbers
	"math/bits"
	"strconv"
	"strings"
)

//go:embed directions.txt
var directionRows string

// sobolDimensions is how many inputs have Sobol points of their own; those
// after them have each their own shuffled strata.
const sobolDimensions = 100

// sobolBits is the number of binary digits of a point.
const sobolBits = 32

// directions holds the direction numbers of each dimension, the first digit's
// in the highest bit.
var directions = readDirections(directionRows)

// readDirections reads rows "d s a m1..ms" and continues each row by the
// recurrence
//
//	m_k = 2 a_1 m_(k-1) xor 4 a_2 m_(k-2) xor ... xor 2^s m_(k-s) xor m_(k-s),
//
// a_1 to a_(s-1) the binary digits of a. The first dimension is that of van der
// Corput: all m are 1.
func readDirections(rows string) [sobolDimensions][sobolBits]uint32 {
	var out [sobolDimensions][sobolBits]uint32
	for k := range sobolBits {
		out[0][k] = 1 << (sobolBits - 1 - k)
	}
	for line := range strings.Lines(rows) {
		f := strings.Fields(line)
		if len(f) < 4 || f[0] == "#" {
			continue
		}
		n := make([]uint32, len(f))
		for i, text := range f {
			v, _ := strconv.ParseUint(text, 10, 32) // the table is part of the program, and a test reads it
			n[i] = uint32(v)
		}
		s, a := int(n[1]), n[2]
		v := &out[n[0]-1]
		for k := range sobolBits {
			if k < s {
				v[k] = n[3+k] << (sobolBits - 1 - k)
				continue
			}
			v[k] = v[k-s] ^ v[k-s]>>s
			for i := 1; i < s; i++ {
				if a>>(s-1-i)&1 == 1 {
					v[k] ^= v[k-i]
				}
			}
		}
	}
	return out
}

// sobol fills column with the first points of a dimension, in Gray code's order,
// their digits shifted by the seed's.
func sobol(column []float64, dimension int, shift uint32) {
	v, x := &directions[dimension], shift
	for i := range column {
		column[i] = unit01(x)
		x ^= v[bits.TrailingZeros32(^uint32(i))]
	}
}

// shuffled fills column with one point in each of its strata, the strata in an
// order by chance (M. McKay, R. Beckman, W. Conover, A comparison of three
// methods for selecting values of input variables, Technometrics 21, 1979).
func shuffled(column []float64, r *random) {
	for i := range column {
		j := int(r.next() % uint64(i+1))
		column[i] = column[j]
		column[j] = (float64(i) + unit01(uint32(r.next()>>32))) / float64(len(column))
	}
}

// unit01 is the middle of the interval that the digits name: never 0, never 1.
func unit01(x uint32) float64 { return (float64(x) + 0.5) / (1 << sobolBits) }

// random is splitmix64 (G. Steele, D. Lea, C. Flood, Fast splittable
// pseudorandom number generators, 2014): the same numbers for the same seed on
// every machine.
type random struct{ state uint64 }

func (r *random) next() uint64 {
	r.state += 0x9e3779b97f4a7c15
	z := r.state
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}
