package gapwise.desk;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Something about a draft that its writer must know, at its cells.
 *
 * @param weight how much it matters
 * @param row number of the draft's row; empty where it is about the draft as a whole
 * @param columns its cells; empty for the row as a whole
 * @param code stable word of its kind
 * @param message what was found and what to do
 * @param key of a doubt, by which it is settled
 */
public record Noted(
    Weight weight,
    OptionalInt row,
    List<String> columns,
    String code,
    String message,
    Optional<String> key) {
  /** How much it matters, the gravest first. */
  public enum Weight {
    /** Cannot be so. */
    IMPOSSIBLE,
    /** Has not been filled in yet. */
    NEEDED,
    /** May be right; a person looks it up and says so. */
    DOUBT,
    /** Was doubted, looked up, and stands. */
    SETTLED,
    /** Stands unless somebody says better. */
    PROPOSAL,
    /** Is what a synthesis would take of the numbers, for their writer to know. */
    USED
  }

  public Noted {
    Objects.requireNonNull(weight, "weight");
    Objects.requireNonNull(row, "row");
    columns = List.copyOf(columns);
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(message, "message");
    Objects.requireNonNull(key, "key");
  }

  /** Whether it is about this cell. */
  public boolean isAt(int draftRow, String column) {
    return row.isPresent() && row.getAsInt() == draftRow && columns.contains(column);
  }
}
