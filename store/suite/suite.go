// Package suite holds what package store promises as tests. Every store passes
// it: a new one calls Run from a test of its own and is done.
package suite

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"plashet/store"
)

// Run holds the stores that open makes, each empty, against the promises.
func Run(t *testing.T, open func(t *testing.T) store.Store) {
	for _, c := range []struct {
		name string
		test func(*testing.T, store.Store)
	}{
		{"Saves", saves},
		{"Stale", stale},
		{"Refuses", refuses},
		{"Archives", archives},
		{"Deletes", deletes},
		{"HistoryPages", historyPages},
		{"States", states},
		{"Undoes", undoes},
		{"Lists", lists},
		{"Searches", searches},
		{"Since", since},
		{"Places", places},
		{"Texts", texts},
		{"Large", large},
		{"OwnBytes", ownBytes},
		{"Cancelled", cancelled},
		{"Races", func(t *testing.T, s store.Store) { Race(t, s) }},
		{"SinceUnderRace", func(t *testing.T, s store.Store) { SinceUnderRace(t, s) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := open(t)
			t.Cleanup(func() {
				if err := s.Close(); err != nil {
					t.Error("close:", err)
				}
			})
			c.test(t, s)
		})
	}
}

var (
	ctx  = context.Background()
	noon = time.Date(2026, 3, 1, 12, 0, 0, 123456000, time.UTC)
)

func change(name string) store.Change {
	return store.Change{
		Who: "who " + name, When: noon, What: "what " + name, Data: []byte("data " + name),
		Summary: store.Summary{Name: name, Place: "place " + name, Stage: "stage " + name, Worst: "worst " + name, Weight: 2},
	}
}

// put saves and fails the test where that fails.
func put(t *testing.T, s store.Store, id string, base int, c store.Change) store.Revision {
	t.Helper()
	r, err := s.Put(ctx, store.Job, id, base, c)
	if err != nil {
		t.Fatalf("put %s upon %d: %v", id, base, err)
	}
	return r
}

// same holds a revision against the change it was made of.
func same(t *testing.T, r store.Revision, id string, number int, c store.Change) {
	t.Helper()
	if r.ID != id || r.Kind != store.Job || r.Number != number || r.Who != c.Who || r.What != c.What || r.Summary != c.Summary || !bytes.Equal(r.Data, c.Data) {
		t.Errorf("revision %d of %s is %+v, want %+v", number, id, r, c)
	}
	if !r.When.Equal(c.When) || r.When.Location() != time.UTC {
		t.Errorf("time is %v, want %v", r.When, c.When)
	}
	if r.Digest != store.Digest(c.Data) {
		t.Errorf("digest is %s", r.Digest)
	}
}

func saves(t *testing.T, s store.Store) {
	if _, err := s.Get(ctx, "a"); !errors.Is(err, store.ErrNone) {
		t.Errorf("get of nothing: %v", err)
	}
	// Each text differs from each other, so that arguments bound in a wrong
	// order show.
	for n := range 3 {
		c := change(fmt.Sprint("v", n+1))
		same(t, put(t, s, "a", n, c), "a", n+1, c)
		r, err := s.Get(ctx, "a")
		if err != nil {
			t.Fatal(err)
		}
		same(t, r, "a", n+1, c)
	}
	put(t, s, "b", 0, change("b"))
	for n := range 3 {
		r, err := s.At(ctx, "a", n+1)
		if err != nil {
			t.Fatal(err)
		}
		same(t, r, "a", n+1, change(fmt.Sprint("v", n+1)))
	}
	for _, n := range []int{-1, 0, 4} {
		if _, err := s.At(ctx, "a", n); !errors.Is(err, store.ErrNone) {
			t.Errorf("revision %d: %v", n, err)
		}
	}
	c := change("clock")
	c.When = time.Date(1969, 12, 31, 23, 0, 0, 1999, time.FixedZone("x", 3600))
	r, err := s.At(ctx, "a", put(t, s, "a", 3, c).Number)
	if err != nil || !r.When.Equal(c.When.Truncate(time.Microsecond)) {
		t.Errorf("a time before 1970 comes back as %v (%v)", r.When, err)
	}
}

