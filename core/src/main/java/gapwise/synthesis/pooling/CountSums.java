package gapwise.synthesis.pooling;

import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import java.util.OptionalDouble;

/**
 * What studies add to a ratio of sums, together: sums that only ever grow, and the mean and squares
 * of their own effects for Q. Two of them can be put together, so that all studies but one are
 * those before it and those after it, with nothing taken away.
 *
 * @param studies how many
 * @param numerator R, at least 0 (of any sign for differences)
 * @param denominator S, at least 0; also the weight of a study
 * @param terms further sums of the measure
 * @param finite studies whose own effect is finite and has a variance above 0
 * @param precision sum of 1/v of these
 * @param mean of their effects by precision
 * @param squares of their effects about that mean, by precision
 */
record CountSums(
    int studies,
    double numerator,
    double denominator,
    double[] terms,
    int finite,
    double precision,
    double mean,
    double squares) {

  /** Of no study, with so many further sums. */
  static CountSums none(int terms) {
    return new CountSums(0, 0, 0, new double[terms], 0, 0, 0, 0);
  }

  /**
   * Of one study.
   *
   * @param effect its own effect; empty where it is infinite
   * @param variance of that effect
   */
  static CountSums of(
      double numerator,
      double denominator,
      OptionalDouble effect,
      OptionalDouble variance,
      double... terms) {
    boolean own = effect.isPresent() && variance.orElse(0) > 0;
    return new CountSums(
        1,
        numerator,
        denominator,
        terms,
        own ? 1 : 0,
        own ? 1 / variance.getAsDouble() : 0,
        own ? effect.getAsDouble() : 0,
        0);
  }

  /** Both together; means and squares as Chan, Golub and LeVeque, Am Stat 1983;37:242. */
  CountSums plus(CountSums other) {
    double[] sums = terms.clone();
    for (int i = 0; i < sums.length; i++) {
      sums[i] += other.terms[i];
    }
    double both = precision + other.precision;
    double apart = other.mean - mean;
    double share = both > 0 ? other.precision / both : 0;
    return new CountSums(
        studies + other.studies,
        numerator + other.numerator,
        denominator + other.denominator,
        sums,
        finite + other.finite,
        both,
        finite == 0 ? other.mean : mean + share * apart,
        squares + other.squares + (finite == 0 ? 0 : precision * share * apart * apart));
  }

  /**
   * Q: squares of own effects about a pooled value, over the variance; the degrees of freedom are
   * one less than the studies that have such an effect.
   */
  Heterogeneity heterogeneity(double estimate) {
    if (finite == 0) {
      return Heterogeneity.UNKNOWN;
    }
    double q = squares + precision * (mean - estimate) * (mean - estimate);
    return Heterogeneity.fromQ(finite == 1 ? 0 : q, finite - 1);
  }

  /** Why a ratio of sums has no finite logarithm. */
  Problem noRatio(boolean noEvents) {
    return numerator == 0 && denominator == 0
        ? new Problem(
            "",
            noEvents ? "no-events" : "all-events",
            "the pooled ratio is 0/0, because "
                + (noEvents ? "no patient anywhere" : "every patient")
                + " had the event; nothing is pooled")
        : new Problem(
            "",
            "estimate-at-limit",
            "one of the groups has no events, or only events, in every study, so the pooled"
                + " ratio is 0 or infinite and has no interval");
  }

  /** Whether the ratio of sums has a finite logarithm. */
  boolean hasRatio() {
    return numerator > 0 && denominator > 0;
  }
}
