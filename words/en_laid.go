package words

// enLaid holds what is printed of the assembly in the vault.
var enLaid = map[string]string{
	"print.head.assembly": "Assembly in the vault",
	"print.notcut":        "NOT TO BE CUT: the pieces of the assembly, which cannot be built as it is laid; see its dangers and faults",
	"print.roll":          "roll {mark} {angle} clockwise: {arc} clockwise round the pipe's outside, or {other} the other way",
	"print.roll.none":     "roll {mark} on the pipe's line itself",
	"print.second":        "checked a second way: {count} checks passed",
	"print.second.fails":  "checked a second way: {count} of {of} checks passed; see the findings for what fails",
	"print.piece":         "piece", "print.piece.from": "from", "print.piece.to": "to", "print.piece.cut": "cut",
	"print.piece.marks": "insertion marks", "print.piece.sockets": "sockets",
	"print.closing":    "closing piece: measure the gap in place before cutting",
	"print.stub":       "stub for the dry fit in place of {piece}: {length}",
	"print.part":       "part, its middle",
	"print.part.left":  "from the left wall",
	"print.part.front": "from the front wall",
	"print.part.floor": "above the floor",
	"print.part.cover": "cover on top",
	"print.three":      "{length} in length, {width} in width, {height} in height",
	"print.misses":     "as drawn the chain's end misses the hole by {by}",
	"print.errors":     "errors of saw, seats and rolls may move it, likely {likely}; at worst {worst}",
	"print.play":       "the pump can be moved {left} to the left, {right} to the right, {front} to the front, {back} to the back",
	"print.play.none":  "the pump stands in something, so there is no room to move it",
	"print.shorter":    "closing piece {piece} can be cut shorter by {spare}; measured in place it may still be off by {off}",
	"print.way":        "the pump's way out, unplugged and with {union} opened:",
	"print.way.move":   "move it {toward}, {distance}",
	"print.way.lift":   "lift it straight up, {distance}",
}
