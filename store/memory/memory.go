// Package memory keeps documents in memory, for as long as the program runs. It
// passes the suite that the databases pass.
package memory

import (
	"bytes"
	"cmp"
	"context"
	"maps"
	"slices"
	"strings"
	"sync"

	"plashet/store"
)

// Store keeps documents; New makes one.
type Store struct {
	mu     sync.RWMutex
	docs   map[string]*document
	states map[string][]state // by the first digits of their digests, in the order of the saves
	cursor int64
}

// state is one revision of a document.
type state struct {
	of     *document
	number int
}

// document is all that is kept of one. Its bytes are no one else's.
type document struct {
	revisions []store.Revision
	sought    string
	cursor    int64
	places    map[string][]byte
}

// New makes an empty one.
func New() *Store { return &Store{docs: map[string]*document{}, states: map[string][]state{}} }

func (d *document) newest() store.Revision { return d.revisions[len(d.revisions)-1] }

func (d *document) entry() store.Entry {
	r := d.newest()
	return store.Entry{
		ID: r.ID, Kind: r.Kind, Number: r.Number, Who: r.Who, When: r.When, Summary: r.Summary, Archived: r.Archived, Deleted: r.Deleted, Cursor: d.cursor,
	}
}

// lent gives a revision whose bytes may be written over.
func lent(r store.Revision) store.Revision {
	r.Data = bytes.Clone(r.Data)
	return r
}

// List gives the newest first.
func (s *Store) List(ctx context.Context, q store.Query) ([]store.Entry, bool, error) {
	if err := ctx.Err(); err != nil {
		return nil, false, err
	}
	text := store.Fold(q.Text)
	s.mu.RLock()
	var found []*document
	for _, d := range s.docs {
		r := d.newest()
		if !r.Deleted && r.Kind == q.Kind && r.Archived == q.Archived && (q.Before == 0 || d.cursor < q.Before) && strings.Contains(d.sought, text) {
			found = append(found, d)
		}
	}
	slices.SortFunc(found, func(a, b *document) int { return cmp.Compare(b.cursor, a.cursor) })
	n := store.Limit(q.Limit)
	more := len(found) > n
	entries := entries(found[:min(len(found), n)])
	s.mu.RUnlock()
	return entries, more, nil
}

func entries(found []*document) []store.Entry {
	out := make([]store.Entry, len(found))
	for i, d := range found {
		out[i] = d.entry()
	}
	return out
}

// Get gives the newest revision.
func (s *Store) Get(ctx context.Context, id string) (store.Revision, error) {
	if err := ctx.Err(); err != nil {
		return store.Revision{}, err
	}
	s.mu.RLock()
	defer s.mu.RUnlock()
	d := s.docs[id]
	if d == nil {
		return store.Revision{}, store.ErrNone
	}
	r := lent(d.newest())
	if r.Deleted {
		return r, store.ErrGone
	}
	return r, nil
}

// At gives one revision.
func (s *Store) At(ctx context.Context, id string, number int) (store.Revision, error) {
	if err := ctx.Err(); err != nil {
		return store.Revision{}, err
	}
	s.mu.RLock()
	defer s.mu.RUnlock()
	d := s.docs[id]
	if d == nil || number < 1 || number > len(d.revisions) {
		return store.Revision{}, store.ErrNone
	}
	return lent(d.revisions[number-1]), nil
}

// History gives the revisions without their bytes.
func (s *Store) History(ctx context.Context, id string, before, limit int) ([]store.Revision, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	s.mu.RLock()
	defer s.mu.RUnlock()
	d := s.docs[id]
	if d == nil {
		return nil, store.ErrNone
	}
	top := len(d.revisions)
	if before > 0 {
		top = min(top, before-1)
	}
	var out []store.Revision
	for i := top - 1; i >= 0 && len(out) < store.Limit(limit); i-- {
		r := d.revisions[i]
		r.Data = nil
		out = append(out, r)
	}
	return out, nil
}

// Put adds a revision upon base.
func (s *Store) Put(ctx context.Context, kind store.Kind, id string, base int, c store.Change) (store.Revision, error) {
	return s.save(ctx, kind, id, base, store.Save, c)
}

