package gapwise.desk;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.KnownEvidence;
import gapwise.exchange.Template;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The quantities and effects of a draft as the import reads them, whatever else of the draft is not
 * yet there or not yet right. A row in which something cannot be so is left out.
 *
 * @param study the study with those rows alone; what the numbers do not need stands in for itself
 */
record RowsOfDraft(Study study) {
  /**
   * A row whose numbers are wrong is found in the first reading, one that hung on it in the next.
   */
  private static final int READINGS = 4;

  private static final Set<String> KEYS =
      Set.of(Template.STUDY, Template.ARM, "method", "patients");
  private static final List<String> OF_BASELINE = List.of("defect_length_", "age_", "follow_up_");
  private static final Set<String> NOT_NEEDED =
      Set.of(
          "place", "words", "note", "definition", "definition_kinds", "test_words", "value_words");
  private static final Set<String> OF_NUMBERS =
      Set.of(
          "mean",
          "sd",
          "se",
          "ci_lower",
          "ci_upper",
          "median",
          "q1",
          "q3",
          "min",
          "max",
          "spread_unstated",
          "effect_estimate");

  /** Empty where nothing can be read. */
  static Optional<RowsOfDraft> of(Draft draft) {
    List<DraftRow> rows = draft.rows().stream().flatMap(RowsOfDraft::needed).toList();
    for (int reading = 0;
        reading < READINGS && rows.stream().anyMatch(r -> !isOfStudy(r));
        reading++) {
      Draft reduced = with(draft, rows);
      DraftSheets sheets = new DraftSheets(reduced);
      Import.Typed typed = Import.typed(sheets.sheets(), KnownEvidence.NONE, key -> true);
      if (typed.imported() instanceof Imported.Ready ready) {
        return ready.studies().stream().findFirst().map(RowsOfDraft::new);
      }
      rows = without(rows, wrong(sheets, typed));
    }
    return Optional.empty();
  }

  /** The report that a row of outcomes gave; empty where it was left out. */
  Optional<OutcomeReport> report(DraftRow row) {
    Optional<String> marked = Optional.of(mark(row));
    return study.outcomes().stream()
        .filter(one -> one.provenance().place().equals(marked))
        .findFirst();
  }

  private static String mark(DraftRow row) {
    return "row " + row.number();
  }

  private static Draft with(Draft draft, List<DraftRow> rows) {
    return new Draft(
        draft.study(),
        draft.baseVersion(),
        Optional.empty(),
        draft.nextRow(),
        rows,
        List.of(),
        List.of(),
        Optional.empty());
  }

  private static boolean isOfStudy(DraftRow row) {
    return row.sheet().equals(Template.STUDIES);
  }

  private static Stream<DraftRow> needed(DraftRow row) {
    SortedMap<String, String> cells = new TreeMap<>();
    if (isOfStudy(row)) {
      cells.put("title", row.text(Template.STUDY));
    } else if (row.sheet().equals(Template.ARMS)) {
      cells.putAll(row.cells());
      cells.keySet().removeIf(column -> !KEYS.contains(column) && !isOfBaseline(column));
      // The import asks for a method, and the numbers are the same by each.
      String method = row.text("method");
      boolean known = Method.vocabulary().find(method).isPresent();
      if (!known && !row.text(Template.ARM).equals(Template.ALL)) {
        cells.put("method", Method.vocabulary().all().get(0).code());
      }
    } else if (row.sheet().equals(Template.OUTCOMES)
        && row.cells().keySet().stream().anyMatch(OF_NUMBERS::contains)) {
      cells.putAll(row.cells());
      cells.keySet().removeAll(NOT_NEEDED);
      cells.put("place", mark(row));
    } else {
      return Stream.empty();
    }
    cells.put(Template.STUDY, row.text(Template.STUDY));
    return Stream.of(new DraftRow(row.number(), row.sheet(), row.block(), cells, new TreeMap<>()));
  }

  private static boolean isOfBaseline(String column) {
    return OF_BASELINE.stream().anyMatch(column::startsWith);
  }

  /** What the import calls wrong: a row of outcomes whole, of a group its numbers alone. */
  private static Set<String> wrong(DraftSheets sheets, Import.Typed typed) {
    Set<String> wrong = new HashSet<>();
    if (typed.imported() instanceof Imported.Wrong told) {
      told.problems().stream()
          .flatMap(problem -> Optional.ofNullable(typed.spots().get(problem.where())).stream())
          .forEach(
              spot ->
                  sheets
                      .row(spot)
                      .ifPresent(
                          row ->
                              spot.columns()
                                  .forEach(column -> wrong.add(row.number() + "." + column))));
    }
    return wrong;
  }

  private static List<DraftRow> without(List<DraftRow> rows, Set<String> wrong) {
    List<DraftRow> left = new ArrayList<>();
    for (DraftRow row : rows) {
      Set<String> columns = new HashSet<>();
      wrong.stream()
          .filter(one -> one.startsWith(row.number() + "."))
          .forEach(one -> columns.add(one.substring(one.indexOf('.') + 1)));
      if (columns.isEmpty() || isOfStudy(row)) {
        left.add(row);
      } else if (row.sheet().equals(Template.ARMS) && !columns.contains(Template.ARM)) {
        left.add(withoutNumbers(row, columns));
      }
    }
    return left;
  }

  /** Of a quantity in which one number is wrong nothing is told. */
  private static DraftRow withoutNumbers(DraftRow row, Set<String> columns) {
    SortedMap<String, String> cells = new TreeMap<>(row.cells());
    for (String column : columns) {
      cells
          .keySet()
          .removeIf(
              one ->
                  one.equals(column)
                      || OF_BASELINE.stream()
                          .anyMatch(start -> column.startsWith(start) && one.startsWith(start)));
    }
    return new DraftRow(row.number(), row.sheet(), row.block(), cells, new TreeMap<>());
  }
}
