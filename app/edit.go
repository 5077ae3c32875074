package app

import (
	"cmp"
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/store"
)

// edit is one field set anew.
type edit struct{ path, text string }

// mostEdits is how many fields one form may set: more than any page shows.
const mostEdits = 2000

// edits reads the fields of a posted form: what begins with a slash is a path in
// the job. Of a name that stands twice the last counts, so that a box that is
// not ticked can send an empty text before it. It never fails: what is no field
// is told when it is set.
func edits(form url.Values) []edit {
	var list []edit
	for name, texts := range form {
		if strings.HasPrefix(name, "/") && len(texts) > 0 {
			list = append(list, edit{name, strings.TrimSpace(texts[len(texts)-1])})
		}
	}
	slices.SortFunc(list, func(a, b edit) int { return cmp.Compare(a.path, b.path) })
	return list
}

// changed keeps the edits that differ from what stands in a job.
func changed(j *job.Job, list []edit) []edit {
	stands := map[string]map[string]string{} // by object, by path
	var out []edit
	for _, e := range list {
		parent := e.path[:strings.LastIndexByte(e.path, '/')]
		fields, known := stands[parent]
		if !known {
			fields = map[string]string{}
			for _, f := range j.Fields(parent) {
				fields[f.Path] = f.Text
			}
			stands[parent] = fields
		}
		if text, ok := fields[e.path]; !ok || text != e.text {
			out = append(out, e)
		}
	}
	return out
}

// apply sets the edits on a copy of a job. A quantity keeps its source and note
// when only its value is typed anew. The faults name what could not be set.
func apply(j *job.Job, list []edit) (*job.Job, []trace.Fault) {
	next := j.Clone()
	var faults []trace.Fault
	for _, e := range list {
		path := e.path
		if e.text != "" && told(j, e.path) {
			path += "/value"
		}
		if f := next.Set(path, e.text); f != nil {
			f.Path = e.path
			faults = append(faults, *f)
		}
	}
	return next, faults
}

// told says that a quantity comes with more than its value.
func told(j *job.Job, path string) bool {
	for _, f := range j.Fields(path[:strings.LastIndexByte(path, '/')]) {
		if f.Path == path {
			return f.Source != "" || f.Note != "" || f.Tolerance != ""
		}
	}
	return false
}

// set changes fields of a job.
func (a *app) set(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	o, err := a.open(r)
	if err != nil {
		return err
	}
	list := edits(r.PostForm)
	if base(r) != o.rev.Number {
		return a.merge(w, r, o, list)
	}
	if path, by, ok := nudged(r.PostFormValue("nudge")); ok {
		list = append(slices.DeleteFunc(list, func(e edit) bool { return e.path == path }), a.nudge(o.job, path, by)...)
	}
	if e, ok := meant(r.PostFormValue("nudge")); ok {
		list = append(slices.DeleteFunc(list, func(x edit) bool { return x.path == e.path }), e)
	}
	list = changed(o.job, list)
	next, faults := apply(o.job, list)
	if len(faults) > 0 {
		return a.partPage(w, r, o, http.StatusUnprocessableEntity, here(r), list, faults)
	}
	return a.save(w, r, o, next)
}

// here is the part of the job whose page a form was sent from.
func here(r *http.Request) string {
	if p := r.PostFormValue("here"); partOf(p) != nil {
		return p
	}
	return ""
}

// save keeps a changed job and goes back to the page it was changed on.
func (a *app) save(w http.ResponseWriter, r *http.Request, o *opened, next *job.Job) error {
	return a.saveAs(w, r, o, next, a.describe(o.job, next))
}

// saveAs is save with what is told of the change; "" for none.
func (a *app) saveAs(w http.ResponseWriter, r *http.Request, o *opened, next *job.Job, what string) error {
	if told, err := a.record(w, r, o, next, what); err != nil || told {
		return err
	}
	path := "/jobs/" + o.rev.ID
	if p := here(r); p != "" {
		path += "/part/" + p + view(r)
	}
	if at := r.PostFormValue("at"); at != "" {
		path += "#" + url.PathEscape(at)
	}
	see(w, r, path)
	return nil
}

// record keeps a changed job as a new revision; nothing where what says that
// nothing changed.
// It tells whether it has answered already: another save came in between.
func (a *app) record(w http.ResponseWriter, r *http.Request, o *opened, next *job.Job, what string) (told bool, err error) {
	if what == "" {
		return false, nil
	}
	if moved := a.moved(o.solved, next); moved != "" {
		what = a.say("app.change.effect", "what", what, "moved", moved)
	}
	if lost := a.lost(o); lost != "" {
		what += lost
	}
	err = a.put(r, o.rev.ID, o.rev.Number, next, what)
	var stale *store.Stale
	if errors.As(err, &stale) {
		return true, a.merge(w, r, o, edits(r.PostForm))
	}
	return false, err
}

// lost names what stood in the file but could not be read, and so is no longer
// in the job once it is saved.
func (a *app) lost(o *opened) string {
	_, faults := job.Decode(o.rev.Data)
	var places []string
	for _, f := range faults {
		if f.Code != job.CodeMissing && f.Code != job.CodeMissingPart {
			places = append(places, a.where(o.job, f.Path))
		}
	}
	if len(places) == 0 {
		return ""
	}
	return " " + a.say("app.change.lost", "places", strings.Join(places, "; "))
}

