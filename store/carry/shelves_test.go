package carry_test

import (
	"bytes"
	"fmt"
	"reflect"
	"testing"
	"time"

	"plashet/demo"
	"plashet/internal/pgtest"
	"plashet/job"
	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/store"
	"plashet/store/carry"
	"plashet/store/sqldb"
)

// stocked fills a store as an office does: the example jobs with several states
// each, a shelf of pumps of which one was changed, one put aside and one taken
// away, and a list of prices in several states.
func stocked(t *testing.T, s store.Store) {
	t.Helper()
	rev := must[store.Revision](t)
	at := time.Date(2026, 3, 1, 7, 0, 0, 0, time.UTC)
	c := func(what string, data []byte) store.Change {
		at = at.Add(time.Minute + time.Microsecond)
		return store.Change{Who: "Añn", When: at, What: what, Data: data, Summary: store.Summary{Name: what, Place: "½", Stage: "cut", Worst: "x", Weight: 2}}
	}
	for _, name := range demo.Names() {
		j, _ := job.Read(demo.Job(name))
		for n := range 4 {
			if f := j.Set("/note", fmt.Sprint("state ", n+1)); f != nil {
				t.Fatal(f)
			}
			data, err := job.Encode(j)
			if err != nil {
				t.Fatal(err)
			}
			change := c("state", data)
			if n == 3 {
				change.BackTo = 2
			}
			rev(s.Put(ctx, store.Job, name, n, change))
		}
		if err := s.SetPlace(ctx, name, "glue", []byte("3")); err != nil {
			t.Fatal(err)
		}
	}
	whole := &job.Job{Units: "us"}
	whole.Site.Currency = "USD"
	whole.Pumps, _, _ = job.ReadShelf(demo.Shelf(), whole)
	for i := range whole.Pumps {
		p, f := shelf.NewPump(whole.Pumps[i].Name, "us", "USD")
		if f == nil {
			_, f = shelf.CopyPump(p, "/pumps/0", whole, fmt.Sprint("/pumps/", i))
		}
		if f != nil {
			t.Fatal(f)
		}
		id := fmt.Sprint("pump", i)
		rev(keep.SavePump(ctx, s, id, 0, p, c("kept", nil)))
		if f := p.Set("/pumps/0/price", "999"); f != nil {
			t.Fatal(f)
		}
		switch i % 4 {
		case 1:
			rev(keep.SavePump(ctx, s, id, 1, p, c("dearer", nil)))
		case 2:
			r := rev(s.Get(ctx, id))
			rev(s.Archive(ctx, id, 1, true, c("aside", r.Data)))
		case 3:
			rev(s.Delete(ctx, id, 1, c("away", nil)))
		}
	}
	list := shelf.NewPrices()
	for n := range 5 {
		list.List = append(list.List, shelf.Price{Item: fmt.Sprint("elbow ", n), Amount: "3.15", Currency: "USD", Counter: "pipe"})
		rev(keep.SavePrices(ctx, s, n, list, c("one more", nil)))
	}
}

// alike walks through two stores and compares everything that can be read of
// them, without the digests that a move goes by.
func alike(t *testing.T, a, b store.Store) (revisions int) {
	t.Helper()
	all := must[[]store.Entry](t)(a.Since(ctx, 0, 0))
	if n := len(must[[]store.Entry](t)(b.Since(ctx, 0, 0))); n != len(all) {
		t.Fatalf("%d documents became %d", len(all), n)
	}
	for _, e := range all {
		for n := 1; n <= e.Number; n++ {
			x, y := must[store.Revision](t)(a.At(ctx, e.ID, n)), must[store.Revision](t)(b.At(ctx, e.ID, n))
			if !x.When.Equal(y.When) || !bytes.Equal(x.Data, y.Data) {
				t.Fatalf("%s, state %d: other bytes or another time", e.ID, n)
			}
			x.When, y.When, x.Data, y.Data = time.Time{}, time.Time{}, nil, nil
			if !reflect.DeepEqual(x, y) {
				t.Errorf("%s, state %d: %+v became %+v", e.ID, n, x, y)
			}
			revisions++
		}
		if _, err := b.At(ctx, e.ID, e.Number+1); err == nil {
			t.Errorf("%s has a state more", e.ID)
		}
		x, y := must[[]string](t)(a.Places(ctx, e.ID)), must[[]string](t)(b.Places(ctx, e.ID))
		if !reflect.DeepEqual(x, y) {
			t.Errorf("%s: kept beside it %v became %v", e.ID, x, y)
		}
	}
	for _, aside := range []bool{false, true} {
		x, _, _, err := keep.Pumps(ctx, a, "", aside, 1000)
		y, _, _, err2 := keep.Pumps(ctx, b, "", aside, 1000)
		if err != nil || err2 != nil || len(x) == 0 || len(x) != len(y) {
			t.Fatal(len(x), len(y), err, err2)
		}
		for i := range x {
			if !reflect.DeepEqual(x[i].Job, y[i].Job) {
				t.Errorf("pump %s is another", x[i].Job.Name)
			}
		}
	}
	x, r, err := keep.Prices(ctx, a)
	y, q, err2 := keep.Prices(ctx, b)
	if err != nil || err2 != nil || !reflect.DeepEqual(x, y) || r.Number != q.Number || r.Number != 5 {
		t.Errorf("the prices are others: %v %v", err, err2)
	}
	return revisions
}

// Jobs, both shelves and all their states go from one database to the other and
// back, into a file and out of it, and a move that was cut short goes on.
func TestMoveCarriesShelves(t *testing.T) {
	pgtest.Need(t)
	first := sqlite(t)
	stocked(t, first)
	server := must[*sqldb.Store](t)(sqldb.Open(ctx, pgtest.Database(t)))
	t.Cleanup(func() { _ = server.Close() })
	want := must[carry.Count](t)(carry.Move(ctx, first, server))
	if n := alike(t, first, server); n != want.Revisions || n < 30 {
		t.Errorf("%d states compared, %d moved", n, want.Revisions)
	}
	second := sqlite(t)
	must[carry.Count](t)(carry.Move(ctx, server, second))
	alike(t, first, second)
	var file bytes.Buffer
	must[carry.Count](t)(carry.Write(ctx, &file, second))
	third := sqlite(t)
	if got := must[carry.Count](t)(carry.Move(ctx, must[store.Store](t)(carry.Read(ctx, &file)), third)); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	alike(t, first, third)
	// Somebody goes on at work; a second move takes what is new.
	list, r, err := keep.Prices(ctx, second)
	if err != nil {
		t.Fatal(err)
	}
	list.List[0].Amount = "4.00"
	must[store.Revision](t)(keep.SavePrices(ctx, second, r.Number, list, store.Change{When: time.Unix(9, 0), What: "dearer"}))
	got := must[carry.Count](t)(carry.Move(ctx, second, server))
	if got.Revisions != want.Revisions+1 || got.Digest == want.Digest {
		t.Errorf("%+v after %+v", got, want)
	}
	if now, r, err := keep.Prices(ctx, server); err != nil || r.Number != 6 || now.List[0].Amount != "4.00" {
		t.Errorf("the new state is not there: %d %v", r.Number, err)
	}
}
