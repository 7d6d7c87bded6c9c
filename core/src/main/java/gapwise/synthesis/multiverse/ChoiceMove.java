package gapwise.synthesis.multiverse;

import gapwise.numeric.TermSum;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.ToDoubleFunction;

/**
 * What one choice does to the pooled value: the means over all analyses at each of its levels, and
 * the share of the variance of the pooled values that these means account for, sum n_l (m_l - m)^2
 * over sum (x - m)^2, the main effect in a one-way table. Only analyses in which the choice has a
 * meaning are counted, families of models weighing alike. Analyses of the same rows are not
 * independent, so no test goes with it.
 *
 * @param choice what is chosen
 * @param range highest less lowest mean of a level; empty if nothing was pooled
 * @param share from 0 to 1; empty if all pooled values are equal to rounding
 * @param levels one for each level of the choice
 */
public record ChoiceMove(
    Choice choice, OptionalDouble range, OptionalDouble share, List<Level> levels) {
  /** Pooled values that differ by less than this share of their size differ by rounding only. */
  private static final double ROUNDING = 1e-12;

  public ChoiceMove {
    levels = List.copyOf(levels);
  }

  /**
   * One level.
   *
   * @param name of the level
   * @param analyses with a pooled value
   * @param mean of the pooled values; empty without any
   * @param meanWidth of the intervals as people read them
   * @param including how many intervals include the threshold; empty without a threshold
   * @param includingShare their share, families weighing alike; empty without any
   */
  public record Level(
      String name,
      int analyses,
      OptionalDouble mean,
      OptionalDouble meanWidth,
      OptionalInt including,
      OptionalDouble includingShare) {}

  static ChoiceMove of(Multiverse multiverse, int choice, OptionalDouble threshold) {
    Choice asked = multiverse.choices().get(choice);
    List<Multiverse.Analysis> all =
        multiverse.estimated().stream()
            .filter(one -> one.settings().level(choice) != Settings.NONE)
            .toList();
    FamilyWeights weights = new FamilyWeights(multiverse.family(), all);
    List<List<Weighed>> byLevel = new ArrayList<>();
    asked.levels().forEach(level -> byLevel.add(new ArrayList<>()));
    List<Weighed> findings = new ArrayList<>();
    for (Multiverse.Analysis analysis : all) {
      Weighed one =
          new Weighed((AnalysisFinding.Estimated) analysis.finding(), weights.of(analysis));
      byLevel.get(analysis.settings().level(choice)).add(one);
      findings.add(one);
    }
    ToDoubleFunction<AnalysisFinding.Estimated> value = multiverse.compared();
    List<Level> levels = new ArrayList<>();
    for (int i = 0; i < byLevel.size(); i++) {
      levels.add(level(asked.levels().get(i), byLevel.get(i), value, threshold));
    }
    return new ChoiceMove(asked, range(levels), share(levels, byLevel, findings, value), levels);
  }

  /** A finding and how much it weighs. */
  private record Weighed(AnalysisFinding.Estimated finding, double weight) {}

  private static Level level(
      String name,
      List<Weighed> findings,
      ToDoubleFunction<AnalysisFinding.Estimated> value,
      OptionalDouble threshold) {
    boolean told = threshold.isPresent() && !findings.isEmpty();
    return new Level(
        name,
        findings.size(),
        mean(findings, value),
        mean(findings, finding -> finding.shownUpper() - finding.shownLower()),
        threshold.isEmpty()
            ? OptionalInt.empty()
            : OptionalInt.of(
                Sides.of(findings.stream().map(Weighed::finding).toList(), threshold.getAsDouble())
                    .intervalsIncluding()),
        told
            ? mean(findings, finding -> includes(finding, threshold.getAsDouble()) ? 1 : 0)
            : OptionalDouble.empty());
  }

  private static boolean includes(AnalysisFinding.Estimated finding, double value) {
    return finding.shownLower() <= value && finding.shownUpper() >= value;
  }

  private static OptionalDouble mean(
      List<Weighed> findings, ToDoubleFunction<AnalysisFinding.Estimated> value) {
    return findings.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            TermSum.of(
                    findings.size(),
                    i -> findings.get(i).weight() * value.applyAsDouble(findings.get(i).finding()))
                / weight(findings));
  }

  private static double weight(List<Weighed> findings) {
    return TermSum.of(findings.size(), i -> findings.get(i).weight());
  }

  private static OptionalDouble range(List<Level> levels) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Level level : levels) {
      if (level.mean().isPresent()) {
        low = Math.min(low, level.mean().getAsDouble());
        high = Math.max(high, level.mean().getAsDouble());
      }
    }
    return low > high ? OptionalDouble.empty() : OptionalDouble.of(high - low);
  }

  private static OptionalDouble share(
      List<Level> levels,
      List<List<Weighed>> byLevel,
      List<Weighed> all,
      ToDoubleFunction<AnalysisFinding.Estimated> value) {
    OptionalDouble mean = mean(all, value);
    if (mean.isEmpty()) {
      return OptionalDouble.empty();
    }
    double middle = mean.getAsDouble();
    double total =
        TermSum.of(
            all.size(),
            i -> all.get(i).weight() * square(value.applyAsDouble(all.get(i).finding()) - middle));
    double between =
        TermSum.of(
            levels.size(),
            i -> weight(byLevel.get(i)) * square(levels.get(i).mean().orElse(middle) - middle));
    boolean equal = Math.sqrt(total / weight(all)) <= ROUNDING * Math.abs(middle);
    return equal ? OptionalDouble.empty() : OptionalDouble.of(Math.min(1, between / total));
  }

  private static double square(double x) {
    return x * x;
  }
}
