package layout

// Codes of the faults: something in the input is wrong or contradicts itself.
// Positions are worked out unless a size is missing or not a number.
const (
	// FaultFinite: a size is not a number or without bound. Args: name.
	FaultFinite = "layout.value.finite"
	// FaultRange: a size is outside what can be. Args: name, found, limit.
	FaultRange = "layout.value.range"
	// FaultNoParts: the assembly has no parts. No args.
	FaultNoParts = "layout.parts.none"
	// FaultKind: a word that is no kind of fitting. Args: part, kind.
	FaultKind = "layout.part.kind"
	// FaultMissing: a size of a fitting is not known. Args: part, measure
	// ("take-off in", "take-off out", "socket in", "socket out", "hub in", "hub out").
	FaultMissing = "layout.part.missing"
	// FaultNoPump: the pump's body sizes, port or the port's direction are
	// missing. Args: measure ("body", "port direction").
	FaultNoPump = "layout.pump.missing"
	// FaultPumpLarger: the pump in this attitude is larger than the vault.
	// Args: axis ("length", "width", "height"), found, limit.
	FaultPumpLarger = "layout.pump.larger"
	// FaultNoVault: a size of the vault is missing. Args: measure.
	FaultNoVault = "layout.vault.missing"
	// FaultHole: the hole lies off its wall, or its wall has no such name.
	// Args: wall, along, height.
	FaultHole = "layout.outlet.outside"
	// FaultSize: two ends that meet have different sizes and nothing between
	// them reduces. Args: from, to (marks), fromSize, toSize.
	FaultSize = "layout.join.size"
	// FaultEnds: two ends cannot go together (two male threads, two spigots, a
	// thread on a socket). Args: from, to, fromEnd, toEnd.
	FaultEnds = "layout.join.ends"
	// FaultThread: threads of two families that do not seal. Args: from, to,
	// fromThread, toThread.
	FaultThread = "layout.join.thread"
	// FaultPipe: there is no pipe of that size in the assembly. Args: from, to, size.
	FaultPipe = "layout.pipe.unknown"
	// FaultShort: a piece is shorter than both sockets less both gaps: the hubs
	// would stand in each other. Args: piece, from, to, cut, least, short.
	FaultShort = "layout.piece.short"
	// FaultClosingShort: there is no room for the closing piece. Args: piece,
	// from, to, short.
	FaultClosingShort = "layout.closing.short"
	// FaultClosingIdle: a closing piece lies along another one, or along the
	// pipe that leaves through the wall, and can close nothing. Args: from, to.
	FaultClosingIdle = "layout.closing.idle"
	// FaultClosingDirect: the joint marked closing has no pipe. Args: from, to.
	FaultClosingDirect = "layout.closing.direct"
	// FaultBulkhead: a bulkhead fitting stands before the end of the chain. Args: part.
	FaultBulkhead = "layout.bulkhead.last"
	// FaultHose: the ends of a hose are no spigots. Args: part.
	FaultHose = "layout.hose.ends"
)

// Codes of the findings on a hose.
const (
	// FindHose: it is cut by its length along the middle, and bends; its maker's
	// sheet comes first. Args: part, cut, radius and turn (of one that bends).
	FindHose = "layout.hose"
	// FindHoseTight: it is bent tighter than it may be. Args: part, found, limit.
	FindHoseTight = "layout.hose.tight"
	// FindHoseStraight: too little of it stays straight beyond a socket. Args: part, found, limit.
	FindHoseStraight = "layout.hose.straight"
	// FindHoseLong: it is longer than there is. Args: part, found, limit.
	FindHoseLong = "layout.hose.long"
	// FindHoseWall: it would go through the wall. Args: part.
	FindHoseWall = "layout.hose.wall"
)

