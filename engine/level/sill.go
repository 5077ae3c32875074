package level

import (
	"math"

	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Sill is the weir through which the pond feeds the vault.
type Sill struct {
	Crest unit.Length // elevation
	Width unit.Length // above 0
	C     float64     // weir coefficient in m^0.5/s, above 0 (see hydro.CrestKind)
}

// sillWeir is a sill made ready, with the head that the flow needs over it.
type sillWeir struct {
	crest, flow, head float64
	lip               hydro.Lip
}

// prepare makes the weir w ready in its place.
func (s *Sill) prepare(q unit.Flow, w *sillWeir) error {
	if err := elevation("/vault/sill", "sill", s.Crest); err != nil {
		return err
	}
	if err := w.lip.Renew(hydro.LipLaw{Width: s.Width, C: s.C}); err != nil {
		return err
	}
	h, _ := w.lip.Head(q)
	w.crest, w.flow, w.head = float64(s.Crest), float64(q), float64(h)
	return nil
}

// needed is the pond's level at which the weir just passes the flow falling
// free.
func (s *sillWeir) needed() float64 { return s.crest + s.head }

// over is the head over the sill at which a flow falls free.
func (s *sillWeir) over(q float64) float64 {
	h, _ := s.lip.Head(unit.Flow(q))
	return float64(h)
}

// villemonte is the exponent of the drowned weir's formula.
const villemonte = 0.385

// behind gives the level behind the weir when the pond stands higher than the
// flow needs: the water backs up until the drowned weir passes just the flow.
// Villemonte: Q = Q1 (1 - (h2/h1)^1.5)^0.385, Q1 the free flow at the head h1 of
// the pond over the sill, h2 the head behind; so h2 = h1 (1 - (Q/Q1)^(1/0.385))^
// (2/3). At h1 = needed head h2 is 0; without flow h2 = h1.
//
// It grows with the pond's level by (1-p)^(2/3) + 2/3 h1 (1-p)^(-1/3) p/0.385
// (dQ1/dh1)/Q1, with p = (Q/Q1)^(1/0.385): without bound where the weir just
// passes the flow falling free.
func (s *sillWeir) behind(pond float64) (level, grows float64) {
	h1 := pond - s.crest
	if h1 <= s.head {
		return s.crest, 0
	}
	free, dfree := s.lip.Flow(unit.Head(h1))
	part := math.Exp(math.Log(s.flow/float64(free)) / villemonte) // three times as fast as Pow
	c := math.Cbrt(max(0, 1-part))
	return s.crest + h1*c*c, c*c + 2.0/3*h1/c*part/villemonte*dfree/float64(free)
}

// weirSource says where the head over the sill comes from, drownedSource the
// level behind a drowned one.
var (
	weirSource    = trace.Source{Title: "weir formula, H = (Q / (C L))^(2/3)", Basis: trace.BasisLibrary, Note: "C as given for the sill"}
	drownedSource = trace.Source{
		Title: "Villemonte, Submerged-weir discharge studies, Engineering News-Record, 25 December 1947",
		Basis: trace.BasisMemory,
	}
)
