package app

import (
	"net/http"
	"strconv"

	"plashet/answer"
	"plashet/engine/design"
	"plashet/engine/trace"
)

// takes tells whether a remedy can be taken with one tap. What changes pump or
// pipe is not tried here: that takes a whole design.
func (a *app) takes(o *opened, f *answer.Finding, index int) bool {
	m, ok := remedyOf(o, f.Code, f.Path, index)
	if !ok {
		return false
	}
	if m.Code == design.RemedyPump || m.Code == design.RemedyOption {
		return true
	}
	_, ok = design.Take(a.Book, o.job, o.result, m)
	return ok
}

// remedyOf finds a remedy by what a form can name it by.
func remedyOf(o *opened, code, path string, index int) (trace.Remedy, bool) {
	for _, f := range o.result.Findings {
		if f.Code == code && f.Path == path && index >= 0 && index < len(f.Remedies) {
			return f.Remedies[index], true
		}
	}
	return trace.Remedy{}, false
}

// take takes a remedy.
func (a *app) take(w http.ResponseWriter, r *http.Request) error {
	o, err := a.current(r)
	if err != nil {
		return err
	}
	index, err := strconv.Atoi(r.PostFormValue("remedy"))
	m, ok := remedyOf(o, r.PostFormValue("code"), r.PostFormValue("path"), index)
	if err != nil || !ok {
		return a.refuse(http.StatusUnprocessableEntity, "app.error.remedy")
	}
	next, ok := design.Take(a.Book, o.job, o.result, m)
	if !ok {
		return a.refuse(http.StatusUnprocessableEntity, "app.error.remedy")
	}
	return a.save(w, r, o, next)
}
