package app

import (
	"net/http"
	"strings"

	"plashet/job"
)

// question is one thing that a job needs before it can begin. All else is asked
// for step by step (guideSteps).
type question struct {
	Code  string // app.ask.<Code>
	path  string
	Words []string
}

// questions stand in the order in which they are asked.
var questions = []question{
	{Code: "name", path: "/name"},
	{Code: "place", path: "/place"},
	{Code: "units", path: "/units", Words: []string{"us", "metric"}},
}

type asked struct {
	question
	ID, Value, Error string
	Must             bool
}

type newBody struct {
	Asked  []asked
	Faults int
}

func (a *app) newForm(w http.ResponseWriter, r *http.Request) error {
	typed := map[string]string{"units": a.Device(r).Units}
	a.showNew(w, r, http.StatusOK, typed, map[string]string{})
	return nil
}

func (a *app) showNew(w http.ResponseWriter, r *http.Request, status int, typed, wrong map[string]string) {
	b := newBody{Faults: len(wrong)}
	for _, q := range questions {
		b.Asked = append(b.Asked, asked{question: q, ID: "q-" + q.Code, Value: typed[q.Code], Error: wrong[q.Code], Must: q.Code == "name"})
	}
	a.show(w, r, status, "new", a.say("app.new.title"), nil, b)
}

// newJob makes a job of its name, place and units, with the water line as zero of
// its heights, and goes on to the first step.
func (a *app) newJob(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	typed, wrong := map[string]string{}, map[string]string{}
	j := &job.Job{Format: job.FormatName, Version: job.Version, Units: "us"}
	set := func(code, path, text string) {
		if f := j.Set(path, text); f != nil && wrong[code] == "" {
			wrong[code] = a.Language.Say(f.Message, j.System())
		}
	}
	for _, q := range questions {
		typed[q.Code] = strings.TrimSpace(r.PostFormValue(q.Code))
		if q.Code == "units" && typed[q.Code] == "" {
			continue
		}
		set(q.Code, q.path, typed[q.Code])
	}
	for _, e := range datum(j) {
		set("units", e.path, e.text)
	}
	if len(wrong) > 0 {
		a.showNew(w, r, http.StatusUnprocessableEntity, typed, wrong)
		return nil
	}
	id := a.NewID()
	if err := a.put(r, id, 0, j, a.say("app.change.begun")); err != nil {
		return err
	}
	see(w, r, openStep(id, j, -1))
	return nil
}
