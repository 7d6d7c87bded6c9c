package gapwise.coverage;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The table of replicates whose spread is estimated as 0: by number of series and true spread, in
 * how many of a hundred it is, and in how many of these each way holds.
 */
record AtZero<D extends Drawn>(CoverageTables<D> tables) {
  /** Ends the words of a way that is told of these replicates alone. */
  static final String SUFFIX = ", where estimated 0";

  /** Fewer such replicates tell nothing. */
  private static final int FEWEST = 20;

  /** Whether a way is told of these replicates alone. */
  static boolean is(Way<?> way) {
    return way.words().endsWith(SUFFIX);
  }

  /** The table; no line where the family has no such way. */
  List<String> markdown() {
    List<Way<D>> ways = tables.family().ways().stream().filter(AtZero::is).toList();
    List<String> lines = new ArrayList<>();
    if (ways.isEmpty()) {
      return lines;
    }
    lines.add("**Where the spread is estimated as 0**: percent of replicates in which it is, and");
    lines.add(
        "percent of these that hold: "
            + String.join(
                " / ", ways.stream().map(way -> way.words().replace(SUFFIX, "")).toList()));
    lines.add("");
    StringBuilder head = new StringBuilder("| tau |");
    StringBuilder rule = new StringBuilder("| --- |");
    for (int series : tables.numbersOfSeries()) {
      head.append(" ").append(series).append(" |");
      rule.append(" --- |");
    }
    lines.add(head.toString());
    lines.add(rule.toString());
    for (String spread : tables.spreads()) {
      StringBuilder line = new StringBuilder("| " + spread + " |");
      for (int series : tables.numbersOfSeries()) {
        line.append(" ").append(cell(ways, series, spread)).append(" |");
      }
      lines.add(line.toString());
    }
    lines.add("");
    return lines;
  }

  private String cell(List<Way<D>> ways, int series, String spread) {
    List<Coverage> found =
        ways.stream()
            .map(
                way ->
                    tables.together(
                        new CoverageSimulation.Key(way.words(), Target.FURTHER),
                        one -> one.series() == series && one.spread().equals(spread)))
            .toList();
    Coverage first = found.get(0);
    String cell =
        String.format(Locale.ROOT, "%.0f", 100.0 * first.intervals() / first.replicates());
    return first.intervals() < FEWEST
        ? cell
        : cell
            + ": "
            + String.join(
                " / ",
                found.stream()
                    .map(
                        one ->
                            one.intervals() < FEWEST
                                ? "-"
                                : String.format(Locale.ROOT, "%.0f", one.percent()))
                    .toList());
  }
}
