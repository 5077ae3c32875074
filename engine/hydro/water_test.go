package hydro

import (
	"math"
	"testing"

	"plashet/engine/unit"
)

func TestWaterRange(t *testing.T) {
	for _, bad := range []unit.Temperature{-0.01, 100.1} {
		_, err := WaterAt(bad)
		wantCode(t, "range", err, CodeRange)
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		_, err := WaterAt(unit.Temperature(bad))
		wantCode(t, "not finite", err, CodeNotFinite)
	}
}

// Triple point 611.657 Pa (IAPWS R7-97, section 8: 611.213 Pa at 273.15 K);
// boiling at 99.974 °C under 101.325 kPa (IAPWS-95); greatest density at
// 3.98 °C.
func TestWaterLandmarks(t *testing.T) {
	near(t, "0 C", waterAt(t, 0).VapourPressure, 611.213, 1e-6, 0)
	near(t, "boiling", waterAt(t, 99.974).VapourPressure, 101325, 1e-4, 0)
	best, at := 0.0, 0.0
	for c := 0.0; c < 10; c += 0.01 {
		if d := waterAt(t, c).DensityKgM3; d > best {
			best, at = d, c
		}
	}
	near(t, "densest at", at, 3.98, 0, 0.03)
}

// Warmer water is thinner and boils sooner, over the whole range.
func TestWaterMonotone(t *testing.T) {
	last := waterAt(t, 0)
	for c := 1.0; c <= 100; c++ {
		w := waterAt(t, c)
		if w.DynamicPaS >= last.DynamicPaS || w.KinematicM2S >= last.KinematicM2S || w.VapourPressure <= last.VapourPressure {
			t.Errorf("%g C: %+v after %+v", c, w, last)
		}
		near(t, "nu rho", w.KinematicM2S*w.DensityKgM3, w.DynamicPaS, 1e-14, 0)
		last = w
	}
	w := waterAt(t, 20)
	near(t, "head and back", w.PressureOf(w.HeadOf(12345)), 12345, 1e-14, 0)
}
