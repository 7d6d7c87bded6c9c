package gapwise.synthesis.smallstudy;

import gapwise.numeric.KendallScore;
import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GroupMeans;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Kendall's rank correlation of (y - common effect)/root(v - 1/sum(1/v)) with v: Begg and Mazumdar,
 * Biometrics 1994;50:1088. Ties are allowed for in tau-b and in the variance (Kendall, Rank
 * Correlation Methods, 1948, chapter 4).
 */
final class Begg implements SmallStudyTest {
  /** From here on the normal approximation is as good and the exact distribution is not told. */
  private static final int NOT_EXACT_FROM = 50;

  @Override
  public String name() {
    return "begg";
  }

  @Override
  public AsymmetryFinding find(SmallStudyData data) {
    Optional<Refusal> refusal = data.refusal();
    if (refusal.isPresent()) {
      return new AsymmetryFinding.Refused(refusal.get());
    }
    EffectSample sample = data.effects();
    int k = sample.size();
    double[] variances = new double[k];
    double[] weights = new double[k];
    Arrays.setAll(variances, sample::variance);
    Arrays.setAll(weights, i -> 1 / variances[i]);
    GroupMeans.GroupFit fit = GroupMeans.one(sample).fit(sample, weights);
    double[] standardised = new double[k];
    // v - 1/sum w is v squared times the study's entry in P, which has no subtraction
    Arrays.setAll(
        standardised, i -> fit.residual(i) / (variances[i] * Math.sqrt(fit.projection(i))));
    if (Arrays.stream(standardised).anyMatch(value -> !Double.isFinite(value))) {
      return NoVariation.REFUSED;
    }
    return found(KendallScore.of(standardised, variances), k);
  }

  private static AsymmetryFinding found(KendallScore score, int k) {
    if (score.tauB().isEmpty()) {
      return NoVariation.REFUSED;
    }
    double deviation = Math.sqrt(score.variance());
    double statistic = score.value() / deviation;
    long drawn = Math.max(0, Math.abs(score.value()) - 1);
    boolean exact = !score.tied() && k < NOT_EXACT_FROM;
    return new AsymmetryFinding.Ranks(
        score.value(),
        score.tauB().getAsDouble(),
        statistic,
        ReferenceDistribution.normal().twoSidedP(statistic),
        Long.signum(score.value()) * drawn / deviation,
        exact ? OptionalDouble.of(score.exactTwoSidedP()) : OptionalDouble.empty(),
        AsymmetryWords.ranks(score.value(), score.orderedPairs()));
  }
}
