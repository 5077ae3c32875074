package app

import (
	"context"
	"net/http"
	"net/url"
	"slices"
	"strconv"

	"plashet/answer"
	"plashet/demo"
	"plashet/engine/design"
	"plashet/engine/size"
	"plashet/job"
	"plashet/shelf/keep"
)

// Shelves to choose from.
const (
	shelfOwn      = "own"      // the job's own pumps
	shelfShared   = "shared"   // the pumps that all jobs share
	shelfInvented = "invented" // to try it out
)

var chooseShelves = []string{shelfOwn, shelfShared, shelfInvented}

// pairings are the ways two pumps may run, by the word of the command line.
var pairings = map[string]design.Pairs{"one": design.PairsNone, "alike": design.PairsAlike, "any": design.PairsAny}

const (
	// fewPumps are compared at once; more are compared beside the pages.
	fewPumps = 20
	// mostShelf is how many pumps of a shelf are compared at all.
	mostShelf = 5000
	// mostAlone is how many where nothing can be done beside the pages.
	mostAlone = 200
)

// chosen is a choice that is done, in nobody's language.
type chosen struct {
	choice *design.Choice
	from   []job.Taken // of each pump of the shelf, where it stands; nil for other shelves
	unread int         // pumps of the shelf that cannot be read
	more   bool        // and there are some that were not looked at
	err    error       // the shelf could not be read
}

// chooseTake is a pump of the shelf that the job can take.
type chooseTake struct{ Shelf, Name string }

type chooseBody struct {
	ID, Shelf, Pairs string
	Shelves, Ways    []string
	Base             int
	Count            int // pumps on the shelf that is asked for
	Beside           beside
	Found            bool
	Doc              answer.ChosenDocument
	Take             []chooseTake // by pump of the front, each once
	Unread           int
	More             bool
}

// compared reads which shelf a request is about and how pumps may run.
func compared(q url.Values) (shelf, pairs string) {
	shelf, pairs = q.Get("shelf"), q.Get("pumps")
	if !slices.Contains(chooseShelves, shelf) {
		shelf = shelfOwn
	}
	if _, ok := pairings[pairs]; !ok {
		pairs = "alike"
	}
	return shelf, pairs
}

// choose compares the pumps of a shelf for what the job wants: a few at once,
// many beside the page.
func (a *app) choose(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	b := chooseBody{ID: o.rev.ID, Base: o.rev.Number, Shelves: chooseShelves, Ways: []string{"one", "alike", "any"}}
	b.Shelf, b.Pairs = compared(r.URL.Query())
	of, do, err := a.comparing(r.Context(), o, &b)
	if err != nil {
		return err
	}
	var found any
	kind := b.kind()
	switch {
	case b.Count <= fewPumps || a.Runs == nil:
		found = do(r.Context(), func(string) {})
	default:
		if b.Beside, found = a.lookOf(kind, o, of); !b.Beside.Running && (b.Beside.Stale || found == nil && !b.Beside.Failed) {
			if !a.beginOf(kind, o, of, do) {
				return a.refuse(http.StatusServiceUnavailable, "app.error.busy")
			}
			b.Beside, found = a.lookOf(kind, o, of)
		}
	}
	if x, ok := found.(*chosen); ok {
		if x.err != nil {
			return x.err
		}
		b.Found, b.Unread, b.More = true, x.unread, x.more
		b.Doc = answer.BuildChosen(x.choice, nil, a.Language)
		b.Take = takes(x)
	}
	a.show(w, r, http.StatusOK, "choose", a.say("app.choose.title"), a.heading(o, "pump"), b)
	return nil
}

