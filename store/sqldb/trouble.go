package sqldb

import (
	"context"
	"errors"
	"net"

	"github.com/jackc/pgx/v5/pgconn"
	"modernc.org/sqlite"

	"plashet/store"
)

// Trouble is what stands in the way of a database, as one sentence for the
// person who named it. It holds no password.
type Trouble struct {
	Text  string
	Cause error // for the log; nil where the sentence says all
}

func (t *Trouble) Error() string { return t.Text }

// Unwrap gives the cause.
func (t *Trouble) Unwrap() error { return t.Cause }

// Primary result codes of SQLite (sqlite.org/rescode.html); an extended code
// carries its primary in the lowest byte.
const (
	sqlitePerm     = 3
	sqliteBusy     = 5
	sqliteReadOnly = 8
	sqliteIOErr    = 10
	sqliteCorrupt  = 11
	sqliteFull     = 13
	sqliteCantOpen = 14
	sqliteNotADB   = 26
)

var sqliteTexts = map[int]string{
	sqlitePerm:     "may not be written: the permissions keep you out",
	sqliteBusy:     "is held by another program for too long; try again",
	sqliteReadOnly: "may not be written: the permissions of the file or its folder keep you out",
	sqliteIOErr:    "cannot be read or written: the disk reports a fault",
	sqliteCorrupt:  "is damaged; take it from the last backup",
	sqliteFull:     "cannot be written: the disk is full",
	sqliteCantOpen: "cannot be opened: the permissions of the file or its folder keep you out",
	sqliteNotADB:   "is not a database; name another file",
}

// Codes of PostgreSQL (its manual, appendix A).
var postgresTexts = map[string]string{
	"28P01": "does not let you in: name or password is wrong",
	"28000": "does not let you in: the server's rules keep this name out",
	"3D000": "is not on the server; have it made there first",
	"42501": "may not be used: your name there lacks the permission to make or write tables",
	"25006": "may not be written: the server only reads",
	"53100": "cannot be written: the server's disk is full",
	"53300": "has no connection left; try again or let the server have more",
	"57P03": "is starting or stopping; try again",
	"57P01": "was stopped by its keeper; try again",
}

// words gives the sentence for a driver's error, "" for none that is known.
func words(err error) string {
	var lite *sqlite.Error
	var pg *pgconn.PgError
	var connect *pgconn.ConnectError
	var net net.Error
	switch {
	case errors.As(err, &lite):
		return sqliteTexts[lite.Code()&0xff]
	case errors.As(err, &pg):
		return postgresTexts[pg.Code]
	case errors.As(err, &connect), errors.As(err, &net):
		return "cannot be reached: no server answers there"
	}
	return ""
}

// at puts a driver's error into a sentence about a database.
func at(where string, err error) error {
	text := words(err)
	if text == "" {
		text = "cannot be used: " + err.Error()
	}
	return &Trouble{Text: where + " " + text, Cause: err}
}

// told puts an error of a call in the form that package store promises.
func told(ctx context.Context, err error) error {
	var stale *store.Stale
	switch {
	case err == nil:
		return nil
	case errors.As(err, &stale), errors.Is(err, store.ErrNone), errors.Is(err, store.ErrGone), errors.Is(err, store.ErrLarge), errors.Is(err, store.ErrName), errors.Is(err, store.ErrDamaged):
		return err
	case ctx.Err() != nil: // a driver has its own words for it
		return ctx.Err()
	}
	if words(err) != "" {
		return at("the database", err)
	}
	return err
}
