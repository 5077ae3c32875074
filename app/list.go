package app

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"plashet/demo"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/store"
	"plashet/words"
)

// perPage is how many jobs a page of the list shows.
const perPage = 40

// Seed puts the invented examples into a store that has never held anything.
// Several programs may do so at once: each example is made once.
func Seed(ctx context.Context, given Given) error {
	if old, err := given.Store.Since(ctx, 0, 1); err != nil || len(old) > 0 {
		return err
	}
	a := &app{Given: given, Language: given.Languages[0], cache: newCache()}
	names := slices.Clone(demo.Names())
	slices.Reverse(names) // the newest stands on top
	for _, name := range names {
		j, faults := job.Read(demo.Job(name))
		if len(faults) > 0 {
			return fmt.Errorf("example %s: %v", name, faults)
		}
		data, err := job.Encode(j) // as the command line digests what it prints
		if err != nil {
			return err
		}
		s := a.solve(digest(data), data)
		_, err = given.Store.Put(ctx, store.Job, "example-"+name, 0, store.Change{
			When: given.Now(), What: a.say("app.change.example"), Data: data, Summary: a.summary(s),
		})
		var stale *store.Stale
		if err != nil && !errors.As(err, &stale) {
			return err
		}
	}
	return nil
}

// mostWho is how long the name of a person may be.
const mostWho = 60

// line is one job of the list.
type line struct {
	store.Entry
	Stage, Mark string
	When        string
}

type listBody struct {
	Jobs     []line
	Text     string
	Archived bool
	More     string // the address of the next page; "" for none
}

// list shows the jobs, the newest first.
func (a *app) list(w http.ResponseWriter, r *http.Request) error {
	q := r.URL.Query()
	b := listBody{Text: q.Get("text"), Archived: q.Get("aside") != ""}
	var before int64
	if last := q.Get("before"); last != "" {
		var err error
		if before, err = strconv.ParseInt(last, 10, 64); err != nil || before < 1 {
			return a.refuse(http.StatusNotFound, "app.error.page")
		}
	}
	found, more, err := a.Store.List(r.Context(), store.Query{
		Kind: store.Job, Text: b.Text, Archived: b.Archived, Before: before, Limit: perPage,
	})
	if err != nil {
		return err
	}
	for _, e := range found {
		b.Jobs = append(b.Jobs, line{Entry: e, Stage: a.say("app.stage." + e.Summary.Stage), Mark: mark(e.Summary.Weight), When: e.When.Format("2 Jan 2006 15:04")})
	}
	if more && len(found) > 0 {
		q.Set("before", strconv.FormatInt(found[len(found)-1].Cursor, 10))
		b.More = "/?" + q.Encode()
	}
	a.show(w, r, http.StatusOK, "list", a.say("app.list.title"), nil, b)
	return nil
}

// mark names the stamp of a weight.
func mark(weight int) string {
	return [...]string{"none", "note", "watch", "stop"}[min(max(weight, 0), 3)]
}

// file gives the job as a file.
func (a *app) file(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	h := w.Header()
	h.Set("Content-Type", "application/json; charset=utf-8")
	h.Set("Content-Disposition", "attachment; filename*=UTF-8''"+url.PathEscape(fileName(o.job.Name))+".json")
	_, err = w.Write(o.rev.Data)
	return err
}

// fileName makes a job's name fit for a file.
func fileName(name string) string {
	s := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, name)
	if s = strings.Trim(s, " ."); s == "" {
		return "job"
	}
	return s
}

// importJob takes a job file that was uploaded. One with faults is kept when it
// can be read at all: its page tells them.
func (a *app) importJob(w http.ResponseWriter, r *http.Request) error {
	data, err := a.upload(r, "file")
	if err != nil {
		return err
	}
	j, faults := job.Read(data)
	if j == nil || slices.ContainsFunc(faults, func(f trace.Fault) bool { return f.Path == "/format" }) {
		text := a.say("app.import.unreadable")
		if j == nil && len(faults) > 0 {
			text = a.Language.Say(faults[0].Message, unit.US)
		}
		return refusal{status: http.StatusUnprocessableEntity, text: text}
	}
	id := a.NewID()
	what := a.say("app.change.imported")
	if len(faults) > 0 { // a field with a fault would be lost in the canonical form
		err = a.putBytes(r, id, 0, data, what)
	} else {
		err = a.put(r, id, 0, j, what)
	}
	if err != nil {
		return err
	}
	see(w, r, "/jobs/"+id)
	return nil
}

