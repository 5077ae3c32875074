package app

import (
	"net/http"

	"plashet/answer"
	"plashet/demo"
	"plashet/engine/design"
	"plashet/job"
)

// mostShelf is how many pumps are compared while somebody waits for the page.
const mostShelf = 200

type chooseBody struct {
	ID       string
	Invented bool
	Doc      answer.ChosenDocument
}

// choose compares the pumps of a shelf for what the job wants.
func (a *app) choose(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	b := chooseBody{ID: o.rev.ID, Invented: r.URL.Query().Get("shelf") == "invented"}
	pumps, ill := o.job.Pumps, job.IllPumps(o.faults)
	if b.Invented {
		pumps, ill, _ = job.ReadShelf(demo.Shelf(), o.job)
	}
	pumps = pumps[:min(len(pumps), mostShelf)]
	c := design.Choose(a.Book, o.job, pumps, ill, design.Want{Pairs: design.PairsAlike}, o.faults...)
	b.Doc = answer.BuildChosen(c, nil, a.Language)
	a.show(w, r, http.StatusOK, "choose", a.say("app.choose.title"), a.heading(o, "pump"), b)
	return nil
}
