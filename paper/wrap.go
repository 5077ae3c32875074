package paper

import (
	"strings"

	"plashet/drawing"
)

func width(s string, size float64, bold bool) float64 {
	return drawing.Text{Size: size, Bold: bold, Text: s}.Width()
}

// fit shortens a text to a width.
func fit(s string, size float64, bold bool, most float64) string {
	if width(s, size, bold) <= most {
		return s
	}
	used := width("…", size, bold)
	for i, r := range s {
		if used += width(string(r), size, bold); used > most {
			return strings.TrimRight(s[:i], " ") + "…"
		}
	}
	return s
}

// wrap breaks a text into lines; a word longer than a line is broken too.
func wrap(s string, size float64, bold bool, most float64) []string {
	var out []string
	now, used := "", 0.0
	blank := width(" ", size, bold)
	for _, w := range drawing.Words(s) {
		wide := width(w, size, bold)
		if now != "" && used+blank+wide <= most {
			now, used = now+" "+w, used+blank+wide
			continue
		}
		if now != "" {
			out = append(out, now)
		}
		now, used = "", 0
		for _, r := range w {
			each := width(string(r), size, bold)
			if used+each > most && now != "" {
				out = append(out, now)
				now, used = "", 0
			}
			now, used = now+string(r), used+each
		}
	}
	if now != "" {
		out = append(out, now)
	}
	return out
}
