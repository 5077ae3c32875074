package suite

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"testing"

	"plashet/store"
)

// states finds revisions by the first digits of their digests: the oldest of many
// documents as well as the last, of each document the newest alike, deleted ones
// too; never a tombstone, never of another kind.
func states(t *testing.T, s store.Store) {
	const n = 120
	var old store.Revision
	for i := range n {
		id := fmt.Sprintf("d%03d", i)
		r := put(t, s, id, 0, change(id))
		if i == 0 {
			old = r
		}
	}
	find := func(digits string, limit int) (got []string) {
		t.Helper()
		list, err := s.States(ctx, store.Job, digits, limit)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range list {
			if r.Data != nil {
				t.Error("the bytes come along")
			}
			got = append(got, fmt.Sprint(r.ID, " ", r.Number))
		}
		return got
	}
	want := func(what string, got []string, want ...string) {
		t.Helper()
		if !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", what, got, want)
		}
	}
	list, err := s.States(ctx, store.Job, old.Digest[:12], 5)
	if err != nil || len(list) != 1 {
		t.Fatal(list, err)
	}
	list[0].Data = old.Data
	same(t, list[0], "d000", 1, change("d000"))
	want("the whole digest", find(old.Digest, 5), "d000 1")

	// Changed and changed back: the newest of the two alike. A copy stands beside it,
	// the one saved last first; a shelf with the same bytes does not.
	put(t, s, "d000", 1, change("other"))
	want("an older state", find(old.Digest[:8], 5), "d000 1")
	put(t, s, "d000", 2, change("d000"))
	want("changed back", find(old.Digest[:8], 5), "d000 3")
	put(t, s, "copy", 0, change("d000"))
	want("beside a copy", find(old.Digest[:8], 5), "copy 1", "d000 3")
	want("one is enough", find(old.Digest[:8], 1), "copy 1")
	if _, err := s.Put(ctx, store.Pumps, "shelf", 0, change("d000")); err != nil {
		t.Fatal(err)
	}
	want("of its kind", find(old.Digest[:8], 5), "copy 1", "d000 3")
	if _, err := s.Archive(ctx, "d000", 3, true, change("d000")); err != nil {
		t.Fatal(err)
	}
	want("put aside", find(old.Digest[:8], 5), "d000 4", "copy 1")
	if _, err := s.Delete(ctx, "copy", 1, store.Change{Who: "x"}); err != nil {
		t.Fatal(err)
	}
	want("deleted", find(old.Digest[:8], 5), "copy 1", "d000 4")
	want("no tombstone", find(store.Digest(nil)[:12], 5))

	for _, digits := range []string{"", old.Digest[:7], "%", "________", "00000000' OR 1=1", old.Digest + "0", "G0000000", "\x00\x00\x00\x00\x00\x00\x00\x00"} {
		want(digits, find(digits, 5))
	}
	over, stop := context.WithCancel(ctx)
	stop()
	if _, err := s.States(over, store.Job, old.Digest, 1); !errors.Is(err, context.Canceled) {
		t.Error("after the end:", err)
	}
}
