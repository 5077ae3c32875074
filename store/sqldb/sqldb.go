// Package sqldb keeps documents in a database: in SQLite, a file of the
// machine, or in PostgreSQL, where several servers may work upon one. Both run
// the same SQL and the same migrations; docs/store.md tells how they keep what
// package store promises.
//
// Saves stand in one queue: each locks the counter's row first. That makes
// their order the order in which they become visible, so that Since misses
// none, and lets a save look at the newest revision without another coming in
// between. What a queue costs is told in docs/speed.md.
package sqldb

import (
	"context"
	"database/sql"
	"errors"

	"plashet/store"
)

// Store keeps documents; Open makes one.
type Store struct {
	write, read *sql.DB
	begin       *sql.TxOptions
}

// Close ends the use of the store.
func (s *Store) Close() error {
	err := s.write.Close()
	if s.read != s.write {
		err = errors.Join(err, s.read.Close())
	}
	return err
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

// inTx runs work in a transaction, which stands whole or not at all.
func (s *Store) inTx(ctx context.Context, work func(*sql.Tx) error) error {
	tx, err := s.write.BeginTx(ctx, s.begin)
	if err != nil {
		return told(ctx, err)
	}
	defer func() { _ = tx.Rollback() }() // does nothing once it is written
	if err := work(tx); err != nil {
		return told(ctx, err)
	}
	return told(ctx, tx.Commit())
}

func (s *Store) save(ctx context.Context, kind store.Kind, id string, base int, act store.Act, c store.Change) (store.Revision, error) {
	var made store.Revision
	if !store.Named(id) { // no database need be asked, and PostgreSQL would not take it
		return made, store.ErrName
	}
	err := s.inTx(ctx, func(tx *sql.Tx) error {
		var cursor int64
		if err := tx.QueryRowContext(ctx, `UPDATE plashet_counter SET last = last + 1 WHERE id = 1 RETURNING last`).Scan(&cursor); err != nil {
			return err
		}
		newest, err := head(ctx, tx, id)
		if err != nil {
			return err
		}
		made, err = store.Next(newest, kind, id, base, act, c)
		var stale *store.Stale
		if errors.As(err, &stale) {
			full, err := one(tx.QueryRowContext(ctx, atSQL, id, newest.Number))
			if err != nil {
				return err
			}
			stale.Newest = full
			return stale
		}
		if err != nil {
			return err
		}
		return insert(ctx, tx, made, cursor)
	})
	if err != nil {
		return store.Revision{}, err
	}
	made.Data = append([]byte(nil), made.Data...) // not the caller's own bytes
	return made, nil
}

// head gives the newest revision without its bytes, nil where there is none.
func head(ctx context.Context, tx *sql.Tx, id string) (*store.Revision, error) {
	r := store.Revision{ID: id}
	err := tx.QueryRowContext(ctx, `SELECT kind, number, archived, deleted FROM plashet_document WHERE id = $1`, id).Scan(&r.Kind, &r.Number, &r.Archived, &r.Deleted)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil
	}
	return &r, err
}

func insert(ctx context.Context, tx *sql.Tx, r store.Revision, cursor int64) error {
	changed, sum := r.When.UnixMicro(), r.Summary
	data := r.Data
	if data == nil {
		data = []byte{} // empty, not absent
	}
	if _, err := tx.ExecContext(ctx, `INSERT INTO plashet_revision
		(id, number, kind, who, changed, what, name, place, stage, worst, weight, archived, deleted, back_to, digest, data)
		VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16)`,
		r.ID, r.Number, string(r.Kind), r.Who, changed, r.What, sum.Name, sum.Place, sum.Stage, sum.Worst, sum.Weight, r.Archived, r.Deleted, r.BackTo, r.Digest, data); err != nil {
		return err
	}
	_, err := tx.ExecContext(ctx, `INSERT INTO plashet_document
		(id, kind, number, cursor, who, changed, name, place, stage, worst, weight, archived, deleted, sought)
		VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14)
		ON CONFLICT (id) DO UPDATE SET number = excluded.number, cursor = excluded.cursor, who = excluded.who, changed = excluded.changed,
			name = excluded.name, place = excluded.place, stage = excluded.stage, worst = excluded.worst, weight = excluded.weight,
			archived = excluded.archived, deleted = excluded.deleted, sought = excluded.sought`,
		r.ID, string(r.Kind), r.Number, cursor, r.Who, changed, sum.Name, sum.Place, sum.Stage, sum.Worst, sum.Weight, r.Archived, r.Deleted, store.Sought(sum))
	return err
}

// SetPlace replaces what a person keeps with a document.
func (s *Store) SetPlace(ctx context.Context, id, name string, value []byte) error {
	switch {
	case !store.Named(id):
		return store.ErrNone
	case !store.Named(name):
		return store.ErrName
	case len(value) > store.MostPlace:
		return store.ErrLarge
	}
	return s.inTx(ctx, func(tx *sql.Tx) error {
		newest, err := head(ctx, tx, id)
		switch {
		case err != nil:
			return err
		case newest == nil:
			return store.ErrNone
		case len(value) == 0:
			_, err = tx.ExecContext(ctx, `DELETE FROM plashet_place WHERE name = $2 AND id = $1`, id, name)
		default:
			_, err = tx.ExecContext(ctx, `INSERT INTO plashet_place (id, name, value) VALUES ($1, $2, $3) ON CONFLICT (id, name) DO UPDATE SET value = excluded.value`, id, name, value)
		}
		return err
	})
}
