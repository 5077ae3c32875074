package words

// enUnit holds the sentences for a text that cannot be read as a quantity, where
// it does not stand in a job. The codes are listed in engine/unit/error.go.
var enUnit = map[string]string{
	"unit.empty":     "Nothing is written. Write it like “{example}”.",
	"unit.long":      "“{text}” is too long for a figure. Write it like “{example}”.",
	"unit.number":    "“{text}”: a number is expected where “{found}” stands. Write it like “{example}”.",
	"unit.fraction":  "“{text}”: “{found}” is not a fraction. Write it like “{example}”.",
	"unit.unknown":   "“{text}”: “{found}” is not a unit that is known here. Write it like “{example}”.",
	"unit.dimension": "“{text}”: “{found}” is a unit of something else. Write it like “{example}”.",
	"unit.trailing":  "“{text}”: “{found}” is left over. Write it like “{example}”.",
	"unit.ambiguous": "“{text}”: “{found}” can be read in two ways. Leave out the mark that groups thousands, or write the decimals with a point and a digit more.",
	"unit.parts":     "“{text}”: “{found}” does not fit. With two units the first number is whole, and the second less than one of the first, like “{example}”.",
	"unit.range":     "“{text}” is a figure beyond all measure. Write it like “{example}”.",
	"unit.percent":   "“{text}”: a number above 1 needs its percent sign here. Write it like “{example}”.",
	"unit.whole":     "“{text}”: a whole number is expected. Write it like “{example}”.",
	"unit.currency":  "“{text}”: “{found}” is not the job's currency. Write it like “{example}”.",
	"unit.kind":      "“{text}” cannot be read here: the program asked for it in a way that does not exist. Please report this.",
}
