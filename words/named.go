package words

import (
	"slices"
	"strings"

	"plashet/engine/trace"
)

// listed names the arguments that hold an item of a list, as the job or the book
// names it.
var listed = map[string]bool{"first": true, "item": true, "items": true, "place": true}

// measured are the codes whose argument “name” is what a formula calls a figure,
// or a level of the job by the document's word, not a name of the job's.
var measured = map[string]bool{
	"hydro.value.finite": true, "hydro.value.range": true, "hydro.value.word": true, "hydro.hazen.least": true, "hydro.hazen.most": true,
	"level.value.finite": true, "level.value.range": true, "level.missing": true, "level.section.order": true,
	"motion.value.finite": true, "motion.value.range": true, "motion.missing": true, "layout.value.finite": true, "layout.value.range": true,
	"geom.value.finite": true, "geom.value.range": true, "takeoff.value.finite": true, "takeoff.value.range": true,
	"doubt.level": true, "lessen.level": true,
}

// ofBook are the codes whose argument “name” begins with a word of the book or of
// the engine, with names of the job behind a comma.
var ofBook = map[string]bool{
	"doubt.fitting.k": true, "lessen.fitting-k": true, "doubt.pipe.bore": true, "lessen.pipe-bore": true, "doubt.pipe.roughness": true, "lessen.pipe-roughness": true,
}

// named gives a message's arguments with the name in the language where it is one
// of the tool's.
func (l *Language) named(m trace.Message) []trace.Arg {
	if l.items == nil {
		return m.Args
	}
	put := func(text string) string { return other(l.measures, text) }
	switch {
	case measured[m.Code]:
	case strings.HasPrefix(m.Code, "takeoff.price."):
		put = l.Item
	case ofBook[m.Code]:
		put = func(text string) string {
			word, behind, more := strings.Cut(text, ", ")
			if word = l.term(word); more {
				word += ", " + behind
			}
			return word
		}
	default:
		return m.Args
	}
	args := slices.Clone(m.Args)
	for i := range args {
		if args[i].Name == "name" {
			args[i].Text = put(args[i].Text)
		}
	}
	return args
}
