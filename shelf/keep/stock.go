package keep

import (
	"context"

	"plashet/job"
	"plashet/shelf"
	"plashet/store"
)

// Stock is the shelf of pumps made ready for one job to choose from.
type Stock struct {
	Pumps  []job.Pump
	Ill    map[int]bool // by index, those that were not read whole
	From   []job.Taken  // of each, where it stands on the shelf
	Unread int          // pumps that cannot be read at all, and are left out
	More   bool         // there are more than most
}

// StockFor gives the pumps of the shelf, at most so many, in the units and the
// currency of a job: each as it would be if the job took it, so that a price in
// another currency is left out. Errors as Pumps.
func StockFor(ctx context.Context, s store.Store, j *job.Job, most int) (Stock, error) {
	list, unread, more, err := Pumps(ctx, s, "", false, most)
	if err != nil {
		return Stock{}, err
	}
	out := Stock{Ill: map[int]bool{}, Unread: unread, More: more}
	for i := range list {
		p := &list[i]
		own := job.Job{Format: j.Format, Version: j.Version, Units: j.Units}
		own.Site.Currency = j.Site.Currency
		_, f := shelf.CopyPump(&own, "/pumps/0", p.Job, "/pumps/0")
		if len(own.Pumps) == 0 {
			own.Pumps = []job.Pump{{Name: p.Job.Name}}
		}
		if f != nil || job.IllPumps(p.Faults)[0] {
			out.Ill[len(out.Pumps)] = true
		}
		out.Pumps = append(out.Pumps, own.Pumps[0])
		out.From = append(out.From, job.Taken{Shelf: p.Rev.ID, State: p.Rev.Number})
	}
	return out, nil
}

// State tells the state of the whole shelf of pumps without reading them: it
// changes with every pump that comes, goes or changes. Count is how many stand on it.
func State(ctx context.Context, s store.Store) (last int64, count int, err error) {
	q := store.Query{Kind: store.Pumps, Limit: 500}
	for {
		found, more, err := s.List(ctx, q)
		if err != nil {
			return 0, 0, err
		}
		for _, e := range found {
			last = max(last, e.Cursor)
			q.Before = e.Cursor
		}
		if count += len(found); !more || len(found) == 0 {
			return last, count, nil
		}
	}
}
