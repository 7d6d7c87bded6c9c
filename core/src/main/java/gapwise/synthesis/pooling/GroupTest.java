package gapwise.synthesis.pooling;

import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GroupMeans;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * Whether the means of groups differ beyond chance.
 *
 * <p>Q sums their squared distances from their mean, weighted by 1/se^2. Where means have normal
 * limits it is set against chi-squared on groups less one (Borenstein and Higgins, Prev Sci
 * 2013;14:134). Where their limits are by Student's t, so is the test: with standard errors as the
 * limits have them, F = Q/(G - 1) on G - 1 and k - G if groups share one variance between studies
 * (Knapp and Hartung, Stat Med 2003;22:2693), else Welch's F (Biometrika 1951;38:330, equation 29)
 * with the degrees of freedom of each group's own limits. A group of one study tells nothing of how
 * its studies differ: then there is no test.
 *
 * @param q by the model's standard errors, whatever the test
 * @param degreesOfFreedom groups less one
 * @param statistic F; empty for chi-squared, which is q
 * @param residualDegreesOfFreedom the second of F, not always whole
 * @param pValue of the test; empty without one
 */
public record GroupTest(
    OptionalDouble q,
    OptionalInt degreesOfFreedom,
    OptionalDouble statistic,
    OptionalDouble residualDegreesOfFreedom,
    OptionalDouble pValue) {
  /** No test. */
  public static final GroupTest NONE =
      new GroupTest(
          OptionalDouble.empty(),
          OptionalInt.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty());

  /**
   * Of groups.
   *
   * @param shared whether all have one variance between studies
   */
  static GroupTest of(List<Subgroups.Group> groups, boolean shared) {
    List<Double> means = new ArrayList<>();
    List<Double> variances = new ArrayList<>();
    for (Subgroups.Group group : groups) {
      group.pooled().mean().ifPresent(mean -> means.add(mean.estimate()));
      group.pooled().modelStandardError().ifPresent(error -> variances.add(error * error));
    }
    if (groups.isEmpty() || means.size() < groups.size()) {
      return NONE;
    }
    EffectSample between = EffectSample.of(means, variances);
    Heterogeneity test = InverseVariance.fromQ(between, GroupMeans.one(between));
    GroupTest untested =
        new GroupTest(
            test.q(),
            test.degreesOfFreedom(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());
    if (groups.size() < 2 || alone(groups)) {
      return untested;
    }
    return tellsByStudentT(groups)
        ? f(groups, shared).map(one -> one.with(test)).orElse(untested)
        : new GroupTest(
            test.q(),
            test.degreesOfFreedom(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            test.pValue());
  }

  static boolean alone(List<Subgroups.Group> groups) {
    return groups.stream().anyMatch(group -> group.studies() == 1);
  }

  private static boolean tellsByStudentT(List<Subgroups.Group> groups) {
    return groups.stream()
        .allMatch(group -> group.pooled().mean().orElseThrow().degreesOfFreedom().isPresent());
  }

  private record F(double statistic, int numerator, double denominator) {
    GroupTest with(Heterogeneity test) {
      return new GroupTest(
          test.q(),
          test.degreesOfFreedom(),
          OptionalDouble.of(statistic),
          OptionalDouble.of(denominator),
          OptionalDouble.of(
              FDistribution.of(numerator, denominator).survivalProbability(statistic)));
    }
  }

  private static Optional<F> f(List<Subgroups.Group> groups, boolean shared) {
    List<PooledMean> means =
        groups.stream().map(group -> group.pooled().mean().orElseThrow()).toList();
    double weights = 0;
    double weighted = 0;
    for (PooledMean mean : means) {
      double weight = 1 / (mean.standardError() * mean.standardError());
      weights += weight;
      weighted += weight * mean.estimate();
    }
    double square = 0;
    double spread = 0;
    for (PooledMean mean : means) {
      double weight = 1 / (mean.standardError() * mean.standardError());
      double distance = mean.estimate() - weighted / weights;
      square += weight * distance * distance;
      double rest = 1 - weight / weights;
      spread += rest * rest / mean.degreesOfFreedom().orElseThrow();
    }
    int g = groups.size();
    double statistic =
        shared
            ? square / (g - 1)
            : square / (g - 1) / (1 + 2 * (g - 2) * spread / ((double) g * g - 1));
    double denominator =
        shared
            ? means.get(0).degreesOfFreedom().orElseThrow()
            : ((double) g * g - 1) / (3 * spread);
    return statistic >= 0 && statistic < Double.MAX_VALUE && denominator < Double.MAX_VALUE
        ? Optional.of(new F(statistic, g - 1, denominator))
        : Optional.empty();
  }
}
