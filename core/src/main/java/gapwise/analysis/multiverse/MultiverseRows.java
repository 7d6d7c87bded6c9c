package gapwise.analysis.multiverse;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.pooling.Studies;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.budget.Work;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.multiverse.Choice;
import gapwise.synthesis.multiverse.Subset;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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

  /**
   * Regressions of counts by their own likelihood times rows: each takes some dozens of fits for
   * its limits, so that so many are some ten seconds of work.
   */
  private static final long MOST_PROFILED = 30_000;

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
    Work.check();
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
      if (subsets.numeric() && !cell.isEmpty() && row.number(column).isEmpty()) {
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
    return say("analysis.rows-by", Map.of("column", column.column()));
  }

  /**
   * Refuses more than can be used.
   *
   * @param ways in which each subset is analysed
   * @param profiled how many of them are regressions of counts by their own likelihood
   */
  void refuseTooMany(int ways, long profiled) {
    double subsets = studies.size() + 1.0;
    for (ColumnSubsets column : columns) {
      subsets *= column.levels().size();
    }
    if (profiled * subsets * rows.size() > MOST_PROFILED) {
      throw tooManyProfiled(profiled * subsets);
    }
    double analyses = ways * subsets;
    if (analyses > MOST_ANALYSES || analyses * rows.size() > MOST_WORK) {
      throw tooMany(analyses < 1e15 ? String.format(Locale.ROOT, "%.0f", analyses) : "over 1e15");
    }
  }

  /**
   * Refuses more ways than can be used while they are still being listed.
   *
   * @param ways listed so far
   */
  void refuseTooManyWays(int ways) {
    if (ways > MOST_ANALYSES) {
      throw tooMany("over " + MOST_ANALYSES);
    }
  }

  private WrongInputException tooManyProfiled(double analyses) {
    return new WrongInputException(
        List.of(
            new Problem(
                "vary",
                "too-many-combinations",
                String.format(
                    Locale.ROOT,
                    "found %.0f regressions of %d rows by the exact likelihood, expected at most %d of"
                        + " these times rows; vary less, set leaveOneOut to false, or name"
                        + " 'random-effects' alone in vary.model",
                    analyses,
                    rows.size(),
                    MOST_PROFILED))));
  }

  private WrongInputException tooMany(String analyses) {
    return new WrongInputException(
        List.of(
            new Problem(
                "vary",
                "too-many-combinations",
                String.format(
                    Locale.ROOT,
                    "found %s combinations of %d rows, expected at most %d, and at most %d"
                        + " combinations times rows; vary less, or set leaveOneOut to false",
                    analyses,
                    rows.size(),
                    MOST_ANALYSES,
                    MOST_WORK))));
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
      int place = choices.place(name(column));
      List<BitSet> kept = new ArrayList<>();
      for (int level = 0; level < column.levels().size(); level++) {
        kept.add(kept(column, level));
      }
      subsets = narrowed(subsets, place, kept);
    }
    return studies.isEmpty()
        ? subsets
        : narrowed(subsets, choices.place(MultiverseChoices.LEAVE_ONE_OUT), withoutEach());
  }

  /** Each subset at each level of a choice. */
  private static List<Subset> narrowed(List<Subset> subsets, int choice, List<BitSet> kept) {
    List<Subset> narrower = new ArrayList<>(subsets.size() * kept.size());
    for (Subset subset : subsets) {
      Work.check();
      for (int level = 0; level < kept.size(); level++) {
        narrower.add(subset.narrowed(subset.settings().with(choice, level), kept.get(level)));
      }
    }
    return narrower;
  }

  private BitSet kept(ColumnSubsets column, int level) {
    Work.check();
    BitSet kept = new BitSet();
    for (int i = 0; i < rows.size(); i++) {
      kept.set(i, column.keeps(level, rows.get(i)));
    }
    return kept;
  }

  /** All rows, and those without each study. */
  private List<BitSet> withoutEach() {
    BitSet all = new BitSet();
    all.set(0, rows.size());
    List<BitSet> kept = new ArrayList<>(List.of(all));
    Map<String, BitSet> byStudy = new HashMap<>();
    for (String study : studies) {
      Work.check();
      BitSet others = (BitSet) all.clone();
      byStudy.put(study, others);
      kept.add(others);
    }
    for (int i = 0; i < labels.size(); i++) {
      BitSet others = byStudy.get(labels.get(i));
      if (others != null) {
        others.clear(i);
      }
    }
    return kept;
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
                say(
                    "analysis.not-among-narrowed",
                    Map.of(
                        "blank",
                        String.valueOf(blank),
                        "rows",
                        String.valueOf(rows.size()),
                        "column",
                        column.column()))));
      }
    }
    return warnings;
  }
}
