package gapwise.synthesis.patients;

import gapwise.budget.Work;
import gapwise.numeric.GaussHermite;

/**
 * The log likelihood of events by coefficients and spread between studies, with its derivatives.
 * Each study is integrated over its own standard normal z, logit = line + tau z, by quadrature
 * placed at its mode (Liu and Pierce, Biometrika 1994;81:624). Derivatives are the means of those
 * with z known, over z given the data (Louis, J R Stat Soc B 1982;44:226).
 */
final class EventSurface {
  private static final int MOST_STEPS = 100;

  private final EventRows rows;
  private final Slopes slopes;
  private final GaussHermite rule;
  private final double[] modes;
  private final EventTerms terms = new EventTerms();

  EventSurface(EventRows rows, Slopes slopes, int points) {
    this.rows = rows;
    this.slopes = slopes;
    this.rule = GaussHermite.of(points);
    this.modes = new double[rows.studies()];
  }

  /** Value, gradient and second derivatives. */
  record Height(double value, double[] gradient, double[][] bends) {}

  /**
   * The height at a place.
   *
   * @param place coefficients, and last tau unless {@code flat}
   * @param flat whether there is no spread between studies
   */
  Height at(double[] place, boolean flat) {
    Work.check();
    int q = place.length;
    double tau = flat ? 0 : place[q - 1];
    double value = rows.constant;
    double[] gradient = new double[q];
    double[][] bends = new double[q][q];
    for (int s = 0; s < rows.studies(); s++) {
      value +=
          flat ? known(s, place, 0, 0, gradient, bends) : mixed(s, place, tau, gradient, bends);
    }
    return new Height(value, gradient, bends);
  }

  private double mixed(int study, double[] place, double tau, double[] gradient, double[][] bends) {
    int q = place.length;
    double information = mode(study, place, tau);
    double scale = 1 / Math.sqrt(information);
    int n = rule.points();
    double[] heights = new double[n];
    double[][] slopesAt = new double[n][q];
    double[][][] bendsAt = new double[n][q][q];
    double highest = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < n; k++) {
      Work.check();
      double z = modes[study] + scale * rule.node(k);
      heights[k] =
          rule.logScaledWeight(k)
              - z * z / 2
              + known(study, place, tau, z, slopesAt[k], bendsAt[k]);
      highest = Math.max(highest, heights[k]);
    }
    double sum = 0;
    for (int k = 0; k < n; k++) {
      heights[k] = Math.exp(heights[k] - highest);
      sum += heights[k];
    }
    double[] mean = new double[q];
    for (int k = 0; k < n; k++) {
      double share = heights[k] / sum;
      for (int i = 0; i < q && share > 0; i++) {
        mean[i] += share * slopesAt[k][i];
        for (int j = 0; j < q; j++) {
          bends[i][j] += share * (bendsAt[k][i][j] + slopesAt[k][i] * slopesAt[k][j]);
        }
      }
    }
    for (int i = 0; i < q; i++) {
      gradient[i] += mean[i];
      for (int j = 0; j < q; j++) {
        bends[i][j] -= mean[i] * mean[j];
      }
    }
    return highest + Math.log(sum) + Math.log(scale);
  }

  /** Moves the study's mode to where z is likeliest; the information on z there. */
  private double mode(int study, double[] place, double tau) {
    double[] here = alongZ(study, place, tau, 0);
    double low = Math.min(0, here[0]);
    double high = Math.max(0, here[0]);
    double z = Math.min(high, Math.max(low, modes[study]));
    for (int step = 0; step < MOST_STEPS; step++) {
      Work.check();
      here = alongZ(study, place, tau, z);
      double slope = here[0] - z;
      if (slope > 0) {
        low = z;
      } else {
        high = z;
      }
      double next = z + slope / (1 + here[1]);
      if (!(next > low && next < high)) {
        next = low + (high - low) / 2;
      }
      boolean settled = Math.abs(next - z) < 1e-9 * (1 + Math.abs(z));
      z = next;
      if (settled) {
        break;
      }
    }
    modes[study] = z;
    return 1 + alongZ(study, place, tau, z)[1];
  }

  /** Slope and downward bend of the study's log likelihood by z. */
  private double[] alongZ(int study, double[] place, double tau, double z) {
    double slope = 0;
    double bend = 0;
    for (int i = rows.starts[study]; i < rows.starts[study + 1]; i++) {
      terms(i, place, tau * z);
      slope += terms.byEta;
      bend -= terms.etaEta;
    }
    return new double[] {tau * slope, Math.max(0, tau * tau * bend)};
  }

  private void terms(int row, double[] place, double shift) {
    double eta = place[0] + shift;
    if (slopes.within()) {
      eta += place[slopes.placeOfWithin()] * rows.within[row];
    }
    if (slopes.across()) {
      eta += place[slopes.placeOfAcross()] * rows.across[row];
    }
    if (rows.spreads[row] > 0) {
      terms.at(
          rows.events[row],
          rows.totals[row],
          eta,
          place[slopes.placeOfWithin()],
          rows.spreads[row]);
    } else {
      terms.at(rows.events[row], rows.totals[row], eta);
    }
  }

  /** The study's log likelihood with z known; adds its derivatives. */
  private double known(
      int study, double[] place, double tau, double z, double[] gradient, double[][] bends) {
    int q = place.length;
    double value = 0;
    double[] line = new double[q];
    line[0] = 1;
    if (q > slopes.size()) {
      line[q - 1] = z;
    }
    for (int i = rows.starts[study]; i < rows.starts[study + 1]; i++) {
      terms(i, place, tau * z);
      value += terms.value;
      if (slopes.within()) {
        line[slopes.placeOfWithin()] = rows.within[i];
      }
      if (slopes.across()) {
        line[slopes.placeOfAcross()] = rows.across[i];
      }
      for (int x = 0; x < q; x++) {
        gradient[x] += terms.byEta * line[x];
        for (int y = 0; y < q; y++) {
          bends[x][y] += terms.etaEta * line[x] * line[y];
        }
      }
      if (rows.spreads[i] > 0) {
        int w = slopes.placeOfWithin();
        gradient[w] += terms.bySlope;
        bends[w][w] += terms.slopeSlope;
        for (int x = 0; x < q; x++) {
          bends[x][w] += terms.etaSlope * line[x];
          bends[w][x] += terms.etaSlope * line[x];
        }
      }
    }
    return value;
  }
}
