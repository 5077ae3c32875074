package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"plashet/engine/cut/testdata/orlib"
)

// arc of the flow: from one length in a bin to another. Item is the place in
// model.w of the piece that lies there, -1 for what stays empty.
type arc struct{ from, to, item int }

// model is bin packing as a flow of bins through the lengths 0 ... capacity
// (J. M. Valerio de Carvalho, Annals of Operations Research 86 (1999)): a bin is
// a path from 0 to the capacity, its arcs are its pieces, and the flow along the
// arcs of a piece is at least as often as it is wanted.
type model struct {
	capacity int
	w, d     []int // lengths, longest first, and how often each is wanted
	arcs     []arc
}

// arcFlow makes the model with that paper's reduction: along a path pieces come
// longest first, so an arc starts only where arcs of pieces at least as long
// lead, no more of them than are wanted, and empty length comes last.
func arcFlow(in orlib.Instance) model {
	m := model{capacity: in.Capacity}
	pieces := slices.Clone(in.Pieces)
	slices.Sort(pieces)
	slices.Reverse(pieces)
	by := in.Capacity
	for _, l := range pieces {
		by = gcd(by, l)
	}
	m.capacity /= by
	for _, l := range pieces {
		if n := len(m.w); n == 0 || m.w[n-1] != l/by {
			m.w, m.d = append(m.w, l/by), append(m.d, 0)
		}
		m.d[len(m.d)-1]++
	}
	reached := make([]bool, m.capacity+1)
	reached[0] = true
	for i, w := range m.w {
		drawn := make([]bool, m.capacity+1) // arcs of this piece, by where they start
		starts := slices.Clone(reached)
		for range m.d[i] {
			next := make([]bool, m.capacity+1)
			for p := 0; p+w <= m.capacity; p++ {
				if !starts[p] {
					continue
				}
				if !drawn[p] {
					drawn[p] = true
					m.arcs = append(m.arcs, arc{p, p + w, i})
				}
				reached[p+w], next[p+w] = true, true
			}
			starts = next
		}
	}
	for p := 1; p < m.capacity; p++ {
		if reached[p] {
			m.arcs = append(m.arcs, arc{p, m.capacity, -1})
		}
	}
	return m
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// write gives the model as an integer program in the LP text format.
func (m model) write(out io.Writer) error {
	n := m.capacity
	into, from := make([][]string, n+1), make([][]string, n+1)
	lies := make([][]string, len(m.w))
	var names []string
	for _, a := range m.arcs {
		name := fmt.Sprintf("x_%d_%d_%d", a.from, a.to, a.item+1)
		names = append(names, name)
		from[a.from] = append(from[a.from], name)
		into[a.to] = append(into[a.to], name)
		if a.item >= 0 {
			lies[a.item] = append(lies[a.item], name)
		}
	}
	var b strings.Builder
	b.WriteString("Min\n bins: z\nSubject To\n")
	row := func(name string, plus, minus []string, more, rest string) {
		fmt.Fprintf(&b, " %s:%s", name, more)
		for _, x := range plus {
			fmt.Fprintf(&b, "\n + %s", x)
		}
		for _, x := range minus {
			fmt.Fprintf(&b, "\n - %s", x)
		}
		fmt.Fprintf(&b, "\n %s\n", rest)
	}
	for p := range n + 1 {
		switch {
		case p == 0:
			row("start", nil, from[0], " z", "= 0")
		case p == n:
			row("end", into[n], nil, " - z", "= 0")
		case len(into[p])+len(from[p]) > 0:
			row(fmt.Sprintf("at_%d", p), into[p], from[p], "", "= 0")
		}
	}
	for i := range m.w {
		row(fmt.Sprintf("piece_%d", i+1), lies[i], nil, "", fmt.Sprintf(">= %d", m.d[i]))
	}
	fmt.Fprintf(&b, "Generals\n z\n %s\nEnd\n", strings.Join(names, "\n "))
	_, err := io.WriteString(out, b.String())
	return err
}
