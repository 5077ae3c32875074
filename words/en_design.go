package words

// enDesign holds the sentences for the answer as a whole. The codes and their
// arguments are listed in engine/design/codes.go.
var enDesign = map[string]string{
	"design.refused":          "{where}: this could not be worked out: {cause}. Check the figures given here.",
	"design.pump.none":        "{where}: no pump is given, so nothing can be worked out that needs one. Add a pump with its curve from the maker's sheet.",
	"design.feeds.none":       "{where}: no watercourse, or no run of pipe, is given. Add what the pump is to feed, and the pipe to it.",
	"design.feed.lip":         "{where}: “{name}” has no lip, so nothing tells how high the water must go. Add its lip with crest and width.",
	"design.level.none":       "{where}: the elevation or fall of “{name}” is not known, and the hydraulics need it. Give an elevation, or a rod reading in the survey.",
	"design.steady.none":      "{where}: pump and pipe come to no steady flow ({stop}). Check the pump's curve, the levels and the pipe sizes.",
	"design.cut.stock":        "{where}: there are pieces of {pipe} to cut, but no stick or offcut of it is given. Add the stick lengths your supplier sells.",
	"design.pump.port":        "{where}: the port of “{name}” has no connection that is known here. Choose a known size and thread, as on the maker's sheet.",
	"design.pump.attitude":    "{where}: the attitude named here is not among those given for pump “{name}”. Name one of them, or add it from the sheet.",
	"design.assembly.fitting": "{where}: “{name}” is no fitting that can stand between pump and wall in one line. Choose another.",

	"design.flow.short":      "“{name}” gets {found:both}; {limit:both} is wanted by the job, so {percent} is missing. Take larger pipe or another pump, or ask for less.",
	"design.flow.over":       "“{name}” gets {found:both}, well over the {limit:both} that the job wants. Close its valve some, or take a smaller pump.",
	"design.flow.dry":        "“{name}” gets no water: the pump does not lift that high through this pipe. Take a pump with more head, or larger pipe.",
	"design.pipe.fast":       "Run “{name}”: the water goes {found:both}; {limit:both} is the most advised. Take the next larger pipe.",
	"design.pipe.friction":   "Pipe and fittings take {found:both} of head, more than the {limit:both} of height to lift. Larger pipe gives more water from the same pump.",
	"design.pump.box":        "The box says {limit:both}; {found:both} comes out on this job, {percent} less. The box figure is the flow with no height and no pipe. Go by the curve.",
	"design.pump.beyond":     "Pump “{name}” runs outside its published curve: {found:both} is only a bound, and the true flow is not known. Get the full curve from the maker, or take a pump that runs within its curve.",
	"design.pump.cord":       "The pump's cord is {found}; its way is {limit}. Do not join cords near water. Order the pump with a longer cord, or have an electrician move the outlet.",
	"design.vault.rated":     "{found:both} goes through the skimmer; its maker rates it for {limit:both}. Take a larger skimmer or a second one.",
	"design.feed.throttle":   "To share the water as wanted, set the valve of “{name}” so that it takes {burn:both} of head (K = {k} on the speed in its last run). Set it by the flow seen, not by the handle.",
	"design.safety.electric": "Danger: mains power near water can kill. Have a licensed electrician make the connection to the local code, with ground-fault protection (GFCI, RCD). Unplug the pump before anyone reaches into the water.",
	"design.safety.children": "Danger: a small child can drown in very little water. Ask the local building office about fence, cover and depth before digging, and fence open holes and water during the work.",
	"design.cut.unproven":    "The cutting plan for {pipe} can be used as it is, but the search stopped before it was proven best. Give it more time for a proof.",
	"design.remedy.option":   "Pump {pump} on pipe {pipe}, valves set to share[, {more} more once][, {cost} of electricity a year]",
	"design.remedy.valves":   "Same pump and pipe, valves set to share",

	"assume.site.glue":         "The temperature of pipe and air when gluing is not given; {value} was assumed. Colder joints need longer.",
	"assume.water.temperature": "The water temperature is not given; {value:both} was assumed.",
	"assume.pump.hours":        "The pump's hours in a day are not given; {value} was assumed.",
	"assume.pump.days":         "The pump's days in a year are not given; {value} was assumed.",
	"assume.lip.kind":          "Lip “{name}”: its kind is not given; {kind} was assumed.",
	"assume.box.exit":          "The loss where the pipe lets go into still water is not given; K = {value} was assumed: all of the speed is lost.",
	"assume.reach.n":           "Stream “{name}”: its roughness is not given; Manning's n = {value} was assumed.",
	"assume.pond.walls":        "The pond's section is not given; upright sides, {value:both} deep, were assumed. Sloping sides hold less water.",
	"assume.vault.weir":        "The weir coefficient of the skimmer is not given; {value} was assumed.",
}
