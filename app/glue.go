package app

import (
	"context"
	"encoding/json"
	"net/http"
	"slices"
	"strconv"

	"plashet/answer"
)

// placeGlue is the name under which a store keeps how far the gluing is.
const placeGlue = "glue"

// gluePlace is how far the gluing is. It belongs to a layout: with another
// digest of its steps it counts for nothing.
type gluePlace struct {
	Steps string `json:"steps"` // what the steps were
	Done  []int  `json:"done"`  // numbers of the steps ticked
	At    int    `json:"at"`    // the step looked at last
}

// gluePlace reads how far the gluing is.
func (a *app) gluePlace(ctx context.Context, o *opened) gluePlace {
	var p gluePlace
	data, err := a.Store.Place(ctx, o.rev.ID, placeGlue)
	now := o.steps()
	if err != nil || json.Unmarshal(data, &p) != nil || p.Steps != now && !a.toldSteps(o, p.Steps) {
		return gluePlace{Steps: now}
	}
	p.Steps = now
	return p
}

func (a *app) setGluePlace(ctx context.Context, o *opened, p gluePlace) error {
	data, err := json.Marshal(p)
	if err != nil {
		return err
	}
	return a.Store.SetPlace(ctx, o.rev.ID, placeGlue, data)
}

// glueLine is one step in the list of steps.
type glueLine struct {
	answer.GlueStep
	Done, Here bool
}

func (a *app) glueList(r *http.Request, o *opened) []glueLine {
	p := a.gluePlace(r.Context(), o)
	var list []glueLine
	for _, s := range o.doc.Glue {
		list = append(list, glueLine{s, slices.Contains(p.Done, s.Number), s.Number == p.At})
	}
	return list
}

type glueBody struct {
	ID         string
	Step       answer.GlueStep
	Of         int
	Done       bool
	Count      int // done
	Sheet      *sheet
	Hold       int // s, 0 for none
	Prev, Next int // 0 for none
	Where      string
}

// glueStep shows one step of gluing up, large.
func (a *app) glueStep(w http.ResponseWriter, r *http.Request) error {
	o, n, err := a.glueAt(r)
	if err != nil {
		return err
	}
	list := o.doc.Glue
	p := a.gluePlace(r.Context(), o)
	s := list[n]
	b := glueBody{
		ID: o.rev.ID, Step: s, Of: len(list), Done: slices.Contains(p.Done, s.Number), Count: len(p.Done), Hold: int(s.Hold.SI), Where: a.Language.Word("print.where." + s.Where),
	}
	if n > 0 {
		b.Prev = list[n-1].Number
	}
	if n+1 < len(list) {
		b.Next = list[n+1].Number
	}
	for _, d := range a.sheetsOf(o.solved, "glue") {
		if d.Name == "glue-"+strconv.Itoa(s.Number) {
			b.Sheet = &d
		}
	}
	if p.At != s.Number {
		p.At = s.Number
		if err := a.setGluePlace(r.Context(), o, p); err != nil {
			return err
		}
	}
	a.show(w, r, http.StatusOK, "glue", a.say("app.glue.step", "number", strconv.Itoa(n+1), "of", strconv.Itoa(len(list))), a.heading(o, "glue"), b)
	return nil
}

// glueAt finds the job and the step that a request names.
func (a *app) glueAt(r *http.Request) (*opened, int, error) {
	o, err := a.open(r)
	if err != nil {
		return nil, 0, err
	}
	number, err := strconv.Atoi(r.PathValue("step"))
	n := slices.IndexFunc(o.doc.Glue, func(s answer.GlueStep) bool { return s.Number == number })
	if err != nil || n < 0 {
		return nil, 0, errNoPage
	}
	return o, n, nil
}

// glueTick ticks a step, or takes the tick back, and goes on to the next.
func (a *app) glueTick(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	o, n, err := a.glueAt(r)
	if err != nil {
		return err
	}
	p := a.gluePlace(r.Context(), o)
	if given := r.PostFormValue("steps"); given != "" && given != p.Steps {
		return a.refuse(http.StatusConflict, "app.error.moved")
	}
	number, next := o.doc.Glue[n].Number, n
	p.Done = slices.DeleteFunc(p.Done, func(d int) bool { return d == number })
	if !r.PostForm.Has("open") {
		p.Done = append(p.Done, number)
		next = min(n+1, len(o.doc.Glue)-1)
	}
	p.At = o.doc.Glue[next].Number
	if err := a.setGluePlace(r.Context(), o, p); err != nil {
		return err
	}
	path := "/jobs/" + o.rev.ID + "/glue/" + strconv.Itoa(p.At)
	if next == n && !r.PostForm.Has("open") {
		path = "/jobs/" + o.rev.ID + "/part/glue"
	}
	see(w, r, path)
	return nil
}

// levelLine is one row of the table of levels.
type levelLine struct {
	Name                                      string
	Change, Room, Sill, NeedsSill, Over, Need string
	Starved                                   bool
}

func (a *app) levelTable(d *answer.Document) []levelLine {
	var list []levelLine
	for _, s := range d.Levels {
		x := levelLine{
			Name:   a.Language.Word("level.course."+s.Course) + ", " + a.Language.Word("level.moment."+s.Moment),
			Change: s.Change.Text, Sill: s.OverSill.Text, NeedsSill: s.NeedsSill.Text, Over: s.OverPump.Text, Need: s.NeedsPump.Text, Starved: s.Starved,
		}
		if s.OverSill.Text == "" && s.OverPump.Text == "" {
			x.Room = s.Freeboard.Text
		}
		list = append(list, x)
	}
	return list
}
