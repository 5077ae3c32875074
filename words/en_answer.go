package words

// enAnswer holds the fixed words of the printed answer.
var enAnswer = map[string]string{
	"way.up": "up", "way.down": "down", "way.right": "to the right", "way.left": "to the left", "way.back": "to the back", "way.front": "to the front",
	"level.course.first": "first start", "level.course.kept": "everyday, valve holding", "level.course.open": "everyday, no valve", "level.course.topped": "topped up running",
	"level.moment.rest": "at rest", "level.moment.run": "running", "level.moment.stop": "stopped", "level.moment.rerun": "running again",
	"level.moment.stop-open": "stopped, valve open", "level.moment.rerun-open": "running again after that",
	"sure.pump-flow": "what pump {name} gives", "sure.further-flow": "what pump “{name}” gives", "sure.feed-flow": "what “{name}” gets", "sure.feed-head": "the water over lip “{name}”",
	"sure.pump-energy": "the electricity of a year", "sure.level-change": "the pond’s level, {name}", "sure.level-pump": "the water over what the pump needs, {name}", "sure.level-freeboard": "the room under the rim, {name}",
	"sure.together":        "what all make with one another",
	"sure.design-flow-dry": "cases in which “{name}” gets no water", "sure.design-flow-short": "cases in which “{name}” is short", "sure.levels-stop-spills": "cases in which a stop fills the pond over its rim",
	"sure.levels-restart-starves": "cases in which the water does not suffice for the pump", "sure.levels-start-starves": "cases in which the water does not suffice at first start", "sure.levels-pump-low": "cases in which the pump stands in too little water",
	"lessen.level": "take the height of “{name}” again, by two readings", "lessen.lip-width": "tape the width of lip “{name}” again", "lessen.lip-tilt": "level lip “{name}” from end to end again",
	"lessen.lip-c": "let a known flow run over lip “{name}”, or time a bucket under it, and read the water over it", "lessen.lip-cling": "time a bucket under lip “{name}”: no formula is good for so thin a sheet",
	"lessen.run-length": "tape run “{name}” again", "lessen.pipe-bore": "measure the inside diameter of {name}", "lessen.pipe-roughness": "ask the maker of {name} for its losses, or read the pressure at both ends",
	"lessen.fitting-k": "get the loss of {name} from its sheet, or set the valve by a timed bucket", "lessen.water-temperature": "read the water's temperature",
	"lessen.pump-flow": "time a bucket, or fill a known volume, with pump {name}; ask its maker for the test grade", "lessen.pump-head": "read the pressure at pump {name} with its valve shut for a moment, as its sheet allows; ask its maker for the test grade",
	"lessen.pump-reading": "ask for the curve of pump {name} as a table", "lessen.pump-wear": "read the pressure at pump {name} and hold it against its sheet", "lessen.pump-shape": "get the curve of pump {name} from its maker",
	"lessen.pump-power": "have a licensed electrician read the watts of pump {name} while it runs", "lessen.pond-area": "measure the surface of the pond again", "lessen.vault-area": "measure the vault again",
	"lessen.vault-weir": "measure the skimmer's opening again, and read the water over it running", "lessen.store": "measure “{name}” again, or fill it through a meter", "lessen.reach": "measure the depth of stream “{name}” while it runs",
	"cutting.method": "exact search, bounded by Gilmore and Gomory’s knapsack worths; least spent on new sticks, then fewest offcuts opened, then the longest rest",
	"cutting.proven": "proven, no plan is better", "cutting.unproven": "not proven best, the search stopped at its limit",
	"known.measured": "(measured)", "known.sheet": "(maker's sheet)", "known.table": "(table)", "known.least": "(table, the least)", "known.memory": "(table, from memory)",
	"effect.sill": "over the sill beyond the need", "effect.pump": "over the pump beyond the need", "effect.freeboard": "room under the rim",
	"moves.flow": "the pump's flow", "moves.draw": "what a restart draws",
	"motion.case.first": "first start", "motion.case.restart": "every start", "motion.case.stop": "stop", "motion.case.stop-leaks": "stop, valve leaking",
	"motion.case.stop-open": "stop, valve stuck open", "motion.case.cut": "power cut in first start", "motion.case.rain": "rain after a stop",
}
