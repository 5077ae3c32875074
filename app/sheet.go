package app

import (
	"context"
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"plashet/answer"
	"plashet/paper"
	"plashet/scan"
	"plashet/store"
)

const (
	mostFound  = 5  // jobs told of that hold the same state: copies of one another
	mostListed = 12 // changes told in full
)

// sheetBody is the page that tells whether a printed sheet is still good.
type sheetBody struct {
	Code  string // as it was typed
	Error string
	Found []oldSheet
}

// oldSheet is what became of the state that a sheet was printed from.
type oldSheet struct {
	ID, Name  string
	Was, Now  int
	When, Who string   // of the state on the sheet
	Newest    bool     // nothing changed since
	Gone      bool     // the job was deleted
	Archived  bool     // it was put aside
	Changed   []string // since, in words
	More      int      // further changes
	Moved     string   // what they move in the answer
	Pieces    []string // what would be cut or marked otherwise
	NotToCut  bool     // nothing of the job is to be cut now
	Unread    bool     // the state itself cannot be read any more
}

// sheetPage asks for a sheet's code, and tells of the one that the address has.
func (a *app) sheetPage(w http.ResponseWriter, r *http.Request) error {
	q := r.URL.Query()
	code := strings.TrimSpace(q.Get("code"))
	if code == "" && (q.Has("d") || q.Has("r")) {
		code = "/sheet?" + r.URL.RawQuery
	}
	if code == "" {
		a.show(w, r, http.StatusOK, "sheet", a.say("app.printed.title"), nil, sheetBody{})
		return nil
	}
	return a.tellSheet(w, r, code)
}

// sheetScanned reads the code off a photo of a sheet.
func (a *app) sheetScanned(w http.ResponseWriter, r *http.Request) error {
	data, err := a.upload(r, "photo")
	if err != nil {
		return err
	}
	text, err := scan.Read(data)
	if err != nil {
		code := "app.printed.nocode"
		switch {
		case errors.Is(err, scan.ErrPicture):
			code = "app.printed.nopicture"
		case errors.Is(err, scan.ErrLarge):
			code = "app.printed.large"
		}
		a.show(w, r, http.StatusUnprocessableEntity, "sheet", a.say("app.printed.title"), nil, sheetBody{Error: a.say(code)})
		return nil
	}
	return a.tellSheet(w, r, text)
}

// fromSheet sends an address that stands in the code of a sheet on to what is told
// of it.
func (a *app) fromSheet(h func(http.ResponseWriter, *http.Request) error) func(http.ResponseWriter, *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		q := r.URL.Query()
		if !q.Has("r") || !q.Has("d") {
			return h(w, r)
		}
		see(w, r, "/sheet?"+url.Values{"j": {r.PathValue("id")}, "r": {q.Get("r")}, "d": {q.Get("d")}}.Encode())
		return nil
	}
}

func (a *app) tellSheet(w http.ResponseWriter, r *http.Request, code string) error {
	const shown = 200 // of what was typed
	b := sheetBody{Code: code[:min(len(code), shown)]}
	b.Code = strings.ToValidUTF8(b.Code, "")
	status := http.StatusOK
	c, ok := paper.ReadCode(code)
	if !ok || c.Digest == "" {
		b.Error, status = a.say("app.printed.foreign"), http.StatusUnprocessableEntity
	} else {
		found, err := a.statesOf(r.Context(), c)
		if err != nil {
			return err
		}
		for _, s := range found {
			o, err := a.oldSheet(r, s)
			if err != nil {
				return err
			}
			b.Found = append(b.Found, o)
		}
		if len(found) == 0 {
			b.Error, status = a.say("app.printed.unknown"), http.StatusNotFound
		}
	}
	a.show(w, r, status, "sheet", a.say("app.printed.title"), nil, b)
	return nil
}

// statesOf finds the revisions that a code tells of: in the job it names, else in
// all jobs.
func (a *app) statesOf(ctx context.Context, c paper.Code) ([]store.Revision, error) {
	if c.ID != "" {
		return a.stateIn(ctx, c.ID, c)
	}
	found, err := a.Store.States(ctx, store.Job, c.Digest, mostFound)
	if err != nil {
		return nil, err
	}
	for i, s := range found { // of several revisions alike the one that the sheet names
		if c.Revision < 1 || c.Revision >= s.Number {
			continue
		}
		rev, err := a.Store.At(ctx, s.ID, c.Revision)
		switch {
		case errors.Is(err, store.ErrNone), errors.Is(err, store.ErrDamaged):
		case err != nil:
			return nil, err
		case !rev.Deleted && rev.Digest == s.Digest:
			found[i] = rev
		}
	}
	return found, nil
}

