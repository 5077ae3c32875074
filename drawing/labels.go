package drawing

import "strings"

// labels are the words on the sheets, by code. {name} is filled in.
var labels = map[string]string{
	"curve.title":    "Pump and system curve",
	"curve.flow":     "flow, {unit}",
	"curve.head":     "head, {unit}",
	"curve.pump":     "pump {name}",
	"curve.system":   "system as drawn",
	"curve.at":       "at {head}",
	"curve.over":     "more than {flow}",
	"curve.none":     "no flow",
	"curve.static":   "static head",
	"curve.loss":     "pipe and fittings",
	"curve.feed":     "wanted {flow}",
	"curve.dry":      "no water",
	"curve.desc":     "Head over flow. Pump {name} and the system as drawn meet at {flow} and {head}.",
	"curve.parts":    "Of that head {static} is static and {loss} goes into pipe and fittings.",
	"curve.overdesc": "The curve of pump {name} ends before it meets the system: it gives more than {flow}.",
	"curve.nonedesc": "Pump {name} gives no flow against this system.",
	"curve.same":     "on the same pipe",
	"curve.other":    "Pump {name} on the same pipe would give {flow}.",

	"levels.title":           "Water levels",
	"levels.rim":             "rim",
	"levels.line":            "water line",
	"levels.pondrun":         "pond runs at",
	"levels.vaultrun":        "vault runs at",
	"levels.pondfloor":       "pond floor",
	"levels.vaultfloor":      "vault floor",
	"levels.sill":            "sill",
	"levels.need":            "needed",
	"levels.minwater":        "pump needs",
	"levels.from":            "from the water line, {unit}",
	"levels.ladder":          "Pond from the water line, {unit}, enlarged",
	"levels.rest":            "at rest",
	"levels.first":           "first start",
	"levels.run":             "running",
	"levels.stop":            "stop, valve holds",
	"levels.open":            "stop, valve open",
	"levels.stop.novalve":    "stop",
	"levels.empty":           "pond empty",
	"levels.short":           "short",
	"levels.spills":          "runs over",
	"levels.is":              "is",
	"levels.needs":           "needs",
	"levels.oversill":        "over the sill",
	"levels.overpump":        "over the pump’s floor",
	"levels.under.stop":      "under rim, stopped",
	"levels.under.stop-open": "under rim, valve open",
	"levels.rain":            "rain {depth}",
	"levels.desc":            "The pond against its water line: {list}.",
	"levels.above":           "{name} {depth} above",
	"levels.below":           "{name} {depth} below",
	"levels.descsill":        "The sill lies {sill} below the water line, the rim {rim} above.",

	"assembly.title":     "Assembly, seen from {corner}",
	"assembly.vault":     "Vault: {sizes}.",
	"assembly.off":       "The chain ends {off} off the hole.",
	"assembly.danger":    "The answer tells 1 danger of this assembly. Mend it before cutting.",
	"assembly.dangers":   "The answer tells {n} dangers of this assembly. Mend them before cutting.",
	"assembly.desc":      "The plumbing in the vault as it is seen over the {corner} corner.",
	"assembly.piece":     "Piece {mark}, {from} to {to}, cut {cut}.",
	"corner.front-left":  "front left",
	"corner.front-right": "front right",
	"corner.back-left":   "back left",
	"corner.back-right":  "back right",
	"wall.front":         "front",
	"wall.right":         "right",
	"wall.back":          "back",
	"wall.left":          "left",
	"piece":              "piece",
	"piece.between":      "between",
	"piece.cut":          "cut",
	"piece.marks":        "insertion marks",
	"piece.closing":      "{mark} closes the chain: measure its gap first.",
	"piece.unsure":       "* Measure the fitting in hand before cutting.",
	"part":               "part",
	"part.roll":          "roll",
	"part.arc":           "round pipe",
}

// say fills a label; args are names and what stands for them, in turn.
func say(code string, args ...string) string {
	pairs := make([]string, 0, len(args))
	for i := 0; i+1 < len(args); i += 2 {
		pairs = append(pairs, "{"+args[i]+"}", args[i+1])
	}
	return strings.NewReplacer(pairs...).Replace(labels[code])
}
