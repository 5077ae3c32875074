package app

import (
	"errors"
	"net/http"
	"strconv"

	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/store"
)

// usualCurrency is that of the first price on the shelf; "" while there is none.
func (a *app) usualCurrency(r *http.Request) string {
	if list, _, err := keep.Prices(r.Context(), a.Store); err == nil && len(list.List) > 0 {
		return list.List[0].Currency
	}
	return ""
}

// priceShelf imports prices: all of a file is one save, so that one undo takes
// it back.
func (a *app) priceShelf() importing {
	return importing{
		At: "/prices", Title: a.say("app.csv.prices"), Lead: a.say("app.csv.prices.lead"), fields: shelf.PriceFields(),
		look: func(r *http.Request, t *shelf.Table, m shelf.Mapping) (o outcome, err error) {
			list, _, err := keep.Prices(r.Context(), a.Store)
			if err != nil {
				return o, err
			}
			rows, faults := shelf.ReadPrices(t, m)
			a.rows(&o, faults)
			_, moves, f := list.Take(rows)
			if f != nil {
				o.Faults = append(o.Faults, rowFault{0, a.rowText(*f)})
				return o, nil
			}
			o.New, o.Changed, o.Same = len(moves.New), len(moves.Changed), moves.Same
			for _, c := range moves.Changed {
				o.tell(a.say("app.csv.moves", "name", c.After.Item, "old", c.Before.Line(), "new", c.After.Line()))
			}
			for _, p := range moves.New {
				o.tell(a.say("app.csv.adds", "new", p.Line()))
			}
			return o, nil
		},
		take: func(r *http.Request, t *shelf.Table, m shelf.Mapping, name string) error {
			list, rev, err := keep.Prices(r.Context(), a.Store)
			if err != nil {
				return err
			}
			rows, _ := shelf.ReadPrices(t, m)
			next, moves, f := list.Take(rows)
			if f != nil {
				return refusal{status: http.StatusUnprocessableEntity, text: a.rowText(*f)}
			}
			if len(moves.New)+len(moves.Changed) == 0 {
				return a.nothing(errNothing)
			}
			what := a.say("app.csv.taken", "name", name, "new", strconv.Itoa(len(moves.New)), "changed", strconv.Itoa(len(moves.Changed)))
			_, err = keep.SavePrices(r.Context(), a.Store, rev.Number, next, a.change(r, what))
			return a.nothing(err)
		},
	}
}

// pumpShelf imports pumps: each pump is a save of its own.
func (a *app) pumpShelf() importing {
	plan := func(r *http.Request, t *shelf.Table, m shelf.Mapping, o *outcome) ([]keep.Step, error) {
		// Pumps put aside are met too: a row for one changes it where it lies.
		open, _, _, err := keep.Pumps(r.Context(), a.Store, "", false, shelf.MostRows)
		if err != nil {
			return nil, err
		}
		aside, _, _, err := keep.Pumps(r.Context(), a.Store, "", true, shelf.MostRows)
		if err != nil {
			return nil, err
		}
		rows, faults := shelf.ReadPumps(t, m)
		a.rows(o, faults)
		steps, f := keep.Plan(append(aside, open...), rows)
		if f != nil {
			return nil, refusal{status: http.StatusUnprocessableEntity, text: a.rowText(*f)}
		}
		return steps, nil
	}
	return importing{
		At: "/pumps", Title: a.say("app.csv.pumps"), Lead: a.say("app.csv.pumps.lead"), fields: shelf.PumpFields(),
		look: func(r *http.Request, t *shelf.Table, m shelf.Mapping) (o outcome, err error) {
			steps, err := plan(r, t, m, &o)
			for _, s := range steps {
				switch {
				case s.ID == "":
					o.New++
					o.tell(a.say("app.csv.adds", "new", s.Job.Name+": "+a.facts(s.Job)))
				case len(s.Differs) == 0:
					o.Same++
				default:
					o.Changed++
					o.tell(s.Job.Name + ": " + a.differs(s.Differs))
				}
			}
			return o, err
		},
		take: func(r *http.Request, t *shelf.Table, m shelf.Mapping, name string) error {
			steps, err := plan(r, t, m, &outcome{})
			if err != nil {
				return err
			}
			done := 0
			for _, s := range steps {
				id, what := s.ID, a.say("app.csv.pump", "name", name)
				switch {
				case id == "":
					id = a.NewID()
				case len(s.Differs) == 0:
					continue
				default:
					what = a.say("app.csv.pump.moved", "name", name, "what", a.differs(s.Differs))
				}
				_, err := keep.SavePump(r.Context(), a.Store, id, s.Base, s.Job, a.change(r, what))
				var stale *store.Stale
				if errors.As(err, &stale) { // what went before stands; the same file again does the rest
					return refusal{status: http.StatusConflict, text: a.say("app.csv.broke", "name", s.Job.Name, "done", strconv.Itoa(done))}
				}
				if err != nil {
					return err
				}
				done++
			}
			if done == 0 {
				return a.nothing(errNothing)
			}
			return nil
		},
	}
}

// differs tells what changes of a pump.
func (a *app) differs(list []shelf.Difference) string {
	text := ""
	for i, d := range list {
		if i == mostTold {
			return text + "; " + a.say("app.change.more", "count", strconv.Itoa(len(list)-i))
		}
		if i > 0 {
			text += "; "
		}
		before, after := d.Before, d.After
		if before == "" {
			before = a.say("app.shelf.nothing")
		}
		if after == "" {
			after = a.say("app.shelf.nothing")
		}
		text += a.say("app.change.set", "where", a.fieldName(d.Path), "old", before, "new", after)
	}
	return text
}
