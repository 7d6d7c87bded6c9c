package gapwise.paper.trace;

import gapwise.paper.DrawnPath.Point;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * An axis known by two marks.
 *
 * @param scale how values lie along it
 * @param first a place with its value
 * @param second another place with another value
 */
public record Axis(Scale scale, Mark first, Mark second) {
  /** Marks nearer than this make every reading doubtful, points or pixels. */
  private static final double NEAREST = 5;

  /**
   * A place of known value.
   *
   * @param at on the page or picture
   * @param value as printed beside the axis: 50 for 50 %
   */
  public record Mark(Point at, double value) {
    public Mark {
      Objects.requireNonNull(at, "at");
    }
  }

  public Axis {
    Objects.requireNonNull(scale, "scale");
    Objects.requireNonNull(first, "first");
    Objects.requireNonNull(second, "second");
  }

  /**
   * What is wrong with the marks.
   *
   * @param where of the axis, such as "axes.x"
   * @return empty if they can be used
   */
  List<Problem> problems(String where) {
    List<Problem> found = new ArrayList<>();
    double sum = first.at().x() + first.at().y() + second.at().x() + second.at().y();
    if (!Double.isFinite(sum + first.value() + second.value())) {
      found.add(
          new Problem(where, "not-a-number", "A mark has no place or no value. Set it again."));
      return found;
    }
    if (length() < NEAREST) {
      found.add(
          new Problem(
              where,
              "marks-too-near",
              "The two marks of the axis are nearly at one place. Set them far apart, best at the"
                  + " first and last number beside the axis."));
    }
    if (first.value() == second.value()) {
      found.add(
          new Problem(
              where,
              "marks-equal",
              "Both marks of the axis have the value "
                  + first.value()
                  + ". Give each the number that is printed beside it."));
    }
    if (scale == Scale.LOG && (first.value() <= 0 || second.value() <= 0)) {
      found.add(
          new Problem(
              where,
              "log-not-positive",
              "A logarithmic axis has only values above 0, but a mark has "
                  + Math.min(first.value(), second.value())
                  + ". Correct the value, or choose equal steps."));
    }
    return found;
  }

  double length() {
    return Math.hypot(second.at().x() - first.at().x(), second.at().y() - first.at().y());
  }

  double value(double fraction) {
    return scale.value(fraction, first.value(), second.value());
  }

  double fraction(double value) {
    return scale.fraction(value, first.value(), second.value());
  }
}
