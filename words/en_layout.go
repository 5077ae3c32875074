package words

// enLayout holds the sentences for the assembly in the vault. The codes and
// their arguments are listed in engine/layout/codes.go, those of the assembly
// in its job in engine/design/assembly.go. Parts go by their marks.
var enLayout = map[string]string{
	// Faults.
	"layout.value.finite":   "Assembly: “{name}” is not a number that can be used. Enter it again.",
	"layout.value.range":    "Assembly: “{name}” is {found}; the limit of what can be is {limit}. Check the figure and its unit.",
	"layout.parts.none":     "The assembly has no parts. Add the fittings from the pump to the wall, in order.",
	"layout.part.kind":      "Part {part}: “{kind}” is no known kind of fitting. Choose a known word.",
	"layout.part.missing":   "Part {part}: its {measure} is not known. Measure the fitting in hand and enter it.",
	"layout.pump.missing":   "The pump's {measure} is missing. Measure the pump, or take it from the maker's sheet.",
	"layout.pump.larger":    "The pump's {axis} is {found}; the vault has {limit}. It does not go in this way: turn the pump, or take a larger vault.",
	"layout.vault.missing":  "The vault's {measure} is missing. Measure inside and enter it.",
	"layout.outlet.outside": "The hole ({along} along, {height} up) lies off the wall “{wall}”, or there is no such wall. Measure it again.",
	"layout.join.size":      "{from} has size {fromSize} and {to} has {toSize}; nothing between them reduces. Put in a reducer.",
	"layout.join.ends":      "{from} ends as {fromEnd} and {to} as {toEnd}: they do not go together. Put an adapter between.",
	"layout.join.thread":    "{from} has {fromThread} and {to} has {toThread}: these threads do not seal on each other. Put in an adapter made for both.",
	"layout.pipe.unknown":   "Between {from} and {to}: there is no {size} pipe in the assembly. Add it, or change the fittings' size.",
	"layout.piece.short":    "Piece {piece}, from {from} to {to}: cut comes to {cut}, but {least} is the least that fills both sockets; {short} is missing. Set the fittings further apart, or join them with a close fitting.",
	"layout.closing.short":  "There is no room for closing piece {piece} from {from} to {to}: {short} is missing. Move the pump, or take shorter fittings.",
	"layout.closing.idle":   "The closing piece from {from} to {to} lies in line with another one or with the pipe through the wall, so it cannot close the gap. Mark a joint in another direction as closing.",
	"layout.closing.direct": "The joint from {from} to {to} is marked closing, but has no pipe to cut. Mark a joint that has a pipe.",
	"layout.bulkhead.last":  "Bulkhead fitting {part} stands before the end. It goes last, at the wall: move it, or take out what follows.",

	// The end of the chain and its pieces.
	"layout.closure.off":    "The chain ends {dx} to the right, {dy} to the back and {dz} up from the hole (below zero: the other way). Change the pieces by {along} along and {across} across, or move the pump.",
	"layout.closure.turned": "The last leg is turned {angle} from the hole's axis. Turn the last elbows to face the wall.",
	"layout.closing.worked": "Closing piece {piece}, {from} to {to}: cut {cut} is worked out, not measured. Dry-fit, measure the gap ({faceGap} by reckoning) and cut to the measure.",
	"layout.closing.typed":  "Closing piece {piece}, {from} to {to}: the distance {distance} was given but is not used, because the closing piece follows from the rest.",
	"layout.join.fixed":     "{from} to {to}: the distance {distance} was given, but spigot or thread fixes it at {fixed} centre to centre. Take the distance out.",
	"layout.join.parallel":  "{from} has {fromThread}, {to} has {toThread}: a taper thread in a parallel one is tight only on a seal. Use a sealing washer or the maker's sealant.",
	"layout.part.reduces":   "Part {part} narrows the way of the water from {fromSize} to {toSize}. This costs head: keep the size, unless it is meant.",
	"layout.measure.first":  "{kind} {size} ({parts}): sizes are a standard's minimum or from memory. Measure the fitting in hand before cutting.",
	"layout.tail.runs":      "The last pipe, from {from}, leaves through the wall; {inside} of it lies inside. Its length belongs to the run.",
	"layout.pump.askew":     "The pump stands askew: turned {turn} to the {way}, seen from above, from how its attitude is measured. Set it out by tape, not by the angle: of the box round it, the corner nearest the front wall stands {frontleft} from the left wall and {frontfront} from the front wall, the corner nearest the left wall {leftleft} from the left wall and {leftfront} from the front wall. These are the two ends of the side of the box that is {side} long.",
	"layout.outlet.leans":   "The wall leans {angle} where the fitting seats. The gasket may leak: flatten the seat, or use a sloped washer.",

	"layout.hose":          "Hose {part} is cut {cut} long, along its middle[, and bends by {turn} at a radius of {radius}]. Read its maker's sheet before cutting: bent tighter it kinks or flattens, and it must take the most that the pump presses. It is counted on to give way in height alone, where no upright piece is measured in place. Keep it where it can be seen, look at its joints each spring, and never build it into the wall.",
	"layout.hose.tight":    "Hose {part} would be bent to a radius of {found}, and its sheet allows no less than {limit}: it would kink or flatten. Give it more room, or take a softer hose.",
	"layout.hose.straight": "Hose {part} stays straight for only {found} beyond a socket, and {limit} is needed, or the bend pulls at the joint. Make its straight ends longer.",
	"layout.hose.long":     "Hose {part} would be {found} long, and {limit} is the longest allowed. Move the pump nearer, or put pipe in its place.",
	"layout.hose.wall":     "Hose {part} would go through the wall. A hose is never built in: end it inside the vault, at a bulkhead fitting or a pipe.",
	"layout.hose.ends":     "Hose {part} does not go into a socket at both ends. Put a fitting with a socket before and behind it.",

	// Room.
	"layout.clear.wall":     "[Part {part}][Parts {parts}] and [the {side} wall][the {plane}] of the vault:[ {room} of room][ standing in it by {into}][ ({worst})]; {limit} of room is wanted, so {short} is missing. Move the pump, turn the elbows, or take shorter fittings.",
	"layout.clear.pump":     "Part {part} and the pump:[ {room} of room][ standing in each other by {into}]; {limit} of room is wanted, so {short} is missing. Move the part, or turn the elbows.",
	"layout.clear.obstacle": "Part {part} and “{obstacle}”:[ {room} of room][ standing in each other by {into}]; {limit} of room is wanted, so {short} is missing. Move the part or the obstacle.",
	"layout.clear.parts":    "Parts {part} and {other}:[ {room} of room][ standing in each other by {into}]; {limit} of room is wanted, so {short} is missing. Turn one of them, or lengthen the piece between.",
	"layout.pump.wall":      "The pump stands {into} in [the {side} wall][the {plane}] of the vault. Move the pump.",
	"layout.pump.obstacle":  "The pump and “{obstacle}”:[ {room} of room][ standing in each other by {into}]; {limit} of room is wanted, so {short} is missing. Move the pump.",
	"layout.closing.spare":  "Closing piece {piece} can be cut shorter by {found}; errors in the stack may ask for {limit}. Leave more length there.",
	"layout.play.short":     "The pump can be moved {found} in {axis}; errors in the stack are likely to ask for {limit}, at worst {worst}. Leave more room, or measure the closing piece in place.",
	"layout.play.upright":   "Nothing takes up an error in height: {found} likely, {worst} at worst. Measure an upright piece in place too.",

	// Valve, union, water, way out.
	"layout.check.none":     "The assembly has no check valve: unless one beyond the wall holds the water, it runs back through the pump at every stop. Fit one in the pipe from the pump, where it can be reached.",
	"layout.check.reversed": "Check valve {part}: its arrow points against the flow, so no water gets through.[ The {flow:both} worked out here, and the levels with it, hold only once it is turned.] Turn it round.",
	"layout.check.attitude": "Check valve {part} ({kind}): the flow rises {found} from level; its data allow {allowed}. Move it to a pipe that stands so, or take another kind.",
	"layout.check.hinge":    "Swing valve {part} lies level[, with its cover turned {turned} from the top]. Set it with its cover on top, so that it falls shut.",
	"layout.union.none":     "There is no union: the pump cannot come out without a saw. Fit one between the pump and the wall.",
	"layout.union.hand":     "Union {part} against [the {side} wall][the {plane}][{thing}]: {found} of room for a hand, {limit} is wanted; {short} is missing. Move the union, or turn the parts.",
	"layout.water.released": "Opening {union} lets the water that stands above it down into the vault[: up to {released:both}][; {boxes:both} of it comes out of the boxes at the top, which run empty down to their inlets].[ How much cannot be told: the runs could not be worked out, so that only the {inside:both} inside the vault is known.] Unplug the pump first, open {union} slowly, and make sure that the vault can take it.",
	"layout.water.returns":  "No valve of the assembly holds the water: at every stop the water runs back through the pump into the vault[: up to {returned:both}][; {boxes:both} of it comes out of the boxes at the top, which run empty down to their inlets].[ How much cannot be told: the runs could not be worked out, so that only the {inside:both} inside the vault is known.] Unplug the pump first[, and open {union} only when no more comes back].",
	"layout.water.stands":   "With the pump off {standing:both} stands in the pipe on valve {valve}[; {between:both} is between it and the union].[ Only the {inside:both} inside the vault is counted: the runs could not be worked out.] Unplug the pump before opening anything.",
	"layout.water.freezes":  "Frost: with the pump off {standing:both} stands in the pipe on valve {valve} and can burst pipe and fittings[; {between:both} is between it and the union].[ Only the {inside:both} inside the vault is counted: the runs could not be worked out.] Drain it before winter. Unplug the pump first.",
	"layout.lift.free":      "The pump comes out once {union} is opened:[ slide it back {slide} off the union's face,][ shift it {shift} toward the {toward},] lift it straight up. Unplug it first; lift it by its handle or a rope, never by its cord, and with two people if it is heavy.",
	"layout.lift.moves":     "The pump comes out once {union} is opened, but by no single lift: it takes {count} moves[, leaned over by {tilt} toward the {toward}]. Make them in the order told. Unplug it first; two people, one to steady what leans and the plumbing on it; lift it by its handle or a rope, never by its cord. What water stands in it runs out as it leans.",
	"layout.lift.nut":       "Valve {union} has two nuts.[ Open the one towards the pump only{near:flag}: the valve stays on the pipe and holds what stands above it. The other nut would let that down on whoever opens it; drain the pipe before you touch that one.][ {standing:both} stands there.][ The pump comes out only with the one towards the wall open{far:flag}: drain the pipe above the valve first, for all that stands there comes down.] Unplug the pump first.",
	"layout.lift.blocked":   "The pump does not come out when {union} is opened: it meets[ {blocker}][ the edge of the opening{opening:flag}][ the rim{rim:flag}] on the way.[ It would have to shift {needed} toward the {toward}, but only {available} is free there, up to ][the {side} wall][the {plane}][{thing}][: {short} is missing.] Move what is in the way, or move the union.",
	"layout.lift.lip":       "The faces at {union} reach into each other: the pump must slide back {needed}, and {available} is free. Take a union with flat faces, or leave more room behind the pump.",

	// Assumptions.
	"assume.layout.makeup":         "Gap left at each pipe end: not set; {value} was assumed. Check the fitting maker's sheet.",
	"assume.layout.closingmakeup":  "Gap left at the ends of the closing piece: not set; {value} was assumed.",
	"assume.layout.stub":           "Length of a dry-fit stub: not set; {value} was assumed.",
	"assume.layout.clear.wall":     "Room to keep to walls, floor and lid: not set; {value} was assumed.",
	"assume.layout.clear.pump":     "Room to keep to the pump: not set; {value} was assumed.",
	"assume.layout.clear.obstacle": "Room to keep to obstacles: not set; {value} was assumed.",
	"assume.layout.clear.parts":    "Room between parts that do not meet: not set; {value} was assumed.",
	"assume.layout.hand":           "Room for a hand round the union: not set; {value} was assumed.",
	"assume.layout.clear.lift":     "Room round the pump on its way out: not set; {value} was assumed.",
	"assume.layout.saw":            "Error of one saw cut, either way: not set; {value} was assumed.",
	"assume.layout.tape":           "Error of one tape measure in place: not set; {value} was assumed.",
	"assume.layout.seat":           "Error of how deep a socket takes its pipe: not set; {value} was assumed.",
	"assume.layout.roll":           "Error of an elbow's roll: not set; {value} was assumed.",
	"assume.layout.elbow":          "Error of an elbow's own angle: not set; {value} was assumed.",
	"assume.layout.attitude":       "Check valve {part}: how it may stand is not given; {allowed} was assumed by its kind. Look on the maker's sheet.",

	// The assembly in its job.
	"design.glue.withheld":        "The steps of gluing are held back, and the pieces are not to be cut, until this is mended:[ the chain misses the hole by {off};][ its last leg is turned {turned} from the hole's axis;][ {through} would stand in a wall, the floor or the lid;][ {inside} would stand in the pump, in an obstacle or in each other;][ the pump would stand in a wall or an obstacle{pump:flag};][ valve {reversed} points against the flow;][ valve {attitude} stands as it may not;][ there is no union{union:flag};][ the pump does not come out when {blocked} is opened;][ nothing but threads between pump and wall{captive:flag};][ piece {kept} is not as on the printed cut card;][ the second check does not agree{second:flag};][ {others};][ faults in the assembly: {faults};] see what is said of each.",
	"design.assembly.differs":     "Run “{run}” starts at the pump, and its first stretch is the assembly, but the two differ.[ The run has {runPipe} pipe, the assembly {pipe}.][ The run has a {runValve}, the assembly a {valve}.][ Valve {valveOnly} of the assembly is not in the run.][ The run has a {runValveOnly}, the assembly none: that is right only where it lies beyond the wall.][ The run has fewer 90° elbows ({runElbows}) than the assembly ({elbows}).][ The run has fewer 45° elbows ({runFortyFives}) than the assembly ({fortyFives}).][ Union {unionOnly} of the assembly is not in the run.][ The run has a union, the assembly none{runUnionOnly:flag}.] The flow is worked out from the run. Make the two agree.",
	"design.assembly.unconfirmed": "Assembly: one check says stop ({code}) where the second check finds nothing, so one of the two errs. The stop stands: do not cut or glue. Send in the job with this code.",
	"design.pump.port.size":       "{where}: “{size}” is no size of a thread ({thread}). Pipe threads go by inches, whatever the pipe: write it like 1-1/2 (G 1-1/2 for BSP).[ DN {dn} is {inch}.][ Fittings for {pipe} mm pipe usually have {usual}.] Read it off the pump or its sheet.",

	"assume.assembly.attitude": "How pump “{name}” stands is not given; “{attitude}”, the first way on its list, was assumed.",
	"assume.vault.hatch":       "Where the opening over the vault lies is not given; it was assumed in the middle[, {left} from the left wall][, {front} from the front wall].",
	"assume.assembly.at":       "Where the pump stands is not given; the corner left, front, on the vault's floor was assumed.",
	"assume.assembly.turn":     "How the pump is turned is not given; {value} was assumed: as its attitude is measured.",
	"assume.assembly.roll":     "Elbows {parts}: how they are turned is not given; it was assumed that their outlets look up, or to the back wall where the pipe into them is upright.",
	"assume.cut.kerf":          "The width of the saw cut is not given; {value} was assumed, so that a cut takes nothing away. Measure one: the last piece out of a stick may come out short.",
}
