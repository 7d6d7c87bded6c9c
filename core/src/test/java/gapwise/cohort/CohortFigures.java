package gapwise.cohort;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Holds proposals against an invented base of which the truth is known. Run by hand it prints the
 * counts by kind, and the time for growing bases as a ratio to the smallest.
 */
final class CohortFigures {
  final Map<String, int[]> kinds = new TreeMap<>();
  final List<String> falseAlarms = new ArrayList<>();
  final List<String> missed = new ArrayList<>();
  final List<String> otherwise = new ArrayList<>();
  int doubts;
  int planted;
  int found;
  int exactly;

  static CohortFigures of(InventedCohorts base, List<Proposal> proposals) {
    CohortFigures figures = new CohortFigures();
    Map<String, Proposal> byKey = new HashMap<>();
    proposals.forEach(proposal -> byKey.put(proposal.key(), proposal));
    Set<String> known = new TreeSet<>();
    for (InventedCohorts.Planted pair : base.planted) {
      String key = CohortDecision.key(Member.parse(pair.a()), Member.parse(pair.b()));
      known.add(key);
      figures.count(pair, Optional.ofNullable(byKey.get(key)));
    }
    for (Proposal proposal : proposals) {
      if (!known.contains(proposal.key())) {
        figures.alarm(proposal, "nothing planted");
      }
    }
    return figures;
  }

  private void count(InventedCohorts.Planted pair, Optional<Proposal> proposal) {
    int[] counts =
        kinds.computeIfAbsent(
            pair.truth().map(Verdict::word).orElse("separate") + ": " + pair.kind(),
            kind -> new int[4]);
    counts[0]++;
    if (pair.truth().isEmpty()) {
      proposal.ifPresent(one -> alarm(one, pair.kind()));
      counts[3] += proposal.isPresent() ? 1 : 0;
      return;
    }
    planted++;
    if (proposal.isEmpty()) {
      counts[2]++;
      missed.add(pair.toString());
    } else {
      found++;
      boolean right = proposal.get().verdict() == pair.truth().get();
      counts[1] += right ? 1 : 0;
      if (!right) {
        otherwise.add(pair + " " + proposal.get());
      }
      exactly += right ? 1 : 0;
    }
  }

  private void alarm(Proposal proposal, String kind) {
    if (proposal.verdict() == Verdict.POSSIBLE) {
      doubts++;
    } else {
      falseAlarms.add(kind + ": " + proposal);
    }
  }

  public static void main(String[] arguments) {
    long seed = arguments.length > 0 ? Long.parseLong(arguments[0]) : 7;
    double smallest = 0;
    for (int size :
        arguments.length > 1
            ? new int[] {160, Integer.parseInt(arguments[1])}
            : new int[] {160, 5_000, 20_000}) {
      InventedCohorts base = InventedCohorts.of(seed, 3, size);
      List<Proposal> proposals = List.of();
      double seconds = Double.MAX_VALUE;
      for (int run = 0; run < (size > 1000 ? 1 : 3); run++) {
        long start = System.nanoTime();
        OverlapSearch search = new OverlapSearch();
        base.studies.forEach(search::add);
        proposals = search.find().proposals();
        seconds = Math.min(seconds, (System.nanoTime() - start) / 1e9);
      }
      double each = seconds / base.studies.size();
      smallest = smallest == 0 ? each : smallest;
      CohortFigures figures = of(base, proposals);
      System.out.printf(
          Locale.ROOT,
          "%d studies: %d of %d planted pairs found, %d with the right word; %d false alarms, %d doubts; %.2f s, for each study %.2f times that of the smallest%n",
          base.studies.size(),
          figures.found,
          figures.planted,
          figures.exactly,
          figures.falseAlarms.size(),
          figures.doubts,
          seconds,
          each / smallest);
      figures.kinds.forEach(
          (kind, n) ->
              System.out.printf(
                  "  %-50s planted %2d right %2d missed %2d proposed all the same %2d%n",
                  kind, n[0], n[1], n[2], n[3]));
      figures.missed.forEach(line -> System.out.println("  missed " + line));
      figures.otherwise.forEach(line -> System.out.println("  otherwise " + line));
      figures.falseAlarms.stream().limit(12).forEach(line -> System.out.println("  false " + line));
    }
  }
}
