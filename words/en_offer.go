package words

// enOffer holds what packages quote and offer find. The codes and their arguments
// are listed in quote/codes.go and offer/codes.go.
var enOffer = map[string]string{
	"quote.currency":      "The amount for “{name}” is in “{currency}”; the job is in “{wanted}”. Give it in the job's currency.",
	"quote.currency.none": "The job names no currency, so nothing is priced. Set it, such as USD or EUR, in the site's data.",
	"quote.negative":      "The amount for “{name}” is below zero, which is no cost. Enter it without the sign; what is taken off goes in as discount.",
	"quote.share":         "“{name}” is {share}, which is no share of an amount. Write a percentage from 0 to 100, such as “5 %”.",
	"quote.margin":        "The margin on “{group}” is {share}: nothing of the price would be left for the cost. Write less than 100 %, or a markup.",
	"quote.both":          "“{group}” has a markup and a margin; one of them must go. Markup is put on cost; margin is what is left of the price.",
	"quote.stages":        "Deposit and stages come to {over} more than the total of {total}. Lower a share.",

	"quote.loss":     "The price before tax, {price}, is below the cost of {cost}: the job would be done at a loss.",
	"quote.noprofit": "No markup and no margin is set for “{group}”: it is offered at cost.",
	"quote.partial":  "{lines} {lines:line has|lines have} no amount and {lines:is|are} left out of the sum.",

	"offer.option.change": "The option “{name}” sets the field “{path}”, which cannot be set so. Write the path as the faults of the job name it, such as “/use”.",
	"offer.labour.unit":   "The hours for “{task}” are for “{found}”, which is not what this is counted in. Write a length for pipe, an area for liner, a volume for digging, a weight for stone, such as “10 ft”.",
	"offer.labour.need":   "The hours for “{task}” are for each {per}, and how many there are could not be worked out; mend what the design says, or give the hours for the job.",
	"offer.profit.twice":  "“{group}” has markup or margin twice; the first counts.",
	"offer.agreed.option": "The agreed offer was for the option “{name}”, which is not in the job any more.",
	"offer.unpriced":      "{count} {count:item has|items have} no price, {count:namely|the first is} “{first}”: {count:it is|they are} left out of the sum.",
	"offer.changed":       "The work is not what was agreed: {by}, which makes {total}. Have the change order accepted before the work is changed.",
	"assume.offer.high":   "Two rules of the trade differ on an amount; the higher is offered, {high}. By the lower it would be {low}.",
}