func stale(t *testing.T, s store.Store) {
	put(t, s, "a", 0, change("one"))
	put(t, s, "a", 1, change("two"))
	for _, base := range []int{0, 1, 3, -1} {
		var st *store.Stale
		if _, err := s.Put(ctx, store.Job, "a", base, change("late")); !errors.As(err, &st) {
			t.Errorf("upon %d: %v", base, err)
			continue
		}
		same(t, st.Newest, "a", 2, change("two"))
	}
	var st *store.Stale
	if _, err := s.Archive(ctx, "a", 1, true, change("late")); !errors.As(err, &st) {
		t.Errorf("archive: %v", err)
	}
	if _, err := s.Delete(ctx, "a", 1, change("late")); !errors.As(err, &st) {
		t.Errorf("delete: %v", err)
	}
	if h, err := s.History(ctx, "a", 0, 0); err != nil || len(h) != 2 {
		t.Errorf("a refused save was written: %d revisions, %v", len(h), err)
	}
	if e, err := s.Since(ctx, 0, 0); err != nil || len(e) != 1 || e[0].Number != 2 {
		t.Errorf("a refused save shows: %+v, %v", e, err)
	}
}

func refuses(t *testing.T, s store.Store) {
	for _, id := range []string{"", strings.Repeat("x", store.MostName+1), "a\x00b", "\xff", "a\nb"} {
		if _, err := s.Put(ctx, store.Job, id, 0, change("x")); !errors.Is(err, store.ErrName) {
			t.Errorf("id %q: %v", id, err)
		}
		if _, err := s.Get(ctx, id); !errors.Is(err, store.ErrNone) {
			t.Errorf("get of id %q: %v", id, err)
		}
	}
	if _, err := s.Put(ctx, "", "a", 0, change("x")); !errors.Is(err, store.ErrName) {
		t.Errorf("no kind: %v", err)
	}
	if _, err := s.Put(ctx, store.Job, "a", 1, change("x")); !errors.Is(err, store.ErrNone) {
		t.Errorf("upon a revision of nothing: %v", err)
	}
	if _, err := s.Archive(ctx, "a", 0, true, change("x")); !errors.Is(err, store.ErrNone) {
		t.Errorf("archive of nothing: %v", err)
	}
	if _, err := s.Delete(ctx, "a", 0, change("x")); !errors.Is(err, store.ErrNone) {
		t.Errorf("delete of nothing: %v", err)
	}
	if _, err := s.History(ctx, "a", 0, 0); !errors.Is(err, store.ErrNone) {
		t.Errorf("history of nothing: %v", err)
	}
	put(t, s, "a", 0, change("x"))
	if _, err := s.Put(ctx, store.Pumps, "a", 1, change("x")); !errors.Is(err, store.ErrName) {
		t.Errorf("another kind: %v", err)
	}
}

func archives(t *testing.T, s store.Store) {
	put(t, s, "a", 0, change("one"))
	r, err := s.Archive(ctx, "a", 1, true, change("two"))
	if err != nil || !r.Archived {
		t.Fatal(r, err)
	}
	same(t, r, "a", 2, change("two"))
	if r := put(t, s, "a", 2, change("three")); !r.Archived {
		t.Error("a save took the document back")
	}
	ids(t, s, store.Query{Kind: store.Job})
	ids(t, s, store.Query{Kind: store.Job, Archived: true}, "a")
	if r, err := s.Archive(ctx, "a", 3, false, change("four")); err != nil || r.Archived {
		t.Fatal(r, err)
	}
	if r, err := s.Get(ctx, "a"); err != nil || r.Archived || r.Number != 4 {
		t.Error(r, err)
	}
	if r, err := s.At(ctx, "a", 2); err != nil || !r.Archived {
		t.Error(r, err)
	}
	ids(t, s, store.Query{Kind: store.Job}, "a")
	ids(t, s, store.Query{Kind: store.Job, Archived: true})
}

