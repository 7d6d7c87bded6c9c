package gapwise.analysis.rows;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * From a plan's source to rows.
 *
 * @param folder where relative names of tables start; empty if no file may be read
 * @param evidence the curated store; empty if there is none
 */
public record SourceReader(Optional<Path> folder, Optional<EvidenceRows> evidence) {

  /**
   * Reads.
   *
   * @param measure the plan's, which says what roles selected rows need
   */
  public DataTable read(Sources sources, String measure) {
    if (sources.first().isEmpty()) {
      return new DataTable(
          Set.of(), List.of(), List.of(), Hash.sha256("".getBytes(StandardCharsets.UTF_8)));
    }
    DataTable table = read(sources.first().get(), "source", measure);
    return sources
        .beside()
        .map(second -> table.with(read(second.source(), second.field(), measure)))
        .orElse(table);
  }

  private DataTable read(Source source, String where, String measure) {
    if (source instanceof Source.Table file) {
      return table(file.name(), where);
    }
    if (source instanceof Source.Rows given) {
      return rows(given.rows(), where);
    }
    return selected(((Source.Evidence) source).selection(), measure);
  }

  private DataTable table(String name, String where) {
    if (folder.isEmpty()) {
      throw wrong(
          where + ".table",
          "no-files-here",
          "a plan sent here cannot read the file '"
              + name
              + "'; put the rows into "
              + where
              + ".rows");
    }
    return PlanTable.read(folder.get().resolve(name), name, where + ".table");
  }

  private static DataTable rows(JsonNode given, String where) {
    Set<String> columns = new LinkedHashSet<>();
    List<DataTable.Row> rows = new ArrayList<>();
    Problems wrong = new Problems();
    for (JsonNode row : given) {
      Work.check();
      int number = rows.size() + 1;
      Map<String, RowValue> cells = new LinkedHashMap<>();
      row.fields()
          .forEachRemaining(
              field -> {
                columns.add(field.getKey());
                if (field.getValue().isContainerNode()) {
                  wrong.add(
                      where + ".rows[" + (number - 1) + "]." + field.getKey(),
                      "wrong-type",
                      "found a list or an object, expected a number or text");
                } else if (!field.getValue().asText("").isBlank() && !field.getValue().isNull()) {
                  cells.put(field.getKey(), RowValue.of(field.getValue()));
                }
              });
      rows.add(new DataTable.Row(number, cells));
    }
    if (!wrong.isEmpty()) {
      throw new WrongInputException(wrong.list());
    }
    return new DataTable(
        columns, rows, List.of(), Hash.sha256(given.toString().getBytes(StandardCharsets.UTF_8)));
  }

  private DataTable selected(JsonNode selection, String measure) {
    if (evidence.isEmpty()) {
      throw wrong(
          "source.evidence",
          "no-evidence-store",
          "there is no curated store here to select from; name its folder, or give source.table or"
              + " source.rows");
    }
    EvidenceRows.Selected selected = evidence.get().rows(selection, measure);
    Set<String> columns = new LinkedHashSet<>();
    List<DataTable.Row> rows = new ArrayList<>();
    for (Map<String, RowValue> cells : selected.rows()) {
      columns.addAll(new TreeSet<>(cells.keySet()));
      Map<String, RowValue> filled = new TreeMap<>(cells);
      filled.values().removeIf(RowValue.BLANK::equals);
      rows.add(new DataTable.Row(rows.size() + 1, filled));
    }
    if (rows.isEmpty()) {
      throw wrong(
          "source.evidence",
          "nothing-selected",
          "no arm in the curated store answers this selection; widen it");
    }
    Work.require(
        Limit.ROWS,
        rows.size(),
        "source.evidence",
        "Narrow the selection, for one outcome at a time.");
    return new DataTable(
        columns,
        rows,
        selected.warnings(),
        selected.reported(),
        selected.sha256(),
        selected.extraction(),
        Optional.empty());
  }

  private static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }
}
