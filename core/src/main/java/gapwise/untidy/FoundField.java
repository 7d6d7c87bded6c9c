package gapwise.untidy;

import gapwise.printed.Proposed;
import gapwise.printed.Said;
import java.util.Objects;
import java.util.Optional;

/**
 * One value found for the template, with its place and what becomes of it.
 *
 * @param into the sheet of the template
 * @param whose of which study, group and patient
 * @param outcome the code of the outcome, on the sheet of outcomes
 * @param row what else tells its row: when it was observed
 * @param value the column, the value, its state and its doubt
 * @param sheet the grid's name
 * @param cell the id of the cell it stands in
 * @param carriedFrom the id of the cell from which a blank or ditto mark takes it
 * @param words what stands in the cell
 */
public record FoundField(
    String into,
    Whose whose,
    Optional<String> outcome,
    Row row,
    Proposed value,
    String sheet,
    String cell,
    Optional<String> carriedFrom,
    String words) {
  public FoundField {
    Objects.requireNonNull(into, "into");
    Objects.requireNonNull(whose, "whose");
    Objects.requireNonNull(value, "value");
  }

  /** Of which study, group and patient; names are those of the reading, letters for groups. */
  public record Whose(String study, Optional<String> arm, Optional<String> patient) {}

  /** What tells several rows of one outcome apart. */
  public record Row(Optional<Said.TimePoint> timePoint, Optional<String> subgroup) {
    static final Row WHOLE = new Row(Optional.empty(), Optional.empty());
  }

  /** The same under another name of its cell, as one among values of several tables. */
  public FoundField in(String otherCell) {
    return new FoundField(into, whose, outcome, row, value, sheet, otherCell, carriedFrom, words);
  }

  FoundField with(Proposed other) {
    return new FoundField(into, whose, outcome, row, other, sheet, cell, carriedFrom, words);
  }

  /** Fields that share a row of the template. */
  String rowKey() {
    return into + "|" + whose + "|" + outcome + "|" + row;
  }
}
