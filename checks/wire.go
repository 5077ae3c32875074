package checks

import (
	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// electrical holds the voltage drop against published examples.
func electrical() ([]Check, error) {
	perThousandFeet := func(ohm float64) float64 { return ohm / float64(1000*unit.Foot) }
	const feet = unit.Foot
	byTable := func(id string, ohm float64) worked {
		return given(id, unit.Volt)(hydro.VoltageDrop(8, 150*feet, perThousandFeet(ohm)))
	}
	return fromExamples("electrical", []worked{
		given("E62", unit.Volt)(hydro.VoltageDrop(4, 100*feet, perThousandFeet(4.99))),
		given("E63", unit.Volt)(hydro.VoltageDropByArea(20, 100*feet, 6530*hydro.CircularMil, hydro.CopperResistivity)),
		byTable("E65", 3.14),
		byTable("E66", 1.98),
		byTable("E68", 0.778),
		byTable("E69", 0.491),
	})
}
