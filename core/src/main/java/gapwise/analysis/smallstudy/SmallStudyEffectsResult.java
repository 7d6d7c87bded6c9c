package gapwise.analysis.smallstudy;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Whether small studies tell another story than large ones. Part of a {@link Result}; a test that
 * was refused is absent and a warning says why. Each has a sentence that claims no more than it
 * may.
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record SmallStudyEffectsResult(
    Optional<Line> egger,
    Optional<RandomLine> eggerRandom,
    Optional<Ranks> begg,
    Optional<Line> peters,
    Optional<Line> harbord,
    List<Filled> trimAndFill) {
  public SmallStudyEffectsResult {
    trimAndFill = List.copyOf(trimAndFill);
  }

  /** Whether every test was refused. */
  boolean isEmpty() {
    return egger.isEmpty()
        && eggerRandom.isEmpty()
        && begg.isEmpty()
        && peters.isEmpty()
        && harbord.isEmpty()
        && trimAndFill.isEmpty();
  }

  /** A line by least squares; the standard error and test are those of what is tested. */
  public record Line(
      double intercept,
      double slope,
      double standardError,
      double statistic,
      int degreesOfFreedom,
      double pValue,
      String sentence) {}

  /** A line over the standard error with a variance between studies about it. */
  public record RandomLine(
      double slope,
      double standardError,
      double statistic,
      double pValue,
      double limit,
      double tauSquared,
      String sentence) {}

  /** A rank correlation. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Ranks(
      long score,
      double kendallTau,
      double statistic,
      double pValue,
      double continuityStatistic,
      OptionalDouble exactPValue,
      String sentence) {}

  /** Pooled with imagined studies. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Filled(
      String model,
      String estimator,
      String side,
      int added,
      double estimate,
      double standardError,
      double lower,
      double upper,
      OptionalDouble tauSquared,
      String sentence) {}
}
