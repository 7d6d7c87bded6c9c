package gapwise.analysis.network;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * How comparisons with the reference change along a number of studies. Part of a {@link Result}.
 *
 * @param moderator its column
 * @param reference the treatment whose comparisons change
 * @param studies with a value
 * @param studiesWithReference of these, those that hold the reference and so tell of the slope
 * @param slope what one more of the moderator adds to each treatment less the reference
 * @param heterogeneity what the moderator leaves
 * @param predictions effects at the centre first, then at the values asked for
 */
public record NetworkRegressionResult(
    String moderator,
    String reference,
    int studies,
    int studiesWithReference,
    Slope slope,
    Result.Heterogeneity heterogeneity,
    List<Prediction> predictions) {
  public NetworkRegressionResult {
    predictions = List.copyOf(predictions);
  }

  /**
   * The slope with its test.
   *
   * @param degreesOfFreedom of Student's t; empty for normal limits
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Slope(
      double estimate,
      double standardError,
      double statistic,
      OptionalInt degreesOfFreedom,
      double pValue,
      double lower,
      double upper) {}

  /**
   * Effects where the moderator has a value.
   *
   * @param at the value, by column
   * @param outsideData whether it lies outside the range of the studies
   */
  public record Prediction(Map<String, Double> at, boolean outsideData, List<Effect> effects) {
    public Prediction {
      at = Map.copyOf(at);
      effects = List.copyOf(effects);
    }
  }

  /** One treatment less the reference. */
  public record Effect(
      String treatment,
      String against,
      double estimate,
      double standardError,
      double lower,
      double upper,
      Result.Estimate shown) {}
}
