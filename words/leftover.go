package words

import (
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode"
)

// EnglishIn lists the texts of the English catalogue that stand in what was said
// in Spanish, of at least so many letters; what takes arguments is looked for by
// its longest piece between them. It is for tests.
func EnglishIn(said string, least int) []string {
	var out []string
	if strings.Contains(said, lacks) {
		out = append(out, lacks)
	}
	es := Spanish()
	for _, code := range English().Codes() {
		longest := ""
		for _, part := range strings.FieldsFunc(English().templates[code], func(r rune) bool { return strings.ContainsRune("{}[]", r) }) {
			if len(part) > len(longest) {
				longest = part
			}
		}
		if longest = strings.TrimSpace(longest); len(longest) < least || strings.Contains(es.templates[code], longest) {
			continue
		}
		if strings.Contains(said, longest) {
			out = append(out, longest)
		}
	}
	return out
}

// same are words that are rightly alike in both languages, or that stand in names
// which have none: of standards, threads, units, publications and the tool.
var same = strings.Fields("state")

// always are words that stand in Spanish texts as names of files or keys, and are
// English all the same.
var always = strings.Fields("assembly best closes closing come each elbow into keep layout layouts out scripts search site stick stops")

// EnglishWordsIn lists the words of what was said in Spanish that are words of the
// English catalogue, or of the engine, and of nothing that Spanish says. The job's
// own words must be none (package internal/masked). It is for tests.
func EnglishWordsIn(said string) []string {
	var out []string
	for _, w := range wordsOf(titles.ReplaceAllString(said, "")) {
		if onlyEnglish()[w] && !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}

var onlyEnglish = sync.OnceValue(func() map[string]bool {
	only := map[string]bool{}
	en, es := English(), Spanish()
	for _, t := range en.templates {
		for _, w := range wordsOf(placeholders.ReplaceAllString(t, " $1 ")) {
			only[w] = true
		}
	}
	for _, list := range []map[string]string{es.terms, es.fields, es.docs, es.items, es.measures} {
		for t := range list {
			for _, w := range wordsOf(t) {
				only[w] = true
			}
		}
	}
	for _, list := range []map[string]string{es.templates, es.terms, es.fields, es.docs, es.items, es.measures, es.sources} {
		for _, t := range list {
			for _, w := range wordsOf(placeholders.ReplaceAllString(t, " $1 ")) {
				delete(only, w)
			}
		}
	}
	for _, w := range always {
		only[w] = true
	}
	for _, w := range same {
		delete(only, w)
	}
	return only
})

// titles are those of publications, which have no translation.
var titles = regexp.MustCompile(`"[^"]+"`)

// placeholders are the arguments of a template; of one with a plural its words
// are kept.
var placeholders = regexp.MustCompile(`\{\w+(?::both|:([^}]*))?\}`)

// wordsOf parts a text into its words of three letters or more, small.
func wordsOf(s string) []string {
	var out []string
	for _, w := range strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		if len([]rune(w)) >= 3 && !strings.ContainsFunc(w, unicode.IsDigit) {
			out = append(out, w)
		}
	}
	return out
}
