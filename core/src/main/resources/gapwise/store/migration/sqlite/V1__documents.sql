-- Every version of every document, and with its change number the one change log.
-- Plain SQL: the same statements serve a server database later, where change_number becomes BIGINT.
CREATE TABLE document_version (
  change_number INTEGER NOT NULL PRIMARY KEY,
  kind          TEXT    NOT NULL,
  document_key  TEXT    NOT NULL,
  version       INTEGER NOT NULL,
  written_at    TEXT    NOT NULL,
  written_by    TEXT    NOT NULL,
  reason        TEXT    NOT NULL,
  -- NULL marks a deletion.
  content       TEXT,
  CONSTRAINT version_of_document UNIQUE (kind, document_key, version)
);
