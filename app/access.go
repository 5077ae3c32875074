package app

import (
	"net/http"

	"plashet/words"
)

// Access is what is said to whom the pages are not open yet, in a language of
// theirs.
type Access struct {
	Lang, Title, Label, Open string // of the form for the access code
	Wrong, Wait, Missing     string // of a code that is not it, or not there
	Host, Crossed            string // of a request that is refused
}

// AccessWords gives it in the language of the device or the browser that asks.
func AccessWords(r *http.Request, d Device) Access {
	l := languageOf(words.Languages(), d, r)
	return Access{
		Lang: l.Tag, Title: l.Word("app.access.title"), Label: l.Word("app.access.label"), Open: l.Word("app.access.open"),
		Wrong: l.Word("app.access.wrong"), Wait: l.Word("app.access.wait"), Missing: l.Word("app.access.missing"), Host: l.Word("app.access.host"), Crossed: l.Word("app.access.crossed"),
	}
}
