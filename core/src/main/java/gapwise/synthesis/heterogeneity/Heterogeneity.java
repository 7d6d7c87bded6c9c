package gapwise.synthesis.heterogeneity;

import gapwise.effect.Interval;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * How far results of studies differ beyond chance: Higgins and Thompson, Stat Med 2002;21:1539.
 *
 * @param q Cochran's Q; empty if it cannot be had
 * @param degreesOfFreedom of Q
 * @param pValue of Q; empty without degrees of freedom
 * @param tauSquared variance between studies; empty for a common effect
 * @param tauSquaredInterval its limits
 * @param iSquared share of the variance that is between studies, 0 to 1, from tau squared
 * @param iSquaredInterval its limits, those of tau squared beside the same typical variance
 * @param hSquared variance over that within studies, from tau squared
 * @param iSquaredFromQ the same share from Q, 0 to 1
 * @param hSquaredFromQ Q over its degrees of freedom
 * @param intraclassCorrelation of the outcomes of two patients of one study, from 0 to below 1, in
 *     the place of tau squared where true shares have a beta distribution
 */
public record Heterogeneity(
    OptionalDouble q,
    OptionalInt degreesOfFreedom,
    OptionalDouble pValue,
    OptionalDouble tauSquared,
    Optional<Interval> tauSquaredInterval,
    OptionalDouble iSquared,
    Optional<Interval> iSquaredInterval,
    OptionalDouble hSquared,
    OptionalDouble iSquaredFromQ,
    OptionalDouble hSquaredFromQ,
    OptionalDouble intraclassCorrelation) {
  private static final OptionalDouble NONE = OptionalDouble.empty();

  /** Nothing can be said. */
  public static final Heterogeneity UNKNOWN =
      new Heterogeneity(
          NONE,
          OptionalInt.empty(),
          NONE,
          NONE,
          Optional.empty(),
          NONE,
          Optional.empty(),
          NONE,
          NONE,
          NONE,
          NONE);

  /** One study: Q is 0 on 0 degrees of freedom. */
  public static final Heterogeneity OF_ONE_STUDY = fromQ(0, 0);

  /** A spread between studies from a model that has no Q. */
  public static Heterogeneity ofSpread(double tau) {
    return UNKNOWN.withTauSquared(tau * tau);
  }

  /** True shares with a beta distribution. */
  public static Heterogeneity ofIntraclass(double correlation) {
    return new Heterogeneity(
        NONE,
        OptionalInt.empty(),
        NONE,
        NONE,
        Optional.empty(),
        NONE,
        Optional.empty(),
        NONE,
        NONE,
        NONE,
        OptionalDouble.of(correlation));
  }

  /**
   * The same with limits of the spread.
   *
   * @param limits of tau, at least 0
   */
  public static Heterogeneity ofSpread(double tau, Interval limits) {
    return new Heterogeneity(
        NONE,
        OptionalInt.empty(),
        NONE,
        OptionalDouble.of(tau * tau),
        Optional.of(new Interval(limits.lower() * limits.lower(), limits.upper() * limits.upper())),
        NONE,
        Optional.empty(),
        NONE,
        NONE,
        NONE,
        NONE);
  }

  /** What follows from Q alone. */
  public static Heterogeneity fromQ(double q, int degrees) {
    if (degrees < 1) {
      return new Heterogeneity(
          OptionalDouble.of(q),
          OptionalInt.of(degrees),
          NONE,
          NONE,
          Optional.empty(),
          NONE,
          Optional.empty(),
          NONE,
          NONE,
          NONE,
          NONE);
    }
    return new Heterogeneity(
        OptionalDouble.of(q),
        OptionalInt.of(degrees),
        OptionalDouble.of(ChiSquaredDistribution.of(degrees).survivalProbability(q)),
        NONE,
        Optional.empty(),
        NONE,
        Optional.empty(),
        NONE,
        OptionalDouble.of(q == 0 ? 0 : Math.max(0, (q - degrees) / q)),
        OptionalDouble.of(q / degrees),
        NONE);
  }

  /**
   * The same with what follows from tau squared.
   *
   * @param typicalVariance the typical variance within studies, above 0
   */
  public Heterogeneity with(
      double tauSquared, double typicalVariance, Optional<Interval> interval) {
    return new Heterogeneity(
        q,
        degreesOfFreedom,
        pValue,
        OptionalDouble.of(tauSquared),
        interval,
        OptionalDouble.of(share(tauSquared, typicalVariance)),
        interval.map(
            limits ->
                new Interval(
                    share(limits.lower(), typicalVariance),
                    share(limits.upper(), typicalVariance))),
        OptionalDouble.of(1 + tauSquared / typicalVariance),
        iSquaredFromQ,
        hSquaredFromQ,
        intraclassCorrelation);
  }

  private static double share(double tauSquared, double typicalVariance) {
    return tauSquared / (tauSquared + typicalVariance);
  }

  /** The same with a tau squared that was not estimated from these studies alone. */
  public Heterogeneity withTauSquared(double given) {
    return new Heterogeneity(
        q,
        degreesOfFreedom,
        pValue,
        OptionalDouble.of(given),
        tauSquaredInterval,
        iSquared,
        iSquaredInterval,
        hSquared,
        iSquaredFromQ,
        hSquaredFromQ,
        intraclassCorrelation);
  }
}
