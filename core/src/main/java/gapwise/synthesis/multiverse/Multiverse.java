package gapwise.synthesis.multiverse;

import gapwise.budget.Work;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Every analysis that its choices allow: Steegen, Tuerlinckx, Gelman and Vanpaemel, Perspect
 * Psychol Sci 2016;11:702; Simonsohn, Simmons and Nelson, Nat Hum Behav 2020;4:1208. The door of
 * this room.
 *
 * <p>Analyses run in parallel and stand in a fixed order, and all sums are taken in that order, so
 * that the number of threads changes nothing.
 *
 * @param choices what could be chosen
 * @param analyses approach by approach, in each subset by subset, in each way by way
 * @param family the place of the choice whose levels are families that weigh alike; negative where
 *     all analyses are one family
 */
public record Multiverse(List<Choice> choices, List<Analysis> analyses, int family) {
  /** Analyses of one family. */
  public Multiverse(List<Choice> choices, List<Analysis> analyses) {
    this(choices, analyses, -1);
  }

  public Multiverse {
    choices = List.copyOf(choices);
    analyses = List.copyOf(analyses);
  }

  /**
   * One analysis.
   *
   * @param scale the word of its scale
   * @param settings its level of each choice
   */
  public record Analysis(String scale, Settings settings, AnalysisFinding finding) {
    /** The pooled value, if there is one. */
    Stream<AnalysisFinding.Estimated> estimated() {
      return finding instanceof AnalysisFinding.Estimated value ? Stream.of(value) : Stream.empty();
    }
  }

  /** Runs every approach on every subset, all of them of one family. */
  public static Multiverse of(
      List<Choice> choices, List<Approach> approaches, List<Subset> subsets) {
    return of(choices, -1, approaches, subsets);
  }

  /**
   * Runs every approach on every subset.
   *
   * @param family the place of the choice whose levels are families
   */
  public static Multiverse of(
      List<Choice> choices, int family, List<Approach> approaches, List<Subset> subsets) {
    int cells = approaches.size() * subsets.size();
    Work work = Work.current();
    List<Analysis> analyses =
        IntStream.range(0, cells)
            .parallel()
            .mapToObj(
                cell ->
                    work.join(
                        () ->
                            run(
                                approaches.get(cell / subsets.size()),
                                subsets.get(cell % subsets.size()))))
            .flatMap(List::stream)
            .toList();
    return new Multiverse(choices, analyses, family);
  }

  private static List<Analysis> run(Approach approach, Subset subset) {
    Work.check();
    List<Settings> ways = approach.ways();
    List<AnalysisFinding> findings = approach.findings(subset);
    return IntStream.range(0, ways.size())
        .mapToObj(
            way ->
                new Analysis(
                    approach.scale(), ways.get(way).and(subset.settings()), findings.get(way)))
        .toList();
  }

  /** The analyses with a pooled value, in their order. */
  public List<Analysis> estimated() {
    return analyses.stream().filter(a -> a.finding() instanceof AnalysisFinding.Estimated).toList();
  }

  /** How many analyses have no pooled value, by the code that says why. */
  public Map<String, Integer> notEstimated() {
    Map<String, Integer> counts = new TreeMap<>();
    for (Analysis analysis : analyses) {
      if (analysis.finding() instanceof AnalysisFinding.NotEstimated not) {
        counts.merge(not.code(), 1, Integer::sum);
      }
    }
    return counts;
  }

  /** How many pooled values with their limits differ; choices without effect repeat them. */
  public int different() {
    Set<List<Double>> seen = new HashSet<>();
    for (Analysis analysis : analyses) {
      analysis
          .estimated()
          .forEach(f -> seen.add(List.of(f.shownEstimate(), f.shownLower(), f.shownUpper())));
    }
    return seen.size();
  }

  /** The scales on which something was pooled, in the order of the analyses. */
  public List<String> scales() {
    return estimated().stream().map(Analysis::scale).distinct().toList();
  }

  /**
   * Whether pooled values can only be set side by side as people read them, because they stem from
   * more than one scale.
   */
  public boolean onlyShownCompares() {
    return scales().size() > 1;
  }

