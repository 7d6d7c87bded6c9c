package gapwise.desk;

import gapwise.evidence.Reading;
import gapwise.exchange.Template;
import gapwise.exchange.form.ListForm;
import gapwise.exchange.form.MissingWords;
import gapwise.exchange.form.ReadingForm;
import gapwise.exchange.form.UnreadableException;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** The places of a row, which the template keeps in one cell and the desk beside each cell. */
final class DraftReadings {
  private static final ListForm<Reading> FORM = new ListForm<>(new ReadingForm());

  private DraftReadings() {}

  /** A row of the template as a row of a draft. */
  static DraftRow row(int number, int block, Template.FilledRow filled) {
    SortedMap<String, String> cells = new TreeMap<>(filled.cells());
    SortedMap<String, Reading> readings = new TreeMap<>();
    String text = cells.remove(Template.READINGS);
    if (text != null && MissingWords.read(text).isEmpty()) {
      try {
        FORM.read(text).forEach(reading -> readings.put(reading.column(), reading));
      } catch (UnreadableException unreadable) {
        throw new IllegalStateException("places that were just written", unreadable);
      }
    }
    return new DraftRow(number, filled.sheet(), block, cells, readings);
  }

  /** The cell of the template that holds the places of a row; empty text where it has none. */
  static String cell(DraftRow row) {
    return FORM.write(List.copyOf(row.readings().values()));
  }
}
