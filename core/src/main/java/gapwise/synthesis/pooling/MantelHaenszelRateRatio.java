package gapwise.synthesis.pooling;

import gapwise.effect.StudyData;
import gapwise.effect.TwoRates;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import java.util.OptionalDouble;

/**
 * log of sum(x1 T2/T)/sum(x2 T1/T) for events over person-time, with the variance of Greenland and
 * Robins, Biometrics 1985;41:55.
 */
final class MantelHaenszelRateRatio extends MantelHaenszel {
  /** Further sum: terms of the variance. */
  @Override
  CountSums none() {
    return CountSums.none(1);
  }

  @Override
  CountSums of(StudyData study) {
    TwoRates rates = TwoRates.class.cast(study);
    double x1 = rates.intervention().events();
    double x2 = rates.comparator().events();
    double t1 = rates.intervention().personTime();
    double t2 = rates.comparator().personTime();
    double time = t1 + t2;
    boolean finite = x1 > 0 && x2 > 0;
    return CountSums.of(
        x1 * (t2 / time),
        x2 * (t1 / time),
        finite ? OptionalDouble.of(Math.log(x1 / t1) - Math.log(x2 / t2)) : OptionalDouble.empty(),
        finite ? OptionalDouble.of(1 / x1 + 1 / x2) : OptionalDouble.empty(),
        (x1 + x2) * (t1 / time) * (t2 / time));
  }

  @Override
  Pooled pooled(CountSums all, double level) {
    if (!all.hasRatio()) {
      return Pooled.without(Heterogeneity.UNKNOWN, all.noRatio(true));
    }
    double r = all.numerator();
    double s = all.denominator();
    return normal(all, Math.log(r / s), Math.sqrt(all.terms()[0] / (r * s)), level);
  }
}
