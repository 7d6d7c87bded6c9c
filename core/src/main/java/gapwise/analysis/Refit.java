package gapwise.analysis;

import gapwise.effect.Interval;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PooledMean;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * A pooled value of some of the studies, as it stands in a list of such.
 *
 * @param random whether the variance between studies is estimated
 */
record Refit(Pooled pooled, boolean random) {
  /** Lists of refits take a fit for each study, so their time grows with the square of these. */
  static final int MOST_STUDIES = 1000;

  OptionalDouble estimate() {
    return of(PooledMean::estimate);
  }

  OptionalDouble standardError() {
    return of(PooledMean::standardError);
  }

  OptionalDouble limit(ToDoubleFunction<Interval> which) {
    return of(mean -> which.applyAsDouble(mean.interval()));
  }

  /** One study alone has a tau squared of 0. */
  OptionalDouble tauSquared() {
    OptionalDouble estimated = pooled.heterogeneity().tauSquared();
    boolean set = random && estimated.isEmpty() && pooled.weights().size() == 1;
    return set ? OptionalDouble.of(0) : estimated;
  }

  private OptionalDouble of(ToDoubleFunction<PooledMean> part) {
    return pooled.mean().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(part.applyAsDouble(pooled.mean().get()));
  }
}
