package gapwise.synthesis.survival;

import gapwise.budget.Work;

/**
 * How conditional survival differs between studies beyond chance, and how far a study that does
 * well in one interval does well in others: moment estimates for each pair of intervals from
 * weighted products of deviations (Jackson, White and Thompson, Stat Med 2010;29:1282). Within a
 * study, shares of different intervals are uncorrelated.
 *
 * <p>The matrix is left as it comes, unbiased and perhaps not positive: with a handful of studies,
 * cutting negative eigenvalues would leave the noise of the positive ones. Who sums it cuts the
 * sum.
 */
final class BetweenStudyCovariance {
  private final ConditionalSurvival data;
  private final double[] together;
  private final double[][] weights;
  private final double[] weightSums;
  private final double[] means;

  private BetweenStudyCovariance(ConditionalSurvival data) {
    this.data = data;
    int intervals = data.intervals();
    together = new double[intervals];
    weights = new double[intervals][data.studies()];
    weightSums = new double[intervals];
    means = new double[intervals];
    for (int j = 0; j < intervals; j++) {
      together[j] = data.together(j);
      for (int i = 0; i < data.studies(); i++) {
        double variance = within(data, i, j, together[j]);
        weights[j][i] = variance > 0 ? 1 / variance : 0;
        weightSums[j] += weights[j][i];
        means[j] += weights[j][i] * data.share(i, j);
      }
      means[j] = weightSums[j] > 0 ? means[j] / weightSums[j] : together[j];
    }
  }

  /**
   * Variance of a study's share, from the share of all patients together so that it does not hang
   * on the study's own luck; 0 if the study does not speak of the interval or all shares are 0 or
   * 1.
   */
  static double within(ConditionalSurvival data, int study, int interval, double together) {
    return data.speaks(study, interval)
        ? together * (1 - together) / data.size(study, interval)
        : 0;
  }

  /** The estimates, intervals by intervals. */
  static double[][] of(ConditionalSurvival data) {
    BetweenStudyCovariance estimate = new BetweenStudyCovariance(data);
    int n = data.intervals();
    double[][] moments = new double[n][n];
    for (int j = 0; j < n; j++) {
      for (int l = 0; l <= j; l++) {
        Work.check();
        moments[j][l] = estimate.moment(j, l);
        moments[l][j] = moments[j][l];
      }
    }
    return moments;
  }

  private double moment(int j, int l) {
    if (weightSums[j] == 0 || weightSums[l] == 0) {
      return 0;
    }
    double shared = 0;
    for (int i = 0; i < data.studies(); i++) {
      shared += weights[j][i] / weightSums[j] * (weights[l][i] / weightSums[l]);
    }
    double q = 0;
    double factor = 0;
    int both = 0;
    for (int i = 0; i < data.studies(); i++) {
      double weight = Math.sqrt(weights[j][i]) * Math.sqrt(weights[l][i]);
      if (weight > 0) {
        both++;
        q += weight * (data.share(i, j) - means[j]) * (data.share(i, l) - means[l]);
        factor +=
            weight * (1 - weights[j][i] / weightSums[j] - weights[l][i] / weightSums[l] + shared);
      }
    }
    double chance = j == l ? both - 1 : 0;
    return both > 1 && factor > 0 ? (q - chance) / factor : 0;
  }
}
