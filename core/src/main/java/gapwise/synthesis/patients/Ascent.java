package gapwise.synthesis.patients;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/**
 * Newton's method towards a top, with every curvature turned downhill and steps cut until they
 * rise.
 */
final class Ascent {
  private static final int MOST_STEPS = 200;
  private static final int MOST_HALVINGS = 40;

  /** Twice the rise a further step promises, below which the search has settled. */
  private static final double SETTLED = 1e-12;

  /** The longest step of a coefficient, in logits per standard deviation. */
  private static final double LONGEST = 3;

  private final EventSurface surface;
  private final boolean flat;

  double[] place;
  EventSurface.Height height;
  boolean settled;

  private Ascent(EventSurface surface, boolean flat, double[] start) {
    this.surface = surface;
    this.flat = flat;
    this.place = start.clone();
    this.height = surface.at(place, flat);
  }

  /** Climbs from a place. */
  static Ascent from(EventSurface surface, boolean flat, double[] start) {
    return new Ascent(surface, flat, start).climbed();
  }

  private Ascent climbed() {
    for (int i = 0; i < MOST_STEPS; i++) {
      double[] step = step(height);
      double promised = 0;
      double longest = 0;
      for (int j = 0; j < step.length; j++) {
        promised += step[j] * height.gradient()[j];
        longest = Math.max(longest, Math.abs(step[j]));
      }
      if (promised < SETTLED) {
        settled = true;
        return this;
      }
      double rounding = 1e-13 * (1 + Math.abs(height.value()));
      double share = longest > LONGEST ? LONGEST / longest : 1;
      boolean risen = false;
      for (int cut = 0; cut < MOST_HALVINGS && !risen; cut++, share /= 2) {
        double[] next = place.clone();
        for (int j = 0; j < next.length; j++) {
          next[j] += share * step[j];
        }
        if (!flat) {
          next[next.length - 1] = Math.abs(next[next.length - 1]);
        }
        EventSurface.Height there = surface.at(next, flat);
        risen = there.value() >= height.value() - (promised < 1e-8 ? rounding : 0);
        if (risen) {
          place = next;
          height = there;
        }
      }
      if (!risen) {
        settled = promised < 1e-8;
        return this;
      }
    }
    return this;
  }

  private static double[] step(EventSurface.Height at) {
    int q = at.gradient().length;
    EigenDecomposition bends = new EigenDecomposition(new Array2DRowRealMatrix(at.bends()));
    double largest = 0;
    for (double bend : bends.getRealEigenvalues()) {
      largest = Math.max(largest, Math.abs(bend));
    }
    double[] step = new double[q];
    for (int k = 0; k < q; k++) {
      double[] direction = bends.getEigenvector(k).toArray();
      double along = 0;
      for (int j = 0; j < q; j++) {
        along += direction[j] * at.gradient()[j];
      }
      double bend = Math.max(Math.abs(bends.getRealEigenvalue(k)), 1e-12 * largest + 1e-300);
      for (int j = 0; j < q; j++) {
        step[j] += along / bend * direction[j];
      }
    }
    return step;
  }
}