// upload reads one file of a form, in memory.
func (a *app) upload(r *http.Request, name string) ([]byte, error) {
	err := r.ParseMultipartForm(mostBody)
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large):
		return nil, a.refuse(http.StatusRequestEntityTooLarge, "app.error.large")
	case err != nil:
		return nil, a.refuse(http.StatusBadRequest, "app.error.upload")
	}
	f, _, err := r.FormFile(name)
	if err != nil {
		return nil, a.refuse(http.StatusUnprocessableEntity, "app.error.nofile")
	}
	defer func() { _ = f.Close() }()
	data, err := io.ReadAll(io.LimitReader(f, job.MaxBytes+1))
	switch {
	case err != nil:
		return nil, a.refuse(http.StatusBadRequest, "app.error.upload")
	case len(data) > job.MaxBytes:
		return nil, a.refuse(http.StatusRequestEntityTooLarge, "app.error.large")
	case len(data) == 0:
		return nil, a.refuse(http.StatusUnprocessableEntity, "app.error.nofile")
	}
	return data, nil
}

func (a *app) copyJob(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	j := o.job.Clone()
	j.Name = a.say("app.copy.name", "name", j.Name)
	if f := j.Set("/name", j.Name); f != nil { // too long a name
		j.Name = o.job.Name
	}
	id := a.NewID()
	if err := a.put(r, id, 0, j, a.say("app.change.copied", "name", o.job.Name)); err != nil {
		return err
	}
	see(w, r, "/jobs/"+id)
	return nil
}

// archive puts a job aside, or takes it back.
func (a *app) archive(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	what := "app.change.aside"
	if o.rev.Archived {
		what = "app.change.back"
	}
	_, err = a.Store.Archive(r.Context(), o.rev.ID, base(r), !o.rev.Archived, store.Change{
		Who: a.Device(r).Who, When: a.Now(), What: a.say(what), Data: o.rev.Data, Summary: o.rev.Summary,
	})
	var stale *store.Stale
	if errors.As(err, &stale) {
		return a.refuse(http.StatusConflict, "app.error.moved")
	}
	if err != nil {
		return err
	}
	see(w, r, "/")
	return nil
}

type deviceBody struct {
	Device
	Modes, Systems, Papers []string
	Languages              []*words.Language
	Tongue                 string // tag of the language in use
	Back                   string
}

func (a *app) deviceForm(w http.ResponseWriter, r *http.Request) error {
	a.show(w, r, http.StatusOK, "device", a.say("app.device.title"), nil, deviceBody{a.Device(r), modes, systems, papers, a.Languages, a.Language.Tag, local(r.URL.Query().Get("back"))})
	return nil
}

// device keeps the name typed and the way pages look.
func (a *app) device(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	d := a.Device(r)
	if r.PostForm.Has("who") {
		d.Who = strings.TrimSpace(r.PostFormValue("who"))
		if len([]rune(d.Who)) > mostWho {
			return a.refuse(http.StatusUnprocessableEntity, "app.error.who")
		}
	}
	for _, x := range []struct {
		name string
		at   *string
		may  []string
	}{{"mode", &d.Mode, modes}, {"units", &d.Units, systems}, {"paper", &d.Paper, papers}} {
		if !r.PostForm.Has(x.name) {
			continue
		}
		if *x.at = r.PostFormValue(x.name); !slices.Contains(x.may, *x.at) {
			*x.at = ""
		}
	}
	if r.PostForm.Has("language") {
		if d.Language = r.PostFormValue("language"); a.spoken(d.Language) == nil {
			d.Language = ""
		}
	}
	a.Remember(w, d)
	see(w, r, local(r.PostFormValue("back")))
	return nil
}

// local keeps a way back on this site.
func local(path string) string {
	if !strings.HasPrefix(path, "/") || strings.HasPrefix(path, "//") || strings.ContainsAny(path, "\\\r\n") {
		return "/"
	}
	return path
}