func deletes(t *testing.T, s store.Store) {
	put(t, s, "a", 0, change("one"))
	dead, err := s.Delete(ctx, "a", 1, change("two"))
	if err != nil || !dead.Deleted || len(dead.Data) != 0 || dead.Number != 2 || dead.Digest != store.Digest(nil) {
		t.Fatal(dead, err)
	}
	if r, err := s.Get(ctx, "a"); !errors.Is(err, store.ErrGone) || !r.Deleted || r.Number != 2 || r.What != "what two" {
		t.Error(r, err)
	}
	if _, err := s.Archive(ctx, "a", 2, true, change("x")); !errors.Is(err, store.ErrGone) {
		t.Error(err)
	}
	if _, err := s.Delete(ctx, "a", 2, change("x")); !errors.Is(err, store.ErrGone) {
		t.Error(err)
	}
	ids(t, s, store.Query{Kind: store.Job})
	if e, err := s.Since(ctx, 0, 0); err != nil || len(e) != 1 || !e[0].Deleted {
		t.Error("no tombstone since the beginning:", e, err)
	}
	old, err := s.At(ctx, "a", 1)
	if err != nil {
		t.Fatal(err)
	}
	same(t, old, "a", 1, change("one"))
	var st *store.Stale
	if _, err := s.Put(ctx, store.Job, "a", 0, change("x")); !errors.As(err, &st) || !st.Newest.Deleted {
		t.Error("a tombstone was taken for nothing:", err)
	}
	same(t, put(t, s, "a", 2, change("one")), "a", 3, change("one"))
	ids(t, s, store.Query{Kind: store.Job}, "a")
}

func historyPages(t *testing.T, s store.Store) {
	const n = 23
	for i := range n {
		put(t, s, "a", i, change(fmt.Sprint(i+1)))
	}
	put(t, s, "b", 0, change("other"))
	want, before := n, 0
	for range n {
		page, err := s.History(ctx, "a", before, 5)
		if err != nil {
			t.Fatal(err)
		}
		if len(page) == 0 {
			break
		}
		for _, r := range page {
			if r.Number != want || r.Data != nil || r.What != fmt.Sprint("what ", want) || r.Digest != store.Digest([]byte(fmt.Sprint("data ", want))) || r.ID != "a" {
				t.Errorf("got %+v, want number %d", r, want)
			}
			want--
		}
		before = page[len(page)-1].Number
	}
	if want != 0 {
		t.Errorf("%d revisions were not told", want)
	}
	if h, err := s.History(ctx, "a", 1, 5); err != nil || len(h) != 0 {
		t.Error("before the first:", h, err)
	}
}

// undoes keeps which state an undo goes back to, through every way of reading;
// what is no earlier state counts as none.
func undoes(t *testing.T, s store.Store) {
	want := []int{0, 0, 1, 0, 0}
	for n, back := range []int{7, 0, 1, -1, 5} {
		c := change(fmt.Sprint("v", n+1))
		c.BackTo = back
		if got := put(t, s, "a", n, c); got.BackTo != want[n] {
			t.Errorf("revision %d goes back to %d, want %d", n+1, got.BackTo, want[n])
		}
		if r, err := s.Get(ctx, "a"); err != nil || r.BackTo != want[n] {
			t.Errorf("the newest goes back to %d, want %d: %v", r.BackTo, want[n], err)
		}
	}
	past, err := s.History(ctx, "a", 0, 0)
	if err != nil || len(past) != len(want) {
		t.Fatal(len(past), err)
	}
	for _, p := range past {
		r, err := s.At(ctx, "a", p.Number)
		if err != nil || p.BackTo != want[p.Number-1] || r.BackTo != want[p.Number-1] {
			t.Errorf("revision %d goes back to %d and %d, want %d: %v", p.Number, p.BackTo, r.BackTo, want[p.Number-1], err)
		}
	}
}
