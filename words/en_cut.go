package words

// enCut holds the sentences for the cutting plan. The codes and their arguments
// are listed in engine/cut/fault.go.
var enCut = map[string]string{
	"cut.grid":            "The step to which lengths are rounded is {found}; it must be more than zero.",
	"cut.length":          "A length is {found}; it must be a number more than zero (saw cut and kept offcut may be zero). Check it.",
	"cut.length.grid":     "A length is {found}, which is no whole number of steps of {grid}. Round it.",
	"cut.length.long":     "A length comes to {found} steps of the rounding; {limit} are the most that can be searched. Check the length.",
	"cut.count":           "A count is {found}, which is too small or too large. Check how many are wanted or in hand.",
	"cut.many":            "There are {found} pieces, offcuts or kinds of sticks; {limit} are the most. Split the job.",
	"cut.price":           "A price is {found}; below zero, too large, or missing while other sticks have one. Give every stick a price, or none.",
	"cut.basis":           "What the plan is to save is not one of the known choices: price, length or number of sticks. Choose one of them.",
	"cut.effort":          "The effort of the search is {found}; it must be zero or more.",
	"cut.pieces.none":     "There is nothing to cut: no pieces are given.",
	"cut.piece.long":      "Piece {mark} is {found}; the longest stick or offcut is {limit}. Join it from two pieces with a coupling, or get longer sticks.",
	"cut.stock.short":     "The pipe in hand is not enough: {count} of piece {mark} ({found}) find no place. Buy more sticks.",
	"cut.stock.undecided": "The search ended without a plan: {count} of piece {mark} ({found}) found no place, but it is not proven that none fits. Give it more time, or add a stick.",
	"cut.cancelled":       "The search was stopped before a plan was found. Start it again.",
}
