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
 * @param found one for each scenario of the family
 */
record CoverageTables<D extends Drawn>(Family<D> family, List<Map<Key, Coverage>> found) {

  /** The tables of the page. */
  List<String> markdown() {
    List<String> lines = family.size() == Family.Size.POINTS ? inFull() : inBrief();
    lines.addAll(new AtZero<>(this).markdown());
    return lines;
  }

  /** The ways told of all replicates. */
  private List<Way<D>> ways() {
    return family.ways().stream().filter(way -> !AtZero.is(way)).toList();
  }

  /** For each target one table: coverage, and in brackets the width. */
  private List<String> inBrief() {
    List<String> lines = new ArrayList<>();
    for (Target target : family.targets()) {
      lines.add("**Percent of intervals that hold " + target.words() + "**, by number of series");
      lines.add("");
      head(lines, "least");
      for (Way<D> way : ways()) {
        Key key = new Key(way.words(), target);
        StringBuilder line = new StringBuilder("| " + way.words() + " |");
        for (int series : numbersOfSeries()) {
          Coverage one = together(key, fixed(series));
          line.append(
              one.intervals() == 0
                  ? " - |"
                  : String.format(
                      Locale.ROOT,
                      " %.1f (%s) |",
                      one.percent(),
                      family.size().told(one.meanWidth())));
        }
        lines.add(line + least(key));
      }
      lines.add("");
    }
    lines.add("In brackets: " + family.size().words());
    lines.add("");
    return lines;
  }

  /** For each target one table of coverage, one of widths, and one by spread. */
  private List<String> inFull() {
    List<String> lines = new ArrayList<>();
    for (Target target : family.targets()) {
      lines.add("**Percent of intervals that hold " + target.words() + "**, by number of series");
      lines.add("");
      head(lines, "least");
      for (Way<D> way : ways()) {
        StringBuilder line = new StringBuilder("| " + way.words() + " |");
        for (int series : numbersOfSeries()) {
          line.append(percent(together(new Key(way.words(), target), fixed(series))));
        }
        lines.add(line + least(new Key(way.words(), target)));
      }
      lines.add("");
      lines.add(family.size().words());
      lines.add("");
      head(lines, "");
      for (Way<D> way : ways()) {
        StringBuilder line = new StringBuilder("| " + way.words() + " |");
        for (int series : numbersOfSeries()) {
          line.append(width(together(new Key(way.words(), target), fixed(series))));
        }
        lines.add(line + " |");
      }
      lines.add("");
      byTau(target, lines);
    }
    return lines;
  }

  private void head(List<String> lines, String last) {
    StringBuilder head = new StringBuilder("| way |");
    StringBuilder rule = new StringBuilder("| --- |");
    for (int series : numbersOfSeries()) {
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
    for (Way<D> way : ways()) {
      StringBuilder line = new StringBuilder("| " + way.words() + " |");
      for (String spread : spreads()) {
        line.append(
            percent(
                together(
                    new Key(way.words(), target),
                    s -> s.series() >= 2 && s.series() <= 5 && s.spread().equals(spread))));
      }
      lines.add(line.toString());
    }
    lines.add("");
  }

  List<String> spreads() {
    List<String> spreads = new ArrayList<>();
    for (Scenario<D> scenario : family.scenarios()) {
      if (!spreads.contains(scenario.spread())) {
        spreads.add(scenario.spread());
      }
    }
    return spreads;
  }

  List<Integer> numbersOfSeries() {
    return family.scenarios().stream().map(Scenario::series).distinct().toList();
  }

  private static <D extends Drawn> Predicate<Scenario<D>> fixed(int series) {
    return scenario -> scenario.series() == series && scenario.tau().isPresent();
  }

  Coverage together(Key key, Predicate<Scenario<D>> which) {
    Coverage sum = Coverage.NOTHING;
    for (int i = 0; i < family.scenarios().size(); i++) {
      if (which.test(family.scenarios().get(i))) {
        sum = sum.and(found.get(i).get(key));
      }
    }
    return sum;
  }

  /** The worst scenario with its number of series, median and tau. */
  private String least(Key key) {
    int least = -1;
    for (int i = 0; i < family.scenarios().size(); i++) {
      Coverage one = found.get(i).get(key);
      boolean counts = family.scenarios().get(i).tau().isPresent() && one.intervals() > 0;
      if (counts && (least < 0 || one.percent() < found.get(least).get(key).percent())) {
        least = i;
      }
    }
    if (least < 0) {
      return " - |";
    }
    Scenario<D> worst = family.scenarios().get(least);
    return String.format(
        Locale.ROOT,
        " %.1f (%d series, %s, tau %s) |",
        found.get(least).get(key).percent(),
        worst.series(),
        worst.middle(),
        worst.spread());
  }

  private static String percent(Coverage coverage) {
    return coverage.intervals() == 0
        ? " - |"
        : String.format(Locale.ROOT, " %.1f |", coverage.percent());
  }

  private String width(Coverage coverage) {
    return coverage.intervals() == 0
        ? " - |"
        : " " + family.size().told(coverage.meanWidth()) + " |";
  }

  /** Every scenario, way and target, a line each. */
  List<String> csv() {
    List<String> lines = new ArrayList<>();
    lines.add(
        "series,middle,tau,way,target,replicates,intervals,covered_percent,mean_width_"
            + family.size().column());
    for (int i = 0; i < family.scenarios().size(); i++) {
      Scenario<D> s = family.scenarios().get(i);
      for (Way<D> way : family.ways()) {
        for (Target target : family.targets()) {
          Coverage c = found.get(i).get(new Key(way.words(), target));
          lines.add(
              String.format(
                  Locale.ROOT,
                  "%d,\"%s\",%s,\"%s\",%s,%d,%d,%s,%s",
                  s.series(),
                  s.middle(),
                  s.spread(),
                  way.words(),
                  target.words(),
                  c.replicates(),
                  c.intervals(),
                  c.intervals() == 0 ? "" : String.format(Locale.ROOT, "%.2f", c.percent()),
                  c.intervals() == 0 ? "" : family.size().written(c.meanWidth())));
        }
      }
    }
    return lines;
  }
}
