package words

// enGlue holds the steps of the cementing plan, its warnings and its faults. The
// codes and their arguments are listed in engine/glue/codes.go.
var enGlue = map[string]string{
	// Steps.
	"glue.step.prepare":              "Cut the pieces square, all but the closing one. Take the burr off inside and out[, chamfer the outside {low} to {high}, {narrow} to {wide} wide], and wipe off dust and grease.",
	"glue.step.dryfit":               "Lay the whole chain in the vault without cement, with stubs in the short joints ({stubs}).[ What is glued already stays: {glued}.][ A pipe goes in by hand {part} of its socket's depth and then grips, so the chain still stands longer than it will. What falls in loose to the stop, or stops sooner, is not to be cemented: take another pipe or fitting. A pipe that just bottoms and is not loose will do if it is round.]",
	"glue.step.mark.insertion":       "Piece {piece}: mark how deep it goes in, {near} at {from} and {far} at {to}.",
	"glue.step.mark.roll":            "Elbow {part}: draw one line over its hub[ and pipe {piece}], {angle} clockwise along the flow from the pipe's top[; that is {arc} clockwise round the pipe, or {other} the other way]. The elbow comes back to this line.",
	"glue.step.mark.roll.upright":    "Elbow {part}: draw one line over its hub[ and pipe {piece}], {angle} clockwise along the flow from the side that faces the back wall[; that is {arc} clockwise round the pipe, or {other} the other way]. The elbow comes back to this line.",
	"glue.step.mark.arrow":           "Valve {part}: its arrow points away from the pump. Mark the arrow on the pipe too.",
	"glue.step.mark.cover":           "Swing valve {part} lies level: turn it until its cover is on top, or it will not fall shut. Draw one line along its top, over its hubs[, {pieces}] and the hubs at the far ends. The valve comes back to this line.",
	"glue.step.mark.lines":           "At every other joint that gets cement, draw one line over pipe and hub. Each comes back line on line.",
	"glue.step.apart":                "Take the chain apart[, but for what is glued already ({glued})]. Take out every stub ({stubs}).",
	"glue.step.wall":                 "Set bulkhead fitting {part} in the wall on its gasket. No cement.",
	"glue.step.thread":               "{from} into {to}, {size} {thread}: wind tape on the male thread, clockwise as you face its end, {low} to {high} wraps. Screw in by hand, then {turns} to {turnsHigh} turns more. The part's sheet comes first.",
	"glue.step.thread.ring":          "{from} into {to}, {size} {thread}: this thread seals on its ring. No tape. Check that the ring is clean and seated.",
	"glue.step.nut":                  "Union {part}: slide the nut over the pipe {piece}, thread towards the face, before its tail gets cement.",
	"glue.step.bodyout":              "Valve {part}: open both nuts and take the body out, away from the cement.",
	"glue.step.cement":               "Joint {part} with {with}, {size}: prime and cement, push home to the mark[ with a turn of {twist}], until it stands line on line, and hold {hold}. Leave it alone for {set}.[ Let it set with the faces of {together} together, the nut hand-tight.]",
	"glue.step.cement.valve.inplace": "Joint of valve {part} with {with}, {size}, which cannot be tilted: prime; a thin coat of cement on the pipe only, none in the valve's socket. Push straight home to the mark, line on line, hold {hold}, leave it alone for {set}.[ Let it set with the faces of {together} together, the nut hand-tight.]",
	"glue.step.cement.valve":         "Joint of valve {part} with {with}, {size}: prime; cement on the pipe only, sparingly. Keep the joint below the valve, its socket looking down, until it has set. Push home to the mark[ with a turn of {twist}], until it stands line on line, hold {hold}, leave it alone for {set}.[ Let it set with the faces of {together} together, the nut hand-tight.]",
	"glue.step.flap":                 "Valve {part}: once the cement has set, push the flap. It must move and fall shut. If it sticks, the valve has to be replaced.",
	"glue.step.pump":                 "Set the pump[ with {parts}] in the middle of its play.",
	"glue.step.in":                   "Put {parts} into the vault.",
	"glue.step.stand":                "Stand the whole chain in the vault, dry.[ Put in {parts}.][ Make union {unions} up by hand.][ For {open}, which is still to be cut, hold a dry piece of the length worked out.][ See that the cover of {covers} is on top.] No cement.",
	"glue.step.takeout":              "[Open union {unions} and take {parts}][Take {free}] out of the vault, to the bench[, with the pump on it{pump:flag}].",
	"glue.step.back":                 "Once that joint has set, put {parts} back into the vault.",
	"glue.step.measure":              "Closing piece {piece}, {from} to {to}: with the rest made up, measure the gap between the hub faces in place. Add the marks, {near} and {far}, and cut to that, outside the vault; make its ends as the others. While the chain stands so, draw one line along both hubs; carry it over to the piece.",
	"glue.step.union":                "Union {part}: make it up by hand. Ring clean and seated, faces dry, no cement, no tape, no wrench.",
	"glue.step.cure":                 "Leave the whole chain alone for {duration} before any pressure is on it.",
	"glue.step.test":                 "Fill with water, let the air out, and look at every joint.",

	// Warnings.
	"glue.caution.vapour":    "Danger: primer and cement give off a heavy vapour that burns and harms, and it gathers in a vault. Air the vault without making a spark, keep your head out of it, and have somebody beside it.",
	"glue.caution.sparks":    "Danger of fire: no flame, no smoking, no running motor and no sparking tool near primer and cement.",
	"glue.caution.gloves":    "Wear gloves and goggles: primer and cement hurt skin and eyes.",
	"glue.caution.saw":       "Wear eye protection at saw and file: chips fly. Clamp the pipe, keep hands and sleeves off the blade, and unplug a saw before you touch it.",
	"glue.caution.unplug":    "Danger: unplug the pump before you reach into the vault.",
	"glue.caution.wateronly": "Danger: test with water only, never with air or gas. Plastic pipe bursts under air and throws splinters.",
	"glue.caution.lift":      "Lift the pump by its handle or a rope, never by its cord, and with two people if it is heavy.",
	"glue.caution.strap":     "Use a strap wrench only. More turns split the female part.",
	"glue.caution.frost":     "Empty the pipe after the test: what stands in it can freeze and burst it.",

	// Faults and findings.
	"glue.notlaid":        "The parts have no places yet, so there is no order of work. Mend the faults of the assembly first.",
	"glue.mismatch":       "The assembly was not laid from these parts. Work it out again.",
	"glue.book":           "There is no book of fittings, so no times and no amounts of cement are told.",
	"glue.finite":         "“{name}” is not a number that can be used, or is below what is possible. Enter it again.",
	"glue.ends":           "{from} and {to}: these ends cannot be joined. Put an adapter between.",
	"glue.times":          "The table “{table}” does not reach a {size} joint. Take the set and cure times from the can.",
	"glue.quantity":       "The table of joints per quart does not reach size {size}. Ask for the amount of cement where you buy it.",
	"glue.valve.vault":    "The joint of valve {part} with {with} is made in the vault, where it cannot be tilted: cement may run onto the flap. Make the joint outside, or use a valve that unscrews.",
	"glue.thread.captive": "{from} to {to}: there are only threads between pump and wall, so the last one cannot be turned. Put in a union.",
	"glue.thread.roll":    "Elbow {part} is on a thread: it must come to rest at its roll mark between the first and the last turn allowed. If it does not, take off the tape and begin again, or use a union.",
	"glue.thread.unknown": "{from} into {to}: the family of threads is not given. The part's sheet tells whether tape or a ring.",
	"glue.closing.none":   "No piece is measured in place, so every error of saw and seat is left in the last joint. Mark one joint as closing.",
	"glue.cold":           "It is {found:both}, below {limit:both}: the times here are the long ones, and cement thickens. Keep the cans warm, and wait longer where in doubt.",

	"assume.glue.nut": "Union {part}: it is not given which half carries the nut; the half to the {side} was assumed. Look at the union in hand.",
}
