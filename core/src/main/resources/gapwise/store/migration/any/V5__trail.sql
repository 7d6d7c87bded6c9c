-- Who did what and when, one entry after another. Plain SQL.
CREATE TABLE trail_entry (
  entry_number BIGINT NOT NULL PRIMARY KEY,
  happened_at  TEXT   NOT NULL,
  kind         TEXT   NOT NULL,
  person       TEXT   NOT NULL,
  address      TEXT   NOT NULL,
  subject      TEXT   NOT NULL,
  outcome      TEXT   NOT NULL
);

CREATE INDEX trail_entry_of_person ON trail_entry (person, entry_number);
