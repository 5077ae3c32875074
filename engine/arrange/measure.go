package arrange

import (
	"math"
)

// measure is what an assembly of a filling is to take the least of. Pipe of one
// size needs none: the least of it takes the least head and costs the least.
type measure uint8

const (
	byLength measure = iota
	byHead
	byCost
)

func slopeOf(p *Pipe) float64 { return p.Slope }
func costOf(p *Pipe) float64  { return p.Cost }

func (m measure) of() func(p *Pipe) float64 {
	switch m {
	case byHead:
		return slopeOf
	case byCost:
		return costOf
	}
	return func(*Pipe) float64 { return 1 }
}

// measures tells what pipe of two sizes is to be held small by.
func measures(a, b *Pipe) []measure {
	head, cost := a.Slope > 0 && b.Slope > 0 && a.Slope != b.Slope, a.Cost > 0 && b.Cost > 0 && a.Cost != b.Cost
	const dust = 1e-12
	switch even := math.Abs(a.Slope*b.Cost-b.Slope*a.Cost) < dust; {
	case head && cost && !even, head && !cost && a.Cost > 0, cost && !head && a.Slope > 0:
		return []measure{byHead, byCost}
	case head:
		return []measure{byHead}
	case cost:
		return []measure{byCost}
	}
	return []measure{byLength}
}

// weight is what a metre of pipe of a size counts for, beside one of the size that
// counts the least.
func (f *fill) weight(size string) float64 {
	if f == nil || f.other() == nil || f.by == byLength {
		return 1
	}
	of := f.by.of()
	least := math.Min(of(f.pipe), of(f.other()))
	if least <= 0 {
		return 1
	}
	return of(f.rates(size)) / least
}

// rate is what a metre takes at least of something, counted by its weight.
func (f *fill) rate(of func(*Pipe) float64) float64 {
	o := f.other()
	if o == nil {
		return of(f.pipe)
	}
	return math.Min(of(f.pipe)/f.weight(f.pipe.Size), of(o)/f.weight(o.Size))
}

// rates gives what a metre of a size of pipe takes of head and costs.
func (f *fill) rates(size string) *Pipe {
	if o := f.other(); o != nil && size == o.Size {
		return o
	}
	return f.pipe
}

// other gives what the pipe is weighed against: that of another size, or the hose.
func (f *fill) other() *Pipe {
	if f.hose != nil {
		return f.hose.hose.pipe
	}
	return f.then
}
