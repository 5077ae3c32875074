package design

// Codes of this package. Every message also carries "where".
const (
	// CodeRefused: a part of the engine refused a value and gave no code of its own. Args: cause.
	CodeRefused = "design.refused"
	// CodeNoPump: no pump is given. No args.
	CodeNoPump = "design.pump.none"
	// CodeNoSuchPump: the job is to be designed with a pump that it does not have. Args: name.
	CodeNoSuchPump = "design.pump.unknown"
	// CodeNoLength: a run or reach has no length. Args: name.
	CodeNoLength = "design.length.none"
	// CodeVoid: the flow cannot be worked out because a run or a feed is at fault. Args: name.
	CodeVoid = "design.flow.void"
	// CodeSettle: flow and running level did not settle. No args.
	CodeSettle = "design.flow.settle"
	// CodeOverride: an assumption is set that nothing in this job counts on. Args: code.
	CodeOverride = "design.assumed.unused"
	// CodeWeather: the summer day's weather is not told in full. No args.
	CodeWeather = "design.site.weather"
	// CodeNoLoad: current or voltage of a pump is not known. No args.
	CodeNoLoad = "design.circuit.unknown"
	// CodeVolts: the pumps on the circuit have different voltages. No args.
	CodeVolts = "design.circuit.volts"
	// CodeConductor: a conductor that cannot be read. Args: found.
	CodeConductor = "design.circuit.conductor"
	// CodeOwnField: an assumption is set that has a field of its own. Args: code, field.
	CodeOwnField = "design.assumed.field"
	// CodeSetting: a setting that cannot be read or is below zero. Args: code, found.
	CodeSetting = "design.assumed.value"
	// CodeNoFeed: no watercourse or no run is given. No args.
	CodeNoFeed = "design.feeds.none"
	// CodeNoLip: a watercourse has no lip, so nothing tells how high the water must go. Args: name.
	CodeNoLip = "design.feed.lip"
	// CodeNoLevel: an elevation that the hydraulics need is not known. Args: name.
	CodeNoLevel = "design.level.none"
	// CodeNoSteady: pump and pipe have no steady state. Args: stop.
	CodeNoSteady = "design.steady.none"
	// CodeNoSticks: pieces are to be cut, but no stick or offcut of that pipe is given. Args: pipe.
	CodeNoSticks = "design.cut.stock"
	// CodePort: the pump's port has no known connection. Args: name.
	CodePort = "design.pump.port"
	// CodeAttitude: the pump has no such attitude. Args: name.
	CodeAttitude = "design.pump.attitude"
	// CodeChain: a fitting that no chain from pump to wall can hold. Args: name.
	CodeChain = "design.assembly.fitting"

	// FindNoFlow, FindNoLevels, FindNoCutting, FindNoList: faults in the job void a part of the answer. Args: places.
	FindNoFlow    = "design.void.flow"
	FindNoLevels  = "design.void.levels"
	FindNoCutting = "design.void.cutting"
	FindNoList    = "design.void.list"
	// FindShort: a feed gets less than is wanted. Args: name, found, limit, percent.
	FindShort = "design.flow.short"
	// FindOver: a feed gets much more than is wanted. Args: name, found, limit.
	FindOver = "design.flow.over"
	// FindDry: the pump does not reach a feed. Args: name; others (what runs to the other feeds), or where nothing runs head (of the pump at no flow) or, with several, pumps (their number).
	FindDry = "design.flow.dry"
	// FindFast: the water in a run is fast. Args: name, found, limit.
	FindFast = "design.pipe.fast"
	// FindFriction: friction takes more head than the height does. Args: found, limit.
	FindFriction = "design.pipe.friction"
	// FindBox: the flow on the box is not what comes out. Args: box, found, limit, percent.
	FindBox = "design.pump.box"
	// FindUnsure: the pump runs outside its published curve, so it is not known whether a feed gets what is wanted. Args: name, found, limit.
	FindUnsure = "design.flow.unsure"
	// FindBeyond: the pump runs outside its published curve: the flow is a bound. Args: name, found.
	FindBeyond = "design.pump.beyond"
	// FindNoCheck: no check valve stands between a pump and the place where its water meets that of others. Args: name, joint, and where that is followed back (through it while it stands still) and left (for all feeds together).
	FindNoCheck = "design.pump.nocheck"
	// FindTogether: what the pumps give together, and the pump in use alone. Args: name, found, limit, percent.
	FindTogether = "design.pump.together"
	// FindDrop: the cable loses more voltage than is advised. Args: found, limit, drop.
	FindDrop = "design.circuit.drop"
	// FindLoad: the pumps take more of the breaker than is advised. Args: found, limit.
	FindLoad = "design.circuit.load"
	// FindCord: the cord is shorter than its way. Args: found, limit.
	FindCord = "design.pump.cord"
	// FindSkimmer: more flow than the skimmer is rated for. Args: found, limit.
	FindSkimmer = "design.vault.rated"
	// FindElectric: mains power near water. No args.
	FindElectric = "design.safety.electric"
	// FindIntake: what the pumps draw through can hold someone under water. No args.
	FindIntake = "design.safety.intake"
	// FindWater: people drown in open water. No args.
	FindWater = "design.safety.water"
	// FindChildren: the same, stronger, where children are. No args.
	FindChildren = "design.safety.children"
	// FindUnproven: the cutting plan stopped before it was proven best. Args: pipe.
	FindUnproven = "design.cut.unproven"

	// FindSystem: what the solver remarks on a part of the network. The message is the solver's own.
	// FindBand: the pump is known by its box only: the flow lies between two figures. Args: name, low, high.
	FindBand = "design.pump.band"
	// FindSmallerBox: a pump in hand with a smaller flow on its box gives more on this pipe. Args: name, box, flow, other, otherBox, otherFlow.
	FindSmallerBox = "design.pump.smallerbox"
	// FindNotOpen: a check valve does not open fully at this speed and loses more than is counted. Args: name, found, limit, counted, most (head).
	FindNotOpen = "design.check.notopen"
	// FindUnwanted: water runs in a feed for which no flow is wanted, so the sharing is not told. Args: name, found.
	FindUnwanted = "design.feed.unwanted"
	// FindDuty: the pump is to run long, and its sheet does not say continuous duty. Args: found.
	FindDuty = "design.pump.duty"
	// FindWatts: more watts than volts times amps. Args: found, limit.
	FindWatts = "design.pump.watts"
	// FindNoWatts: no watts are given, so there is no cost. No args.
	FindNoWatts = "design.pump.nowatts"
	// FindRise: the rises of the runs to a feed do not add up to its height. Args: name, found, limit.
	FindRise = "design.run.rise"
	// FindGone: a finding that was accepted does not arise any more. Args: code.
	FindGone = "design.accepted.gone"

	// RemedyPump: another pump or pipe for a single feed. Args as RemedyOption.
	RemedyPump = "design.remedy.pump"
	// RemedyValves: set the valves to share the water as wanted. Args: percent (of what is wanted, in every feed).
	RemedyValves = "design.remedy.valves"
	// RemedyOption: another pump or pipe. Args: pump, pipe, and where they are
	// known cost (of a year's electricity), more (first cost beyond the design
	// as drawn) and years (both over five years, beyond the design as drawn).
	RemedyOption = "design.remedy.option"

	// RemedyRun: the fittings of the assembly that its run lacks are put into it. Args: run.
	RemedyRun = "design.remedy.run"

	AssumeGlue        = "assume.site.glue" // temperature when gluing. Args: value
	AssumeTemperature = "assume.water.temperature"
	AssumePowerFactor = "assume.pump.cosphi"  // a pump's current is its watts by its volts. Args: value
	AssumeNumbers     = "assume.site.numbers" // how numbers are written. Args: number, amount (both as written; no amount without a currency)
	AssumeHours       = "assume.pump.hours"
	AssumeDays        = "assume.pump.days"
	AssumeCrest       = "assume.lip.kind"
	AssumeSheetAt     = "assume.lip.sheetat" // where the wanted sheet depth is meant. Args: name, value (depth)
	AssumeTee         = "assume.run.tee"     // a tee's loss on each leg's own speed. No args
	AssumeLossRange   = "assume.fitting.k"   // a coefficient that is known as a range. Args: name, low, high, value
	AssumeExit        = "assume.box.exit"
	AssumeReachN      = "assume.reach.n"
	AssumeWalls       = "assume.pond.walls" // the sides are taken as upright. Args: value (depth)
	AssumeSkimmer     = "assume.vault.weir" // weir coefficient of the skimmer. Args: value
)
