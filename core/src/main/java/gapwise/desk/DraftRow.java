package gapwise.desk;

import gapwise.evidence.Reading;
import gapwise.exchange.Template;
import java.util.Collections;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One row of the template while it is being filled.
 *
 * @param number names the row within its draft; never used again for another
 * @param sheet sheet of the template
 * @param block rows of one block stand side by side, one for each group, as a paper prints an
 *     outcome; 0 where a row stands by itself
 * @param cells what stands in its cells by column, those that hold something; without the column of
 *     places, which {@code readings} is
 * @param readings where on the pages of the paper it was read, by column
 */
public record DraftRow(
    int number,
    String sheet,
    int block,
    SortedMap<String, String> cells,
    SortedMap<String, Reading> readings) {
  private static final Set<String> OF_WHAT =
      Set.of(Template.STUDY, Template.ARM, Template.OUTCOME, "unit", "unit_counted", "clock");

  private static final Set<String> OF_WHICH_ITEM =
      Set.of(Template.STUDY, "instrument", "instrument_version", "outcome", "comparison", "item");

  private static final Set<String> OF_WHICH_CURVE =
      Set.of(Template.STUDY, Template.ARM, Template.OUTCOME, "time_unit", "shows");

  public DraftRow {
    Objects.requireNonNull(sheet, "sheet");
    if (number < 1 || block < 0) {
      throw new IllegalArgumentException(
          "a row's number counts from 1, its block from 0, were " + number + " and " + block);
    }
    cells = Collections.unmodifiableSortedMap(new TreeMap<>(cells));
    readings = Collections.unmodifiableSortedMap(new TreeMap<>(readings));
    for (String column : cells.keySet()) {
      if (Template.column(sheet, column).isEmpty() || column.equals(Template.READINGS)) {
        throw new IllegalArgumentException("sheet " + sheet + " has no cell for " + column);
      }
    }
  }

  /** What stands in a cell; empty text where nothing does. */
  public String text(String column) {
    return cells.getOrDefault(column, "");
  }

  /** Where a cell was read, if that was kept. */
  public Optional<Reading> reading(String column) {
    return Optional.ofNullable(readings.get(column));
  }

  /**
   * With another text in one cell.
   *
   * @param text blank for nothing
   * @param reading where it was read; where there is none, the place of what stood there goes too
   */
  DraftRow with(String column, String text, Optional<Reading> reading) {
    SortedMap<String, String> otherCells = new TreeMap<>(cells);
    SortedMap<String, Reading> otherReadings = new TreeMap<>(readings);
    otherReadings.remove(column);
    if (text.isBlank()) {
      otherCells.remove(column);
    } else {
      otherCells.put(column, text.strip());
      reading.ifPresent(place -> otherReadings.put(column, place));
    }
    return new DraftRow(number, sheet, block, otherCells, otherReadings);
  }

  /** Whether it says anything but of whom and of what it is. */
  boolean saysSomething() {
    Set<String> ofWhat =
        sheet.equals(Template.OUTCOMES)
            ? OF_WHAT
            : sheet.equals(Template.APPRAISAL)
                ? OF_WHICH_ITEM
                : sheet.equals(Template.CURVES) ? OF_WHICH_CURVE : Set.of();
    return ofWhat.isEmpty() || cells.keySet().stream().anyMatch(column -> !ofWhat.contains(column));
  }
}