// comparing gives the work of a comparison, and what it stands on.
func (a *app) comparing(ctx context.Context, o *opened, b *chooseBody) (of string, do Work, err error) {
	of = o.rev.Digest
	var last int64
	if last, b.Count, err = a.shelfSize(ctx, o.job, b.Shelf); err != nil {
		return "", nil, err
	}
	if b.Shelf == shelfShared { // what changes on the shelf makes it stale too
		of += " " + strconv.FormatInt(last, 10)
	}
	shelf, want := b.Shelf, design.Want{Pairs: pairings[b.Pairs]}
	return of, func(ctx context.Context, tell func(string)) any {
		x := a.choosing(ctx, o, shelf, want, func(g size.Progress) { tell(answer.ChooseProgress(g, a.Language)) })
		return &x
	}, nil
}

// shelfSize tells how many pumps a shelf has, and the state it is in.
func (a *app) shelfSize(ctx context.Context, j *job.Job, shelf string) (last int64, count int, err error) {
	switch shelf {
	case shelfShared:
		return keep.State(ctx, a.Store)
	case shelfInvented:
		pumps, _, _ := job.ReadShelf(demo.Shelf(), j)
		return 0, len(pumps), nil
	}
	return 0, len(j.Pumps), nil
}

// choosing reads a shelf and compares its pumps.
func (a *app) choosing(ctx context.Context, o *opened, shelf string, want design.Want, tell func(size.Progress)) (x chosen) {
	most := mostShelf
	if a.Runs == nil {
		most = mostAlone
	}
	pumps, ill := o.job.Pumps, job.IllPumps(o.faults)
	switch shelf {
	case shelfInvented:
		pumps, ill, _ = job.ReadShelf(demo.Shelf(), o.job)
	case shelfShared:
		// Who stops the comparison still gets told what shelf it was.
		stock, err := keep.StockFor(context.WithoutCancel(ctx), a.Store, o.job, most)
		if err != nil {
			return chosen{err: err}
		}
		pumps, ill, x.from, x.unread, x.more = stock.Pumps, stock.Ill, stock.From, stock.Unread, stock.More
	}
	x.more = x.more || len(pumps) > most
	x.choice = design.Choose(ctx, a.Book, o.job, pumps[:min(len(pumps), most)], ill, want, tell, o.faults...)
	return x
}

// takes lists the pumps of the best designs that stand on the shelf, each once.
func takes(x *chosen) (list []chooseTake) {
	if x.from == nil || x.choice.Result == nil {
		return nil
	}
	seen := map[int]bool{}
	for i := range x.choice.Result.Front {
		for _, p := range x.choice.Result.Front[i].Pumps {
			if n := x.choice.Of[p]; !seen[n] {
				seen[n] = true
				list = append(list, chooseTake{x.from[n].Shelf, x.choice.Problem.Pumps[slices.Index(x.choice.Of, n)].Name})
			}
		}
	}
	return list
}

// stopChoose ends the comparison with the best so far.
func (a *app) stopChoose(w http.ResponseWriter, r *http.Request) error {
	return a.turnChoose(w, r, func(o *opened, b *chooseBody) error {
		if a.Runs != nil {
			a.Runs.Stop(key(b.kind(), o))
		}
		return nil
	})
}

// againChoose begins it anew, where it was stopped or failed.
func (a *app) againChoose(w http.ResponseWriter, r *http.Request) error {
	return a.turnChoose(w, r, func(o *opened, b *chooseBody) error {
		of, do, err := a.comparing(r.Context(), o, b)
		if err == nil && !a.beginOf(b.kind(), o, of, do) {
			err = a.refuse(http.StatusServiceUnavailable, "app.error.busy")
		}
		return err
	})
}

func (b *chooseBody) kind() string { return "choose " + b.Shelf + " " + b.Pairs }

// turnChoose does something with the comparison that a request names, and goes
// back to its page.
func (a *app) turnChoose(w http.ResponseWriter, r *http.Request, do func(o *opened, b *chooseBody) error) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	var b chooseBody
	b.Shelf, b.Pairs = compared(r.URL.Query())
	if err := do(o, &b); err != nil {
		return err
	}
	see(w, r, "/jobs/"+o.rev.ID+"/choose?"+url.Values{"shelf": {b.Shelf}, "pumps": {b.Pairs}}.Encode())
	return nil
}
