package hydro

import (
	"math"

	"plashet/engine/unit"
)

// BoreArea is the area of a round bore: pi D² / 4. Plane geometry. NaN for a
// diameter that is not a number.
func BoreArea(bore unit.Length) unit.Area {
	return unit.Area(math.Pi / 4 * float64(bore) * float64(bore))
}

// PipeVolume is the water in a full pipe: pi D² / 4 x L. Solid geometry.
func PipeVolume(bore, length unit.Length) unit.Volume {
	return unit.Volume(float64(BoreArea(bore)) * float64(length))
}
