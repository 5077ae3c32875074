package words

import "strings"

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
