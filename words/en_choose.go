package words

// enChoose holds what is printed of a choice from a shelf.
var enChoose = map[string]string{
	"choose.title":         "{name}: pump and pipe to choose",
	"choose.wanted":        "wanted: {total}: {flows}",
	"choose.over":          "over {years} years at {discount} a year; water at most {speed}; every design has valves set to give exactly what is wanted",
	"choose.head.front":    "Best designs",
	"choose.head.lost":     "Why the others lost",
	"choose.head.out":      "Pumps that do not serve alone",
	"choose.head.best":     "What design 1 leaves room for",
	"choose.head.drawn":    "The job as drawn, valves set to give what is wanted",
	"choose.head.findings": "Worth knowing",
	"choose.head.assumed":  "Assumed",

	"choose.pump":       "pump {name}",
	"choose.pump.alike": "two of pump {name}",
	"choose.pump.pair":  "pump {name} with pump {other}",
	"choose.pipe.kind":  "{sizes} in {kind}",

	"choose.reserve":       "at least {percent}",
	"choose.reserve.none":  "not asked for",
	"choose.reserve.under": "under {percent}",

	"choose.front.none":             "No pump of the shelf serves what is wanted. Ask for less, allow larger pipe, or add pumps.",
	"choose.front.covered":          "held against {count} designs; none beats one of these on first cost, cost over the years and reserve together",
	"choose.front.covered.unpriced": "held against {count} designs; none beats one of these on electricity, size of pipe and reserve together",
	"choose.design.unpriced":        "{number}. first cost not known, {years} of electricity over the years; reserve {reserve}",
	"choose.leg":                    "joined by a leg of {length} in {pipe} for each, with its check valve, both priced and their loss counted",
	"choose.leg.unpriced":           "joined by a leg of {length} in {pipe} for each, with its check valve, the loss counted",
	"choose.pipe.more":              "more or larger pipe",
	"choose.change.unpriced":        "run {run} in {pipe}[: saves {head}][; with pump {pump} {saved} less over the years]",
	"choose.design":                 "{number}. {first} once, {years} over the years; reserve {reserve}",
	"choose.runs":                   "{pumps}: {flow} at {head}, {power}",
	"choose.each":                   "of it {one} and {other}",
	"choose.pipe":                   "pipe: {pipe}",
	"choose.takes":                  "pipe and height take {need}; valves take {valves}",
	"choose.valve.main":             "{head} in the main",
	"choose.valve":                  "{head} at {name}",
	"choose.open":                   "main valve open: {percent} of what is wanted, {power}",
	"choose.open.least":             "main valve open: at least {percent} of what is wanted, {power}",
	"choose.beside":                 "beside design 1: {what}",

	"choose.years.more": "{cost} more over the years", "choose.years.less": "{cost} less over the years", "choose.years.same": "the same over the years",
	"choose.first.more": "{cost} more once", "choose.first.less": "{cost} less once", "choose.first.same": "the same once",
	"choose.beside.reserve.more": "more reserve", "choose.beside.reserve.less": "less reserve", "choose.beside.reserve.same": "the same reserve",

	"choose.lost":  "{pumps}, at best {years} over the years on {pipe}: beside design {number} {why}",
	"choose.alike": "alike; the other stands first on the shelf",
	"choose.rest":  "and {count} more",

	"choose.higher":      "{name} could be {more} higher",
	"choose.longer":      "run {name} could be {more} longer",
	"choose.farther":     "run {name} could be {more} longer: so much farther could the pump stand",
	"choose.change.none": "no other pipe for a single run saves head or money",
	"choose.change.more": "run {run} in {pipe}: {cost} more[, saves {head}][ ({perHead} for each {unit})][; with pump {pump} {saved} less over the years][, {ratio} for each 1 spent]",
	"choose.change.less": "run {run} in {pipe}: {cost} less[, saves {head}][ ({perHead} for each {unit})][; with pump {pump} {saved} less over the years][, {ratio} for each 1 spent]",
}
