package words

// enVerify holds the sentences for what the second check of the assembly refutes
// and the first does not. The codes are listed in engine/verify/code.go.
var enVerify = disagreeing(map[string]string{
	"verify.chain.whole":   "the {what} told do not match the chain in number.",
	"verify.limit.unknown": "the setting “{name}” is not known.",
	"verify.pump.place":    "pump and port stand {found} from where they are said to.",
	"verify.hole.place":    "the hole lies {found} from where it is said to.",
	"verify.joint.ends":    "the ends of {from} and {to} do not go together.",
	"verify.joint.given":   "from {from} to {to} it is {found}, not the {limit} typed.",
	"verify.part.place":    "part {part} stands {found} from where it is said to.",
	"verify.part.turned":   "part {part} is turned {found} from how it is said to be.",
	"verify.part.envelope": "the room that part {part} takes up is not what is drawn.",
	"verify.roll.angle":    "the roll mark of {part} is[ {found}] off.",
	"verify.roll.arc":      "the roll mark of {part} along the pipe's outside is[ {found}, not {limit}] off.",
	"verify.piece.cut":     "piece {piece} from {from} to {to} with both gaps comes to {found}; from stop to stop it is {limit}.",
	"verify.piece.step":    "the cut of piece {piece}, {found}, is no whole number of steps.",
	"verify.piece.least":   "piece {piece} comes to {found}, and {limit} is the least that fills both sockets.",
	"verify.piece.mark":    "the insertion mark of piece {piece} at {to} is {found}; the socket less the gap is {limit}.",

	"verify.hose.radius":   "hose {part} is bent to a radius of {found}; {limit} is the least allowed.",
	"verify.hose.straight": "hose {part} stays straight for {found} beyond its socket at {to}; {limit} is needed.",
	"verify.hose.long":     "hose {part} is {found} long; {limit} is the longest allowed.",
	"verify.hose.wall":     "hose {part} would go through the wall.",
	"verify.hose.cut":      "hose {part}: its cut length, ends or marks are not what they come to[ ({found}, not {limit})].",
	"verify.hose.line":     "the line drawn of hose {part} lies {found} off its own.",
	"verify.hose.held":     "hose {part} stands {found} out of the room drawn for it.",

	"verify.piece.place":  "piece {piece} lies {found} out of line with its sockets.",
	"verify.leg.sum":      "pieces and fittings from {from} to {to} add up to {found}; between them it is {limit}.",
	"verify.closure.off":  "the chain misses the hole by {found}; {limit} is allowed.",
	"verify.closure.axis": "the last leg is turned {found} from the hole's axis; {limit} is allowed.",
	"verify.closure.cut":  "with the pieces as they are cut the chain misses the hole by {found}; {limit} is allowed.",

	"verify.clear.wall":     "part {part} has {found} of room to the vault ({wall}; below zero: it stands in it); {limit} is wanted.",
	"verify.clear.pump":     "part {part} has {found} of room to the pump (below zero: they stand in each other); {limit} is wanted.",
	"verify.clear.obstacle": "part {part} has {found} of room to “{obstacle}” (below zero: they stand in each other); {limit} is wanted.",
	"verify.clear.parts":    "parts {part} and {other} have {found} of room (below zero: they stand in each other); {limit} is wanted.",
	"verify.pump.wall":      "the pump has {found} of room to the vault ({wall}; below zero: it stands in it).",
	"verify.pump.obstacle":  "the pump has {found} of room to “{obstacle}” (below zero: it stands in it); {limit} is wanted.",

	"verify.valve.arrow":    "the arrow of check valve {part} points against the flow.",
	"verify.valve.attitude": "the flow in check valve {part} rises {found} from level; its data ask for {limit}.",
	"verify.valve.cover":    "the cover of swing valve {part} is not on top[: it is turned {found}].",
	"verify.union.none":     "nothing opens between pump and wall.",
	"verify.union.hand":     "round the nut of {part} there is {found} of room to {other}; a hand wants {limit}.",
	"verify.lift.way":       "no way out of the vault is told for the pump.",
	"verify.lift.slide":     "the faces at {part} slide {found} out of each other before the pump is moved, and reach {limit} in.",
	"verify.lift.clear":     "on move {move} of the way out “{part}” has {found} of room[ to “{other}”]; {limit} is to be kept.",
	"verify.lift.wall":      "after move {move} of the way out the pump or what hangs on it stands {found} from the vault ({wall}; below zero: in it).",
	"verify.lift.rim":       "on its way out the pump, or what hangs on it, has {found} of room to the rim or hatch ({wall}; below zero: it does not pass).",
	"verify.lift.out":       "at the end of its way out the pump is at {found}; the lid is at {limit}.",

	"verify.stub.length":  "the dry-fit stub for piece {piece} is[ {found}, not {limit}] wrong or missing.",
	"verify.water.order":  "which of check valve and union comes first, or whether the bores are known, is told wrongly.",
	"verify.water.volume": "of the water in the pipe ({what}) {found} are told; it is {limit}.",
	"verify.stack.error":  "the errors of saw, seats and elbows ({what}) at the port are told wrongly.",
	"verify.stack.tilt":   "the tilt of the port from the errors of the elbows is told wrongly.",
	"verify.stack.share":  "what each source makes of the likely error is told wrongly.",
	"verify.play.told":    "the play that the pump needs, or has, is told wrongly.",
	"verify.room.pump":    "how far the pump can be moved on the floor[ ({way})] is told wrongly.",
	"verify.room.shorter": "what can be cut off closing piece[ {piece}] is told wrongly.",
	"verify.play.pump":    "the pump can be moved {found} along the vault's {axis}; the likely error is {limit}.",
	"verify.play.piece":   "piece {piece} can be cut shorter by {found}; the likely error is {limit}.",
}, "Assembly: the second check does not agree: ", " Do not cut or glue by this answer. Measure again and mend what was typed for the parts named; if it stands, send in the job with this code.")

// disagreeing puts before each what it is about and behind it what to do.
func disagreeing(what map[string]string, before, behind string) map[string]string {
	out := map[string]string{}
	for code, text := range what {
		out[code] = before + text + behind
	}
	return out
}
