package app

import (
	"bytes"
	"errors"
	"html/template"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"plashet/drawing"
	"plashet/export"
	"plashet/render/svg"
	"plashet/table"
)

// exporting is what is given out of a job.
func (a *app) exporting(o *opened) export.Input {
	return export.Input{
		Input:   table.Input{Job: o.job, Result: o.result, Faults: o.faults, Say: a.Language, Digest: o.rev.Digest},
		Drawing: a.drawn(o.solved), Bytes: o.rev.Data, Workbook: a.Workbook,
	}
}

// exportable lists what a page gives out: one file each.
func (a *app) exportable() []string {
	return slices.DeleteFunc(export.Names(), func(name string) bool {
		return name == export.Drawings || name == export.Workbook && a.Workbook == nil
	})
}

// exportFile gives one file by its name.
func (a *app) exportFile(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	for _, name := range a.exportable() {
		if export.FileName(name) != r.PathValue("file") {
			continue
		}
		files, err := export.Make(a.exporting(o), name)
		if errors.Is(err, export.ErrNone) {
			return errNoPage
		}
		if err != nil {
			return err
		}
		give(w, o.job.Name, files[0])
		return nil
	}
	return errNoPage
}

// give sends a file, to be kept under the job's name.
func give(w http.ResponseWriter, job string, f export.File) {
	h := w.Header()
	h.Set("Content-Type", f.Type)
	h.Set("Content-Length", strconv.Itoa(len(f.Data)))
	h.Set("Cache-Control", "no-store")
	h.Set("Content-Disposition", "attachment; filename*=UTF-8''"+url.PathEscape(fileName(job)+" "+f.Name))
	_, _ = w.Write(f.Data)
}

// exportPage lists the files.
func (a *app) exportPage(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	type file struct{ File, Title string }
	b := struct {
		ID    string
		Held  bool
		Files []file
		None  string
	}{ID: o.rev.ID, Held: o.result.NotToCut}
	var none []string
	in := a.exporting(o)
	for _, name := range a.exportable() {
		title := a.say("app.export." + name)
		if export.Has(in, name) {
			b.Files = append(b.Files, file{export.FileName(name), title})
			continue
		}
		none = append(none, title)
	}
	b.None = strings.Join(none, ", ")
	a.show(w, r, http.StatusOK, "export", a.say("app.export.title"), a.heading(o, "export"), b)
	return nil
}

// model shows the assembly in three dimensions, or as drawn where a browser
// cannot.
func (a *app) model(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	in := a.drawn(o.solved)
	m, ok := drawing.ModelOf(in)
	flat, drawn := drawing.Assembly(in, drawing.CornerFor(o.job.Vault.Outlet.Wall))
	if !ok || !drawn {
		return errNoPage
	}
	var pic bytes.Buffer
	if err := svg.Inline(&pic, &flat); err != nil {
		return err
	}
	type part struct{ Name, Title string }
	b := struct {
		ID, Title string
		Held      bool
		Flat      template.HTML
		Parts     []part
	}{ID: o.rev.ID, Title: m.Title, Held: m.Held, Flat: template.HTML(pic.String())} //nolint:gosec // written by render/svg, which escapes every text
	for i := range m.Solids {
		b.Parts = append(b.Parts, part{m.Solids[i].Name(), m.Solids[i].Title})
	}
	a.show(w, r, http.StatusOK, "model", a.say("app.model.title"), a.heading(o, "vault"), b)
	return nil
}
