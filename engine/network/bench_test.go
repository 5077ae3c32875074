package network

import (
	"strconv"
	"testing"

	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// The benchmarks use the laws that the design does: Colebrook-White pipes,
// fittings whose K leans on the Reynolds number, lips.

func pvc(b *testing.B, length, bore unit.Length) Part {
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

func fitting(b *testing.B, k unit.Ratio, bore unit.Length) Part {
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

func fall(b *testing.B, width, crest unit.Length) Node {
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

func pondPump(b *testing.B) Part {
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
func single(b *testing.B) Network {
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
func threeFalls(b *testing.B) (n Network, want []Throttle) {
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

// grid is 300 pipes in a mesh of 12 by 13 tees, fed at a corner by a pump,
// with a fall at each of the other corners.
func grid(b *testing.B) Network {
	const rows, columns, bore = 12, 13, 52 * unit.Millimetre
	var n Network
	for i := range rows * columns {
		n.AddNode(Node{Name: "tee " + strconv.Itoa(i)})
	}
	add := func(from, to int) {
		n.AddLink(Link{Name: "pipe", From: from, To: to, Parts: []Part{pvc(b, 2+unit.Length(from%7), bore)}})
	}
	for r := range rows {
		for c := range columns {
			i := r*columns + c
			if c+1 < columns {
				add(i, i+1)
			}
			if r+1 < rows {
				add(i, i+columns)
			}
		}
	}
	vault := n.AddNode(Node{Name: "vault", Kind: FixedLevel})
	n.AddLink(Link{Name: "pump", From: vault, To: 0, Parts: []Part{pondPump(b), pvc(b, 2, bore)}})
	for i, corner := range []int{columns - 1, (rows - 1) * columns, rows*columns - 1} {
		n.AddLink(Link{Name: "out", From: corner, To: n.AddNode(fall(b, 0.5, unit.Length(1+i))), Parts: []Part{pvc(b, 3, bore)}})
	}
	for i := 0; len(n.Links) < 300; i++ {
		add(i, i+columns+1)
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
	b.Run("again", func(b *testing.B) { // from the last answer
		b.ReportAllocs()
		for b.Loop() {
			if s.Solve(st) != StopConverged {
				b.Fatal(s.Messages(st))
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

func BenchmarkGrid300(b *testing.B) { solving(b, grid(b)) }
