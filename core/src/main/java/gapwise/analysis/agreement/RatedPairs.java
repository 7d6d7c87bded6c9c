package gapwise.analysis.agreement;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.Columns;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.ReportedRow;
import gapwise.problem.Problems;
import gapwise.synthesis.agreement.Kappa;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Categories that two raters gave the same cases.
 *
 * @param categories in their order
 * @param pairs how many cases have each pair of them; pairs without a case are left out
 */
record RatedPairs(List<String> categories, List<Kappa.Pair> pairs) {
  RatedPairs {
    categories = List.copyOf(categories);
    pairs = List.copyOf(pairs);
  }

  private record Key(int first, int second) {}

  /** Reads the pairs, noting what is wrong and what is missing. */
  static RatedPairs read(
      AgreementPlan plan, DataTable table, Problems problems, List<Result.Warning> warnings) {
    Columns columns =
        Columns.resolve(
            plan.head().named(),
            table,
            List.of("rater1", "rater2", "count", "subject"),
            List.of("rater1", "rater2"),
            problems);
    if (!columns.has("rater1") || !columns.has("rater2")) {
      return new RatedPairs(List.of(), List.of());
    }
    String first = columns.column("rater1");
    String second = columns.column("rater2");
    List<String> categories = new ArrayList<>(plan.categories());
    if (categories.isEmpty()) {
      TreeSet<String> found = new TreeSet<>();
      table.rows().forEach(row -> found.addAll(List.of(row.text(first), row.text(second))));
      found.remove("");
      categories.addAll(found);
    }
    Map<String, Integer> places = new HashMap<>();
    categories.forEach(category -> places.put(category, places.size()));
    Map<Key, Double> counts = new LinkedHashMap<>();
    for (DataTable.Row row : table.rows()) {
      ReportedRow reported = new ReportedRow(columns, row, problems);
      double count = columns.has("count") ? reported.requiredCount("count", 0).orElse(0) : 1;
      int i = place(row.text(first), "rater1", places, categories, reported);
      int j = place(row.text(second), "rater2", places, categories, reported);
      Optional<Result.Warning> lacking = reported.lacking();
      lacking.ifPresent(warnings::add);
      if (i >= 0 && j >= 0 && lacking.isEmpty() && count > 0) {
        counts.merge(new Key(i, j), count, Double::sum);
      }
    }
    return new RatedPairs(
        categories,
        counts.entrySet().stream()
            .map(one -> new Kappa.Pair(one.getKey().first(), one.getKey().second(), one.getValue()))
            .toList());
  }

  private static int place(
      String text,
      String role,
      Map<String, Integer> places,
      List<String> categories,
      ReportedRow reported) {
    if (text.isEmpty()) {
      reported.missing(role);
      return -1;
    }
    int place = places.getOrDefault(text, -1);
    if (place < 0) {
      reported.wrong(
          role, "unknown-category", "found '" + text + "', expected one of " + categories);
    }
    return place;
  }

  /** All cases. */
  double total() {
    return pairs.stream().mapToDouble(Kappa.Pair::count).sum();
  }

  /** Cases in which both gave the same category, in percent; empty without cases. */
  Optional<Double> percentAgreement() {
    double same =
        pairs.stream()
            .filter(pair -> pair.first() == pair.second())
            .mapToDouble(Kappa.Pair::count)
            .sum();
    return total() > 0 ? Optional.of(100 * same / total()) : Optional.empty();
  }
}
