package takeoff

// Codes of this package, each with what it means and the arguments it carries.
const (
	// CodeFitting: a fitting, in whole pieces. Args: name, size (left out where there is none).
	CodeFitting = "takeoff.item.fitting"
	// CodePipe: pipe, in sticks or by length. Args: name, size (left out where there is none).
	CodePipe = "takeoff.item.pipe"
	// CodeCement: solvent cement, in cans. No args.
	CodeCement = "takeoff.item.cement"
	// CodePrimer: primer, in cans. No args.
	CodePrimer = "takeoff.item.primer"
	// CodeTape: thread tape, in rolls or by length. No args.
	CodeTape = "takeoff.item.tape"
	// CodeLiner: one sheet of liner. Args: place, length, width.
	CodeLiner = "takeoff.item.liner"
	// CodeUnderlay: underlayment of the liner's size, all layers. Args: place, length, width.
	CodeUnderlay = "takeoff.item.underlay"
	// CodeBoulders: boulders, by weight. Args: place.
	CodeBoulders = "takeoff.item.boulders"
	// CodeGravel: gravel, by weight. Args: place.
	CodeGravel = "takeoff.item.gravel"
	// CodeDig: soil to dig, as it lies in the ground. No args.
	CodeDig = "takeoff.item.dig"
	// CodeSoil: dug soil that is left over, loose, to carry away. No args.
	CodeSoil = "takeoff.item.soil"
	// CodeLoads: truck loads of the soil that is left over. No args.
	CodeLoads = "takeoff.item.loads"

	// CodeSticks: how the sticks of pipe come about. Args: planned, joined, run, rest (each left out where it is nothing), waste.
	CodeSticks = "takeoff.how.sticks"

	// FaultBook: no catalogue was given: no cement, tape, liner, stone or soil. No args.
	FaultBook = "takeoff.book"
	// FaultFinite: a value is not a number or infinite. Args: name.
	FaultFinite = "takeoff.value.finite"
	// FaultRange: a value is outside what is possible. Args: name, found, limit (the bound it breaks).
	FaultRange = "takeoff.value.range"
	// FaultSticks: the sticks and offcuts of the cutting plan are shorter than the pieces. Args: name, size, found, limit (the pieces together).
	FaultSticks = "takeoff.sticks"
	// FaultJoints: the table of joints per quart does not reach this size. Args: size, cause (a code of the catalogue).
	FaultJoints = "takeoff.joints"
	// FaultThread: the book has no thread of this standard and size, so no tape for it. Args: thread, size, cause (a code of the catalogue).
	FaultThread = "takeoff.thread"
	// FaultSoil: no swell for this soil, so no loose volume. Args: soil, near.
	FaultSoil = "takeoff.soil"
	// FaultPriceCurrency: a price is in another currency than the list. Args: name, currency, wanted.
	FaultPriceCurrency = "takeoff.price.currency"
	// FaultPriceUnit: a price is for a unit that the item is not sold by. Args: name.
	FaultPriceUnit = "takeoff.price.unit"
	// FaultPriceTwice: two prices name one item; the first counts. Args: name, size (left out where there is none).
	FaultPriceTwice = "takeoff.price.twice"

	// FindRules: the rules of the trade differ by more than RulesLimit of the lower; price both. Args: place, material ("boulders" or "gravel"), low, high, found, limit (both ratios).
	FindRules = "takeoff.rules.differ"
	// FindPriceUnused: a price names neither an item of the list nor a part of the catalogue. Args: name, size (left out where there is none), near (left out where nothing is near).
	FindPriceUnused = "takeoff.price.unused"
	// FindUnpriced: some items have no price, so the sum is not the whole. Args: found, of.
	FindUnpriced = "takeoff.unpriced"
	// FindPoolSizes: the sizes of a pool are not all given, so its liner and digging are not counted. Args: name.
	FindPoolSizes = "takeoff.pool.sizes"
	// FindExisting: pumps and runs that are there already, in no list. Args: where (their places), count.
	FindExisting = "takeoff.existing"
	// FindFalls: nothing tells how high the falls of a watercourse are together, so the liner down their faces is not counted. Args: name.
	FindFalls = "takeoff.falls"
	// FindVault: the sizes of the vault are not all given, so its hole is not counted. No args.
	FindVault = "takeoff.vault"
	// FindBed: a box with stone or filter in it is taken as ready-made: neither lined nor dug. Args: name.
	FindBed = "takeoff.bed"
	// FindSoilShort: the mound takes more soil than the holes give. Args: found, limit.
	FindSoilShort = "takeoff.soil.short"

	// CautionServices: have what is buried located before digging. No args.
	CautionServices = "takeoff.caution.services"
	// CautionCaveIn: the sides of a hole fall in. No args.
	CautionCaveIn = "takeoff.caution.cavein"
	// CautionOpenHole: fence an open hole. No args.
	CautionOpenHole = "takeoff.caution.openhole"
	// CautionLift: stones are moved by machine; no weight is safe to lift by hand. No args.
	CautionLift = "takeoff.caution.lift"
	// CautionTip: stand clear of a load that is tipped. No args.
	CautionTip = "takeoff.caution.tip"
	// CautionSolvent: primer and cement burn and harm. No args.
	CautionSolvent = "takeoff.caution.solvent"

	// AssumeOverlap: the liner beyond the edge on each side. Args: value.
	AssumeOverlap = "assume.takeoff.liner.overlap"
	// AssumeBank: the height that the liner goes up each side of a stream. Args: value.
	AssumeBank = "assume.takeoff.liner.bank"
	// AssumeLayers: the layers of underlayment. Args: value.
	AssumeLayers = "assume.takeoff.underlay.layers"
	// AssumePlainEnds: the sticks of pipe have plain ends, joined by couplings. No args.
	AssumePlainEnds = "assume.takeoff.ends"
	// AssumeWorkRoom: the room round the vault in its hole. Args: value.
	AssumeWorkRoom = "assume.takeoff.room"
	// AssumeTrench: the trench of the pipe. Args: width, depth.
	AssumeTrench = "assume.takeoff.trench"
	// AssumeSoil: the soil that is dug in. Args: soil, value (its greatest swell).
	AssumeSoil = "assume.takeoff.soil"
	// AssumeSpare: the spare fittings on top of the count. Args: value.
	AssumeSpare = "assume.takeoff.spare"
	// AssumeCan: the size of a can of cement or primer. Args: value.
	AssumeCan = "assume.takeoff.can"
)
