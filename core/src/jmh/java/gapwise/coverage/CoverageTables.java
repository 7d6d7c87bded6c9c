package gapwise.coverage;

import gapwise.coverage.CoverageSimulation.Key;
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
record CoverageTables(List<Scenario> scenarios, List<Map<Key, Coverage>> found) {

  /** The tables of the page: for each target one of coverage and one of widths. */
  List<String> markdown() {
    List<String> lines = new ArrayList<>();
    for (Target target : Target.values()) {
      lines.add("**Percent of intervals that hold " + target.words() + "**, by number of series");
      lines.add("");
      head(lines, "least, tau 0 to 1");
      for (Way way : Way.values()) {
        StringBuilder line = new StringBuilder("| " + way.words() + " |");
        for (int series : Scenario.numbersOfSeries()) {
          line.append(percent(together(new Key(way, target), fixed(series))));
        }
        lines.add(line + least(new Key(way, target)));
      }
      lines.add("");
      lines.add("Mean width in percentage points");
      lines.add("");
      head(lines, "");
      for (Way way : Way.values()) {
        StringBuilder line = new StringBuilder("| " + way.words() + " |");
        for (int series : Scenario.numbersOfSeries()) {
          line.append(width(together(new Key(way, target), fixed(series))));
        }
        lines.add(line + " |");
      }
      lines.add("");
      byTau(target, lines);
    }
    return lines;
  }

  private static void head(List<String> lines, String last) {
    StringBuilder head = new StringBuilder("| way |");
    StringBuilder rule = new StringBuilder("| --- |");
    for (int series : Scenario.numbersOfSeries()) {
      head.append(" ").append(series).append(" |");
      rule.append(" --- |");
    }
    lines.add(head + " " + last + " |");
    lines.add(rule + " --- |");
  }

  private void byTau(Target target, List<String> lines) {
    lines.add("By standard deviation between series, 2 to 5 series together");
    lines.add("");
    StringBuilder head = new StringBuilder("| way |");
    StringBuilder rule = new StringBuilder("| --- |");
    for (String spread : spreads()) {
      head.append(" ").append(spread).append(" |");
      rule.append(" --- |");
    }
    lines.add(head.toString());
    lines.add(rule.toString());
    for (Way way : Way.values()) {
      StringBuilder line = new StringBuilder("| " + way.words() + " |");
      for (String spread : spreads()) {
        line.append(
            percent(
                together(
                    new Key(way, target),
                    s -> s.series() >= 2 && s.series() <= 5 && s.spread().equals(spread))));
      }
      lines.add(line.toString());
    }
    lines.add("");
  }

  private static List<String> spreads() {
    List<String> spreads = new ArrayList<>();
    Scenario.taus().forEach(tau -> spreads.add(String.valueOf(tau)));
    spreads.add("drawn");
    return spreads;
  }

  private static Predicate<Scenario> fixed(int series) {
    return scenario -> scenario.series() == series && scenario.tau().isPresent();
  }

  private Coverage together(Key key, Predicate<Scenario> which) {
    Coverage sum = Coverage.NOTHING;
    for (int i = 0; i < scenarios.size(); i++) {
      if (which.test(scenarios.get(i))) {
        sum = sum.and(found.get(i).get(key));
      }
    }
    return sum;
  }

  /** The worst scenario with its number of series, median and tau. */
  private String least(Key key) {
    int least = -1;
    for (int i = 0; i < scenarios.size(); i++) {
      Coverage one = found.get(i).get(key);
      boolean counts = scenarios.get(i).tau().isPresent() && one.intervals() > 0;
      if (counts && (least < 0 || one.percent() < found.get(least).get(key).percent())) {
        least = i;
      }
    }
    if (least < 0) {
      return " - |";
    }
    Scenario worst = scenarios.get(least);
    return String.format(
        Locale.ROOT,
        " %.1f (%d series, %s, tau %s) |",
        found.get(least).get(key).percent(),
        worst.series(),
        worst.median(),
        worst.spread());
  }

  private static String percent(Coverage coverage) {
    return coverage.intervals() == 0
        ? " - |"
        : String.format(Locale.ROOT, " %.1f |", coverage.percent());
  }

  private static String width(Coverage coverage) {
    return coverage.intervals() == 0
        ? " - |"
        : String.format(Locale.ROOT, " %.1f |", coverage.meanWidth());
  }

  /** Every scenario, way and target, a line each. */
  List<String> csv() {
    List<String> lines = new ArrayList<>();
    lines.add("series,median,tau,way,target,replicates,intervals,covered_percent,mean_width_points");
    for (int i = 0; i < scenarios.size(); i++) {
      Scenario s = scenarios.get(i);
      for (Way way : Way.values()) {
        for (Target target : Target.values()) {
          Coverage c = found.get(i).get(new Key(way, target));
          lines.add(
              String.format(
                  Locale.ROOT,
                  "%d,%s,%s,\"%s\",%s,%d,%d,%s,%s",
                  s.series(),
                  s.median(),
                  s.spread(),
                  way.words(),
                  target.words(),
                  c.replicates(),
                  c.intervals(),
                  c.intervals() == 0 ? "" : String.format(Locale.ROOT, "%.2f", c.percent()),
                  c.intervals() == 0 ? "" : String.format(Locale.ROOT, "%.2f", c.meanWidth())));
        }
      }
    }
    return lines;
  }
}
