// Package keep puts the shelves into a store and takes them out: one document
// for each pump, one for the list of prices. It decides nothing about who may do
// what and knows no sentences; what a save is to be called comes with it.
package keep

import (
	"context"
	"errors"
	"slices"
	"strings"

	"plashet/engine/trace"
	"plashet/job"
	"plashet/shelf"
	"plashet/store"
)

// PricesID is the identity of the list of prices.
const PricesID = "prices"

// ErrForm tells that what is kept cannot be read as what it should be.
var ErrForm = errors.New("the shelf holds what is no shelf")

// Prices gives the list of prices and its newest revision; an empty list with
// revision 0 where there is none yet.
func Prices(ctx context.Context, s store.Store) (*shelf.Prices, store.Revision, error) {
	rev, err := s.Get(ctx, PricesID)
	switch {
	case errors.Is(err, store.ErrNone):
		return shelf.NewPrices(), store.Revision{}, nil
	case err != nil:
		return nil, rev, err
	}
	list, err := PricesAt(rev)
	return list, rev, err
}

// PricesAt reads the list that a revision holds.
func PricesAt(rev store.Revision) (*shelf.Prices, error) {
	list, f := shelf.DecodePrices(rev.Data)
	if f != nil || rev.Kind != store.Prices {
		return nil, ErrForm
	}
	return list, nil
}

// SavePrices saves the list upon base. Errors as the store's Put.
func SavePrices(ctx context.Context, s store.Store, base int, list *shelf.Prices, c store.Change) (store.Revision, error) {
	data, err := list.Encode()
	if err != nil {
		return store.Revision{}, err
	}
	c.Data, c.Summary = data, store.Summary{Name: PricesID}
	return s.Put(ctx, store.Prices, PricesID, base, c)
}

// Pump is a pump of the shelf with its newest revision.
type Pump struct {
	Rev    store.Revision
	Job    *job.Job // holds the pump alone
	Faults []trace.Fault
}

// Of gives a pump by its identity. The errors are the store's, and ErrForm.
func Of(ctx context.Context, s store.Store, id string) (Pump, error) {
	rev, err := s.Get(ctx, id)
	if err != nil {
		return Pump{}, err
	}
	return At(rev)
}

// At reads the pump that a revision holds.
func At(rev store.Revision) (Pump, error) {
	if rev.Kind != store.Pumps {
		return Pump{}, store.ErrNone
	}
	j, faults := job.Read(rev.Data)
	if j == nil || len(j.Pumps) == 0 {
		return Pump{}, ErrForm
	}
	return Pump{rev, j, faults}, nil
}

// Pumps gives the pumps of the shelf, or those put aside, by name; text narrows
// them to names that hold it. A pump whose document cannot be read is left out
// and counted.
func Pumps(ctx context.Context, s store.Store, text string, aside bool, most int) (pumps []Pump, unread int, more bool, err error) {
	q := store.Query{Kind: store.Pumps, Text: text, Archived: aside, Limit: 500}
	for len(pumps) < most {
		found, further, err := s.List(ctx, q)
		if err != nil {
			return nil, 0, false, err
		}
		for _, e := range found {
			if q.Before = e.Cursor; len(pumps) == most {
				further = true
				break
			}
			p, err := Of(ctx, s, e.ID)
			switch {
			case errors.Is(err, ErrForm), errors.Is(err, store.ErrDamaged):
				unread++
			case errors.Is(err, store.ErrNone), errors.Is(err, store.ErrGone): // gone meanwhile
			case err != nil:
				return nil, 0, false, err
			default:
				pumps = append(pumps, p)
			}
		}
		if more = further; !further || len(found) == 0 {
			break
		}
	}
	slices.SortStableFunc(pumps, func(a, b Pump) int { return strings.Compare(store.Fold(a.Job.Name), store.Fold(b.Job.Name)) })
	return pumps, unread, more, nil
}

// SavePump saves a pump upon base. Errors as the store's Put.
func SavePump(ctx context.Context, s store.Store, id string, base int, j *job.Job, c store.Change) (store.Revision, error) {
	data, err := job.Encode(j)
	if err != nil {
		return store.Revision{}, err
	}
	c.Data, c.Summary = data, store.Summary{Name: j.Name, Place: j.Pumps[0].Note}
	return s.Put(ctx, store.Pumps, id, base, c)
}

// Step is what a row of a file does to the shelf of pumps.
type Step struct {
	Line    int
	Job     *job.Job // as it will be
	ID      string   // of the pump that is there already; "" for a new one
	Base    int
	Differs []shelf.Difference // what changes of one that is there
}

// Plan holds rows against the shelf: a pump of the same name is changed and
// keeps what the rows do not say, any other is new.
func Plan(pumps []Pump, rows []shelf.PumpRow) ([]Step, *trace.Fault) {
	byName := map[string]*Pump{}
	for i := range pumps {
		byName[store.Fold(pumps[i].Job.Name)] = &pumps[i]
	}
	var out []Step
	for _, r := range rows {
		old := byName[store.Fold(r.Job.Name)]
		if old == nil {
			out = append(out, Step{Line: r.Line, Job: r.Job})
			continue
		}
		next, f := shelf.Update(old.Job, r.Job)
		if f != nil {
			return nil, f
		}
		out = append(out, Step{Line: r.Line, Job: next, ID: old.Rev.ID, Base: old.Rev.Number, Differs: shelf.Differs(old.Job, "/pumps/0", next, "/pumps/0")})
	}
	return out, nil
}