// Codes of the findings on the chain's end and its pieces.
const (
	// FindClosure: the chain does not end at the hole. Args: dx, dy, dz (end
	// less hole: to the right, to the back, up), along, across.
	FindClosure = "layout.closure.off"
	// FindTurned: the last leg does not look along the hole's axis. Args: angle.
	FindTurned = "layout.closure.turned"
	// FindWorked: the length of the closing piece was worked out, not measured.
	// Args: piece, from, to, cut, faceGap.
	FindWorked = "layout.closing.worked"
	// FindTyped: a distance was given for the closing piece too, and is not
	// used. Args: piece, from, to, distance.
	FindTyped = "layout.closing.typed"
	// FindFixed: a distance was given where a spigot or a thread fixes it.
	// Args: from, to, distance, fixed (centre to centre).
	FindFixed = "layout.join.fixed"
	// FindParallel: a taper thread in a parallel one: tight only on a seal.
	// Args: from, to, fromThread, toThread.
	FindParallel = "layout.join.parallel"
	// FindReduces: the way for the water gets narrower along the flow. Args:
	// part, fromSize, toSize.
	FindReduces = "layout.part.reduces"
	// FindMeasureFirst: sizes that are a standard's minimum or from memory:
	// measure the fitting in hand before cutting. Args: kind, size, parts (marks).
	FindMeasureFirst = "layout.measure.first"
	// FindTail: the last pipe leaves through the wall: its length belongs to
	// the run. Args: from, inside (stop to the wall's inner face).
	FindTail = "layout.tail.runs"
	// FindLean: the wall leans where the fitting seats. Args: angle.
	FindLean = "layout.outlet.leans"
	// FindAskew: the pump is turned by no whole number of quarters. Args: turn, way
	// ("left" or "right", seen from above), frontleft and frontfront (from the left and
	// the front wall to the corner of its box nearest the front wall), leftleft and
	// leftfront (to the corner nearest the left wall), side (between the two).
	FindAskew = "layout.pump.askew"
)

// Codes of the findings on room.
const (
	// FindWall: parts come too near to a wall, floor or lid, or stand through it
	// (then a danger); once for each wall and each of the two. Args: part (of a
	// single one), parts and worst (of several, and the worst of them), wall,
	// side (of a wall) or plane (floor or lid), room (that the worst has) or
	// into (how far it stands in), found, limit, short.
	FindWall = "layout.clear.wall"
	// FindPump: a part and the pump. Args: part, room, into (instead of room,
	// where they stand in each other), found, limit, short.
	FindPump = "layout.clear.pump"
	// FindObstacle: a part and an obstacle. Args: part, obstacle, room, into, found, limit, short.
	FindObstacle = "layout.clear.obstacle"
	// FindParts: two parts of the chain that do not meet. Args: part, other,
	// room, into, found, limit, short.
	FindParts = "layout.clear.parts"
	// FindPumpWall: the pump stands through a wall, the floor or the lid. Args:
	// wall, side, plane, into, found, limit, short.
	FindPumpWall = "layout.pump.wall"
	// FindPumpObstacle: the pump and an obstacle. Args: obstacle, room, into, found, limit, short.
	FindPumpObstacle = "layout.pump.obstacle"
	// FindClosingSpare: the closing piece cannot be cut shorter by what the
	// stack may ask. Args: piece, found, limit.
	FindClosingSpare = "layout.closing.spare"
	// FindPlay: the pump cannot be moved by what the stack may ask. Args:
	// axis ("length", "width"), found, limit, worst.
	FindPlay = "layout.play.short"
	// FindUpright: nothing takes up the error in height: measure an upright
	// piece in place too. Args: found (likely error), worst.
	FindUpright = "layout.play.upright"
)

