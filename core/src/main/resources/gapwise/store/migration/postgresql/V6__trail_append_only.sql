-- The trail is only ever added to, as with the embedded file.
CREATE FUNCTION trail_entry_is_kept() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'an entry of the trail is never changed or deleted';
END $$;

CREATE TRIGGER trail_entry_is_never_changed
BEFORE UPDATE OR DELETE ON trail_entry
FOR EACH ROW EXECUTE FUNCTION trail_entry_is_kept();

CREATE TRIGGER trail_entry_is_never_emptied
BEFORE TRUNCATE ON trail_entry
FOR EACH STATEMENT EXECUTE FUNCTION trail_entry_is_kept();

CREATE FUNCTION trail_entry_counts_on() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW.entry_number <> (SELECT COALESCE(MAX(entry_number), 0) + 1 FROM trail_entry) THEN
    RAISE EXCEPTION 'entries of the trail count on from the last';
  END IF;
  RETURN NEW;
END $$;

CREATE TRIGGER trail_entry_leaves_no_gap
BEFORE INSERT ON trail_entry
FOR EACH ROW EXECUTE FUNCTION trail_entry_counts_on();
