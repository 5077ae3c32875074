package hydro

import (
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// CrestKind is the form of a lip's edge; the words are those of the job.
type CrestKind string

// The kinds of crest.
const (
	CrestThin  CrestKind = "thin"  // a plate or blade: a sharp-crested weir
	CrestBroad CrestKind = "broad" // a flat sill long in the flow: critical depth on it
	CrestStone CrestKind = "stone" // rounded or rough stone
)

// rootFoot turns a weir coefficient from ft^0.5/s to m^0.5/s.
var rootFoot = math.Sqrt(float64(unit.Foot))

// Weir coefficients C of Q = C L H^1.5, in ft^0.5/s as they are published.
const (
	francisUS     = 3.33 // sharp crest, no contraction
	stormLowUS    = 3.27 // 3.27 + 0.40 H/P at H/P = 0
	stormHighUS   = 3.67 // the same at H/P = 1
	stoneLowUS    = 2.6
	stoneHighUS   = 3.3
	cipollettiUS  = 3.367
	broadLeastRel = 0.85 // friction on a small broad sill, against the ideal
)

// WeirCoefficient is C of Q = C L H^1.5 in m^0.5/s (metres, seconds), with the
// range in which it usually lies and where it comes from.
type WeirCoefficient struct {
	C, Low, High float64 // m^0.5/s
	Source       trace.Source
}

// Coefficient gives the usual weir coefficient of a kind of crest; an unknown
// kind gives an error with CodeWord.
//
//   - thin: Francis, 3.33 ft^0.5/s = 1.838 m^0.5/s, for a crest as wide as its
//     approach and a length above 3 H. The range is that of 3.27 + 0.40 H/P.
//     Kindsvater and Carter's full-width formula (KindsvaterCarter) wants the
//     crest's height over the bed too; at H 20 mm it gives 5 percent more.
//   - broad: critical flow, 2/3 sqrt(2g/3) = 1.705 m^0.5/s, no loss on the
//     sill; down to 0.85 of it on a small rough one (from memory of ISO 3846).
//   - stone: between 2.6 and 3.3 ft^0.5/s; the middle, 1.629 m^0.5/s.
//
// All were measured at heads of some 3 cm and more; see ClingHead.
func (k CrestKind) Coefficient() (WeirCoefficient, error) {
	switch k {
	case CrestThin:
		return WeirCoefficient{francisUS * rootFoot, stormLowUS * rootFoot, stormHighUS * rootFoot, trace.Source{
			Title: "Francis, Q = 3.33 L H^1.5 (US), 1.84 (SI); pages on the Francis formula",
			Basis: trace.BasisPublished,
			Note:  "crest length above 3 H; range from 3.27 + 0.40 H/P, city stormwater manual figure 3.2.13 (2014), equation 6",
		}}, nil
	case CrestBroad:
		c := 2.0 / 3 * math.Sqrt(2*unit.StandardGravity/3)
		return WeirCoefficient{c, broadLeastRel * c, c, trace.Source{
			Title: "critical flow over a broad crest, 2/3 sqrt(2g/3); San Diego State University, CIVE 530",
			Basis: trace.BasisPublished,
			Note:  "no loss on the sill; the low end is from memory of ISO 3846",
		}}, nil
	case CrestStone:
		return WeirCoefficient{(stoneLowUS + stoneHighUS) / 2 * rootFoot, stoneLowUS * rootFoot, stoneHighUS * rootFoot, trace.Source{
			Title: "common practice, no source",
			Basis: trace.BasisPractice,
			Note:  "the middle of 2.6 to 3.3 ft^0.5/s, between a broad crest with friction and a sharp one",
		}}, nil
	}
	return WeirCoefficient{}, fail(CodeWord, trace.Str("name", "crest"), trace.Str("found", string(k)))
}
