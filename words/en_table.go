package words

// enTable holds the heads of what is set out in rows for other programs.
var enTable = map[string]string{
	"table.title.materials": "Materials", "table.title.cuts": "Cuts", "table.title.sticks": "Sticks", "table.title.levels": "Levels",
	"table.title.start-and-stop": "Start and stop", "table.title.basis": "What it rests on",

	"table.item": "item", "table.least": "get, at least", "table.most": "get, at most", "table.unit": "unit", "table.pack": "one holds", "table.packunit": "unit of that", "table.spare": "of that spare",
	"table.each": "price", "table.per": "price for", "table.sumleast": "sum, at least", "table.summost": "sum, at most", "table.currency": "currency",
	"table.how": "how it comes about", "table.caution": "caution", "table.id": "line", "table.pieces": "pieces", "table.yes": "yes",

	"table.piece": "piece", "table.pipe": "pipe", "table.length": "length", "table.tape": "on the tape", "table.stick": "stick", "table.source": "cut from",
	"table.from": "pump end goes into", "table.markfrom": "insertion mark at the pump end", "table.to": "wall end goes into", "table.markto": "insertion mark at the wall end",
	"table.closing": "closing piece: measure its gap in place", "table.measure": "measure the fitting first", "table.stub": "stub for the dry fit",
	"table.offcut": "offcut", "table.newstick": "stick", "table.left": "left", "table.proven": "proven: no plan is better",
	"table.held": "NOT TO BE CUT OR GLUED: as it is laid here the assembly cannot be built.",

	"table.course": "course", "table.moment": "moment", "table.pond": "pond", "table.vault": "vault", "table.change": "pond against its line", "table.freeboard": "under the rim",
	"table.oversill": "over the sill", "table.needsill": "needed over the sill", "table.overpump": "over the pump's floor", "table.needpump": "needed over the pump's floor",
	"table.starved": "the water does not suffice",
	"table.case":    "case", "table.time": "time", "table.drawn": "drawn by the pump", "table.back": "back through the pump", "table.returns": "down into the pond",
	"table.stored": "in pipes, boxes, streams", "table.over": "over the rim so far",

	"table.what": "what", "table.text": "in words", "table.value": "value", "table.wherefrom": "where, or by whom", "table.code": "code",
	"table.job": "job", "table.note": "note", "table.place": "place", "table.date": "surveyed", "table.digest": "state of the job (SHA-256)", "table.standing": "standing",
	"table.notapproval": "Not a code approval: electricity is for a licensed electrician; makers' sheets and local code have the last word.",
	"table.fault":       "fault in the input", "table.assumed": "assumed", "table.accepted": "Accepted: {why}",
}
