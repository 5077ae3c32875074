package app

import (
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"strconv"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/shelf/chart"
	"plashet/shelf/keep"
)

// chartMarks are the four marks, in the order in which they are set.
var chartMarks = []string{"f1", "f2", "h1", "h2"}

// mostTraced is how many points along a curve are taken.
const mostTraced = 60

// alongCurve is at how many flows the fitted curve is drawn.
const alongCurve = 80

// pictureBody is the page of a curve from a picture. The picture itself never
// comes here: it stays in the page that shows it.
type pictureBody struct {
	Units, Name, Points  string
	Marks                []chartMark
	Known                string // pixel of a place whose values are known
	KnownFlow, KnownHead string
	Error                string
	Read                 []chartPoint
	Drawn                string // the fitted curve, pixels of the picture
	Cautions             []string
	Fine, Slant, Off     string
	Fitted               bool
}

type chartMark struct{ Key, Title, At, Value, Example string }

type chartPoint struct{ Flow, Head string }

// picture asks for the chart.
func (a *app) picture(w http.ResponseWriter, r *http.Request) error {
	b := pictureBody{Units: "us"}
	if r.URL.Query().Get("units") == "metric" {
		b.Units = "metric"
	}
	a.showPicture(w, r, http.StatusOK, b, nil)
	return nil
}

func (a *app) showPicture(w http.ResponseWriter, r *http.Request, status int, b pictureBody, form map[string]string) {
	s := systemOf(b.Units)
	for _, key := range chartMarks {
		k := unit.KindFlow
		if key[0] == 'h' {
			k = unit.KindHead
		}
		b.Marks = append(b.Marks, chartMark{Key: key, Title: a.say("app.picture.mark." + key), At: form["at-"+key], Value: form["v-"+key], Example: k.Example(s)})
	}
	a.show(w, r, status, "picture", a.say("app.picture.title"), nil, b)
}

func systemOf(units string) unit.System {
	if units == "metric" {
		return unit.Metric
	}
	return unit.US
}

// checkPicture tells from the beginning of a file whether it may be shown.
func (a *app) checkPicture(w http.ResponseWriter, r *http.Request) error {
	head, err := io.ReadAll(io.LimitReader(r.Body, chart.HeadBytes))
	if err != nil {
		return a.refuse(http.StatusBadRequest, "app.error.upload")
	}
	size, err := strconv.ParseInt(r.URL.Query().Get("size"), 10, 64)
	if err != nil || size < 0 {
		return a.refuse(http.StatusBadRequest, "app.error.upload")
	}
	said := struct {
		Type  string `json:"type,omitempty"`
		Error string `json:"error,omitempty"`
	}{}
	status := http.StatusOK
	p, err := chart.Check(head, max(size, int64(len(head))))
	var bad *chart.Error
	if errors.As(err, &bad) {
		said.Error, status = a.Language.Say(bad.Message, unit.US), http.StatusUnprocessableEntity
	}
	said.Type = p.Type
	data, err := json.Marshal(said)
	if err != nil {
		return err
	}
	h := w.Header()
	h.Set("Content-Type", "application/json; charset=utf-8")
	h.Set("Cache-Control", "no-store")
	h.Set("X-Content-Type-Options", "nosniff")
	w.WriteHeader(status)
	_, _ = w.Write(data)
	return nil
}

// traced fits the curve through the points that were marked, and puts it on the
// shelf where the form says so.
func (a *app) traced(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	form := map[string]string{}
	for name, texts := range r.PostForm {
		if len(texts) > 0 && len(texts[0]) < 20_000 {
			form[name] = strings.TrimSpace(texts[0])
		}
	}
	b := pictureBody{Units: "us", Name: form["name"], Points: form["points"], Known: form["at-k"], KnownFlow: form["v-kf"], KnownHead: form["v-kh"]}
	if form["units"] == "metric" {
		b.Units = "metric"
	}
	t := tracer{a: a, form: form, system: systemOf(b.Units)}
	j, text := t.pump(&b)
	if b.Error = text; text == "" && form["do"] == "save" {
		if f := named(j, b.Name); f != nil {
			b.Error = a.Language.Say(f.Message, t.system)
		}
	}
	switch {
	case b.Error != "":
		a.showPicture(w, r, http.StatusUnprocessableEntity, b, form)
		return nil
	case form["do"] != "save":
		a.showPicture(w, r, http.StatusOK, b, form)
		return nil
	}
	id := a.NewID()
	if _, err := keep.SavePump(r.Context(), a.Store, id, 0, j, a.change(r, a.say("app.picture.put"))); err != nil {
		return err
	}
	see(w, r, "/pumps/"+id)
	return nil
}

// named gives a pump its name and says where its curve comes from.
func named(j *job.Job, name string) *trace.Fault {
	for _, path := range []string{"/pumps/0/name", "/name"} {
		if f := j.Set(path, name); f != nil {
			return f
		}
	}
	return nil
}
