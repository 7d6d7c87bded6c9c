package gapwise.synthesis.smallstudy;

import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import java.util.Arrays;
import java.util.Optional;

/**
 * The effect on its standard error with weights 1/(v + t), t the variance between studies about the
 * line by the plan's estimator: Thompson and Sharp, Stat Med 1999;18:2693; Moreno et al., BMC Med
 * Res Methodol 2009;9:2. No residual scale; normal. Under a common effect t is estimated by
 * restricted maximum likelihood.
 */
final class EggerRandom implements SmallStudyTest {
  @Override
  public String name() {
    return "egger-random";
  }

  @Override
  public AsymmetryFinding find(SmallStudyData data) {
    Optional<Refusal> refusal = data.refusal();
    if (refusal.isPresent()) {
      return new AsymmetryFinding.Refused(refusal.get());
    }
    EffectSample sample = data.effects();
    double[] errors = new double[sample.size()];
    Arrays.setAll(errors, data::standardError);
    LineMeans model = new LineMeans(errors);
    if (model.isFlat()) {
      return NoVariation.REFUSED;
    }
    TauSquaredEstimator estimator =
        data.settings().estimator().orElseGet(() -> TauSquaredEstimators.all().get(0));
    TauSquared tauSquared = estimator.estimate(sample, model);
    if (tauSquared instanceof TauSquared.NotEstimable not) {
      return new AsymmetryFinding.Refused(
          new Refusal.NotComputable(new Problem("", not.code(), not.reason())));
    }
    double t = ((TauSquared.Estimate) tauSquared).value();
    double[] weights = new double[sample.size()];
    Arrays.setAll(weights, i -> 1 / (sample.variance(i) + t));
    LineMeans.LineFit fit = model.fit(sample, weights);
    double statistic = fit.slope() / fit.slopeError();
    if (!Double.isFinite(statistic)) {
      return NoVariation.REFUSED;
    }
    double span =
        Arrays.stream(errors).max().orElseThrow() - Arrays.stream(errors).min().orElseThrow();
    return new AsymmetryFinding.RandomLine(
        fit.slope(),
        fit.slopeError(),
        statistic,
        ReferenceDistribution.normal().twoSidedP(statistic),
        fit.limit(),
        t,
        AsymmetryWords.line(fit.slope() * span, AsymmetryWords.Line.PRECISION));
  }
}
