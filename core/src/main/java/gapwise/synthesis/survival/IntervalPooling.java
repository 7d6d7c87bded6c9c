package gapwise.synthesis.survival;

import gapwise.budget.Work;
import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.survival.PooledCurve.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Pools shares interval by interval and carries the variances to the product. Each share is a mean
 * of the studies' own with weights above 0, so it stays between 0 and 1.
 */
final class IntervalPooling {
  private final ConditionalSurvival data;
  private final double level;
  private final double[][] between;
  private final double[][] weights;
  private final double[] shares;
  private final double[] within;

  IntervalPooling(ConditionalSurvival data, double level) {
    this.data = data;
    this.level = level;
    between = BetweenStudyCovariance.of(data);
    weights = new double[data.intervals()][data.studies()];
    shares = new double[data.intervals()];
    within = new double[data.intervals()];
    for (int j = 0; j < data.intervals(); j++) {
      weigh(j);
    }
  }

  private void weigh(int j) {
    double together = data.together(j);
    double sum = 0;
    for (int i = 0; i < data.studies(); i++) {
      double variance =
          BetweenStudyCovariance.within(data, i, j, together) + Math.max(0, between[j][j]);
      boolean all = together == 0 || together == 1;
      if (data.speaks(i, j)) {
        weights[j][i] = all ? data.size(i, j) : 1 / variance;
        sum += weights[j][i];
      }
    }
    for (int i = 0; i < data.studies(); i++) {
      weights[j][i] /= sum;
      shares[j] += weights[j][i] * data.share(i, j);
      within[j] +=
          weights[j][i] * weights[j][i] * BetweenStudyCovariance.within(data, i, j, together);
    }
    shares[j] = Math.min(1, shares[j]);
  }

  /**
   * The curve with its limits. Variances of log survival are sums over all pairs of intervals so
   * far (delta method); what the sum has from between studies is cut at 0.
   */
  List<Point> points() {
    List<Point> points = new ArrayList<>();
    double survival = 1;
    double ofPatients = 0;
    double ofStudies = 0;
    double ofStudiesInMean = 0;
    int fewest = data.studies();
    for (int j = 0; j < data.intervals(); j++) {
      survival *= shares[j];
      fewest = Math.min(fewest, data.studies(j));
      if (survival > 0) {
        for (int l = 0; l <= j; l++) {
          double term = (l == j ? 1 : 2) * between[j][l] / (shares[j] * shares[l]);
          ofStudies += term;
          ofStudiesInMean += term * overlap(j, l);
        }
        ofPatients += within[j] / (shares[j] * shares[j]);
      }
      double ofMean = ofPatients + Math.max(0, ofStudiesInMean);
      points.add(point(j, survival, ofMean, Math.max(0, ofStudies), fewest));
    }
    return points;
  }

  private Point point(int j, double survival, double ofMean, double ofStudies, int fewest) {
    ReferenceDistribution mean = ReferenceDistribution.studentT(fewest - 1);
    boolean known = survival > 0;
    return new Point(
        data.end(j),
        data.studies(j),
        data.atRisk(j),
        survival,
        known ? OptionalDouble.of(Math.sqrt(ofMean)) : OptionalDouble.empty(),
        LogLogLimits.of(survival, Math.sqrt(ofMean), mean.multiplier(level)),
        fewest < 3
            ? Optional.empty()
            : LogLogLimits.of(
                survival,
                Math.sqrt(ofMean + ofStudies),
                ReferenceDistribution.studentT(fewest - 2).multiplier(level)));
  }

  /** What the variance between studies comes to in the mean of two intervals. */
  private double overlap(int j, int l) {
    Work.check();
    double sum = 0;
    for (int i = 0; i < data.studies(); i++) {
      sum += weights[j][i] * weights[l][i];
    }
    return sum;
  }
}
