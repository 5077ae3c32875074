-- +goose Up
-- Finds the states that a printed sheet may be of by the digits at its foot.
CREATE INDEX plashet_revision_digest ON plashet_revision (digest);

-- +goose Down
DROP INDEX plashet_revision_digest;
