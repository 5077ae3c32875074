package sqldb

import (
	"context"
	"database/sql"
	"errors"
	"math"
	"slices"
	"strings"
	"time"

	"plashet/store"
)

const (
	entryColumns    = `id, kind, number, who, changed, name, place, stage, worst, weight, archived, deleted, cursor`
	revisionColumns = `r.id, r.kind, r.number, r.who, r.changed, r.what, r.name, r.place, r.stage, r.worst, r.weight, r.archived, r.deleted, r.back_to, r.digest`
	getSQL          = `SELECT ` + revisionColumns + `, r.data FROM plashet_document d JOIN plashet_revision r ON r.id = d.id AND r.number = d.number WHERE d.id = $1`
	atSQL           = `SELECT ` + revisionColumns + `, r.data FROM plashet_revision r WHERE r.number = $2 AND r.id = $1`
)

// unlike takes their meaning from the signs that LIKE reads.
var unlike = strings.NewReplacer(`\`, `\\`, `%`, `\%`, `_`, `\_`)

// List gives the newest first.
func (s *Store) List(ctx context.Context, q store.Query) ([]store.Entry, bool, error) {
	if !store.Named(string(q.Kind)) {
		return nil, false, ctx.Err()
	}
	before, limit := q.Before, store.Limit(q.Limit)
	if before == 0 {
		before = math.MaxInt64
	}
	found, err := s.entries(ctx, `SELECT `+entryColumns+` FROM plashet_document
		WHERE kind = $1 AND archived = $2 AND deleted = $3 AND cursor < $4 AND sought LIKE $5 ESCAPE '\' ORDER BY cursor DESC LIMIT $6`,
		string(q.Kind), q.Archived, false, before, "%"+unlike.Replace(store.Fold(q.Text))+"%", limit+1)
	if len(found) > limit {
		return found[:limit], true, err
	}
	return found, false, err
}

// Since gives what changed after a cursor.
func (s *Store) Since(ctx context.Context, cursor int64, limit int) ([]store.Entry, error) {
	return s.entries(ctx, `SELECT `+entryColumns+` FROM plashet_document WHERE cursor > $1 ORDER BY cursor LIMIT $2`, cursor, store.Limit(limit))
}

func (s *Store) entries(ctx context.Context, query string, args ...any) (found []store.Entry, err error) {
	rows, err := s.read.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, told(ctx, err)
	}
	defer func() { err = errors.Join(err, told(ctx, rows.Close())) }()
	for rows.Next() {
		var e store.Entry
		var changed int64
		sum := &e.Summary
		if err := rows.Scan(&e.ID, &e.Kind, &e.Number, &e.Who, &changed, &sum.Name, &sum.Place, &sum.Stage, &sum.Worst, &sum.Weight, &e.Archived, &e.Deleted, &e.Cursor); err != nil {
			return nil, told(ctx, err)
		}
		e.When = time.UnixMicro(changed).UTC()
		found = append(found, e)
	}
	return found, told(ctx, rows.Err())
}

// Get gives the newest revision.
func (s *Store) Get(ctx context.Context, id string) (store.Revision, error) {
	if !store.Named(id) {
		return store.Revision{}, store.ErrNone
	}
	r, err := one(s.read.QueryRowContext(ctx, getSQL, id))
	if err == nil && r.Deleted {
		err = store.ErrGone
	}
	return r, told(ctx, err)
}

// At gives one revision.
func (s *Store) At(ctx context.Context, id string, number int) (store.Revision, error) {
	if !store.Named(id) {
		return store.Revision{}, store.ErrNone
	}
	r, err := one(s.read.QueryRowContext(ctx, atSQL, id, number))
	return r, told(ctx, err)
}

// scanner is a row, or one of several.
type scanner interface{ Scan(...any) error }

func scan(row scanner, more ...any) (store.Revision, error) {
	var r store.Revision
	var changed int64
	sum := &r.Summary
	err := row.Scan(append([]any{
		&r.ID, &r.Kind, &r.Number, &r.Who, &changed, &r.What, &sum.Name, &sum.Place, &sum.Stage, &sum.Worst, &sum.Weight, &r.Archived, &r.Deleted, &r.BackTo, &r.Digest,
	}, more...)...)
	r.When = time.UnixMicro(changed).UTC()
	return r, err
}

