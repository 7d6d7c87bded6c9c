package gapwise.synthesis.pooling;

import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one study adds to a ratio of sums, with its own effect for Q.
 *
 * @param numerator R, at least 0
 * @param denominator S, at least 0; also its weight
 * @param effect its own effect; empty where it is infinite
 * @param variance of that effect
 */
record Stratum(
    double numerator, double denominator, OptionalDouble effect, OptionalDouble variance) {

  /** Sum of the numerators. */
  static double numerators(List<Stratum> strata) {
    return strata.stream().mapToDouble(Stratum::numerator).sum();
  }

  /** Sum of the denominators. */
  static double denominators(List<Stratum> strata) {
    return strata.stream().mapToDouble(Stratum::denominator).sum();
  }

  /** Why a ratio of sums has no finite logarithm; empty if it has. */
  static Optional<Pooled> noRatio(double numerator, double denominator, boolean noEvents) {
    if (numerator > 0 && denominator > 0) {
      return Optional.empty();
    }
    Problem why =
        numerator == 0 && denominator == 0
            ? new Problem(
                "",
                noEvents ? "no-events" : "all-events",
                "the pooled ratio is 0/0, because "
                    + (noEvents ? "no patient anywhere" : "every patient")
                    + " had the event; nothing is pooled")
            : new Problem(
                "",
                "estimate-at-limit",
                "one of the groups has no events, or only events, in every study, so the pooled"
                    + " ratio is 0 or infinite and has no interval");
    return Optional.of(Pooled.without(Heterogeneity.UNKNOWN, why));
  }

  /**
   * A pooled value with normal limits. Q is the sum of (own effect - pooled value)^2 / variance
   * over studies whose own effect is finite and has a variance above 0.
   */
  static Pooled pooled(List<Stratum> strata, double estimate, double standardError, double level) {
    double total = denominators(strata);
    double q = 0;
    int finite = 0;
    for (Stratum one : strata) {
      if (one.effect().isPresent() && one.variance().orElse(0) > 0) {
        double distance = one.effect().getAsDouble() - estimate;
        q += distance * distance / one.variance().getAsDouble();
        finite++;
      }
    }
    return new Pooled(
        Optional.of(
            PooledMean.symmetric(estimate, standardError, ReferenceDistribution.normal(), level)),
        Optional.empty(),
        finite == 0 ? Heterogeneity.UNKNOWN : Heterogeneity.fromQ(finite == 1 ? 0 : q, finite - 1),
        strata.stream().map(one -> one.denominator() / total).toList(),
        OptionalDouble.of(standardError),
        Optional.empty(),
        warnings(strata.size(), standardError));
  }

  private static List<Problem> warnings(int studies, double standardError) {
    if (standardError == 0) {
      return List.of(
          new Problem(
              "",
              "zero-width-interval",
              "every study's variance is 0, so the interval has no width; do not read it as"
                  + " certainty"));
    }
    return studies > 1
        ? List.of()
        : List.of(
            new Problem(
                "",
                "single-study",
                "only one study: its own result stands here, and nothing can be said of differences"
                    + " between studies"));
  }
}
