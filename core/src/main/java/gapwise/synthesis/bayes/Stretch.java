package gapwise.synthesis.bayes;

/**
 * A stretch of a line with the logarithm of a density at the points of {@link GaussLegendre} on it.
 * Immutable.
 */
final class Stretch {
  /** Cells of the table of mass; a cubic through mass and density of their ends errs by 1e-7. */
  private static final int CELLS = 96;

  /** What each point adds to the polynomial at the ends and middles of the cells. */
  private static final double[][] SHARES = new double[2 * CELLS + 1][];

  static {
    for (int i = 0; i < SHARES.length; i++) {
      SHARES[i] = GaussLegendre.shares((double) i / CELLS - 1);
    }
  }

  private final double from;
  private final double to;
  private final double[] logs;
  private final double top;

  /** Densities over e^top at the ends of the cells, and mass from the left end to each. */
  private double[] densities = {};

  private double[] masses = {};

  Stretch(LogDensity log, double from, double to) {
    this.from = from;
    this.to = to;
    double[] places = new double[GaussLegendre.POINTS];
    for (int i = 0; i < places.length; i++) {
      places[i] = place(i);
    }
    this.logs = log.at(places);
    double most = Double.NEGATIVE_INFINITY;
    for (double one : logs) {
      most = Math.max(most, one);
    }
    this.top = most;
  }

  /** A stretch of a line. */
  record Range(double from, double to) {}

  double from() {
    return from;
  }

  double to() {
    return to;
  }

  double width() {
    return to - from;
  }

  /** The i-th point. */
  double place(int i) {
    return from + width() / 2 * (1 + GaussLegendre.place(i));
  }

  /** The highest logarithm at a point. */
  double top() {
    return top;
  }

  double first() {
    return logs[0];
  }

  double last() {
    return logs[logs.length - 1];
  }

  /** How far the lowest point lies below the highest. */
  double deepest() {
    double least = Double.POSITIVE_INFINITY;
    for (double log : logs) {
      least = Math.min(least, log);
    }
    return top - least;
  }

  /** From the last point before those that lie within a depth to the first after them. */
  Range within(double depth) {
    int left = 0;
    while (logs[left] < top - depth) {
      left++;
    }
    int right = logs.length - 1;
    while (logs[right] < top - depth) {
      right--;
    }
    return new Range(
        left == 0 ? from : place(left - 1), right == logs.length - 1 ? to : place(right + 1));
  }

  /** Of how much of it the points lie above a logarithm. */
  double widthAbove(double log) {
    double width = 0;
    for (int i = 0; i < logs.length; i++) {
      width += logs[i] > log ? GaussLegendre.weight(i) * width() / 2 : 0;
    }
    return width;
  }

  /**
   * How far, about, the polynomial through the points is from the logarithm: its last coefficients.
   */
  double doubt() {
    return GaussLegendre.lastCoefficients(logs);
  }

  /** The logarithm by the polynomial. */
  double log(double x) {
    return GaussLegendre.interpolate(logs, 2 * (x - from) / width() - 1);
  }

  /** Mass that a point stands for, over e^scale. */
  double massOfPoint(int i, double scale) {
    return GaussLegendre.weight(i) * width() / 2 * Math.exp(logs[i] - scale);
  }

  /**
   * How much the points, which are far apart for a narrow density, make too much or too little of
   * its mass, as a share of it.
   */
  double massUnseen() {
    double points = 0;
    for (int i = 0; i < logs.length; i++) {
      points += massOfPoint(i, top);
    }
    return Math.abs(points / massOver(top) - 1);
  }

  /** Mass of all, over e^scale. */
  double massOver(double scale) {
    tabulate();
    return masses[CELLS] * Math.exp(top - scale);
  }

  /**
   * Mass from the left end, over e^scale, by the cubic through mass and density at the ends of a
   * cell.
   *
   * @param x on the stretch
   */
  double massTo(double x, double scale) {
    tabulate();
    double cell = width() / CELLS;
    int i = Math.min(CELLS - 1, (int) ((x - from) / cell));
    double s = (x - from) / cell - i;
    double rise = masses[i + 1] - masses[i];
    double a = densities[i] * cell;
    double b = densities[i + 1] * cell;
    double cubic = s * (a + s * (3 * rise - 2 * a - b + s * (a + b - 2 * rise)));
    return (masses[i] + cubic) * Math.exp(top - scale);
  }

  /** By Simpson's rule in each cell, whose error falls with the fifth power of its width. */
  private void tabulate() {
    if (masses.length > 0) {
      return;
    }
    double[] end = new double[CELLS + 1];
    double[] sum = new double[CELLS + 1];
    double cell = width() / CELLS;
    end[0] = Math.exp(tabulated(0) - top);
    for (int i = 0; i < CELLS; i++) {
      double middle = Math.exp(tabulated(2 * i + 1) - top);
      end[i + 1] = Math.exp(tabulated(2 * i + 2) - top);
      sum[i + 1] = sum[i] + cell / 6 * (end[i] + 4 * middle + end[i + 1]);
    }
    densities = end;
    masses = sum;
  }

  private double tabulated(int place) {
    double sum = 0;
    double[] shares = SHARES[place];
    for (int i = 0; i < logs.length; i++) {
      sum += shares[i] * logs[i];
    }
    return sum;
  }

  /** The first end of a cell, from left or right, next to one that lies above a logarithm. */
  double edge(double log, boolean fromLeft) {
    int way = fromLeft ? 1 : -1;
    int cell = fromLeft ? 0 : CELLS;
    while (cell + way >= 0 && cell + way <= CELLS && tabulated(2 * (cell + way)) <= log) {
      cell += way;
    }
    return from + width() * cell / CELLS;
  }
}
