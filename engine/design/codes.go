package design

// Codes of this package. Every message also carries "where".
const (
	// CodeRefused: a part of the engine refused a value and gave no code of its own. Args: cause.
	CodeRefused = "design.refused"
	// CodeNoPump: no pump is given. No args.
	CodeNoPump = "design.pump.none"
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

	// FindShort: a feed gets less than is wanted. Args: name, found, limit, percent.
	FindShort = "design.flow.short"
	// FindOver: a feed gets much more than is wanted. Args: name, found, limit.
	FindOver = "design.flow.over"
	// FindDry: the pump does not reach a feed. Args: name.
	FindDry = "design.flow.dry"
	// FindFast: the water in a run is fast. Args: name, found, limit.
	FindFast = "design.pipe.fast"
	// FindFriction: friction takes more head than the height does. Args: found, limit.
	FindFriction = "design.pipe.friction"
	// FindBox: the flow on the box is not what comes out. Args: box, found, limit, percent.
	FindBox = "design.pump.box"
	// FindBeyond: the pump runs outside its published curve: the flow is a bound. Args: name, found.
	FindBeyond = "design.pump.beyond"
	// FindCord: the cord is shorter than its way. Args: found, limit.
	FindCord = "design.pump.cord"
	// FindSkimmer: more flow than the skimmer is rated for. Args: found, limit.
	FindSkimmer = "design.vault.rated"
	// FindThrottle: the valve setting that shares the water as wanted. Args: name, burn, k.
	FindThrottle = "design.feed.throttle"
	// FindElectric: mains power near water. No args.
	FindElectric = "design.safety.electric"
	// FindChildren: children and open water. No args.
	FindChildren = "design.safety.children"
	// FindUnproven: the cutting plan stopped before it was proven best. Args: pipe.
	FindUnproven = "design.cut.unproven"

	// RemedyValves: set the valves to share the water as wanted. No args.
	RemedyValves = "design.remedy.valves"
	// RemedyOption: another pump or pipe. Args: pump, pipe, and where they are
	// known cost (of a year's electricity) and more (first cost beyond the design
	// as drawn).
	RemedyOption = "design.remedy.option"

	AssumeGlue        = "assume.site.glue" // temperature when gluing. Args: value
	AssumeTemperature = "assume.water.temperature"
	AssumeHours       = "assume.pump.hours"
	AssumeDays        = "assume.pump.days"
	AssumeCrest       = "assume.lip.kind"
	AssumeExit        = "assume.box.exit"
	AssumeReachN      = "assume.reach.n"
	AssumeWalls       = "assume.pond.walls" // the sides are taken as upright. Args: value (depth)
	AssumeSkimmer     = "assume.vault.weir" // weir coefficient of the skimmer. Args: value
)
