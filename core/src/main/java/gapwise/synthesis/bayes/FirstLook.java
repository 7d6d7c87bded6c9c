package gapwise.synthesis.bayes;

import gapwise.synthesis.likelihood.MarginalLikelihood;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Where things lie if each study's own value were normal about the true one. */
final class FirstLook {
  /** The prior of tau reaches no farther than this many of its scales, e^-19 of its height. */
  static final double REACH = 6.2;

  /** Points of the first look at where tau lies. */
  private static final int LOOKS = 200;

  private static final double SEEN = 22;

  /** Studies farther apart, by a factor of 10^40, are not of one outcome in one unit. */
  private static final double FARTHEST = 92;

  /** Own value, its variance, and how many have it, of the studies that differ. */
  private final double[] values;

  private final double[] variances;
  private final int[] times;

  FirstLook(MarginalLikelihood likelihood) {
    int[] first =
        IntStream.range(0, likelihood.size()).filter(i -> likelihood.alike(i) > 0).toArray();
    this.values = IntStream.of(first).mapToDouble(likelihood::ownValue).toArray();
    this.variances =
        IntStream.of(first).mapToDouble(i -> 1 / likelihood.ownInformation(i)).toArray();
    this.times = IntStream.of(first).map(likelihood::alike).toArray();
  }

  /** Whether the studies lie near enough for any sum over them to hold them all. */
  boolean isWithinArithmetic() {
    return apart() <= FARTHEST;
  }

  private double apart() {
    return DoubleStream.of(values).max().orElseThrow()
        - DoubleStream.of(values).min().orElseThrow();
  }

  /** Where tau may lie by its prior, one with a turning point. */
  private static Stretch.Range reach(TauPrior prior) {
    double farthest = REACH * prior.turningPoint().orElseThrow();
    return new Stretch.Range(prior.from(), Math.min(prior.to(), farthest));
  }

  /**
   * Where a top of tau's density may lie: within the reach of its prior, or, where studies disagree
   * with that, no farther than they lie apart.
   */
  Stretch.Range possible(TauPrior prior) {
    Stretch.Range reach = reach(prior);
    return new Stretch.Range(reach.from(), Math.min(prior.to(), Math.max(reach.to(), apart())));
  }

  /** Where it lies by its prior and the studies' own values. */
  Stretch.Range tau(TauPrior prior) {
    double highest = reach(prior).to();
    double[] logs = new double[LOOKS + 1];
    double top = Double.NEGATIVE_INFINITY;
    for (int i = 0; i <= LOOKS; i++) {
      double tau = prior.from() + (highest - prior.from()) * i / LOOKS;
      logs[i] = prior.logDensity(tau) + log(tau);
      top = Math.max(top, logs[i]);
    }
    int first = 0;
    while (logs[first] < top - SEEN) {
      first++;
    }
    int last = LOOKS;
    while (logs[last] < top - SEEN) {
      last--;
    }
    double cell = (highest - prior.from()) / LOOKS;
    double margin = 1 + 0.1 * (last - first);
    return new Stretch.Range(
        prior.from() + cell * Math.max(0, first - margin),
        prior.from() + cell * Math.min(LOOKS, last + margin));
  }

  private double log(double tau) {
    Sums sums = sums(tau);
    double mean = sums.mean();
    double squares = 0;
    for (int i = 0; i < values.length; i++) {
      double off = values[i] - mean;
      squares += times[i] * off * off / (variances[i] + tau * tau);
    }
    return (sums.logs() - Math.log(sums.weights()) - squares) / 2;
  }

  /** A standard error in the middle of those of the studies. */
  double typicalError() {
    double[] errors = new double[IntStream.of(times).sum()];
    int filled = 0;
    for (int i = 0; i < times.length; i++) {
      Arrays.fill(errors, filled, filled + times[i], Math.sqrt(variances[i]));
      filled += times[i];
    }
    Arrays.sort(errors);
    return errors[errors.length / 2];
  }

  List<Double> centre(double tau) {
    Sums sums = sums(tau);
    double sd = 1 / Math.sqrt(sums.weights());
    return List.of(sums.mean() - REACH * sd, sums.mean() + REACH * sd);
  }

  private Sums sums(double tau) {
    double weights = 0;
    double sum = 0;
    double logs = 0;
    for (int i = 0; i < values.length; i++) {
      double weight = 1 / (variances[i] + tau * tau);
      weights += times[i] * weight;
      sum += times[i] * weight * values[i];
      logs += times[i] * Math.log(weight);
    }
    return new Sums(weights, sum / weights, logs);
  }

  private record Sums(double weights, double mean, double logs) {}
}
