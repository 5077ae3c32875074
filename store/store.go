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
	// ErrName refuses an identity, a kind or a name of a place that cannot be
	// kept: empty, longer than MostName, no valid UTF-8, with a control
	// character, or a kind that is not the document's.
	ErrName = errors.New("the document cannot be kept under that name")
	// ErrDamaged tells that the bytes read are not those that were saved.
	ErrDamaged = errors.New("the document is damaged in the store")
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

	// BackTo is, of an undo, the number of the state that it brings back: undo
	// again goes on from there. 0 for every other save. It is kept, and nothing
	// hangs on it here; what is no earlier revision counts as 0.
	BackTo int `json:",omitempty"`

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
	Deleted  bool
	Cursor   int64 // its place in the order of saves; for Since and Query.Before
}

// Query narrows the list; the newest come first.
type Query struct {
	Kind     Kind
	Text     string // in name or place, in any case
	Archived bool   // the archived instead of the open
	Before   int64  // Entry.Cursor of the last one seen; 0 from the start
	Limit    int    // see Limit
}

// Store keeps documents. All methods may be called at the same time, and end
// with the context's error when it ends; a save that ends so may have been
// written or not, never by half: saving it again upon the same base tells. A
// limit is read as Limit says. Times are kept in UTC to the microsecond.
type Store interface {
	// List gives the documents that are not deleted, those saved last first
	// (by the order of the saves, whatever their clocks said), and whether
	// there are more.
	List(ctx context.Context, q Query) (entries []Entry, more bool, err error)
	// Get gives the newest revision. ErrNone; ErrGone, with the tombstone;
	// ErrDamaged.
	Get(ctx context.Context, id string) (Revision, error)
	// At gives one revision by its number, a tombstone too. ErrNone; ErrDamaged.
	At(ctx context.Context, id string, number int) (Revision, error)
	// History gives the revisions without their bytes, the newest first: those
	// with a number below before, all where it is 0. ErrNone.
	History(ctx context.Context, id string, before, limit int) ([]Revision, error)
	// States gives, of each document of a kind, the newest revision that is no
	// tombstone and whose Digest begins with digits, without its bytes: the
	// documents saved last first, deleted ones too. Fewer than LeastDigits, or
	// signs that no digest has, find none.
	States(ctx context.Context, kind Kind, digits string, limit int) ([]Revision, error)
	// Put adds a revision upon base; base 0 makes the document. Upon a tombstone
	// it brings the document back. *Stale where base is not the newest, ErrNone
	// where there is nothing to stand upon; ErrLarge, ErrName.
	Put(ctx context.Context, kind Kind, id string, base int, c Change) (Revision, error)
	// Archive puts a document aside or takes it back: a revision of its own,
	// with the bytes that it brings. Errors as Put, and ErrGone.
	Archive(ctx context.Context, id string, base int, aside bool, c Change) (Revision, error)
	// Delete leaves a tombstone upon base; the revisions before stay. Errors as
	// Put, and ErrGone.
	Delete(ctx context.Context, id string, base int, c Change) (Revision, error)
	// Since gives the documents changed after a cursor, tombstones too, each
	// once with its newest revision, in the order of the saves. Who goes on
	// from the last Cursor misses no save, whoever made it.
	Since(ctx context.Context, cursor int64, limit int) ([]Entry, error)
	// Place gives what a person keeps with a document but is no part of it: the
	// step of the glue-up, ticks; nil where nothing was kept.
	Place(ctx context.Context, id, name string) ([]byte, error)
	// SetPlace replaces it; the last one wins; nothing takes it away. ErrNone
	// where there is no such document; ErrLarge, ErrName.
	SetPlace(ctx context.Context, id, name string, value []byte) error
	// Places names those of a document, sorted.
	Places(ctx context.Context, id string) ([]string, error)
	Close() error
}
