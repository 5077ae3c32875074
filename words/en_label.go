package words

// enLabel names fields of the job on the pages where the document's own word is
// too short for whoever has not read its format, and says what they are for. The
// key is the field's path without the numbers of the elements.
var enLabel = map[string]string{
	"app.meant":          "I mean {text}",
	"app.unsaid.assumed": "not said: {value} is assumed",

	"app.label.numbers-decimal": "How decimals are written", "app.hint.numbers-decimal": "with a point, 12.5, or with a comma, 12,5; what you type is read so too",
	"app.label.numbers-thousands": "What stands between thousands", "app.hint.numbers-thousands": "with a comma 1,234; with a space 1 234; with none 1234",
	"app.label.numbers-money": "What stands beside an amount of money", "app.hint.numbers-money": "the currency’s sign, $, or its code, USD",
	"app.label.numbers-side": "Where that sign or code stands", "app.hint.numbers-side": "before the amount, $12.50, or after it, 12.50 $",

	"app.label.site-designRain": "Cloudburst to be ready for", "app.label.site-reserve": "Room for evaporation", "app.label.site-rainTime": "How long the cloudburst lasts", "app.label.site-tariff": "Price of a kWh",
	"app.label.site-valveLeak": "Leak of a worn check valve", "app.hint.site-currency": "three letters: USD, MXN, EUR",
	"app.label.survey-setups": "Standings of the level", "app.label.survey-setups-benchmark": "Point sighted first", "app.label.survey-points-setup": "Read from standing",

	"app.label.pond-water": "Water line", "app.hint.pond-water": "its level at rest; the other levels can be said from it",
	"app.hint.pond-rim":    "lowest point of the edge, or the overflow; from the water line: @water + 3 in",
	"app.label.pond-depth": "Greatest depth", "app.label.pond-void": "Water among stones", "app.label.pond-measured": "Volume, measured", "app.hint.pond-measured": "by meter or timed fill; it counts before the sizes",
	"app.label.pond-fillLevel": "Float valve shuts at", "app.label.pond-fillFlow": "Float valve gives", "app.label.pond-section-in": "In from the edge", "app.label.pond-section": "Side of the pond",

	"app.label.watercourses-parts-lip-crest": "Level of the crest", "app.hint.watercourses-parts-lip-crest": "from the water line: @water + 2 ft",
	"app.label.watercourses-parts-lip-c": "Weir coefficient C", "app.label.watercourses-parts-reach-n": "Roughness of the bed", "app.hint.watercourses-parts-reach-n": "Manning's n",
	"app.label.watercourses-parts-reach-name": "Name", "app.hint.watercourses-parts-reach-name": "what this stretch is called", "app.hint.watercourses-parts-reach-depth": "running depth as measured; it counts before the formula",
	"app.label.watercourses-parts-reach-holds": "Water that stays in it", "app.hint.watercourses-parts-reach-holds": "mean depth that stays in the stretch when the pump is off",
	"app.label.watercourses-box-inletLoss": "Loss at the inlet (K)", "app.hint.watercourses-box-inletLoss": "1 where all of the water's speed in the pipe is lost there", "app.label.watercourses-box-void": "Water among gravel",
	"app.label.watercourses-box": "Spill box", "app.hint.watercourses-name": "what you call this water; pipe runs to it by this name",

	"app.label.use": "Pump in use", "app.label.pumps-boxFlow": "Flow on the box", "app.label.pumps-maxHead": "Greatest head on the box", "app.label.pumps-minWater": "Least water over the floor",
	"app.label.pumps-cordPath": "Way of the cord to the outlet", "app.label.pumps-motorWatts": "Most watts of its motor", "app.label.pumps-port": "Its outlet", "app.label.pumps-port-size": "Size of the outlet", "app.hint.pumps-port-size": "as its sheet says it",
	"app.label.pumps-port-thread": "The outlet connects by", "app.label.pumps-attitudes": "Ways it may stand", "app.label.pumps-attitudes-name": "How it stands", "app.hint.pumps-attitudes-name": "on its feet, on its side",
	"app.label.pumps-attitudes-length": "The pump, left to right", "app.label.pumps-attitudes-width": "The pump, front to back", "app.label.pumps-attitudes-height": "The pump, feet to top",
	"app.hint.pumps-attitudes-length": "as it stands this way", "app.hint.pumps-attitudes-width": "as it stands this way", "app.hint.pumps-attitudes-height": "as it stands this way",
	"app.label.pumps-attitudes-port": "Middle of the outlet", "app.label.pumps-attitudes-port-x": "Outlet from the pump's left side", "app.label.pumps-attitudes-port-y": "Outlet from the pump's front", "app.label.pumps-attitudes-port-z": "Outlet above the feet",
	"app.hint.pumps-attitudes-port-x": "to the middle of its face", "app.hint.pumps-attitudes-port-y": "to the middle of its face", "app.hint.pumps-attitudes-port-z": "to the middle of its face",
	"app.label.pumps-attitudes-points": "The outlet looks", "app.hint.pumps-attitudes-points": "as it stands this way, before it is turned in the vault",
	"app.label.pumps-outside": "Where it stands when it is not in the water", "app.label.pumps-outside-centre": "Level of its inlet", "app.label.pumps-outside-intake": "Level of the open end under water", "app.label.pumps-outside-length": "Length of the suction pipe",
	"app.label.pumps-npsh": "Suction head it asks for (NPSHr)", "app.hint.pumps-npsh-head": "suction head it asks for at that flow", "app.label.circuit": "Electric circuit", "app.label.circuit-length": "Length of cable, one way",
	"app.label.furtherPumps": "Pumps that run beside it",

	"app.label.runs-throttle": "Valve shut so far (K)", "app.hint.runs-throttle": "loss coefficient at its setting, beyond that of the open valve", "app.label.runs-c": "Hazen-Williams C", "app.hint.runs-roughness": "of the inner wall, by its sheet; it counts before the tables",
	"app.hint.runs-bore": "inside diameter as measured; it counts before the tables",

	"app.label.vault-length": "Inside, left to right", "app.hint.vault-length": "at the rim; of a round vault its diameter", "app.label.vault-width": "Inside, front to back", "app.hint.vault-width": "at the rim",
	"app.label.vault-floor": "Level of the floor", "app.hint.vault-floor": "from the pond's water line: @water - 22 in", "app.label.vault-sill": "Level of the sill", "app.hint.vault-sill": "the edge over which the pond runs into the vault; from the water line: @water - 4 in",
	"app.label.vault-weirWidth": "Width of the sill", "app.hint.vault-weirWidth": "clear width that the water runs over",
	"app.label.vault-screenLoss": "Drop through mat and screen", "app.label.vault-rated": "Most flow by the skimmer's sheet",
	"app.label.vault-hatch": "An opening smaller than the vault", "app.label.vault-hatch-length": "Opening, left to right", "app.hint.vault-hatch-length": "the clear size that the pump must pass",
	"app.label.vault-hatch-width": "Opening, front to back", "app.hint.vault-hatch-width": "the clear size that the pump must pass",
	"app.label.vault-hatch-left": "From the left wall", "app.hint.vault-hatch-left": "from its inside at the rim to the opening; in the middle when empty",
	"app.label.vault-hatch-front": "From the front wall", "app.hint.vault-hatch-front": "from its inside at the rim to the opening; in the middle when empty",
	"app.label.vault-outlet": "The hole in the wall", "app.label.vault-outlet-wall": "Wall it is in", "app.hint.vault-outlet-wall": "as you stand in front of the vault and look down into it",
	"app.label.vault-outlet-along": "Along the wall", "app.hint.vault-outlet-along": "to the middle of the hole: from the left wall in front and back, from the front wall at left and right",
	"app.label.vault-outlet-height": "Above the floor", "app.hint.vault-outlet-height": "to the middle of the hole",
	"app.label.vault-outlet-undrilled": "Not drilled yet: how far it may move", "app.label.vault-outlet-undrilled-less": "Less along the wall, by", "app.label.vault-outlet-undrilled-more": "More along the wall, by",
	"app.label.vault-outlet-undrilled-down": "Lower, by", "app.label.vault-outlet-undrilled-up": "Higher, by",
	"app.label.vault-obstacles-from": "Begins", "app.label.vault-obstacles-from-x": "Begins, from the left wall", "app.label.vault-obstacles-from-y": "Begins, from the front wall", "app.label.vault-obstacles-from-z": "Begins, above the floor",
	"app.label.vault-obstacles-to": "Ends", "app.label.vault-obstacles-to-x": "Ends, from the left wall", "app.label.vault-obstacles-to-y": "Ends, from the front wall", "app.label.vault-obstacles-to-z": "Ends, above the floor",
	"app.hint.vault-obstacles-from-x": "the side nearest that wall", "app.hint.vault-obstacles-from-y": "the side nearest that wall", "app.hint.vault-obstacles-from-z": "its underside",
	"app.hint.vault-obstacles-to-x": "the side farthest from that wall", "app.hint.vault-obstacles-to-y": "the side farthest from that wall", "app.hint.vault-obstacles-to-z": "its top",

	"app.label.assembly-attitude": "The pump stands", "app.hint.assembly-attitude": "one of the ways named on the Pump page", "app.label.assembly-turn": "Turned by", "app.label.assembly-makeUp": "Gap at each pipe end",
	"app.hint.assembly-makeUp": "what stays open when a pipe is glued in; 1/8 in by common practice, 0 is pushed home",
	"app.label.assembly-at":    "Where the pump stands", "app.label.assembly-at-x": "From the left wall", "app.label.assembly-at-y": "From the front wall", "app.label.assembly-at-z": "Above the floor",
	"app.hint.assembly-at-x": "to the side of the pump nearest that wall, once it is turned", "app.hint.assembly-at-y": "to the side of the pump nearest that wall, once it is turned", "app.hint.assembly-at-z": "to its feet; 0 on the floor",
	"app.label.assembly-closing": "The closing piece", "app.label.assembly-search": "What a layout may do without", "app.label.assembly-search-into": "The water runs into the wall's parts", "app.label.assembly-search-stands": "Ways the pump may stand",
	"app.label.assembly-start": "From the outlet to the first fitting", "app.label.assembly-startBy": "Taken", "app.label.assembly-parts": "Fittings, from the pump to the wall", "app.label.assembly-parts-next": "To the next fitting", "app.label.assembly-parts-nextBy": "Taken",
	"app.label.measured": "Fittings measured", "app.label.measured-k": "Loss (K)", "app.label.measured-toStop": "Middle to stop", "app.label.measured-attitudes": "Ways it may lie",

	"app.label.stock-keep": "Shortest rest worth keeping", "app.label.stock-only": "There is nothing else to be had",
	"app.hint.stock-only": "a layout then uses only the fittings listed here, and pipe that comes out of the offcuts and counted sticks", "app.label.stock-pieces": "Further pieces to cut",
}
