package gapwise.synthesis.bayes;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** The way from a centre to the average over studies at one tau, held by a density's points. */
final class CarriedCentre {
  private static final double DIGITS = 1e-10;

  private static final int MOST_STEPS = 1000;

  private final List<Stretch> stretches;
  private final List<double[]> averages = new ArrayList<>();
  private final double from;
  private final double to;
  private final double[] ends;

  CarriedCentre(SmoothDensity centre, double tau, CountsPosterior.AverageOver average) {
    stretches = centre.stretches();
    ends = new double[stretches.size()];
    for (int s = 0; s < stretches.size(); s++) {
      double[] at = new double[GaussLegendre.POINTS];
      for (int i = 0; i < at.length; i++) {
        at[i] = average.of(stretches.get(s).place(i), tau);
      }
      averages.add(at);
      ends[s] = average.of(stretches.get(s).to(), tau);
    }
    from = average.of(centre.from(), tau);
    to = ends[ends.length - 1];
  }

  double from() {
    return from;
  }

  double to() {
    return to;
  }

  /** The centre that has an average. */
  double back(double average) {
    if (average <= from) {
      return stretches.get(0).from();
    }
    for (int s = 0; s < ends.length; s++) {
      if (average < ends[s]) {
        return onStretch(s, average);
      }
    }
    return stretches.get(ends.length - 1).to();
  }

  private double onStretch(int s, double average) {
    double left = s == 0 ? from : ends[s - 1];
    double place =
        new BrentSolver(DIGITS, DIGITS)
            .solve(MOST_STEPS, x -> edged(averages.get(s), x, left, ends[s]) - average, -1, 1);
    return stretches.get(s).from() + stretches.get(s).width() / 2 * (1 + place);
  }

  /** The polynomial, and at the ends what holds there exactly, so that a root is bracketed. */
  private static double edged(double[] at, double x, double left, double right) {
    return x == -1 ? left : x == 1 ? right : GaussLegendre.interpolate(at, x);
  }
}
