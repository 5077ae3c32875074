package words

// enOffered holds what is printed of an offer.
var enOffered = map[string]string{
	"offer.title":        "{name}: what the job costs and what is offered",
	"offer.title.client": "{name}: offer",
	"offer.invented":     "Note of the job: {note}",

	"offer.head.cost":     "What it costs the firm",
	"offer.head.price":    "From cost to price",
	"offer.head.scopes":   "What is offered",
	"offer.head.includes": "Included",
	"offer.head.excludes": "Not included",
	"offer.head.terms":    "Terms",
	"offer.head.pay":      "Payments",
	"offer.head.options":  "Side by side",
	"offer.head.change":   "Change since the offer was agreed",
	"offer.head.findings": "Worth knowing",

	"offer.group.material": "material", "offer.group.labour": "labour", "offer.group.equipment": "equipment", "offer.group.other": "other costs",
	"offer.scope.pump": "pump", "offer.scope.plumbing": "plumbing", "offer.scope.pond and streams": "pond and streams", "offer.scope.stone": "stone",
	"offer.scope.earthwork": "earthwork", "offer.scope.the work as a whole": "the work as a whole",

	"offer.row.lines": "lines", "offer.row.waste": "waste", "offer.row.contingency": "contingency", "offer.row.profit": "profit", "offer.row.price": "price",
	"offer.row.cost": "cost of all", "offer.row.discount": "discount", "offer.row.full": "price before discount", "offer.row.off": "discount, in the parts above already", "offer.row.net": "before tax", "offer.row.tax": "{name}, {rate} of {base}", "offer.row.rounding": "rounding",
	"offer.row.total": "total", "offer.row.deposit": "before the work begins", "offer.row.rest": "when the work is done", "offer.row.before": "agreed", "offer.row.after": "now",
	"offer.row.by": "change order", "offer.none": "no price", "offer.hours": "{hours} h at {rate}",
	"offer.head.water": "Water over the falls", "offer.fall": "{name}, wanted {wanted}", "offer.own": "as designed", "offer.flow": "water moved", "offer.new": "new", "offer.gone": "left out",
	"offer.valid":     "This offer holds for {days} {days:day|days}.",
	"offer.safe":      "Electrical work is for a licensed electrician, by the local code.",
	"offer.tax.sum":   "Tax is rounded once, on the sum.",
	"offer.tax.part":  "Tax is rounded for each part of the work.",
	"offer.part":      "Not everything has a price: the amounts below are not the whole.",
	"offer.nototal":   "There is no total yet, for nothing in it has a price.",
	"offer.row.sofar": "total of what has a price",
	"offer.draft":     "DRAFT, not for the client: the offer is not whole.",
	"offer.lacks":     "Without a price, and in none of the sums below ({count}):",
	"offer.agree":     "To keep the offer that the client accepted: plashet quote JOB --agree 2026-06-02 --out FILE",
}
