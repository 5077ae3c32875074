package sqldb_test

import (
	"context"
	"database/sql"
	"path/filepath"
	"strings"
	"testing"

	"plashet/store"
	"plashet/store/sqldb"
)

// TestDigestIndex: a state is looked for in the index of digests, in a new
// database and in one that was made before there was an index.
func TestDigestIndex(t *testing.T) {
	at := filepath.Join(t.TempDir(), "digests.db")
	ctx := context.Background()
	s := open(t, at)
	old, err := s.Put(ctx, store.Job, "old", 0, store.Change{Data: []byte("as printed")})
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	raw, err := sql.Open("sqlite", at)
	if err != nil {
		t.Fatal(err)
	}
	plan := func() string {
		t.Helper()
		raw, err := sql.Open("sqlite", at) // anew: an explanation is not asked for the tables' newest state
		if err != nil {
			t.Fatal(err)
		}
		defer func() { _ = raw.Close() }()
		rows, err := raw.QueryContext(ctx, `EXPLAIN QUERY PLAN `+sqldb.StatesSQL, old.Digest[:8], old.Digest[:8]+"g", "job", false)
		if err != nil {
			t.Fatal(err)
		}
		defer func() { _ = rows.Close() }()
		var all strings.Builder
		for rows.Next() {
			var id, parent, none int
			var what string
			if err := rows.Scan(&id, &parent, &none, &what); err != nil {
				t.Fatal(err)
			}
			all.WriteString(what + "\n")
		}
		if err := rows.Err(); err != nil {
			t.Fatal(err)
		}
		return all.String()
	}
	const index = "USING INDEX plashet_revision_digest"
	if p := plan(); !strings.Contains(p, index) || strings.Contains(p, "SCAN r\n") {
		t.Errorf("looked for by\n%s", p)
	}
	for _, q := range []string{`DROP INDEX plashet_revision_digest`, `DELETE FROM plashet_version WHERE version_id >= 3`} {
		if _, err := raw.ExecContext(ctx, q); err != nil {
			t.Fatal(err)
		}
	}
	if p := plan(); strings.Contains(p, index) {
		t.Fatalf("the index is still there: %s", p)
	}
	s = open(t, at)
	if p := plan(); !strings.Contains(p, index) {
		t.Errorf("after the upgrade looked for by\n%s", p)
	}
	found, err := s.States(ctx, store.Job, old.Digest[:8], 5)
	if err != nil || len(found) != 1 || found[0].ID != "old" || found[0].Number != 1 {
		t.Errorf("%+v, %v", found, err)
	}
	if err := raw.Close(); err != nil {
		t.Error(err)
	}
	if err := s.Close(); err != nil {
		t.Error(err)
	}
}
