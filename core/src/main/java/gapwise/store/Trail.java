package gapwise.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/**
 * Who did what and when: signing in, rights, requests that write. Entries are only ever added; the
 * database itself refuses to change or delete one. What was added is on the disk. Safe for any
 * number of threads.
 */
public final class Trail {
  private static final String SELECT =
      "SELECT entry_number, happened_at, kind, person, address, subject, outcome FROM trail_entry";

  private final WorkingCopies.Door door;
  private final Clock clock;

  /**
   * One line of the trail.
   *
   * @param number counts from 1, without a gap
   * @param when when it was written
   * @param deed what was done
   */
  public record Entry(long number, Instant when, Deed deed) {
    public Entry {
      Objects.requireNonNull(when, "when");
      Objects.requireNonNull(deed, "deed");
    }
  }

  /**
   * What somebody did, or was refused.
   *
   * @param kind kebab-case word for what it is, such as sign-in
   * @param person name of the account that did it; empty where it is not known
   * @param address where from; empty where that says nothing
   * @param subject what it was done to, such as a route or another account; may be empty
   * @param outcome what became of it, in a word or a number
   */
  public record Deed(String kind, String person, String address, String subject, String outcome) {
    /** Longest text of a part; what is longer is cut, since an entry is never left out. */
    static final int LONGEST = 300;

    public Deed {
      kind = cut(kind);
      person = cut(person);
      address = cut(address);
      subject = cut(subject);
      outcome = cut(outcome);
      if (kind.isBlank()) {
        throw new IllegalArgumentException("a deed has a kind");
      }
    }

    private static String cut(String text) {
      return text.length() <= LONGEST ? text : text.substring(0, LONGEST);
    }
  }

  Trail(WorkingCopies.Door door, Clock clock) {
    this.door = door;
    this.clock = clock;
  }

  /** Adds an entry. */
  public void add(Deed deed) {
    String when = clock.instant().truncatedTo(ChronoUnit.MILLIS).toString();
    door.write(handle -> insert(handle, deed, when));
  }

  private static int insert(Handle handle, Deed deed, String when) {
    return handle
        .createUpdate(
            "INSERT INTO trail_entry"
                + " (entry_number, happened_at, kind, person, address, subject, outcome)"
                + " SELECT COALESCE(MAX(entry_number), 0) + 1,"
                + " :when, :kind, :person, :address, :subject, :outcome FROM trail_entry")
        .bind("when", when)
        .bind("kind", deed.kind())
        .bind("person", deed.person())
        .bind("address", deed.address())
        .bind("subject", deed.subject())
        .bind("outcome", deed.outcome())
        .execute();
  }

  /**
   * The newest entries first.
   *
   * @param person of whom; empty for everybody
   * @param before only entries with a lower number
   * @param most how many at most
   */
  public List<Entry> before(String person, long before, int most) {
    return door.read(
        handle ->
            query(handle, person, before, " LIMIT :most")
                .bind("most", most)
                .map((row, context) -> entry(row))
                .list());
  }

  /** Passes on every entry, the newest first, one at a time in memory. */
  public void forEach(String person, Consumer<Entry> consumer) {
    door.read(
        handle -> {
          query(handle, person, Long.MAX_VALUE, "")
              .map((row, context) -> entry(row))
              .forEach(consumer);
          return true;
        });
  }

  private static Query query(Handle handle, String person, long before, String most) {
    String whose = person.isEmpty() ? "" : " AND person = :person";
    Query query =
        handle
            .createQuery(
                SELECT
                    + " WHERE entry_number < :before"
                    + whose
                    + " ORDER BY entry_number DESC"
                    + most)
            .bind("before", before);
    return person.isEmpty() ? query : query.bind("person", person);
  }

  private static Entry entry(ResultSet row) throws SQLException {
    return new Entry(
        row.getLong(1),
        Instant.parse(row.getString(2)),
        new Deed(
            row.getString(3),
            row.getString(4),
            row.getString(5),
            row.getString(6),
            row.getString(7)));
  }
}
