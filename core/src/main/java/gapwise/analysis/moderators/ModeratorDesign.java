package gapwise.analysis.moderators;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.pooling.Studies;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.RowValue;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.effect.StudyData;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.regression.DesignMatrix;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * The design that the moderators of a plan make of the studies that can be pooled.
 *
 * @param moderators as read against the studies that enter
 * @param places of the studies that enter, among those that can be pooled: the ones without a blank
 *     in a moderator
 * @param design a row for each of them, the intercept first
 */
public record ModeratorDesign(
    List<Moderator> moderators, List<Integer> places, DesignMatrix design) {
  public ModeratorDesign {
    moderators = List.copyOf(moderators);
    places = List.copyOf(places);
  }

  /**
   * Reads.
   *
   * @param asked the plan's list of moderators
   * @param pooled the studies that can be pooled
   * @param warnings takes a warning for each study with a blank, and others
   * @throws WrongInputException with everything that does not fit the data
   */
  public static <D extends StudyData> ModeratorDesign of(
      List<AskedModerator> asked,
      DataTable table,
      List<Studies.Entry<D>> pooled,
      List<Result.Warning> warnings) {
    List<String> columns = ModeratorColumns.names(asked, table);
    List<Integer> places = new ArrayList<>();
    List<DataTable.Row> rows = new ArrayList<>();
    for (int i = 0; i < pooled.size(); i++) {
      DataTable.Row row = pooled.get(i).row();
      List<String> blank = columns.stream().filter(one -> row.text(one).isEmpty()).toList();
      if (blank.isEmpty()) {
        places.add(i);
        rows.add(row);
      } else {
        warnings.add(
            row.warning(
                "missing-value",
                say(
                    "analysis.not-in-the-regression",
                    Map.of("row", row.place(), "columns", String.join(", ", blank))),
                pooled.get(i).label()));
      }
    }
    List<Moderator> moderators = ModeratorColumns.read(asked, table, rows, warnings);
    Work.require(
        Limit.TERMS,
        terms(moderators).size(),
        "moderators",
        "Ask of fewer moderators at a time, or put texts of one meaning together.");
    List<double[]> numbers = rows.stream().map(row -> values(moderators, row.cells())).toList();
    Problems problems = new Problems();
    for (int i = 0; i < rows.size(); i++) {
      if (!Arrays.stream(numbers.get(i)).allMatch(Double::isFinite)) {
        problems.add(
            rows.get(i).place() + ", columns " + String.join(", ", columns),
            "number-out-of-range",
            "numbers here are so large that a product or power of them cannot be reckoned with;"
                + " correct them or take a larger unit");
      }
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return new ModeratorDesign(moderators, places, DesignMatrix.of(terms(moderators), numbers));
  }

  private static List<String> terms(List<Moderator> moderators) {
    List<String> terms = new ArrayList<>(List.of(DesignMatrix.INTERCEPT));
    moderators.forEach(one -> terms.addAll(one.terms()));
    return terms;
  }

  /**
   * The row of the design for a study that may not exist.
   *
   * @param cells a value for each column of the moderators
   */
  double[] values(Map<String, RowValue> cells) {
    return values(moderators, cells);
  }

  private static double[] values(List<Moderator> moderators, Map<String, RowValue> cells) {
    Work.check();
    List<Double> values = new ArrayList<>(List.of(1.0));
    for (Moderator one : moderators) {
      for (double value : one.values(cells)) {
        values.add(value);
      }
    }
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
