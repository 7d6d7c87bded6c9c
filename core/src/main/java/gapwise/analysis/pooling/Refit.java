package gapwise.analysis.pooling;

import gapwise.effect.Interval;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.pooling.PooledValue;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * A pooled value of some of the studies, as it stands in a list of such. Limits without width are
 * left out: in a list nobody reads the one warning that they are no certainty.
 *
 * @param random whether the variance between studies is estimated
 */
public record Refit(PooledValue pooled, boolean random) {
  /**
   * Lists of refits that take a fit for each study, so that their time grows with the square of
   * these, are told up to here: studies added one by one, and profile likelihood limits.
   */
  public static final int MOST_STUDIES = 1000;

  OptionalDouble estimate() {
    return of(PooledMean::estimate);
  }

  OptionalDouble standardError() {
    return of(PooledMean::standardError);
  }

  /** Empty where both are one value. */
  OptionalDouble limit(ToDoubleFunction<Interval> which) {
    return isWithoutWidth()
        ? OptionalDouble.empty()
        : of(mean -> which.applyAsDouble(mean.interval()));
  }

  /** Whether there are limits that come to one value. */
  boolean isWithoutWidth() {
    return pooled
        .mean()
        .map(PooledMean::interval)
        .filter(limits -> !(limits.lower() < limits.upper()))
        .isPresent();
  }

  /** One study alone has a tau squared of 0. */
  OptionalDouble tauSquared() {
    boolean set =
        random
            && pooled.mean().isPresent()
            && pooled.tauSquared().isEmpty()
            && pooled.studies() == 1;
    return set ? OptionalDouble.of(0) : pooled.tauSquared();
  }

  private OptionalDouble of(ToDoubleFunction<PooledMean> part) {
    return pooled.mean().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(part.applyAsDouble(pooled.mean().get()));
  }
}
