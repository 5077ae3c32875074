package hydro

import "math"

// The Colebrook-White formula, solved to the last digits.
//
// With F = ln(10)/(2 sqrt f) and x = rel Re ln(10)/18.574 (18.574 = 2·3.7·2.51)
// it reads
//
//	F + ln(x + F) = ln(a),  a = Re ln(10)/5.02  (5.02 = 2·2.51)
//
// (Clamond, Efficient resolution of the Colebrook equation, Ind. Eng. Chem.
// Res. 48 (2009) 3665, equation 10). The sum y = x + F is Wright's omega
// function of u = x + ln(a): y + ln y = u.
//
//   - Start: y is near u - ln u (1 - 1/u), the head of its asymptotic series
//     (Corless and others, On the Lambert W function, Adv. Comput. Math. 5
//     (1996) 329), with the logarithms taken from a table of 256 nodes, good to
//     0.002.
//   - The start is moved to the nearest node s, whose logarithm the table
//     holds exactly; so the only full logarithm is that of a.
//   - With y = s (1 - w) what is left is s w - ln(1 - w) = e, e the formula's
//     defect at s. With z = e/(1+s), c = 1/(1+s) its series is
//     -ln(1-w) = z + (1-c) (z²/2 + (1/3 - c/2) z³ + (1/4 - 5c/6 + 5c²/8) z⁴),
//     which leaves about 1e-14, because z stays under 0.004; and F is
//     ln(a) - ln(s) - ln(1-w).
//
// A table and short series in place of three calls of math.Log make it three
// to four times as fast; friction_test.go holds it against 40 digits. The
// derivative follows from the formula: dF/d(ln Re) = F/(1 + y).

const (
	lnNodes      = 256
	nodeShift    = 52 - 8
	nodeMask     = lnNodes - 1
	mantissaMask = 1<<52 - 1
	exponentBias = 1023
	oneBits      = exponentBias << 52
	halfNodeBits = 1 << (nodeShift - 1)

	halfLn10 = math.Ln10 / 2
	perRe    = math.Ln10 / 18.574
	perA     = math.Ln10 / 5.02
)

// lnNode is a node c = 1 + (i + 1/2)/256 of the table.
type lnNode struct{ ln, inverse float64 }

var lnTable = func() (t [lnNodes]lnNode) {
	for i := range t {
		c := 1 + (float64(i)+0.5)/lnNodes
		t[i] = lnNode{math.Log(c), 1 / c}
	}
	return t
}()

// splitNode takes a positive normal number apart: its power of two and the
// table's node for its mantissa, so that ln is near power·ln 2 + node.ln.
func splitNode(x float64) (bits uint64, power int64, node *lnNode) {
	bits = math.Float64bits(x)
	return bits, int64(bits>>52) - exponentBias, &lnTable[bits>>nodeShift&nodeMask]
}

// colebrook solves the formula for a wall (relative roughness · perRe) at
// re >= TurbulentStart. It gives 1/F, so that sqrt f = halfLn10/F, and
// 1/(1+y), which is -1/2 of d(ln f)/d(ln Re).
func colebrook(wallPerRe, re float64) (inverseF, share float64) {
	x := wallPerRe * re
	bitsA, powerA, nodeA := splitNode(re * perA)
	lnA := float64(powerA)*math.Ln2 + nodeA.ln
	u := x + lnA

	bitsU, powerU, nodeU := splitNode(u)
	lnU := float64(powerU)*math.Ln2 + nodeU.ln
	inverseU := math.Float64frombits((2*exponentBias-bitsU>>52)<<52) * nodeU.inverse
	bitsS, powerS, nodeS := splitNode(u - lnU*(1-inverseU))
	s := math.Float64frombits(bitsS&^(1<<nodeShift-1) | halfNodeBits)
	lnS := float64(powerS)*math.Ln2 + nodeS.ln
	c := 1 / (1 + s)

	// a's place beside its node makes its logarithm full
	mantissa := math.Float64frombits(bitsA&mantissaMask | oneBits)
	centre := math.Float64frombits(bitsA&(nodeMask<<nodeShift) | oneBits | halfNodeBits)
	r := (mantissa - centre) * nodeA.inverse
	lnA += r * (1 + r*(-0.5+r*(1.0/3-0.25*r)))

	z := ((s - x) - lnA + lnS) * c
	zz := z * z
	series := z + (1-c)*zz*((0.5+z*(1.0/3-0.5*c))+zz*(0.25-c*(5.0/6-0.625*c)))
	f := (lnA - lnS) + series // s(1-w) - x would drown in a great x
	d := z - c*series         // 1 + y = (1+s)(1-d)
	return 1 / f, c * (1 + d*(1+d*(1+d*(1+d))))
}
