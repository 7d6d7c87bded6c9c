package gapwise.analysis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.effect.Interval;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.pooling.PooledValue;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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

  /** More entries than this are counted and not named. */
  private static final int MOST_NAMED = 5;

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

  /**
   * Says that limits are left out.
   *
   * @param entries labels of those that have none for this reason
   */
  static Optional<Result.Warning> withoutWidth(List<String> entries) {
    if (entries.isEmpty()) {
      return Optional.empty();
    }
    String names =
        String.join(", ", entries.subList(0, Math.min(MOST_NAMED, entries.size())))
            + (entries.size() > MOST_NAMED ? ", ..." : "");
    return Optional.of(
        Result.Warning.of(
            "zero-width-interval",
            say(
                "analysis.entries-without-width",
                Map.of("entries", entries.size(), "names", names))));
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
