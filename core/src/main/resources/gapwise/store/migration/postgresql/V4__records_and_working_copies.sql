-- The layout that the first four migrations give the embedded file, in one step: there are no older server databases.
-- Texts that are compared or sorted go by their bytes, as in the embedded file, whatever language the server speaks.
CREATE TABLE document_version (
  change_number  BIGINT           NOT NULL PRIMARY KEY,
  kind           TEXT COLLATE "C" NOT NULL,
  document_key   TEXT COLLATE "C" NOT NULL,
  version        INTEGER          NOT NULL,
  written_at     TEXT COLLATE "C" NOT NULL,
  written_by     TEXT             NOT NULL,
  reason         TEXT             NOT NULL,
  -- NULL marks a deletion.
  content        TEXT,
  content_sha256 TEXT,
  CONSTRAINT version_of_document UNIQUE (kind, document_key, version)
);

-- History is only ever added to: the database itself refuses anything else, whoever asks.
CREATE FUNCTION document_version_is_kept() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'a version of a document is never changed or deleted';
END $$;

CREATE TRIGGER document_version_is_never_changed
BEFORE UPDATE OR DELETE ON document_version
FOR EACH ROW EXECUTE FUNCTION document_version_is_kept();

CREATE TRIGGER document_version_is_never_emptied
BEFORE TRUNCATE ON document_version
FOR EACH STATEMENT EXECUTE FUNCTION document_version_is_kept();

CREATE FUNCTION document_version_counts_on() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW.change_number <> (SELECT COALESCE(MAX(change_number), 0) + 1 FROM document_version)
    OR NEW.version <> (SELECT COALESCE(MAX(version), 0) + 1
                       FROM document_version
                       WHERE kind = NEW.kind AND document_key = NEW.document_key)
  THEN
    RAISE EXCEPTION 'change and version numbers count on from the last';
  END IF;
  RETURN NEW;
END $$;

CREATE TRIGGER document_version_leaves_no_gap
BEFORE INSERT ON document_version
FOR EACH ROW EXECUTE FUNCTION document_version_counts_on();

-- What people are at work on and have not handed in: overwritten as they go, no part of the history.
CREATE TABLE working_copy (
  kind       TEXT COLLATE "C" NOT NULL,
  copy_key   TEXT COLLATE "C" NOT NULL,
  version    INTEGER          NOT NULL,
  written_at TEXT COLLATE "C" NOT NULL,
  written_by TEXT             NOT NULL,
  content    TEXT             NOT NULL,
  CONSTRAINT one_copy UNIQUE (kind, copy_key)
);

-- Tells this base from every other, so that a home notices when the setting names another one.
CREATE TABLE base_identity (
  only_row INTEGER NOT NULL PRIMARY KEY CHECK (only_row = 1),
  id       TEXT    NOT NULL
);
INSERT INTO base_identity
SELECT 1, md5(random()::text || ' ' || clock_timestamp()::text || ' ' || pg_backend_pid()::text);
