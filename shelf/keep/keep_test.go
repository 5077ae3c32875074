package keep_test

import (
	"context"
	"errors"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"plashet/demo"
	"plashet/internal/pgtest"
	"plashet/job"
	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/store"
	"plashet/store/memory"
	"plashet/store/sqldb"
)

func TestMain(m *testing.M) { pgtest.Main(m) }

var day = time.Date(2026, 5, 14, 8, 0, 0, 0, time.UTC)

func change(what string) store.Change { return store.Change{Who: "Ann", When: day, What: what} }

// The same suite on memory, SQLite and PostgreSQL.
func TestShelves(t *testing.T) {
	open := func(t *testing.T, address string) store.Store {
		s, err := sqldb.Open(context.Background(), address)
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { _ = s.Close() })
		return s
	}
	for name, fresh := range map[string]func(t *testing.T) store.Store{
		"memory":   func(*testing.T) store.Store { return memory.New() },
		"SQLite":   func(t *testing.T) store.Store { return open(t, "sqlite:"+filepath.Join(t.TempDir(), "x.db")) },
		"Postgres": func(t *testing.T) store.Store { pgtest.Need(t); return open(t, pgtest.Database(t)) },
	} {
		t.Run(name, func(t *testing.T) {
			prices(t, fresh(t))
			pumps(t, fresh(t))
		})
	}
}

func prices(t *testing.T, s store.Store) {
	ctx := context.Background()
	list, rev, err := keep.Prices(ctx, s)
	if err != nil || rev.Number != 0 || len(list.List) != 0 {
		t.Fatal("an empty store has prices", err)
	}
	list.List = append(list.List, shelf.Price{Item: "elbow 90, 2", Amount: "3.15", Currency: "USD"})
	if rev, err = keep.SavePrices(ctx, s, 0, list, change("one price")); err != nil || rev.Number != 1 {
		t.Fatal(rev.Number, err)
	}
	list.List[0].Amount = "3.40"
	if _, err = keep.SavePrices(ctx, s, 1, list, change("dearer")); err != nil {
		t.Fatal(err)
	}
	var stale *store.Stale
	if _, err = keep.SavePrices(ctx, s, 1, list, change("late")); !errors.As(err, &stale) || stale.Newest.Number != 2 {
		t.Fatal("a save upon an old state was taken", err)
	}
	if list, rev, err = keep.Prices(ctx, s); err != nil || rev.Number != 2 || rev.What != "dearer" || rev.Who != "Ann" || list.List[0].Amount != "3.40" {
		t.Fatalf("%+v %v", rev, err)
	}
	first, err := s.At(ctx, keep.PricesID, 1)
	if err != nil {
		t.Fatal(err)
	}
	if old, err := keep.PricesAt(first); err != nil || old.List[0].Amount != "3.15" {
		t.Fatal("the state before is not what it was", err)
	}
	if _, err := keep.Of(ctx, s, keep.PricesID); !errors.Is(err, store.ErrNone) {
		t.Error("a list of prices was given as a pump", err)
	}
	if _, err := s.Put(ctx, store.Prices, "other", 0, store.Change{When: day, Data: []byte(`{"format":"plashet prices","version":1,"prices":[],"more":1}`)}); err != nil {
		t.Fatal(err)
	}
	if rev, err = s.Get(ctx, "other"); err != nil {
		t.Fatal(err)
	}
	if _, err := keep.PricesAt(rev); !errors.Is(err, keep.ErrForm) {
		t.Error("a field that there is not was passed over", err)
	}
}

func pumps(t *testing.T, s store.Store) {
	ctx := context.Background()
	whole := &job.Job{Units: "us"}
	whole.Site.Currency = "USD"
	list, _, faults := job.ReadShelf(demo.Shelf(), whole)
	if len(faults) > 0 || len(list) < 10 {
		t.Fatal(len(list), faults)
	}
	whole.Pumps = list
	for i := range list {
		j, f := shelf.NewPump(list[i].Name, "us", "USD")
		if f == nil {
			_, f = shelf.CopyPump(j, "/pumps/0", whole, "/pumps/"+string(rune('0'+i%10)))
		}
		if f != nil {
			t.Fatal(f)
		}
		if _, err := keep.SavePump(ctx, s, "p"+list[i].Name, 0, j, change("put there")); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := s.Put(ctx, store.Pumps, "broken", 0, store.Change{When: day, Data: []byte("{"), Summary: store.Summary{Name: "broken"}}); err != nil {
		t.Fatal(err)
	}
	got, unread, more, err := keep.Pumps(ctx, s, "", false, 1000)
	if err != nil || len(got) != len(list) || unread != 1 || more {
		t.Fatal(len(got), unread, more, err)
	}
	for i := 1; i < len(got); i++ {
		if strings.ToLower(got[i-1].Job.Name) > strings.ToLower(got[i].Job.Name) {
			t.Error("not by name:", got[i-1].Job.Name, got[i].Job.Name)
		}
	}
	if few, _, more, err := keep.Pumps(ctx, s, "", false, 3); err != nil || len(few) != 3 || !more {
		t.Error(len(few), more, err)
	}
	one := got[0]
	if _, err := s.Archive(ctx, one.Rev.ID, 1, true, store.Change{When: day, Data: one.Rev.Data, Summary: one.Rev.Summary}); err != nil {
		t.Fatal(err)
	}
	if left, _, _, err := keep.Pumps(ctx, s, "", false, 1000); err != nil || len(left) != len(list)-1 {
		t.Error(len(left), err)
	}
	// A row for a pump that is there changes what it says and keeps the rest.
	table, f := shelf.ReadTable([]byte("Name,Flow (gpm),Head (ft),Price USD\n" + got[1].Job.Name + ",0,20,99\n" + got[1].Job.Name + ",40,0,\nfresh,0,3,\nfresh,9,0,\n"))
	if f != nil {
		t.Fatal(f)
	}
	rows, faults := shelf.ReadPumps(table, shelf.Guess(table, shelf.PumpFields()))
	steps, f := keep.Plan(got, rows)
	if f != nil || len(faults) > 0 || len(steps) != 2 || steps[0].ID != got[1].Rev.ID || steps[0].Base != 1 || len(steps[0].Differs) == 0 || steps[1].ID != "" {
		t.Fatalf("%+v %v %v", steps, f, faults)
	}
	p, old := steps[0].Job.Pumps[0], got[1].Job.Pumps[0]
	if len(p.Curve) != 2 || p.Price.Text != "99" || p.Volts != old.Volts || p.Note != old.Note || old.Price.Text == "99" {
		t.Errorf("%+v", p)
	}
}
