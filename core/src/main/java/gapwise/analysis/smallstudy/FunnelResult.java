package gapwise.analysis.smallstudy;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a funnel plot shows, on the analysis scale. Part of a {@link Result}.
 *
 * @param points pooled studies with an effect of their own, in order
 * @param centre pooled effect; empty where nothing is pooled
 * @param limits between which studies lie if only chance tells them apart
 * @param noEffect where there is no effect; empty for measures without such a value
 * @param contours of the p value of a study alone, about no effect
 * @param imagined studies that trim and fill adds, for each of its settings in the plan
 * @param notes what must be known of the tests; in the JSON the warnings say it
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record FunnelResult(
    List<Point> points,
    OptionalDouble centre,
    Optional<Limits> limits,
    OptionalDouble noEffect,
    List<Contour> contours,
    List<Imagined> imagined,
    @JsonIgnore SmallStudyNotes notes) {
  public FunnelResult {
    points = List.copyOf(points);
    contours = List.copyOf(contours);
    imagined = List.copyOf(imagined);
  }

  /**
   * A study.
   *
   * @param study its label
   * @param studyId in the evidence base, if it comes from there
   * @param armId of the arm
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Point(
      String study,
      Optional<String> studyId,
      Optional<String> armId,
      double effect,
      double standardError) {}

  /**
   * Lines at centre +- multiplier times standard error.
   *
   * @param lower end of the left line, at the largest standard error of a study
   * @param upper end of the right line
   */
  public record Limits(
      double level, double multiplier, double largestStandardError, double lower, double upper) {}

  /** Lines at no effect +- multiplier times standard error, where p is one less the level. */
  public record Contour(double level, double multiplier) {}

  /** What one setting of trim and fill adds; none is left out. */
  public record Imagined(String model, String estimator, String side, List<Mirrored> points) {
    public Imagined {
      points = List.copyOf(points);
    }
  }

  /** An imagined study. */
  public record Mirrored(String mirrors, double effect, double standardError) {}
}
