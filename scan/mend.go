package scan

// The field of 256 elements by the polynomial of the standard.
var (
	power [512]byte
	log   [256]int
)

//nolint:gochecknoinits // a table that is filled once and never changed
func init() {
	x := 1
	for i := range 255 {
		power[i], power[i+255] = byte(x), byte(x) //nolint:gosec // kept below 256
		log[x] = i
		if x <<= 1; x > 255 {
			x ^= 0x11d
		}
	}
}

func times(a, b byte) byte {
	if a == 0 || b == 0 {
		return 0
	}
	return power[log[a]+log[b]]
}

func inverse(a byte) byte { return power[255-log[a]] }

// value gives a polynomial's value, its lowest term first.
func value(p []byte, x byte) byte {
	v := byte(0)
	for i := len(p) - 1; i >= 0; i-- {
		v = times(v, x) ^ p[i]
	}
	return v
}

// syndromes are a block's values at the roots; all zero where nothing is wrong.
func syndromes(block []byte, check int) (s []byte, right bool) {
	s = make([]byte, check)
	right = true
	for i := range s {
		v := byte(0)
		for _, b := range block {
			v = times(v, power[i]) ^ b
		}
		s[i] = v
		right = right && v == 0
	}
	return s, right
}

// mend puts right what was misread in a block with so many check bytes, up to
// half as many (Reed-Solomon code: J. Massey, Shift-register synthesis and BCH
// decoding, IEEE Trans. Information Theory 15, 1969; G. D. Forney, On decoding BCH
// codes, IEEE Trans. Information Theory 11, 1965). False where it is too much.
func mend(block []byte, check int) bool {
	s, right := syndromes(block, check)
	if right {
		return true
	}
	locator, wrong := locatorOf(s)
	if wrong > check/2 {
		return false
	}
	// What stands wrong is told by the locator's roots, by how much by Forney.
	evaluator := make([]byte, check)
	for i := range evaluator {
		for k := 0; k <= i && k < len(locator); k++ {
			evaluator[i] ^= times(s[i-k], locator[k])
		}
	}
	found := 0
	for i := range block {
		back := len(block) - 1 - i
		x := power[(255-back%255)%255]
		if value(locator, x) != 0 {
			continue
		}
		found++
		slope := byte(0)
		for k := 1; k < len(locator); k += 2 {
			slope ^= times(locator[k], pow(x, k-1))
		}
		if slope == 0 {
			return false
		}
		block[i] ^= times(power[back%255], times(value(evaluator, x), inverse(slope)))
	}
	if found != wrong {
		return false
	}
	_, right = syndromes(block, check)
	return right
}

// locatorOf finds the shortest register that makes the syndromes (Massey), and
// its length.
func locatorOf(s []byte) (c []byte, length int) {
	c = []byte{1}
	before := []byte{1}
	shift, last := 1, byte(1)
	for n := range s {
		d := s[n]
		for i := 1; i <= length && i < len(c); i++ {
			d ^= times(c[i], s[n-i])
		}
		if d == 0 {
			shift++
			continue
		}
		kept := append([]byte{}, c...)
		k := times(d, inverse(last))
		for len(c) < len(before)+shift {
			c = append(c, 0)
		}
		for i, b := range before {
			c[i+shift] ^= times(k, b)
		}
		if 2*length <= n {
			length, before, last, shift = n+1-length, kept, d, 1
		} else {
			shift++
		}
	}
	return c, length
}

func pow(x byte, n int) byte {
	if x == 0 {
		return 0
	}
	return power[log[x]*n%255]
}
