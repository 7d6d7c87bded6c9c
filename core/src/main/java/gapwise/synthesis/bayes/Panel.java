package gapwise.synthesis.bayes;

/** A stretch of log tau with the density at the points of {@link GaussLegendre} on it. */
final class Panel {
  private final double from;
  private final double to;
  private final TauDensity.At[] at = new TauDensity.At[GaussLegendre.POINTS];
  private final double[] logs = new double[GaussLegendre.POINTS];

  Panel(TauDensity density, double from, double to) {
    this.from = from;
    this.to = to;
    for (int i = 0; i < at.length; i++) {
      at[i] = density.at(tau(i));
      logs[i] = at[i].logDensity() + logTau(i);
    }
  }

  double from() {
    return from;
  }

  double to() {
    return to;
  }

  double width() {
    return to - from;
  }

  double logTau(int point) {
    return from + width() / 2 * (1 + GaussLegendre.place(point));
  }

  double tau(int point) {
    return Math.exp(logTau(point));
  }

  /** What holds at a point. */
  TauDensity.At at(int point) {
    return at[point];
  }

  /** The mass a point stands for, over e^top. */
  double mass(int point, double top) {
    return GaussLegendre.weight(point) * width() / 2 * Math.exp(logs[point] - top);
  }

  /** The mass from the lower end to a log tau, over e^top. */
  double massTo(double logTau, double top) {
    double reach = logTau - from;
    double sum = 0;
    for (int i = 0; i < GaussLegendre.POINTS; i++) {
      double place = reach * (1 + GaussLegendre.place(i)) / width() - 1;
      sum += GaussLegendre.weight(i) * Math.exp(GaussLegendre.interpolate(logs, place) - top);
    }
    return sum * reach / 2;
  }

  /** The highest logarithm of density of log tau times tau^order at a point. */
  double top(int order) {
    return value(highest(order), order);
  }

  /**
   * What that logarithm cannot pass between the points: as much above the highest point as the
   * highest is above the lower of its neighbours, more than a parabola through them can rise.
   */
  double bound(int order) {
    int highest = highest(order);
    double top = value(highest, order);
    double left = highest == 0 ? top : value(highest - 1, order);
    double right = highest == logs.length - 1 ? top : value(highest + 1, order);
    return top + (top - Math.min(left, right));
  }

  /** How far the logarithm of the density ranges over the points. */
  double range() {
    double bottom = Double.POSITIVE_INFINITY;
    for (double log : logs) {
      bottom = Math.min(bottom, log);
    }
    return top(0) - bottom;
  }

  private int highest(int order) {
    int highest = 0;
    for (int i = 1; i < logs.length; i++) {
      highest = value(i, order) > value(highest, order) ? i : highest;
    }
    return highest;
  }

  private double value(int point, int order) {
    return logs[point] + order * logTau(point);
  }
}