// Codes of the findings on valve, union, water and the way out.
const (
	// FindNoCheck: there is no check valve. No args.
	FindNoCheck = "layout.check.none"
	// FindReversed: the valve's arrow points against the flow. Args: part, flow
	// (as the design works it out without the valve's fault; put in by who knows it).
	FindReversed = "layout.check.reversed"
	// FindAttitude: the valve stands as its data do not allow. Args: part,
	// kind, found (angle of the flow above level), allowed ("up", "level or up").
	FindAttitude = "layout.check.attitude"
	// FindHinge: a swing valve lies level: its cover goes on top. Args: part,
	// turned (angle of the cover from upright, where it is turned away).
	FindHinge = "layout.check.hinge"
	// FindNoUnion: nothing opens: the pump cannot be taken out without a saw. No args.
	FindNoUnion = "layout.union.none"
	// FindHand: no room for a hand round the nut. Args: part, against, side,
	// plane, thing (one of the three, what it is against), found, limit, short.
	FindHand = "layout.union.hand"
	// FindReleased: the union lies after the valve: all that stands above comes
	// down into the vault when it is opened. Args: union, valve, released (at
	// most), boxes (of that out of the boxes at the top; only where there is
	// some), or inside instead of both, where only the water inside the vault is
	// known.
	FindReleased = "layout.water.released"
	// FindReturns: no valve holds the water: it runs back through the pump at
	// every stop. Args: returned (at most), boxes and inside as for
	// FindReleased, union (only where there is one).
	FindReturns = "layout.water.returns"
	// FindStands: water stands in the pipe with the pump off. Args: valve,
	// standing, inside (only where the runs are not known), between (valve and
	// union; only with a union).
	FindStands = "layout.water.stands"
	// FindFreezes: the same where there is frost. Args: valve, standing, inside, between.
	FindFreezes = "layout.water.freezes"
	// FindLifts: the pump comes out. Args: union, slide (off the union's lip),
	// shift, toward ("left", "right", "front", "back", or two of them); each
	// only where it is needed before the lift.
	FindLifts = "layout.lift.free"
	// FindMoves: the pump comes out neither by lifting nor by a shift and a lift,
	// but by more moves. Args: union, count (of moves), tilt and toward (the most it
	// leans, and which way; absent where it is not tilted).
	FindMoves = "layout.lift.moves"
	// FindNut: which of the two nuts of a check valve with union ends is to be opened.
	// Args: union, near or far (flags: the nut towards the pump, or towards the wall),
	// standing (near only, where it is known).
	FindNut = "layout.lift.nut"
	// FindBlocked: the pump does not come out by lifting, nor by a shift and a
	// lift, and no other way was found. Args: union, blocker, rim, opening (flags, in
	// place of blocker where only rim or hatch are too narrow), needed, available, short, toward, stop (what
	// ends the shift), side, plane, thing (one of the three, the same).
	// Without a shift that would do the first four only.
	FindBlocked = "layout.lift.blocked"
	// FindLip: the faces reach into each other and the pump cannot slide back.
	// Args: union, needed, available.
	FindLip = "layout.lift.lip"
)

// Codes of the assumptions: the setting's default is in force.
const (
	AssumeMakeUp        = "assume.layout.makeup"        // make-up gap at each pipe end
	AssumeClosingMakeUp = "assume.layout.closingmakeup" // the same for the closing piece
	AssumeStub          = "assume.layout.stub"          // length of a dry-fit stub
	AssumeWallClear     = "assume.layout.clear.wall"
	AssumePumpClear     = "assume.layout.clear.pump"
	AssumeObstacleClear = "assume.layout.clear.obstacle"
	AssumePartClear     = "assume.layout.clear.parts"
	AssumeHand          = "assume.layout.hand"       // room round a union's nut
	AssumeLiftClear     = "assume.layout.clear.lift" // the pump on its way out
	AssumeSaw           = "assume.layout.saw"
	AssumeTape          = "assume.layout.tape"
	AssumeSeat          = "assume.layout.seat"
	AssumeRoll          = "assume.layout.roll"
	AssumeElbow         = "assume.layout.elbow"
	AssumeAttitude      = "assume.layout.attitude" // a check valve's allowed attitude by its kind. Args: part, allowed
)
