package app

import (
	"errors"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"plashet/drawing"
	"plashet/engine/design"
	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/shelf"
	"plashet/shelf/keep"
)

// spareRows are the empty rows for points behind those of a curve.
const spareRows = 4

// pumpBody is the page of one pump.
type pumpBody struct {
	ID       string
	Base     int
	Archived bool
	Last     string
	Sheet    *sheet
	Inputs   []input
	More     []input
	Rows     []curveRow
	Carried  string // what this page does not show
	Faults   []string
	Wrong    int // fields not taken
	Cautions []string
	New      bool
	Units    string
}

// curveRow is a point of a curve as a form has it.
type curveRow struct {
	Number            int
	Flow, Head, Watts input
}

// shownAt once on a pump's page; the rest is behind a line to open.
var shownAtOnce = []string{"name", "watts", "volts", "amps", "price", "currency", "note", "boxFlow", "maxHead"}

// openPump reads the pump that a request names.
func (a *app) openPump(r *http.Request) (keep.Pump, error) {
	p, err := keep.Of(r.Context(), a.Store, r.PathValue("id"))
	if errors.Is(err, keep.ErrForm) {
		return p, a.refuse(http.StatusUnprocessableEntity, "app.pump.unreadable")
	}
	return p, err
}

func (a *app) pump(w http.ResponseWriter, r *http.Request) error {
	p, err := a.openPump(r)
	if err != nil {
		return err
	}
	a.showPump(w, r, http.StatusOK, p, p.Rev.Number, nil, nil)
	return nil
}

// showPump shows a pump; what was typed and not taken stays, with a sentence.
func (a *app) showPump(w http.ResponseWriter, r *http.Request, status int, p keep.Pump, base int, typed []edit, faults []trace.Fault) {
	b := pumpBody{ID: p.Rev.ID, Base: base, Archived: p.Rev.Archived, Last: p.Rev.What, Units: p.Job.Units, New: p.Rev.ID == "", Wrong: len(faults)}
	x := &former{a: a, j: p.Job, typed: map[string]string{}, faults: map[string]string{}}
	for _, e := range typed {
		x.typed[e.path] = e.text
	}
	for _, f := range faults {
		x.faults[f.Path] = a.Language.Say(f.Message, p.Job.System())
	}
	put := func(in input) {
		if in.Name == "name" {
			in.Hint = ""
		}
		if in.Filled || in.Error != "" || in.Value != "" || slices.Contains(shownAtOnce, in.Name) {
			b.Inputs = append(b.Inputs, in)
		} else {
			b.More = append(b.More, in)
		}
	}
	var carried []string
	for _, f := range p.Job.Fields("/pumps/0") {
		switch {
		case shelf.Local(f.Name) || f.Name == "curve":
		case f.Sort == job.SortList && f.Count > 0:
			carried = append(carried, x.label(f)+" ("+strconv.Itoa(f.Count)+")")
		case f.Sort == job.SortPart:
			for _, sub := range p.Job.Fields(f.Path) {
				in := x.input(sub)
				in.Title = x.label(f) + ": " + in.Title
				put(in)
			}
		case f.Sort != job.SortList:
			put(x.input(f))
			if f.Name == "price" {
				put(a.currencyInput(x, p.Job))
			}
		}
	}
	b.Carried = strings.Join(carried, ", ")
	b.Rows = a.curveRows(x, p.Job)
	if p.Rev.ID != "" {
		if d, ok := drawing.PumpAlone(a.drawn(a.solve(p.Rev.Digest, p.Rev.Data))); ok {
			b.Sheet = inline(d, nil)
		}
		b.Cautions = a.curveSays(p.Job)
	}
	for _, f := range p.Faults {
		b.Faults = append(b.Faults, a.Language.Say(f.Message, p.Job.System()))
	}
	title := p.Job.Name
	if b.New {
		title = a.say("app.pump.new")
	}
	a.show(w, r, status, "pump", title, nil, b)
}

// curveSays tells what is to be known of a pump's curve, or why it has none.
func (a *app) curveSays(j *job.Job) []string {
	c, err := design.SheetCurve(&j.Pumps[0])
	if err != nil {
		var bad *hydro.Error
		if errors.As(err, &bad) {
			return []string{a.ofPump(bad.Message, j.System())}
		}
		return []string{err.Error()}
	}
	var out []string
	for _, m := range c.Cautions() {
		out = append(out, a.ofPump(m, j.System()))
	}
	return out
}

// ofPump words what is said of a pump's curve.
func (a *app) ofPump(m trace.Message, s unit.System) string {
	m.Args = append(slices.Clone(m.Args), trace.Str("where", a.say("app.pump.this")))
	return a.Language.Say(m, s)
}

func (a *app) currencyInput(x *former, j *job.Job) input {
	for _, f := range j.Fields("/site") {
		if f.Name == "currency" {
			return x.input(f)
		}
	}
	return input{}
}

// curveRows are the points of a curve, and empty rows for more.
func (a *app) curveRows(x *former, j *job.Job) []curveRow {
	n := len(j.Pumps[0].Curve)
	for path := range x.typed { // rows typed further down stay
		if rest, in := strings.CutPrefix(path, "/pumps/0/curve/"); in {
			number, _, _ := strings.Cut(rest, "/")
			if i, err := strconv.Atoi(number); err == nil && i < 200 {
				n = max(n, i+1)
			}
		}
	}
	var rows []curveRow
	for i := range n + spareRows {
		row := curveRow{Number: i + 1}
		for _, f := range j.Fields("/pumps/0/curve/" + itoa(i)) {
			in := x.input(f)
			in.Must, in.Hint = false, ""
			switch f.Name {
			case "flow":
				row.Flow = in
			case "head":
				row.Head = in
			case "watts":
				row.Watts = in
			}
		}
		rows = append(rows, row)
	}
	return rows
}

// pumpForm asks for a new pump.
func (a *app) pumpForm(w http.ResponseWriter, r *http.Request) error {
	units := "us"
	if r.URL.Query().Get("units") == "metric" {
		units = "metric"
	}
	a.showPump(w, r, http.StatusOK, keep.Pump{Job: blankPump(units)}, 0, nil, nil)
	return nil
}

func blankPump(units string) *job.Job {
	return &job.Job{Format: job.FormatName, Version: job.Version, Units: units, Pumps: make([]job.Pump, 1)}
}
