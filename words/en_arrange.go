package words

// enArrange holds the sentences for the search for layouts and for a layout that
// was kept. The codes and their arguments are listed in
// engine/design/arrangecodes.go, kept.go and keep.go.
var enArrange = map[string]string{
	// What stands in the way of a search.
	"design.void.arrange":             "No layout is searched for: it would stand on what could not be read: {places}. Mend that first.",
	"design.arrange.pump":             "{where}: pump “{name}” tells no attitude, so nobody knows how large it is and where its port looks. Measure it and enter an attitude.",
	"design.arrange.pipe":             "{where} is missing: neither the assembly nor a run from the pump tells the pipe. Enter the kind and size of the pipe in the vault.",
	"design.arrange.port":             "{where}: the port of pump “{name}” is {size} {thread}, and no fitting of the tables joins it to {pipe}. Check both sizes, or take pipe of the port's size.",
	"design.arrange.glued.union":      "{where}: union {part} is glued already. Only the same make and size goes together with the half that stays, and that half's face and ring must be sound: have the other half in hand before gluing.",
	"design.arrange.elbows":           "{found} elbows cannot be searched; the limit is {limit}. Ask for fewer.",
	"design.arrange.best":             "{found} layouts cannot be kept side by side; the limit is {limit}. Ask for fewer.",
	"design.arrange.pump.larger":      "Pump “{name}” does not go into the vault {attitude}: its {axis} is {found}, the vault has {limit}. It is not looked at in this attitude.",
	"design.arrange.pump.none":        "{where}: pump “{name}” does not go into the vault in any way it may stand; nearest is {attitude}, where its {axis} is {found} and the vault has {limit}. Take a smaller pump or a larger vault[, or let it stand {other}: so it goes in].",
	"design.arrange.obstacle.hole":    "{where}: “{name}” stands over the hole in the wall, so no pipe gets out. Check the figures of both, or move one of them.",
	"design.arrange.obstacle.overlap": "{where}: “{name}” and “{other}” stand in each other as they are entered; the layouts keep clear of both. Check the figures of both; what is one thing is entered as one.",
	"design.arrange.port.into":        "{where}: the port of pump “{name}” looks into the pump itself ({attitude}). Check where it sits and which way it points.",
	"design.arrange.port.off":         "{where}: the port of pump “{name}” ({attitude}) lies {found} from its body. No outlet sticks out so far: check where it sits, counted from the corner of the pump’s box.",
	"design.arrange.socket":           "{where}: the measures of {fitting} {size} contradict each other:[ its {measure} is {found}; pipe of that size needs more than {limit}]. Measure the fitting again.",
	"design.arrange.stock":            "{where}: {fitting} {size} cannot stand in a chain from the pump to the wall. It is not looked at.",
	"design.arrange.elbow.none":       "{where}: there is no elbow to choose from, so only pipe straight from the pump to the hole is looked at. Add elbows to the stock's fittings, or let the counter's be used.",
	"design.arrange.prices":           "Without a price, so that layouts are not compared by cost: {items}. Add them to the prices to have cost counted.",

	// What makes a search meaningless.
	"arrange.standing.none": "There is no way the pump may stand. Enter an attitude of the pump in use.",
	"arrange.elbow.none":    "There is no elbow to choose from, and the pump's port cannot look straight out through the hole. Add one to the stock's fittings, or let the counter's be used.",
	"arrange.pipe.none":     "There is no pipe to choose from. Enter the pipe of the assembly.",
	"arrange.check.none":    "There is no check valve to choose from. Add one to the stock's fittings, or say that a layout without one will do.",
	"arrange.union.none":    "There is no union to choose from, so the pump would come out with the saw only. Add one to the stock's fittings, or say that a layout without one will do.",
	"arrange.start.none":    "Nothing to choose from leads from the pump's outlet ({size} {outlet}) to the pipe. Add the adapter to the stock's fittings, or check the outlet's size.",
	"arrange.glued.pump":    "Parts are glued to the pump in an attitude that is not among those it may stand in. Add that attitude, or mark those parts as not glued.",
	"arrange.glued.into":    "Parts glued at the wall turn the pipe, and from the pump as it is entered they would not end at the hole. Enter the way the water runs into the first of them (assembly, search, into).",
	"arrange.glued.wall":    "The parts glued at the wall do not run straight out through the hole as their rolls are entered. Check the rolls of the glued elbows.",
	"arrange.glued.closing": "A piece between glued parts is entered as one whose length is worked out. It is made already: enter the gap between its two hub faces (assembly, closing, gap), or its length.",

	"arrange.obstacle.overlap": "Obstacles “{name}” and “{other}” stand in each other. Check the figures of both; what is one thing is entered as one.",

	// What would mend it where nothing fits.
	"arrange.change.length":      "take a vault longer",
	"arrange.change.hatch.left":  "cut the opening over the vault larger, toward the left wall",
	"arrange.change.hatch.right": "cut the opening over the vault larger, toward the right wall",
	"arrange.change.hatch.front": "cut the opening over the vault larger, toward the front wall",
	"arrange.change.hatch.back":  "cut the opening over the vault larger, toward the back wall",
	"arrange.change.width":       "take a vault wider",
	"arrange.change.depth":       "take a vault deeper",
	"arrange.change.hole.up":     "drill the hole higher",
	"arrange.change.hole.down":   "drill the hole lower",
	"arrange.change.hole.less":   "drill the hole at less along its wall",
	"arrange.change.hole.more":   "drill the hole at more along its wall",

	// What is assumed.
	"design.instead.left":         "turn the pump[ ({attitude})] a quarter to the left, seen from above[, with the corner of its box {left} from the left wall][ and {front} from the front wall]",
	"design.instead.right":        "turn the pump[ ({attitude})] a quarter to the right, seen from above[, with the corner of its box {left} from the left wall][ and {front} from the front wall]",
	"design.instead.round":        "turn the pump[ ({attitude})] half way round[, with the corner of its box {left} from the left wall][ and {front} from the front wall]",
	"design.instead.place":        "set the pump[ ({attitude})] elsewhere on the floor[, with the corner of its box {left} from the left wall][ and {front} from the front wall]",
	"design.instead.turned":       "set the pump[ ({attitude})] elsewhere on the floor and turn it[, to {turn}][, with the corner of its box {left} from the left wall][ and {front} from the front wall]",
	"design.instead.stand":        "let the pump stand otherwise: {attitude}[, turned {turn}][, with the corner of its box {left} from the left wall][ and {front} from the front wall]",
	"design.instead.fitting":      "get {fitting} {size}, which the stock leaves out[ ({count} needed)]",
	"design.instead.ended":        "take a check valve with union ends[, {fitting}][ {size},] in place of valve and union[ ({count} needed)]",
	"design.instead.more":         "get more of {fitting} {size}[ ({count} more needed)]",
	"design.instead.hose":         "allow a short hose next to the pump[: {size}, {cut} long, bent to a radius of {radius}; see its maker's sheet first]",
	"design.instead.hose.tighter": "take a hose whose maker's sheet allows a tighter bend[, down to a radius of {radius}: {size}, {cut} long]",
	"design.instead.hose.longer":  "allow a longer piece of hose[: {size}, {cut} long, bent to a radius of {radius}; see its maker's sheet first]",
	"design.instead.several":      "get all of these fittings ({fittings})",

	"assume.arrange.flow":       "No flow can be worked out from the job, so losses are compared at {value} in the vault's pipe.",
	"assume.arrange.loss":       "The tables have no loss for {fittings}: they count for nothing, in every layout alike.",
	"assume.arrange.stands":     "The pump may stand in each of its attitudes ({attitudes}), in quarter turns, anywhere on the floor.",
	"assume.arrange.wall":       "The fitting in the wall is {size}, because run {run} goes on in that size; list a bulkhead fitting of another size in the stock to have it looked at too.",
	"assume.arrange.counter":    "Every fitting of the tables in the pipe's size can be had; list in the stock those that cannot.",
	"assume.arrange.glued.into": "The water is taken to run {way} into {part}, the first of the parts glued at the wall, as the chain runs from the pump that it was glued to.",
	"assume.arrange.check":      "A check valve is wanted, though neither the run nor the assembly names one.",

	"assume.hose.kind":     "The hose is taken to be cut from {kind}, which is as thick as the pipe and glued into the same sockets.",
	"assume.hose.radius":   "The hose is taken to bend to a radius of {value}, measured to its middle, and no tighter; see its maker's sheet before cutting.",
	"assume.hose.straight": "The hose is taken to stay straight for {value} beyond each socket.",
	"assume.hose.longest":  "No piece of hose is taken longer than {value}.",
	"assume.hose.bend":     "A bend of the hose is taken to lose K {value} beyond its length, as a smooth bend of pipe does at two diameters.",

	"design.hose.thick":   "The hose, {name} {size}, is not as thick as the pipe[ ({found}, not {limit})], so it is not glued into the pipe's sockets. Choose flexible pipe of the pipe's own outside diameter, such as flexible PVC.",
	"design.hose.rigid":   "The hose is to be cut from {name} {size}, which is rigid pipe and does not bend. Choose flexible pipe of the pipe's own outside diameter, such as flexible PVC.",
	"design.hose.legs":    "The ends of hose {part} are not told, or too short for its bend: each must be longer than {limit}, from where the lines of both ends meet. Fill in both.",
	"design.hose.folds":   "A hose {od} thick cannot be bent to a radius of {found}, measured to its middle: at {limit} or less its inside would fold over itself. Enter the least radius from its maker's sheet, measured to the middle of the hose: {usual} is usual for one so thick (from memory).",
	"design.hose.tighter": "The hose is taken to bend to a radius of {found}, measured to its middle. No sheet known allows less than {limit} for a hose {od} thick (three times that, from memory): bent so tightly it kinks or flattens and pulls at its joints. Check on its maker's sheet that the figure is right, and that it is to the middle of the hose, before anything is cut.",
	"design.hose.unknown": "No {name} is known in size {size}[; there is {near}], so only rigid layouts were looked for. A pipe that the tables lack cannot be entered in the job: have the pipe in the vault in a size that there is hose for, or lay out the rigid part here and fit a hose by its maker's sheet.",
	"design.hose.short":   "A hose is allowed, and the longest piece is too short for any bend here: at a radius of {radius} the least turn that the pump asks as it may stand, {turn}, takes {found} of hose, with its straight ends and what goes into the sockets; {limit} is allowed. Allow a longer piece (longest), or take a hose whose sheet allows a tighter bend.",
	"design.hose.none":    "A hose is allowed, and no layout with one was found: its bends take much room. At a radius of {radius} even the least turn that the pump asks as it may stand, {turn}, takes {found} of hose, and a quarter turn {quarter}; {limit} is allowed. Check that the radius is right; if it is, a hose that bends tighter may do.",

	// A layout that was kept.
	"design.keep.none":    "There is no layout {found} to keep; there are {count}.",
	"design.keep.unlaid":  "The assembly as drawn cannot be laid, so there is no cut card to keep. See what is said of it.",
	"design.keep.differs": "Layout {name} could not be written into the job so that it comes out as it was found. Nothing was written.",
	"design.kept.changed": "Since the layout was kept, {what} was changed[: it was {was}][; it is now {now}]. The kept layout is worked out anew with it.",
	"design.kept.many":    "Since the layout was kept, {count} further entries were changed.",
	"design.kept.tables":  "Since the layout was kept nothing in it was changed, but the program's tables or usual distances were: sizes of fittings differ from then. Compare the cut card before using it.",
	"design.kept.cut":     "The printed cut card does not hold: piece {piece}[, which runs from {wasFrom} to {wasTo} on it and from {from} to {to} now,] is {was} on the card and would now be cut {now} ({by}). Cut nothing by the old card: check what was changed, then keep the layout anew and print it.",
	"design.kept.gone":    "The printed cut card does not hold: piece {piece} on it, from {from} to {to}, {was}, is not in the assembly any more. Cut nothing by the old card.",
	"design.kept.more":    "The printed cut card does not hold: piece {piece}, from {from} to {to}, {now}, is not on it. Cut nothing by the old card.",
	"design.kept.fails":   "The kept layout does not hold any more as the job stands: {count} {count:stop or fault|stops and faults} ({checks}); see what is said of {count:it|each}.",
}
