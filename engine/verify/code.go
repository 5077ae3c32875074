package verify

// Codes of the checks on what is stated: whether the assembly follows from what
// was typed.
const (
	// CheckWhole: the assembly has a place for each part and a piece for each
	// joint with pipe. Args: what ("parts", "pieces").
	CheckWhole = "verify.chain.whole"
	// CheckLimit: a setting is neither typed nor assumed. Args: name (its code).
	CheckLimit = "verify.limit.unknown"
	// CheckPump: body and port of the pump stand where its pose puts them. No args.
	CheckPump = "verify.pump.place"
	// CheckHole: the hole lies where the vault has it, its axis as well. No args.
	CheckHole = "verify.hole.place"
	// CheckJoint: two ends go together, in kind, size and thread. Args: from, to.
	CheckJoint = "verify.joint.ends"
	// CheckGiven: a joint is as long as was typed. Args: from, to.
	CheckGiven = "verify.joint.given"
	// CheckPlace: a part stands where the pieces before it put it. Args: part.
	CheckPlace = "verify.part.place"
	// CheckTurned: flow and roll of a part are those of the chain. Args: part.
	CheckTurned = "verify.part.turned"
	// CheckEnvelope: the envelope drawn is the part's. Args: part.
	CheckEnvelope = "verify.part.envelope"
	// CheckRoll: the roll mark of an elbow, as an angle. Args: part.
	CheckRoll = "verify.roll.angle"
	// CheckArc: the same along the pipe's outside. Args: part.
	CheckArc = "verify.roll.arc"
)

// Codes of the checks on pieces and on the chain's end.
const (
	// CheckCut: a piece with both its gaps is as long as from stop to stop. Args: piece, from, to.
	CheckCut = "verify.piece.cut"
	// CheckStep: a cut length is a whole number of steps. Args: piece.
	CheckStep = "verify.piece.step"
	// CheckLeast: a piece is at least as long as both sockets less both gaps. Args: piece.
	CheckLeast = "verify.piece.least"
	// CheckMark: an insertion mark is the socket's depth less the gap. Args: piece, to (the part it goes into).
	CheckMark = "verify.piece.mark"
	// CheckPiece: a piece lies in line between its two stops. Args: piece.
	CheckPiece = "verify.piece.place"
	// CheckSum: pieces, gaps and fittings of a straight stretch add up to what
	// lies between its ends. Args: from, to.
	CheckSum = "verify.leg.sum"
	// CheckClosure: the chain ends in the hole. No args.
	CheckClosure = "verify.closure.off"
	// CheckAxis: its last leg looks along the hole's axis. No args.
	CheckAxis = "verify.closure.axis"
	// CheckAsCut: the chain ends in the hole with every piece as it is cut and
	// pushed to its marks. No args.
	CheckAsCut = "verify.closure.cut"
)

// Codes of the checks on a hose.
const (
	// CheckHoseRadius: it is bent no tighter than it may be. Args: part.
	CheckHoseRadius = "verify.hose.radius"
	// CheckHoseStraight: it stays straight far enough beyond the sockets. Args: part, to (the part there).
	CheckHoseStraight = "verify.hose.straight"
	// CheckHoseLong: there is as much of it in one piece. Args: part.
	CheckHoseLong = "verify.hose.long"
	// CheckHoseWall: it does not go through the wall. Args: part.
	CheckHoseWall = "verify.hose.wall"
	// CheckHoseCut: it is as long as its middle line, cut in whole steps, and goes to the stops. Args: part.
	CheckHoseCut = "verify.hose.cut"
	// CheckHoseLine: the middle line drawn is its own. Args: part.
	CheckHoseLine = "verify.hose.line"
	// CheckHoseHeld: all of it lies inside the envelope drawn. Args: part.
	CheckHoseHeld = "verify.hose.held"
)

