package design

// Codes of the search for layouts. Where an assembly is kept they are in kept.go.
const (
	// FindNoArrange: faults of reading, on which a layout would stand. Args: places.
	FindNoArrange = "design.void.arrange"
	// CodeArrangePump: the pump has no attitude that tells its size and port. Args: name.
	CodeArrangePump = "design.arrange.pump"
	// CodeArrangePipe: neither the assembly nor a run from the pump tells the pipe. No args.
	CodeArrangePipe = "design.arrange.pipe"
	// CodeArrangePort: nothing joins the pump's port to the pipe. Args: name, size, thread, pipe.
	CodeArrangePort = "design.arrange.port"
	// CodeArrangeElbows, CodeArrangeBest: more than can be searched, or below zero. Args: found, limit.
	CodeArrangeElbows = "design.arrange.elbows"
	CodeArrangeBest   = "design.arrange.best"
	// FindGluedUnion: a union ends what is glued, so that its other half may be new. Args: part.
	FindGluedUnion = "design.arrange.glued.union"
	// FindPumpLarge: the pump does not go into the vault in this attitude, which
	// is left aside. Args: name, attitude, axis, found, limit.
	FindPumpLarge = "design.arrange.pump.larger"
	// CodePumpLarge: it goes in in none. Args: name, found and limit (of the attitude that fails by the least), axis, attitude,
	// and other: an attitude that the job leaves out, in which it goes in, where there is one.
	CodePumpLarge = "design.arrange.pump.none"
	// CodePortInto: the port looks into the pump itself. CodePortOff: it lies farther
	// from it than any outlet sticks out. Args: name, attitude, found (how far; CodePortOff only).
	CodePortInto = "design.arrange.port.into"
	CodePortOff  = "design.arrange.port.off"
	// CodeObstacleHole: an obstacle stands over the hole. Args: name.
	CodeObstacleHole = "design.arrange.obstacle.hole"
	// FindOverlap: two obstacles stand in each other, and are both kept clear of. Args: name, other.
	FindOverlap = "design.arrange.obstacle.overlap"
	// CodeSocket: a measured socket that no pipe of its size goes into: the hub
	// is no wider than the pipe, or the centre lies inside the socket. Args:
	// fitting, size, measure ("hub" or "toStop"), found, limit.
	CodeSocket = "design.arrange.socket"
	// FindStockUnread: a fitting of the stock that no chain can hold, or that is of another size. Args: fitting, size.
	FindStockUnread = "design.arrange.stock"
	// FindNoElbow: there is no elbow to choose from: only runs straight to the hole are looked at. No args but where.
	FindNoElbow = "design.arrange.elbow.none"
	// FindNoPrices: parts without a price, so that layouts are not compared by cost. Args: items.
	FindNoPrices = "design.arrange.prices"

	// What a layout is looked for with where nothing fits. ChangeLeft, ChangeRight,
	// ChangeRound: the pump turned a quarter (seen from above) or half way round.
	// ChangePlace: at another place; ChangeTurned: and turned besides. Args: attitude
	// (where there are several), turn, left, front (where its corner then stands).
	ChangeLeft   = "design.instead.left"
	ChangeRight  = "design.instead.right"
	ChangeRound  = "design.instead.round"
	ChangePlace  = "design.instead.place"
	ChangeTurned = "design.instead.turned"
	// ChangeStand: in another attitude. Args: attitude, turn, left, front.
	ChangeStand = "design.instead.stand"
	// ChangeFitting: with a fitting that the stock leaves out; ChangeMore: with more of one. Args: fitting, size, count.
	ChangeFitting = "design.instead.fitting"
	ChangeMore    = "design.instead.more"
	// ChangeSeveral: with fittings that do only together. Args: fittings (each with how many are to be got).
	ChangeSeveral = "design.instead.several"
	// ChangeEnded: with a check valve with union ends, in place of valve and union. Args: fitting, size, count.
	ChangeEnded = "design.instead.ended"
	// ChangeHose: with a short hose next to the pump. Args: size, cut (its length), radius.
	ChangeHose = "design.instead.hose"

	// AssumeArrangeFlow: the speed at which losses are compared, where no flow could be worked out. Args: value.
	AssumeArrangeFlow = "assume.arrange.flow"
	// AssumeNoLoss: a fitting without a loss in the tables counts for nothing. Args: fittings.
	AssumeNoLoss = "assume.arrange.loss"
	// AssumeStands: every attitude of the pump, in quarter turns. Args: attitudes.
	AssumeStands = "assume.arrange.stands"
	// AssumeCounter: every fitting can be had. No args.
	AssumeCounter = "assume.arrange.counter"
	// AssumeWallSize: the fitting in the wall is of the run's size. Args: size, run.
	AssumeWallSize = "assume.arrange.wall"
	// AssumeGluedInto: which way the water runs into what is glued at the wall. Args: part, way (up, down, left, right, front, back).
	AssumeGluedInto = "assume.arrange.glued.into"
	// AssumeChecked: a check valve is wanted, though neither the run nor the assembly names one. No args.
	AssumeChecked = "assume.arrange.check"
)
