package words

import (
	"maps"
	"strings"
	"sync"

	"plashet/engine/trace"
)

// English is the catalogue the tool is written in.
var English = sync.OnceValue(func() *Language {
	return &Language{Tag: "en", Name: "English", templates: joined(english)}
})

// Spanish is the second one, in the words of the trade in Mexico and Central
// America. What it lacks is said in English with a mark before it.
var Spanish = sync.OnceValue(func() *Language {
	return &Language{Tag: "es", Name: "Español", templates: joined(spanish), fields: esField, docs: esDoc, terms: joined([]map[string]string{esTerm, esBook, esItem}), book: esBook, items: joined([]map[string]string{esBook, esItem}), measures: esMeasure, sources: esSource, behind: English()}
})

// Languages lists all, the first for whoever says nothing.
func Languages() []*Language { return []*Language{English(), Spanish()} }

// In gives the language of a tag; false where there is none.
func In(tag string) (*Language, bool) {
	for _, l := range Languages() {
		if l.Tag == tag {
			return l, true
		}
	}
	return nil, false
}

func joined(parts []map[string]string) map[string]string {
	all := map[string]string{}
	for _, p := range parts {
		maps.Copy(all, p)
	}
	return all
}

// said names the arguments that hold words of the tool, not of the job.
var said = map[string]bool{
	"allowed": true, "attitude": true, "axis": true, "fitting": true, "fittings": true, "fromEnd": true, "fromThread": true,
	"kind": true, "material": true, "measure": true, "outlet": true, "pipe": true, "plane": true, "runPipe": true,
	"runValve": true, "runValveOnly": true, "shape": true, "side": true, "soil": true, "stop": true, "table": true, "thread": true,
	"toEnd": true, "toThread": true, "toward": true, "valve": true, "wall": true, "way": true, "worst": true, "parts": true, "part": true, "from": true, "to": true, "assembly": true, "size": true, "per": true,
}

// Field tells a word of the job document: "water temperature".
func (l *Language) Field(word string) string { return other(l.fields, word) }

// Doc tells what a field of the job document is for.
func (l *Language) Doc(text string) string { return other(l.docs, text) }

// Term tells words that the engine says: "elbow 90", with a size or more of them
// behind, parted by commas, too: "elbow 90 2, union 2".
func (l *Language) Term(text string) string {
	if l.terms == nil {
		return text
	}
	if t, ok := l.terms[text]; ok {
		return t
	}
	list := strings.Split(text, ", ")
	for i, word := range list {
		list[i] = l.term(word)
	}
	return strings.Join(list, ", ")
}

// Item tells an item of a list with what stands behind it, or several: "elbow 90,
// 2; liner, pond". What is no item stays: it is the job's own word.
func (l *Language) Item(text string) string {
	all := strings.Split(text, "; ")
	for k, one := range all {
		list := strings.Split(one, ", ")
		for i, word := range list {
			list[i] = other(l.items, word)
		}
		all[k] = strings.Join(list, ", ")
	}
	return strings.Join(all, "; ")
}

// term puts the longest known beginning of a text into the language.
func (l *Language) term(text string) string {
	for end := len(text); end > 0; end = strings.LastIndexByte(text[:end], ' ') {
		if t, ok := l.terms[text[:end]]; ok {
			return t + text[end:]
		}
	}
	return text
}

func other(m map[string]string, english string) string {
	if t, ok := m[english]; ok {
		return t
	}
	return english
}

// Place tells a place in the job.
func (l *Language) Place(p trace.Place) string {
	told := make(trace.Place, len(p))
	for i, s := range p {
		told[i] = trace.Step{Word: l.Field(s.Word), Name: s.Name}
	}
	return told.String()
}

// Places tells several.
func (l *Language) Places(list []trace.Place) string {
	told := make([]string, 0, len(list))
	for _, p := range list {
		told = append(told, l.Place(p))
	}
	return strings.Join(told, "; ")
}
