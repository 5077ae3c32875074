package words

// enHydro holds the sentences for water, pump and falls. The codes and their
// arguments are listed in engine/hydro/code.go.
var enHydro = map[string]string{
	"hydro.value.finite":    "{where}: “{name}” is not a number that can be used. Enter it again.",
	"hydro.value.range":     "{where}: “{name}” is {found}; the formula holds to {limit}. Check the figure and its unit.",
	"hydro.value.word":      "{where}: “{name}” is “{found}”, a word that is not known here. Choose one of the known words.",
	"hydro.curve.none":      "{where}: the pump has no data: two points of its curve are needed, or the box's flow with its greatest head. Take them from the maker's sheet.",
	"hydro.curve.duplicate": "{where}: the curve has two points at {flow}; the box's greatest head counts as a point at no flow. Delete one, or read its flow again.",
	"hydro.curve.rise":      "{where}: at {flow} the head of the curve has risen by {rise}; a drooping curve of four points or more may rise by {limit} and falls in the end. The head of most pumps falls as the flow grows: read the points again.",
	"hydro.npsh.none":       "{where}: no point of the suction head required is given. Read NPSHr from the maker's sheet.",

	"hydro.curve.few":       "{where}: the curve has {count} points; four or more are normal. Read more points from the maker's sheet.",
	"hydro.curve.droop":     "{where}: up to {flow} the head of the curve rises by {rise}, more than a reading error. A pump with such a drooping curve may run at more than one flow, or hunt between them. Read those points again; if they hold, take a pump whose curve falls all the way where a steady flow counts.",
	"hydro.curve.levelled":  "{where}: the curve rises by {rise}, within the reading error of {limit}; it was made level there. Read those points again if in doubt.",
	"hydro.curve.nameplate": "{where}: there is no curve, only the box's {flow:both} and {head:both}. What comes of it is an estimate with a wide band. Get the curve from the maker.",
	"hydro.power.constant":  "{where}: watts are known at fewer than two points; {power} stands for the whole curve. The power cost is approximate.",
	"hydro.hazen.least":     "{where}: the {name} is {found}; the Hazen-Williams formula was made for {limit} and more. Give the pipe's kind and size, so that friction is worked out from its bore and roughness.",
	"hydro.hazen.most":      "{where}: the {name} is {found}; the Hazen-Williams formula was made for {limit} and less. Give the pipe's kind and size, so that friction is worked out from its bore and roughness.",
	"hydro.lip.cling":       "{where}: {head:both} of water stands over the middle of the lip; under {limit:both} the sheet may cling to the stone, and the figure may be off by {band}. Give more flow, or take a narrower lip.",
	"hydro.lip.cling.high":  "{where}: at the high end of the lip {head:both} of water stands over it; under {limit:both} the sheet may cling to the stone there. Level the lip, or give more flow.",
	"hydro.lip.tilt":        "{where}: the lip is {tilt:both} out of level; {limit:both} is little enough for an even sheet. Level the lip.",
	"hydro.lip.dry":         "{where}: {width:both} of the lip stays dry because it is out of level. Level the lip, or give more flow.",
	"hydro.channel.steep":   "{where}: the stream falls {found}; Manning's formula is used up to {limit}. Depth and speed are rough here. Build it as steps with lips, or check it with water.",
}