// nudged reads a press on a stepper: "+1 /vault/length".
func nudged(text string) (path string, by int, ok bool) {
	number, path, ok := strings.Cut(text, " ")
	by, err := strconv.Atoi(number)
	return path, by, ok && err == nil && by >= -64 && by <= 64 && strings.HasPrefix(path, "/")
}

// nudge moves a quantity by steps, from what stands in the job.
func (a *app) nudge(j *job.Job, path string, by int) []edit {
	for _, f := range j.Fields(path[:strings.LastIndexByte(path, '/')]) {
		if f.Path != path || !stepped(f) || f.Text == "" {
			continue
		}
		si := f.SI + float64(by)*step(f.Kind, j.System())
		v := unit.Value{SI: si, Kind: f.Kind}
		return []edit{{path, v.Format(j.System().Typed())}}
	}
	return nil
}

// stepped tells that a field has steppers: sizes that are taped or cut.
func stepped(f job.Field) bool {
	return f.Sort == job.SortQuantity && (f.Kind == unit.KindTape || f.Kind == unit.KindDepth)
}

// step is what a stepper moves a size by: a sixteenth of an inch, or a
// millimetre.
func step(k unit.Kind, s unit.System) float64 {
	switch {
	case s.Is(unit.Metric):
		return 0.001
	case k == unit.KindDepth:
		return float64(unit.Inch) / 4
	}
	return float64(unit.Inch) / 16
}

// add puts one more element into a list: the fields of the form name it with "-".
func (a *app) add(w http.ResponseWriter, r *http.Request) error {
	o, err := a.current(r)
	if err != nil {
		return err
	}
	list := edits(r.PostForm)
	if kind := r.PostFormValue("kind"); kind != "" {
		list = append(list, edit{r.PostFormValue("list") + "/-/" + kind + "/name", strings.TrimSpace(r.PostFormValue("name"))})
	}
	list = slices.DeleteFunc(list, func(e edit) bool { return e.text == "" })
	next := o.job.Clone()
	for _, e := range list {
		if f := next.Set(elementAt(o.job, e.path), e.text); f != nil {
			return a.partPage(w, r, o, http.StatusUnprocessableEntity, here(r), list, []trace.Fault{{Message: f.Message, Path: e.path}})
		}
	}
	if len(list) == 0 {
		return a.refuse(http.StatusUnprocessableEntity, "app.error.empty")
	}
	if to, err := strconv.Atoi(r.PostFormValue("to")); err == nil { // not at the end
		path, _, _ := strings.Cut(list[0].path, "/-/")
		if f := next.Move(strings.TrimSuffix(elementAt(o.job, path+"/-/"), "/"), to); f != nil {
			return refusal{status: http.StatusUnprocessableEntity, text: a.Language.Say(f.Message, next.System())}
		}
	}
	return a.save(w, r, o, next)
}

// elementAt puts the number of the new element in place of "-".
func elementAt(j *job.Job, path string) string {
	list, rest, ok := strings.Cut(path, "/-/")
	if !ok {
		return path
	}
	for _, f := range j.Fields(list[:max(strings.LastIndexByte(list, '/'), 0)]) {
		if f.Path == list {
			return list + "/" + strconv.Itoa(f.Count) + "/" + rest
		}
	}
	return path
}

// remove takes an element out of a list.
func (a *app) remove(w http.ResponseWriter, r *http.Request) error {
	return a.reshape(w, r, func(j *job.Job) *trace.Fault { return j.Remove(r.PostFormValue("path")) })
}

// move brings an element to another place in its list.
func (a *app) move(w http.ResponseWriter, r *http.Request) error {
	return a.reshape(w, r, func(j *job.Job) *trace.Fault {
		path := r.PostFormValue("path")
		n, err := strconv.Atoi(path[strings.LastIndexByte(path, '/')+1:])
		by, err2 := strconv.Atoi(r.PostFormValue("by"))
		if err != nil || err2 != nil || by < -1 || by > 1 {
			n, by = 0, 0
		}
		return j.Move(path, n+by)
	})
}

func (a *app) reshape(w http.ResponseWriter, r *http.Request, do func(j *job.Job) *trace.Fault) error {
	o, err := a.current(r)
	if err != nil {
		return err
	}
	next := o.job.Clone()
	if f := do(next); f != nil {
		return refusal{status: http.StatusUnprocessableEntity, text: a.Language.Say(f.Message, next.System())}
	}
	return a.save(w, r, o, next)
}

// accept accepts a finding with a reason, or takes that back.
func (a *app) accept(w http.ResponseWriter, r *http.Request) error {
	return a.reshape(w, r, func(j *job.Job) *trace.Fault {
		code, path, reason := r.PostFormValue("code"), r.PostFormValue("path"), strings.TrimSpace(r.PostFormValue("reason"))
		j.Accepted = slices.DeleteFunc(j.Accepted, func(x job.Acceptance) bool { return x.Code == code && x.Path == path })
		if r.PostForm.Has("open") { // it stands again
			return nil
		}
		at := "/accepted/" + strconv.Itoa(len(j.Accepted)) + "/"
		for _, e := range []edit{{at + "code", code}, {at + "path", path}, {at + "reason", reason}} {
			if e.text == "" && e.path == at+"path" {
				continue
			}
			if f := j.Set(e.path, e.text); f != nil {
				return f
			}
		}
		return nil
	})
}
