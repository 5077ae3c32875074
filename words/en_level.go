package words

// enLevel holds the sentences for the water levels. The codes and their
// arguments are listed in engine/level/codes.go.
var enLevel = map[string]string{
	"level.value.finite":  "{where}: “{name}” is not a number that can be used. Enter it again.",
	"level.value.range":   "{where}: “{name}” is {found}; the limit of what is possible is {limit}. Check the figure and its unit.",
	"level.missing":       "{where}: “{name}” is not given, and the levels cannot be worked out without it. Add it.",
	"level.section.order": "{where}: step {step} of the pond's side (the first is 0): “{name}” is {found}, and the step before has {limit}. A side goes down and inward. Put the steps in order.",

	"levels.start.starves":   "At first start the pond falls to {over:both} over the sill; the skimmer needs {needed:both}, so {short:both} is missing. The vault is cut off and the pump draws air. Stand by with a hose at first start, and top up until the streams are full.",
	"levels.restart.starves": "At every start the pond falls to {over:both} over the sill; the skimmer needs {needed:both}, so {short:both} is missing. The vault is cut off and the pump draws air. Lower the sill, make the pond larger, or take less flow.",
	"levels.run.reserve":     "Once the evaporation reserve is gone, {over:both} stands over the sill; the skimmer needs {needed:both}, so {short:both} is missing. Top up sooner, fit an automatic fill, or lower the sill.",
	"levels.pump.low":        "Running, {depth:both} of water stands in the vault; the pump's sheet asks for {needed:both}, so {short:both} is missing. Set the pump lower, or deepen the vault.",
	"levels.pump.reserve":    "Once the evaporation reserve is gone, {depth:both} of water stands in the vault; the pump's sheet asks for {needed:both}, so {short:both} is missing. Top up sooner, or set the pump lower.",
	"levels.stop.spills":     "After a stop the water comes to {level:both}; the rim is at {rim:both}. It stands {over:both} too high, and {spill:both} runs over. Raise the rim, lower the water line, or make the pond larger.",
	"levels.stop.rain":       "After a stop {room:both} is left under the rim; the design rain raises the water by {rain:both}, and {spill:both} runs over. Build an overflow that leads away from the house, or raise the rim.",
	"levels.valve.spills":    "Should the check valve stick open, a stop brings the water to {level:both}; the rim is at {rim:both}. It stands {over:both} too high, and {spill:both} runs over. Leave more room under the rim, or build an overflow.",
	"levels.valve.rain":      "Should the check valve stick open, {room:both} is left under the rim after a stop; the design rain raises the water by {rain:both}, and {spill:both} runs over. Build an overflow that leads away from the house.",
	"levels.sill.dry":        "The sill is at {sill:both} and the water line at {line:both}: the pond never feeds the vault. Set the sill below the water line.",
	"levels.line.over":       "The water line is at {line:both}, above the rim at {rim:both}: the pond runs over. Raise the rim or lower the line.",
	"levels.line.none":       "No running line will do: to feed the pump it must be at {low:both} or higher, to keep a stop under the rim at {high:both} or lower. Raise the rim, lower the sill, or make the pond larger.",
	"levels.pond.empty":      "Pipes, streams and pools take more water than the pond has; {missing:both} is missing. Make the pond larger, or the streams smaller.",

	"assume.levels.pump.minimum": "The least water depth of the pump is not given; it was assumed that it runs down to the floor it stands on. Look on the maker's sheet.",
}
