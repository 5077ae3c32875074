package app

import (
	"net/http"
	"strings"

	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/shelf/keep"
)

// mostPumps is how many pumps of the shelf a page shows.
const mostPumps = 300

// pumpLine is one pump in the list.
type pumpLine struct {
	ID, Name, Note, Facts, When, Who string
	Number                           int
}

type pumpsBody struct {
	Pumps    []pumpLine
	Text     string
	Archived bool
	More     bool
	Unread   int
}

// pumps shows the shelf.
func (a *app) pumps(w http.ResponseWriter, r *http.Request) error {
	b := pumpsBody{Text: r.URL.Query().Get("text"), Archived: r.URL.Query().Get("aside") != ""}
	list, unread, more, err := keep.Pumps(r.Context(), a.Store, b.Text, b.Archived, mostPumps)
	if err != nil {
		return err
	}
	b.Unread, b.More = unread, more
	for _, p := range list {
		b.Pumps = append(b.Pumps, pumpLine{
			ID: p.Rev.ID, Name: p.Job.Name, Note: p.Job.Pumps[0].Note, Facts: a.facts(p.Job), When: p.Rev.When.Format("2 Jan 2006"), Who: p.Rev.Who, Number: p.Rev.Number,
		})
	}
	a.show(w, r, http.StatusOK, "pumps", a.say("app.pumps.title"), nil, b)
	return nil
}

// facts tells a pump in a line: the ends of its curve, watts and price.
func (a *app) facts(j *job.Job) string {
	p := &j.Pumps[0]
	var said []string
	if c, err := design.SheetCurve(p); err == nil {
		least, most, atLeast, atMost := c.Range()
		said = append(said, a.say("app.pumps.range",
			"h0", unit.Of(atLeast, unit.KindHead).Format(j.System()), "q0", unit.Of(least, unit.KindFlow).Format(j.System()),
			"h1", unit.Of(atMost, unit.KindHead).Format(j.System()), "q1", unit.Of(most, unit.KindFlow).Format(j.System())))
	} else {
		said = append(said, a.say("app.pumps.nocurve"))
	}
	if p.Watts.Text != "" {
		said = append(said, unit.Of(p.Watts.SI, unit.KindPower).Format(j.System()))
	}
	if m, err := p.Price.Amount(j.Style()); err == nil && !p.Price.IsZero() {
		said = append(said, m.Format(j.Style()))
	}
	return strings.Join(said, " · ")
}
