// Package memory keeps documents in memory.
package memory

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strings"
	"sync"

	"plashet/store"
)

// Store keeps documents for as long as the program runs.
type Store struct {
	mu     sync.Mutex
	docs   map[string][]store.Revision
	at     map[string]int64
	cursor int64
	places map[string][]byte
}

// New makes an empty one.
func New() *Store {
	return &Store{docs: map[string][]store.Revision{}, at: map[string]int64{}, places: map[string][]byte{}}
}

func (s *Store) entry(r store.Revision) store.Entry {
	return store.Entry{ID: r.ID, Kind: r.Kind, Number: r.Number, Who: r.Who, When: r.When, Summary: r.Summary, Archived: r.Archived, Cursor: s.at[r.ID]}
}

// List gives the newest first.
func (s *Store) List(_ context.Context, q store.Query) ([]store.Entry, bool, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	var all []store.Entry
	for _, d := range s.docs {
		r := d[len(d)-1]
		t := strings.ToLower(q.Text)
		if r.Deleted || r.Kind != q.Kind || r.Archived != q.Archived || !strings.Contains(strings.ToLower(r.Summary.Name), t) && !strings.Contains(strings.ToLower(r.Summary.Place), t) {
			continue
		}
		all = append(all, s.entry(r))
	}
	slices.SortFunc(all, func(a, b store.Entry) int { return int(b.Cursor - a.Cursor) })
	if q.After != "" {
		i := slices.IndexFunc(all, func(e store.Entry) bool { return e.ID == q.After })
		all = all[i+1:]
	}
	n := q.Limit
	if n == 0 {
		n = 50
	}
	if len(all) > n {
		return all[:n], true, nil
	}
	return all, false, nil
}

// Get gives the newest revision.
func (s *Store) Get(_ context.Context, id string) (store.Revision, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	d := s.docs[id]
	if len(d) == 0 {
		return store.Revision{}, store.ErrNone
	}
	return d[len(d)-1], nil
}

// At gives one revision.
func (s *Store) At(_ context.Context, id string, n int) (store.Revision, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	d := s.docs[id]
	if n < 1 || n > len(d) {
		return store.Revision{}, store.ErrNone
	}
	return d[n-1], nil
}

// History gives the revisions without their bytes.
func (s *Store) History(_ context.Context, id string, before, limit int) ([]store.Revision, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	var out []store.Revision
	d := s.docs[id]
	for i := len(d) - 1; i >= 0 && len(out) < limit; i-- {
		if before == 0 || d[i].Number < before {
			r := d[i]
			r.Data = nil
			out = append(out, r)
		}
	}
	return out, nil
}

func (s *Store) put(kind store.Kind, id string, base int, c store.Change, f func(*store.Revision)) (store.Revision, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	d := s.docs[id]
	if base != len(d) {
		var st store.Stale
		if len(d) > 0 {
			st.Newest = d[len(d)-1]
		}
		return store.Revision{}, &st
	}
	sum := sha256.Sum256(c.Data)
	r := store.Revision{ID: id, Kind: kind, Number: len(d) + 1, Change: c, Digest: hex.EncodeToString(sum[:])}
	if len(d) > 0 {
		r.Kind, r.Archived = d[len(d)-1].Kind, d[len(d)-1].Archived
	}
	f(&r)
	s.docs[id] = append(d, r)
	s.cursor++
	s.at[id] = s.cursor
	return r, nil
}

// Put adds a revision upon base.
func (s *Store) Put(_ context.Context, kind store.Kind, id string, base int, c store.Change) (store.Revision, error) {
	return s.put(kind, id, base, c, func(*store.Revision) {})
}

// Archive puts a document aside or takes it back.
func (s *Store) Archive(_ context.Context, id string, base int, aside bool, c store.Change) (store.Revision, error) {
	return s.put("", id, base, c, func(r *store.Revision) { r.Archived = aside })
}

// Delete leaves a tombstone.
func (s *Store) Delete(_ context.Context, id string, base int, c store.Change) (store.Revision, error) {
	return s.put("", id, base, c, func(r *store.Revision) { r.Deleted = true; r.Data = nil })
}

// Since gives what changed after a cursor.
func (s *Store) Since(_ context.Context, cursor int64, limit int) ([]store.Entry, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	var out []store.Entry
	for id, at := range s.at {
		if at > cursor {
			out = append(out, s.entry(s.docs[id][len(s.docs[id])-1]))
		}
	}
	slices.SortFunc(out, func(a, b store.Entry) int { return int(a.Cursor - b.Cursor) })
	return out[:min(len(out), limit)], nil
}

// Place gives what a person keeps with a document.
func (s *Store) Place(_ context.Context, id, name string) ([]byte, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.places[id+"\x00"+name], nil
}

// SetPlace replaces it.
func (s *Store) SetPlace(_ context.Context, id, name string, v []byte) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.places[id+"\x00"+name] = v
	return nil
}

// Close ends the use of the store.
func (s *Store) Close() error { return nil }
