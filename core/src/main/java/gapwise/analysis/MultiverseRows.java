package gapwise.analysis;

import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.multiverse.Choice;
import gapwise.synthesis.multiverse.Settings;
import gapwise.synthesis.multiverse.Subset;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Which rows an analysis may be made of.
 *
 * @param columns what narrows them
 * @param rows all data rows
 * @param labels of the study of each row; empty text for a row that lacks something
 * @param studies that may be left out, in their order; empty if none is
 */
record MultiverseRows(
    List<ColumnSubsets> columns,
    List<DataTable.Row> rows,
    List<String> labels,
    List<String> studies) {
  /** More than a person can use, and the most that is kept in memory. */
  private static final int MOST_ANALYSES = 200_000;

  /** Analyses times rows; some seconds of work. */
  private static final long MOST_WORK = 50_000_000;

  MultiverseRows {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
    labels = List.copyOf(labels);
    studies = List.copyOf(studies);
  }

  /**
   * Reads them.
   *
   * @throws WrongInputException if a column is not there or holds what is no number
   */
  static <D extends StudyData> MultiverseRows of(Vary vary, Studies<D> studies, DataTable table) {
    Problems problems = new Problems();
    for (int i = 0; i < vary.subsets().size(); i++) {
      check(vary.subsets().get(i), "vary.subsets[" + i + "].column", table, problems);
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    Set<String> names = new LinkedHashSet<>();
    List<String> labels = new ArrayList<>();
    for (Studies.Entry<D> entry : studies.all()) {
      labels.add(entry.data().isPresent() ? entry.label() : "");
      if (entry.data().isPresent()) {
        names.add(entry.label());
      }
    }
    return new MultiverseRows(
        vary.subsets(),
        studies.all().stream().map(Studies.Entry::row).toList(),
        labels,
        vary.leaveOneOut() && names.size() > 1 ? List.copyOf(names) : List.of());
  }

  private static void check(
      ColumnSubsets subsets, String where, DataTable table, Problems problems) {
    String column = subsets.column();
    if (!table.columns().contains(column)) {
      problems.add(
          where,
          "unknown-column",
          "there is no column '" + column + "'; the data have " + table.columns());
      return;
    }
    for (DataTable.Row row : table.rows()) {
      String cell = row.text(column);
      if (subsets.numeric() && !cell.isEmpty() && ReportedRow.parse(cell).isEmpty()) {
        problems.add(
            row.place() + ", column " + column,
            "not-a-number",
            "found '" + cell + "', expected a number to set against a limit, or nothing");
      }
    }
  }

  /** What is chosen about rows. */
  List<Choice> choices() {
    List<Choice> choices = new ArrayList<>();
    for (ColumnSubsets column : columns) {
      choices.add(
          new Choice(
              name(column), column.levels().stream().map(ColumnSubsets.Level::name).toList()));
    }
    if (!studies.isEmpty()) {
      List<String> levels = new ArrayList<>(List.of(MultiverseChoices.NOBODY));
      studies.forEach(study -> levels.add("without " + study));
      choices.add(new Choice(MultiverseChoices.LEAVE_ONE_OUT, levels));
    }
    return choices;
  }

  private static String name(ColumnSubsets column) {
    return "rows by " + column.column();
  }

  /**
   * Refuses more than can be used.
   *
   * @param ways in which each subset is analysed
   */
  void refuseTooMany(int ways) {
    double analyses = ways * (studies.size() + 1.0);
    for (ColumnSubsets column : columns) {
      analyses *= column.levels().size();
    }
    if (analyses > MOST_ANALYSES || analyses * rows.size() > MOST_WORK) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  "vary",
                  "too-many-combinations",
                  String.format(
                      java.util.Locale.ROOT,
                      "found %.0f combinations of %d rows, expected at most %d, and at most %d"
                          + " combinations times rows; vary less, or set leaveOneOut to false",
                      analyses,
                      rows.size(),
                      MOST_ANALYSES,
                      MOST_WORK))));
    }
  }

  /** Every subset, all rows first. */
  List<Subset> subsets(MultiverseChoices choices) {
    List<Subset> subsets =
        List.of(
            new Subset(
                choices.none(),
                IntStream.range(0, rows.size())
                    .filter(i -> !labels.get(i).isEmpty())
                    .boxed()
                    .toList()));
    for (ColumnSubsets column : columns) {
      subsets =
          subsets.stream()
              .flatMap(
                  subset ->
                      IntStream.range(0, column.levels().size())
                          .mapToObj(level -> narrowed(subset, column, level, choices)))
              .toList();
    }
    return studies.isEmpty()
        ? subsets
        : subsets.stream()
            .flatMap(
                subset ->
                    IntStream.rangeClosed(0, studies.size())
                        .mapToObj(level -> without(subset, level, choices)))
            .toList();
  }

  private Subset narrowed(
      Subset subset, ColumnSubsets column, int level, MultiverseChoices choices) {
    Settings settings = subset.settings().with(choices.place(name(column)), level);
    return new Subset(
        settings, subset.rows().stream().filter(i -> column.keeps(level, rows.get(i))).toList());
  }

  private Subset without(Subset subset, int level, MultiverseChoices choices) {
    Settings settings =
        subset.settings().with(choices.place(MultiverseChoices.LEAVE_ONE_OUT), level);
    return new Subset(
        settings,
        level == 0
            ? subset.rows()
            : subset.rows().stream()
                .filter(i -> !labels.get(i).equals(studies.get(level - 1)))
                .toList());
  }

  /** Rows whose cell is blank stand in no narrowed subset. */
  List<Result.Warning> warnings() {
    List<Result.Warning> warnings = new ArrayList<>();
    for (ColumnSubsets column : columns) {
      long blank = rows.stream().filter(row -> row.text(column.column()).isEmpty()).count();
      if (blank > 0) {
        warnings.add(
            Result.Warning.of(
                "missing-value",
                blank
                    + " of "
                    + rows.size()
                    + " rows have no value in "
                    + column.column()
                    + " and are left out wherever rows are narrowed by it"));
      }
    }
    return warnings;
  }
}
