package gapwise.desk;

import gapwise.exchange.Import;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import gapwise.table.MadeSheet;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** A draft as the sheets of a template, and back from a place in those to its row. */
final class DraftSheets {
  /** The first row below the header, as a sheet counts. */
  private static final int FIRST = 2;

  private final List<MadeSheet> sheets = new ArrayList<>();
  private final Map<String, List<DraftRow>> rows = new HashMap<>();

  DraftSheets(Draft draft) {
    for (String name : Template.names()) {
      // A row that was only begun is none yet.
      List<DraftRow> ofSheet = draft.rows(name).stream().filter(DraftRow::saysSomething).toList();
      rows.put(name, ofSheet);
      if (!ofSheet.isEmpty() || name.equals(Template.STUDIES) || name.equals(Template.ARMS)) {
        sheets.add(sheet(name, ofSheet));
      }
    }
  }

  private static MadeSheet sheet(String name, List<DraftRow> rows) {
    Set<String> used = new LinkedHashSet<>();
    for (TemplateColumn column : Template.columns(name)) {
      boolean readings = column.name().equals(Template.READINGS);
      boolean filled =
          rows.stream()
              .anyMatch(
                  row -> readings ? !row.readings().isEmpty() : !row.text(column.name()).isEmpty());
      if (filled || column.required() || column.name().equals(Template.STUDY)) {
        used.add(column.name());
      }
    }
    List<String> columns = List.copyOf(used);
    return new MadeSheet(
        name,
        columns,
        rows.stream()
            .map(row -> columns.stream().map(column -> text(row, column)).toList())
            .toList());
  }

  private static String text(DraftRow row, String column) {
    return column.equals(Template.READINGS) ? DraftReadings.cell(row) : row.text(column);
  }

  List<MadeSheet> sheets() {
    return List.copyOf(sheets);
  }

  /** The row of a place; empty where the place is a header or the sheet as a whole. */
  Optional<DraftRow> row(Import.Spot spot) {
    List<DraftRow> ofSheet = Objects.requireNonNull(rows.get(spot.sheet()), spot.sheet());
    int index = spot.row() - FIRST;
    return index < 0 || index >= ofSheet.size()
        ? Optional.empty()
        : Optional.of(ofSheet.get(index));
  }
}
