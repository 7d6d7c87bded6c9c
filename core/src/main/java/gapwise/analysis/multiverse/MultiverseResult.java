package gapwise.analysis.multiverse;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.result.Result;
import gapwise.analysis.result.TaskResult;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The pooled value under every defensible way of working it out. Part of a {@link Result}. Percent
 * are of the analyses with a pooled value, families of models weighing alike.
 *
 * @param sentence the whole in words
 * @param counted how many were tried, and how many came to something
 * @param scales pooled values on each analysis scale
 * @param shown pooled values as people read them; empty if there are none
 * @param about what of a regression is told; empty for a pooled value
 * @param marked where analyses that stand out lie
 * @param threshold sides of the threshold, if one is asked
 * @param comparedOn {@code analysis-scale}, or {@code shown} where scales vary: what the means,
 *     ranges, medians and shifts below are told on
 * @param choices what each choice does
 * @param studies what leaving each study out does; empty unless asked
 * @param ends the analyses with the lowest and the highest pooled value
 * @param list every analysis; empty unless asked
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record MultiverseResult(
    String sentence,
    @JsonUnwrapped Counted counted,
    List<OnScale> scales,
    Optional<Spread> shown,
    Optional<About> about,
    @JsonUnwrapped Marked marked,
    Optional<Threshold> threshold,
    String comparedOn,
    List<ChoiceMoved> choices,
    Optional<List<StudyMoved>> studies,
    @JsonUnwrapped Ends ends,
    Optional<List<Row>> list)
    implements TaskResult {
  @Override
  public Optional<String> field() {
    return Optional.of("multiverse");
  }

  public MultiverseResult {
    scales = List.copyOf(scales);
    choices = List.copyOf(choices);
  }

  /**
   * How many analyses there are; written among the fields of the whole.
   *
   * @param analyses how many were tried
   * @param estimated how many of them have a pooled value
   * @param different how many of these differ in value or limits
   * @param notEstimated why the others have none, intervals without width among them
   * @param families each model with its analyses
   */
  public record Counted(
      int analyses,
      int estimated,
      int different,
      List<NotEstimated> notEstimated,
      List<Family> families) {
    public Counted {
      notEstimated = List.copyOf(notEstimated);
      families = List.copyOf(families);
    }
  }

  /**
   * What of a regression is told.
   *
   * @param term of a coefficient
   * @param at the values of all moderators where the mean lies
   * @param against those of the mean that is taken off
   * @param outsideData true where a number of these lies outside the studies that enter, else left
   *     out
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record About(
      Optional<String> term,
      Optional<Map<String, JsonNode>> at,
      Optional<Map<String, JsonNode>> against,
      Optional<Boolean> outsideData) {
    /** Whether it is a mean at one place, and neither a coefficient nor a difference. */
    @JsonIgnore
    boolean isMean() {
      return at.isPresent() && against.isEmpty();
    }
  }

  /**
   * Analyses that stand out, written among the fields of the whole.
   *
   * @param own where the analysis of the plan itself lies, if it is among them
   * @param pages where the analysis that pages show lies, if it is among them
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Marked(Optional<Own> own, Optional<Own> pages) {}

  /**
   * The analyses at both ends, written among the fields of the whole; empty if none is estimated.
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Ends(Optional<Extreme> lowest, Optional<Extreme> highest) {}

  /** How many analyses have no pooled value for one reason. */
  public record NotEstimated(String code, int analyses) {}

  /**
   * The analyses of one model.
   *
   * @param shown their pooled values; empty if there are none
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Family(
      String model,
      int analyses,
      int estimated,
      Optional<Spread> shown,
      Optional<Threshold> threshold) {}

  /** How values are spread. */
  public record Spread(
      double minimum, double lowerQuartile, double median, double upperQuartile, double maximum) {}

  /** How values on one scale are spread. */
  public record OnScale(
      String scale,
      int analyses,
      double minimum,
      double lowerQuartile,
      double median,
      double upperQuartile,
      double maximum) {}

  /** An analysis that stands out, and how many of all lie below it as people read them. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Own(
      double estimate,
      double lower,
      double upper,
      Result.Estimate shown,
      OptionalDouble pValue,
      double belowPercent) {}

  /** Shares on each side of a value as people read it. */
  public record Threshold(
      double value,
      double belowPercent,
      double abovePercent,
      double intervalsBelowPercent,
      double intervalsIncludingPercent,
      double intervalsAbovePercent) {}

  /** What one choice does. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record ChoiceMoved(
      String choice, OptionalDouble range, OptionalDouble sharePercent, List<Level> levels) {
    public ChoiceMoved {
      levels = List.copyOf(levels);
    }
  }

  /** One level of a choice. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Level(
      String level,
      int analyses,
      OptionalDouble mean,
      OptionalDouble meanWidth,
      OptionalDouble intervalsIncludingPercent) {}

  /** What leaving a study out does to the middle of all pooled values. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record StudyMoved(String study, OptionalDouble medianWithout, OptionalDouble shift) {}

  /** An analysis at an end. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Extreme(
      Map<String, String> settings,
      int studies,
      double estimate,
      double lower,
      double upper,
      Result.Estimate shown,
      OptionalDouble pValue) {}

  /**
   * One analysis.
   *
   * @param levels numbers from 0 of the levels of {@code choices} in their order; -1 for a choice
   *     without meaning here
   * @param pValue of a regression, the test against 0 on the analysis scale; none for means of
   *     single groups
   * @param code why there is no value
   * @param pages true for the analysis that pages show, else left out
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Row(
      List<Integer> levels,
      OptionalInt studies,
      OptionalDouble estimate,
      OptionalDouble lower,
      OptionalDouble upper,
      Optional<Result.Estimate> shown,
      OptionalDouble pValue,
      Optional<String> code,
      Optional<Boolean> pages) {}
}