// Archive puts a document aside or takes it back.
func (s *Store) Archive(ctx context.Context, id string, base int, aside bool, c store.Change) (store.Revision, error) {
	if aside {
		return s.save(ctx, "", id, base, store.Aside, c)
	}
	return s.save(ctx, "", id, base, store.Back, c)
}

// Delete leaves a tombstone.
func (s *Store) Delete(ctx context.Context, id string, base int, c store.Change) (store.Revision, error) {
	return s.save(ctx, "", id, base, store.Remove, c)
}

func (s *Store) save(ctx context.Context, kind store.Kind, id string, base int, act store.Act, c store.Change) (store.Revision, error) {
	if err := ctx.Err(); err != nil {
		return store.Revision{}, err
	}
	c.Data = bytes.Clone(c.Data)
	s.mu.Lock()
	defer s.mu.Unlock()
	d := s.docs[id]
	var newest *store.Revision
	if d != nil {
		r := lent(d.newest())
		newest = &r
	}
	r, err := store.Next(newest, kind, id, base, act, c)
	if err != nil {
		return store.Revision{}, err
	}
	if d == nil {
		d = &document{places: map[string][]byte{}}
		s.docs[id] = d
	}
	s.cursor++
	d.revisions, d.cursor, d.sought = append(d.revisions, r), s.cursor, store.Sought(r.Summary)
	if !r.Deleted {
		key := r.Digest[:store.LeastDigits]
		s.states[key] = append(s.states[key], state{d, r.Number})
	}
	return lent(r), nil
}

// States gives the revisions whose digest begins with digits, the newest of each
// document.
func (s *Store) States(ctx context.Context, kind store.Kind, digits string, limit int) ([]store.Revision, error) {
	if !store.Digits(digits) {
		return nil, ctx.Err()
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	s.mu.RLock()
	defer s.mu.RUnlock()
	newest := map[*document]store.Revision{}
	for _, x := range s.states[digits[:store.LeastDigits]] { // a document's later ones come later
		if r := x.of.revisions[x.number-1]; r.Kind == kind && strings.HasPrefix(r.Digest, digits) {
			r.Data = nil
			newest[x.of] = r
		}
	}
	found := slices.SortedFunc(maps.Keys(newest), func(a, b *document) int { return cmp.Compare(b.cursor, a.cursor) })
	var out []store.Revision
	for _, d := range found[:min(len(found), store.Limit(limit))] {
		out = append(out, newest[d])
	}
	return out, nil
}

// Since gives what changed after a cursor.
func (s *Store) Since(ctx context.Context, cursor int64, limit int) ([]store.Entry, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	s.mu.RLock()
	defer s.mu.RUnlock()
	var found []*document
	for _, d := range s.docs {
		if d.cursor > cursor {
			found = append(found, d)
		}
	}
	slices.SortFunc(found, func(a, b *document) int { return cmp.Compare(a.cursor, b.cursor) })
	return entries(found[:min(len(found), store.Limit(limit))]), nil
}

// Place gives what a person keeps with a document.
func (s *Store) Place(ctx context.Context, id, name string) ([]byte, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	s.mu.RLock()
	defer s.mu.RUnlock()
	if d := s.docs[id]; d != nil {
		return bytes.Clone(d.places[name]), nil
	}
	return nil, nil
}

// SetPlace replaces it.
func (s *Store) SetPlace(ctx context.Context, id, name string, value []byte) error {
	switch {
	case ctx.Err() != nil:
		return ctx.Err()
	case !store.Named(name):
		return store.ErrName
	case len(value) > store.MostPlace:
		return store.ErrLarge
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	d := s.docs[id]
	switch {
	case d == nil:
		return store.ErrNone
	case len(value) == 0:
		delete(d.places, name)
	default:
		d.places[name] = bytes.Clone(value)
	}
	return nil
}

// Places names what is kept with a document.
func (s *Store) Places(ctx context.Context, id string) ([]string, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	s.mu.RLock()
	defer s.mu.RUnlock()
	var names []string
	if d := s.docs[id]; d != nil {
		for n := range d.places {
			names = append(names, n)
		}
	}
	slices.Sort(names)
	return names, nil
}

// Close ends the use of the store.
func (s *Store) Close() error { return nil }
