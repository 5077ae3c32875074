package words

// enFound holds what is printed of a search for layouts.
var enFound = map[string]string{
	"found.title":         "{name}: layouts for the plumbing in the vault",
	"found.pump":          "pump {name}; losses are compared at {flow}",
	"found.head.layouts":  "Layouts side by side",
	"found.head.none":     "No layout fits",
	"found.head.mend":     "What would mend it",
	"found.head.layout":   "Layout {number}",
	"found.head.findings": "Worth knowing",
	"found.column.layout": "layout", "found.column.head": "head", "found.column.elbows": "elbows", "found.column.joints": "joints",
	"found.column.cost": "cost", "found.column.slide": "slide", "found.column.deep": "union under the rim", "found.column.released": "comes down", "found.column.stands": "pump stands",
	"found.unpriced":  "not known",
	"found.columns":   "compared by head (lost in the vault at that flow), joints to glue or screw, cost, what the pump must be slid before it is lifted, and whether the water above comes down when the union is opened; the rest is told beside",
	"found.one":       "There is one layout that no other equals or beats in every respect.",
	"found.many":      "There are {count} layouts, each better than the others in some respect; which to take is for you to say.",
	"found.more":      "{count} more are not shown; --best shows more of them, --json has all.",
	"found.stands":    "pump {attitude}, turned {turn}; the corner of its box {left} from the left wall, {front} from the front wall, {floor} above the floor",
	"found.drill":     "drill the hole with its centre {along} along the wall and {height} above the floor",
	"found.directly":  "straight into the next",
	"found.piece":     "then {piece}, cut {cut}",
	"found.made":      "then {piece}, glued already ({cut})",
	"found.closing":   "then {piece}, cut {cut} by reckoning: measure the gap in place first",
	"found.roll.arc":  "roll {angle} ({arc})",
	"found.rolls":     "roll: where the elbow’s outlet looks, seen along the flow into it: 0° is up, or to the back wall where its inlet is upright, then clockwise; in brackets the same along the pipe’s outside",
	"found.measure":   "{severity}Measure in hand before cutting: {parts}. Their sizes are a standard’s least, an estimate or from memory; what you measure goes into the job (measured), and the search is made again.",
	"found.nounion":   "no union",
	"found.down.all":  "all above",
	"found.down.stop": "at every stop",
	"found.second":    "checked a second way: {count} checks passed; a union, and the way out by it, it does not have, as the job allows",
	"found.roll":      "roll {angle}",
	"found.reverse":   "arrow against the flow",
	"found.keep":      "To keep one, with its cut card: plashet arrange JOB --keep 1 --out FILE",

	// How far the claim reaches.
	"found.claim.everything": "Proven: every other chain of these fittings, with any number of elbows, is equalled or beaten in every respect by one of these.",
	"found.claim.family":     "Proven for up to {elbows} elbows: every other chain of these fittings with no more elbows than that is equalled or beaten in every respect by one of these. Chains with more were not looked at.",
	"found.claim.capped":     "Not proven: a limit was met at {caps} orders of fittings, which stay undecided; {elbows} elbows were looked at. Better layouts may exist.",
	"found.claim.stopped":    "Not proven: the search was stopped. These are the best found so far; better ones may exist.",
	"found.none.everything":  "Proven: no chain of these fittings fits, with any number of elbows.",
	"found.none.family":      "Proven for up to {elbows} elbows: no chain of these fittings fits. Chains with more were not looked at.",
	"found.none.capped":      "None was found, which proves nothing: a limit was met at {caps} orders of fittings.",
	"found.none.stopped":     "None was found before the search was stopped, which proves nothing.",
	"found.gap":              "None of what stayed undecided takes less than {head} of head or has fewer than {joints} joints[, and none costs less than {cost}].",
	"found.reach":            "What “chain” covers here: docs/layouts.md.",

	// What failed first.
	"found.stage.body":  "The pump does not go into the vault.",
	"found.stage.walls": "No run of elbows reaches the hole within the walls.",
	"found.stage.clear": "Runs of elbows reach the hole, but none keeps clear of the pump, the obstacles and itself.",
	"found.stage.valve": "Runs of elbows reach the hole, but check valve and union find no place in them.",
	"found.stage.out":   "Layouts reach the hole, but with none can the pump be lifted out.",
	"found.stage.stock": "Layouts fit the vault, but the pieces of none can be cut from the offcuts and counted sticks in stock, kerfs and the further pieces to cut counted in.",
	"found.uncut":       "One that would fit takes these pieces: {pieces}. Have pipe for them, or let the counter's be used, and search again.",

	// What would mend it.
	"found.mend":         "{what}, by {by}: a layout with {elbows} {elbows:elbow|elbows} then fits; {sure}",
	"found.instead":      "{what}: a layout with {elbows} {elbows:elbow|elbows} then fits",
	"found.mend.sure":    "a hundredth of an inch less will not do",
	"found.mend.guess":   "that less would not do is not proven",
	"found.mend.stopped": "Looking for what would mend it was stopped: there may be more than is told here.",
	"found.mend.none":    "Nothing single was found that would mend it: take another pump, another vault or more fittings.",

	// While it runs.
	"found.progress":       "{elbows} elbows: {done} of {of} orders of fittings decided, {layouts} layouts so far",
	"found.progress.short": "nothing fits; looking for what would mend it ({what}): {done} of {of} orders of fittings decided",
	"found.stop":           "Ctrl-C stops the search and prints the best so far.",
}
