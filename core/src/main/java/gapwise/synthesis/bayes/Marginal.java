package gapwise.synthesis.bayes;

import gapwise.effect.Interval;
import gapwise.numeric.Continuous;
import gapwise.numeric.NormalMixture;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;

/** The posterior of one quantity, on the analysis scale. Immutable. */
public final class Marginal {
  private final Continuous distribution;
  private final double origin;
  private final double from;
  private final double to;
  private final OptionalDouble mean;
  private final OptionalDouble sd;

  /** Those asked for so far, since several parts of a result tell the same. */
  private final Map<Double, Double> quantiles = new ConcurrentHashMap<>();

  /**
   * A posterior.
   *
   * @param distribution of the distance from the origin
   * @param from where its support starts
   * @param to where it ends
   */
  private Marginal(
      Continuous distribution,
      double origin,
      double from,
      double to,
      OptionalDouble mean,
      OptionalDouble sd) {
    this.distribution = distribution;
    this.origin = origin;
    this.from = from;
    this.to = to;
    this.mean = mean;
    this.sd = sd;
  }

  /** Of a quantity that can have any value. */
  static Marginal of(NormalMixture mixture, double origin, int moments) {
    return new Marginal(
        mixture,
        origin,
        Double.NEGATIVE_INFINITY,
        Double.POSITIVE_INFINITY,
        moments > 0 ? OptionalDouble.of(origin + mixture.mean()) : OptionalDouble.empty(),
        moments > 1 ? OptionalDouble.of(mixture.standardDeviation()) : OptionalDouble.empty());
  }

  /** Of tau. */
  static Marginal of(TauPosterior tau, Priors priors, int moments) {
    return new Marginal(
        tau,
        0,
        priors.tau().from(),
        priors.tau().to(),
        moments > 0 ? OptionalDouble.of(tau.mean()) : OptionalDouble.empty(),
        moments > 1 ? OptionalDouble.of(tau.standardDeviation()) : OptionalDouble.empty());
  }

  /** Of a quantity on a support. */
  static Marginal of(
      Continuous distribution, double from, double to, OptionalDouble mean, OptionalDouble sd) {
    return new Marginal(distribution, 0, from, to, mean, sd);
  }

  /** Of a quantity that can have any value. */
  static Marginal of(Continuous distribution, OptionalDouble mean, OptionalDouble sd) {
    return of(distribution, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, mean, sd);
  }

  /** The mean; empty if it is infinite. */
  public OptionalDouble mean() {
    return mean;
  }

  /** The standard deviation; empty if it is infinite. */
  public OptionalDouble sd() {
    return sd;
  }

  /** Half of the probability lies on each side. */
  public double median() {
    return quantile(0.5);
  }

  /** As much probability below as above. */
  public Interval equalTailed(double level) {
    return new Interval(quantile((1 - level) / 2), quantile(1 - (1 - level) / 2));
  }

  /** The shortest interval; where the density has one hump, that of highest density. */
  public Interval shortest(double level) {
    Interval about =
        Double.isFinite(from)
            ? ShortestInterval.of(distribution, level, from, to)
            : ShortestInterval.of(distribution, level);
    return new Interval(origin + about.lower(), origin + about.upper());
  }

  /** The probability of a value below x. */
  public double below(double x) {
    return distribution.below(x - origin);
  }

  /** The probability of a value above x. */
  public double above(double x) {
    return distribution.above(x - origin);
  }

  private double quantile(double probability) {
    return quantiles.computeIfAbsent(probability, one -> origin + distribution.quantile(one));
  }
}