// one reads a revision with its bytes and holds them against their digest.
func one(row *sql.Row) (store.Revision, error) {
	var data []byte
	r, err := scan(row, &data)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return store.Revision{}, store.ErrNone
	case err != nil:
		return store.Revision{}, err
	case store.Digest(data) != r.Digest:
		return store.Revision{}, store.ErrDamaged
	}
	if len(data) > 0 {
		r.Data = data
	}
	return r, nil
}

// statesSQL looks in the index of digests: all that begin with some digits lie
// between these and the same with a sign behind them that comes after every digit.
// CROSS JOIN keeps SQLite from beginning with the documents, whatever it thinks of
// how many there are; to PostgreSQL it is a join like another.
const statesSQL = `SELECT ` + revisionColumns + ` FROM plashet_revision r CROSS JOIN plashet_document d
	WHERE r.digest >= $1 AND r.digest < $2 AND r.kind = $3 AND r.deleted = $4 AND d.id = r.id
	ORDER BY d.cursor DESC, r.number DESC`

// States gives the revisions whose digest begins with digits, the newest of each
// document. Those alike of one document are read and left out here: a state is
// come back to a few times, not thousands.
func (s *Store) States(ctx context.Context, kind store.Kind, digits string, limit int) ([]store.Revision, error) {
	if !store.Digits(digits) || !store.Named(string(kind)) {
		return nil, ctx.Err()
	}
	all, err := s.revisions(ctx, statesSQL, digits, digits+"g", string(kind), false)
	found := slices.CompactFunc(all, func(a, b store.Revision) bool { return a.ID == b.ID })
	return found[:min(len(found), store.Limit(limit))], err
}

// revisions reads several without their bytes.
func (s *Store) revisions(ctx context.Context, query string, args ...any) (found []store.Revision, err error) {
	rows, err := s.read.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, told(ctx, err)
	}
	defer func() { err = errors.Join(err, told(ctx, rows.Close())) }()
	for rows.Next() {
		r, err := scan(rows)
		if err != nil {
			return nil, told(ctx, err)
		}
		found = append(found, r)
	}
	return found, told(ctx, rows.Err())
}

// History gives the revisions without their bytes.
func (s *Store) History(ctx context.Context, id string, before, limit int) (found []store.Revision, err error) {
	if !store.Named(id) {
		return nil, store.ErrNone
	}
	top := int64(before)
	if before <= 0 {
		top = math.MaxInt64
	}
	found, err = s.revisions(ctx, `SELECT `+revisionColumns+` FROM plashet_revision r WHERE r.number < $2 AND r.id = $1 ORDER BY r.number DESC LIMIT $3`, id, top, store.Limit(limit))
	if err != nil {
		return nil, err
	}
	if len(found) == 0 {
		if _, err := s.At(ctx, id, 1); err != nil {
			return nil, err
		}
	}
	return found, nil
}

// Place gives what a person keeps with a document.
func (s *Store) Place(ctx context.Context, id, name string) ([]byte, error) {
	if !store.Named(id) || !store.Named(name) {
		return nil, ctx.Err()
	}
	var value []byte
	err := s.read.QueryRowContext(ctx, `SELECT value FROM plashet_place WHERE name = $2 AND id = $1`, id, name).Scan(&value)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil
	}
	return value, told(ctx, err)
}

// Places names what is kept with a document.
func (s *Store) Places(ctx context.Context, id string) (names []string, err error) {
	if !store.Named(id) {
		return nil, ctx.Err()
	}
	rows, err := s.read.QueryContext(ctx, `SELECT name FROM plashet_place WHERE id = $1`, id)
	if err != nil {
		return nil, told(ctx, err)
	}
	defer func() { err = errors.Join(err, told(ctx, rows.Close())) }()
	for rows.Next() {
		var n string
		if err := rows.Scan(&n); err != nil {
			return nil, told(ctx, err)
		}
		names = append(names, n)
	}
	slices.Sort(names) // not by the database, whose order of letters is its own
	return names, told(ctx, rows.Err())
}
