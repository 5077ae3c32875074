// Package store keeps jobs and shelves as documents with revisions that are only
// ever added. It is an interface and its rules; the packages below it keep the
// bytes in memory, in SQLite or in PostgreSQL, and pass one suite. It knows
// nothing of what a document holds.
//
// Who saves names the revision it started from; where another came in between,
// the save is refused with the newest revision, and nothing is written. A
// revision once acknowledged is never lost, changed or half there.
package store

import (
	"context"
	"errors"
	"time"
)

// Kind is a kind of document.
type Kind string

// The kinds. A job stands for itself; the shelves are shared by all jobs.
const (
	Job    Kind = "job"
	Pumps  Kind = "pumps"  // a shelf of pumps
	Prices Kind = "prices" // a shelf of prices
)

// The errors that a caller tells apart. A stale save comes as *Stale.
var (
	ErrNone  = errors.New("there is no such document")
	ErrGone  = errors.New("the document was deleted")
	ErrLarge = errors.New("the document is too large to keep")
)

// Stale refuses a save whose base is not the newest revision.
type Stale struct{ Newest Revision }

func (s *Stale) Error() string { return "the document was changed meanwhile" }

// Change is what a save brings.
type Change struct {
	Who  string // the name typed on the device
	When time.Time
	What string // changed, in plain words
	Data []byte // the whole document, in its canonical form

	// For the list, so that it need not read the documents. The app works them
	// out; a store only keeps them.
	Summary Summary
}

// Summary is what the list shows of a document.
type Summary struct {
	Name, Place string
	Stage       string // how far it has come: a code
	Worst       string // its worst open finding, in words
	Weight      int    // of that finding; 0 none
}

// Revision is one state of a document.
type Revision struct {
	ID     string // of the document
	Kind   Kind
	Number int // 1 for the first
	Change
	Digest   string // SHA-256 of Data in hexadecimal
	Archived bool
	Deleted  bool // a tombstone: Data is empty
}

// Entry is a line of the list: the newest revision without its bytes.
type Entry struct {
	ID       string
	Kind     Kind
	Number   int
	Who      string
	When     time.Time
	Summary  Summary
	Archived bool
	Cursor   int64 // for Since
}

// Query narrows the list; the newest come first.
type Query struct {
	Kind     Kind
	Text     string // in name or place, in any case
	Archived bool   // the archived instead of the open
	After    string // Entry.ID of the last one seen; "" from the start
	Limit    int    // 0: 50
}

// Store keeps documents. All methods may be called at the same time.
type Store interface {
	// List gives the newest first, and whether there are more.
	List(ctx context.Context, q Query) (entries []Entry, more bool, err error)
	// Get gives the newest revision.
	Get(ctx context.Context, id string) (Revision, error)
	// At gives one revision by its number.
	At(ctx context.Context, id string, number int) (Revision, error)
	// History gives the revisions without their bytes, the newest first.
	History(ctx context.Context, id string, before, limit int) ([]Revision, error)
	// Put adds a revision upon base; base 0 makes the document. It fails with
	// *Stale where base is not the newest.
	Put(ctx context.Context, kind Kind, id string, base int, c Change) (Revision, error)
	// Archive puts a document aside or takes it back: a revision of its own.
	Archive(ctx context.Context, id string, base int, aside bool, c Change) (Revision, error)
	// Delete leaves a tombstone upon base; the revisions before stay.
	Delete(ctx context.Context, id string, base int, c Change) (Revision, error)
	// Since gives what changed after a cursor, in the order in which it did.
	Since(ctx context.Context, cursor int64, limit int) ([]Entry, error)
	// Place gives what a person keeps with a document but is no part of it: the
	// step of the glue-up, ticks. SetPlace replaces it; the last one wins.
	Place(ctx context.Context, id, name string) ([]byte, error)
	SetPlace(ctx context.Context, id, name string, value []byte) error
	Close() error
}
