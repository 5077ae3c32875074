package network

import (
	"math"
	"strconv"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// Laws of these tests: none of them is made by package hydro, so that a fault
// there cannot hide one here.

// power is sign(q) r |q|^n: a pipe by Hazen-Williams (n = 1.852), laminar flow
// (1), a lip (2/3).
type power struct{ r, n float64 }

func (p power) Loss(q unit.Flow) (unit.Head, float64) {
	a := math.Abs(float64(q))
	if a == 0 {
		switch {
		case p.n < 1:
			return 0, math.Inf(1)
		case p.n == 1:
			return 0, p.r
		}
		return 0, 0
	}
	h := p.r * math.Pow(a, p.n)
	return unit.Head(math.Copysign(h, float64(q))), p.n * h / a
}

// mixed is a q + r q|q|.
type mixed struct{ a, r float64 }

func (m mixed) Loss(q unit.Flow) (unit.Head, float64) {
	x := math.Abs(float64(q))
	return unit.Head((m.a + m.r*x) * float64(q)), m.a + 2*m.r*x
}

// parabola is a pump: head = shutoff - bend q².
type parabola struct{ shutoff, bend float64 }

func (p parabola) Loss(q unit.Flow) (unit.Head, float64) {
	return unit.Head(p.bend*float64(q)*math.Abs(float64(q)) - p.shutoff), 2 * p.bend * math.Abs(float64(q))
}

// cracking is a check valve that needs a head to open.
type cracking struct{ head, r float64 }

func (c cracking) Loss(q unit.Flow) (unit.Head, float64) {
	return unit.Head(c.head + c.r*float64(q)*math.Abs(float64(q))), 2 * c.r * math.Abs(float64(q))
}

// options narrow the random networks to where a property is a theorem.
type options struct {
	noLips    bool
	noPumps   bool
	noDemands bool
	noShut    bool
	real      bool // pipes, fittings, lips and pumps are those of package hydro
}

// anyNetwork draws a network: trees and loops, parallel links, dead ends,
// parts that touch nothing, every kind of node and element.
func anyNetwork(t *rapid.T, o options) Network {
	var n Network
	fixed := rapid.IntRange(1, 3).Draw(t, "levels")
	free := rapid.IntRange(1, 10).Draw(t, "junctions")
	lips := rapid.IntRange(0, 3).Draw(t, "lips")
	if o.noLips {
		lips = 0
	}
	for i := range fixed {
		n.AddNode(Node{Name: "level " + strconv.Itoa(i), Kind: FixedLevel, Level: unit.Length(rapid.Float64Range(-1, 6).Draw(t, "level"))})
	}
	for i := range lips {
		x := Node{Name: "lip " + strconv.Itoa(i), Kind: FreeLip, Level: unit.Length(rapid.Float64Range(-1, 8).Draw(t, "crest"))}
		x.Law = power{rapid.Float64Range(0.5, 4).Draw(t, "weir"), 2.0 / 3}
		if o.real {
			x.Law = realLip(t)
		}
		switch rapid.IntRange(0, 3).Draw(t, "lip kind") {
		case 0:
			x.Pours, x.Inlet = true, x.Level+unit.Length(rapid.Float64Range(-0.2, 0.3).Draw(t, "inlet"))
		case 1:
			x.Kind, x.Law = OpenEnd, Quadratic(rapid.Float64Range(1e3, 1e5).Draw(t, "exit"))
		}
		n.AddNode(x)
	}
	for i := range free {
		n.AddNode(Node{Name: "junction " + strconv.Itoa(i)})
	}
	extra := rapid.IntRange(0, 6).Draw(t, "extra links")
	nodes := len(n.Nodes)
	for i := 1; i < nodes; i++ {
		if rapid.IntRange(0, 11).Draw(t, "apart") == 0 {
			continue
		}
		n.AddLink(anyLink(t, o, i, rapid.IntRange(0, i-1).Draw(t, "to")))
	}
	for range extra {
		n.AddLink(anyLink(t, o, rapid.IntRange(0, nodes-1).Draw(t, "from"), rapid.IntRange(0, nodes-1).Draw(t, "to")))
	}
	if len(n.Links) == 0 {
		n.AddLink(anyLink(t, o, 0, nodes-1))
	}
	if !o.noDemands && rapid.IntRange(0, 5).Draw(t, "demands") == 0 {
		k := fixed + lips + rapid.IntRange(0, free-1).Draw(t, "demand at")
		n.Nodes[k].Demand = unit.Flow(rapid.IntRange(-2000, 2000).Draw(t, "demand in mL/s")) * 1e-6
	}
	return n
}

func anyLink(t *rapid.T, o options, from, to int) Link {
	l := Link{Name: "link", From: from, To: to}
	if rapid.Bool().Draw(t, "turned") {
		l.From, l.To = to, from
	}
	if o.real {
		l.Parts = append(l.Parts, realPipe(t)...)
	} else {
		l.Parts = append(l.Parts, Part{Name: "pipe", Law: anyPipe(t)})
	}
	switch rapid.IntRange(0, 9).Draw(t, "element") {
	case 0:
		l.Parts = append(l.Parts, Part{Name: "check", Role: CheckValve})
	case 1:
		l.Parts = append(l.Parts, Part{Name: "check", Role: CheckValve, Law: cracking{rapid.Float64Range(0, 0.3).Draw(t, "crack"), 2e4}, Reverse: rapid.Bool().Draw(t, "reverse")})
	case 2, 3:
		switch {
		case o.noPumps:
		case o.real:
			l.Parts = append(l.Parts, Part{Name: "pump", Role: Pump, Law: realPump(t)})
		default:
			l.Parts = append(l.Parts, Part{Name: "pump", Role: Pump, Law: anyPump(t)})
		}
	case 4:
		if !o.noShut {
			l.Parts = append(l.Parts, Part{Name: "valve", Shut: rapid.IntRange(0, 2).Draw(t, "shut") == 0})
		}
	}
	return l
}

func anyPipe(t *rapid.T) Law {
	size := math.Pow(10, rapid.Float64Range(3.5, 6.5).Draw(t, "resistance"))
	switch rapid.IntRange(0, 3).Draw(t, "law") {
	case 0:
		return Quadratic(size)
	case 1:
		return power{size * 0.36, 1.852}
	case 2:
		return power{size / 300, 1}
	}
	return mixed{size / 1e4, size}
}

func anyPump(t *rapid.T) Law {
	return parabola{rapid.Float64Range(0.5, 12).Draw(t, "shutoff"), math.Pow(10, rapid.Float64Range(4, 7).Draw(t, "bend"))}
}
