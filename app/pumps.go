package app

import (
	"errors"
	"net/http"
	"net/url"
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
	"plashet/store"
)

// mostPumps is how many pumps of the shelf a page shows.
const mostPumps = 300

// spareRows are the empty rows for points behind those of a curve.
const spareRows = 4

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
	if m, err := p.Price.Amount(j.Site.Currency); err == nil && !p.Price.IsZero() {
		said = append(said, m.Format())
	}
	return strings.Join(said, " · ")
}

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

// newPump puts a pump on the shelf.
func (a *app) newPump(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	units := "us"
	if r.PostFormValue("units") == "metric" {
		units = "metric"
	}
	blank := keep.Pump{Job: blankPump(units)}
	list := edits(r.PostForm)
	next, faults := retype(blank.Job, list)
	if next.Pumps[0].Name == "" && !slices.ContainsFunc(faults, func(f trace.Fault) bool { return f.Path == "/pumps/0/name" }) {
		if f := next.Set("/pumps/0/name", ""); f != nil {
			faults = append(faults, *f)
		}
	}
	if len(faults) > 0 {
		a.showPump(w, r, http.StatusUnprocessableEntity, blank, 0, list, faults)
		return nil
	}
	id := a.NewID()
	if _, err := keep.SavePump(r.Context(), a.Store, id, 0, next, a.change(r, a.say("app.pump.put"))); err != nil {
		return err
	}
	see(w, r, "/pumps/"+id)
	return nil
}

func (a *app) change(r *http.Request, what string) store.Change {
	return store.Change{Who: a.Device(r).Who, When: a.Now(), What: what}
}

// retype sets what a form says on a copy of a pump. The points of the curve are
// one field: the rows that hold anything, from above to below.
func retype(p *job.Job, list []edit) (*job.Job, []trace.Fault) {
	var plain, rows []edit
	for _, e := range list {
		switch {
		case strings.HasPrefix(e.path, "/pumps/0/curve/"):
			rows = append(rows, e)
		case e.path == "/site/currency", strings.HasPrefix(e.path, "/pumps/0/") && !shelf.Local(strings.TrimPrefix(e.path, "/pumps/0/")):
			plain = append(plain, e)
		}
	}
	// The currency first: the price is read in it.
	slices.SortStableFunc(plain, func(a, b edit) int { return strings.Compare(b.path, a.path) })
	next, faults := apply(p, changed(p, plain))
	if len(changed(p, rows)) > 0 {
		faults = append(faults, recurve(next, rows)...)
	}
	next.Name = next.Pumps[0].Name
	return next, faults
}

// recurve writes the points anew.
func recurve(next *job.Job, rows []edit) (faults []trace.Fault) {
	texts := map[int]map[string]string{}
	for _, e := range rows {
		number, end, _ := strings.Cut(strings.TrimPrefix(e.path, "/pumps/0/curve/"), "/")
		if n, err := strconv.Atoi(number); err == nil && n >= 0 && e.text != "" {
			if texts[n] == nil {
				texts[n] = map[string]string{}
			}
			texts[n][end] = e.text
		}
	}
	var order []int
	for n := range texts {
		order = append(order, n)
	}
	slices.Sort(order)
	next.Pumps[0].Curve = nil
	for i, n := range order {
		for _, end := range []string{"flow", "head", "watts"} {
			if text := texts[n][end]; text != "" || end != "watts" {
				if f := next.Set("/pumps/0/curve/"+itoa(i)+"/"+end, text); f != nil {
					f.Path = "/pumps/0/curve/" + itoa(n) + "/" + end
					faults = append(faults, *f)
				}
			}
		}
	}
	return faults
}

