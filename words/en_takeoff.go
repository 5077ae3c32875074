package words

// enTakeoff holds the names of the items of the material list, its findings and
// its faults. The codes and their arguments are listed in takeoff/codes.go, what
// design finds while it counts in engine/design/fittings.go.
var enTakeoff = map[string]string{
	"assume.takeoff.ends":   "Whether the sticks of pipe have a bell is not given; plain ends were assumed, with a coupling between sticks. Sticks with a bell need none.",
	"assume.takeoff.room":   "The room to work round the vault in its hole is not given; {value} on each side was assumed, the lid level with the ground and the sides upright. Ground that does not stand takes more.",
	"assume.takeoff.trench": "The trench for the pipe is not given; {width} wide and {depth} deep was assumed along all runs, each in a trench of its own. Where it freezes, pipe lies deeper or is drained.",
	"takeoff.pool.sizes":    "Pool “{name}”: its length, width and depth are not all given, so its liner and its digging are not counted. Add them.",
	"takeoff.falls":         "“{name}”: nothing tells how high its falls are together, so the liner down their faces is not counted. Give the crest of its first lip, or the drop of each.",
	"takeoff.vault":         "The sizes of the vault are not all given, so its hole is not counted. Add them.",
	"takeoff.bed":           "The box at the top of “{name}” has stone or filter in it and was taken as ready-made: no liner and no digging are counted for it. If it is a bed in the ground, say that it is lined.",
	"assume.takeoff.soil":   "The soil to dig in is not given; {soil} was assumed, which swells by up to {value}.",
	"assume.takeoff.spare":  "Spare fittings are not given; {value} was assumed: what is broken or lost on the day means a trip.",

	"takeoff.item.fitting":  "{name}[, {size}]",
	"takeoff.item.pipe":     "pipe {name}[, {size}]",
	"takeoff.item.cement":   "solvent cement",
	"takeoff.item.primer":   "primer",
	"takeoff.item.tape":     "thread tape",
	"takeoff.item.liner":    "liner, {place}: {length} x {width}",
	"takeoff.item.underlay": "underlayment, {place}: {length} x {width}",
	"takeoff.item.boulders": "boulders, {place}",
	"takeoff.item.gravel":   "gravel, {place}",
	"takeoff.item.dig":      "digging, measured in the ground",
	"takeoff.item.soil":     "soil left over, loose",
	"takeoff.item.loads":    "truck loads of soil left over",

	"takeoff.how.sticks": "[by the cutting plan {planned}; ][for the rest of the runs, {run} laid end to end, {joined}; ][what the plan leaves serves for {rest} of that; ]not built in: {waste}",

	"takeoff.book":           "There is no book of rules, so no cement, tape, liner, stone or soil is listed.",
	"takeoff.value.finite":   "“{name}” is not a number that can be used. Enter it again.",
	"takeoff.value.range":    "“{name}” is {found}; the limit of what is possible is {limit}. Check the figure and its unit.",
	"takeoff.sticks":         "Pipe {name}[, {size}]: the sticks and offcuts come to {found}; the pieces need {limit}. Plan the cuts again.",
	"takeoff.joints":         "The table of joints per quart does not reach size {size}. Ask for the amount of cement where you buy it.",
	"takeoff.thread":         "There is no {thread} thread of size {size} in the book, so no tape is listed for it. Check the size.",
	"takeoff.soil":           "The soil “{soil}” is not in the table of swell, so its loose volume is not known. Name it as the table does.",
	"takeoff.price.currency": "The price of “{name}” is in “{currency}”; the list is in “{wanted}”. Give it in the list's currency.",
	"takeoff.price.unit":     "The price of “{name}” is for a unit that it is not sold by. Give the price by the unit shown in the list.",
	"takeoff.price.twice":    "There are two prices for “{name}[, {size}]”; the first one counts. Take one away.",

	"takeoff.rules.differ": "{material}, {place}: the rules of the trade give {low} to {high}; they are {found} apart. Price both, and ask the stone yard.",
	"takeoff.price.unused": "The price of “{name}[, {size}]” belongs to nothing in the list or in the tables of pipe and fittings. Check name and size[: {near}].",
	"takeoff.unpriced":     "{found} of {of} items {found:has|have} no price: the sum is not the whole.",
	"takeoff.soil.short":   "The mound takes {limit} of soil, measured in the ground; the holes give {found}. Bring soil, or build it lower.",

	"takeoff.existing": "{where} {count:is|are} there already and {count:stays|stay}: nothing of {count:it|them} is in the list, in the digging or in the price.",

	"design.material.size": "{where}: the run has “{fitting}” in size {run}, the assembly in size {assembly}. It is taken as one and the same: the assembly's is listed, but the flow is worked out with the run's. Make the two agree; what lies beyond the wall in another size gets a run of its own.",

	"takeoff.caution.services": "Danger: before anyone digs, have buried power, gas, water and telephone lines located and marked; in many places the law asks it. Dig by hand near a mark.",
	"takeoff.caution.cavein":   "Danger: the sides of a hole fall in without a sign and bury people, in shallow holes too. A competent person looks at the ground before each shift and after rain; slope or shore the sides as the local law says; keep spoil and machines back from the edge; nobody works in it alone.",
	"takeoff.caution.openhole": "Fence or cover the open hole whenever nobody is by it: people fall in, and it fills with water.",
	"takeoff.caution.lift":     "Danger: stones crush. Move them by machine, with gear rated for the weight, under a competent person; nobody stands under or downhill of a stone. No weight is safe to lift by hand for everyone: where a stone is lifted by hand, follow the local rules.",
	"takeoff.caution.tip":      "Stand clear when a load is tipped, and keep it back from the edge of the hole.",
	"takeoff.caution.solvent":  "Primer and cement burn and harm: keep them closed, cool, away from flame and children; their labels and safety sheets come first.",

	"assume.takeoff.liner.overlap":   "The liner beyond the edge is not given; {value} on each side was assumed. A liner cut short is a new liner.",
	"assume.takeoff.liner.bank":      "How high the liner goes up the sides of a stream is not given; {value} on each side, and behind the topmost fall, was assumed, and a bed dug as deep. It must pass behind every stone that gets wet. A bed built up on fill takes less digging.",
	"assume.takeoff.underlay.layers": "The layers of underlayment are not given; {value} was assumed. Sharp ground wants one over the liner too.",
	"assume.takeoff.can":             "The size of a can is not given; {value} was assumed for cement and for primer.",
}
