package gapwise.analysis.moderators;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.regression.RestrictedCubicSpline;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * Reads the moderators of a plan against the rows they are to describe: which columns are numbers,
 * which categories, their levels and knots.
 */
final class ModeratorColumns {
  private static final String FIELD = "moderators";

  private final DataTable table;
  private final Problems problems = new Problems();
  private final List<Result.Warning> warnings = new ArrayList<>();

  private ModeratorColumns(DataTable table) {
    this.table = table;
  }

  /**
   * The columns the moderators read, in the order of the plan.
   *
   * @throws WrongInputException if the data have no such column
   */
  static List<String> names(List<AskedModerator> moderators, DataTable table) {
    Problems problems = new Problems();
    List<String> names = new ArrayList<>();
    for (int i = 0; i < moderators.size(); i++) {
      for (String column : moderators.get(i).columns()) {
        if (!table.columns().contains(column)) {
          problems.add(
              FIELD + "[" + i + "]",
              "unknown-column",
              "there is no column '" + column + "'; the data have " + table.columns());
        }
        if (!names.contains(column)) {
          names.add(column);
        }
      }
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return names;
  }

  /**
   * The moderators.
   *
   * @param rows without blanks in their columns; levels and usual knots come from these
   * @param warnings takes what a reader must know
   * @throws WrongInputException with everything that does not fit the data
   */
  static List<Moderator> read(
      List<AskedModerator> moderators,
      DataTable table,
      List<DataTable.Row> rows,
      List<Result.Warning> warnings) {
    ModeratorColumns reader = new ModeratorColumns(table);
    Map<String, Moderator> byColumn = new LinkedHashMap<>();
    List<Moderator> read = new ArrayList<>();
    for (int i = 0; i < moderators.size(); i++) {
      AskedModerator one = moderators.get(i);
      if (one instanceof AskedModerator.Product) {
        read.add(null);
      } else {
        Moderator moderator = reader.single(FIELD + "[" + i + "]", one, rows);
        byColumn.putIfAbsent(one.columns().get(0), moderator);
        read.add(moderator);
      }
    }
    for (int i = 0; i < moderators.size(); i++) {
      if (moderators.get(i) instanceof AskedModerator.Product product) {
        String where = FIELD + "[" + i + "]";
        List<Moderator> factors = new ArrayList<>();
        for (String column : product.columns()) {
          factors.add(
              byColumn.containsKey(column)
                  ? byColumn.get(column)
                  : reader.single(where, new AskedModerator.Plain(column), rows));
        }
        read.set(i, new Moderator.Product(factors.get(0), factors.get(1)));
      }
    }
    reader.repeated(read);
    if (!reader.problems.isEmpty()) {
      throw new WrongInputException(reader.problems.list());
    }
    warnings.addAll(reader.warnings);
    return List.copyOf(read);
  }

  private void repeated(List<Moderator> read) {
    TreeSet<String> seen = new TreeSet<>();
    for (int i = 0; i < read.size(); i++) {
      for (String term : read.get(i).terms()) {
        if (!seen.add(term)) {
          problems.add(
              FIELD + "[" + i + "]",
              "repeated-term",
              "the term '" + term + "' is already among the moderators; remove one of them");
        }
      }
    }
  }

  private Moderator single(String where, AskedModerator asked, List<DataTable.Row> rows) {
    String column = asked.columns().get(0);
    if (asked instanceof AskedModerator.Category category) {
      return categories(where, column, category.reference(), rows);
    }
    if (asked instanceof AskedModerator.Spline spline) {
      return curve(where, spline, rows);
    }
    if (asked instanceof AskedModerator.Centred centred) {
      mustBeNumbers(where, column, "to take a centre off");
      return new Moderator.Numbers(column, centred.centre());
    }
    long numbers = count(column, true);
    long texts = count(column, false);
    if (texts == 0) {
      return new Moderator.Numbers(column, 0);
    }
    if (numbers > 0) {
      warnings.add(
          Result.Warning.of(
              "numbers-as-categories",
              say(
                  "analysis.numbers-as-categories",
                  Map.of(
                      "column",
                      column,
                      "numbers",
                      String.valueOf(numbers),
                      "texts",
                      String.valueOf(texts)))));
    }
    return categories(where, column, "", rows);
  }

  private long count(String column, boolean numbers) {
    return table.rows().stream()
        .filter(row -> !row.text(column).isEmpty())
        .filter(row -> row.number(column).isPresent() == numbers)
        .count();
  }

  private void mustBeNumbers(String where, String column, String what) {
    table.rows().stream()
        .filter(row -> !row.text(column).isEmpty() && row.number(column).isEmpty())
        .findFirst()
        .ifPresent(
            row ->
                problems.add(
                    where,
                    "not-a-number",
                    "the column '"
                        + column
                        + "' must hold numbers "
                        + what
                        + "; "
                        + row.place()
                        + " has '"
                        + row.text(column)
                        + "'"));
  }

  private Moderator categories(
      String where, String column, String reference, List<DataTable.Row> rows) {
    TreeSet<String> levels = new TreeSet<>();
    rows.forEach(row -> levels.add(row.text(column)));
    Work.require(
        Limit.CATEGORIES,
        levels.size(),
        where,
        "The column '"
            + column
            + "' holds text; put texts of one meaning together, or correct those that stand for"
            + " numbers.");
    List<String> ordered = new ArrayList<>(levels);
    if (!reference.isEmpty() && !rows.isEmpty()) {
      if (!ordered.remove(reference)) {
        problems.add(
            where,
            "unknown-level",
            "the column '"
                + column
                + "' has no level '"
                + reference
                + "' among the studies that enter; it has "
                + levels);
      }
      ordered.add(0, reference);
    }
    return new Moderator.Categories(column, ordered);
  }

  private Moderator curve(String where, AskedModerator.Spline asked, List<DataTable.Row> rows) {
    String column = asked.column();
    int before = problems.list().size();
    mustBeNumbers(where, column, "to be a curve");
    List<Double> knots = new ArrayList<>(asked.knots());
    if (knots.isEmpty() && problems.list().size() == before && !rows.isEmpty()) {
      List<Double> values = rows.stream().map(row -> row.number(column).orElseThrow()).toList();
      knots.addAll(RestrictedCubicSpline.usualKnots(values, asked.count()));
    }
    boolean rise = knots.size() >= 3;
    for (int i = 1; i < knots.size(); i++) {
      rise &= knots.get(i) > knots.get(i - 1);
    }
    if (problems.list().size() > before || rows.isEmpty()) {
      return new Moderator.Numbers(column, 0);
    }
    if (!rise) {
      problems.add(
          where + ".spline",
          "knots-do-not-rise",
          "each knot must be above the one before, found "
              + knots
              + (!asked.knots().isEmpty()
                  ? ""
                  : "; too few different values for the usual knots: ask for fewer or name them"));
      return new Moderator.Numbers(column, 0);
    }
    return new Moderator.Curve(column, new RestrictedCubicSpline(knots));
  }
}
