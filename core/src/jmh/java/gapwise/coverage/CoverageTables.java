package gapwise.coverage;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;

/**
 * What a simulation found, as tables.
 *
 * @param scenarios in their order
 * @param found one for each scenario
 */
record CoverageTables(List<Scenario> scenarios, List<Map<Method, Coverage>> found) {

  /** The tables of the page. */
  List<String> markdown() {
    List<String> lines = new ArrayList<>();
    for (int series : Scenario.numbersOfSeries()) {
      byMedian(series, lines);
    }
    byTau(lines);
    return lines;
  }

  private void byMedian(int series, List<String> lines) {
    lines.add(
        "**" + series + " series.** Percent of intervals that hold the truth, by median rate");
    lines.add("");
    StringBuilder head = new StringBuilder("| method |");
    StringBuilder rule = new StringBuilder("| --- |");
    Scenario.medians().forEach(median -> head.append(" ").append(median).append(" |"));
    Scenario.medians().forEach(median -> rule.append(" --- |"));
    lines.add(head + " least | mean width | none |");
    lines.add(rule + " --- | --- | --- |");
    for (Method method : Method.values()) {
      StringBuilder line = new StringBuilder("| " + method.words() + " |");
      Scenario.medians()
          .forEach(
              median ->
                  line.append(
                      percent(
                          together(method, s -> s.series() == series && s.median() == median))));
      Coverage all = together(method, s -> s.series() == series);
      lines.add(
          line
              + percent(least(method, series))
              + String.format(
                  Locale.ROOT, " %.1f | %.1f |", all.meanWidth(), all.withoutPercent()));
    }
    lines.add("");
  }

  private void byTau(List<String> lines) {
    lines.add("**All numbers of series and rates**, by standard deviation between series");
    lines.add("");
    StringBuilder head = new StringBuilder("| method |");
    StringBuilder rule = new StringBuilder("| --- |");
    Scenario.taus().forEach(tau -> head.append(" ").append(tau).append(" |"));
    Scenario.taus().forEach(tau -> rule.append(" --- |"));
    lines.add(head.toString());
    lines.add(rule.toString());
    for (Method method : Method.values()) {
      StringBuilder line = new StringBuilder("| " + method.words() + " |");
      Scenario.taus().forEach(tau -> line.append(percent(together(method, s -> s.tau() == tau))));
      lines.add(line.toString());
    }
    lines.add("");
  }

  private Coverage together(Method method, Predicate<Scenario> which) {
    return CoverageSimulation.together(scenarios, found, method, which);
  }

  private Coverage least(Method method, int series) {
    Coverage least = null;
    for (int i = 0; i < scenarios.size(); i++) {
      Coverage one = found.get(i).get(method);
      boolean counts = scenarios.get(i).series() == series && one.intervals() > 0;
      if (counts && (least == null || one.percent() < least.percent())) {
        least = one;
      }
    }
    return least == null ? Coverage.NOTHING : least;
  }

  private static String percent(Coverage coverage) {
    return coverage.intervals() == 0
        ? " - |"
        : String.format(Locale.ROOT, " %.1f |", coverage.percent());
  }

  /** Every scenario and method, a line each. */
  List<String> csv() {
    List<String> lines = new ArrayList<>();
    lines.add("series,median,tau,method,replicates,intervals,covered_percent,mean_width_points");
    for (int i = 0; i < scenarios.size(); i++) {
      Scenario s = scenarios.get(i);
      for (Method method : Method.values()) {
        Coverage c = found.get(i).get(method);
        lines.add(
            String.format(
                Locale.ROOT,
                "%d,%s,%s,\"%s\",%d,%d,%s,%s",
                s.series(),
                s.median(),
                s.tau(),
                method.words(),
                c.replicates(),
                c.intervals(),
                c.intervals() == 0 ? "" : String.format(Locale.ROOT, "%.2f", c.percent()),
                c.intervals() == 0 ? "" : String.format(Locale.ROOT, "%.2f", c.meanWidth())));
      }
    }
    return lines;
  }
}
