package app

import (
	"bytes"
	"net/http"
	"slices"
	"strconv"

	"plashet/answer"
	"plashet/drawing"
	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/export"
	"plashet/job"
	pricing "plashet/offer"
	"plashet/paper"
	"plashet/render/svg"
)

// described stands in the table for a description in OpenAPI.
type described struct{}

// apiFaults are the faults in a job.
type apiFaults struct {
	Faults []answer.Fault `json:"faults" doc:"none for a sound job"`
}

// apiQuantities is every quantity of a job.
type apiQuantities struct {
	Quantities []apiTyped     `json:"quantities" doc:"in the order of the document"`
	Bare       int            `json:"bare" doc:"how many of them are bare numbers"`
	Faults     []answer.Fault `json:"faults" doc:"what could not be read"`
}

type apiTyped struct {
	Path      string  `json:"path" doc:"where in the job"`
	Typed     string  `json:"typed" doc:"as typed"`
	Read      string  `json:"read,omitempty" doc:"as read, in the job's units and currency; absent for what could not be read and for a level that is a survey point's"`
	SI        float64 `json:"si" doc:"the same in SI; 0 for money, for a level at a survey point the offset from it"`
	Point     string  `json:"point,omitempty" doc:"survey point that a level is counted from"`
	Bare      bool    `json:"bare,omitempty" doc:"no unit was typed: it took the unit of its field, and that is where a slip hides"`
	Unit      string  `json:"unit,omitempty" doc:"that it was typed in, or took"`
	Money     bool    `json:"money,omitempty" doc:"an amount of money"`
	Source    string  `json:"source,omitempty" doc:"where it comes from"`
	Tolerance string  `json:"tolerance,omitempty" doc:"how far off it may be, as typed"`
}

// apiSheets is a list of drawings or of sheets.
type apiSheets struct {
	Sheets []apiSheet `json:"sheets" doc:"each with the name that it is asked for by"`
}

type apiSheet struct {
	Name  string `json:"name" doc:"name"`
	Title string `json:"title" doc:"in words"`
}

// apiFiles is a list of files.
type apiFiles struct {
	Files []string `json:"files" doc:"names"`
}

// asking is what a verb works on: a job of the store, or one that is sent.
type asking struct {
	*opened
	r *http.Request
}

// onJob answers a question about a job of the store.
func (a *app) onJob(f func(x asking) (any, error)) func(w http.ResponseWriter, r *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		o, err := a.open(r)
		if err != nil {
			return err
		}
		w.Header().Set("ETag", etag(o.rev.Number)) // the state that the answer stands on
		return reply(w, asking{o, r}, f)
	}
}

// onSent answers a question about a job that is sent, and keeps nothing of it.
func (a *app) onSent(f func(x asking) (any, error)) func(w http.ResponseWriter, r *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		data, _, _, err := a.sentJob(r)
		if err != nil {
			return err
		}
		o := &opened{solved: a.solve(digest(data), data)}
		o.rev.Digest, o.rev.Data = digest(data), data
		return reply(w, asking{o, r}, f)
	}
}

func reply(w http.ResponseWriter, x asking, f func(x asking) (any, error)) error {
	v, err := f(x)
	if err != nil {
		return err
	}
	return sendJSON(w, http.StatusOK, v)
}

func (a *app) apiDescribe(w http.ResponseWriter, _ *http.Request) error {
	return sendBytes(w, http.StatusOK, mediaJSON, description)
}

func (a *app) apiSchema(w http.ResponseWriter, _ *http.Request) error {
	data, err := job.Schema()
	if err != nil {
		return err
	}
	return sendBytes(w, http.StatusOK, "application/schema+json", data)
}

func (a *app) apiDesign(x asking) (any, error) { return x.doc, nil }

func (a *app) apiCheck(x asking) (any, error) {
	return apiFaults{append([]answer.Fault{}, x.doc.Faults...)}, nil
}

