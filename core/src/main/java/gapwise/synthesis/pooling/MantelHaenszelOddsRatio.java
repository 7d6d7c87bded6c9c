package gapwise.synthesis.pooling;

import gapwise.effect.StudyData;
import gapwise.effect.TwoByTwo;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * log of sum(ad/N)/sum(bc/N): Mantel and Haenszel, J Natl Cancer Inst 1959;22:719; variance of
 * Robins, Breslow and Greenland, Biometrics 1986;42:311. With the test of association without
 * continuity correction.
 */
final class MantelHaenszelOddsRatio extends MantelHaenszel {
  /** Further sums: P R, P S + Q R, Q S, observed less expected, its variance, events. */
  @Override
  CountSums none() {
    return CountSums.none(6);
  }

  @Override
  CountSums of(StudyData study) {
    TwoByTwo t = TwoByTwo.class.cast(study);
    double a = t.intervention().events();
    double b = t.intervention().nonEvents();
    double c = t.comparator().events();
    double d = t.comparator().nonEvents();
    double n = t.total();
    double r = a * d / n;
    double s = b * c / n;
    double p = (a + d) / n;
    double q = (b + c) / n;
    boolean finite = a > 0 && b > 0 && c > 0 && d > 0;
    return CountSums.of(
        r,
        s,
        finite ? OptionalDouble.of(Math.log(a / b) - Math.log(c / d)) : OptionalDouble.empty(),
        finite ? OptionalDouble.of(1 / a + 1 / b + 1 / c + 1 / d) : OptionalDouble.empty(),
        p * r,
        p * s + q * r,
        q * s,
        a - t.intervention().total() * (a + c) / n,
        t.hypergeometricVariance(),
        a + c);
  }

  @Override
  Pooled pooled(CountSums all, double level) {
    double[] sum = all.terms();
    if (!all.hasRatio()) {
      return Pooled.without(Heterogeneity.UNKNOWN, all.noRatio(sum[5] == 0));
    }
    double r = all.numerator();
    double s = all.denominator();
    double squared = sum[0] / (2 * r * r) + sum[1] / (2 * r * s) + sum[2] / (2 * s * s);
    double chiSquared = sum[3] * sum[3] / sum[4];
    return normal(all, Math.log(r / s), Math.sqrt(squared), level)
        .with(
            new Pooled.Association(
                chiSquared, 1, ChiSquaredDistribution.of(1).survivalProbability(chiSquared)));
  }
}
