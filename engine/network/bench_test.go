package network

import (
	"math"
	"strconv"
	"testing"

	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// The benchmarks use the laws that the design does: Colebrook-White pipes,
// fittings whose K leans on the Reynolds number, lips.

func pvc(b testing.TB, length, bore unit.Length) Part {
	w, err := hydro.WaterAt(20)
	if err != nil {
		b.Fatal(err)
	}
	p, err := hydro.PipeLaw{Bore: bore, Length: length, Roughness: 0.0015 * unit.Millimetre}.Prepare(w)
	if err != nil {
		b.Fatal(err)
	}
	return Part{Name: "pipe", Law: p}
}

func fitting(b testing.TB, k unit.Ratio, bore unit.Length) Part {
	w, err := hydro.WaterAt(20)
	if err != nil {
		b.Fatal(err)
	}
	m, err := hydro.MinorLaw{Bore: bore, K: k}.Prepare(w)
	if err != nil {
		b.Fatal(err)
	}
	return Part{Name: "fitting", Law: m}
}

func fall(b testing.TB, width, crest unit.Length) Node {
	c, err := hydro.CrestBroad.Coefficient()
	if err != nil {
		b.Fatal(err)
	}
	l, err := hydro.LipLaw{Width: width, C: c.C}.Prepare()
	if err != nil {
		b.Fatal(err)
	}
	return Node{Name: "fall", Kind: FreeLip, Level: crest, Law: l}
}

// curve is a pump by its curve of six points, as a job gives it.
type curve struct{ *hydro.Curve }

func (c curve) Loss(q unit.Flow) (unit.Head, float64) {
	h, slope, _ := c.Head(q)
	return -h, -slope
}

func pondPump(b testing.TB) Part {
	var d hydro.PumpData
	for i, h := range []unit.Head{8, 7.8, 7.2, 6, 4, 1} {
		d.Points = append(d.Points, hydro.CurvePoint{Flow: unit.Flow(i) * unit.LitrePerSecond, Head: h})
	}
	c, err := hydro.NewCurve(d)
	if err != nil {
		b.Fatal(err)
	}
	return Part{Name: "pump", Role: Pump, Law: curve{c}}
}

// single is a vault, pump, check valve, pipes and fittings to one fall:
// twelve elements in a row.
func single(b testing.TB) Network {
	var n Network
	from, to := n.AddNode(Node{Name: "vault", Kind: FixedLevel}), n.AddNode(fall(b, 0.6, 1.5))
	const bore = 52 * unit.Millimetre
	n.AddLink(Link{Name: "line", From: from, To: to, Parts: []Part{
		pondPump(b), fitting(b, 0.5, bore),
		{Name: "check", Role: CheckValve, Law: Quadratic(4e4)},
		fitting(b, 0.2, bore),
		pvc(b, 4, bore), fitting(b, 0.4, bore), pvc(b, 8, bore), fitting(b, 0.4, bore), fitting(b, 0.2, bore),
		pvc(b, 3, bore), fitting(b, 1, bore), fitting(b, 0.3, bore),
	}})
	return n
}

// threeFalls is a main and a manifold with three falls.
func threeFalls(b testing.TB) (n Network, want []Throttle) {
	const main, branch = 77 * unit.Millimetre, 52 * unit.Millimetre
	at := n.AddNode(Node{Name: "vault", Kind: FixedLevel})
	for i := range 3 {
		tee := n.AddNode(Node{Name: "tee"})
		l := Link{Name: "main", From: at, To: tee, Parts: []Part{pvc(b, 6, main), fitting(b, 0.6, main)}}
		if i == 0 {
			l.Parts = append([]Part{pondPump(b)}, l.Parts...)
		}
		n.AddLink(l)
		v := n.AddNode(fall(b, 0.4, unit.Length(0.5+0.5*float64(i))))
		n.AddLink(Link{Name: "branch", From: tee, To: v, Parts: []Part{pvc(b, 3, branch), fitting(b, 2, branch)}})
		want = append(want, Throttle{Outlet: v, Wanted: 1 * unit.LitrePerSecond, Link: -1, Area: 0.0021})
		at = tee
	}
	return n, want
}

// mesh is so many pipes in a mesh of tees, as near to a square as they go. For
// each hundred pipes a pump feeds it and a fall takes from it, on opposite
// sides.
func mesh(b testing.TB, pipes int) Network {
	const bore = 52 * unit.Millimetre
	side := max(2, int(math.Sqrt(float64(pipes)/2)))
	var n Network
	for i := range side * side {
		n.AddNode(Node{Name: "tee " + strconv.Itoa(i)})
	}
	add := func(from, to int) {
		n.AddLink(Link{Name: "pipe", From: from, To: to, Parts: []Part{pvc(b, 2+unit.Length(from%7), bore)}})
	}
	vault := n.AddNode(Node{Name: "vault", Kind: FixedLevel})
	places := 1 + pipes/100
	for i := range places {
		at := i * side * side / places
		n.AddLink(Link{Name: "pump", From: vault, To: at, Parts: []Part{pondPump(b), {Role: CheckValve}, pvc(b, 2, bore)}})
		v := n.AddNode(fall(b, 0.5, 1+unit.Length(i%3)))
		n.AddLink(Link{Name: "out", From: side*side - 1 - at, To: v, Parts: []Part{pvc(b, 3, bore)}})
	}
	for r := range side {
		for c := range side {
			i := r*side + c
			if c+1 < side {
				add(i, i+1)
			}
			if r+1 < side {
				add(i, i+side)
			}
		}
	}
	for i := 0; len(n.Links) < pipes; i++ { // the rest lie across
		add(i%(side*side-side-1), i%(side*side-side-1)+side+1)
	}
	return n
}

// solving measures solves afresh with the solver made once, and making it.
func solving(b *testing.B, n Network) {
	s, faults := NewSolver(n)
	if len(faults) > 0 {
		b.Fatal(faults)
	}
	st := s.NewState()
	b.Run("solve", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			st.Reset()
			if s.Solve(st) != StopConverged {
				b.Fatal(s.Messages(st))
			}
		}
		b.ReportMetric(float64(st.Iterations), "steps")
	})
	fresh := st.Iterations
	b.Run("near", func(b *testing.B) { // from the answer for a level 1 cm off
		b.ReportAllocs()
		var vault int
		for n.Nodes[vault].Kind != FixedLevel {
			vault++
		}
		level := unit.Length(0)
		for b.Loop() {
			level = 1*unit.Centimetre - level
			s.SetLevel(vault, level)
			if s.Solve(st) != StopConverged {
				b.Fatal(s.Messages(st))
			}
		}
	})
	b.Run("laws", func(b *testing.B) { // the floor: each law once for each step, and nothing else
		for b.Loop() {
			for range fresh {
				for i := range s.chains {
					c := &s.chains[i]
					c.loss(c.q)
				}
			}
		}
	})
	b.Run("make", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			NewSolver(n)
		}
	})
}

func BenchmarkSingleLine(b *testing.B) { solving(b, single(b)) }

func BenchmarkThreeFalls(b *testing.B) {
	n, want := threeFalls(b)
	solving(b, n)
	b.Run("balance", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, faults := n.Balance(want); len(faults) > 0 {
				b.Fatal(faults)
			}
		}
	})
}

// BenchmarkMesh is how a solve grows with the network; docs/speed.md has the
// table.
func BenchmarkMesh(b *testing.B) {
	for _, pipes := range []int{10, 100, 300, 1000, 10000} {
		b.Run(strconv.Itoa(pipes), func(b *testing.B) { solving(b, mesh(b, pipes)) })
	}
}