func (a *app) apiQuantities(x asking) (any, error) {
	out := apiQuantities{Quantities: []apiTyped{}, Faults: []answer.Fault{}}
	for path, q := range x.job.Quantities() {
		one := apiTyped{Path: path, Typed: q.Text, SI: q.Read.SI, Point: q.Point, Bare: q.Bare, Unit: q.Unit, Money: q.Money, Source: string(q.Source), Tolerance: q.Tolerance}
		if q.Read.Kind != unit.KindNone && (q.Point == "" || q.Read.SI != 0) {
			one.Read = q.Read.Format(x.job.System())
		}
		if q.Amount.Currency != "" {
			one.Read = q.Amount.FormatExact(x.job.Style())
		}
		if q.Bare {
			out.Bare++
		}
		out.Quantities = append(out.Quantities, one)
	}
	for _, f := range x.faults {
		out.Faults = append(out.Faults, answer.FaultOf(f, x.job.System(), a.Language))
	}
	return out, nil
}

func (a *app) apiExplain(x asking) (any, error) {
	name := x.r.PathValue("figure")
	for _, f := range x.doc.Figures {
		if f.ID == name {
			return f, nil
		}
	}
	return nil, a.wrong(http.StatusNotFound, "app.api.figure", "figure", name, "figures[].id", "pump.flow")
}

func (a *app) apiChoose(x asking) (any, error) {
	q := x.r.URL.Query()
	shelf, pairs := compared(q)
	want := design.Want{Pairs: pairings[pairs], Kinds: q["pipe"], Uniform: q.Get("oneSize") == "true"}
	if n, err := strconv.ParseFloat(q.Get("years"), 64); err == nil && n > 0 {
		want.Years = unit.Ratio(n)
	}
	if n, err := strconv.ParseFloat(q.Get("discount"), 64); err == nil {
		want.Discount, want.Rated = unit.Ratio(n/100), true
	}
	if text := q.Get("speed"); text != "" {
		v, err := unit.Parse(text, unit.KindSpeed, unit.US)
		if err != nil || v.Bare || v.SI <= 0 {
			return nil, a.wrong(http.StatusBadRequest, "app.api.param", "speed", text, "ft/s, m/s", "5 ft/s")
		}
		want.MostSpeed = unit.Speed(v.SI)
	}
	// Who asks waits for it; it ends when they go.
	found := a.choosing(x.r.Context(), x.opened, shelf, want, nil)
	if found.err != nil {
		return nil, found.err
	}
	return answer.BuildChosen(found.choice, x.faults, a.Language), nil
}

func (a *app) apiQuote(x asking) (any, error) {
	d := pricing.Of(a.Book, x.job, x.faults...)
	return answer.BuildOffer(x.job, &d, x.r.URL.Query().Get("for") == "client", x.faults, a.Language), nil
}

func (a *app) apiSheets(x asking) (any, error) {
	list := apiSheets{[]apiSheet{}}
	for _, s := range drawing.Sheets(a.drawn(x.solved)) {
		list.Sheets = append(list.Sheets, apiSheet{s.Name, s.Title})
	}
	return list, nil
}

// apiSheet gives one drawing as SVG.
func (a *app) apiSheet(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	list := drawing.Sheets(a.drawn(o.solved))
	i := slices.IndexFunc(list, func(s drawing.Sheet) bool { return s.Name == r.PathValue("name") })
	if i < 0 {
		return errNoPage
	}
	var b bytes.Buffer
	if err := svg.Write(&b, &list[i]); err != nil {
		return err
	}
	return sendBytes(w, http.StatusOK, "image/svg+xml", b.Bytes())
}

func (a *app) apiPaper(asking) (any, error) {
	list := apiSheets{[]apiSheet{}}
	for _, n := range paper.Names() {
		list.Sheets = append(list.Sheets, apiSheet{n, a.Language.Word("paper.title." + n)})
	}
	return list, nil
}

func (a *app) apiFiles(x asking) (any, error) {
	list, in := apiFiles{[]string{}}, a.exporting(x.opened)
	for _, name := range a.exportable() {
		if export.Has(in, name) {
			list.Files = append(list.Files, export.FileName(name))
		}
	}
	return list, nil
}
