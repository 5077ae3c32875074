-- One text for SQLite and PostgreSQL: SQLite takes any name of a type, and
-- keeps bytes as bytes whatever the column is called.

-- +goose Up
-- The order of the saves. Whoever saves takes the next number first and keeps
-- the row locked until the save is written: numbers become visible in order,
-- without a gap, which a sequence of PostgreSQL would not promise.
CREATE TABLE plashet_counter (
    id BIGINT PRIMARY KEY,
    last BIGINT NOT NULL
);
INSERT INTO plashet_counter (id, last) VALUES (1, 0);

-- Every document as it stands, for the list.
CREATE TABLE plashet_document (
    id TEXT PRIMARY KEY,
    kind TEXT NOT NULL,
    number BIGINT NOT NULL,
    cursor BIGINT NOT NULL,
    who TEXT NOT NULL,
    changed BIGINT NOT NULL, -- microseconds since 1970
    name TEXT NOT NULL,
    place TEXT NOT NULL,
    stage TEXT NOT NULL,
    worst TEXT NOT NULL,
    weight BIGINT NOT NULL,
    archived BOOLEAN NOT NULL,
    deleted BOOLEAN NOT NULL,
    sought TEXT NOT NULL -- name and place, folded
);
CREATE UNIQUE INDEX plashet_document_cursor ON plashet_document (cursor);
CREATE INDEX plashet_document_list ON plashet_document (kind, archived, deleted, cursor);

-- Every state that a document had. Rows are only added.
CREATE TABLE plashet_revision (
    id TEXT NOT NULL,
    number BIGINT NOT NULL,
    kind TEXT NOT NULL,
    who TEXT NOT NULL,
    changed BIGINT NOT NULL,
    what TEXT NOT NULL,
    name TEXT NOT NULL,
    place TEXT NOT NULL,
    stage TEXT NOT NULL,
    worst TEXT NOT NULL,
    weight BIGINT NOT NULL,
    archived BOOLEAN NOT NULL,
    deleted BOOLEAN NOT NULL,
    digest TEXT NOT NULL,
    data BYTEA NOT NULL,
    PRIMARY KEY (id, number)
);

-- What a person keeps with a document.
CREATE TABLE plashet_place (
    id TEXT NOT NULL,
    name TEXT NOT NULL,
    value BYTEA NOT NULL,
    PRIMARY KEY (id, name)
);

-- +goose Down
DROP TABLE plashet_place;
DROP TABLE plashet_revision;
DROP TABLE plashet_document;
DROP TABLE plashet_counter;