// Codes of the checks on room.
const (
	// CheckWall: a part to walls, floor and lid. Args: part, wall (the nearest).
	CheckWall = "verify.clear.wall"
	// CheckPumpClear: a part to the pump. Args: part.
	CheckPumpClear = "verify.clear.pump"
	// CheckObstacle: a part to the obstacles. Args: part, obstacle (the nearest).
	CheckObstacle = "verify.clear.obstacle"
	// CheckParts: a part to the parts that it does not meet. Args: part, other (the nearest).
	CheckParts = "verify.clear.parts"
	// CheckPumpWall: the pump stands inside. Args: wall (the nearest).
	CheckPumpWall = "verify.pump.wall"
	// CheckPumpObstacle: the pump to an obstacle. Args: obstacle.
	CheckPumpObstacle = "verify.pump.obstacle"
)

// Codes of the checks on valve, union and the way out.
const (
	// CheckArrow: a check valve's arrow points along the flow. Args: part.
	CheckArrow = "verify.valve.arrow"
	// CheckAttitude: a check valve stands as its data allow. Args: part.
	CheckAttitude = "verify.valve.attitude"
	// CheckCover: a level swing valve has its cover on top. Args: part.
	CheckCover = "verify.valve.cover"
	// CheckUnion: something opens. No args.
	CheckUnion = "verify.union.none"
	// CheckHand: room for a hand round a nut. Args: part, other (the nearest).
	CheckHand = "verify.union.hand"
	// CheckWay: a way out is told for the pump. Args: blocker (what is in the way, where it is not).
	CheckWay = "verify.lift.way"
	// CheckSlide: the first move slides the faces out of each other. Args: part.
	CheckSlide = "verify.lift.slide"
	// CheckMove: on a move all that goes with the pump keeps clear of all that
	// stays. Args: move (from 1), part and other (the two that come nearest to their limit).
	CheckMove = "verify.lift.clear"
	// CheckMoveWall: after a move all that goes with the pump is in the vault. Args: move, wall.
	CheckMoveWall = "verify.lift.wall"
	// CheckRim: what goes with the pump passes through rim and hatch. Args: wall.
	CheckRim = "verify.lift.rim"
	// CheckOut: the last move brings all of it above the lid. No args.
	CheckOut = "verify.lift.out"
)

// Codes of the checks on what is told beside the chain.
const (
	// CheckStub: a joint short enough has a stub for the dry fit, as long as the
	// setting and the gap it bridges. Args: piece.
	CheckStub = "verify.stub.length"
	// CheckOrder: which of valve and union comes first, and whether the bores
	// are known. No args.
	CheckOrder = "verify.water.order"
	// CheckWater: water that stands, comes down or runs back, to a millilitre.
	// Args: what ("standing", "released", "returns", "boxes", "between").
	CheckWater = "verify.water.volume"
	// CheckStack: what the errors of saw, seats and elbows add up to at the port.
	// Args: what ("worst", "likely", "closing").
	CheckStack = "verify.stack.error"
	// CheckTilt: the same of the direction of the port. No args.
	CheckTilt = "verify.stack.tilt"
	// CheckShare: what each source makes of the likely error. No args.
	CheckShare = "verify.stack.share"
	// CheckNeeded: the play told as needed, at worst and at hand. No args.
	CheckNeeded = "verify.play.told"
	// CheckRoom: moved as far as is told, the pump just touches what stops it.
	// Args: way ("left", "right", "front", "back").
	CheckRoom = "verify.room.pump"
	// CheckShorter: a closing piece can be cut shorter by as much as is told.
	// Args: piece.
	CheckShorter = "verify.room.shorter"
	// CheckPlay: the pump can be moved as far as the likely error asks. Args:
	// axis ("length", "width").
	CheckPlay = "verify.play.pump"
	// CheckSpare: a closing piece can be cut as much shorter as the likely error
	// asks. Args: piece.
	CheckSpare = "verify.play.piece"
)
