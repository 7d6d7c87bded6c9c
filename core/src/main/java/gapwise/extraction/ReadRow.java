package gapwise.extraction;

import gapwise.evidence.Reading;
import gapwise.evidence.Study;
import gapwise.exchange.Template;
import gapwise.exchange.form.ListForm;
import gapwise.exchange.form.MissingWords;
import gapwise.exchange.form.ReadingForm;
import gapwise.exchange.form.UnreadableException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A row of the template as one person filled it. The rows of one curve are one: its points are read
 * off together.
 *
 * @param sheet sheet of the template
 * @param number its number among the rows of its sheet, from 1
 * @param cells what stands in it by column, without the column of places
 * @param readings where it was read, by column
 * @param further the rows after the first, of a curve
 */
public record ReadRow(
    String sheet,
    int number,
    Map<String, String> cells,
    Map<String, Reading> readings,
    List<ReadRow> further) {
  private static final ListForm<Reading> FORM = new ListForm<>(new ReadingForm());

  public ReadRow {
    Objects.requireNonNull(sheet, "sheet");
    cells = Collections.unmodifiableMap(new LinkedHashMap<>(cells));
    readings = Collections.unmodifiableMap(new TreeMap<>(readings));
    further = List.copyOf(further);
  }

  /** What stands in a cell; empty text where nothing does. */
  public String text(String column) {
    return cells.getOrDefault(column, "");
  }

  /** Where a cell was read. */
  public Optional<Reading> reading(String column) {
    return Optional.ofNullable(readings.get(column));
  }

  ReadRow withCells(Map<String, String> other, Map<String, Reading> places) {
    return new ReadRow(sheet, number, other, places, further);
  }

  /** The rows of a study, sheet by sheet in their order. */
  static List<ReadRow> of(Study study) {
    List<ReadRow> rows = new ArrayList<>();
    Map<String, Integer> counted = new HashMap<>();
    Map<List<String>, Integer> curves = new HashMap<>();
    for (Template.FilledRow filled : Template.rows(study)) {
      boolean curve = filled.sheet().equals(Template.CURVES);
      List<String> whose =
          List.of(
              filled.cells().getOrDefault(Template.ARM, ""),
              filled.cells().getOrDefault(Template.OUTCOME, ""));
      Optional<Integer> at = Optional.ofNullable(curves.get(whose)).filter(some -> curve);
      if (at.isPresent()) {
        ReadRow first = rows.get(at.get());
        List<ReadRow> further = new ArrayList<>(first.further());
        further.add(row(filled, first.number()));
        rows.set(
            at.get(),
            new ReadRow(first.sheet(), first.number(), first.cells(), first.readings(), further));
      } else {
        if (curve) {
          curves.put(whose, rows.size());
        }
        rows.add(row(filled, counted.merge(filled.sheet(), 1, Integer::sum)));
      }
    }
    return List.copyOf(rows);
  }

  private static ReadRow row(Template.FilledRow filled, int number) {
    Map<String, String> cells = new LinkedHashMap<>(filled.cells());
    Map<String, Reading> readings = new TreeMap<>();
    String text = Optional.ofNullable(cells.remove(Template.READINGS)).orElse("");
    if (!text.isEmpty() && MissingWords.read(text).isEmpty()) {
      try {
        FORM.read(text).forEach(reading -> readings.put(reading.column(), reading));
      } catch (UnreadableException unreadable) {
        throw new IllegalStateException("places that were just written", unreadable);
      }
    }
    return new ReadRow(filled.sheet(), number, cells, readings, List.of());
  }
}
