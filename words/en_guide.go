package words

// enGuide holds the way from an empty job to its cut list: what each step asks
// for, and why.
var enGuide = map[string]string{
	"app.guide.pond": "The pond",
	"app.guide.fall": "The fall", "app.guide.pipe": "The pipe to it", "app.guide.pump": "The pump", "app.guide.vault": "The vault",
	"app.guide.hole": "The hole in the vault", "app.guide.stands": "How the pump stands", "app.guide.layout": "A layout for the vault", "app.guide.sticks": "The pipe you buy",

	"app.guide.lead.pond":   "Its size at the water line, and how much room there is above the water before it runs over.",
	"app.guide.lead.fall":   "The edge that the water falls over. Which flow you want decides which pump will do.",
	"app.guide.lead.pipe":   "From the pump to the fall, as it will lie. Elbows and valves outside the vault can be added later, on the Pipe page.",
	"app.guide.lead.pump":   "Flow and head from the maker's chart: two points at least, six are better. The flow at the fall follows from it.",
	"app.guide.lead.vault":  "The box the pump stands in. Tape its inside.",
	"app.guide.lead.hole":   "Where the pipe leaves the vault. Stand in front of it, as the picture shows, and tape to the middle of the hole.",
	"app.guide.lead.stands": "The room the pump takes, and where its outlet is. Lay it down as it will stand and tape from its own left side, its front and its feet.",
	"app.guide.lead.layout": "The program looks for the fittings and cuts that fit this pump into this vault, and shows the best side by side. You keep one.",
	"app.guide.lead.sticks": "The length that pipe is sold in, so that the cuts can be laid out with the least waste.",

	"app.guide.of": "Step {number} of {of} to the cut list", "app.guide.go": "Give next: {what}", "app.guide.do": "Save and go on", "app.guide.later": "Leave it for later", "app.guide.steps": "All steps",
	"app.guide.unfit": "Saved, but what is marked below does not fit or is not known. Put it right here, or go on and mend it later.", "app.guide.missing": "This is still needed here.", "app.guide.given": "given", "app.guide.curve": "Points of the curve", "app.guide.point": "{what} {number} ({unit})",
	"app.guide.shelf": "Take a pump from the shelf", "app.guide.picture": "Read a curve off a picture", "app.guide.seek": "Look for layouts", "app.guide.compare": "See the layouts found",
	"app.guide.nocuts": "There is nothing to cut yet. The pieces come out once a layout is kept for the vault and the length of pipe you buy is given.",
	"app.guide.plan":   "Seen from above", "app.guide.side": "Seen from the front", "app.guide.along": "along", "app.guide.height": "height", "app.guide.length": "length", "app.guide.width": "width",

	"app.guide.name.fall": "fall", "app.guide.name.run": "main", "app.guide.name.stands": "on its feet",

	"app.ask.units": "Units", "app.askhint.units": "Of the answer, and of a number typed without a unit.", "app.ask.name": "What the crew calls the job", "app.ask.place": "Where it is",
	"app.ask.shape":     "Shape of the pond",
	"app.askhint.shape": "For a free shape take ellipse now; on the Pond page you can draw it.",
	"app.ask.length":    "Length at the water line, or the diameter", "app.ask.width": "Width at the water line", "app.askhint.width": "Not for a circle.",
	"app.ask.depth": "Depth at the deepest point", "app.ask.rim": "Water line up to the lowest point of the rim",
	"app.ask.lipwidth": "Clear width of the lip", "app.ask.lipheight": "Pond's water line up to the lip", "app.ask.flow": "Flow you want over it",
	"app.ask.pipekind": "Kind of pipe", "app.ask.pipesize": "Size of pipe", "app.ask.pipelength": "Length of pipe from pump to lip",
	"app.ask.pname": "What you call the pump", "app.ask.cflow": "Flow", "app.ask.chead": "Head",
	"app.ask.vshape": "Shape of the vault", "app.ask.vlength": "Inside, left to right, or the diameter", "app.ask.vwidth": "Inside, front to back", "app.askhint.vwidth": "Not for a round vault.",
	"app.ask.vdepth": "Inside, floor to the underside of the lid", "app.ask.vfloor": "Pond's water line down to the vault's floor", "app.ask.vsill": "Water line down to the sill", "app.askhint.vsill": "The edge over which the pond runs into the vault.",
	"app.ask.vweir": "Width of that edge",
	"app.ask.hwall": "Wall it is in", "app.ask.halong": "Along that wall to the middle of the hole", "app.askhint.halong": "From the left wall for a hole in front or back; from the front wall for one on the left or right.",
	"app.ask.hheight": "Floor up to the middle of the hole",
	"app.ask.psize":   "Size of the pump's outlet", "app.ask.pthread": "How the outlet connects", "app.ask.plength": "The pump, left to right", "app.ask.pwidth": "The pump, front to back", "app.ask.pheight": "The pump, feet to top",
	"app.ask.ppoints": "The outlet looks", "app.ask.px": "Pump's left side to the middle of the outlet", "app.ask.py": "Pump's front to the middle of the outlet", "app.ask.pz": "Feet up to the middle of the outlet",
	"app.askhint.pz": "For an outlet that looks up: up to its face.",
	"app.ask.skind":  "Kind of pipe", "app.ask.ssize": "Size of pipe", "app.ask.slength": "Length of a whole stick",
}
