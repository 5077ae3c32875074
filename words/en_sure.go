package words

// enSure holds what is printed of bands, levels and motion.
var enSure = map[string]string{
	"print.head.sure":   "How sure: 90 of 100 lie between",
	"print.sure.draws":  "by {count} draws of what may be off, each round what was read; see what is assumed below, and docs/bands.md",
	"print.sure.why":    "the doubt comes from",
	"print.sure.lessen": "to be surer, first what counts most:",
	"print.sure.motion": "start and stop, levels from the water line, by {count} draws: an end is good to a tenth of the width; not calibrated",
	"print.sure.moved":  "{case}, {what}: {value} ({low} to {high})",
	"print.sure.part":   "{what}: it is {percent} of the doubt about “{figure}”",

	"print.head.levels":     "Water levels",
	"print.levels.way":      "water on its way {transit}; a restart draws {draw}",
	"print.levels.pond":     "the pond",
	"print.levels.rim":      "under the rim",
	"print.levels.sill":     "over the sill",
	"print.levels.floor":    "over the pump's floor",
	"print.levels.needs":    "needs",
	"print.levels.starved":  "{moment}: does not last: {passes} of {drawn} comes to the pump, {missing} of water missing",
	"print.head.motion":     "Through start and stop",
	"print.motion.lowest":   "lowest in the vault",
	"print.motion.highest":  "highest of the pond",
	"print.motion.still":    "still, steady",
	"print.motion.back":     "came back",
	"print.motion.restless": "not in {time}",
	"print.motion.after":    "after {time}",
	"print.motion.dry":      "; draws air after {time}",
	"print.motion.over":     "; {water} over the rim",
	"print.motion.foot":     "levels from the water line at rest; still, steady: the pond moves less than 1 mm in 10 minutes, the vault less than 1 mm a minute",
	"print.motion.once":     "{level} at once",
	"print.motion.when":     "{level}, {time}",
}
