package gapwise.synthesis.pooling;

import gapwise.effect.Interval;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What pooling gave, as far as it goes.
 *
 * @param mean empty if it cannot be estimated; a warning then says why
 * @param prediction interval for a further study; empty for a common effect or without degrees of
 *     freedom
 * @param heterogeneity what is known of it
 * @param weights share of each study, summing to 1; empty without a mean
 * @param modelStandardError of the mean from the sum of weights, whatever the interval's method
 * @param likelihood for the likelihood estimators
 * @param association test of association, for the Mantel-Haenszel odds ratio
 * @param average the mean over studies of what their true values show, where it has a distribution
 *     of its own
 * @param warnings what a reader must know
 */
public record Pooled(
    Optional<PooledMean> mean,
    Optional<Interval> prediction,
    Heterogeneity heterogeneity,
    List<Double> weights,
    OptionalDouble modelStandardError,
    Optional<Likelihood> likelihood,
    Optional<Association> association,
    Optional<Average> average,
    List<Problem> warnings) {

  /**
   * A mean over studies as people read it, a share or a rate, and not on the analysis scale.
   *
   * @param estimate in the middle of what is thought of it
   * @param interval its limits
   */
  public record Average(double estimate, Interval interval) {}

  /**
   * A test of association between group and event.
   *
   * @param chiSquared without continuity correction
   * @param degreesOfFreedom 1
   * @param pValue its upper tail
   */
  public record Association(double chiSquared, int degreesOfFreedom, double pValue) {}

  /** Without a test of association or a mean over studies of its own. */
  public Pooled(
      Optional<PooledMean> mean,
      Optional<Interval> prediction,
      Heterogeneity heterogeneity,
      List<Double> weights,
      OptionalDouble modelStandardError,
      Optional<Likelihood> likelihood,
      List<Problem> warnings) {
    this(
        mean,
        prediction,
        heterogeneity,
        weights,
        modelStandardError,
        likelihood,
        Optional.empty(),
        Optional.empty(),
        warnings);
  }

  /**
   * The top of the likelihood.
   *
   * @param logLikelihood with all constants but log det(X'X)/2
   * @param restricted whether it is the restricted one
   * @param converged whether the search ended as exactly as doubles allow
   */
  public record Likelihood(double logLikelihood, boolean restricted, boolean converged) {}

  public Pooled {
    weights = List.copyOf(weights);
    warnings = List.copyOf(warnings);
  }

  /** The same with the shares of the studies. */
  Pooled with(List<Double> shares) {
    return new Pooled(
        mean,
        prediction,
        heterogeneity,
        shares,
        modelStandardError,
        likelihood,
        association,
        average,
        warnings);
  }

  /** The same with a mean over studies. */
  public Pooled with(Average mean) {
    return new Pooled(
        this.mean,
        prediction,
        heterogeneity,
        weights,
        modelStandardError,
        likelihood,
        association,
        Optional.of(mean),
        warnings);
  }

  /** The same with a test of association. */
  Pooled with(Association test) {
    return new Pooled(
        mean,
        prediction,
        heterogeneity,
        weights,
        modelStandardError,
        likelihood,
        Optional.of(test),
        average,
        warnings);
  }

  /** The same with other words on heterogeneity. */
  Pooled with(Heterogeneity other) {
    return new Pooled(
        mean,
        prediction,
        other,
        weights,
        modelStandardError,
        likelihood,
        association,
        average,
        warnings);
  }

  /** No mean, for a reason that stands in the warning. */
  public static Pooled without(Heterogeneity heterogeneity, Problem warning) {
    return new Pooled(
        Optional.empty(),
        Optional.empty(),
        heterogeneity,
        List.of(),
        OptionalDouble.empty(),
        Optional.empty(),
        List.of(warning));
  }
}