// stateIn finds the revision of a job that has the code's digits: the one of its
// number, else the newest.
func (a *app) stateIn(ctx context.Context, id string, c paper.Code) ([]store.Revision, error) {
	past, err := a.Store.History(ctx, id, 0, mostHistory)
	if errors.Is(err, store.ErrNone) || errors.Is(err, store.ErrName) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	if len(past) > 0 && past[0].Kind != store.Job {
		return nil, nil
	}
	if n := len(past); n > 0 && c.Revision > 0 && c.Revision < past[n-1].Number { // older than what was read at once
		rev, err := a.Store.At(ctx, id, c.Revision)
		if err != nil && !errors.Is(err, store.ErrNone) && !errors.Is(err, store.ErrDamaged) {
			return nil, err
		}
		if err == nil {
			past = append(past, rev)
		}
	}
	is := func(x store.Revision) bool { return !x.Deleted && strings.HasPrefix(x.Digest, c.Digest) }
	if i := slices.IndexFunc(past, func(x store.Revision) bool { return is(x) && x.Number == c.Revision }); i >= 0 {
		return past[i : i+1], nil
	}
	if i := slices.IndexFunc(past, is); i >= 0 {
		return past[i : i+1], nil
	}
	return nil, nil
}

// oldSheet tells what became of a state.
func (a *app) oldSheet(r *http.Request, was store.Revision) (oldSheet, error) {
	o := oldSheet{ID: was.ID, Was: was.Number, When: was.When.Format("2 Jan 2006 15:04"), Who: was.Who}
	old, err := a.Store.At(r.Context(), was.ID, was.Number)
	switch {
	case errors.Is(err, store.ErrDamaged), errors.Is(err, store.ErrNone):
		o.Unread = true
	case err != nil:
		return o, err
	}
	now, err := a.Store.Get(r.Context(), was.ID)
	switch {
	case errors.Is(err, store.ErrGone):
		o.Gone, o.Name = true, now.Summary.Name
		return o, nil
	case err != nil:
		return o, err
	}
	o.Now, o.Name, o.Archived, o.Newest = now.Number, now.Summary.Name, now.Archived, now.Digest == was.Digest
	after := a.solve(now.Digest, now.Data)
	o.NotToCut = after.doc.NotToCut
	if o.Newest || o.Unread {
		return o, nil
	}
	before := a.solve(old.Digest, old.Data)
	o.Changed = a.differences(before.job, after.job)
	if n := len(o.Changed); n > mostListed {
		o.Changed, o.More = o.Changed[:mostListed], n-mostListed
	}
	o.Moved = a.moved(before, after.job)
	o.Pieces = a.recut(&before.doc, &after.doc)
	o.Newest = len(o.Changed)+len(o.Pieces) == 0 // other bytes that say the same
	return o, nil
}

// recut tells in words which pieces would now be cut, marked or joined otherwise
// than before, which are gone and which are new, and which rolls are others.
func (a *app) recut(before, after *answer.Document) []string {
	var said []string
	tell := func(code, mark, was, now string) {
		said = append(said, a.say("app.printed.piece."+code, "mark", mark, "was", was, "now", now))
	}
	old, now := cutsOf(before), cutsOf(after)
	for _, x := range old {
		y, ok := now.find(x.mark)
		switch {
		case !ok:
			tell("gone", x.mark, "", "")
		case x.cut != y.cut:
			tell("cut", x.mark, x.cut, y.cut)
		case x.marks != y.marks:
			tell("marks", x.mark, x.marks, y.marks)
		case x.ends != y.ends:
			tell("ends", x.mark, x.ends, y.ends)
		}
	}
	for _, y := range now {
		if _, ok := old.find(y.mark); !ok {
			tell("new", y.mark, "", y.cut)
		}
	}
	return said
}

// cutState is what a sheet tells to do with a piece or an elbow.
type cutState struct{ mark, cut, marks, ends string }

type cutStates []cutState

func (list cutStates) find(mark string) (cutState, bool) {
	i := slices.IndexFunc(list, func(x cutState) bool { return x.mark == mark })
	if i < 0 {
		return cutState{}, false
	}
	return list[i], true
}

// cutsOf gathers them from an answer: the pieces of the assembly, those that are
// cut beside, each by its mark and how many, and the rolls.
func cutsOf(d *answer.Document) cutStates {
	var list cutStates
	for _, p := range d.Pieces {
		if !p.Made {
			list = append(list, cutState{p.Mark, p.Cut.Text, p.Marks[0].Text + ", " + p.Marks[1].Text, p.From + " – " + p.To})
		}
	}
	laid := len(list)
	count := map[string]int{}
	for _, c := range d.Cutting {
		for _, b := range c.Bars {
			for _, x := range b.Cuts {
				if _, ok := list[:laid].find(x.Mark); ok {
					continue
				}
				if _, ok := list.find(x.Mark); !ok {
					list = append(list, cutState{mark: x.Mark, cut: x.Length.Text})
				}
				count[x.Mark]++
			}
		}
	}
	for i := range list[laid:] {
		list[laid+i].ends = strconv.Itoa(count[list[laid+i].mark]) + "×"
	}
	for _, x := range d.Rolls {
		list = append(list, cutState{mark: x.Mark, marks: x.Arc.Text + " " + x.Angle.Text})
	}
	return list
}
