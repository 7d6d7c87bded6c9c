-- History is only ever added to: the database itself refuses anything else, whoever asks.
-- Triggers are the one part that each database words in its own way.
CREATE TRIGGER document_version_is_never_changed
BEFORE UPDATE ON document_version
BEGIN
  SELECT RAISE(ABORT, 'a version of a document is never changed');
END;

CREATE TRIGGER document_version_is_never_deleted
BEFORE DELETE ON document_version
BEGIN
  SELECT RAISE(ABORT, 'a version of a document is never deleted');
END;

-- Also stops INSERT OR REPLACE, which would overwrite a row without a DELETE being seen.
CREATE TRIGGER document_version_leaves_no_gap
BEFORE INSERT ON document_version
WHEN NEW.change_number <> (SELECT COALESCE(MAX(change_number), 0) + 1 FROM document_version)
  OR NEW.version <> (SELECT COALESCE(MAX(version), 0) + 1
                     FROM document_version
                     WHERE kind = NEW.kind AND document_key = NEW.document_key)
BEGIN
  SELECT RAISE(ABORT, 'change and version numbers count on from the last');
END;
