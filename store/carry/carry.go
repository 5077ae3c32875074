// Package carry takes all documents, with all their revisions, from one store to
// another, and to and from one file. What arrived is held against what went by
// a digest over everything that a store keeps. It knows nothing of databases.
package carry

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"slices"

	"plashet/store"
)

// The errors that a caller tells apart.
var (
	// ErrOther refuses a target that holds what the source does not: nothing
	// was written.
	ErrOther = errors.New("the target holds documents or revisions that the source does not")
	// ErrDiffers tells that the target does not equal the source after all.
	ErrDiffers = errors.New("the target does not hold the same as the source; was something saved meanwhile?")
)

// Count is what was taken along.
type Count struct {
	Documents, Revisions int
	Digest               string // of the whole store
}

// page is how many documents are asked for at once.
const page = 200

// each calls work with every document, in the order of the saves.
func each(ctx context.Context, s store.Store, work func(store.Entry) error) error {
	var cursor int64
	for {
		found, err := s.Since(ctx, cursor, page)
		if err != nil || len(found) == 0 {
			return err
		}
		for _, e := range found {
			if err := work(e); err != nil {
				return fmt.Errorf("document %q: %w", e.ID, err)
			}
			cursor = e.Cursor
		}
	}
}

// Move takes everything from one store to another, which must be empty or hold
// a part of it: a move that was cut short is taken up again. ErrOther;
// ErrDiffers.
func Move(ctx context.Context, from, to store.Store) (Count, error) {
	if err := part(ctx, to, from); err != nil {
		return Count{}, err
	}
	if err := each(ctx, from, func(e store.Entry) error { return document(ctx, from, to, e) }); err != nil {
		return Count{}, err
	}
	want, err := Sum(ctx, from)
	if err != nil {
		return Count{}, err
	}
	got, err := Sum(ctx, to)
	if err == nil && got != want {
		err = ErrDiffers
	}
	return got, err
}

// part checks that all of a store is in another, which may hold more.
func part(ctx context.Context, small, big store.Store) error {
	return each(ctx, small, func(e store.Entry) error {
		for n := 1; n <= e.Number; n++ {
			a, err := small.At(ctx, e.ID, n)
			if err != nil {
				return err
			}
			b, err := big.At(ctx, e.ID, n)
			if errors.Is(err, store.ErrNone) {
				return ErrOther
			}
			if err != nil {
				return err
			}
			if same(a) != same(b) {
				return ErrOther
			}
		}
		return nil
	})
}

// same is a text that is equal for equal revisions alone.
func same(r store.Revision) string {
	r.Data = nil // its digest stands for it
	line, err := json.Marshal(r)
	if err != nil { // a time past the year 9999
		return fmt.Sprintf("%+v", r)
	}
	return string(line)
}

// document takes what the target lacks of one.
func document(ctx context.Context, from, to store.Store, e store.Entry) error {
	last, err := to.Get(ctx, e.ID)
	if err != nil && !errors.Is(err, store.ErrNone) && !errors.Is(err, store.ErrGone) {
		return err
	}
	for n := last.Number + 1; n <= e.Number; n++ {
		r, err := from.At(ctx, e.ID, n)
		if err != nil {
			return err
		}
		if last, err = again(ctx, to, last, r); err != nil {
			return err
		}
	}
	names, err := from.Places(ctx, e.ID)
	if err != nil {
		return err
	}
	for _, name := range names {
		value, err := from.Place(ctx, e.ID, name)
		if err != nil {
			return err
		}
		if err := to.SetPlace(ctx, e.ID, name, value); err != nil {
			return err
		}
	}
	return nil
}

// again saves a revision a second time, upon the one before it.
func again(ctx context.Context, to store.Store, last, r store.Revision) (store.Revision, error) {
	switch {
	case r.Deleted:
		return to.Delete(ctx, r.ID, last.Number, r.Change)
	case r.Archived != last.Archived:
		return to.Archive(ctx, r.ID, last.Number, r.Archived, r.Change)
	}
	return to.Put(ctx, r.Kind, r.ID, last.Number, r.Change)
}

// Sum counts what a store holds and works out its digest: SHA-256 over the
// documents by their identity, each with its revisions and what is kept with
// it. The bytes are read and held against their own digests on the way.
func Sum(ctx context.Context, s store.Store) (Count, error) {
	var c Count
	var sums []string
	err := each(ctx, s, func(e store.Entry) error {
		h := sha256.New()
		for n := 1; n <= e.Number; n++ {
			r, err := s.At(ctx, e.ID, n)
			if err != nil {
				return err
			}
			_, _ = fmt.Fprintln(h, same(r))
			c.Revisions++
		}
		names, err := s.Places(ctx, e.ID)
		if err != nil {
			return err
		}
		for _, name := range names {
			value, err := s.Place(ctx, e.ID, name)
			if err != nil {
				return err
			}
			_, _ = fmt.Fprintf(h, "place %q %s\n", name, store.Digest(value))
		}
		sums = append(sums, fmt.Sprintf("%q %s", e.ID, hex.EncodeToString(h.Sum(nil))))
		c.Documents++
		return nil
	})
	slices.Sort(sums)
	h := sha256.New()
	for _, line := range sums {
		_, _ = fmt.Fprintln(h, line)
	}
	c.Digest = hex.EncodeToString(h.Sum(nil))
	return c, err
}
