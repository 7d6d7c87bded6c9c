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
 * meaning are counted. Analyses of the same rows are not independent, so no test goes with it.
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
   */
  public record Level(
      String name,
      int analyses,
      OptionalDouble mean,
      OptionalDouble meanWidth,
      OptionalInt including) {}

  static ChoiceMove of(Multiverse multiverse, int choice, OptionalDouble threshold) {
    Choice asked = multiverse.choices().get(choice);
    List<List<AnalysisFinding.Estimated>> byLevel = new ArrayList<>();
    asked.levels().forEach(level -> byLevel.add(new ArrayList<>()));
    List<AnalysisFinding.Estimated> all = new ArrayList<>();
    for (Multiverse.Analysis analysis : multiverse.analyses()) {
      int level = analysis.settings().level(choice);
      if (level != Settings.NONE
          && analysis.finding() instanceof AnalysisFinding.Estimated finding) {
        byLevel.get(level).add(finding);
        all.add(finding);
      }
    }
    ToDoubleFunction<AnalysisFinding.Estimated> value = multiverse.compared();
    List<Level> levels = new ArrayList<>();
    for (int i = 0; i < byLevel.size(); i++) {
      levels.add(level(asked.levels().get(i), byLevel.get(i), value, threshold));
    }
    return new ChoiceMove(asked, range(levels), share(levels, all, value), levels);
  }

  private static Level level(
      String name,
      List<AnalysisFinding.Estimated> findings,
      ToDoubleFunction<AnalysisFinding.Estimated> value,
      OptionalDouble threshold) {
    return new Level(
        name,
        findings.size(),
        mean(findings, value),
        mean(findings, finding -> finding.shownUpper() - finding.shownLower()),
        threshold.isEmpty()
            ? OptionalInt.empty()
            : OptionalInt.of(Sides.of(findings, threshold.getAsDouble()).intervalsIncluding()));
  }

  private static OptionalDouble mean(
      List<AnalysisFinding.Estimated> findings, ToDoubleFunction<AnalysisFinding.Estimated> value) {
    return findings.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            TermSum.of(findings.size(), i -> value.applyAsDouble(findings.get(i)))
                / findings.size());
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
      List<AnalysisFinding.Estimated> all,
      ToDoubleFunction<AnalysisFinding.Estimated> value) {
    OptionalDouble mean = mean(all, value);
    if (mean.isEmpty()) {
      return OptionalDouble.empty();
    }
    double middle = mean.getAsDouble();
    double total = TermSum.of(all.size(), i -> square(value.applyAsDouble(all.get(i)) - middle));
    double between =
        TermSum.of(
            levels.size(),
            i -> {
              Level level = levels.get(i);
              return level.analyses() * square(level.mean().orElse(middle) - middle);
            });
    boolean equal = Math.sqrt(total / all.size()) <= ROUNDING * Math.abs(middle);
    return equal ? OptionalDouble.empty() : OptionalDouble.of(Math.min(1, between / total));
  }

  private static double square(double x) {
    return x * x;
  }
}
