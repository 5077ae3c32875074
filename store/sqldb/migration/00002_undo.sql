-- +goose Up
-- Of an undo, the state that it brought back; 0 of every other save. What was
-- undone before this column was there counts as a change of its own.
ALTER TABLE plashet_revision ADD COLUMN back_to BIGINT NOT NULL DEFAULT 0;

-- +goose Down
ALTER TABLE plashet_revision DROP COLUMN back_to;