// setPump changes a pump. Upon a newer state than the form's the change is put
// there where it touches other fields; a field that both changed is shown.
func (a *app) setPump(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	p, err := a.openPump(r)
	if err != nil {
		return err
	}
	list := edits(r.PostForm)
	was := p.Job
	if n := base(r); n != p.Rev.Number {
		rev, err := a.Store.At(r.Context(), p.Rev.ID, n)
		if err != nil {
			return a.refuse(http.StatusConflict, "app.error.moved")
		}
		old, err := keep.At(rev)
		if err != nil {
			return a.refuse(http.StatusConflict, "app.error.moved")
		}
		was = old.Job
	}
	mine := ownEdits(was, list)
	next, faults := retype(p.Job, mine)
	if was != p.Job {
		if clash := a.clashes(was, p.Job, next, mine); len(clash) > 0 {
			a.showPump(w, r, http.StatusConflict, p, p.Rev.Number, mine, clash)
			return nil
		}
	}
	if len(faults) > 0 {
		a.showPump(w, r, http.StatusUnprocessableEntity, p, p.Rev.Number, list, faults)
		return nil
	}
	what := a.describe(p.Job, next)
	if what != "" {
		if _, err := keep.SavePump(r.Context(), a.Store, p.Rev.ID, p.Rev.Number, next, a.change(r, what)); err != nil {
			return a.stale(err)
		}
	}
	see(w, r, "/pumps/"+p.Rev.ID)
	return nil
}

// ownEdits keeps what a form changed against the state it was made on; of the
// curve all rows or none.
func ownEdits(was *job.Job, list []edit) []edit {
	curve := slices.ContainsFunc(changed(was, list), func(e edit) bool { return strings.HasPrefix(e.path, "/pumps/0/curve/") })
	var out []edit
	for _, e := range list {
		if strings.HasPrefix(e.path, "/pumps/0/curve/") {
			if curve {
				out = append(out, e)
			}
		} else if len(changed(was, []edit{e})) > 0 {
			out = append(out, e)
		}
	}
	return out
}

// clashes tells the fields that this form and another save both changed, to
// something else.
func (a *app) clashes(was, now, next *job.Job, mine []edit) []trace.Fault {
	old, theirs, ours := entries(was), entries(now), entries(next)
	var out []trace.Fault
	for _, e := range mine {
		if old[e.path] != theirs[e.path] && ours[e.path] != theirs[e.path] {
			out = append(out, trace.Fault{Path: e.path, Message: trace.Message{Code: "app.pump.clash", Args: []trace.Arg{trace.Str("now", theirs[e.path])}}})
		}
	}
	return out
}

// archivePump puts a pump aside, or takes it back.
func (a *app) archivePump(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	p, err := a.openPump(r)
	if err != nil {
		return err
	}
	what := "app.change.aside"
	if p.Rev.Archived {
		what = "app.change.back"
	}
	c := a.change(r, a.say(what))
	c.Data, c.Summary = p.Rev.Data, p.Rev.Summary
	if _, err = a.Store.Archive(r.Context(), p.Rev.ID, base(r), !p.Rev.Archived, c); err != nil {
		return a.stale(err)
	}
	see(w, r, "/pumps")
	return nil
}

// pumpsFile gives the shelf as CSV.
func (a *app) pumpsFile(w http.ResponseWriter, r *http.Request) error {
	list, _, _, err := keep.Pumps(r.Context(), a.Store, "", false, shelf.MostRows)
	if err != nil {
		return err
	}
	var jobs []*job.Job
	for _, p := range list {
		jobs = append(jobs, p.Job)
	}
	giveCSV(w, "pumps.csv", shelf.PumpsCSV(jobs))
	return nil
}

func giveCSV(w http.ResponseWriter, name string, data []byte) {
	h := w.Header()
	h.Set("Content-Type", "text/csv; charset=utf-8")
	h.Set("Content-Disposition", "attachment; filename*=UTF-8''"+url.PathEscape(name))
	h.Set("Cache-Control", "no-store")
	h.Set("X-Content-Type-Options", "nosniff")
	_, _ = w.Write(data)
}
