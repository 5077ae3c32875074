package suite

import (
	"fmt"
	"testing"

	"plashet/store"
)

// Bench measures a save, a read, and pages of a list of 10,000 jobs: the first,
// one deep in the list, and one that is sought.
func Bench(b *testing.B, open func(*testing.B) store.Store) {
	s := open(b)
	defer func() { _ = s.Close() }()
	const jobs = 10_000
	Fill(b, s, jobs)
	c := change("bench")
	c.Data = make([]byte, 8<<10)
	made := 0
	b.Run("Save", func(b *testing.B) {
		for b.Loop() {
			if _, err := s.Put(ctx, store.Prices, "saved", made, c); err != nil {
				b.Fatal(err)
			}
			made++
		}
	})
	b.Run("Get", func(b *testing.B) {
		i := 0
		for b.Loop() {
			if _, err := s.Get(ctx, fmt.Sprintf("job-%05d", i%jobs)); err != nil {
				b.Fatal(err)
			}
			i += 7919
		}
	})
	for name, q := range map[string]store.Query{
		"First": {Kind: store.Job}, "Deep": {Kind: store.Job, Before: jobs / 2}, "Sought": {Kind: store.Job, Text: "DEN 0001"}, "SoughtNone": {Kind: store.Job, Text: "nowhere"},
	} {
		want := 50
		switch name {
		case "Sought":
			want = 10
		case "SoughtNone":
			want = 0
		}
		b.Run("List"+name, func(b *testing.B) {
			for b.Loop() {
				if e, _, err := s.List(ctx, q); err != nil || len(e) != want {
					b.Fatal(len(e), err)
				}
			}
		})
	}
}
