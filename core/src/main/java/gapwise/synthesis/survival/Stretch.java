package gapwise.synthesis.survival;

import gapwise.budget.Work;
import gapwise.synthesis.survival.DigitisedCurve.Point;
import java.util.List;

/**
 * The part of a curve between two numbers at risk, where patients last seen without the event are
 * spread evenly, or as nearly so as the curve allows.
 *
 * @param from where it starts
 * @param to where it ends; points there belong to the next stretch, if there is one
 * @param points of the curve inside
 */
record Stretch(double from, double to, List<Point> points) {
  /** Nearer than this to a point read, a curve is taken to meet it: about what a pointer can do. */
  private static final double MEETS = 0.002;

  /** Patients lost are told earlier or later by so many at most. */
  private static final int MOST_MOVED = 10;

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
   * d = n (1 - S/S before), S before being that of the reconstructed curve, so that rounding does
   * not add up (Guyot et al. 2012, equations 6 and 7).
   *
   * @param atRisk patients at the start
   * @param survival of the reconstructed curve at the start
   * @param censored patients last seen on the way, fewer if none is left
   * @param sink is told who leaves, in order of time
   */
  Walk walk(int atRisk, double survival, int censored, Leaving sink) {
    int left = atRisk;
    int toPlace = censored;
    int events = 0;
    double height = survival;
    double difference = 0;
    double since = from;
    for (Point point : points) {
      Work.check();
      int even = censoredBefore(point.time(), censored) - (censored - toPlace);
      int lost = lostBefore(point.survival(), height, left, Math.min(toPlace, left), even);
      spread(lost, since, point.time(), sink);
      toPlace -= lost;
      left -= lost;
      int d = events(left, height, point.survival());
      if (d > 0) {
        sink.leave(point.time(), true, d);
        height = after(left, d, height);
        left -= d;
        events += d;
      }
      difference = Math.max(difference, Math.abs(height - point.survival()));
      since = point.time();
    }
    int lost = Math.min(toPlace, left);
    spread(lost, since, to, sink);
    return new Walk(left - lost, height, events, difference);
  }

  Walk walk(int atRisk, double survival, int censored) {
    return walk(atRisk, survival, censored, (time, event, patients) -> {});
  }

  /** The last point inside; the start if there is none. */
  double lastPoint() {
    return points.isEmpty() ? from : points.get(points.size() - 1).time();
  }

  /**
   * How many are lost before a point: as many as an even spread has it, or the nearest number with
   * which whole events bring the curve to the point; a drop of one in n tells n where n is small.
   */
  private static int lostBefore(double target, double height, int left, int most, int even) {
    int start = Math.max(0, Math.min(even, most));
    if (target >= height) {
      return start;
    }
    int best = start;
    double nearest = miss(target, height, left - start);
    for (int moved = 1; moved <= MOST_MOVED && nearest > MEETS; moved++) {
      for (int lost : new int[] {start - moved, start + moved}) {
        if (lost >= 0 && lost <= most && miss(target, height, left - lost) < nearest) {
          best = lost;
          nearest = miss(target, height, left - lost);
        }
      }
    }
    return best;
  }

  private static double miss(double target, double height, int atRisk) {
    return Math.abs(after(atRisk, events(atRisk, height, target), height) - target);
  }

  private static int events(int atRisk, double height, double target) {
    return height > 0
        ? (int) Math.max(0, Math.min(atRisk, Math.round(atRisk * (1 - target / height))))
        : 0;
  }

  private static double after(int atRisk, int events, double height) {
    return events == 0 ? height : height * (atRisk - events) / atRisk;
  }

  private int censoredBefore(double time, int censored) {
    double places = (time - from) / (to - from) * (censored + 1.0);
    return places > 0 ? (int) Math.min(censored, Math.ceil(places) - 1) : 0;
  }

  /** Evenly between two events, so that order and numbers at risk hold. */
  private static void spread(int lost, double since, double until, Leaving sink) {
    double latest = Math.max(since, Math.nextDown(until));
    for (int j = 1; j <= lost; j++) {
      double even = since + j * ((until - since) / (lost + 1.0));
      sink.leave(Math.min(even, latest), false, 1);
    }
  }
}
