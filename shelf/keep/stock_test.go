package keep_test

import (
	"context"
	"errors"
	"strings"
	"testing"

	"plashet/job"
	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/store"
	"plashet/store/memory"
)

// The pumps of the shelf come in the job's units and currency: a price in
// another one is left out, a pump that was not read whole is named, and the state
// changes with every change.
func TestStock(t *testing.T) {
	ctx, s := context.Background(), memory.New()
	put := func(id string, base int, data string) {
		t.Helper()
		if _, err := s.Put(ctx, store.Pumps, id, base, store.Change{When: day, Data: []byte(strings.Replace(data, `"units"`, `"name":"`+id+`","units"`, 1)), Summary: store.Summary{Name: id}}); err != nil {
			t.Fatal(err)
		}
	}
	const head = `{"format":"plashet job","version":1,"units":"metric","site":{"currency":"EUR"},"pumps":[`
	if last, n, err := keep.State(ctx, s); err != nil || last != 0 || n != 0 {
		t.Fatal(last, n, err)
	}
	put("a", 0, head+`{"name":"a","price":100,"curve":[{"flow":0,"head":5},{"flow":"8000 l/h","head":0}]}]}`)
	put("b", 0, head+`{"name":"b","price":"deep"}]}`)
	put("c", 0, `{`)
	before, n, err := keep.State(ctx, s)
	if err != nil || n != 3 || before == 0 {
		t.Fatal(before, n, err)
	}
	us := &job.Job{Format: job.FormatName, Version: job.Version, Units: "us"}
	us.Site.Currency = "USD"
	got, err := keep.StockFor(ctx, s, us, 100)
	if err != nil || len(got.Pumps) != 2 || got.Unread != 1 || got.More || len(got.From) != 2 {
		t.Fatalf("%+v %v", got, err)
	}
	if p := got.Pumps[0]; p.Name != "a" || !p.Price.IsZero() || got.From[0] != (job.Taken{Shelf: "a", State: 1}) || got.Ill[0] || len(p.Curve) != 2 || p.Curve[0].Head.SI != 5 {
		t.Errorf("%+v %v", p, got.From[0])
	}
	if !got.Ill[1] {
		t.Error("a pump that was not read whole is not named")
	}
	us.Site.Currency = "EUR"
	if got, err = keep.StockFor(ctx, s, us, 1); err != nil || len(got.Pumps) != 1 || !got.More {
		t.Fatalf("%+v %v", got, err)
	}
	if len(us.Pumps) > 0 {
		t.Error("the job was changed")
	}
	put("a", 1, head+`{"name":"a","price":120}]}`)
	after, n, err := keep.State(ctx, s)
	if err != nil || after <= before || n != 3 {
		t.Error("a change of one pump is not seen", before, after, n, err)
	}
	if p, err := shelf.NewPump("z", "us", "USD"); err != nil {
		t.Fatal(err)
	} else if _, err := keep.SavePump(ctx, s, "a", 1, p, store.Change{When: day}); !errors.As(err, new(*store.Stale)) {
		t.Error(err)
	}
}
