package gapwise.paper.trace;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A curve of shares still without the event, as it was traced: its height just after each time.
 *
 * @param corners times rising from 0 on, heights from 1 down, never rising
 * @param rises whether it was printed as a rising share with the event, and turned round
 * @param levelled how many points were slips of the hand, and were laid level with their neighbours
 */
public record Steps(List<DataPoint> corners, boolean rises, int levelled) {
  /** How far a point may be off and still be a slip of the hand; common practice, no source. */
  static final double SLIP = 0.03;

  /** Two ends of one drop may be so far apart, in parts of the whole time; common practice. */
  private static final double NEAR = 0.01;

  public Steps {
    corners = List.copyOf(corners);
    if (corners.isEmpty()) {
      throw new IllegalArgumentException("a curve needs a point");
    }
  }

  /** What came of putting points together: {@link Steps}, or a {@link Question} to the person. */
  public sealed interface Traced permits Found, Question {}

  /** A curve. */
  public record Found(Steps steps) implements Traced {}

  /**
   * Why the points make no curve.
   *
   * @param sentence what was found and what to do
   */
  public record Question(String sentence) implements Traced {}

  /**
   * Puts points along a curve together, whether set at every corner, only at the outer or inner
   * ones, or densely along it; the order of setting does not matter.
   *
   * @param points shares, not percentages; at least two
   */
  public static Traced of(List<DataPoint> points) {
    List<DataPoint> sorted = new ArrayList<>(points);
    sorted.sort(Comparator.comparingDouble(DataPoint::x));
    if (sorted.size() < 2) {
      return new Question("A curve needs at least two points. Set more along it.");
    }
    for (DataPoint point : sorted) {
      if (!(point.y() >= -SLIP && point.y() <= 1 + SLIP && Double.isFinite(point.x()))) {
        return new Question(
            "A point has the height "
                + percent(point.y())
                + ", but a curve of shares lies between 0 and 100 %. Set the marks of the axis"
                + " again, or the point.");
      }
      if (point.x() < -0.02 * sorted.get(sorted.size() - 1).x()) {
        return new Question(
            "A point lies before the time 0. Set the marks of the axis again, or the point.");
      }
    }
    double begin = sorted.get(0).y();
    double end = sorted.get(sorted.size() - 1).y();
    boolean rises = end > begin + SLIP;
    if (rises && begin > 0.5 || !rises && begin < 0.5) {
      return new Question(
          "The curve begins at "
              + percent(begin)
              + (rises ? " and rises" : " and does not rise")
              + ", so it is neither a share without the event, which begins at 100 %, nor one with"
              + " it, which begins at 0 %. Say what it shows.");
    }
    return isUpperCorners(sorted, rises)
        ? new Question(
            "Every point is lower than the one before, and the first is at the full height after"
                + " time 0: they seem to stand at the upper corners of the steps, which leaves the"
                + " last height untold. Set the lower corner of each step as well.")
        : levelled(sorted, rises);
  }

  private static boolean isUpperCorners(List<DataPoint> sorted, boolean rises) {
    double begin = rises ? 1 - sorted.get(0).y() : sorted.get(0).y();
    double end = sorted.get(sorted.size() - 1).x();
    if (sorted.size() < 3 || begin < 0.995 || sorted.get(0).x() < 0.02 * end) {
      return false;
    }
    for (int i = 1; i < sorted.size(); i++) {
      if (Math.abs(sorted.get(i).y() - sorted.get(i - 1).y()) < 0.003) {
        return false;
      }
    }
    return true;
  }

  private static Traced levelled(List<DataPoint> sorted, boolean rises) {
    List<DataPoint> corners = new ArrayList<>();
    corners.add(new DataPoint(0, 1));
    int levelled = 0;
    double last = 1;
    int i = 0;
    while (i < sorted.size()) {
      double time = Math.max(0, sorted.get(i).x());
      double lowest = 1;
      double highest = 0;
      // Points at one time are the two ends of a drop.
      while (i < sorted.size() && Math.max(0, sorted.get(i).x()) == time) {
        double share = rises ? 1 - sorted.get(i).y() : sorted.get(i).y();
        lowest = Math.min(lowest, share);
        highest = Math.max(highest, share);
        i++;
      }
      double before = corners.get(corners.size() - 1).x();
      boolean near = time - before < NEAR * sorted.get(sorted.size() - 1).x();
      if (highest > last + SLIP && !near) {
        return new Question(
            "At the time "
                + Math.round(time * 100) / 100.0
                + " the curve goes back from "
                + percent(rises ? 1 - last : last)
                + " to "
                + percent(rises ? 1 - highest : highest)
                + ". A curve of this kind only goes one way. Set the points there again.");
      }
      double level = Math.max(0, Math.min(last, lowest));
      levelled += level == lowest ? 0 : 1;
      if (time > 0 || level < 1) {
        corners.add(new DataPoint(time, level));
      }
      last = level;
    }
    return new Found(new Steps(corners, rises, levelled));
  }

  private static String percent(double share) {
    return Math.round(share * 1000) / 10.0 + " %";
  }

  /** The share just after a time; before the first corner 1. */
  public double at(double time) {
    double height = 1;
    for (DataPoint corner : corners) {
      if (corner.x() > time) {
        break;
      }
      height = corner.y();
    }
    return height;
  }

  /** The last time traced. */
  public double end() {
    return corners.get(corners.size() - 1).x();
  }

  /** The first time at which the share is one half or less; empty if it never is. */
  public OptionalDouble median() {
    return corners.stream()
        .filter(corner -> corner.y() <= 0.5 + 1e-9)
        .mapToDouble(DataPoint::x)
        .findFirst();
  }
}
