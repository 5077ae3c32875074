package unit

import (
	"math"
	"strconv"
)

// maxDenominator is the finest tape fraction printed.
const maxDenominator = 1024

// FormatTape prints a length as a tape shows it, feet, inches and a reduced
// fraction: 4' 7-1/2", 7/16", -3". The denominator (16 on most tapes) is 1 to
// 1024; halves of it are rounded up on the magnitude and carried, so that
// neither 16/16 nor 12" appears. Outside the range, and for what is not
// finite, it is a dash.
func FormatTape(l Length, denominator int) string {
	if denominator < 1 || denominator > maxDenominator || math.IsNaN(float64(l)) || math.IsInf(float64(l), 0) {
		return dash
	}
	var buf [48]byte
	return string(appendTape(buf[:0], float64(l), denominator))
}

// appendTape prints a finite length.
func appendTape(dst []byte, si float64, denominator int) []byte {
	scaled := roundHalfUp(math.Abs(inch.number(si)) * float64(denominator))
	if si < 0 && scaled > 0 {
		dst = append(dst, '-')
	}
	var buf [24]byte
	if scaled >= 1<<53 {
		// No tape reaches here, and no float tells inches apart.
		feet := scaled / float64(12*denominator)
		return append(appendGrouped(dst, strconv.AppendFloat(buf[:0], feet, 'f', 0, 64)), '\'')
	}
	parts := uint64(scaled)
	inches, parts := parts/uint64(denominator), parts%uint64(denominator)
	feet, inches := inches/12, inches%12
	if feet > 0 {
		dst = append(appendGrouped(dst, strconv.AppendUint(buf[:0], feet, 10)), "' "...)
	}
	if inches > 0 || feet > 0 || parts == 0 {
		dst = strconv.AppendUint(dst, inches, 10)
		if parts > 0 {
			dst = append(dst, '-')
		}
	}
	if parts > 0 {
		g := gcd(parts, uint64(denominator))
		dst = strconv.AppendUint(dst, parts/g, 10)
		dst = append(dst, '/')
		dst = strconv.AppendUint(dst, uint64(denominator)/g, 10)
	}
	return append(dst, '"')
}

func gcd(a, b uint64) uint64 {
	for b > 0 {
		a, b = b, a%b
	}
	return a
}
