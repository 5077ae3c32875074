package app

import (
	"net/http"
	"strings"

	"plashet/job"
	"plashet/words"
)

// language is what a request is answered in: what its person chose on the
// device, else the first that the browser asks for and that there is.
func (g *Given) language(r *http.Request) *words.Language {
	return languageOf(g.Languages, g.Device(r), r)
}

func languageOf(list []*words.Language, d Device, r *http.Request) *words.Language {
	asked := []string{d.Language}
	for _, part := range strings.Split(r.Header.Get("Accept-Language"), ",") {
		tag, _, _ := strings.Cut(part, ";")
		tag, _, _ = strings.Cut(strings.TrimSpace(tag), "-")
		asked = append(asked, strings.ToLower(tag))
	}
	for _, tag := range asked {
		if l := spokenIn(list, tag); l != nil {
			return l
		}
	}
	return list[0]
}

// spoken gives the language of a tag, nil where there is none.
func (g *Given) spoken(tag string) *words.Language { return spokenIn(g.Languages, tag) }

func spokenIn(list []*words.Language, tag string) *words.Language {
	for _, l := range list {
		if l.Tag == tag {
			return l
		}
	}
	return nil
}

// where tells a place in the job.
func (a *app) where(j *job.Job, path string) string { return a.Language.Place(j.PlaceOf(path)) }
