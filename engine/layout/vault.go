package layout

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

// Wall names a wall of the vault, or another plane that a part comes too near
// to.
type Wall string

// The walls: left x = 0, right, front y = 0, back. A round vault has one, but
// its hole is still given by the side it looks to.
const (
	Left  Wall = "left"
	Right Wall = "right"
	Front Wall = "front"
	Back  Wall = "back"
	Floor Wall = "floor"
	Lid   Wall = "lid"
	Round Wall = "round"
)

// Vault is the inside of the box the pump stands in.
type Vault struct {
	Round                   bool
	Length, Width, Depth    unit.Length // at the rim; Length is a round vault's diameter; Depth is floor to the underside of the lid
	FloorLength, FloorWidth unit.Length // 0: the walls are upright
	Opening                 Opening     // zero: the whole rim
	Outlet                  Outlet
	Obstacles               []Obstacle // what stands in the way; a wall bowed inward is one more
	Path                    string     // in the job: "/vault"
}

// Opening is a hatch smaller than the rim, through which the pump must pass.
type Opening struct{ FromX, ToX, FromY, ToY unit.Length }

// Outlet is the hole through which the pipe leaves.
type Outlet struct {
	Wall   Wall
	Along  unit.Length // centre along the wall: y on left and right, x on front and back
	Height unit.Length // centre above the floor
}

// Obstacle is a block that nothing may touch.
type Obstacle struct {
	Name string
	Box  geom.Box
}

// Hole is the outlet's place in space.
type Hole struct {
	At   geom.Vec3  // centre, on the wall's inner face
	Axis geom.Vec3  // the way the pipe leaves
	Lean unit.Angle // of the wall from upright there; the fitting's seat leans as much
}

// width gives the inner width at the rim: a round vault is as wide as it is long.
func (v Vault) width() unit.Length {
	if v.Round {
		return v.Length
	}
	return v.Width
}

// slopes give how far the walls across x and those across y stand in from the
// rim per metre of depth below it (negative: the floor is the wider).
func (v Vault) slopes() (sx, sy float64) {
	if v.FloorLength > 0 {
		sx = float64(v.Length-v.FloorLength) / 2 / float64(v.Depth)
	}
	if v.FloorWidth > 0 {
		sy = float64(v.Width-v.FloorWidth) / 2 / float64(v.Depth)
	}
	if v.Round {
		sy = sx
	}
	return sx, sy
}

// Hole gives the outlet's centre on the wall's inner face and the direction in
// which the pipe leaves. Through a flat wall it leaves level and square to the
// rim, also where the wall tapers; through a round wall along the radius. ok
// is false where the hole lies off its wall or no wall is named.
func (v Vault) Hole() (h Hole, ok bool) {
	z, a := float64(v.Outlet.Height), float64(v.Outlet.Along)
	sx, sy := v.slopes()
	below := float64(v.Depth) - z
	insX, insY := sx*below, sy*below
	length, width := float64(v.Length), float64(v.width())
	alongY := v.Outlet.Wall == Left || v.Outlet.Wall == Right // the wall runs along y
	across, span, inset := length, width, insY
	slope, sign := sx, 1.0
	if !alongY {
		across, span, inset, slope = width, length, insX, sy
	}
	switch v.Outlet.Wall {
	case Left, Front:
		sign = -1
	case Right, Back:
	default:
		return Hole{}, false
	}
	if !(z >= 0 && z <= float64(v.Depth)) || !(a >= inset && a <= span-inset) {
		return Hole{}, false
	}
	reach := across/2 - slope*below // from the middle of the vault to the wall
	off := 0.0
	if v.Round {
		if off = a - length/2; math.Abs(off) >= reach {
			return Hole{}, false
		}
	}
	out := math.Sqrt(reach*reach-off*off) * sign
	h.Lean = unit.Angle(math.Atan(slope))
	if alongY {
		h.At = geom.Vec3{X: length/2 + out, Y: a, Z: z}
		h.Axis = geom.Vec3{X: out, Y: off}.Unit()
	} else {
		h.At = geom.Vec3{X: a, Y: width/2 + out, Z: z}
		h.Axis = geom.Vec3{X: off, Y: out}.Unit()
	}
	return h, true
}
