package gapwise.paper.trace;

import gapwise.paper.DrawnPath.Point;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.List;

/**
 * Both axes of a figure. A figure may lie aslant, as in a scan: the axes need not be level, upright
 * or at a right angle. Immutable.
 */
public final class Axes {
  /** Axes that run nearly the same way cannot tell two coordinates apart: sine of 30 degrees. */
  private static final double LEAST_ANGLE = 0.5;

  private final Axis x;
  private final Axis y;
  private final double xx;
  private final double xy;
  private final double yx;
  private final double yy;

  private Axes(Axis x, Axis y) {
    this.x = x;
    this.y = y;
    xx = x.second().at().x() - x.first().at().x();
    xy = x.second().at().y() - x.first().at().y();
    yx = y.second().at().x() - y.first().at().x();
    yy = y.second().at().y() - y.first().at().y();
  }

  /**
   * Axes from their marks.
   *
   * @throws WrongInputException where the marks do not make axes, with every reason
   */
  public static Axes of(Axis x, Axis y) {
    List<Problem> problems = new ArrayList<>(x.problems("axes.x"));
    problems.addAll(y.problems("axes.y"));
    if (problems.isEmpty()) {
      Axes axes = new Axes(x, y);
      if (Math.abs(axes.turn()) < LEAST_ANGLE * x.length() * y.length()) {
        problems.add(
            new Problem(
                "axes",
                "axes-run-alike",
                "The two axes run nearly the same way. Set the marks of one along the bottom of the"
                    + " figure and those of the other along its side."));
      } else {
        return axes;
      }
    }
    throw new WrongInputException(problems);
  }

  /** The axis along which time or another cause runs, mostly the level one. */
  public Axis x() {
    return x;
  }

  /** The other axis. */
  public Axis y() {
    return y;
  }

  private double turn() {
    return xx * yy - xy * yx;
  }

  /** The values at a place; percentages become shares. */
  public DataPoint at(Point place) {
    double fromX = place.x() - x.first().at().x();
    double fromY = place.y() - x.first().at().y();
    double alongX = (fromX * yy - fromY * yx) / turn();
    fromX = place.x() - y.first().at().x();
    fromY = place.y() - y.first().at().y();
    double alongY = (fromY * xx - fromX * xy) / turn();
    return new DataPoint(x.value(alongX), y.value(alongY));
  }

  /** Where values lie, to mark them in the figure. */
  public Point placeOf(DataPoint values) {
    double alongX = x.fraction(values.x());
    double alongY = y.fraction(values.y());
    // From the first mark of x, which lies some way along y.
    double fromX = x.first().at().x() - y.first().at().x();
    double fromY = x.first().at().y() - y.first().at().y();
    double ahead = alongY - (fromY * xx - fromX * xy) / turn();
    return new Point(
        x.first().at().x() + alongX * xx + ahead * yx,
        x.first().at().y() + alongX * xy + ahead * yy);
  }

  /** Marked points as rows, in the order of marking. */
  public List<DataPoint> rows(List<Point> marked) {
    return marked.stream().map(this::at).toList();
  }
}
