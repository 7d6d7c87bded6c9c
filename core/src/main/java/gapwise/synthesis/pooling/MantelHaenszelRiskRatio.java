package gapwise.synthesis.pooling;

import gapwise.effect.StudyData;
import gapwise.effect.TwoByTwo;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import java.util.OptionalDouble;

/**
 * log of sum(a n2/N)/sum(c n1/N), with the variance of Greenland and Robins, Biometrics 1985;41:55.
 */
final class MantelHaenszelRiskRatio extends MantelHaenszel {
  /** Further sums: terms of the variance, events. */
  @Override
  CountSums none() {
    return CountSums.none(2);
  }

  @Override
  CountSums of(StudyData study) {
    TwoByTwo t = TwoByTwo.class.cast(study);
    double a = t.intervention().events();
    double c = t.comparator().events();
    double b = t.intervention().nonEvents();
    double d = t.comparator().nonEvents();
    double n1 = t.intervention().total();
    double n2 = t.comparator().total();
    double n = t.total();
    boolean finite = a > 0 && c > 0;
    return CountSums.of(
        a * n2 / n,
        c * n1 / n,
        finite ? OptionalDouble.of(Math.log(a / n1) - Math.log(c / n2)) : OptionalDouble.empty(),
        finite ? OptionalDouble.of(b / a / n1 + d / c / n2) : OptionalDouble.empty(),
        // (m n1 n2 - a c N)/N^2 written without the difference of products of the size of N^3
        (a * d * n1 + c * b * n2) / n / n,
        a + c);
  }

  @Override
  Pooled pooled(CountSums all, double level) {
    if (!all.hasRatio()) {
      return Pooled.without(Heterogeneity.UNKNOWN, all.noRatio(all.terms()[1] == 0));
    }
    double r = all.numerator();
    double s = all.denominator();
    return normal(all, Math.log(r / s), Math.sqrt(all.terms()[0] / (r * s)), level);
  }
}
