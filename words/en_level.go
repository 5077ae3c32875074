package words

// enLevel holds the sentences for the water levels. The codes and their
// arguments are listed in engine/level/codes.go.
var enLevel = map[string]string{
	"level.value.finite":  "{where}: “{name}” is not a number that can be used. Enter it again.",
	"level.value.range":   "{where}: “{name}” is {found}; the limit of what is possible is {limit}. Check the figure and its unit.",
	"level.missing":       "{where}: “{name}” is not given, and the levels cannot be worked out without it. Add it.",
	"level.section.order": "{where}: step {step} of the pond's side (the first is 0): “{name}” is {found}, and the step before has {limit}. A side goes down and inward. Put the steps in order.",

	"levels.start.starves":   "At first start the water does not suffice: {missing:both} is missing. In the end {over:both} stands over the sill, where the skimmer needs {needed:both}[: it passes only {passes:both} of the {flow:both} that the pump takes][: nothing comes over it any more, and pipe, streams and pools stay {unfilled:both} short of full]. The vault falls until the pump draws air and gasps[, {at} after the start]. Stand by with a hose at first start, and top up until the streams are full.",
	"levels.restart.starves": "At every start the water does not suffice: {missing:both} is missing. In the end {over:both} stands over the sill, where the skimmer needs {needed:both}[: it passes only {passes:both} of the {flow:both} that the pump takes][: nothing comes over it any more, and pipe, streams and pools stay {unfilled:both} short of full]. The vault falls until the pump draws air and gasps[, {at} after the start], which wears it out. Top up while it runs, lower the sill, make the pond larger, or take less flow.",
	"levels.start.empty":     "At first start pipe, streams and pools take more than the pump can draw from the pond: {missing:both} is missing, and {depth:both} is left over the floor it stands on. Then[, {at} after the start,] the pump draws air and gasps. Stand by with a hose at first start, and top up until the streams are full.",
	"levels.restart.empty":   "At every start pipe, streams and pools take more than the pump can draw from the pond: {missing:both} is missing, and {depth:both} is left over the floor it stands on. Then[, {at} after the start,] the pump draws air and gasps, which wears it out. Make the pond larger, or the streams smaller.",
	"levels.start.bare":      "At first start the pond comes down to the {needed:both} over the sill that the skimmer needs, and no less; the vault falls to {fall:both} below the sill. Only {spare:both} may be lost before the pump gasps. Stand by with a hose at first start, and top up to the water line after it.",
	"levels.restart.bare":    "At every start the pond comes down to the {needed:both} over the sill that the skimmer needs, and no less; the vault falls to {fall:both} below the sill. Only {spare:both} may be lost before the pump gasps. Lower the sill, make the pond larger, or take less flow.",
	"levels.start.reserve":   "If nobody tops up after the first start, {over:both} is left over the sill once the evaporation reserve is gone; the skimmer needs {needed:both}, so {short:both} is missing. Top up to the water line after the first start.",
	"levels.run.reserve":     "Once the evaporation reserve is gone, {over:both} stands over the sill; the skimmer needs {needed:both}, so {short:both} is missing. Top up sooner, fit an automatic fill, or lower the sill.",
	"levels.pump.low":        "Running, {depth:both} of water stands in the vault; the pump's sheet asks for {needed:both}, so {short:both} is missing. Set the pump lower, or deepen the vault.",
	"levels.pump.reserve":    "Once the evaporation reserve is gone, {depth:both} of water stands in the vault; the pump's sheet asks for {needed:both}, so {short:both} is missing. Top up sooner, or set the pump lower.",
	"levels.stop.spills":     "After a stop the water comes to {level:both}; the rim is at {rim:both}. It stands {over:both} too high, and {spill:both} runs over[, from {at} after the stop on]. Raise the rim, lower the water line, or make the pond larger.",
	"levels.stop.rain":       "After a stop {room:both} is left under the rim; the design rain raises the water by {rain:both}, and {spill:both} runs over[, from {at} after it begins]. Build an overflow that leads away from the house, or raise the rim.",
	"levels.valve.spills":    "Should the check valve stick open, a stop brings the water to {level:both}; the rim is at {rim:both}. It stands {over:both} too high, and {spill:both} runs over[, from {at} after the stop on]. Leave more room under the rim, or build an overflow.",
	"levels.valve.rain":      "Should the check valve stick open, {room:both} is left under the rim after a stop; the design rain raises the water by {rain:both}, and {spill:both} runs over. Build an overflow that leads away from the house.",
	"levels.sill.dry":        "The sill is at {sill:both} and the water line at {line:both}: the pond never feeds the vault. Set the sill below the water line.",
	"levels.line.over":       "The water line is at {line:both}, above the rim at {rim:both}: the pond runs over. Raise the rim or lower the line.",
	"levels.line.none":       "No running line will do: to feed the pump it must be {low:both} under the rim or less, to keep a stop under the rim {high:both} under it or more. Raise the rim, lower the sill, or make the pond larger.",
	"levels.rim.none":        "The level of the rim is not given, so it is not known whether the pond runs over after a stop or in rain. Take the level of the lowest point of the edge.",
	"levels.valve.none":      "No check valve is given, in the runs or in the vault: at every stop {back:both} runs back through the pump into the vault, and every start fills it up again. Fit one where the pump's sheet allows it, or leave room for that water.",

	"design.vault.level":     "{where}: its elevation is not given, so the vault is left out of the water levels: neither the skimmer nor the least depth over the pump is checked. Add it.",
	"design.vault.weirwidth": "{where}: the width of the skimmer's weir is not given, so it is not known whether it passes the pump's flow, and the pond is taken to reach the vault freely. Add it.",
	"design.vault.sill":      "{where}: the level of the skimmer's sill is not given, so it is not known when it cuts off the pump, and the pond is taken to reach the vault freely. Add it.",

	"assume.level.reserve": "What may evaporate before someone tops up is not given; {value:both} was assumed: two days of a dry summer. Long streams and high falls lose more.",
	"assume.level.rain":    "No design rain is given; {value:both} was assumed, so no cloudburst is counted. 1 to 2 in (25 to 50 mm) is usual.",
	"assume.pond.void":     "The part of the pond's volume that is water is not given; {value} was assumed: no stone or crates in it.",
	"assume.box.void":      "The part of a box that is water is not given; {value} was assumed: no gravel or filter media in it.",
	"assume.box.inlet":     "How high the pipe comes into a box is not given; at its floor was assumed, so that the box runs empty when nothing holds the pipe.",
	"assume.reach.wetted":  "The part of a stream's width that carries water is not given; {value} was assumed.",
	"assume.reach.holds":   "What stays in a stream after a stop is not given; {value:both} was assumed: it runs dry and fills at every start.",
	"assume.pool.depth":    "Pool “{name}”: its depth is not given; {value:both} was assumed, so it takes no water at first start. Add it: pools take much.",
	"assume.vault.screen":  "The drop of level through mat, net or screen is not given; {value:both} was assumed. A dirty one drops it by much more.",
	"assume.vault.open":    "The vault has neither sill nor weir; it was assumed that the pond reaches it freely at every level.",
	"design.box.joined":    "At every stop, the check valve holding, {back:both} of the box of “{name}” run down through the pipe into the lower box of “{to}”, over its lip and into the pond: its water falls by {fall:both}, and every start fills it up again. This is counted in the levels. Where it is to stay full, put a check valve into its branch, where the water can stand without freezing, or bring its pipe in above the water.",

	"assume.run.full":   "Whether pipe that joins boxes holds air at a high point, or runs down itself once its end comes clear, is not known; it was assumed to stay full. Air would break the siphon and leave more in the box; at most {value:both}, the water in the pipe up to that box, would come on top.",
	"assume.run.drains": "Run “{name}”: it is not given whether it drains; it was assumed that it runs empty when nothing holds it.",

	"assume.levels.pump.minimum": "The least water depth of the pump is not given; it was assumed that it runs down to the floor it stands on. Look on the maker's sheet.",
}
