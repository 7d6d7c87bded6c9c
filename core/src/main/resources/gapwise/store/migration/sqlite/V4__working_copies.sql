-- What people are at work on and have not handed in: overwritten as they go, no part of the history.
CREATE TABLE working_copy (
  kind       TEXT    NOT NULL,
  copy_key   TEXT    NOT NULL,
  version    INTEGER NOT NULL,
  written_at TEXT    NOT NULL,
  written_by TEXT    NOT NULL,
  content    TEXT    NOT NULL,
  CONSTRAINT one_copy UNIQUE (kind, copy_key)
);
