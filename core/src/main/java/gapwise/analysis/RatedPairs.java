package gapwise.analysis;

import gapwise.problem.Problems;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Categories that two raters gave the same cases.
 *
 * @param categories in their order
 * @param counts of each pair, rater 1 in rows
 */
record RatedPairs(List<String> categories, List<List<Double>> counts) {
  RatedPairs {
    categories = List.copyOf(categories);
    counts = counts.stream().map(List::copyOf).toList();
  }

  /** Reads the pairs, noting what is wrong and what is missing. */
  static RatedPairs read(
      AgreementPlan plan, DataTable table, Problems problems, List<Result.Warning> warnings) {
    Columns columns =
        Columns.resolve(
            plan,
            table,
            List.of("rater1", "rater2", "count", "subject"),
            List.of("rater1", "rater2"),
            problems);
    if (!columns.has("rater1") || !columns.has("rater2")) {
      return new RatedPairs(List.of(), List.of());
    }
    String first = columns.byRole().get("rater1");
    String second = columns.byRole().get("rater2");
    List<String> categories = new ArrayList<>(plan.categories());
    if (categories.isEmpty()) {
      TreeSet<String> found = new TreeSet<>();
      table.rows().forEach(row -> found.addAll(List.of(row.text(first), row.text(second))));
      found.remove("");
      categories.addAll(found);
    }
    double[][] counts = new double[categories.size()][categories.size()];
    for (DataTable.Row row : table.rows()) {
      ReportedRow reported = new ReportedRow(columns, row, problems);
      double count = columns.has("count") ? reported.requiredCount("count", 0).orElse(0) : 1;
      int i = place(row, "rater1", first, categories, reported);
      int j = place(row, "rater2", second, categories, reported);
      Optional<Result.Warning> lacking = reported.lacking();
      lacking.ifPresent(warnings::add);
      if (i >= 0 && j >= 0 && lacking.isEmpty()) {
        counts[i][j] += count;
      }
    }
    List<List<Double>> lists = new ArrayList<>();
    for (double[] row : counts) {
      List<Double> list = new ArrayList<>();
      for (double one : row) {
        list.add(one);
      }
      lists.add(list);
    }
    return new RatedPairs(categories, lists);
  }

  private static int place(
      DataTable.Row row,
      String role,
      String column,
      List<String> categories,
      ReportedRow reported) {
    String text = row.text(column);
    if (text.isEmpty()) {
      reported.missing(role);
      return -1;
    }
    int place = categories.indexOf(text);
    if (place < 0) {
      reported.wrong(
          role, "unknown-category", "found '" + text + "', expected one of " + categories);
    }
    return place;
  }

  /** All cases. */
  double total() {
    return counts.stream().flatMap(List::stream).mapToDouble(Double::doubleValue).sum();
  }

  /** Cases in which both gave the same category, in percent; empty without cases. */
  Optional<Double> percentAgreement() {
    double same = 0;
    for (int i = 0; i < counts.size(); i++) {
      same += counts.get(i).get(i);
    }
    return total() > 0 ? Optional.of(100 * same / total()) : Optional.empty();
  }
}
