package scan

import "math/bits"

// mostVersion is the greatest that is read: 97 modules, 666 bytes at level M.
const mostVersion = 20

// code is the modules of a code.
type code struct {
	version, n int
	dark       []bool
}

func (c *code) is(x, y int) bool { return c.dark[y*c.n+x] }

// Tables of ISO/IEC 18004, by level (L, M, Q, H) and version: check bytes of a
// block, and blocks. From memory; the tests hold them against another program's
// codes of each level and version.
var (
	checks = [4][mostVersion + 1]int{
		{0, 7, 10, 15, 20, 26, 18, 20, 24, 30, 18, 20, 24, 26, 30, 22, 24, 28, 30, 28, 28},
		{0, 10, 16, 26, 18, 24, 16, 18, 22, 22, 26, 30, 22, 22, 24, 24, 28, 28, 26, 26, 26},
		{0, 13, 22, 18, 26, 18, 24, 18, 22, 20, 24, 28, 26, 24, 20, 30, 24, 28, 28, 26, 30},
		{0, 17, 28, 22, 16, 22, 28, 26, 26, 24, 28, 24, 28, 22, 24, 24, 30, 28, 28, 26, 28},
	}
	blocks = [4][mostVersion + 1]int{
		{0, 1, 1, 1, 1, 1, 2, 2, 2, 2, 4, 4, 4, 4, 4, 6, 6, 6, 6, 7, 8},
		{0, 1, 1, 1, 2, 2, 4, 4, 4, 5, 5, 5, 8, 9, 9, 10, 10, 11, 13, 14, 16},
		{0, 1, 1, 2, 2, 4, 4, 6, 6, 8, 8, 8, 10, 12, 16, 12, 17, 16, 18, 21, 20},
		{0, 1, 1, 2, 4, 4, 4, 5, 6, 8, 8, 11, 11, 16, 16, 18, 16, 19, 21, 25, 25},
	}
)

// text gives what the code says; false where too much of it cannot be read.
func (c *code) text() (string, bool) {
	level, mask, ok := c.format()
	if !ok {
		return "", false
	}
	data, ok := c.data(level, mask)
	if !ok {
		return "", false
	}
	return said(data, c.version)
}

// format reads level and mask, from whichever of the two places differs less from
// what may stand there.
func (c *code) format() (level, mask int, ok bool) {
	n := c.n
	var got [2]uint
	set := func(copy, bit, x, y int) {
		if c.is(x, y) {
			got[copy] |= 1 << bit
		}
	}
	for i := range 6 {
		set(0, i, 8, i)
		set(0, 14-i, i, 8)
	}
	set(0, 6, 8, 7)
	set(0, 7, 8, 8)
	set(0, 8, 7, 8)
	for i := range 8 {
		set(1, i, n-1-i, 8)
	}
	for i := 8; i < 15; i++ {
		set(1, i, 8, n-15+i)
	}
	least := 4 // up to three wrong can be told
	for f := range uint(32) {
		rem := f
		for range 10 {
			rem = rem<<1 ^ (rem>>9)*0x537
		}
		want := (f<<10 | rem) ^ 0x5412
		for _, g := range got {
			if d := bits.OnesCount(g ^ want); d < least {
				least, ok = d, true
				level, mask = [4]int{1, 0, 3, 2}[f>>3], int(f&7)
			}
		}
	}
	return level, mask, ok
}

// fixed tells the modules that carry no data.
func (c *code) fixed(x, y int) bool {
	n := c.n
	switch {
	case x < 9 && y < 9, x >= n-8 && y < 9, x < 9 && y >= n-8, x == 6, y == 6:
		return true
	case c.version >= 7 && (x >= n-11 && y < 6 || y >= n-11 && x < 6):
		return true
	}
	mid := c.middles()
	for i, v := range mid {
		for k, u := range mid {
			corner := i == 0 && k == 0 || i == 0 && k == len(mid)-1 || i == len(mid)-1 && k == 0
			if !corner && abs(x-u) <= 2 && abs(y-v) <= 2 {
				return true
			}
		}
	}
	return false
}

// middles are the places of the alignment patterns along a side.
func (c *code) middles() []int {
	if c.version == 1 {
		return nil
	}
	count := c.version/7 + 2
	step := (c.version*8 + count*3 + 5) / (count*4 - 4) * 2
	out := make([]int, count)
	out[0] = 6
	for i := count - 1; i > 0; i-- {
		out[i] = c.n - 7 - (count-1-i)*step
	}
	return out
}

func abs(a int) int { return max(a, -a) }

// masked tells that a mask turns a module over.
func masked(mask, x, y int) bool {
	switch mask {
	case 0:
		return (x+y)%2 == 0
	case 1:
		return y%2 == 0
	case 2:
		return x%3 == 0
	case 3:
		return (x+y)%3 == 0
	case 4:
		return (x/3+y/2)%2 == 0
	case 5:
		return x*y%2+x*y%3 == 0
	case 6:
		return (x*y%2+x*y%3)%2 == 0
	}
	return ((x+y)%2+x*y%3)%2 == 0
}

// data reads the bytes in their order up and down, parts them into blocks and
// mends each.
func (c *code) data(level, mask int) ([]byte, bool) {
	var raw []byte
	now, have := byte(0), 0
	up := true
	for right := c.n - 1; right >= 1; right -= 2 {
		if right == 6 {
			right = 5
		}
		for k := range c.n {
			y := k
			if up {
				y = c.n - 1 - k
			}
			for _, x := range [2]int{right, right - 1} {
				if c.fixed(x, y) {
					continue
				}
				now <<= 1
				if c.is(x, y) != masked(mask, x, y) {
					now |= 1
				}
				if have++; have == 8 {
					raw, now, have = append(raw, now), 0, 0
				}
			}
		}
		up = !up
	}
	count, check := blocks[level][c.version], checks[level][c.version]
	each, longer := len(raw)/count, len(raw)%count // the last blocks have a byte more
	parts := make([][]byte, count)
	at := 0
	for k := range each + 1 - check { // data first, the extra bytes last
		for i := range parts {
			if k == each-check && i < count-longer {
				continue
			}
			parts[i] = append(parts[i], raw[at])
			at++
		}
	}
	for range check {
		for i := range parts {
			parts[i] = append(parts[i], raw[at])
			at++
		}
	}
	var out []byte
	for _, p := range parts {
		if !mend(p, check) {
			return nil, false
		}
		out = append(out, p[:len(p)-check]...)
	}
	return out, true
}
