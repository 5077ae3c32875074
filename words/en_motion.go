package words

// enMotion holds the sentences for start and stop. The codes and their
// arguments are listed in engine/motion/code.go and engine/design/motioncodes.go.
var enMotion = map[string]string{
	"motion.value.finite": "{where}: “{name}” is not a number that can be used. Enter it again.",
	"motion.value.range":  "{where}: “{name}” is {found}; the limit of what is possible is {limit}. Check the figure and its unit.",
	"motion.missing":      "{where}: “{name}” is not given, and start and stop cannot be followed without it. Add it.",
	"motion.supply":       "{where}: at a level that the water comes to in start or stop, pump and pipe have no steady flow, so start and stop are not told. Look at the pump's curve and the runs.",
	"motion.steps":        "{where}: start and stop could not be followed to the end; the water levels at rest and running stand. Look for a box, pool or vault of hardly any size.",

	"design.motion.first.dry":      "At first start the vault falls faster than the pond feeds it: the pump draws air {at} after the start, for {lasts}. In the end the water suffices. Stand by with a hose at first start, and fill the vault and the box at the top beforehand.",
	"design.motion.restart.dry":    "At every start the vault falls faster than the pond feeds it: the pump draws air {at} after the start, for {lasts}, which wears it out. In the end the water suffices. Widen the skimmer's weir, lower its sill, make the vault larger, or start the pump slowly.",
	"design.motion.cut.spills":     "Should the power fail {after} after the first start, the pond is at its rim {at} later and {spill:both} runs over. Leave more room under the rim, or build an overflow that leads away from the house.",
	"design.motion.rain.spills":    "With {rain:both} of rain in {over} after a stop, on the pond and on its streams and pools, the pond is at its rim {at} after the rain begins, and {spill:both} runs over. Build an overflow that leads away from the house, or raise the rim.",
	"design.motion.first.spills":   "In the first start the pond is at its rim {at} after the start, and {spill:both} runs over: more is topped up than the streams take. Set the float valve lower.",
	"design.motion.restart.spills": "At every start the pond is at its rim {at} after the start, and {spill:both} runs over: more is topped up than the streams take. Set the float valve lower.",
	"design.motion.stop.spills":    "After a stop the pond is at its rim {at} later, and {spill:both} runs over on the way, although it would come to rest below. Set a float valve lower, raise the rim, or lower the water line.",
	"design.motion.leak.spills":    "Should the check valve leak, the pond is at its rim {at} after a stop, and {spill:both} runs over. Set a float valve lower, leave more room under the rim, or build an overflow that leads away from the house.",
	"design.motion.open.spills":    "Should the check valve stick open, the pond is at its rim {at} after a stop, and {spill:both} runs over. Set a float valve lower, leave more room under the rim, or build an overflow that leads away from the house.",
	"design.motion.pump.spills":    "When pump “{name}” stops and the others run on, the pond is at its rim {at} later, and {spill:both} runs over. Leave more room under the rim, or build an overflow that leads away from the house.",
	"design.motion.first.stalls":   "At first start pump {name} stops lifting water {at} after the start, though it runs and has water: the vault has fallen by {fall:both}, and at no flow the pump does not lift from that low to the lip. It stands, or starts and stops by itself, and overheats. Top the vault up with a hose until the streams are full, or take a pump with more head.",
	"design.motion.restart.stalls": "At every start pump {name} stops lifting water {at} after the start, though it runs and has water: the vault has fallen by {fall:both}, and at no flow the pump does not lift from that low to the lip. It stands, or starts and stops by itself, and overheats. Take a pump with more head, or set the lip lower.",
	"design.motion.slow":           "A start is not at an end {after} after it begins: {flow:both} takes longer to fill pipe, boxes, streams and pools. Watch the vault until water comes back into the pond over the last lip, with a hose at hand.",
	"design.motion.slowhead":       "A start is not at an end {after} after it begins: the pump lifts nearly as high as it can, and gives only {flow:both}. It is the head that lacks, not the water. Take a pump with more head, or larger pipe.",
	"design.motion.shut":           "Should the check valve[ in “{run}”] stick shut, pump {name} runs and moves nothing: no water comes over a lip[ but the {left:both} of the other pumps]. It pushes with {head:both} against the valve[, and all of its {watts} warm the water round it: a litre boils after {boils}, or a little later]. That spoils the seal and trips or burns the motor. Where no water comes a minute or two after the pipe should be full, switch off at the breaker and let it cool before anyone opens the union: the water behind it may be hot and under pressure. Then clean the valve or replace it.",
	"design.motion.shutbranch":     "Should the check valve in “{run}” stick shut,[ “{feed}” gets no water, and] the others get {left:both} together. Switch off before anyone opens the pipe; then clean the valve or replace it.",
	"design.motion.pump.open":      "Should the check valve in the leg of pump “{name}” stick open, {back:both} runs back through that pump while it stands and the others run, and turns it backwards; {left:both} is left for all feeds together. Do not switch it on while it turns backwards. Close a valve in its leg, then clean the check valve or replace it.",
	"design.motion.leak":           "With a check valve that leaks, the water is not still {after} after a stop: {back:both} has come back through it by then, and what is behind the valve keeps coming. Look at the levels the next morning: pipe and box may stand empty, and the start is then like one without a valve.",

	"assume.motion.runup": "The time in which the pump comes up to speed is not given; {value} was assumed. A soft start takes longer.",
	"assume.motion.pump":  "How hard water runs back through a pump that stands still is not given; K = {value} on the speed in the pipe at the pump was assumed. It moves how fast the water comes back, not how much.",
	"assume.motion.leak":  "What a worn check valve leaves open is not given; {value} of its bore was assumed. A grain of sand or a twig in it leaves much more.",
	"assume.motion.rain":  "In what time the design rain falls is not given; {value} was assumed, a cloudburst.",
	"assume.motion.pool":  "Pool “{name}” leaks, and how fast is not given; it was assumed to run empty in {value}.",
}
