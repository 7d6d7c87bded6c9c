package gapwise.synthesis.pooling;

import gapwise.effect.StudyData;
import gapwise.effect.TwoByTwo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * log of sum(ad/N)/sum(bc/N): Mantel and Haenszel, J Natl Cancer Inst 1959;22:719; variance of
 * Robins, Breslow and Greenland, Biometrics 1986;42:311. With the test of association without
 * continuity correction.
 */
final class MantelHaenszelOddsRatio implements CountPooling {
  @Override
  public Pooled pool(List<? extends StudyData> studies, double level) {
    List<Stratum> strata = new ArrayList<>();
    double pr = 0;
    double psPlusQr = 0;
    double qs = 0;
    double observedLessExpected = 0;
    double variance = 0;
    boolean noEvents = true;
    for (StudyData study : studies) {
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
      pr += p * r;
      psPlusQr += p * s + q * r;
      qs += q * s;
      noEvents &= a + c == 0;
      observedLessExpected += a - t.intervention().total() * (a + c) / n;
      variance += t.hypergeometricVariance();
      boolean finite = a > 0 && b > 0 && c > 0 && d > 0;
      strata.add(
          new Stratum(
              r,
              s,
              finite
                  ? OptionalDouble.of(Math.log(a / b) - Math.log(c / d))
                  : OptionalDouble.empty(),
              finite ? OptionalDouble.of(1 / a + 1 / b + 1 / c + 1 / d) : OptionalDouble.empty()));
    }
    double r = Stratum.numerators(strata);
    double s = Stratum.denominators(strata);
    Optional<Pooled> none = Stratum.noRatio(r, s, noEvents);
    if (none.isPresent()) {
      return none.get();
    }
    double squared = pr / (2 * r * r) + psPlusQr / (2 * r * s) + qs / (2 * s * s);
    double chiSquared = observedLessExpected * observedLessExpected / variance;
    return Stratum.pooled(strata, Math.log(r / s), Math.sqrt(squared), level)
        .with(
            new Pooled.Association(
                chiSquared, 1, ChiSquaredDistribution.of(1).survivalProbability(chiSquared)));
  }
}
