package gapwise.analysis.curves;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.synthesis.survival.RestrictedMean;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Limits of curves that come to one value, which is no certainty, and limits that are left out. */
final class WithoutWidth {
  private static final String CODE = "zero-width-interval";

  private WithoutWidth() {}

  /** Of a median: the curve falls past one half so steeply that its limits do so at one time. */
  static Optional<Result.Warning> ofMedian(
      String curve, OptionalDouble lower, OptionalDouble upper) {
    return lower.isPresent() && lower.equals(upper)
        ? Optional.of(
            Result.Warning.of(
                CODE,
                say(
                    "analysis.median-without-width",
                    Map.of("curve", curve, "time", String.valueOf(lower.getAsDouble())))))
        : Optional.empty();
  }

  /** Of a difference of restricted means, or what one group lends it. */
  static Optional<Result.Warning> ofDifference(
      CurveGroup own, RestrictedMean mean, CurveGroup other, RestrictedMean otherMean) {
    boolean none = mean.standardError() == 0;
    boolean noneOfOther = otherMean.standardError() == 0;
    if (none && noneOfOther) {
      return Optional.of(
          Result.Warning.of(
              CODE,
              say(
                  "analysis.mean-difference-without-width",
                  Map.of("horizon", String.valueOf(mean.horizon())))));
    }
    return none || noneOfOther
        ? Optional.of(
            Result.Warning.of(
                "no-spread-in-a-group",
                say(
                    "analysis.mean-without-spread",
                    Map.of(
                        "curve",
                        none ? own.name() : other.name(),
                        "horizon",
                        String.valueOf(mean.horizon())))))
        : Optional.empty();
  }

  /** Of medians, the curves of which do not come down to one half with their upper limits. */
  static Optional<Result.Warning> openAbove(int medians) {
    return medians == 0
        ? Optional.empty()
        : Optional.of(
            Result.Warning.of(
                "limits-left-out", say("analysis.median-open-above", Map.of("medians", medians))));
  }

  /** Of survival at 0 or 1, which has none of this kind. */
  static Optional<Result.Warning> leftOut(int places) {
    return places == 0
        ? Optional.empty()
        : Optional.of(
            Result.Warning.of(
                "limits-left-out",
                say("analysis.survival-limits-left-out", Map.of("places", places))));
  }
}
