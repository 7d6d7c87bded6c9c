package gapwise.figure.bubble;

import gapwise.figure.drawing.MethodMark;
import gapwise.figure.value.Check;
import java.util.Objects;

/**
 * One patient of a series whose own length of missing bone and outcome are known; a small mark
 * apart from the series.
 *
 * @param series name of the series
 * @param kind the method
 * @param lengthCentimetres the patient's missing bone
 * @param value the outcome in the unit of the measure; of an event 1 where it came about, else 0
 */
public record BubblePatient(
    String series, MethodMark kind, double lengthCentimetres, double value) {
  public BubblePatient {
    Check.words(series, "series");
    Objects.requireNonNull(kind, "kind");
    Check.centimetres(lengthCentimetres, "lengthCentimetres");
    Check.finite(value, "value");
  }
}
