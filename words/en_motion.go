package words

// enMotion holds the sentences for start and stop. The codes and their
// arguments are listed in engine/motion/code.go and engine/design/motioncodes.go.
var enMotion = map[string]string{
	"motion.value.finite": "{where}: “{name}” is not a number that can be used. Enter it again.",
	"motion.value.range":  "{where}: “{name}” is {found}; the limit of what is possible is {limit}. Check the figure and its unit.",
	"motion.missing":      "{where}: “{name}” is not given, and start and stop cannot be followed without it. Add it.",
	"motion.supply":       "{where}: at a level that the water comes to in start or stop, pump and pipe have no steady flow, so start and stop are not told. Look at the pump's curve and the runs.",
	"motion.steps":        "{where}: start and stop could not be followed to the end; the water levels at rest and running stand. Look for a box, pool or vault of hardly any size.",

	"design.motion.first.dry":   "At first start the vault falls faster than the pond feeds it: the pump draws air {at} after the start, for {lasts}. In the end the water suffices. Stand by with a hose at first start, and fill the vault and the box at the top beforehand.",
	"design.motion.restart.dry": "At every start the vault falls faster than the pond feeds it: the pump draws air {at} after the start, for {lasts}, which wears it out. In the end the water suffices. Widen the skimmer's weir, lower its sill, make the vault larger, or start the pump slowly.",
	"design.motion.cut.spills":  "Should the power fail {after} after the first start, the pond is at its rim {at} later and {spill:both} runs over. Leave more room under the rim, or build an overflow that leads away from the house.",
	"design.motion.rain.spills": "With {rain:both} of rain in {over} after a stop, on the pond and on its streams and pools, the pond is at its rim {at} after the rain begins, and {spill:both} runs over. Build an overflow that leads away from the house, or raise the rim.",
	"design.motion.leak":        "With a check valve that leaks, the water is not still {after} after a stop: {back:both} has come back through it by then, and what is behind the valve keeps coming. Look at the levels the next morning: pipe and box may stand empty, and the start is then like one without a valve.",

	"assume.motion.runup": "The time in which the pump comes up to speed is not given; {value} was assumed. A soft start takes longer.",
	"assume.motion.pump":  "How hard water runs back through a pump that stands still is not given; K = {value} on the speed in the pipe at the pump was assumed. It moves how fast the water comes back, not how much.",
	"assume.motion.leak":  "What a worn check valve leaves open is not given; {value} of its bore was assumed. A grain of sand or a twig in it leaves much more.",
	"assume.motion.rain":  "In what time the design rain falls is not given; {value} was assumed, a cloudburst.",
	"assume.motion.pool":  "Pool “{name}” leaks, and how fast is not given; it was assumed to run empty in {value}.",
}
