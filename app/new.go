package app

import (
	"net/http"
	"strings"

	"plashet/engine/unit"
	"plashet/job"
)

// question is one thing a new job needs to know. What is left empty can be told
// later.
type question struct {
	Code  string // app.ask.<Code>
	path  string
	kind  unit.Kind
	Words []string
}

// questions are the handful that a new job starts from, in the order in which
// they are asked.
var questions = []question{
	{Code: "units", path: "/units", Words: []string{"us", "metric"}},
	{Code: "name", path: "/name"},
	{Code: "place", path: "/place"},
	{Code: "shape", path: "/pond/outline/shape", Words: []string{"ellipse", "rectangle", "circle"}},
	{Code: "length", path: "/pond/outline/length", kind: unit.KindPlan},
	{Code: "width", path: "/pond/outline/width", kind: unit.KindPlan},
	{Code: "depth", path: "/pond/depth", kind: unit.KindPlan},
	{Code: "rim", path: "/pond/rim", kind: unit.KindElevation},
	{Code: "lipwidth", path: "/watercourses/0/parts/0/lip/width", kind: unit.KindTape},
	{Code: "lipheight", path: "/watercourses/0/parts/0/lip/crest", kind: unit.KindElevation},
	{Code: "flow", path: "/watercourses/0/parts/0/lip/wanted", kind: unit.KindFlow},
	{Code: "pipekind", path: "/runs/0/pipe/kind"},
	{Code: "pipesize", path: "/runs/0/pipe/size"},
	{Code: "pipelength", path: "/runs/0/length", kind: unit.KindDistance},
}

type asked struct {
	question
	ID, Value, Error, Example, Options string
	Must                               bool
}

type newBody struct {
	Asked   []asked
	Points  string
	Error   string // of the points
	Options []datalist
	Faults  int
	Jobs    []string
}

func (a *app) newForm(w http.ResponseWriter, r *http.Request) error {
	a.showNew(w, r, http.StatusOK, map[string]string{}, map[string]string{}, "", "")
	return nil
}

func (a *app) showNew(w http.ResponseWriter, r *http.Request, status int, typed, wrong map[string]string, points, pointsWrong string) {
	b := newBody{Points: points, Error: pointsWrong, Options: a.datalists(&job.Job{}), Faults: len(wrong)}
	system := unit.US
	if typed["units"] == "metric" {
		system = unit.Metric
	}
	for _, q := range questions {
		x := asked{question: q, ID: "q-" + q.Code, Value: typed[q.Code], Error: wrong[q.Code], Must: q.Code == "name"}
		if q.kind != unit.KindNone {
			x.Example = q.kind.Example(system)
		}
		switch q.Code {
		case "pipekind":
			x.Options, x.Example = "o-kinds", "PVC Sch 40"
		case "pipesize":
			x.Example = "2"
		}
		b.Asked = append(b.Asked, x)
	}
	a.show(w, r, status, "new", a.say("app.new.title"), nil, b)
}

// newJob makes a job of what was answered: one pond, one fall, one run of pipe,
// one pump. The water line is elevation 0.
func (a *app) newJob(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	typed, wrong := map[string]string{}, map[string]string{}
	j := &job.Job{Format: job.FormatName, Version: job.Version, Units: "us"}
	for _, q := range questions {
		typed[q.Code] = strings.TrimSpace(r.PostFormValue(q.Code))
	}
	set := func(code, path, text string) {
		if text == "" && code != "name" {
			return
		}
		if f := j.Set(path, text); f != nil && wrong[code] == "" {
			wrong[code] = a.Language.Say(f.Message, j.System())
		}
	}
	set("units", "/units", typed["units"])
	zero := "0 ft"
	if j.System() == unit.Metric {
		zero = "0 m"
	}
	set("units", "/survey/points/0/name", "water")
	set("units", "/survey/points/0/elevation", zero)
	set("units", "/pond/water", "@water")
	for _, q := range questions {
		text := typed[q.Code]
		if text != "" && (q.Code == "rim" || q.Code == "lipheight") && !strings.HasPrefix(text, "@") {
			text = "@water + " + text
		}
		if q.Code == "width" && j.Pond.Outline.Shape == "circle" {
			continue
		}
		set(q.Code, q.path, text)
	}
	points := r.PostFormValue("points")
	pointsWrong := a.curvePoints(j, points)
	if len(j.Watercourses) > 0 {
		set("name", "/watercourses/0/name", "fall")
		set("name", "/watercourses/0/parts/0/lip/name", "L1")
	}
	if len(j.Runs) > 0 {
		set("name", "/runs/0/name", "main")
		set("name", "/runs/0/from", "pump")
		set("name", "/runs/0/to", "fall")
	}
	if len(wrong) > 0 || pointsWrong != "" {
		a.showNew(w, r, http.StatusUnprocessableEntity, typed, wrong, points, pointsWrong)
		return nil
	}
	id := a.NewID()
	if err := a.put(r, id, 0, j, a.say("app.change.begun")); err != nil {
		return err
	}
	see(w, r, "/jobs/"+id)
	return nil
}

// curvePoints reads points of a pump's curve, "54 gpm @ 16 ft" each on a line;
// the sentence tells the first that cannot be read.
func (a *app) curvePoints(j *job.Job, text string) string {
	n := 0
	for line := range strings.Lines(text) {
		if line = strings.TrimSpace(line); line == "" {
			continue
		}
		flow, head, ok := strings.Cut(line, "@")
		if !ok {
			return a.say("app.new.point", "found", line)
		}
		at := "/pumps/0/curve/" + itoa(n)
		for _, e := range []edit{{"/pumps/0/name", "P1"}, {at + "/flow", strings.TrimSpace(flow)}, {at + "/head", strings.TrimSpace(head)}} {
			if f := j.Set(e.path, e.text); f != nil {
				return a.Language.Say(f.Message, j.System())
			}
		}
		n++
	}
	return ""
}
