package words

// enApp holds what the pages say themselves: headings, buttons, and the
// sentences of what a person did.
var enApp = map[string]string{
	"app.name": "Plashet", "app.about": "Ponds, streams and falls worked out from the tape to the last cut.",
	"app.skip": "To the page", "app.tabs": "Parts of the job", "app.save": "Save", "app.undo": "Undo", "app.take": "Take it", "app.must": "needed", "app.unsaid": "not said",
	"app.foot": "Not a code approval. Electricity is for a licensed electrician; makers' sheets and local code have the last word.",

	"app.list.title": "Jobs", "app.list.new": "New job", "app.list.aside": "Jobs put aside", "app.list.open": "Open jobs",
	"app.list.find": "Find by name or place", "app.list.find.do": "Find", "app.list.more": "Further back",
	"app.list.empty": "No job yet.", "app.list.nothing": "No job has these words in its name or place.",
	"app.list.rev": "state {number}, {when}[, {who}]",

	"app.stage.begun": "begun: no flow yet", "app.stage.flow": "flow worked out", "app.stage.levels": "flow and levels worked out",
	"app.stage.laid": "laid out, not to be cut yet", "app.stage.cut": "ready to cut",

	"app.import": "A job from a file", "app.import.file": "Job file (.json)", "app.import.do": "Take it in",
	"app.import.unreadable": "The file holds no job that can be read. Choose a job file as this tool writes it.",

	"app.mark.stop": "stop", "app.mark.watch": "watch", "app.mark.note": "note", "app.mark.none": "open", "app.mark.right": "right", "app.mark.accepted": "accepted", "app.mark.": "open",

	"app.tab.answer": "Answer", "app.tab.open": "{count} to look at",
	"app.part.site": "Site", "app.part.pond": "Pond",
	"app.part.falls": "Falls", "app.part.pump": "Pump", "app.part.pipe": "Pipe",
	"app.part.levels": "Levels", "app.part.vault": "Vault", "app.part.cuts": "Cuts", "app.part.glue": "Glue-up", "app.part.material": "Material",

	"app.sum": "{stop} to stop for, {watch} to watch, {note} to note.", "app.sum.assumed": "{count} {count:value|values} assumed",
	"app.tally": "The answer", "app.tally.falls": "Water at the falls", "app.tally.levels": "Room in the levels", "app.tally.fit": "In the vault", "app.tally.money": "Money",
	"app.tally.noflow": "No flow can be worked out yet: it takes a pump with its curve, a run of pipe and a fall.", "app.tally.nolevels": "Levels need the pond's water line, its rim and the flow.",
	"app.fall.right": "as wanted", "app.fall.short": "short of what is wanted", "app.fall.much": "more than wanted", "app.fall.dry": "stays dry", "app.fall.unwanted": "nothing is said of what is wanted",
	"app.fall.wanted":    "wanted {wanted}",
	"app.level.rim.stop": "Room under the rim after a stop", "app.level.rim.alone": "Room under the rim after a stop, the water run back", "app.level.rim.stop-open": "The same with the water running back", "app.level.sill": "Over the sill, running",
	"app.level.needs": "needs {needs}", "app.level.air": "The pump draws air after",
	"app.fit.assembly": "Assembly", "app.fit.unlaid": "not laid out yet", "app.fit.fits": "fits", "app.fit.not": "cannot be built as laid",
	"app.fit.second": "second check {passed} of {checks}",
	"app.fit.out":    "Pump", "app.fit.out.unknown": "way out not looked for", "app.fit.out.no": "does not come out[: {blocker} is over it]",
	"app.fit.out.yes": "comes out, moves: {count}", "app.fit.out.union": "open {union}",
	"app.money.material": "Material", "app.money.unpriced": "{count} lines have no price", "app.money.none": "no prices yet", "app.money.year": "Electricity a year",

	"app.findings": "What was found", "app.findings.none": "Nothing was found amiss here.",
	"app.finding.limit": "[limit {limit}: ]{source} ({basis})", "app.finding.where": "See {where}",
	"app.finding.accept": "Accept with a reason", "app.finding.reason": "Why it is accepted; the reason goes on the sheets", "app.finding.accepted": "Accepted: {why}",
	"app.finding.reopen": "Let it stand again",
	"app.faults":         "What could not be read or worked out",
	"app.moved":          "{name} {before} to {after}",

	"app.job.doings": "This job", "app.job.file": "Save as a file", "app.job.copy": "Copy it", "app.job.aside": "Put it aside", "app.job.back": "Take it back",
	"app.copy.name": "{name}, copy",

	"app.read.title": "Read: tour, words of the trade, methods", "app.read.all": "All texts", "app.read.methods": "Methods and formats",
	"app.model.title": "In three dimensions", "app.model.link": "See it in three dimensions", "app.model.hint": "Drag to turn, pinch or wheel to come nearer, tap a part for its name.",
	"app.model.keys": "Keys on the picture: arrows turn, + and − come nearer and go away, Home brings the first view back, Escape lets a part go.", "app.model.parts": "Parts", "app.model.home": "First view",
	"app.model.left": "Turn left", "app.model.right": "Turn right", "app.model.up": "From higher up", "app.model.down": "From lower down", "app.model.nearer": "Nearer", "app.model.farther": "Farther away",
	"app.model.flat": "The assembly as drawn. This browser does not show models in three dimensions.", "app.model.file": "Model as a file (GLB)",
	"app.export.title": "For other programs", "app.export.how": "Each file is made of the newest state. Hand “what it rests on” on with the others. Not a code approval.", "app.export.none": "This job has nothing yet for: {list}.",
	"app.export.materials": "material list", "app.export.cuts": "pieces to cut", "app.export.sticks": "sticks and what is left", "app.export.levels": "levels", "app.export.start-and-stop": "levels through time",
	"app.export.basis": "what it rests on: findings, assumptions", "app.export.workbook": "all of these as one spreadsheet", "app.export.plan": "plan at full size (DXF)", "app.export.section": "section at full size (DXF)",
	"app.export.isometric": "assembly at full size (DXF)", "app.export.model": "assembly in three dimensions (GLB)", "app.export.job": "the job file", "app.export.schema": "the job file’s schema",
	"app.sheets": "Drawings", "app.sheet.large": "Alone", "app.inputs": "What shapes it", "app.reasons": "Where the figures come from", "app.reasons.none": "No figure of this part has been worked out yet.",
	"app.next": "On to: {name}", "app.group.head": "The job", "app.morefields": "{count} more, empty so far",
	"app.bare": "({unit} when no unit is typed)", "app.source": "from: {source}",
	"app.less": "{name}: one step less", "app.more": "{name}: one step more",
	"app.add": "Add to: {name}", "app.add.do": "Add", "app.kind": "Which kind", "app.kindname": "Name",
	"app.remove": "Remove {name}", "app.remove.short": "Remove", "app.up": "{name}: one place up", "app.down": "{name}: one place down",
	"app.form.faults": "Not saved yet: what is marked below could not be read. The answer shown is the last good one.",

	"app.reasons.count": "Open {count} figures", "app.tables": "Figures in tables", "app.option.drawn": "as drawn", "app.nocut": "Not to be cut: the assembly cannot be built as it is laid. See what was found.",
	"app.pieces": "Pieces of pipe", "app.piece": "piece", "app.piece.between": "between", "app.piece.cut": "cut", "app.piece.marks": "insertion marks", "app.piece.closing": "closing: measure in place",
	"app.bar": "from", "app.bar.how": "How these were chosen", "app.bar.print": "Print the cut card", "app.bar.cuts": "pieces", "app.bar.left": "left", "app.bar.stick": "stick", "app.bar.offcut": "offcut",
	"app.item": "what", "app.item.get": "to get", "app.item.price": "price",
	"app.mark.done": "done",
	"app.glue.step": "Step {number} of {of}", "app.glue.go": "Go on gluing", "app.glue.none": "There is no assembly to glue yet.", "app.glue.done": "{count} done", "app.glue.start": "Start the timer", "app.glue.hold": "hold together",
	"app.glue.set": "then leave it {time} before it is moved", "app.glue.back": "Back", "app.glue.next": "Next", "app.glue.tick": "Done, go on", "app.glue.untick": "Not done yet",
	"app.error.remedy": "That remedy cannot be taken any more: the job has changed since. See what was found now.",

	"app.choose.go": "Choose pump and pipe from a shelf", "app.choose.title": "Pump and pipe chosen from a shelf",
	"app.choose.lead": "Every pump, alone and two side by side, with every size of pipe, held against the flows wanted. Those that no other beats on first cost, cost over the years and reserve:",
	"app.choose.own":  "The job's own pumps", "app.choose.invented": "A shelf of invented pumps", "app.choose.pumps": "pump", "app.choose.pipe": "pipe", "app.choose.first": "first cost",
	"app.choose.shared": "The pumps on our shelf", "app.choose.many": "How many pumps may run", "app.choose.pumps.one": "One pump", "app.choose.pumps.alike": "Two of a kind too", "app.choose.pumps.any": "Any two too",
	"app.choose.take": "Take a pump into the job", "app.choose.takelead": "It is copied with all its figures. The job keeps which pump of the shelf it was, and tells when the shelf’s changes.", "app.choose.takeit": "Take {name}",
	"app.choose.toomany": "There are more pumps than are compared at once. The rest was not looked at.",
	"app.choose.stopped": "Stopped: these are the best so far, and prove nothing of the rest.", "app.choose.again": "Compare again",
	"app.choose.years": "over the years", "app.choose.power": "power", "app.choose.out": "Does not serve", "app.choose.none": "None of them serves what is wanted, or the job does not say enough.",
	"app.choose.know": "Worth knowing", "app.choose.shelf": "Which shelf",

	// Work that runs beside the pages.
	"app.beside.runs": "Working on it", "app.beside.waits": "Waiting for other work to end", "app.beside.look": "See how far it is",
	"app.beside.stale": "What stands below was worked out from state {number} of the job. The job has changed since: look again.",
	"app.beside.gone":  "Long work cannot be done on this device. Open the job on the office's server.",
	"app.error.busy":   "Too much is being worked out at once. Wait a minute and ask again.",
	"app.to":           "to",

	// How sure the answer is.
	"app.doubt.title": "How sure it is", "app.doubt.tab": "How sure", "app.doubt.runs": "Working out how sure the answer is.", "app.doubt.all": "How sure each figure is",
	"app.doubt.between": "{low} to {high}", "app.doubt.lead": "Everything that may be off was drawn {draws} times round what was read. Nine times in ten the truth lies between the two marks, half of the rest below and half above.",
	"app.doubt.again": "Worth measuring again", "app.doubt.part": "{what}: it is {percent} % of the doubt about {figure}.", "app.doubt.go": "Go there", "app.doubt.figures": "Figure by figure", "app.doubt.little": "No single reading makes much of the doubt.",
	"app.doubt.motion": "Through start and stop", "app.doubt.motionlead": "From the water line, by {draws} draws; an end is good to about a tenth of the width.", "app.doubt.none": "Nothing to tell yet: it takes a flow that can be worked out.",

	// Levels played through time.
	"app.play.title": "{case}, moment by moment", "app.play.go": "Play the levels", "app.play.play": "Play", "app.play.pause": "Pause", "app.play.back": "One back", "app.play.next": "One on", "app.play.slide": "Moment", "app.play.show": "Show", "app.play.cases": "What happens",
	"app.play.at": "{at} of {of}", "app.play.table": "All moments in a table",

	// Paper and offer.
	"app.paper.title": "Sheets to print", "app.paper.size": "Size of paper", "app.paper.letter": "letter", "app.paper.a4": "A4", "app.paper.": "as goes with the job’s units",
	"app.paper.lead": "Each is a PDF with the job, its state, the date and a code by which a stale sheet shows itself. Print at 100 %, not fitted to the page.", "app.paper.all": "All in one file",
	"app.paper.hint.rolls": "one to one: hold the printed bar against the tape first", "app.paper.hint.care": "for the owner", "app.paper.hint.cut": "for the saw", "app.paper.hint.glue": "step by step",
	"app.offer.client": "Offer", "app.offer.firm": "How the price comes about", "app.offer.link": "Offer and price", "app.offer.view": "For whom", "app.offer.forclient": "As the client sees it", "app.offer.forfirm": "For the firm", "app.offer.print": "Print the offer",
	"app.device.units": "Figures shown in", "app.device.paper": "Paper in the printer", "app.units.": "the job’s units", "app.units.us": "feet, inches, gpm", "app.units.metric": "metres, millimetres, L/h",

	// Layouts for the vault.
	"app.layouts.title": "Layouts for the vault", "app.layouts.link": "Find and compare layouts",
	"app.layouts.lead":   "Looks through every order of fittings from the pump to the hole, every way the pump may stand and every run of elbows, and shows those that no other beats. It may take a minute; you can go on working meanwhile.",
	"app.layouts.elbows": "Elbows at most", "app.layouts.go": "Look for layouts", "app.layouts.again": "Look again", "app.layouts.stop": "Stop and show the best so far",
	"app.layouts.beside": "Side by side", "app.layouts.more": "{count} more are not shown.", "app.layouts.least": "least", "app.layouts.one": "Layout {number}",
	"app.layouts.out": "pump comes out", "app.layouts.straight": "straight up", "app.layouts.slide": "slide it {by} first", "app.layouts.released": "water that comes down",
	"app.layouts.keep": "Keep this one", "app.layouts.keepit": "Keep layout {number}",
	"app.layouts.stands": "Pump {attitude}, turned {turn}: {left} from the left wall, {front} from the front wall.",
	"app.layouts.roll":   "roll {angle}",
	"app.layouts.none":   "Nothing fits as it is", "app.layouts.mend": "What would make it fit", "app.layouts.mendlead": "Each alone is enough. Sizes are rounded up to what a tape reads.",
	"app.layouts.mendfits": "A layout with {elbows} {elbows:elbow|elbows} then fits.", "app.layouts.sure": "Less will not do.", "app.layouts.unsure": "That less will not do is not proven.",
	"app.layouts.mendtake": "Change it and look again",
	"app.layouts.drawn":    "Keep the assembly as it is drawn", "app.layouts.drawnlead": "To keep what is drawn now: its cut card is written down, and a later change that would alter a cut is told.",
	"app.layouts.kept":      "An assembly is kept, with its cut card. A later change that would alter a cut is told. Keeping anew writes a new card.",
	"app.error.layout":      "That layout is not at hand any more. Look for layouts again.",
	"app.error.stalelayout": "The job has changed since these layouts were found. Look for layouts again, then keep one.",
	"app.error.unread":      "Some fields of the job could not be read and would be lost. Mend them first; the Answer page names them.",

	"app.way": "How the pump comes out", "app.way.unplug": "Pull the plug. Nobody reaches into the water while it is in.", "app.way.open": "Open {union}.",

	// A piece or part by itself.
	"app.piece.stub": "In the dry fit a stub of {length} stands for it.", "app.piece.pumpend": "End toward the pump", "app.piece.wallend": "End toward the wall",
	"app.piece.into": "goes into {part}", "app.piece.mark": "mark it at", "app.piece.socket": "the socket is {depth} deep ({known})", "app.piece.at": "Pieces at it:", "app.piece.along": "Along the pipe", "app.piece.all": "All of it",
	"app.piece.roll":     "{mark} is rolled {angle}: {arc} round the pipe, clockwise, or {other} the other way.",
	"app.piece.noroll":   "{mark} stands on the line: no roll.",
	"app.known.measured": "measured here", "app.known.sheet": "from its sheet", "app.known.table": "from the tables: measure it before cutting", "app.known.least": "least a standard allows: measure it before cutting", "app.known.memory": "from memory: measure it before cutting",
	"app.corner": "Look at it over the corner", "app.corner.front-left": "front left", "app.corner.front-right": "front right", "app.corner.back-right": "back right", "app.corner.back-left": "back left",
	"app.touch": "Tap a piece or a part to see its cut, its marks and both ends.",
	"app.rolls": "Roll marks", "app.roll.none": "on the line: no roll", "app.roll.angle": "roll", "app.roll.arc": "round the pipe", "app.roll.other": "or the other way",

	"app.why.title": "A figure opened", "app.why.terms": "The values in it", "app.why.symbol": "sign", "app.why.value": "value", "app.why.from": "from",
	"app.assumed.title": "Assumed", "app.assumed.lead": "What the job does not say, and what was taken instead. Type your own value where it counts.",
	"app.assumed.weight": "at the other end of its usual range: {moves}",

	"app.figure.flow": "flow", "app.figure.speed": "speed", "app.figure.reynolds": "Reynolds number", "app.figure.factor": "friction factor", "app.figure.friction": "head lost along the pipe",
	"app.figure.k": "loss coefficients together", "app.figure.fittings": "head lost in fittings", "app.figure.volume": "water in it", "app.figure.head": "head", "app.figure.static": "height to lift",
	"app.figure.power": "power", "app.figure.energy": "energy of a year", "app.figure.wanted": "flow wanted", "app.figure.critical": "critical depth", "app.figure.edge": "thickness at the edge",
	"app.figure.perwidth": "flow for its width", "app.figure.burn": "head for its valve to take", "app.figure.pond": "level of the pond",
	"app.figure.vault":  "level in the vault",
	"app.figure.change": "pond against the line", "app.figure.freeboard": "room under the rim", "app.figure.sill": "water over the sill", "app.figure.passes": "flow that lasts",
	"app.figure.density": "density", "app.figure.viscosity": "viscosity", "app.figure.turnover": "turnover",

	"app.history.title": "History", "app.history.rev": "State {number}", "app.history.return": "Return to state {number}",
	"app.past.title": "State {number}", "app.past.between": "From this state to the newest: {changes}",

	"app.change.example": "Invented example put in", "app.change.begun": "Job begun", "app.change.imported": "Taken in from a file", "app.change.copied": "Copied from {name}",
	"app.change.aside": "Put aside", "app.change.back": "Taken back", "app.change.new": "{where}: {new}", "app.change.set": "{where}: {old} to {new}", "app.change.gone": "{where}: {old} taken out",
	"app.change.layout": "Layout {number} kept for the vault", "app.change.drawn": "The assembly kept as it is drawn", "app.change.more": "{count} more", "app.change.effect": "{what}. Moved: {moved}", "app.change.lost": "Could not be read and was left out: {places}.",
	"app.change.undone": "Undone, back to state {number}[: {what}]", "app.change.returned": "Returned to state {number}[: {what}]",
	"app.moved.rim": "room under the rim", "app.moved.money": "material", "app.moved.danger": "stops", "app.moved.caution": "watches",

	"app.stale.title": "Somebody else changed this job meanwhile",
	"app.stale.lead":  "Nothing of yours is lost, and nothing was saved yet. On {when} [{who} ]changed: {what}. Choose for each field what is to stand.",
	"app.stale.both":  "both changed it", "app.stale.was": "before: {was}", "app.stale.empty": "empty before", "app.stale.mine": "yours: {text}", "app.stale.theirs": "now: {text}",
	"app.stale.beside": "Changed by others beside", "app.stale.do": "Save what is chosen", "app.stale.leave": "Leave it as it is now",

	"app.new.title": "New job", "app.new.lead": "Name the job. Then the program asks, one screen at a time, for what a cut list takes: nine steps, each of which can wait. Lengths as on the tape: 4' 7-1/2\", 55 1/2 in, 1.41 m.",
	"app.new.do": "Begin the job", "app.new.copy": "To start from an earlier job, open it and press “Copy it”.",
	"app.word.us": "US: feet, inches, gpm", "app.word.metric": "metric: m, mm, L/h",

	"app.device.title": "This device", "app.device.link": "Your name?", "app.device.lead": "Your name stands with every change you make, so that the crew can ask. It is kept on this device.",
	"app.device.who": "Your name", "app.device.mode": "How pages look", "app.device.language": "Language / Idioma", "app.mode.": "as the device is set", "app.mode.light": "light", "app.mode.dark": "dark", "app.mode.sun": "in the sun: black on white, larger",

	"app.error.title": "That did not work", "app.error.page": "There is no such page.", "app.error.none": "There is no such job, or it was deleted.",
	"app.error.large": "That is too large: a job or picture may have 16 MB at most.", "app.error.form": "The form could not be read. Go back, reload the page and send it again.",
	"app.error.upload": "The file did not arrive whole. Choose it again and send it once more.", "app.error.nofile": "No file was chosen, or it is empty. Choose a file and send it again.",
	"app.error.who": "The name is too long: 60 letters at most.", "app.error.moved": "Somebody else changed this job meanwhile, so nothing was done. Go back, reload the page, and do it again where it is still right.",
	"app.error.empty": "Nothing was typed, so nothing was added.", "app.error.first": "There is nothing to undo: this is the first state of the job.",
	"app.error.revision": "There is no such state of the job.", "app.error.ours": "Something failed on our side. What was saved before stands.", "app.error.ref": "Reference for support: {ref}",
	"app.ground.title": "The outline on the ground", "app.ground.stage": "The ground: tap to place, arrows to move", "app.ground.tools": "Move, place, remove",
	"app.ground.how.points":  "Tap where a corner stands, one after the other round the pond; a new one goes in after the one chosen. Tap a corner to choose it, drag it to move it. The fields hold the same corners.",
	"app.ground.how.offsets": "The dashed line is the tape laid along the pond, measured from its zero. Tap where the edge is: above the line is left of the tape, below it right. Tap a mark to choose it, drag it to move it. The fields hold the same offsets.",
	"app.ground.keys":        "Keys: arrows move the corner chosen, or else the cross; with Shift by an inch or a centimetre. Enter places a corner at the cross, N chooses the next, Delete removes, Escape lets go.",
	"app.ground.corner":      "{name}: {x} along, {y} across", "app.ground.cross": "Cross at {x} along, {y} across", "app.ground.none": "No corner is chosen. Tap the ground to place one.",
	"app.ground.lost": "That did not arrive and was not saved. See whether the program still runs, then do it again.", "app.ground.full": "The list is full: no more corners can be placed.",
	"app.ground.between": "Offsets are taped in order: this one stays between its neighbours.",
	"app.ground.area":    "Surface as drawn:", "app.ground.noarea": "No surface yet: the corners close no outline.",
	"app.ground.left": "Move left", "app.ground.right": "Move right", "app.ground.up": "Move up the page", "app.ground.down": "Move down the page",
	"app.ground.next": "Next", "app.ground.place": "Place at the cross", "app.ground.remove": "Remove it",
	"app.ground.noscript": "Without scripts the drawing only shows what stands. Type the corners into the fields; they do the same.",
	"app.ground.wider":    "More ground", "app.ground.closer": "Closer",
	"app.ground.begin": "Is it no plain shape? Draw it; sizes that stand become the first corners.", "app.ground.begin.points": "Draw it corner by corner", "app.ground.begin.offsets": "Draw it from taped offsets",
}
