package words

// enNetwork holds the sentences for pump and pipe as a net. The codes and their
// arguments are listed in engine/network/codes.go.
var enNetwork = map[string]string{
	"network.link.ends":     "Pipe “{link}” ends where nothing is. Check the names where its run starts and ends.",
	"network.node.level":    "“{node}”: its level or demand is not a number that can be used. Enter it again.",
	"network.node.kind":     "“{node}” is of no known kind, so it was left out. Check what it is.",
	"network.law":           "The resistance or curve of a part could not be used: it gives no number, or falls as the flow grows. Check bore, length, roughness and the pump's curve.",
	"network.link.noLoss":   "Pipe “{link}” closes a loop that has no resistance at all, so no flow can be told in it. Give every run of the loop its length and pipe size, or take this one out.",
	"network.levels.noPipe": "“{node}” and “{other}” are open waters joined by “{link}”, which has no resistance: any flow would do. Give it its length and pipe size, or make the two one water.",
	"network.levels.differ": "“{node}” stands at {level} and “{other}” at {found}, yet “{link}” joins them without any resistance, where two levels cannot differ. Give it its length and pipe size, or measure the levels again.",
	"network.lip.law":       "“{node}”: the lip has no formula for the water over it. Give its width and kind.",
	"network.empty":         "There are no pipes, or nothing for them to join. Add the runs from the pump to the watercourses.",
	"network.balance.tree":  "Pipe “{link}” closes a loop, brings a second feed, leads on from an outlet, or has a pump that not all of the water passes. Sharing by valves can be worked out only where each outlet has one way from the pump: change that, or set the valves by eye.",
	"network.balance.fed":   "“{node}”: water is wanted here, but no open way leads to it. Check shut valves and the arrows of check valves on the way.",
	"network.balance.want":  "The flows wanted do not fit: one is below zero or not a number, stands at no outlet or twice at one, or is missing at an outlet. Give each outlet one flow.",
	"network.balance.valve": "The valve of “{node}” stands on pipe “{link}”, which leads to other outlets, or has no bore. Put a valve on the branch that feeds only this outlet.",

	"network.balance.ways": "Several pipes lead to “{node}”, so no one valve sets what it gets, and how the valves share is not worked out. Let the pipes meet before it, or set their valves by a timed bucket.",

	"network.outlet.dry":    "“{node}” gets no water: the pump does not reach it. Take a pump with more head, or larger pipe.",
	"network.link.held":     "The check valve in “{link}” holds shut against the flow. Check its arrow: it points away from the pump.",
	"network.pump.stalled":  "The pump in “{link}” delivers nothing: at no flow it gives no more head than it must lift. Take a pump with more head. Do not let it run so: it overheats.",
	"network.pump.deadHead": "The pump in “{link}” pushes against a closed part of the pipe. Open a valve. Do not let it run so: it overheats.",
	"network.link.dead":     "Pipe “{link}” leads nowhere: no water flows in it. Join it to an outlet, or take it out.",
	"network.link.opposed":  "In “{link}” two one-way parts face each other: no water gets through. Turn one round.",
	"network.node.cut":      "“{node}”: no open pipe joins it to a level or an outlet. Check valves and the names of the runs.",
	"network.node.loose":    "“{node}”: only bounds of its head are known, because shut or one-way parts stand on each side.",
	"network.node.relative": "“{node}”: its head is known only against its neighbours, because no level is joined to it. Give a level that it is joined to.",
	"network.link.beyond":   "A part in “{link}” runs outside its data, so its figure is only a bound. Get its full curve from the maker, or choose another.",
	"network.demand.supply": "Water is asked for that nothing can supply, or comes in and cannot leave. Check the runs and the flows wanted.",
	"network.flow.limit":    "Nothing limits the flow here. Give the runs their length and pipe size, and the pump its curve.",
	"network.iterations":    "The search for the flows stopped before they agreed. Do not rely on these flows: check the pump's curve and the pipe sizes.",
	"network.law.nan":       "The curve or resistance of a part gave a value that is no number. Check the figures of pump and pipe.",
	"network.several":       "The pump's curve or a part in “{link}” rises where it should fall, so other flows are possible too. Read the curve again.",

	"network.several.state":    "The pump in “{link}” can run steadily at {found}, lifting {head}. It can run at other flows too: which one comes depends on how it starts. Choose a pump whose curve falls all the way, or throttle until one flow is left.",
	"network.several.unstable": "At {found} and {head} the pump in “{link}” is in balance but does not stay: it moves on to more or less flow by itself.",
	"network.several.stands":   "The pump in “{link}” can also stand against {head} and deliver nothing after a start with full pipes. Do not let it run so: it overheats.",
	"network.several.open":     "Between {low} and {high} the pump in “{link}” gives just about what the pipes ask, so its flow can wander there. Throttle or choose another pump.",
	"network.several.sample":   "The pump in “{link}” may have steady flows that were not found, because more than one curve rises where it should fall. Read the curves again.",
}
