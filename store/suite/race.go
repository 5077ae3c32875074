package suite

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"testing"

	"plashet/store"
)

// Race lets 8 writers save upon one base for 50 rounds: each round exactly one
// wins, and every other is told who did. The writers take the stores in turn,
// which may be several programs' upon one database.
func Race(t *testing.T, stores ...store.Store) {
	t.Helper()
	const writers, rounds = 8, 50
	wins := 0
	for round := range rounds {
		var wg sync.WaitGroup
		results := make([]error, writers)
		for w := range writers {
			wg.Add(1)
			go func() {
				defer wg.Done()
				_, results[w] = stores[w%len(stores)].Put(ctx, store.Job, "raced", round, change(fmt.Sprintf("r%dw%d", round, w)))
			}()
		}
		wg.Wait()
		winner := -1
		for w, err := range results {
			if err == nil {
				wins++
				winner = w
			}
		}
		for w, err := range results {
			var st *store.Stale
			switch {
			case err == nil:
			case !errors.As(err, &st):
				t.Fatalf("round %d, writer %d: %v", round, w, err)
			default:
				same(t, st.Newest, "raced", round+1, change(fmt.Sprintf("r%dw%d", round, winner)))
			}
		}
	}
	if wins != rounds {
		t.Errorf("%d wins in %d rounds", wins, rounds)
	}
	h, err := stores[0].History(ctx, "raced", 0, 1000)
	if err != nil || len(h) != rounds {
		t.Errorf("%d revisions, %v", len(h), err)
	}
}

// SinceUnderRace reads on from its last cursor while others save: it must miss
// no document and never see one older than what it saw. A store whose cursor is
// drawn before the save shows, as from a sequence, fails it.
func SinceUnderRace(t *testing.T, stores ...store.Store) {
	t.Helper()
	const writers, each = 6, 40
	var wg sync.WaitGroup
	errs := make(chan error, writers)
	for w := range writers {
		wg.Add(1)
		go func() {
			defer wg.Done()
			s := stores[w%len(stores)]
			for i := range each {
				if _, err := s.Put(ctx, store.Job, fmt.Sprintf("w%d-%d", w, i), 0, change("x")); err != nil {
					errs <- err
					return
				}
			}
		}()
	}
	done := make(chan struct{})
	go func() { wg.Wait(); close(done) }()
	seen := map[string]bool{}
	var cursor int64
	read := func() {
		for {
			page, err := stores[0].Since(ctx, cursor, 7)
			if err != nil {
				t.Fatal(err)
			}
			for _, e := range page {
				if seen[e.ID] {
					t.Fatalf("%s came twice", e.ID)
				}
				seen[e.ID], cursor = true, e.Cursor
			}
			if len(page) < 7 {
				return
			}
		}
	}
	for over := false; !over; {
		select {
		case <-done:
			over = true
		default:
		}
		read()
	}
	select {
	case err := <-errs:
		t.Fatal(err)
	default:
	}
	if len(seen) != writers*each {
		t.Errorf("a reader who went on from its cursor saw %d of %d documents", len(seen), writers*each)
	}
}

// Fill saves n documents, for a benchmark.
func Fill(tb testing.TB, s store.Store, n int) {
	tb.Helper()
	for i := range n {
		c := change(fmt.Sprintf("Garden %05d", i))
		c.Data = make([]byte, 8<<10)
		if _, err := s.Put(context.Background(), store.Job, fmt.Sprintf("job-%05d", i), 0, c); err != nil {
			tb.Fatal(err)
		}
	}
}
