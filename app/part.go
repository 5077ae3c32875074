package app

import (
	"net/http"
	"slices"
	"strconv"
	"strings"

	"plashet/answer"
	"plashet/drawing"
	"plashet/engine/trace"
	"plashet/job"
)

func itoa(n int) string { return strconv.Itoa(n) }

type partBody struct {
	ID, Key  string
	Base     int
	Tally    tally
	Sheets   []sheet
	Groups   []group
	Findings []finding
	Wrong    []answer.Fault // of this part: what could not be read or worked out
	Reasons  []reason
	Options  []datalist
	Doc      *answer.Document
	Faults   int // of what was typed
	Last     string
	Next     *tab // in the order of the work
	Glue     []glueLine
	GlueAt   int // the step to go on with
	Levels   []levelLine
	Corners  []corner
	Cases    []playCase
}

// corner is a corner of the vault to look over.
type corner struct {
	Name string
	Here bool
}

// cornerOf gives the number of a corner by its name; -1 for none.
func cornerOf(name string) int {
	return slices.IndexFunc(drawing.Corners(), func(c drawing.Corner) bool { return c.String() == name })
}

// overCorner draws the assembly over the corner that is asked for, each part and
// piece a link to its own page.
func (a *app) overCorner(r *http.Request, o *opened) (list []sheet, corners []corner) {
	c := drawing.CornerFor(o.job.Vault.Outlet.Wall)
	if n := cornerOf(r.URL.Query().Get("corner")); n >= 0 {
		c = drawing.Corner(n)
	}
	list = a.sheetsBy(o.solved, "vault "+c.String(), a.pieceLink(o), func(in drawing.Input) []drawing.Sheet {
		s, ok := drawing.Assembly(in, c)
		if !ok {
			return nil
		}
		return []drawing.Sheet{s}
	})
	for _, x := range drawing.Corners() {
		corners = append(corners, corner{x.String(), x == c})
	}
	return list, corners
}

// datalist offers what may be meant in a field.
type datalist struct {
	ID     string
	Values []string
}

// part shows one part of a job.
func (a *app) part(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	return a.partPage(w, r, o, http.StatusOK, r.PathValue("part"), nil, nil)
}

// partPage shows a part; what was typed and not taken stays in its fields, with
// a sentence, and the answer is the last good one.
func (a *app) partPage(w http.ResponseWriter, r *http.Request, o *opened, status int, key string, typed []edit, faults []trace.Fault) error {
	p := partOf(key)
	switch {
	case p == nil && len(faults) > 0:
		return refusal{status: status, text: a.faultText(o, faults[0])}
	case p == nil:
		return errNoPage
	}
	b := partBody{
		ID: o.rev.ID, Key: key, Base: o.rev.Number, Tally: a.tally(o.solved, o.rev.ID, nil),
		Groups: a.groups(o, p, typed, faults), Options: a.datalists(o.job), Doc: &o.doc, Faults: len(faults), Last: o.rev.What,
		Findings: a.findings(o, func(path string) bool { return partAt(path) == key }),
	}
	for _, f := range o.doc.Faults {
		if partAt(f.Path) == key {
			b.Wrong = append(b.Wrong, f)
		}
	}
	for _, f := range o.doc.Figures {
		if slices.ContainsFunc(p.Figures, func(stem string) bool { return strings.HasPrefix(f.ID, stem) }) && (key == "falls") == (strings.HasPrefix(f.ID, "level.store.") || strings.HasPrefix(f.ID, "feed.")) {
			b.Reasons = append(b.Reasons, a.reason(o, f))
		}
	}
	if key == "pond" {
		a.outlineIn(r, o, b.Groups)
	}
	if key != "glue" { // there each stands on its step's page
		b.Sheets = a.sheetsOf(o.solved, key)
	}
	if key == "vault" {
		over, corners := a.overCorner(r, o)
		if b.Sheets = append(over, b.Sheets...); len(over) > 0 {
			b.Corners = corners
		}
	}
	if key == "glue" {
		b.Glue = a.glueList(r, o)
		for _, x := range b.Glue {
			if x.Here || b.GlueAt == 0 {
				b.GlueAt = x.Number
			}
		}
	}
	if key == "levels" {
		b.Cases = a.playCases(o, "")
	}
	b.Levels = a.levelTable(&o.doc)
	h := a.heading(o, key)
	for i := range h.Parts {
		if h.Parts[i].Key == key && i+1 < len(h.Parts) {
			b.Next = &h.Parts[i+1]
		}
	}
	a.show(w, r, status, "part", a.say("app.part."+key), h, b)
	return nil
}

// datalists offers names that stand in the job and in the tables.
func (a *app) datalists(j *job.Job) []datalist {
	levels := []string{"@water", "@rim"}
	for _, p := range j.Survey.Points {
		levels = append(levels, "@"+p.Name)
	}
	places, pumps, attitudes := []string{"pump"}, []string{}, []string{}
	for _, c := range j.Watercourses {
		places = append(places, c.Name)
	}
	for _, p := range j.FurtherPumps {
		places = append(places, p.Name)
	}
	var sizes []string
	for _, r := range j.Runs {
		places = append(places, r.From, r.To)
		sizes = append(sizes, a.Book.PipeSizes(r.Pipe.Kind)...)
	}
	sizes = append(sizes, a.Book.PipeSizes(j.Assembly.Pipe.Kind)...)
	for i := range j.Pumps {
		pumps = append(pumps, j.Pumps[i].Name)
		for _, t := range j.Pumps[i].Attitudes {
			attitudes = append(attitudes, t.Name)
		}
	}
	var out []datalist
	for _, d := range []datalist{
		{"o-kinds", a.Book.Kinds()},
		{"o-sizes", sizes},
		{"o-fittings", slices.Concat(a.Book.LossNames(), a.Book.FittingNames())},
		{"o-pumps", pumps},
		{"o-places", places},
		{"o-levels", levels},
		{"o-attitudes", attitudes},
	} {
		var once []string
		for _, v := range d.Values {
			if v != "" && !slices.Contains(once, v) {
				once = append(once, v)
			}
		}
		out = append(out, datalist{d.ID, once})
	}
	return out
}

// draw gives one drawing alone, to look at large or to keep.
func (a *app) draw(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	data := a.alone(o.solved, strings.TrimSuffix(r.PathValue("name"), ".svg"))
	if data == nil {
		return errNoPage
	}
	w.Header().Set("Content-Type", "image/svg+xml; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	_, _ = w.Write(data)
	return nil
}
