package gapwise.desk;

import gapwise.paper.curve.Reported;
import java.util.Objects;
import java.util.Optional;

/**
 * What a curve of a figure is of, as a person says.
 *
 * @param arm the draft's group
 * @param outcome code of the time that it shows
 * @param timeUnit symbol of the unit of its times
 * @param withEvent whether it shows the share with the event
 * @param reported what the paper prints about it
 * @param place as the paper calls the figure, such as "Figure 2"
 */
public record CurveOf(
    String arm,
    String outcome,
    String timeUnit,
    boolean withEvent,
    Reported reported,
    Optional<String> place) {
  public CurveOf {
    Objects.requireNonNull(arm, "arm");
    Objects.requireNonNull(outcome, "outcome");
    Objects.requireNonNull(timeUnit, "timeUnit");
    Objects.requireNonNull(reported, "reported");
    Objects.requireNonNull(place, "place");
  }
}
