package glue

// Codes of this package, each with what it means and the arguments it carries.
const (
	// StepPrepare: cut the pieces square, all but the closing ones; take the burr off, chamfer, wipe. Args: low and high (angle of the chamfer), narrow and wide (its width); the four left out without a book.
	StepPrepare = "glue.step.prepare"
	// StepDryFit: lay the whole chain in the vault without cement, stubs in the short joints; each pipe must grip at a part of its socket's depth. Args: stubs (their count), glued (marks of what is glued already; left out for none), part (of the depth, "1/3 to 2/3"; left out without a book).
	StepDryFit = "glue.step.dryfit"
	// StepMarkInsertion: mark how deep a piece goes at each end. Args: piece, from, to, near (mark at the from end), far (mark at the to end).
	StepMarkInsertion = "glue.step.mark.insertion"
	// StepHose: measure between the stops where the rest stands dry, cut the hose, mark how deep it goes in. Args: part, from, to, cut (worked out, along its middle), near and far (its marks), turn (of one that bends).
	StepHose = "glue.step.hose"
	// StepMarkBend: one line along a hose and over the hub before it, on the side to which it bends, set off from the top. Args: part, angle, arc, other.
	StepMarkBend = "glue.step.mark.bend"
	// StepMarkBendUpright: the same on an upright end, set off from its side towards the back wall. Args: part, angle, arc, other.
	StepMarkBendUpright = "glue.step.mark.bend.upright"
	// StepMarkRoll: one line over pipe and hub so that the elbow comes back as it stood, set off from the pipe's top. Args: part, angle (clockwise along the flow), piece (only where a pipe enters the elbow), arc (clockwise round the pipe; only where the angle is not 0), other (the same line the other way round; likewise).
	StepMarkRoll = "glue.step.mark.roll"
	// StepMarkRollUpright: the same on an upright pipe, set off from its side towards the back wall. Args: part, angle, piece, arc, other.
	StepMarkRollUpright = "glue.step.mark.roll.upright"
	// StepMarkArrow: the valve's arrow points away from the pump; mark it on the pipe too. Args: part.
	StepMarkArrow = "glue.step.mark.arrow"
	// StepMarkCover: a level swing valve is turned until its cover is on top and gets a line along its top, over the hubs and pieces in line with it. Args: part, pieces (marks of pieces at its ends that are not measured in place; left out where there is none).
	StepMarkCover = "glue.step.mark.cover"
	// StepMarkLines: at every other joint to be cemented one line over pipe and hub, so that each comes back as it stood. No args.
	StepMarkLines = "glue.step.mark.lines"
	// StepApart: take the chain apart; every stub comes out. Args: stubs (their count), glued (as before).
	StepApart = "glue.step.apart"
	// StepWall: set the bulkhead fitting in the wall on its gasket, no cement. Args: part.
	StepWall = "glue.step.wall"
	// StepThread: tape the male thread clockwise seen facing its end, screw in, tighten as the part's sheet says. Args: from, to, size, thread, low and high (wraps), turns (past hand-tight, low), turnsHigh.
	StepThread = "glue.step.thread"
	// StepThreadRing: a parallel thread seals on its ring: no tape. Args: from, to, size, thread.
	StepThreadRing = "glue.step.thread.ring"
	// StepNut: slide the union's nut over the pipe, thread towards the face, before its tail gets cement. Args: part, piece (empty where no pipe enters the tail).
	StepNut = "glue.step.nut"
	// StepBodyOut: open both nuts and take the valve's body away from the cement. Args: part.
	StepBodyOut = "glue.step.bodyout"
	// StepCement: prime and cement one joint, push home to the mark with the lines on hub and pipe in one, hold. Args: part, with (the piece or the other part), size, hold, set, together (unions whose faces are held together while it sets; left out where there is none), twist (by which it is turned while it is pushed home; left out for large sizes and in the vault).
	StepCement = "glue.step.cement"
	// StepCementValve: the same at a valve: cement on the pipe only, sparingly; joint below the valve, its socket looking down, until it has set. Args: as StepCement.
	StepCementValve = "glue.step.cement.valve"
	// StepCementValveInPlace: at a valve in the vault, which cannot be tilted: cement on the pipe only, a thin coat. Args: as StepCement.
	StepCementValveInPlace = "glue.step.cement.valve.inplace"
	// StepFlap: the cement has set: push the flap, it must move and fall shut. Args: part.
	StepFlap = "glue.step.flap"
	// Of a part that opens in two, the lists of parts in StepPump to StepBack name the half that is meant: "½ U1".

	// StepPump: set the pump in the middle of its play. Args: parts (what is on it; left out where there is nothing).
	StepPump = "glue.step.pump"
	// StepIn: put what was made on the bench into the vault. Args: parts.
	StepIn = "glue.step.in"
	// StepStand: stand the whole chain in the vault, unions made up dry, before anything is measured in it. Each argument only where there is one. Args: parts (still outside), unions, open (marks of other closing pieces that are not cut yet), covers (marks of valves whose cover comes on top).
	StepStand = "glue.step.stand"
	// StepTakeOut: take out what gets its next joint on the bench. Args: unions and parts, or free (parts with no union to open), pump (flag; only where the pump comes with them).
	StepTakeOut = "glue.step.takeout"
	// StepBack: put back what was taken out. Args: parts.
	StepBack = "glue.step.back"
	// StepMeasure: measure the gap between the hub faces in place, the rest dry and made up, and cut the closing piece by it; its roll line is carried over from the hubs. Args: piece, from, to, near and far (its insertion marks).
	StepMeasure = "glue.step.measure"
	// StepUnion: make the union up by hand: ring clean and seated, faces dry, no cement, no tape, no wrench. Args: part.
	StepUnion = "glue.step.union"
	// StepCure: leave the whole chain alone. Args: duration.
	StepCure = "glue.step.cure"
	// StepTest: fill with water, let the air out, look at every joint. No args.
	StepTest = "glue.step.test"

	// CautionVapour: solvent vapour is heavy, flammable and harmful and gathers in a vault: air it without making a spark, head out of it, somebody beside it. No args.
	CautionVapour = "glue.caution.vapour"
	// CautionSparks: no flame, smoking, running motor or sparking tool near primer and cement. No args.
	CautionSparks = "glue.caution.sparks"
	// CautionGloves: gloves and goggles; primer and cement hurt skin and eyes. No args.
	CautionGloves = "glue.caution.gloves"
	// CautionSaw: eye protection, the pipe clamped, the saw unplugged before its blade is touched. No args.
	CautionSaw = "glue.caution.saw"
	// CautionUnplug: unplug the pump before reaching into the vault. No args.
	CautionUnplug = "glue.caution.unplug"
	// CautionWaterOnly: test with water, never with air or gas: it bursts plastic pipe. No args.
	CautionWaterOnly = "glue.caution.wateronly"
	// CautionLift: lift the pump by its handle or a rope, never by its cord. No args.
	CautionLift = "glue.caution.lift"
	// CautionStrap: strap wrench only; more turns split the female part. No args.
	CautionStrap = "glue.caution.strap"
	// CautionHose: the hose's maker names its primer and cement, and how tight it bends; a bent hose springs back. No args.
	CautionHose = "glue.caution.hose"
	// CautionFrost: empty the pipe after the test: what stands in it can freeze. No args.
	CautionFrost = "glue.caution.frost"

	// FaultNotLaid: the chain has no places, so there is no order. No args.
	FaultNotLaid = "glue.notlaid"
	// FaultMismatch: the assembly was not laid from these parts. No args.
	FaultMismatch = "glue.mismatch"
	// FaultNoBook: no catalogue was given: no times, no quantities. No args.
	FaultNoBook = "glue.book"
	// FaultFinite: a value is not a number, infinite, or below what is possible. Args: name.
	FaultFinite = "glue.finite"
	// FaultEnds: two ends that meet cannot be joined. Args: from, to.
	FaultEnds = "glue.ends"
	// FaultTimes: the tables of set or cure times do not reach this joint; its can must tell. Args: table, size, cause (a code of the catalogue).
	FaultTimes = "glue.times"
	// FaultQuantity: the table of joints per quart does not reach this size. Args: size, cause.
	FaultQuantity = "glue.quantity"

	// FindValveInVault: this joint of a valve is made in the vault, where it cannot be tilted. Args: part, with.
	FindValveInVault = "glue.valve.vault"
	// FindCaptive: nothing but threads between pump and wall: the last one cannot be turned. Args: from, to.
	FindCaptive = "glue.thread.captive"
	// FindRollThread: an elbow on a thread must come to rest at its roll mark, between the first and the last turn allowed. Args: part.
	FindRollThread = "glue.thread.roll"
	// FindThreadUnknown: no family of threads is given: tape or ring is for the part's sheet. Args: from, to.
	FindThreadUnknown = "glue.thread.unknown"
	// FindNoClosing: no piece is measured in place, so every error of saw and seat is left in the last joint. No args.
	FindNoClosing = "glue.closing.none"
	// FindCold: it is cold: the times are the long ones and cement thickens. Args: found, limit.
	FindCold = "glue.cold"

	// AssumeNut: which half of a union carries the nut. Args: part, side ("pump" or "wall").
	AssumeNut = "assume.glue.nut"
)
