-- The trail is only ever added to. Triggers are the one part that each database words in its own way:
-- these are SQLite's.
CREATE TRIGGER trail_entry_is_never_changed
BEFORE UPDATE ON trail_entry
BEGIN
  SELECT RAISE(ABORT, 'an entry of the trail is never changed');
END;

CREATE TRIGGER trail_entry_is_never_deleted
BEFORE DELETE ON trail_entry
BEGIN
  SELECT RAISE(ABORT, 'an entry of the trail is never deleted');
END;

-- Also stops INSERT OR REPLACE, which would overwrite a row without a DELETE being seen.
CREATE TRIGGER trail_entry_leaves_no_gap
BEFORE INSERT ON trail_entry
WHEN NEW.entry_number <> (SELECT COALESCE(MAX(entry_number), 0) + 1 FROM trail_entry)
BEGIN
  SELECT RAISE(ABORT, 'entries of the trail count on from the last');
END;
