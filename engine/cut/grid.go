package cut

import (
	"math"

	"plashet/engine/unit"
)

// gridTolerance is how far off the grid a length may lie, in steps, and still
// count as on it: far more than the rounding of a conversion, far less than
// anything measured.
const gridTolerance = 1e-6

// grid turns lengths into steps and notes what is wrong with them.
type grid struct {
	step    unit.Length
	round   bool
	faults  *faults
	rounded []Rounded
}

// direction of rounding.
type direction uint8

const (
	up direction = iota
	down
)

// steps gives the length in steps of the grid, at least least; zero when it is
// faulty.
func (g *grid) steps(l unit.Length, path string, least int, to direction) int {
	x := float64(l) / float64(g.step)
	if math.IsNaN(x) || x < 0 || (x == 0 && least > 0) {
		g.faults.add(CodeLength, path, argLength("found", l))
		return 0
	}
	if x > MaxSteps {
		g.faults.add(CodeLong, path, argLength("found", l), argLength("limit", g.length(MaxSteps)))
		return 0
	}
	n := math.Round(x)
	if math.Abs(x-n) > gridTolerance {
		if !g.round {
			g.faults.add(CodeOffGrid, path, argLength("found", l), argLength("grid", g.step))
			return 0
		}
		n = math.Ceil(x)
		if to == down {
			n = math.Floor(x)
		}
		g.rounded = append(g.rounded, Rounded{Path: path, From: l, To: g.length(int(n))})
	}
	if int(n) < least {
		g.faults.add(CodeLength, path, argLength("found", l))
		return 0
	}
	return int(n)
}

func (g *grid) length(steps int) unit.Length { return unit.Length(steps) * g.step }