  /** The value by which analyses are compared. */
  ToDoubleFunction<AnalysisFinding.Estimated> compared() {
    return onlyShownCompares()
        ? AnalysisFinding.Estimated::shownEstimate
        : AnalysisFinding.Estimated::estimate;
  }

  /** Pooled values as people read them. */
  public Spread shown() {
    return spread(estimated(), AnalysisFinding.Estimated::shownEstimate);
  }

  /** Pooled values on each scale. */
  public Map<String, Spread> byScale() {
    return scales().stream()
        .collect(
            Collectors.toMap(
                scale -> scale,
                scale ->
                    spread(
                        estimated().stream().filter(a -> a.scale().equals(scale)).toList(),
                        AnalysisFinding.Estimated::estimate),
                (one, same) -> one,
                java.util.LinkedHashMap::new));
  }

  private Spread spread(
      List<Analysis> analyses, ToDoubleFunction<AnalysisFinding.Estimated> value) {
    FamilyWeights weights = new FamilyWeights(family, analyses);
    return Spread.of(
        analyses.stream().flatMap(Analysis::estimated).mapToDouble(value).toArray(),
        analyses.stream().mapToDouble(weights::of).toArray());
  }

  /** How many families have a pooled value. */
  public int families() {
    return new FamilyWeights(family, estimated()).families();
  }

  /** The analyses of one family. */
  public Multiverse ofFamily(int level) {
    return new Multiverse(
        choices,
        analyses.stream().filter(one -> one.settings().level(family) == level).toList(),
        family);
  }

  /** The shares on each side of a value, as people read it; at least one pooled value is needed. */
  public SideShares sharesAgainst(double threshold) {
    Map<Integer, List<AnalysisFinding.Estimated>> byFamily = new TreeMap<>();
    for (Analysis analysis : estimated()) {
      byFamily
          .computeIfAbsent(
              family < 0 ? Settings.NONE : analysis.settings().level(family),
              level -> new ArrayList<>())
          .add((AnalysisFinding.Estimated) analysis.finding());
    }
    List<Sides> sides =
        byFamily.values().stream().map(findings -> Sides.of(findings, threshold)).toList();
    return new SideShares(
        mean(sides, Sides::below),
        mean(sides, Sides::above),
        mean(sides, Sides::intervalsBelow),
        mean(sides, Sides::intervalsAbove));
  }

  private static double mean(List<Sides> families, ToIntFunction<Sides> count) {
    return families.stream()
        .mapToDouble(one -> count.applyAsInt(one) / (double) one.analyses())
        .average()
        .orElseThrow();
  }

  /** The analysis with the lowest pooled value; the first of several. At least one is needed. */
  public Analysis lowest() {
    return farthest(-1);
  }

  /** The analysis with the highest pooled value; the first of several. At least one is needed. */
  public Analysis highest() {
    return farthest(1);
  }

  private Analysis farthest(int direction) {
    ToDoubleFunction<AnalysisFinding.Estimated> compared = compared();
    Analysis best = null;
    double reach = Double.NEGATIVE_INFINITY;
    for (Analysis analysis : estimated()) {
      double value =
          direction * compared.applyAsDouble((AnalysisFinding.Estimated) analysis.finding());
      if (best == null || value > reach) {
        best = analysis;
        reach = value;
      }
    }
    if (best == null) {
      throw new IllegalStateException("no analysis has a pooled value");
    }
    return best;
  }

  /** On which side of a value, as people read it, pooled values and intervals lie. */
  public Sides against(double threshold) {
    return Sides.of(estimated().stream().flatMap(Analysis::estimated).toList(), threshold);
  }

  /** What each choice does. */
  public List<ChoiceMove> moves(OptionalDouble threshold) {
    return IntStream.range(0, choices.size())
        .mapToObj(choice -> ChoiceMove.of(this, choice, threshold))
        .toList();
  }

  /** The middle pooled value at a level of a choice; empty if nothing was pooled there. */
  public OptionalDouble median(int choice, int level) {
    List<Analysis> there =
        estimated().stream().filter(a -> a.settings().level(choice) == level).toList();
    return there.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(spread(there, compared()).median());
  }
}
