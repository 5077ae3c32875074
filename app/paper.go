package app

import (
	"bytes"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"plashet/drawing"
	"plashet/job"
	pricing "plashet/offer"
	"plashet/paper"
	"plashet/render/pdf"
)

// sizeFor gives the size of paper: what is asked for, else what the person has
// on this device, else the job's.
func (a *app) sizeFor(r *http.Request, j *job.Job) paper.Paper {
	for _, name := range []string{r.URL.Query().Get("paper"), a.Device(r).Paper} {
		if size, ok := paper.Named(name); ok {
			return size
		}
	}
	return paper.For(j)
}

// paperSheet is a sheet to print.
type paperSheet struct{ Name, Title, Hint string }

type paperBody struct {
	ID, Size string
	Sizes    []string
	Sheets   []paperSheet
	NotToCut bool
}

// paperPage lists the sheets that the job is built by.
func (a *app) paperPage(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	b := paperBody{ID: o.rev.ID, Size: a.sizeFor(r, o.job).Name(), Sizes: []string{"letter", "a4"}, NotToCut: o.doc.NotToCut}
	for _, n := range paper.Names() {
		s := paperSheet{Name: n, Title: a.Language.Word("paper.title." + n)}
		if code := "app.paper.hint." + n; a.Language.Has(code) {
			s.Hint = a.Language.Word(code)
		}
		b.Sheets = append(b.Sheets, s)
	}
	a.show(w, r, http.StatusOK, "paper", a.say("app.paper.title"), a.heading(o, "paper"), b)
	return nil
}

// everySheet is the name under which all sheets come as one file.
const everySheet = "all"

// paperFile gives one sheet, or all, as a PDF file.
func (a *app) paperFile(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	name, ok := strings.CutSuffix(r.PathValue("file"), ".pdf")
	var names []string
	switch {
	case !ok:
		return errNoPage
	case name == everySheet:
	case slices.Contains(paper.Names(), name):
		names = []string{name}
	default:
		return errNoPage
	}
	day := a.Now()
	in := paper.Input{
		Input: a.drawn(o.solved), Paper: a.sizeFor(r, o.job),
		Stamp: paper.Stamp{ID: o.rev.ID, Revision: o.rev.Number, Digest: o.rev.Digest, Date: day.Format("2006-01-02")},
	}
	if a.Public != "" {
		in.Stamp.URL = a.Public + "/jobs/" + o.rev.ID
	}
	if paper.OfOffer(names...) {
		d := pricing.Of(a.Book, o.job, o.faults...)
		in.Offer = &d
	}
	sheets, err := paper.Make(in, names...)
	if err != nil {
		return err
	}
	var pages []drawing.Sheet
	heading := a.say("app.paper.title")
	for _, s := range sheets {
		pages = append(pages, s.Pages...)
		if len(sheets) == 1 {
			heading = s.Title
		}
	}
	var b bytes.Buffer
	if err := pdf.Write(&b, pages, pdf.Info{Title: heading + ": " + o.job.Name, Language: a.Language.Tag, Date: day.UTC()}); err != nil {
		return err
	}
	h := w.Header()
	h.Set("Content-Type", "application/pdf")
	h.Set("Content-Disposition", "inline; filename*=UTF-8''"+url.PathEscape(fileName(o.job.Name+", "+heading))+".pdf")
	h.Set("Cache-Control", "no-store")
	_, err = w.Write(b.Bytes())
	return err
}
