package gapwise.synthesis.survival;

import gapwise.synthesis.survival.DigitisedCurve.Point;
import java.util.List;

/**
 * The part of a curve between two numbers at risk, where patients last seen without the event are
 * spread evenly.
 *
 * @param from where it starts
 * @param to where it ends; points there belong to the next stretch, if there is one
 * @param points of the curve inside
 */
record Stretch(double from, double to, List<Point> points) {

  /**
   * How a walk along a stretch ended.
   *
   * @param left patients still followed at its end
   * @param survival of the reconstructed curve there
   * @param events on the way
   * @param difference largest distance between the reconstructed curve and a point
   */
  record Walk(int left, double survival, int events, double difference) {}

  /** Takes patients as they leave; one method for both kinds. */
  interface Leaving {
    void leave(double time, boolean event, int patients);
  }

  /**
   * Walks along: at each point the drop of the curve is made by the nearest whole number of events,
   * d = n (1 - S/S before), S before being that of the reconstructed curve, so that rounding does not
   * add up (Guyot et al. 2012, equations 6 and 7).
   *
   * @param atRisk patients at the start
   * @param survival of the reconstructed curve at the start
   * @param censored patients last seen on the way, fewer if none is left
   * @param sink is told who leaves, in order of time
   */
  Walk walk(int atRisk, double survival, int censored, Leaving sink) {
    int left = atRisk;
    int placed = 0;
    int events = 0;
    double height = survival;
    double difference = 0;
    double since = from;
    for (Point point : points) {
      int due = Math.min(censoredBefore(point.time(), censored) - placed, left);
      tellCensored(placed, due, censored, since, Math.nextDown(point.time()), sink);
      placed += due;
      left -= due;
      if (left > 0 && height > 0) {
        int d = (int) Math.min(left, Math.round(left * (1 - point.survival() / height)));
        if (d > 0) {
          sink.leave(point.time(), true, d);
          height *= (double) (left - d) / left;
          left -= d;
          events += d;
        }
      }
      difference = Math.max(difference, Math.abs(height - point.survival()));
      since = point.time();
    }
    int due = Math.min(censored - placed, left);
    tellCensored(placed, due, censored, since, Math.max(since, Math.nextDown(to)), sink);
    return new Walk(left - due, height, events, difference);
  }

  Walk walk(int atRisk, double survival, int censored) {
    return walk(atRisk, survival, censored, (time, event, patients) -> {});
  }

  /** The last point inside; the start if there is none. */
  double lastPoint() {
    return points.isEmpty() ? from : points.get(points.size() - 1).time();
  }

  private int censoredBefore(double time, int censored) {
    double places = (time - from) / (to - from) * (censored + 1.0);
    return places > 0 ? (int) Math.min(censored, Math.ceil(places) - 1) : 0;
  }

  private void tellCensored(
      int placed, int due, int censored, double earliest, double latest, Leaving sink) {
    for (int j = placed + 1; j <= placed + due; j++) {
      double even = from + j * ((to - from) / (censored + 1.0));
      sink.leave(Math.max(earliest, Math.min(even, latest)), false, 1);
    }
  }
}
