package app

import (
	"net/url"
	"strings"
)

// way is one of the readings of what was typed: a button answers the question
// which was meant. Press is what it sends, in the form that the steppers have too:
// "=1410%20mm /pond/depth".
type way struct{ Text, Press string }

func waysTo(path string, texts []string) (out []way) {
	for _, t := range texts {
		out = append(out, way{t, "=" + url.PathEscape(t) + " " + path})
	}
	return out
}

// meant reads such a press.
func meant(press string) (edit, bool) {
	text, path, ok := strings.Cut(press, " ")
	text, is := strings.CutPrefix(text, "=")
	plain, err := url.PathUnescape(text)
	return edit{path, plain}, ok && is && err == nil && strings.HasPrefix(path, "/")
}
