package gapwise.synthesis.likelihood;

import static gapwise.sentence.Sentences.say;

import gapwise.effect.ArmCounts;
import gapwise.effect.Interval;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PooledMean;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Shares of single groups whose true values differ by a beta distribution, pooled by the likelihood
 * of their counts. What is estimated is the mean share itself, and how alike patients of one study
 * are: the intraclass correlation 1/(a + b + 1) of a beta distribution with shapes a and b.
 */
public final class BetaBinomial {
  /** With fewer studies nothing is said of a further one. */
  public static final int FEWEST_FOR_FURTHER = 3;

  private BetaBinomial() {}

  /**
   * Fits bare counts.
   *
   * @param events each from 0 to its total, whole
   * @param totals each above 0, as many as events
   */
  public static BetaBinomialFit fit(double[] events, double[] totals) {
    return BetaBinomialLikelihood.fit(events, totals);
  }

  /**
   * Pools.
   *
   * @param limits how the interval of the mean is made
   * @param predicted whether an interval for a further study is asked for
   */
  public static Pooled pool(List<ArmCounts> studies, LikelihoodLimits limits, boolean predicted) {
    BetaBinomialFit fit =
        fit(
            studies.stream().mapToDouble(ArmCounts::events).toArray(),
            studies.stream().mapToDouble(ArmCounts::total).toArray());
    if (fit instanceof BetaBinomialFit.NoMaximum none) {
      return Pooled.without(
          Heterogeneity.UNKNOWN,
          WhyNoTop.of(ExactLikelihood.Model.PROPORTION, none.reason(), studies));
    }
    BetaBinomialFit.Estimate top = (BetaBinomialFit.Estimate) fit;
    return studies.size() == 1
        ? ExactLikelihood.single(
            studies.get(0), 1, top.logit(), top.standardError(), limits.level())
        : pooled(studies, top, limits, predicted);
  }

  private static Pooled pooled(
      List<ArmCounts> studies,
      BetaBinomialFit.Estimate top,
      LikelihoodLimits limits,
      boolean predicted) {
    List<Problem> warnings = ExactLikelihood.warnings(LikelihoodFit.Points.ENOUGH, top.converged());
    double correlation = top.intraclassCorrelation();
    if (correlation == 0) {
      warnings.add(
          0,
          new Problem(
              "",
              "intraclass-correlation-at-zero",
              say("analysis.intraclass-correlation-at-zero")));
    }
    boolean further = predicted && studies.size() >= FEWEST_FOR_FURTHER;
    if (further) {
      warnings.add(
          new Problem(
              "", "prediction-interval-too-narrow", say("analysis.fitted-beta-too-narrow")));
    }
    PooledMean mean = limits.mean(top.logit(), top.standardError(), studies.size());
    return new Pooled(
            Optional.of(mean),
            further
                ? Optional.of(new FittedBeta(top.logit(), correlation).interval(limits.level()))
                : Optional.empty(),
            Heterogeneity.ofIntraclass(correlation),
            shares(studies, correlation),
            OptionalDouble.of(top.standardError()),
            Optional.of(new Pooled.Likelihood(top.logLikelihood(), false, top.converged())),
            warnings)
        .with(
            new Pooled.Average(
                share(top.logit()),
                new Interval(share(mean.interval().lower()), share(mean.interval().upper()))));
  }

  private static double share(double logit) {
    return 1 / (1 + Math.exp(-logit));
  }

  /**
   * Share of each study in the sum of n/(1 + (n - 1) rho), the patients it would have if they were
   * not alike. An approximation, to draw by; the likelihood itself has no weights.
   */
  private static List<Double> shares(List<ArmCounts> studies, double correlation) {
    List<Double> effective = new ArrayList<>();
    double sum = 0;
    for (ArmCounts study : studies) {
      double patients = study.total() / (1 + (study.total() - 1) * correlation);
      effective.add(patients);
      sum += patients;
    }
    double all = sum;
    return effective.stream().map(one -> one / all).toList();
  }
}
