package words

// enSize holds the sentences of package size: why a pump does not serve, and
// what a search over the shelf cannot start from.
var enSize = map[string]string{
	"size.out.head":  "Pump “{name}” gives {found:both} of head at the wanted flow; even the pipe with the least loss needs {limit:both}. Take a pump with more head.",
	"size.out.end":   "The wanted flow, {found:both}, lies beyond the published curve of pump “{name}”, which ends at {limit:both}. Get the full curve from the maker, or leave it out.",
	"size.out.least": "The wanted flow, {found:both}, is less than pump “{name}” may run at, {limit:both}. Take a smaller pump.",
	"size.out.curve": "Pump “{name}” has no curve that can be used, so it is left out. Type its curve from the maker's sheet.",
	"size.out.watts": "No watts are given for pump “{name}”, so what it costs over the years is not known and it is left out. Type them from its sheet.",
	"size.out.bore":  "Pump “{name}” passes what needs a bore of {found:both}, and no pipe to choose for “{segment}” is so wide. Put a finer screen before it, or allow wider pipe.",

	"size.nothing.wanted": "No flow is wanted anywhere, so there is nothing to size for. Give each lip the flow or sheet depth wanted.",
	"size.wanted.none":    "No flow is wanted at “{name}”. Give the flow or the sheet depth wanted there.",
	"size.tree.broken":    "“{name}” hangs on nothing that leads back to the pump. Sizing needs one way from the pump to each feed, without loops.",
	"size.choice.none":    "There is no pipe to choose for “{name}”[: the slowest runs at {speed:both}, and {limit:both} is the limit]. Allow more sizes, or ask for less flow.",
	"size.choice.uniform": "“{name}” has other sizes to choose from than the rest, so no one size can run through. Let each segment have its own size.",
	"size.amount.range":   "The amount of money of “{name}” is below zero or too great to be true. Look at it again.",
	"size.reserve.steps":  "The steps of reserve must rise from above 1, for example 1.05, 1.1, 1.25.",
	"size.shelf.empty":    "There is no pump on the shelf. Give a list of pumps, each with its curve.",

	"size.inverse.short":  "“{name}” does not get its wanted flow as it is: {found:both} of head is missing, so it can go no higher and no farther.",
	"size.inverse.smooth": "The pipe of “{name}” loses nothing, so its length does not count.",
}
