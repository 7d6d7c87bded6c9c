package gapwise.figure.array;

import gapwise.figure.value.Check;
import gapwise.figure.value.Estimate;
import java.util.Objects;
import java.util.Optional;

/**
 * What a treatment takes, on an axis of months that all treatments of a page share.
 *
 * @param operations planned operations, at least 1; when the later ones come is not known, so they
 *     stand before the axis
 * @param frame months in a frame; empty where there is no number
 * @param walking months until the leg bears full weight; empty where there is no number
 * @param axisMonths where the axis ends, above 0 and not before any of the numbers
 */
public record StageStrip(
    int operations, Optional<Estimate> frame, Optional<Estimate> walking, double axisMonths) {
  /** The axis is not shorter, so that few months look few. */
  private static final double SHORTEST_AXIS = 12;

  private static final double STEP = 6;

  public StageStrip {
    Objects.requireNonNull(frame, "frame");
    Objects.requireNonNull(walking, "walking");
    Check.finite(axisMonths, "axisMonths");
    if (operations < 1) {
      throw new IllegalArgumentException("a treatment has an operation, had " + operations);
    }
    if (!(axisMonths >= end(frame, walking))) {
      throw new IllegalArgumentException("an axis of " + axisMonths + " months is too short");
    }
  }

  private static double end(Optional<Estimate> frame, Optional<Estimate> walking) {
    return Math.max(
        frame.map(StageStrip::end).orElse(1.0), walking.map(StageStrip::end).orElse(1.0));
  }

  private static double end(Estimate months) {
    return Math.max(months.value(), months.upper());
  }

  /** The axis that holds a number of months: the next half year, at least a year. */
  public static double axisFor(double months) {
    return Math.max(SHORTEST_AXIS, Math.ceil(months / STEP) * STEP);
  }
}
