package carry_test

import (
	"bytes"
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"plashet/internal/pgtest"
	"plashet/store"
	"plashet/store/carry"
	"plashet/store/memory"
	"plashet/store/sqldb"
)

func TestMain(m *testing.M) { pgtest.Main(m) }

var ctx = context.Background()

func must[T any](t *testing.T) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// fill makes documents that went through everything.
func fill(t *testing.T, s store.Store) {
	t.Helper()
	rev := must[store.Revision](t)
	c := func(text string) store.Change {
		return store.Change{Who: "Ü", When: time.Date(2026, 1, 2, 3, 4, 5, 6000, time.UTC), What: text, Data: []byte(text + "\x00\xff½"), Summary: store.Summary{Name: text, Weight: 3}}
	}
	rev(s.Put(ctx, store.Job, "a", 0, c("one")))
	rev(s.Put(ctx, store.Pumps, "shelf", 0, c("pumps")))
	two := c("two")
	two.BackTo = 1
	rev(s.Put(ctx, store.Job, "a", 1, two))
	rev(s.Archive(ctx, "a", 2, true, c("two")))
	rev(s.Put(ctx, store.Job, "b", 0, c("b")))
	rev(s.Delete(ctx, "b", 1, c("away")))
	rev(s.Put(ctx, store.Job, "b", 2, c("b again")))
	rev(s.Archive(ctx, "a", 3, false, c("back")))
	rev(s.Archive(ctx, "a", 4, false, c("back once more")))
	rev(s.Put(ctx, store.Job, "gone", 0, c("x")))
	rev(s.Delete(ctx, "gone", 1, c("y")))
	if err := s.SetPlace(ctx, "a", "glue", []byte("7")); err != nil {
		t.Fatal(err)
	}
}

func sqlite(t *testing.T) store.Store {
	s := must[*sqldb.Store](t)(sqldb.Open(ctx, t.TempDir()+"/x.db"))
	t.Cleanup(func() { _ = s.Close() })
	return s
}

func order(t *testing.T, s store.Store) (ids []string) {
	for _, e := range must[[]store.Entry](t)(s.Since(ctx, 0, 0)) {
		ids = append(ids, e.ID)
	}
	return ids
}

// There and back: SQLite, PostgreSQL, SQLite, a file, memory.
func TestMove(t *testing.T) {
	pgtest.Need(t)
	first := sqlite(t)
	fill(t, first)
	server := must[*sqldb.Store](t)(sqldb.Open(ctx, pgtest.Database(t)))
	t.Cleanup(func() { _ = server.Close() })
	want := must[carry.Count](t)(carry.Sum(ctx, first))
	if want.Documents != 4 || want.Revisions != 11 {
		t.Fatal(want)
	}
	from := first
	for _, to := range []store.Store{server, sqlite(t), memory.New()} {
		if got := must[carry.Count](t)(carry.Move(ctx, from, to)); got != want {
			t.Errorf("%+v, want %+v", got, want)
		}
		if a, b := strings.Join(order(t, first), " "), strings.Join(order(t, to), " "); a != b {
			t.Errorf("the order %s became %s", a, b)
		}
		from = to
	}
	var file bytes.Buffer
	if got := must[carry.Count](t)(carry.Write(ctx, &file, server)); got != want {
		t.Error(got)
	}
	back := must[store.Store](t)(carry.Read(ctx, &file))
	if got := must[carry.Count](t)(carry.Move(ctx, back, sqlite(t))); got != want {
		t.Error(got)
	}
}

// Every single thing that a store keeps turns the digest.
func TestSumTells(t *testing.T) {
	base := store.Change{Who: "w", When: time.Unix(1, 0), What: "x", Data: []byte("d"), Summary: store.Summary{Name: "n", Place: "p", Stage: "s", Worst: "o", Weight: 1}}
	seen := map[string]int{}
	for i, turn := range []func(*store.Change){
		func(*store.Change) {},
		func(c *store.Change) { c.Who = "v" },
		func(c *store.Change) { c.When = time.Unix(1, 1000) },
		func(c *store.Change) { c.What = "v" },
		func(c *store.Change) { c.Data = []byte("e") },
		func(c *store.Change) { c.Summary.Name = "v" },
		func(c *store.Change) { c.Summary.Place = "v" },
		func(c *store.Change) { c.Summary.Stage = "v" },
		func(c *store.Change) { c.Summary.Worst = "v" },
		func(c *store.Change) { c.Summary.Weight = 2 },
		func(c *store.Change) { c.BackTo = 1 },
	} {
		c, s := base, memory.New()
		turn(&c)
		must[store.Revision](t)(s.Put(ctx, store.Job, "a", 0, base))
		must[store.Revision](t)(s.Put(ctx, store.Job, "a", 1, c))
		sum := must[carry.Count](t)(carry.Sum(ctx, s)).Digest
		if old, twice := seen[sum]; twice {
			t.Errorf("cases %d and %d have one digest", old, i)
		}
		seen[sum] = i
		if err := s.SetPlace(ctx, "a", "p", []byte("v")); err != nil {
			t.Fatal(err)
		}
		if must[carry.Count](t)(carry.Sum(ctx, s)).Digest == sum {
			t.Error("a place does not count")
		}
	}
}

func TestContinues(t *testing.T) {
	from, to := memory.New(), memory.New()
	fill(t, from)
	must[carry.Count](t)(carry.Move(ctx, from, to))
	must[store.Revision](t)(from.Put(ctx, store.Job, "a", 5, store.Change{Data: []byte("later")}))
	if got, want := must[carry.Count](t)(carry.Move(ctx, from, to)), must[carry.Count](t)(carry.Sum(ctx, from)); got != want {
		t.Error(got, want)
	}
	// The target goes its own way: nothing is written.
	must[store.Revision](t)(to.Put(ctx, store.Job, "a", 6, store.Change{Data: []byte("own")}))
	must[store.Revision](t)(from.Put(ctx, store.Job, "new", 0, store.Change{}))
	before := must[carry.Count](t)(carry.Sum(ctx, to))
	if _, err := carry.Move(ctx, from, to); !errors.Is(err, carry.ErrOther) {
		t.Error(err)
	}
	if after := must[carry.Count](t)(carry.Sum(ctx, to)); after != before {
		t.Error("a refused move wrote")
	}
}

// A file that is not whole, or not as it was written, gives nothing.
func TestDamagedFile(t *testing.T) {
	s := memory.New()
	fill(t, s)
	var file bytes.Buffer
	must[carry.Count](t)(carry.Write(ctx, &file, s))
	text := file.String()
	lines := strings.SplitAfter(strings.TrimSuffix(text, "\n"), "\n")
	cases := map[string]string{"empty": "", "other": "hello", "twice": text + text, "newer": strings.Replace(text, `"version":1`, `"version":2`, 1), "name": strings.Replace(text, `"Name":"two"`, `"Name":"twp"`, 1), "digest": strings.Replace(text, `"Digest":"`, `"Digest":"0`, 1)}
	for i := range lines {
		cases["cut before "+lines[i][:12]+string(rune('a'+i))] = strings.Join(lines[:i], "")
		if i > 0 {
			cases["without "+string(rune('a'+i))] = strings.Join(append(append([]string{}, lines[:i]...), lines[i+1:]...), "")
		}
	}
	for name, text := range cases {
		var bad *carry.FileError
		if _, err := carry.Read(ctx, strings.NewReader(text)); !errors.As(err, &bad) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
