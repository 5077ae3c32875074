package app

import (
	"bytes"
	"embed"
	"html/template"
	"net/http"
	"path"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

//go:embed page/*.html
var pageFiles embed.FS

//go:embed static
var staticFiles embed.FS

// frame is what stands round every page.
type frame struct {
	Lang, Mode, Who, Title, Version string

	Job  *heading // nil where the page is about no job
	Here string   // path of the page
	Body any
}

// pages are the templates that fill the frame, one file each.
var pages = []string{
	"list", "new", "guide", "sorry", "device", "answer", "part", "glue", "choose", "layouts", "piece", "doubt", "play", "paper", "offer", "why", "assumed", "history", "past", "stale", "sheet",
	"pumps", "pump", "prices", "price", "shelfhistory", "csv", "jobshelf", "picture", "model", "export", "read",
}

// templates reads the pages.
func (a *app) templates() map[string]*template.Template {
	base := template.Must(template.New("frame").Funcs(template.FuncMap{
		"t": a.Language.Word, "term": a.Language.Term, "wordof": a.Language.Field, "say": a.say, "list": func(x ...any) []any { return x },
		"dict": dict, "lower": strings.ToLower,
	}).ParseFS(pageFiles, "page/frame.html", "page/bits.html", "page/field.html", "page/ground.html", "page/finding.html", "page/tables.html", "page/tableswater.html", "page/tableswork.html", "page/beside.html", "page/shelfbits.html"))
	sets := map[string]*template.Template{}
	for _, name := range pages {
		sets[name] = template.Must(template.Must(base.Clone()).ParseFS(pageFiles, "page/"+name+".html"))
	}
	return sets
}

// dict gathers names and values for a template inside a template.
func dict(pairs ...any) map[string]any {
	m := map[string]any{}
	for i := 0; i+1 < len(pairs); i += 2 {
		if name, ok := pairs[i].(string); ok {
			m[name] = pairs[i+1]
		}
	}
	return m
}

// say fills a sentence of the catalogue; args by turns name and text.
func (a *app) say(code string, args ...string) string {
	m := trace.Message{Code: code}
	for i := 0; i+1 < len(args); i += 2 {
		m.Args = append(m.Args, trace.Str(args[i], args[i+1]))
	}
	return a.Language.Say(m, unit.US)
}

// show writes a page whole, or none of it.
func (a *app) show(w http.ResponseWriter, r *http.Request, status int, name, title string, job *heading, body any) {
	d := a.Device(r)
	f := frame{Lang: a.Language.Tag, Mode: d.Mode, Who: d.Who, Title: title, Version: a.Version, Job: job, Here: r.URL.Path, Body: body}
	var b bytes.Buffer
	if err := a.sets[name].ExecuteTemplate(&b, "frame", f); err != nil {
		if name == "sorry" {
			http.Error(w, a.say("app.error.ours"), http.StatusInternalServerError)
			return
		}
		a.failed(w, r, err)
		return
	}
	h := w.Header()
	h.Set("Content-Type", "text/html; charset=utf-8")
	h.Set("Cache-Control", "no-store")
	w.WriteHeader(status)
	_, _ = w.Write(b.Bytes())
}

// static gives the style sheet and the scripts.
func (a *app) static(w http.ResponseWriter, r *http.Request) error {
	return send(w, staticFiles, "static/"+r.PathValue("name"))
}

// kindOf tells the kind of a file that the program carries along, by the end of its name.
func kindOf(name string) string {
	return map[string]string{
		".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".svg": "image/svg+xml; charset=utf-8", ".png": "image/png",
	}[path.Ext(name)]
}

// send gives a file that the program carries along.
func send(w http.ResponseWriter, files embed.FS, name string) error {
	data, err := files.ReadFile(name)
	if err != nil {
		return errNoPage
	}
	w.Header().Set("Content-Type", kindOf(name))
	w.Header().Set("Cache-Control", "no-cache")
	_, _ = w.Write(data)
	return nil
}

// see sends the browser on to a page after a post.
func see(w http.ResponseWriter, r *http.Request, path string) {
	http.Redirect(w, r, path, http.StatusSeeOther)
}
