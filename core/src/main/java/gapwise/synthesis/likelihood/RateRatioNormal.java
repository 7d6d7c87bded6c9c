package gapwise.synthesis.likelihood;

import gapwise.effect.TwoRates;
import java.util.Arrays;
import java.util.List;

/**
 * Rate ratios that differ between studies by a normal distribution of their logs: given the events
 * of both groups, those of the first are binomial with logit theta + log(T1/T2) (Stijnen, Hamza and
 * Ozdemir, Stat Med 2010;29:3046). Studies without an event say nothing and are passed over.
 */
public final class RateRatioNormal {
  private RateRatioNormal() {}

  /**
   * Fits by maximum likelihood.
   *
   * @param events of the first group, each at least 0
   * @param times of the first group, each above 0
   * @param otherEvents of the second group
   * @param otherTimes of the second group
   * @param points of the adaptive quadrature, 1 (Laplace) to 200
   */
  public static LikelihoodFit fit(
      double[] events, double[] times, double[] otherEvents, double[] otherTimes, int points) {
    return LikelihoodSearch.fit(given(events, times, otherEvents, otherTimes), points);
  }

  /** The same studies as data. */
  static BinomialLikelihoods given(List<TwoRates> studies) {
    return given(
        studies.stream().mapToDouble(s -> s.intervention().events()).toArray(),
        studies.stream().mapToDouble(s -> s.intervention().personTime()).toArray(),
        studies.stream().mapToDouble(s -> s.comparator().events()).toArray(),
        studies.stream().mapToDouble(s -> s.comparator().personTime()).toArray());
  }

  private static BinomialLikelihoods given(
      double[] events, double[] times, double[] otherEvents, double[] otherTimes) {
    int k = 0;
    double[] x = new double[events.length];
    double[] n = new double[events.length];
    double[] offset = new double[events.length];
    for (int i = 0; i < events.length; i++) {
      if (events[i] + otherEvents[i] > 0) {
        x[k] = events[i];
        n[k] = events[i] + otherEvents[i];
        offset[k] = Math.log(times[i]) - Math.log(otherTimes[i]);
        k++;
      }
    }
    return new BinomialLikelihoods(
        Arrays.copyOf(x, k), Arrays.copyOf(n, k), Arrays.copyOf(offset, k));
  }
}
